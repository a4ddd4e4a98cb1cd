import { database } from "../lib/db.js";
import { KEPT, WAITING } from "./outbox.js";

/** Everything this tablet keeps: its records, photos, sequence numbers, and what it knows of the bakery. */
export const disk = database("trivet", 1, db => {
  const records = db.createObjectStore("records", { keyPath: "id" });
  records.createIndex("state", ["state", "seq"]);
  db.createObjectStore("photos", { keyPath: "sha256" });
  db.createObjectStore("shelf");
});

const ofState = state => IDBKeyRange.bound([state, 0], [state, Infinity]);

/** Things by name: a tablet's last sequence number, the kit, who is signed in. */
export const shelf = {
  get: name => disk(["shelf"], "readonly", shelf => shelf.get(name)),
  put: (name, value) => disk(["shelf"], "readwrite", shelf => { shelf.put(value, name); })
};

/** The records of this tablet, as the outbox asks for them. */
export const store = {
  async last(device) { return await shelf.get("sequence." + device) ?? 0; },

  /** The service has seen, or was told of, numbers up to this one: they are not used again. */
  async raise(device, number) {
    if (number > await this.last(device)) await shelf.put("sequence." + device, number);
  },

  /** Keeps a new record and its number in one transaction; an id that is there already is an error, never an overwriting. */
  append: entry => disk(["records", "shelf"], "readwrite", (records, shelf) => {
    records.add(entry);
    shelf.put(entry.seq, "sequence." + entry.device);
  }),
  replace: entry => disk(["records"], "readwrite", records => { records.put(entry); }),
  find: id => disk(["records"], "readonly", records => records.get(id)),
  inState: state => disk(["records"], "readonly", records => records.index("state").getAll(ofState(state))),
  all: () => disk(["records"], "readonly", records => records.getAll()),

  async waiting(most, without) {
    const some = await disk(["records"], "readonly", records => records.index("state").getAll(ofState(WAITING), most + without.size));
    return some.filter(entry => !without.has(entry.id)).slice(0, most);
  },

  /** Drops what was acknowledged before a moment. */
  async forget(before) {
    const old = (await this.inState(KEPT)).filter(entry => entry.kept_at < before);
    if (old.length > 0) await disk(["records"], "readwrite", records => { for (const entry of old) records.delete(entry.id); });
  }
};

/** Photos lie apart: a full disk refuses a photo and never a record. */
export const photoStore = {
  put: photo => disk(["photos"], "readwrite", photos => { photos.put(photo); }),
  get: sha256 => disk(["photos"], "readonly", photos => photos.get(sha256)),
  all: () => disk(["photos"], "readonly", photos => photos.getAll()),
  drop: sha256 => disk(["photos"], "readwrite", photos => { photos.delete(sha256); })
};

// Run in a page of the service: what the tablet folds from its own records over an older kit is what the service says after it has taken them in.
// A share of each story's records is with the service before the kit is taken.
const [stories, share, done] = arguments;

(async () => {
  const [{ prepared }, { batches }, { unitsOf }, { uuid7 }, { canonical }] = await Promise.all(["/js/tablet/kit.js", "/js/tablet/fold.js", "/js/tablet/fold/stored.js", "/js/uuid7.js", "/js/lib/canonical.js"].map(file => import(file)));
  const kit = async () => (await fetch("/tablet/kit.json")).json();
  const device = document.body.dataset.device, failed = [], told = [];
  let { sequence } = await kit();
  for (const [name, start, steps] of stories) {
    const batch = uuid7(), ids = {};
    for (const [step, [kind, minute, data, as]] of steps.entries()) {
      const at = new Date(Math.floor((Date.now() - start * 60000) / 1000) * 1000 + minute * 60000).toISOString(), id = uuid7();
      if (as) ids[as] = id;
      const { $record: beside = {}, ...written } = JSON.parse(JSON.stringify(data).replace(/"@(\w+)"/g, (all, key) => JSON.stringify(ids[key] ??= uuid7())));
      told.push({ story: name, early: step < Math.floor(steps.length * share), record: { schema: "record-1", id, kind, site: "site", device, device_seq: ++sequence, person: "ana", ...(beside.batch === null ? {} : { batch }), source: "typed", claimed_at: at, device_clock: { wall: at, zone: "UTC" },
        ...Object.fromEntries(Object.entries(beside).filter(([, value]) => value !== null)), data: kind === "batch-started" ? { line: "wheat", trays: 2, pieces: 24, oven: "oven-1", product: "deep-quiche", code: "T-" + sequence, ...written } : written } });
    }
  }
  const send = async list => {
    for (let from = 0; from < list.length; from += 50) {
      const answers = await (await fetch("/api/records", { method: "POST", headers: { "Content-Type": "application/json" }, body: "[" + list.slice(from, from + 50).map(one => canonical(one.record)).join(",") + "]" })).json();
      for (const answer of answers) if (answer.status !== 201) failed.push("not taken in: " + JSON.stringify(answer));
    }
  };
  await send(told.filter(one => one.early));
  const before = await kit(), late = told.filter(one => !one.early);
  await send(late);
  const after = await kit(), folded = await batches({ kit: prepared(before), now: after.made_at, local: late.map(one => one.record), entries: [] });
  const open = list => list.filter(matter => matter.state !== "closed").map(matter => matter.id + " " + matter.limit).sort().join("\n");
  const parts = told.filter(one => one.record.kind === "split").flatMap(one => one.record.data.parts.map(part => [part.batch, one.story + ", the " + part.purpose + " part"]));
  for (const [batch, story] of new Map([...told.filter(one => one.record.batch).map(one => [one.record.batch, one.story]), ...parts])) {
    const mine = folded.find(one => one.id === batch), theirs = after.batches.find(one => one.id === batch);
    if (mine?.life === "split" && open(mine.deviations)) failed.push(story + ": split, with open deviations here");
    if (!theirs) { if (mine && !["gone", "destroyed", "struck out", "split"].includes(mine.life)) failed.push(story + ": over for the service, " + mine.life + " here"); continue; }
    const checks = list => list.map(check => check.key + " " + check.state + " " + Math.round(check.due / 1000) + " " + check.id).sort().join("\n");
    const said = [mine, theirs].map(one => one.deviations.filter(matter => matter.state !== "closed").map(matter => matter.id + " " + matter.words).sort().join("\n"));
    for (const [what, a, b] of [["life", mine.life, theirs.life], ["core", mine.cook_verdict, theirs.cook_verdict], ["cooling", mine.cooling_verdict, theirs.cooling_verdict], ["held", mine.holds.length > 0, theirs.holds.length > 0],
      ["next", mine.act + ": " + mine.next, theirs.act + ": " + theirs.next], ["deviations", open(mine.deviations), open(theirs.deviations)], ["checks", checks(mine.checks), checks(theirs.checks)]]) {
      if (a !== b) failed.push((what === "deviations" ? said.join("\n| ") + "\n" : "") + story + ", " + what + ": here\n" + a + "\nthe service\n" + b);
    }
  }
  const units = (await unitsOf({ kit: prepared(before), now: after.made_at, local: late.map(one => one.record) })).matters;
  if (share === 0 && open(units) !== open(after.unit_deviations)) failed.push("units: here\n" + open(units) + "\nthe service\n" + open(after.unit_deviations));
  return [String(new Set(told.map(one => one.story)).size), ...failed];
})().then(done, wrong => done(["0", String(wrong.stack ?? wrong)]));

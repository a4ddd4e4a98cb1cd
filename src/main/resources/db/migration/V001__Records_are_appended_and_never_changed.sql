-- Every record as it came in, numbered in the order of receipt. Instants have a fixed width, so that text sorts as time.
CREATE TABLE record (
  receive_number INTEGER PRIMARY KEY AUTOINCREMENT,
  id          TEXT NOT NULL UNIQUE CHECK (length(id) = 36),
  sha256      TEXT NOT NULL CHECK (length(sha256) = 64 AND sha256 NOT GLOB '*[^0-9a-f]*'),
  kind        TEXT NOT NULL,
  device      TEXT NOT NULL,
  device_seq  INTEGER NOT NULL CHECK (device_seq >= 1),
  person      TEXT NOT NULL,
  batch       TEXT,
  unit        TEXT,
  instrument  TEXT,
  claimed_at  TEXT NOT NULL CHECK (claimed_at GLOB '????-??-??T??:??:??.???Z'),
  received_at TEXT NOT NULL CHECK (received_at GLOB '????-??-??T??:??:??.???Z'),
  body        BLOB NOT NULL,
  verdict     TEXT NOT NULL
) STRICT;
CREATE INDEX record_by_batch ON record (batch) WHERE batch IS NOT NULL;
CREATE INDEX record_by_unit ON record (unit, claimed_at) WHERE unit IS NOT NULL;
CREATE INDEX record_by_claimed ON record (claimed_at);
CREATE INDEX record_by_kind ON record (kind, claimed_at);
CREATE INDEX record_by_device ON record (device, device_seq);

-- Which records, batches, checks and deviations a record names beside its own batch.
CREATE TABLE mention (
  receive_number INTEGER NOT NULL REFERENCES record (receive_number),
  named          TEXT NOT NULL,
  PRIMARY KEY (named, receive_number)
) STRICT, WITHOUT ROWID;

-- A second, different body that came under the id of a kept record: refused, and kept for review.
CREATE TABLE clash (
  number      INTEGER PRIMARY KEY AUTOINCREMENT,
  id          TEXT NOT NULL,
  sha256      TEXT NOT NULL CHECK (length(sha256) = 64),
  received_at TEXT NOT NULL CHECK (received_at GLOB '????-??-??T??:??:??.???Z'),
  body        BLOB NOT NULL
) STRICT;

-- The site, its people, units, probes, tablets, confirmed rulebooks and approved plans: each change is a further version.
CREATE TABLE register (
  number     INTEGER PRIMARY KEY AUTOINCREMENT,
  kind       TEXT NOT NULL CHECK (kind IN ('site', 'person', 'secret', 'unit', 'probe', 'tablet', 'rulebook', 'plan')),
  id         TEXT NOT NULL,
  written_by TEXT NOT NULL,
  written_at TEXT NOT NULL CHECK (written_at GLOB '????-??-??T??:??:??.???Z'),
  body       TEXT NOT NULL CHECK (json_valid(body))
) STRICT;
CREATE INDEX register_by_id ON register (kind, id);

CREATE TRIGGER record_is_not_changed BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER record_is_not_deleted BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
CREATE TRIGGER mention_is_not_changed BEFORE UPDATE ON mention BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER mention_is_not_deleted BEFORE DELETE ON mention BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
CREATE TRIGGER clash_is_not_changed BEFORE UPDATE ON clash BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER clash_is_not_deleted BEFORE DELETE ON clash BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
CREATE TRIGGER register_is_not_changed BEFORE UPDATE ON register BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER register_is_not_deleted BEFORE DELETE ON register BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;

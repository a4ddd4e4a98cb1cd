-- How often a PIN, password or badge was wrong since it was last right; written over.
CREATE TABLE wrong_try (
  name    TEXT PRIMARY KEY,
  count   INTEGER NOT NULL CHECK (count >= 1),
  last_at TEXT NOT NULL CHECK (last_at GLOB '????-??-??T??:??:??.???Z')
) STRICT;

-- Refused records that the owner looked at and took in after all.
CREATE TABLE aside_taken (
  number         INTEGER PRIMARY KEY REFERENCES aside (number),
  receive_number INTEGER NOT NULL,
  taken_by       TEXT NOT NULL,
  taken_at       TEXT NOT NULL CHECK (taken_at GLOB '????-??-??T??:??:??.???Z')
) STRICT;

-- Every matter that was raised to somebody, once. What became of it is written beside it; nothing is deleted, so that alarms can be counted.
CREATE TABLE alarm (
  id        TEXT PRIMARY KEY,
  kind      TEXT NOT NULL,
  label     TEXT NOT NULL,
  cause     TEXT NOT NULL,
  words     TEXT NOT NULL,
  link      TEXT NOT NULL,
  since     TEXT NOT NULL CHECK (since GLOB '????-??-??T??:??:??.???Z'),
  raised_at TEXT NOT NULL CHECK (raised_at GLOB '????-??-??T??:??:??.???Z'),
  told_at   TEXT,
  told_how  TEXT,
  seen_at   TEXT,
  seen_by   TEXT,
  ended_at  TEXT
) STRICT;
CREATE INDEX alarm_by_raised ON alarm (raised_at);
CREATE TRIGGER alarm_is_not_deleted BEFORE DELETE ON alarm BEGIN SELECT RAISE(ABORT, 'alarms are never deleted'); END;
CREATE TRIGGER alarm_stays_as_raised BEFORE UPDATE OF id, kind, label, cause, words, link, since, raised_at ON alarm BEGIN SELECT RAISE(ABORT, 'an alarm stays as it was raised'); END;
CREATE TRIGGER alarm_is_seen_once BEFORE UPDATE OF seen_at, seen_by ON alarm WHEN OLD.seen_at IS NOT NULL BEGIN SELECT RAISE(ABORT, 'the first word stays'); END;
CREATE TRIGGER aside_taken_is_not_changed BEFORE UPDATE ON aside_taken BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER aside_taken_is_not_deleted BEFORE DELETE ON aside_taken BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;

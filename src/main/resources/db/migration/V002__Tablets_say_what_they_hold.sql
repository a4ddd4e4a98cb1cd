-- What a tablet last said of itself; one row a tablet, written over. It proves nothing and judges nothing: it lets a loss be named.
CREATE TABLE heard (
  device    TEXT PRIMARY KEY,
  heard_at  TEXT NOT NULL CHECK (heard_at GLOB '????-??-??T??:??:??.???Z'),
  sequence  INTEGER NOT NULL CHECK (sequence >= 0),
  waiting   INTEGER NOT NULL,
  photos    INTEGER NOT NULL,
  oldest    TEXT,
  offset_ms INTEGER,
  build     TEXT
) STRICT;

-- Each store of a browser that has spoken for a tablet. A further one means that the tablet was set up anew, and what the store before it still held is lost.
CREATE TABLE installed (
  device   TEXT NOT NULL,
  install  TEXT NOT NULL CHECK (length(install) <= 100),
  first_at TEXT NOT NULL CHECK (first_at GLOB '????-??-??T??:??:??.???Z'),
  received INTEGER NOT NULL,
  told     INTEGER NOT NULL,
  PRIMARY KEY (device, install)
) STRICT;

-- What a tablet had refused and sent to the owner's review as it was.
CREATE TABLE aside (
  number      INTEGER PRIMARY KEY AUTOINCREMENT,
  device      TEXT NOT NULL,
  device_seq  INTEGER,
  sha256      TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64),
  received_at TEXT NOT NULL CHECK (received_at GLOB '????-??-??T??:??:??.???Z'),
  reason      TEXT NOT NULL,
  body        BLOB NOT NULL
) STRICT;

-- Photos by the SHA-256 of their bytes; a record names the one that it shows.
CREATE TABLE photo (
  sha256      TEXT PRIMARY KEY CHECK (length(sha256) = 64 AND sha256 NOT GLOB '*[^0-9a-f]*'),
  device      TEXT NOT NULL,
  received_at TEXT NOT NULL CHECK (received_at GLOB '????-??-??T??:??:??.???Z'),
  type        TEXT NOT NULL,
  bytes       BLOB NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TRIGGER installed_is_not_changed BEFORE UPDATE ON installed BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER installed_is_not_deleted BEFORE DELETE ON installed BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
CREATE TRIGGER aside_is_not_changed BEFORE UPDATE ON aside BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER aside_is_not_deleted BEFORE DELETE ON aside BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
CREATE TRIGGER photo_is_not_changed BEFORE UPDATE ON photo BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER photo_is_not_deleted BEFORE DELETE ON photo BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;

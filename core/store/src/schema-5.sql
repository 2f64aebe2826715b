-- Version 5: what jobs share. `shared` marks entries that other jobs have to know; `lock.point` is the point that a lock is on. Drafts belong
-- to a person. `arrival` tells when an opening that another device recorded came here, by this device's clocks.
ALTER TABLE entry ADD COLUMN shared INTEGER NOT NULL DEFAULT 0;
CREATE INDEX entry_shared ON entry (ms, count, device) WHERE shared = 1;
ALTER TABLE lock ADD COLUMN point BLOB;
DROP TABLE draft;
CREATE TABLE draft (
    route TEXT NOT NULL,
    person TEXT NOT NULL,
    field TEXT NOT NULL,
    value TEXT NOT NULL,
    PRIMARY KEY (route, person, field)
) STRICT, WITHOUT ROWID;
CREATE TABLE arrival (
    id BLOB PRIMARY KEY,
    wall INTEGER NOT NULL,
    start INTEGER,
    ms INTEGER
) STRICT, WITHOUT ROWID;
-- Who has had this device in hand, and the hash of their PIN: of this device alone, never passed on.
CREATE TABLE pin (
    person BLOB PRIMARY KEY,
    hash TEXT,
    wrong INTEGER NOT NULL,
    wall INTEGER,
    start INTEGER,
    ms INTEGER,
    anew_ms INTEGER,
    witness TEXT
) STRICT, WITHOUT ROWID;
ALTER TABLE lock ADD COLUMN no_pin INTEGER NOT NULL DEFAULT 0;

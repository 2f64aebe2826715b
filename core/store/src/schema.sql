-- Version 1. `entry` is the journal; `job` and `lock` are worked out from it in the same transaction and can be made again from
-- nothing. `draft` and `local` belong to this device alone and are not evidence.
-- `body` and `sig` stand side by side at the end of a row, so that rescue can find them in a damaged file.
CREATE TABLE entry (
    number INTEGER PRIMARY KEY,
    id BLOB NOT NULL UNIQUE,
    device BLOB NOT NULL,
    seq INTEGER NOT NULL,
    ms INTEGER NOT NULL,
    count INTEGER NOT NULL,
    job BLOB,
    body BLOB NOT NULL,
    sig BLOB NOT NULL,
    UNIQUE (device, seq)
) STRICT;
CREATE INDEX entry_order ON entry (ms, count, device);
CREATE INDEX entry_job ON entry (job, ms, count, device);
CREATE TABLE job (
    id BLOB PRIMARY KEY,
    title TEXT NOT NULL,
    place TEXT NOT NULL,
    stage TEXT NOT NULL,
    next TEXT NOT NULL,
    proof TEXT NOT NULL,
    done INTEGER NOT NULL,
    opened_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE lock (
    fit BLOB PRIMARY KEY,
    job BLOB NOT NULL,
    place TEXT NOT NULL,
    label TEXT NOT NULL,
    owner BLOB NOT NULL,
    since_ms INTEGER NOT NULL,
    zone INTEGER NOT NULL,
    is_on INTEGER NOT NULL,
    owed INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX lock_job ON lock (job);
CREATE INDEX lock_open ON lock (since_ms) WHERE is_on = 1 OR owed = 1;
CREATE TABLE draft (
    route TEXT NOT NULL,
    field TEXT NOT NULL,
    value TEXT NOT NULL,
    PRIMARY KEY (route, field)
) STRICT, WITHOUT ROWID;
CREATE TABLE local (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

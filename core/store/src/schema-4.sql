-- Version 4: other devices. `site_entry` is worked out from the journal (and from names of erased entries): what there is of each site, to
-- compare with the office. `aside` holds what came from others and is not believed. `upload` and `local` belong to this device alone.
CREATE TABLE site_entry (
    site BLOB NOT NULL,
    device BLOB NOT NULL,
    seq INTEGER NOT NULL,
    id BLOB NOT NULL,
    PRIMARY KEY (site, device, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX site_entry_id ON site_entry (id, site);
CREATE TABLE aside (
    id BLOB PRIMARY KEY,
    device BLOB NOT NULL,
    seq INTEGER NOT NULL,
    why TEXT NOT NULL,
    body BLOB NOT NULL,
    sig BLOB NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE upload (
    sha256 TEXT NOT NULL,
    size TEXT NOT NULL,
    place TEXT NOT NULL,
    PRIMARY KEY (sha256, size)
) STRICT, WITHOUT ROWID;

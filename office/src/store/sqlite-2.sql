-- Time stamps of an authority outside (RFC 3161), at most one a day. `token` is empty until it came.
CREATE TABLE stamp (
    day TEXT PRIMARY KEY,
    made_ms INTEGER NOT NULL,
    root BLOB NOT NULL,
    size INTEGER NOT NULL,
    token BLOB NOT NULL
) STRICT;
-- The jobs under its root, each with the ids of the entries that it then had, end to end; `have` is the job's at that moment.
CREATE TABLE stamped (
    day TEXT NOT NULL,
    position INTEGER NOT NULL,
    site BLOB NOT NULL,
    job BLOB NOT NULL,
    have INTEGER NOT NULL,
    -- SHA-256 of covers: what the tree needs of the other jobs of a day.
    head BLOB NOT NULL,
    covers BLOB NOT NULL,
    PRIMARY KEY (day, position)
) STRICT;
CREATE INDEX stamped_job ON stamped (site, job);

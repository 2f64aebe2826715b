-- Time stamps of an authority outside (RFC 3161), at most one a day. `token` is empty until it came.
CREATE TABLE stamp (
    day TEXT PRIMARY KEY,
    made_ms BIGINT NOT NULL,
    root BYTEA NOT NULL,
    size BIGINT NOT NULL,
    token BYTEA NOT NULL
);
-- The jobs under its root, each with the ids of the entries that it then had, end to end; `have` is the job's at that moment.
CREATE TABLE stamped (
    day TEXT NOT NULL,
    position BIGINT NOT NULL,
    site BYTEA NOT NULL,
    job BYTEA NOT NULL,
    have BIGINT NOT NULL,
    -- SHA-256 of covers: what the tree needs of the other jobs of a day.
    head BYTEA NOT NULL,
    covers BYTEA NOT NULL,
    PRIMARY KEY (day, position)
);
CREATE INDEX stamped_job ON stamped (site, job);

-- A list holds codes and values: what a step or a state is called is the pages' business. Dropped and made anew: worked out again from the feeds.
ALTER TABLE job DROP COLUMN stage;
ALTER TABLE job DROP COLUMN next;
-- The step whose turn it is, the point that it is about, and whether lines turn; no step once nothing is left to do.
ALTER TABLE job ADD COLUMN next TEXT;
ALTER TABLE job ADD COLUMN next_at TEXT;
ALTER TABLE job ADD COLUMN turns INTEGER NOT NULL DEFAULT 1;
DROP TABLE lock_on;
CREATE TABLE lock_on (
    site BLOB NOT NULL,
    fit BLOB NOT NULL,
    job BLOB NOT NULL,
    -- What is written on what it is on; none if that is not known here.
    place TEXT,
    label TEXT NOT NULL,
    owner BLOB NOT NULL,
    -- 1 if the key is in a lock box, and what is written on that.
    boxed INTEGER NOT NULL,
    key_box TEXT,
    device BLOB NOT NULL,
    since_ms INTEGER NOT NULL,
    zone INTEGER NOT NULL,
    -- 0 while it was forced off and its owner is not told yet.
    is_on INTEGER NOT NULL,
    PRIMARY KEY (site, fit)
) STRICT;
CREATE INDEX lock_on_job ON lock_on (site, job);

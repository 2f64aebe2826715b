-- A list holds codes and values: what a step or a state is called is the pages' business. Dropped and made anew: worked out again from the feeds.
ALTER TABLE job DROP COLUMN stage;
ALTER TABLE job DROP COLUMN next;
-- The step whose turn it is, the point that it is about, and whether lines turn; no step once nothing is left to do.
ALTER TABLE job ADD COLUMN next TEXT;
ALTER TABLE job ADD COLUMN next_at TEXT;
ALTER TABLE job ADD COLUMN turns BIGINT NOT NULL DEFAULT 1;
DROP TABLE lock_on;
CREATE TABLE lock_on (
    site BYTEA NOT NULL,
    fit BYTEA NOT NULL,
    job BYTEA NOT NULL,
    -- What is written on what it is on; none if that is not known here.
    place TEXT,
    label TEXT NOT NULL,
    owner BYTEA NOT NULL,
    -- 1 if the key is in a lock box, and what is written on that.
    boxed BIGINT NOT NULL,
    key_box TEXT,
    device BYTEA NOT NULL,
    since_ms BIGINT NOT NULL,
    zone BIGINT NOT NULL,
    -- 0 while it was forced off and its owner is not told yet.
    is_on BIGINT NOT NULL,
    PRIMARY KEY (site, fit)
) PARTITION BY HASH (site);
DO $parts$
BEGIN
    FOR n IN 0..15 LOOP
        EXECUTE format('CREATE TABLE %I PARTITION OF lock_on FOR VALUES WITH (MODULUS 16, REMAINDER %s)', 'lock_on_' || n, n);
    END LOOP;
END
$parts$;
CREATE INDEX lock_on_job ON lock_on (site, job);

-- Version 1. The same tables as in SQLite; those of a site are partitioned by it.
CREATE TABLE office_version (
    version BIGINT PRIMARY KEY
);
CREATE FUNCTION office_parts(name TEXT) RETURNS void LANGUAGE plpgsql AS $parts$
BEGIN
    FOR n IN 0..15 LOOP
        EXECUTE format('CREATE TABLE %I PARTITION OF %I FOR VALUES WITH (MODULUS 16, REMAINDER %s)', name || '_' || n, name, n);
    END LOOP;
END
$parts$;
-- A device's chain is `link`: every entry once, in order. What a site's phones get is `feed`, numbered without a gap, with the
-- bodies in it. An entry that is in no feed has its body in `loose` (it belongs to no site), `aside` (a person decides) or
-- `quarantine` (another entry has its number). The tables from `job` on follow from the feeds and can be made again from nothing.
CREATE TABLE office (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
);
-- A row that is held while what belongs to no site is handed to sites.
INSERT INTO office VALUES ('meeting', '');
CREATE TABLE site (
    id BYTEA PRIMARY KEY,
    name TEXT NOT NULL,
    -- The site that it is the same place as; itself at first.
    main BYTEA NOT NULL,
    -- 0 until a site lead took it in.
    taken BIGINT NOT NULL,
    -- The last number given in its feed, and the latest moment in it.
    last BIGINT NOT NULL,
    ms BIGINT NOT NULL,
    count BIGINT NOT NULL,
    made_ms BIGINT NOT NULL
);
CREATE INDEX site_main ON site (main);
CREATE TABLE device (
    id BYTEA PRIMARY KEY,
    label TEXT NOT NULL,
    -- SHA-256 of its token; none if it may not call.
    token BYTEA UNIQUE,
    enrolled_ms BIGINT,
    withdrawn_ms BIGINT,
    -- 1 after an entry from the future, until a person released it.
    held BIGINT NOT NULL,
    last_seq BIGINT NOT NULL,
    last_id BYTEA NOT NULL,
    heard_ms BIGINT NOT NULL
);
CREATE TABLE device_site (
    device BYTEA NOT NULL,
    site BYTEA NOT NULL,
    PRIMARY KEY (device, site)
);
CREATE TABLE link (
    device BYTEA NOT NULL,
    seq BIGINT NOT NULL,
    id BYTEA NOT NULL UNIQUE,
    -- 0 in a feed, 1 loose, 2 aside.
    place BIGINT NOT NULL,
    PRIMARY KEY (device, seq)
);
CREATE TABLE feed (
    site BYTEA NOT NULL,
    number BIGINT NOT NULL,
    id BYTEA NOT NULL,
    device BYTEA NOT NULL,
    seq BIGINT NOT NULL,
    job BYTEA,
    came_ms BIGINT NOT NULL,
    -- Empty once a person's data were erased: id, number and signature stay.
    body BYTEA NOT NULL,
    sig BYTEA NOT NULL,
    PRIMARY KEY (site, number),
    UNIQUE (site, id)
) PARTITION BY HASH (site);
SELECT office_parts('feed');
CREATE INDEX feed_job ON feed (site, job);
CREATE INDEX feed_device ON feed (site, device, seq);
CREATE TABLE rolled (
    site BYTEA NOT NULL,
    device BYTEA NOT NULL,
    count BIGINT NOT NULL,
    last_seq BIGINT NOT NULL,
    hash BYTEA NOT NULL,
    -- 1 after an entry came in behind a later one: the hash is worked out again when it is asked for.
    stale BIGINT NOT NULL,
    PRIMARY KEY (site, device)
) PARTITION BY HASH (site);
SELECT office_parts('rolled');
CREATE TABLE loose (
    id BYTEA PRIMARY KEY,
    device BYTEA NOT NULL,
    seq BIGINT NOT NULL,
    came_ms BIGINT NOT NULL,
    body BYTEA NOT NULL,
    sig BYTEA NOT NULL
);
-- Which of `loose` went into which feeds.
CREATE TABLE shared (
    id BYTEA NOT NULL,
    site BYTEA NOT NULL,
    PRIMARY KEY (id, site)
);
-- A site's entry named it before it was here.
CREATE TABLE missed (
    id BYTEA NOT NULL,
    site BYTEA NOT NULL,
    PRIMARY KEY (id, site)
);
CREATE TABLE correction (
    corrects BYTEA NOT NULL,
    id BYTEA NOT NULL,
    PRIMARY KEY (corrects, id)
);
CREATE TABLE aside (
    id BYTEA PRIMARY KEY,
    device BYTEA NOT NULL,
    seq BIGINT NOT NULL,
    site BYTEA,
    reason TEXT NOT NULL,
    came_ms BIGINT NOT NULL,
    body BYTEA NOT NULL,
    sig BYTEA NOT NULL
);
CREATE INDEX aside_device ON aside (device, seq);
CREATE TABLE quarantine (
    id BYTEA PRIMARY KEY,
    device BYTEA NOT NULL,
    seq BIGINT NOT NULL,
    reason TEXT NOT NULL,
    came_ms BIGINT NOT NULL,
    body BYTEA NOT NULL,
    sig BYTEA NOT NULL,
    -- Who looked at it, when, and what they found.
    looked_by TEXT,
    looked_ms BIGINT,
    note TEXT
);
CREATE INDEX quarantine_device ON quarantine (device, seq);
CREATE TABLE job (
    site BYTEA NOT NULL,
    id BYTEA NOT NULL,
    -- Entries of it in the feed, and how many of them the row and its locks and tags were worked out from.
    have BIGINT NOT NULL,
    seen BIGINT NOT NULL,
    title TEXT NOT NULL,
    place TEXT NOT NULL,
    stage TEXT NOT NULL,
    next TEXT NOT NULL,
    proof TEXT NOT NULL,
    done BIGINT NOT NULL,
    opened_ms BIGINT NOT NULL,
    changed_ms BIGINT NOT NULL,
    PRIMARY KEY (site, id)
) PARTITION BY HASH (site);
SELECT office_parts('job');
CREATE INDEX job_stale ON job (site, id) WHERE seen < have;
CREATE TABLE lock_on (
    site BYTEA NOT NULL,
    fit BYTEA NOT NULL,
    job BYTEA NOT NULL,
    place TEXT NOT NULL,
    label TEXT NOT NULL,
    owner BYTEA NOT NULL,
    key_at TEXT NOT NULL,
    device BYTEA NOT NULL,
    since_ms BIGINT NOT NULL,
    zone BIGINT NOT NULL,
    -- 0 while it was forced off and its owner is not told yet.
    is_on BIGINT NOT NULL,
    PRIMARY KEY (site, fit)
) PARTITION BY HASH (site);
SELECT office_parts('lock_on');
CREATE INDEX lock_on_job ON lock_on (site, job);
CREATE TABLE tag (
    site BYTEA NOT NULL,
    tag TEXT NOT NULL,
    point BYTEA NOT NULL,
    job BYTEA NOT NULL,
    label TEXT NOT NULL,
    place TEXT NOT NULL,
    since_ms BIGINT NOT NULL,
    zone BIGINT NOT NULL,
    gone TEXT,
    PRIMARY KEY (site, tag, point)
) PARTITION BY HASH (site);
SELECT office_parts('tag');
-- `site` is 32 zero bytes while the entry is aside.
CREATE TABLE photo_named (
    sha256 BYTEA NOT NULL,
    site BYTEA NOT NULL,
    device BYTEA NOT NULL,
    PRIMARY KEY (sha256, site, device)
);
CREATE INDEX photo_named_device ON photo_named (device);
-- `size` is 0 for the original, otherwise the longest side of the copy in pixels.
CREATE TABLE photo (
    sha256 BYTEA NOT NULL,
    size BIGINT NOT NULL,
    length BIGINT NOT NULL,
    kept_ms BIGINT NOT NULL,
    PRIMARY KEY (sha256, size)
);
CREATE TABLE upload (
    id TEXT PRIMARY KEY,
    device BYTEA NOT NULL,
    sha256 BYTEA NOT NULL,
    size BIGINT NOT NULL,
    length BIGINT NOT NULL,
    -- Bytes that are kept so far.
    here BIGINT NOT NULL,
    touched_ms BIGINT NOT NULL
);
-- The pieces of an upload, end to end.
CREATE TABLE part (
    upload TEXT NOT NULL,
    start BIGINT NOT NULL,
    length BIGINT NOT NULL,
    path TEXT NOT NULL,
    PRIMARY KEY (upload, start)
);
CREATE INDEX upload_device ON upload (device);
CREATE INDEX upload_touched ON upload (touched_ms);
CREATE TABLE code (
    -- SHA-256 of the code.
    hash BYTEA PRIMARY KEY,
    label TEXT NOT NULL,
    made_by TEXT NOT NULL,
    expires_ms BIGINT NOT NULL,
    used_ms BIGINT,
    used_by BYTEA
);
CREATE TABLE code_site (
    hash BYTEA NOT NULL,
    site BYTEA NOT NULL,
    PRIMARY KEY (hash, site)
);
CREATE TABLE person (
    id TEXT PRIMARY KEY,
    login TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL,
    -- argon2id in the PHC format.
    password TEXT NOT NULL,
    -- 1 reader, 2 planner, 3 site lead, 4 admin.
    role BIGINT NOT NULL,
    -- 1 until the password was changed by the person.
    fresh BIGINT NOT NULL,
    off BIGINT NOT NULL,
    -- The entry that names them in the journal, once they planned something.
    entry BYTEA,
    made_ms BIGINT NOT NULL
);
CREATE TABLE person_site (
    person TEXT NOT NULL,
    site BYTEA NOT NULL,
    PRIMARY KEY (person, site)
);
CREATE TABLE session (
    -- SHA-256 of the cookie.
    token BYTEA PRIMARY KEY,
    person TEXT NOT NULL,
    csrf TEXT NOT NULL,
    made_ms BIGINT NOT NULL,
    seen_ms BIGINT NOT NULL
);
CREATE INDEX session_person ON session (person);
CREATE TABLE audit (
    number BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    ms BIGINT NOT NULL,
    who TEXT NOT NULL,
    what TEXT NOT NULL,
    about TEXT NOT NULL,
    origin TEXT NOT NULL
);
CREATE TABLE rate (
    what TEXT NOT NULL,
    who TEXT NOT NULL,
    slot BIGINT NOT NULL,
    tries BIGINT NOT NULL,
    PRIMARY KEY (what, who, slot)
);
CREATE INDEX rate_slot ON rate (slot);
DROP FUNCTION office_parts(TEXT);

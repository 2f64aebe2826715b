-- Version 1. A device's chain is `link`: every entry once, in order. What a site's phones get is `feed`, numbered without a gap, with the
-- bodies in it. An entry that is in no feed has its body in `loose` (it belongs to no site), `aside` (a person decides) or
-- `quarantine` (another entry has its number). The tables from `job` on follow from the feeds and can be made again from nothing.
CREATE TABLE office (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;
-- A row that is held while what belongs to no site is handed to sites.
INSERT INTO office VALUES ('meeting', '');
CREATE TABLE site (
    id BLOB PRIMARY KEY,
    name TEXT NOT NULL,
    -- The site that it is the same place as; itself at first.
    main BLOB NOT NULL,
    -- 0 until a site lead took it in.
    taken INTEGER NOT NULL,
    -- The last number given in its feed, and the latest moment in it.
    last INTEGER NOT NULL,
    ms INTEGER NOT NULL,
    count INTEGER NOT NULL,
    made_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX site_main ON site (main);
CREATE TABLE device (
    id BLOB PRIMARY KEY,
    label TEXT NOT NULL,
    -- SHA-256 of its token; none if it may not call.
    token BLOB UNIQUE,
    enrolled_ms INTEGER,
    withdrawn_ms INTEGER,
    -- 1 after an entry from the future, until a person released it.
    held INTEGER NOT NULL,
    last_seq INTEGER NOT NULL,
    last_id BLOB NOT NULL,
    heard_ms INTEGER NOT NULL
) STRICT;
CREATE TABLE device_site (
    device BLOB NOT NULL,
    site BLOB NOT NULL,
    PRIMARY KEY (device, site)
) STRICT;
CREATE TABLE link (
    device BLOB NOT NULL,
    seq INTEGER NOT NULL,
    id BLOB NOT NULL UNIQUE,
    -- 0 in a feed, 1 loose, 2 aside.
    place INTEGER NOT NULL,
    PRIMARY KEY (device, seq)
) STRICT;
CREATE TABLE feed (
    site BLOB NOT NULL,
    number INTEGER NOT NULL,
    id BLOB NOT NULL,
    device BLOB NOT NULL,
    seq INTEGER NOT NULL,
    job BLOB,
    came_ms INTEGER NOT NULL,
    -- Empty once a person's data were erased: id, number and signature stay.
    body BLOB NOT NULL,
    sig BLOB NOT NULL,
    PRIMARY KEY (site, number),
    UNIQUE (site, id)
) STRICT;
CREATE INDEX feed_job ON feed (site, job);
CREATE INDEX feed_device ON feed (site, device, seq);
CREATE TABLE rolled (
    site BLOB NOT NULL,
    device BLOB NOT NULL,
    count INTEGER NOT NULL,
    last_seq INTEGER NOT NULL,
    hash BLOB NOT NULL,
    -- 1 after an entry came in behind a later one: the hash is worked out again when it is asked for.
    stale INTEGER NOT NULL,
    PRIMARY KEY (site, device)
) STRICT;
CREATE TABLE loose (
    id BLOB PRIMARY KEY,
    device BLOB NOT NULL,
    seq INTEGER NOT NULL,
    came_ms INTEGER NOT NULL,
    body BLOB NOT NULL,
    sig BLOB NOT NULL
) STRICT;
-- Which of `loose` went into which feeds.
CREATE TABLE shared (
    id BLOB NOT NULL,
    site BLOB NOT NULL,
    PRIMARY KEY (id, site)
) STRICT;
-- A site's entry named it before it was here.
CREATE TABLE missed (
    id BLOB NOT NULL,
    site BLOB NOT NULL,
    PRIMARY KEY (id, site)
) STRICT;
CREATE TABLE correction (
    corrects BLOB NOT NULL,
    id BLOB NOT NULL,
    PRIMARY KEY (corrects, id)
) STRICT;
CREATE TABLE aside (
    id BLOB PRIMARY KEY,
    device BLOB NOT NULL,
    seq INTEGER NOT NULL,
    site BLOB,
    reason TEXT NOT NULL,
    came_ms INTEGER NOT NULL,
    body BLOB NOT NULL,
    sig BLOB NOT NULL
) STRICT;
CREATE INDEX aside_device ON aside (device, seq);
CREATE TABLE quarantine (
    id BLOB PRIMARY KEY,
    device BLOB NOT NULL,
    seq INTEGER NOT NULL,
    reason TEXT NOT NULL,
    came_ms INTEGER NOT NULL,
    body BLOB NOT NULL,
    sig BLOB NOT NULL,
    -- Who looked at it, when, and what they found.
    looked_by TEXT,
    looked_ms INTEGER,
    note TEXT
) STRICT;
CREATE INDEX quarantine_device ON quarantine (device, seq);
CREATE TABLE job (
    site BLOB NOT NULL,
    id BLOB NOT NULL,
    -- Entries of it in the feed, and how many of them the row and its locks and tags were worked out from.
    have INTEGER NOT NULL,
    seen INTEGER NOT NULL,
    title TEXT NOT NULL,
    place TEXT NOT NULL,
    stage TEXT NOT NULL,
    next TEXT NOT NULL,
    proof TEXT NOT NULL,
    done INTEGER NOT NULL,
    opened_ms INTEGER NOT NULL,
    changed_ms INTEGER NOT NULL,
    PRIMARY KEY (site, id)
) STRICT;
CREATE INDEX job_stale ON job (site, id) WHERE seen < have;
CREATE TABLE lock_on (
    site BLOB NOT NULL,
    fit BLOB NOT NULL,
    job BLOB NOT NULL,
    place TEXT NOT NULL,
    label TEXT NOT NULL,
    owner BLOB NOT NULL,
    key_at TEXT NOT NULL,
    device BLOB NOT NULL,
    since_ms INTEGER NOT NULL,
    zone INTEGER NOT NULL,
    -- 0 while it was forced off and its owner is not told yet.
    is_on INTEGER NOT NULL,
    PRIMARY KEY (site, fit)
) STRICT;
CREATE INDEX lock_on_job ON lock_on (site, job);
CREATE TABLE tag (
    site BLOB NOT NULL,
    tag TEXT NOT NULL,
    point BLOB NOT NULL,
    job BLOB NOT NULL,
    label TEXT NOT NULL,
    place TEXT NOT NULL,
    since_ms INTEGER NOT NULL,
    zone INTEGER NOT NULL,
    gone TEXT,
    PRIMARY KEY (site, tag, point)
) STRICT;
-- `site` is 32 zero bytes while the entry is aside.
CREATE TABLE photo_named (
    sha256 BLOB NOT NULL,
    site BLOB NOT NULL,
    device BLOB NOT NULL,
    PRIMARY KEY (sha256, site, device)
) STRICT;
CREATE INDEX photo_named_device ON photo_named (device);
-- `size` is 0 for the original, otherwise the longest side of the copy in pixels.
CREATE TABLE photo (
    sha256 BLOB NOT NULL,
    size INTEGER NOT NULL,
    length INTEGER NOT NULL,
    kept_ms INTEGER NOT NULL,
    PRIMARY KEY (sha256, size)
) STRICT;
CREATE TABLE upload (
    id TEXT PRIMARY KEY,
    device BLOB NOT NULL,
    sha256 BLOB NOT NULL,
    size INTEGER NOT NULL,
    length INTEGER NOT NULL,
    -- Bytes that are kept so far.
    here INTEGER NOT NULL,
    touched_ms INTEGER NOT NULL
) STRICT;
-- The pieces of an upload, end to end.
CREATE TABLE part (
    upload TEXT NOT NULL,
    start INTEGER NOT NULL,
    length INTEGER NOT NULL,
    path TEXT NOT NULL,
    PRIMARY KEY (upload, start)
) STRICT;
CREATE INDEX upload_device ON upload (device);
CREATE INDEX upload_touched ON upload (touched_ms);
CREATE TABLE code (
    -- SHA-256 of the code.
    hash BLOB PRIMARY KEY,
    label TEXT NOT NULL,
    made_by TEXT NOT NULL,
    expires_ms INTEGER NOT NULL,
    used_ms INTEGER,
    used_by BLOB
) STRICT;
CREATE TABLE code_site (
    hash BLOB NOT NULL,
    site BLOB NOT NULL,
    PRIMARY KEY (hash, site)
) STRICT;
CREATE TABLE person (
    id TEXT PRIMARY KEY,
    login TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL,
    -- argon2id in the PHC format.
    password TEXT NOT NULL,
    -- 1 reader, 2 planner, 3 site lead, 4 admin.
    role INTEGER NOT NULL,
    -- 1 until the password was changed by the person.
    fresh INTEGER NOT NULL,
    off INTEGER NOT NULL,
    -- The entry that names them in the journal, once they planned something.
    entry BLOB,
    made_ms INTEGER NOT NULL
) STRICT;
CREATE TABLE person_site (
    person TEXT NOT NULL,
    site BLOB NOT NULL,
    PRIMARY KEY (person, site)
) STRICT;
CREATE TABLE session (
    -- SHA-256 of the cookie.
    token BLOB PRIMARY KEY,
    person TEXT NOT NULL,
    csrf TEXT NOT NULL,
    made_ms INTEGER NOT NULL,
    seen_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX session_person ON session (person);
CREATE TABLE audit (
    number INTEGER PRIMARY KEY,
    ms INTEGER NOT NULL,
    who TEXT NOT NULL,
    what TEXT NOT NULL,
    about TEXT NOT NULL,
    origin TEXT NOT NULL
) STRICT;
CREATE TABLE rate (
    what TEXT NOT NULL,
    who TEXT NOT NULL,
    slot INTEGER NOT NULL,
    tries INTEGER NOT NULL,
    PRIMARY KEY (what, who, slot)
) STRICT;
CREATE INDEX rate_slot ON rate (slot);

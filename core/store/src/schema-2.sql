-- Version 2: tags, worked out from the journal like the other tables. No journal of version 1 knows of any.
CREATE TABLE tag (
    tag TEXT NOT NULL,
    point BLOB NOT NULL,
    job BLOB NOT NULL,
    label TEXT NOT NULL,
    place TEXT NOT NULL,
    since_ms INTEGER NOT NULL,
    zone INTEGER NOT NULL,
    gone TEXT,
    PRIMARY KEY (tag, point)
) STRICT, WITHOUT ROWID;

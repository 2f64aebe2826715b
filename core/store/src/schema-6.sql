-- Version 6: the list of jobs holds codes, and no sentence: `next` is the code of the step whose turn it is, NULL once there is none;
-- `next_at` the label of the point that it is about; `turns` whether the job has more than one line. It is worked out again from the journal.
DROP TABLE job;
CREATE TABLE job (
    id BLOB PRIMARY KEY,
    title TEXT NOT NULL,
    place TEXT NOT NULL,
    next TEXT,
    next_at TEXT,
    turns INTEGER NOT NULL,
    proof TEXT NOT NULL,
    done INTEGER NOT NULL,
    opened_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

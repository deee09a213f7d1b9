-- What runs on SQLite and on PostgreSQL alike: TEXT and BIGINT columns only.

-- One row: where the chain ends. Every change locks it first, so that changes come one after the other.
CREATE TABLE head (
    id BIGINT PRIMARY KEY,
    seq BIGINT NOT NULL,
    hash TEXT NOT NULL
);

INSERT INTO head (id, seq, hash)
VALUES (1, 0, '0000000000000000000000000000000000000000000000000000000000000000');

-- Appended to, never changed.
CREATE TABLE journal (
    seq BIGINT PRIMARY KEY,
    change BIGINT NOT NULL,
    at TEXT NOT NULL,
    by TEXT NOT NULL,
    what TEXT NOT NULL,
    kind TEXT NOT NULL,
    name TEXT NOT NULL,
    part TEXT NOT NULL,
    version BIGINT NOT NULL,
    before TEXT,
    after TEXT,
    previous TEXT NOT NULL,
    hash TEXT NOT NULL
);

CREATE INDEX journal_of_record ON journal (kind, name, part, version);

-- The latest state of each record; without a value where it was removed.
CREATE TABLE record (
    kind TEXT NOT NULL,
    name TEXT NOT NULL,
    part TEXT NOT NULL,
    version BIGINT NOT NULL,
    value TEXT,
    seq BIGINT NOT NULL,
    since BIGINT NOT NULL,
    PRIMARY KEY (kind, name, part)
);

CREATE INDEX record_in_order ON record (kind, since);

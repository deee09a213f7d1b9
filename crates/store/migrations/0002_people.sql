-- What the journal mustn't hold: secrets, and what passes. Who there is and what each may do are records.

-- A password as Argon2id left it, in the form of the PHC string.
CREATE TABLE credential (
    person TEXT PRIMARY KEY,
    password TEXT NOT NULL
);

-- Times are seconds since 1970. The hash is that of a token which the browser alone holds.
CREATE TABLE session (
    hash TEXT PRIMARY KEY,
    person TEXT NOT NULL,
    began BIGINT NOT NULL,
    used BIGINT NOT NULL
);

CREATE INDEX session_of_person ON session (person);

-- Who came, who couldn't, who went; milliseconds since 1970. The person is empty where the name was nobody's.
CREATE TABLE visit (
    at BIGINT NOT NULL,
    person TEXT NOT NULL,
    event TEXT NOT NULL,
    address TEXT NOT NULL
);

CREATE INDEX visit_in_order ON visit (at);

CREATE INDEX journal_of_person ON journal (by, seq);

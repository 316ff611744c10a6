-- +goose Up
-- What a teacher keeps beside practicals: a correction by the words of its
-- step, the technique table under the empty name.
CREATE TABLE kept (
    teacher  TEXT NOT NULL,
    kind     TEXT NOT NULL,
    name     TEXT NOT NULL,
    document TEXT NOT NULL,
    saved    TEXT NOT NULL, -- RFC 3339, UTC
    PRIMARY KEY (teacher, kind, name)
) STRICT, WITHOUT ROWID;

-- +goose Down
DROP TABLE kept;

-- +goose Up
CREATE TABLE classes (
    id   TEXT PRIMARY KEY,
    name TEXT NOT NULL
) STRICT;

CREATE TABLE candidates (
    class    TEXT    NOT NULL REFERENCES classes (id) ON DELETE CASCADE,
    position INTEGER NOT NULL CHECK (position >= 0),
    first    TEXT    NOT NULL,
    initial  TEXT    NOT NULL CHECK (length(initial) <= 1),
    PRIMARY KEY (class, position)
) STRICT;

-- +goose Down
DROP TABLE candidates;
DROP TABLE classes;

-- +goose Up
CREATE TABLE practicals (
    id      TEXT    PRIMARY KEY,
    version INTEGER NOT NULL, -- the current one
    deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
    FOREIGN KEY (id, version) REFERENCES versions (practical, number) DEFERRABLE INITIALLY DEFERRED
) STRICT;

-- Every edit is a whole document. Nothing is ever removed from here.
CREATE TABLE versions (
    practical TEXT    NOT NULL REFERENCES practicals (id),
    number    INTEGER NOT NULL CHECK (number > 0),
    parent    INTEGER CHECK (parent < number), -- NULL: the first
    label     TEXT    NOT NULL,
    saved     TEXT    NOT NULL, -- RFC 3339, UTC
    document  TEXT    NOT NULL CHECK (json_valid(document)),
    PRIMARY KEY (practical, number),
    FOREIGN KEY (practical, parent) REFERENCES versions (practical, number)
) STRICT;

CREATE INDEX versions_by_parent ON versions (practical, parent);

CREATE TABLE plans (
    practical TEXT    NOT NULL,
    version   INTEGER NOT NULL,
    plan      BLOB    NOT NULL, -- encoding/gob of timeplan.Plan: JSON would lose times past midnight
    PRIMARY KEY (practical, version),
    FOREIGN KEY (practical, version) REFERENCES versions (practical, number)
) STRICT;

-- +goose Down
DROP TABLE plans;
DROP TABLE versions;
DROP TABLE practicals;

-- +goose Up
-- Plans that learners wrote, as they came. Nothing is ever removed from here.
CREATE TABLE handed_in (
    id        INTEGER PRIMARY KEY,
    practical TEXT    NOT NULL REFERENCES practicals (id),
    name      TEXT    NOT NULL,
    data      BLOB    NOT NULL,
    saved     TEXT    NOT NULL, -- RFC 3339, UTC
    fixed     TEXT    NOT NULL DEFAULT '{}' CHECK (json_valid(fixed)),
    away      INTEGER NOT NULL DEFAULT 0 CHECK (away IN (0, 1))
) STRICT;

CREATE INDEX handed_in_by_practical ON handed_in (practical, id);

-- +goose Down
DROP TABLE handed_in;

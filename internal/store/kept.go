package store

import (
	"context"
	"database/sql"
	"maps"
	"slices"
	"time"
)

// Kept is what a teacher keeps of one kind, by name. The documents are as they
// were given to Keep; the store does not look into them.
func (s *Store) Kept(ctx context.Context, teacher, kind string) (map[string]string, error) {
	rows, err := s.read.QueryContext(ctx, `SELECT name, document FROM kept WHERE teacher = ? AND kind = ?`, teacher, kind)
	if err != nil {
		return nil, explain(s.path, err)
	}
	defer func() { _ = rows.Close() }() // rows.Err tells
	all := map[string]string{}
	for rows.Next() {
		var name, document string
		if err := rows.Scan(&name, &document); err != nil {
			return nil, explain(s.path, err)
		}
		all[name] = document
	}
	return all, explain(s.path, rows.Err())
}

// Keep puts documents of a kind in place of those of the same names, and takes
// others away, all or nothing. A name to take away need not be there.
func (s *Store) Keep(ctx context.Context, teacher, kind string, put map[string]string, take []string, at time.Time) error {
	return s.within(ctx, func(tx *sql.Tx) error {
		for _, name := range take {
			if _, err := tx.ExecContext(ctx, `DELETE FROM kept WHERE teacher = ? AND kind = ? AND name = ?`, teacher, kind, name); err != nil {
				return err
			}
		}
		for _, name := range slices.Sorted(maps.Keys(put)) {
			if _, err := tx.ExecContext(ctx, `
INSERT INTO kept (teacher, kind, name, document, saved) VALUES (?, ?, ?, ?, ?)
ON CONFLICT (teacher, kind, name) DO UPDATE SET document = excluded.document, saved = excluded.saved`,
				teacher, kind, name, put[name], at.UTC().Format(time.RFC3339Nano)); err != nil {
				return err
			}
		}
		return nil
	})
}

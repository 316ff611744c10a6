package store

import (
	"context"
	"database/sql"

	"plait.example/internal/practical"
)

// Classes is every class with its candidates in their order, by name.
func (s *Store) Classes(ctx context.Context) ([]practical.Class, error) {
	rows, err := s.read.QueryContext(ctx, `
SELECT c.id, c.name, d.first, d.initial
FROM classes c LEFT JOIN candidates d ON d.class = c.id
ORDER BY c.name, c.id, d.position`)
	if err != nil {
		return nil, explain(s.path, err)
	}
	defer func() { _ = rows.Close() }() // rows.Err tells
	var list []practical.Class
	for rows.Next() {
		var id, name string
		var first, initial sql.NullString
		if err := rows.Scan(&id, &name, &first, &initial); err != nil {
			return nil, explain(s.path, err)
		}
		if len(list) == 0 || list[len(list)-1].ID != id {
			list = append(list, practical.Class{ID: id, Name: name})
		}
		if first.Valid {
			last := &list[len(list)-1]
			last.Candidates = append(last.Candidates, practical.Candidate{First: first.String, Initial: initial.String})
		}
	}
	return list, explain(s.path, rows.Err())
}

// SaveClass keeps a class: a new one when its ID is empty, else in place of the
// one with that ID (NotFound when there is none). Names taken out are erased.
func (s *Store) SaveClass(ctx context.Context, c practical.Class) (practical.Class, error) {
	isNew := c.ID == ""
	if isNew {
		c.ID = newID()
	}
	return c, s.within(ctx, func(tx *sql.Tx) error {
		put := `UPDATE classes SET name = ? WHERE id = ?`
		if isNew {
			put = `INSERT INTO classes (name, id) VALUES (?, ?)`
		}
		done, err := tx.ExecContext(ctx, put, c.Name, c.ID)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil {
			return err
		} else if n == 0 {
			return notThere("class", c.ID)
		}
		return putCandidates(ctx, tx, c)
	})
}

func putCandidates(ctx context.Context, tx *sql.Tx, c practical.Class) error {
	if _, err := tx.ExecContext(ctx, `DELETE FROM candidates WHERE class = ?`, c.ID); err != nil {
		return err
	}
	for i, one := range c.Candidates {
		if _, err := tx.ExecContext(ctx, `INSERT INTO candidates (class, position, first, initial) VALUES (?, ?, ?, ?)`,
			c.ID, i, one.First, one.Initial); err != nil {
			return err
		}
	}
	return nil
}

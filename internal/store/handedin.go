package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"plait.example/internal/timeplan"
)

// HandIn keeps files with plans for a practical, all or none, and gives how many
// of them are new. A file that came the last time that something of its name did,
// to the byte, is there already: it is not kept again, and comes back if it was
// put away. It fails with NotFound when there is no such practical.
func (s *Store) HandIn(ctx context.Context, practical string, files []timeplan.HandedIn, at time.Time) (fresh int, err error) {
	err = s.within(ctx, func(tx *sql.Tx) error {
		var there int
		if err := tx.QueryRowContext(ctx, `SELECT count(*) FROM practicals WHERE id = ?`, practical).Scan(&there); err != nil {
			return err
		}
		if there == 0 {
			return notThere("practical", practical)
		}
		more, err := notYetIn(ctx, tx, practical, files)
		if err != nil {
			return err
		}
		for _, f := range more {
			if f.Data == nil {
				f.Data = []byte{} // an empty file is a file
			}
			if _, err := tx.ExecContext(ctx, `INSERT INTO handed_in (practical, name, data, saved) VALUES (?, ?, ?, ?)`,
				practical, f.Name, f.Data, at.UTC().Format(time.RFC3339Nano)); err != nil {
				return err
			}
		}
		fresh = len(more)
		return nil
	})
	return fresh, err
}

// notYetIn are the files that are not there yet; those that are and were put
// away are brought back.
func notYetIn(ctx context.Context, tx *sql.Tx, practical string, files []timeplan.HandedIn) (more []timeplan.HandedIn, err error) {
	for _, f := range files {
		if f.Data == nil {
			f.Data = []byte{}
		}
		done, err := tx.ExecContext(ctx, `
UPDATE handed_in SET away = 0 WHERE practical = ?1 AND name = ?2 AND data = ?3 AND saved =
	(SELECT saved FROM handed_in WHERE practical = ?1 AND name = ?2 ORDER BY id DESC LIMIT 1)`, practical, f.Name, f.Data)
		if err != nil {
			return nil, err
		}
		n, err := done.RowsAffected()
		if err != nil {
			return nil, err
		}
		if n == 0 {
			more = append(more, f)
		}
	}
	return more, nil
}

// HandedIn is every plan that was handed in for a practical, the first one first,
// those put away too, without the files themselves (see HandedData).
func (s *Store) HandedIn(ctx context.Context, practical string) ([]timeplan.HandedIn, error) {
	rows, err := s.read.QueryContext(ctx, `SELECT id, name, saved, fixed, away FROM handed_in WHERE practical = ? ORDER BY id`, practical)
	if err != nil {
		return nil, explain(s.path, err)
	}
	defer func() { _ = rows.Close() }() // rows.Err tells
	var all []timeplan.HandedIn
	for rows.Next() {
		var h timeplan.HandedIn
		var saved, fixed string
		if err := rows.Scan(&h.ID, &h.Name, &saved, &fixed, &h.Away); err != nil {
			return nil, explain(s.path, err)
		}
		if h.At, err = time.Parse(time.RFC3339Nano, saved); err != nil {
			return nil, fmt.Errorf("the plan %q handed in: %w", h.Name, err)
		}
		if err := json.Unmarshal([]byte(fixed), &h.Fixed); err != nil {
			return nil, fmt.Errorf("the rows of the plan %q handed in: %w", h.Name, err)
		}
		all = append(all, h)
	}
	return all, explain(s.path, rows.Err())
}

// HandedData is the file of a plan as it came. It fails with NotFound when the
// practical has no such plan.
func (s *Store) HandedData(ctx context.Context, practical string, id int64) (data []byte, err error) {
	err = s.read.QueryRowContext(ctx, `SELECT data FROM handed_in WHERE practical = ? AND id = ?`, practical, id).Scan(&data)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, notThere("plan", fmt.Sprint(id))
	}
	return data, explain(s.path, err)
}

// Fix keeps which steps the rows of a plan stand for, in place of what was kept
// before. It fails with NotFound when the practical has no such plan.
func (s *Store) Fix(ctx context.Context, practical string, id int64, fixed map[int][]string) error {
	text, err := json.Marshal(fixed)
	if err != nil {
		return fmt.Errorf("rows to keep: %w", err)
	}
	return s.changeHandedIn(ctx, practical, id, `UPDATE handed_in SET fixed = ? WHERE practical = ? AND id = ?`, string(text))
}

// PutAway puts a plan away, or brings it back. It fails with NotFound when the
// practical has no such plan.
func (s *Store) PutAway(ctx context.Context, practical string, id int64, away bool) error {
	return s.changeHandedIn(ctx, practical, id, `UPDATE handed_in SET away = ? WHERE practical = ? AND id = ?`, away)
}

func (s *Store) changeHandedIn(ctx context.Context, practical string, id int64, change string, to any) error {
	return s.within(ctx, func(tx *sql.Tx) error {
		done, err := tx.ExecContext(ctx, change, to, practical, id)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil {
			return err
		} else if n == 0 {
			return notThere("plan", fmt.Sprint(id))
		}
		return nil
	})
}

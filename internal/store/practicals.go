package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// Create keeps a new practical as version 1.
func (s *Store) Create(ctx context.Context, p *practical.Practical, label string, at time.Time) (timeplan.Record, error) {
	id := newID()
	err := s.within(ctx, func(tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, `INSERT INTO practicals (id, version) VALUES (?, 1)`, id); err != nil {
			return err
		}
		return insertVersion(ctx, tx, id, 1, nil, p, label, at)
	})
	if err != nil {
		return timeplan.Record{}, err
	}
	return s.Load(ctx, id)
}

// Save keeps p as a new version after version. It fails with Conflict when
// version is not the current one, with NotFound when there is no such practical.
func (s *Store) Save(ctx context.Context, id string, version int, p *practical.Practical, label string, at time.Time) (timeplan.Record, error) {
	err := s.within(ctx, func(tx *sql.Tx) error {
		if err := mustBeCurrent(ctx, tx, id, version); err != nil {
			return err
		}
		var number int
		if err := tx.QueryRowContext(ctx, `SELECT max(number) + 1 FROM versions WHERE practical = ?`, id).Scan(&number); err != nil {
			return err
		}
		if err := insertVersion(ctx, tx, id, number, version, p, label, at); err != nil {
			return err
		}
		return setCurrent(ctx, tx, id, number)
	})
	if err != nil {
		return timeplan.Record{}, err
	}
	return s.Load(ctx, id)
}

// Travel makes the version before (by < 0) or after (by > 0) the given one the
// current one. After means the newest made from it. It fails with Conflict when
// version is not current, and with Invalid when there is nowhere to go.
func (s *Store) Travel(ctx context.Context, id string, version, by int) (timeplan.Record, error) {
	err := s.within(ctx, func(tx *sql.Tx) error {
		if err := mustBeCurrent(ctx, tx, id, version); err != nil {
			return err
		}
		find, nowhere := `SELECT parent FROM versions WHERE practical = ? AND number = ?`, "there is nothing to undo"
		if by > 0 {
			find, nowhere = `SELECT max(number) FROM versions WHERE practical = ? AND parent = ?`, "there is nothing to redo"
		}
		var to sql.NullInt64
		if err := tx.QueryRowContext(ctx, find, id, version).Scan(&to); err != nil {
			return err
		}
		if !to.Valid {
			return practical.Fault{Code: practical.Invalid, Message: nowhere, Hint: "go on from here"}
		}
		return setCurrent(ctx, tx, id, int(to.Int64))
	})
	if err != nil {
		return timeplan.Record{}, err
	}
	return s.Load(ctx, id)
}

// Delete marks a practical as deleted, or takes the mark away. Nothing is removed.
func (s *Store) Delete(ctx context.Context, id string, deleted bool) error {
	return s.within(ctx, func(tx *sql.Tx) error {
		done, err := tx.ExecContext(ctx, `UPDATE practicals SET deleted = ? WHERE id = ?`, deleted, id)
		return oneRow(done, err, id)
	})
}

func mustBeCurrent(ctx context.Context, tx *sql.Tx, id string, version int) error {
	var current int
	err := tx.QueryRowContext(ctx, `SELECT version FROM practicals WHERE id = ?`, id).Scan(&current)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return notThere("practical", id)
	case err != nil:
		return err
	case current != version:
		return practical.Fault{
			Code:    practical.Conflict,
			Message: fmt.Sprintf("the practical was changed in the meantime (it stands at version %d, the change was made to version %d)", current, version),
			Hint:    "look at it as it is now, then make your change again",
		}
	}
	return nil
}

func insertVersion(ctx context.Context, tx *sql.Tx, id string, number int, parent any, p *practical.Practical, label string, at time.Time) error {
	document, err := json.Marshal(p)
	if err != nil {
		return fmt.Errorf("write practical %s: %w", id, err)
	}
	_, err = tx.ExecContext(ctx, `INSERT INTO versions (practical, number, parent, label, saved, document) VALUES (?, ?, ?, ?, ?, ?)`,
		id, number, parent, label, at.UTC().Format(time.RFC3339Nano), string(document))
	return err
}

func setCurrent(ctx context.Context, tx *sql.Tx, id string, number int) error {
	done, err := tx.ExecContext(ctx, `UPDATE practicals SET version = ? WHERE id = ?`, number, id)
	return oneRow(done, err, id)
}

func oneRow(done sql.Result, err error, id string) error {
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); err != nil || n == 1 {
		return err
	}
	return notThere("practical", id)
}

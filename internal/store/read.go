package store

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/gob"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

const selectRecord = `
SELECT p.deleted, v.number, v.label, v.saved, v.document,
       v.parent IS NOT NULL, coalesce(next.label, ''), next.number IS NOT NULL, plans.plan,
       EXISTS (SELECT 1 FROM plans WHERE practical = p.id AND version < v.number)
FROM practicals p
JOIN versions v ON v.practical = p.id AND v.number = p.version
LEFT JOIN versions next ON next.practical = p.id AND next.number =
     (SELECT max(number) FROM versions WHERE practical = p.id AND parent = v.number)
LEFT JOIN plans ON plans.practical = p.id AND plans.version = v.number
WHERE p.id = ?`

// Load is a practical at its current version with the plan of that version. It
// fails with NotFound. A deleted practical is still there, and marked.
func (s *Store) Load(ctx context.Context, id string) (timeplan.Record, error) {
	r := timeplan.Record{ID: id}
	var saved, document string
	var plan []byte
	var planned bool
	err := s.read.QueryRowContext(ctx, selectRecord, id).Scan(&r.Deleted, &r.Version, &r.Label, &saved, &document,
		&r.CanUndo, &r.RedoLabel, &r.CanRedo, &plan, &planned)
	if errors.Is(err, sql.ErrNoRows) {
		return timeplan.Record{}, notThere("practical", id)
	}
	if err != nil {
		return timeplan.Record{}, explain(s.path, err)
	}
	if r.CanUndo {
		r.UndoLabel = r.Label
	}
	r.PlanStale = planned && plan == nil
	if err := decode(&r, saved, document, plan); err != nil {
		return timeplan.Record{}, fmt.Errorf("store %s: practical %s version %d: %w", s.path, id, r.Version, err)
	}
	return r, nil
}

func decode(r *timeplan.Record, saved, document string, plan []byte) (err error) {
	if r.Saved, err = time.Parse(time.RFC3339Nano, saved); err != nil {
		return err
	}
	r.Practical = new(practical.Practical)
	if err := json.Unmarshal([]byte(document), r.Practical); err != nil {
		return err
	}
	if plan == nil {
		return nil
	}
	r.Plan = new(timeplan.Plan)
	return gob.NewDecoder(bytes.NewReader(plan)).Decode(r.Plan)
}

const selectSummaries = `
SELECT p.id, p.deleted, v.number, v.saved, plans.version IS NOT NULL,
       coalesce(json_extract(v.document, '$.title'), ''), coalesce(json_extract(v.document, '$.date'), ''),
       coalesce(json_array_length(v.document, '$.dishes'), 0)
FROM practicals p
JOIN versions v ON v.practical = p.id AND v.number = p.version
LEFT JOIN plans ON plans.practical = p.id AND plans.version = v.number
ORDER BY v.saved DESC, p.rowid DESC`

// List names every practical, deleted ones too, the last changed first.
func (s *Store) List(ctx context.Context) ([]timeplan.Summary, error) {
	rows, err := s.read.QueryContext(ctx, selectSummaries)
	if err != nil {
		return nil, explain(s.path, err)
	}
	defer func() { _ = rows.Close() }() // rows.Err tells
	var list []timeplan.Summary
	for rows.Next() {
		var one timeplan.Summary
		var saved string
		if err := rows.Scan(&one.ID, &one.Deleted, &one.Version, &saved, &one.Planned, &one.Title, &one.Date, &one.Dishes); err != nil {
			return nil, explain(s.path, err)
		}
		if one.Saved, err = time.Parse(time.RFC3339Nano, saved); err != nil {
			return nil, fmt.Errorf("store %s: practical %s: %w", s.path, one.ID, err)
		}
		list = append(list, one)
	}
	return list, explain(s.path, rows.Err())
}

// LastPlan is the plan kept of the newest version that has one, nil where no
// version of the practical has.
func (s *Store) LastPlan(ctx context.Context, id string) (*timeplan.Plan, error) {
	var data []byte
	err := s.read.QueryRowContext(ctx, `SELECT plan FROM plans WHERE practical = ? ORDER BY version DESC LIMIT 1`, id).Scan(&data)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, explain(s.path, err)
	}
	plan := new(timeplan.Plan)
	if err := gob.NewDecoder(bytes.NewReader(data)).Decode(plan); err != nil {
		return nil, fmt.Errorf("store %s: last plan of practical %s: %w", s.path, id, err)
	}
	return plan, nil
}

// SavePlan keeps the plan of a version, in place of an older plan of that
// version. It fails with NotFound when there is no such version.
func (s *Store) SavePlan(ctx context.Context, id string, version int, plan *timeplan.Plan) error {
	var data bytes.Buffer
	if err := gob.NewEncoder(&data).Encode(plan); err != nil {
		return fmt.Errorf("write plan of %s: %w", id, err)
	}
	return s.within(ctx, func(tx *sql.Tx) error {
		done, err := tx.ExecContext(ctx, `
INSERT INTO plans (practical, version, plan)
SELECT practical, number, ? FROM versions WHERE practical = ? AND number = ?
ON CONFLICT (practical, version) DO UPDATE SET plan = excluded.plan`, data.Bytes(), id, version)
		return oneRow(done, err, id)
	})
}

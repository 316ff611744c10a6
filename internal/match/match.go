// Package match finds, for each row of a written plan, the steps of the
// recipes that it stands for, jointly over the whole plan, with how sure it
// is. It judges nothing: what is missing or wrong is for others to say.
package match

import (
	"context"

	"plait.example/internal/act"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// Matched is a written plan beside its practical.
type Matched struct {
	Plan      written.Plan
	Practical *practical.Practical // nil: only the plan is there
	Rows      []Row                // one for each of Plan.Rows, in that order
	Words     act.Known            // of the recipes, which need no mending
}

// Row is a row with what it says and what it stands for.
type Row struct {
	written.Row
	Acts    []act.Act // of Text, in its order
	Notes   []act.Act // of Points
	Letters []string  // the practical's dishes that it is about; without a practical, letters of our own in the order of appearance; empty: all or none
	Steps   []Step    // in the order of the text; empty: no step found
	Sure    float64   // 0 a guess to 1; of Steps, or of there being none
}

// Step is a step that a row stands for, or a part of it.
type Step struct {
	ID   string
	Part Part
	Sure float64 // 0 to 1
}

// Part says which part of a step with a wait a row stands for.
type Part string

// The parts.
const (
	Whole   Part = "whole"    // the hands' work, or all of it
	PutIn   Part = "put-in"   // the wait begins
	TakeOut Part = "take-out" // the wait ends
)

// Match finds the steps of each row of the plan. A teacher's own matches, by
// the number of the row, stand as they are. Without a practical only the acts
// and the dishes' letters are given.
func Match(plan written.Plan, p *practical.Practical, fixed map[int][]string) Matched {
	m, _ := MatchWithin(context.Background(), plan, p, fixed) // it never ends
	return m
}

// MatchWithin is Match until ctx ends; its error is then that of ctx.
func MatchWithin(ctx context.Context, plan written.Plan, p *practical.Practical, fixed map[int][]string) (Matched, error) {
	m := Matched{Plan: plan, Practical: p, Words: wordsOf(p)}
	for _, r := range plan.Rows {
		if err := ctx.Err(); err != nil {
			return Matched{}, err
		}
		m.Rows = append(m.Rows, Row{Row: r, Acts: m.Words.Read(r.Text), Notes: m.Words.Read(r.Points)})
	}
	if p == nil {
		for i, letters := range ownLetters(plan) {
			m.Rows[i].Letters = letters
		}
		return m, nil
	}
	if err := learn(p).match(ctx, &m, fixed); err != nil {
		return Matched{}, err
	}
	return m, nil
}

func (k *known) match(ctx context.Context, m *Matched, fixed map[int][]string) error {
	var pieces []piece
	for n := range m.Rows {
		if ids, set := fixed[m.Rows[n].Number]; set {
			pieces = append(pieces, k.fixedPieces(n, ids)...)
		} else {
			pieces = append(pieces, k.piecesOf(n, m.Rows[n].Row, m.Rows[n].Acts)...)
		}
	}
	fit := make([][]float64, len(pieces))
	at := make([]int, len(pieces))
	for i := range pieces {
		if err := ctx.Err(); err != nil {
			return err
		}
		at[i] = -1
		fit[i] = make([]float64, len(k.steps))
		for j := range k.steps {
			fit[i][j] = k.fits(&pieces[i], &k.steps[j])
		}
	}
	seen := fit
	var allowed []map[int]bool
	for range rounds {
		if err := ctx.Err(); err != nil {
			return err
		}
		allowed = k.choose(m.Plan, pieces, seen)
		for i := range at {
			at[i] = -1
		}
		for d := range k.dishes {
			k.align(d, ofDish(pieces, d), pieces, seen, at)
		}
		seen = k.context(pieces, fit, at)
	}
	k.late(pieces, fit, at)
	k.lastHeated(pieces, at)
	k.goOn(pieces, at)
	k.collect(m, allowed, pieces, seen, at)
	for n := range m.Rows {
		if ids, set := fixed[m.Rows[n].Number]; set {
			k.fix(&m.Rows[n], ids)
		}
	}
	return ctx.Err()
}

// ofDish are the pieces that are about a dish, by index.
func ofDish(pieces []piece, d int) (list []int) {
	for i := range pieces {
		if pieces[i].dish == d {
			list = append(list, i)
		}
	}
	return list
}

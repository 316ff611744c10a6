package timeplan_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

// TestJudgeAccepts: the invented plans were added up by hand, minute by minute.
func TestJudgeAccepts(t *testing.T) {
	for name, p := range plans() {
		if found := timeplan.Judge(p); len(found) > 0 {
			t.Errorf("%s: %+v", name, found)
		}
	}
}

func plans() map[string]*timeplan.Plan {
	return map[string]*timeplan.Plan{
		"sample": timeplantest.Sample(), "too much": timeplantest.TooMuch(), "pair": timeplantest.Pair(),
		"none": {Status: timeplan.Infeasible, Conflict: []timeplan.Demand{{Text: "everything"}}},
	}
}

// row is the row of that id, for a test to spoil.
func row(t *testing.T, p *timeplan.Plan, id string) *timeplan.Row {
	t.Helper()
	i := slices.IndexFunc(p.Rows, func(r timeplan.Row) bool { return r.ID == id })
	if i < 0 {
		t.Fatalf("no row %q", id)
	}
	return &p.Rows[i]
}

// without is the rows less one.
func without(p *timeplan.Plan, id string) {
	p.Rows = slices.DeleteFunc(p.Rows, func(r timeplan.Row) bool { return r.ID == id })
}

// TestJudgeRefuses spoils the sample in one place and expects the rule that
// is broken, at the row where it is broken (the first row named).
func TestJudgeRefuses(t *testing.T) {
	for _, test := range []struct {
		name, rule, row string
		spoil           func(t *testing.T, p *timeplan.Plan)
	}{
		{"taken out, never put in", "pair", "B1/take-out", func(_ *testing.T, p *timeplan.Plan) { without(p, "B1/put-in") }},
		{"put in, never taken out", "pair", "B1/put-in", func(_ *testing.T, p *timeplan.Plan) { without(p, "B1/take-out") }},
		{"put in twice", "pair", "B1/put-in", func(t *testing.T, p *timeplan.Plan) { row(t, p, "B2/put-in").Steps = []string{"B1"} }},
		{"a put-in of no step", "pair", "B1/put-in", func(t *testing.T, p *timeplan.Plan) { row(t, p, "B1/put-in").Steps = nil }},
		{"out before in", "pair", "B1/put-in", func(t *testing.T, p *timeplan.Plan) {
			a, z := row(t, p, "B1/put-in"), row(t, p, "B1/take-out")
			a.Action, z.Action = z.Action, a.Action
		}},
		{"due at another time", "until", "B1/put-in", func(t *testing.T, p *timeplan.Plan) { row(t, p, "B1/put-in").Until++ }},
		{"another place", "place", "B1/put-in", func(t *testing.T, p *timeplan.Plan) { row(t, p, "B1/take-out").Place = practical.AtHob }},
		{"two things at once", "hands", "A1/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "A1/hands").Minutes = 11 }},
		{"an early row overlaps a late one", "hands", "C2/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "C2/hands").Minutes = 60 }},
		{"backwards", "order", "wash-up/1", func(t *testing.T, p *timeplan.Plan) {
			r := row(t, p, "A1/take-out")
			r.At, r.Clock = 9*60+20, 9*60+20
		}},
		{"less than no time", "minutes", "A2/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "A2/hands").Minutes = -3 }},
		{"unknown action", "action", "A2/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "A2/hands").Action = "dance" }},
		{"unknown dish", "dish", "A2/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "A2/hands").Dish = "Z" }},
		{"unknown cook", "cook", "A2/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "A2/hands").Cook = 2 }},
		{"one id twice", "id", "A1/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "A2/hands").ID = "A1/hands" }},
		{"written as another time", "clock", "A2/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "A2/hands").Clock -= 5 }},
		{"a wait too short", "wait", "", func(_ *testing.T, p *timeplan.Plan) { p.Waits[0].Least = 60 }},
		{"a wait too long", "wait", "", func(_ *testing.T, p *timeplan.Plan) { p.Waits[0].Most = 5 }},
		{"a wait at another time", "wait", "A1/put-in", func(_ *testing.T, p *timeplan.Plan) { p.Waits[0].From -= 2 }},
		{"a wait at another heat", "celsius", "B1/put-in", func(_ *testing.T, p *timeplan.Plan) { p.Waits[2].Celsius = 150 }},
		{"a wait not listed", "wait", "A1/put-in", func(_ *testing.T, p *timeplan.Plan) { p.Waits = p.Waits[1:] }},
		{"a wait without rows", "wait", "", func(t *testing.T, p *timeplan.Plan) { without(p, "A1/put-in"); without(p, "A1/take-out") }},
		{"left alone", "watch", "B2/hands", func(_ *testing.T, p *timeplan.Plan) { p.Waits[2].Attention = practical.Stay }},
		{"never turned on", "oven", "B1/put-in", func(_ *testing.T, p *timeplan.Plan) { without(p, "oven/turn-to/1"); p.Ovens = nil }},
		{"wrong heat", "oven", "oven/turn-to/1", func(t *testing.T, p *timeplan.Plan) {
			row(t, p, "B1/put-in").Celsius, p.Waits[2].Celsius = 180, 180
		}},
		{"turned with food inside", "oven", "C2/put-in", func(t *testing.T, p *timeplan.Plan) {
			*row(t, p, "wash-up/2"), *row(t, p, "oven/turn-to/2") = *row(t, p, "oven/turn-to/2"), *row(t, p, "wash-up/2")
		}},
		{"not hot yet", "oven", "B1/put-in", func(_ *testing.T, p *timeplan.Plan) { p.Ovens[0].Hot = 9*60 + 30 }},
		{"a setting without its row", "oven", "", func(_ *testing.T, p *timeplan.Plan) { p.Ovens[1].Turned += 2 }},
		{"two settings at once", "oven", "", func(_ *testing.T, p *timeplan.Plan) { p.Ovens[0].Until += 9 }},
		{"work before the clock", "set-up", "B0/hands", func(t *testing.T, p *timeplan.Plan) { row(t, p, "B0/hands").Action = timeplan.Do }},
		{"before set-up", "set-up", "set-up/hands", func(_ *testing.T, p *timeplan.Plan) { p.SetUp++ }},
		{"set-up runs on", "set-up", "set-up/trays", func(t *testing.T, p *timeplan.Plan) { row(t, p, "set-up/trays").Minutes = 10 }},
		{"never served", "serve", "", func(_ *testing.T, p *timeplan.Plan) { without(p, "C/serve") }},
		{"worked on after serving", "serve", "C/serve", func(t *testing.T, p *timeplan.Plan) { row(t, p, "B7/hands").Dish = "C" }},
		{"a row after the last clean-down", "clean-down", "wash-up/4", func(_ *testing.T, p *timeplan.Plan) {
			p.Rows = append(p.Rows, timeplan.Row{ID: "x", At: 11*60 + 55, Clock: 11*60 + 55, Action: timeplan.TurnTo})
		}},
		{"another finish", "finish", "wash-up/4", func(_ *testing.T, p *timeplan.Plan) { p.Finish-- }},
		{"silent about running over", "over", "", func(_ *testing.T, p *timeplan.Plan) { p.Allowed -= 10 }},
		{"outside before the finish", "finish", "wash-up/3", func(t *testing.T, p *timeplan.Plan) { row(t, p, "wash-up/3").Outside = true }},
		{"a bound past the finish", "bound", "", func(_ *testing.T, p *timeplan.Plan) { p.Bound = p.Finish + 1 }},
		{"optimal without proof", "bound", "", func(_ *testing.T, p *timeplan.Plan) { p.Status = timeplan.Optimal }},
		{"infeasible without reasons", "conflict", "", func(_ *testing.T, p *timeplan.Plan) { p.Status = timeplan.Infeasible }},
		{"no rows", "finish", "", func(_ *testing.T, p *timeplan.Plan) { p.Rows = nil }},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := timeplantest.Sample()
			test.spoil(t, p)
			found := timeplan.Judge(p)
			if !slices.ContainsFunc(found, func(f timeplan.Finding) bool {
				return f.Rule == test.rule && (test.row == "" || len(f.Rows) > 0 && f.Rows[0] == test.row)
			}) {
				t.Errorf("no finding %q at %q in %+v", test.rule, test.row, found)
			}
		})
	}
}

// TestJudgeRounded: what was written to five minutes and read back is known
// to five minutes only. 12:45 for 9 minutes, then 12:50 for 1: fits if the
// second begins at 12:54. Were the first 12 minutes long, it could not.
func TestJudgeRounded(t *testing.T) {
	p := timeplantest.Pair()
	for i := range p.Rows {
		p.Rows[i].At = p.Rows[i].Clock
	}
	if found := timeplan.Judge(p); len(found) > 0 {
		t.Errorf("as written: %+v", found)
	}
	row(t, p, "A1/hands").Minutes = 15
	if found := timeplan.Judge(p); !slices.ContainsFunc(found, func(f timeplan.Finding) bool { return f.Rule == "hands" }) {
		t.Errorf("fifteen minutes in nine: %+v", found)
	}
}

// TestOrder shuffles the rows; the order and the threads' ends come back.
func TestOrder(t *testing.T) {
	for seed := range uint64(20) {
		want, p := timeplantest.Sample(), timeplantest.Sample()
		r := rand.New(rand.NewPCG(seed, 1))
		moved := r.Perm(len(p.Rows))
		for i, to := range moved {
			p.Rows[to] = want.Rows[i]
		}
		for i := range p.Threads {
			p.Threads[i].From = moved[p.Threads[i].From]
			if p.Threads[i].To >= 0 {
				p.Threads[i].To = moved[p.Threads[i].To]
			}
		}
		p.Order()
		if diff := cmp.Diff(want, p); diff != "" {
			t.Fatalf("seed %d: %s", seed, diff)
		}
	}
}

func TestEndAndSpare(t *testing.T) {
	p := timeplantest.Sample() // the last clean-down: 11:47 and 8 minutes
	if got := p.End().String(); got != "11:55" {
		t.Errorf("end %s, want 11:55", got)
	}
	if got := p.Spare(); got != 5 {
		t.Errorf("spare %d, want 5", got)
	}
	if _, i := p.DishOf("C"); i != 2 {
		t.Errorf("dish C at %d, want 2", i)
	}
}

// TestJudgeSeesEverySlip moves each row in turn by a quarter of an hour, either
// way, and drops each row of a kind that something else rests on.
func TestJudgeSeesEverySlip(t *testing.T) {
	for i, r := range timeplantest.Sample().Rows {
		for _, by := range []practical.TimeOfDay{-15, 15} {
			p := timeplantest.Sample()
			p.Rows[i].At += by
			p.Rows[i].Clock += by
			if len(timeplan.Judge(p)) == 0 {
				t.Errorf("%s moved by %d minutes goes unseen", r.ID, by)
			}
		}
		switch r.Action {
		case timeplan.PutIn, timeplan.TakeOut, timeplan.TurnTo, timeplan.Serve:
			p := timeplantest.Sample()
			p.Rows = slices.Delete(p.Rows, i, i+1)
			if len(timeplan.Judge(p)) == 0 {
				t.Errorf("%s dropped goes unseen", r.ID)
			}
		}
	}
}

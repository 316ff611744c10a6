package verify_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

func load(t testing.TB, file string, into any) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", file))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, into); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
}

func workshop(t testing.TB) *problem.Problem {
	t.Helper()
	var p problem.Problem
	load(t, "workshop.json", &p)
	if err := p.Validate(); err != nil {
		t.Fatal(err)
	}
	return &p
}

func files(t testing.TB, pattern string, least int) []string {
	t.Helper()
	list, err := filepath.Glob(filepath.Join("testdata", pattern))
	if err != nil || len(list) < least {
		t.Fatalf("%d files %s, error %v; want at least %d", len(list), pattern, err, least)
	}
	for i, f := range list {
		list[i], _ = filepath.Rel("testdata", f)
	}
	return list
}

func TestGoodSchedules(t *testing.T) {
	p := workshop(t)
	for _, file := range files(t, "good/*.json", 4) {
		var s problem.Solution
		load(t, file, &s)
		if breaches := verify.Check(p, &s); breaches != nil {
			t.Errorf("%s: refused: %v", file, breaches)
		}
	}
}

// Each file breaks one rule, and says how the judge must put it, word for
// word: all that is broken and nothing that is not.
func TestBadSchedules(t *testing.T) {
	p := workshop(t)
	for _, file := range files(t, "bad/*.json", 39) {
		var c struct {
			Schedule problem.Solution
			Breaches []verify.Breach
		}
		load(t, file, &c)
		got := verify.Check(p, &c.Schedule)
		same := func(a, b verify.Breach) bool {
			return a.Demand == b.Demand && a.Text == b.Text && slices.Equal(a.Activities, b.Activities)
		}
		if len(c.Breaches) == 0 || !slices.EqualFunc(got, c.Breaches, same) {
			t.Errorf("%s:\n got %+v\nwant %+v", file, got, c.Breaches)
		}
	}
}

func TestNothingToJudge(t *testing.T) {
	p := workshop(t)
	var s problem.Solution
	load(t, "good/base.json", &s)
	invalid := *p
	invalid.Horizon = 0
	for name, breaches := range map[string][]verify.Breach{
		"no schedule":     verify.Check(p, nil),
		"no problem":      verify.Check(nil, &s),
		"invalid problem": verify.Check(&invalid, &s),
		"zero schedule":   verify.Check(p, &problem.Solution{}),
	} {
		if len(breaches) == 0 {
			t.Errorf("%s: accepted", name)
		}
	}
}

// Numbers at the ends of int must be refused, not wrap round to a yes.
func TestExtremeTimes(t *testing.T) {
	p := workshop(t)
	extremes := []int{-1 << 63, -1<<63 + 1, -1 << 62, 1 << 62, 1<<63 - 2, 1<<63 - 1}
	for i := range p.Activities {
		for _, start := range extremes {
			for _, end := range extremes {
				var s problem.Solution
				load(t, "good/base.json", &s)
				s.Start[i], s.End[i] = start, end
				if len(verify.Check(p, &s)) == 0 {
					t.Errorf("%s from %d to %d accepted", p.Activities[i].Name, start, end)
				}
			}
		}
	}
}

// A condition without a way out forbids the modes it names together.
func TestForbiddenModes(t *testing.T) {
	p := workshop(t)
	p.Choices = []problem.Choice{{If: []problem.Chosen{{Activity: 0, Mode: 0}, {Activity: 4, Mode: 0}}, Demand: "not both"}}
	var s problem.Solution
	load(t, "good/base.json", &s)
	got := verify.Check(p, &s)
	if len(got) != 1 || got[0].String() != "not both: cut in mode by hand and paint in mode 0 cannot be together" {
		t.Errorf("got %v", got)
	}
	load(t, "good/machine.json", &s)
	if got := verify.Check(p, &s); got != nil {
		t.Errorf("refused: %v", got)
	}
}

// Base schedule: ends at 16; starts 0 + 7 + 14 + 16 + 14; two changes, both
// with work. By way of warm there are three.
func TestValue(t *testing.T) {
	p := workshop(t)
	var base, byWay problem.Solution
	load(t, "good/base.json", &base)
	byWay = base
	byWay.Changes = []problem.StateChange{{Level: 2, At: 4}, {Level: 1, At: 6}, {Level: 2, At: 12}}
	free := *p
	free.States = slices.Clone(p.States)
	free.States[0].Change = slices.Clone(p.States[0].Change)
	free.States[0].Change[0] = []problem.Change{{}, {Settle: 3}, {Work: 1}, {Work: 1}}
	for _, c := range []struct {
		name string
		p    *problem.Problem
		o    problem.Objective
		s    *problem.Solution
		want int
	}{
		{"makespan", p, problem.Objective{Makespan: true}, &base, 16},
		{"sum", p, problem.Objective{Terms: []problem.Term{
			{Point: problem.Start(1), Weight: 3}, {Point: problem.End(2), Weight: -1}, {Point: problem.Zero(), Weight: 9},
		}}, &base, 3*7 - 16},
		{"changes", p, problem.Objective{Changes: []int{0}}, &base, 2},
		{"three changes", p, problem.Objective{Changes: []int{0}}, &byWay, 3},
		{"changes without work", &free, problem.Objective{Changes: []int{0}}, &base, 1},
		{"switches", p, problem.Objective{Switches: []int{0}}, &base, 2},
		{"switches without work", &free, problem.Objective{Switches: []int{0}}, &base, 2},
		{"none broken", p, problem.Objective{Soft: soft(16)}, &base, 0},
		{"one broken", p, problem.Objective{Soft: soft(15)}, &base, 5},
		{"all together", p, problem.Objective{Makespan: true, Changes: []int{0}, Terms: []problem.Term{{Point: problem.End(0), Weight: 2}}}, &base, 16 + 2 + 6},
		{"nothing", p, problem.Objective{}, &base, 0},
		{"no activities", &problem.Problem{Horizon: 5}, problem.Objective{Makespan: true}, &problem.Solution{}, 0},
	} {
		if got := verify.Value(c.p, c.o, c.s); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}

// soft is two choices: the first, worth 5, is broken only if the third activity
// ends later than at end; the second asks for a mode that nobody chose.
func soft(end int) []problem.Soft {
	return []problem.Soft{
		{Any: []problem.Lag{
			{From: problem.End(2), To: problem.Zero(), Min: -end},
			{From: problem.Zero(), To: problem.Start(1), Min: 8}, // it starts at 7
		}, Weight: 5},
		{If: []problem.Chosen{{Activity: 0, Mode: 1}}, Weight: 3},
	}
}

// Changes that take no time stand between two moments: what starts at that
// moment has the new level, what ends there had the old one.
func TestChangesInNoTime(t *testing.T) {
	one := func(levels ...int) problem.Activity {
		return problem.Activity{MaxDuration: 9, Modes: []problem.Mode{{Needs: []problem.Need{{Levels: levels}}}}}
	}
	p := &problem.Problem{Horizon: 9, States: []problem.State{{
		Levels: []string{"a", "b", "c"}, Change: [][]problem.Change{make([]problem.Change, 3), make([]problem.Change, 3), make([]problem.Change, 3)},
	}}}
	for _, c := range []struct {
		name       string
		activities []problem.Activity
		start, end []int
		changes    []problem.StateChange
		want       int // breaches
	}{
		{"one after the other", []problem.Activity{one(0), one(1)}, []int{0, 5}, []int{5, 9}, []problem.StateChange{{Level: 1, At: 5}}, 0},
		{"two moments", []problem.Activity{one(0), one(1)}, []int{4, 5}, []int{4, 5}, []problem.StateChange{{Level: 1, At: 5}}, 0},
		{"at one moment", []problem.Activity{one(0), one(1)}, []int{5, 5}, []int{5, 5}, []problem.StateChange{{Level: 1, At: 5}}, 1},
		{"in between", []problem.Activity{one(0, 1), one(1)}, []int{4, 5}, []int{6, 5}, []problem.StateChange{{Level: 1, At: 5}}, 1},
		{"at the horizon", []problem.Activity{one(1)}, []int{9}, []int{9}, []problem.StateChange{{Level: 1, At: 9}}, 0},
		{"the first serves nothing", []problem.Activity{one(1, 2)}, []int{5}, []int{6}, []problem.StateChange{{Level: 1, At: 3}, {Level: 2, At: 5}}, 1},
		{"both serve", []problem.Activity{one(1), one(2)}, []int{4, 5}, []int{5, 6}, []problem.StateChange{{Level: 1, At: 3}, {Level: 2, At: 5}}, 0},
	} {
		p.Activities = c.activities
		s := &problem.Solution{Start: c.start, End: c.end, Mode: make([]int, len(c.start)), Changes: c.changes}
		if got := verify.Check(p, s); len(got) != c.want {
			t.Errorf("%s: %v, want %d breaches", c.name, got, c.want)
		}
	}
}

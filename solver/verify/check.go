// Package verify is the judge: it says whether a schedule keeps every demand
// of a problem, and what it is worth. It owns a second, plain reading of the
// nouns in package problem and shares no code with the search, which it cannot
// reach; it must know nothing of how a schedule was found. It judges
// schedules, not bounds or proofs.
//
// Where the nouns leave a choice open, the judge reads them so:
//   - an activity without modes has mode 0;
//   - an activity of length zero that needs a level needs it over one unit of
//     time from its start, so no change begins at that moment;
//   - a change of a state settles by the horizon;
//   - the changes of one state stand in order of time; those of different
//     states may be mixed in any way.
package verify

import (
	"fmt"

	"plait.example/solver/problem"
)

// Breach is one demand that a schedule does not keep.
type Breach struct {
	Demand     string // the user's name of the demand; empty if it has none
	Text       string // what is broken, where, and by how much
	Activities []int  // the activities that have a part in it
}

func (b Breach) String() string {
	if b.Demand == "" {
		return b.Text
	}
	return b.Demand + ": " + b.Text
}

// Check lists every demand of p that s does not keep. Only a list of no
// breaches is a yes: an invalid problem, a missing schedule, and one whose
// tables have the wrong size or name things that do not exist are refused
// before anything else is looked at.
func Check(p *problem.Problem, s *problem.Solution) []Breach {
	if refused := readable(p, s); refused != nil {
		return refused
	}
	j := judge{p: p, s: s}
	for i := range p.Activities {
		j.activity(i)
	}
	for _, l := range p.Lags {
		j.lag(l)
	}
	for _, c := range p.Choices {
		j.choice(c)
	}
	for k := range p.States {
		j.state(k)
	}
	for r := range p.Resources {
		j.resource(r)
	}
	return j.breaches
}

type judge struct {
	p        *problem.Problem
	s        *problem.Solution
	breaches []Breach
	work     []occupied // of changes, filled by state and read by resource
}

func (j *judge) breach(demand string, activities []int, format string, args ...any) {
	j.breaches = append(j.breaches, Breach{Demand: demand, Text: fmt.Sprintf(format, args...), Activities: activities})
}

// readable refuses what cannot be judged at all.
func readable(p *problem.Problem, s *problem.Solution) []Breach {
	var j judge
	if p == nil || s == nil {
		j.breach("", nil, "there is no schedule to judge")
		return j.breaches
	}
	if err := p.Validate(); err != nil {
		j.breach("", nil, "the problem is not valid: %v", err)
		return j.breaches
	}
	n := len(p.Activities)
	for _, table := range []struct {
		name string
		size int
	}{{"starts", len(s.Start)}, {"ends", len(s.End)}, {"modes", len(s.Mode)}} {
		if table.size != n {
			j.breach("", nil, "the schedule has %d %s for %d activities", table.size, table.name, n)
		}
	}
	for i, c := range s.Changes {
		switch {
		case c.State < 0 || c.State >= len(p.States):
			j.breach("", nil, "change %d is of state %d; there are %d states", i, c.State, len(p.States))
		case c.Level < 0 || c.Level >= len(p.States[c.State].Levels):
			j.breach(p.States[c.State].Demand, nil, "change %d takes %s to level %d; it has %d levels",
				i, stateName(p, c.State), c.Level, len(p.States[c.State].Levels))
		case c.At < 0 || c.At > p.Horizon:
			j.breach(p.States[c.State].Demand, nil, "change %d of %s is at %d, outside 0 to %d", i, stateName(p, c.State), c.At, p.Horizon)
		}
	}
	if j.breaches != nil {
		return j.breaches
	}
	for i, m := range s.Mode {
		if m < 0 || m >= max(1, len(p.Activities[i].Modes)) {
			j.breach("", []int{i}, "%s runs in mode %d; it has %d modes", name(p, i), m, len(p.Activities[i].Modes))
		}
	}
	return j.breaches
}

// activity checks that i lies in time and lasts as long as it should.
func (j *judge) activity(i int) {
	a, start, end := j.p.Activities[i], j.s.Start[i], j.s.End[i]
	if start < 0 {
		j.breach("", []int{i}, "%s starts at %d, before time 0", name(j.p, i), start)
	}
	if end > j.p.Horizon {
		j.breach("", []int{i}, "%s ends at %d, after the horizon %d", name(j.p, i), end, j.p.Horizon)
	}
	switch d := end - start; {
	case end < start:
		j.breach("", []int{i}, "%s ends at %d, before it starts at %d", name(j.p, i), end, start)
	case d < a.MinDuration:
		j.breach("", []int{i}, "%s lasts %d, less than %d", name(j.p, i), d, a.MinDuration)
	case d > a.MaxDuration:
		j.breach("", []int{i}, "%s lasts %d, more than %d", name(j.p, i), d, a.MaxDuration)
	}
}

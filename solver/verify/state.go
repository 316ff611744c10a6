package verify

import (
	"slices"
	"strings"

	"plait.example/solver/problem"
)

// turn is a change of a state to level: work over [begun, worked), then it
// settles until settled.
type turn struct {
	level                  int
	begun, worked, settled int
}

// state checks the changes of state k, that every activity has the level it
// needs, and that every change serves one.
func (j *judge) state(k int) {
	turns, ordered := j.turns(k)
	if !ordered {
		return // refused already; the levels between are not defined
	}
	serves := make([]bool, len(turns))
	for i, a := range j.p.Activities {
		if len(a.Modes) == 0 {
			continue
		}
		for _, need := range a.Modes[j.s.Mode[i]].Needs {
			if need.State != k {
				continue
			}
			j.need(k, i, need, turns)
			for t, turn := range turns {
				inTime := j.s.Start[i] >= turn.settled && (t+1 == len(turns) || j.s.Start[i] < turns[t+1].begun)
				serves[t] = serves[t] || inTime && slices.Contains(need.Levels, turn.level)
			}
		}
	}
	for t, turn := range turns {
		if !serves[t] {
			j.breach(j.p.States[k].Demand, nil, "the change of %s to %s at %d serves nothing: no activity needs it before the next change",
				stateName(j.p, k), levelName(j.p, k, turn.level), turn.begun)
		}
	}
}

// turns reads the changes of state k in the order given.
func (j *judge) turns(k int) (turns []turn, ordered bool) {
	st := j.p.States[k]
	level, free := st.Initial, 0
	for _, c := range j.s.Changes {
		if c.State != k {
			continue
		}
		to := levelName(j.p, k, c.Level)
		if c.Level == level {
			j.breach(st.Demand, nil, "the change of %s to %s at %d is none: it stands there already", stateName(j.p, k), to, c.At)
			continue
		}
		need := st.Change[level][c.Level]
		t := turn{level: c.Level, begun: c.At, worked: c.At + need.Work, settled: c.At + need.Work + need.Settle}
		if n := len(turns); n > 0 && t.begun < turns[n-1].begun {
			j.breach(st.Demand, nil, "the changes of %s are not in order of time: one at %d stands after one at %d",
				stateName(j.p, k), t.begun, turns[n-1].begun)
			return turns, false
		}
		if t.begun < free {
			j.breach(st.Demand, nil, "the change of %s to %s begins at %d, before the one before has settled at %d",
				stateName(j.p, k), to, t.begun, free)
		}
		if t.begun < st.ChangeFrom {
			j.breach(st.Demand, nil, "the change of %s to %s begins at %d; none may before %d", stateName(j.p, k), to, t.begun, st.ChangeFrom)
		}
		if t.settled > j.p.Horizon {
			j.breach(st.Demand, nil, "the change of %s to %s settles at %d, after the horizon %d", stateName(j.p, k), to, t.settled, j.p.Horizon)
		}
		j.occupy(k, st.Uses, t)
		turns = append(turns, t)
		level, free = t.level, t.settled
	}
	return turns, true
}

// need checks that activity i has one of the levels it needs all the while.
func (j *judge) need(k, i int, need problem.Need, turns []turn) {
	demand := j.p.States[k].Demand
	from, until := j.s.Start[i], max(j.s.End[i], j.s.Start[i]+1)
	level, disturbed := j.p.States[k].Initial, false
	for _, t := range turns {
		during := t.begun < until && t.settled > from
		if t.begun == t.settled { // in no time: between two moments
			during = from < t.begun && t.begun < until
		}
		if during {
			disturbed = true
			j.breach(demand, []int{i}, "%s changes to %s from %d to %d while %s needs it from %d to %d",
				stateName(j.p, k), levelName(j.p, k, t.level), t.begun, t.settled, name(j.p, i), from, until)
		}
		if t.begun <= from {
			level = t.level
		}
	}
	if !disturbed && !slices.Contains(need.Levels, level) {
		var wanted []string
		for _, l := range need.Levels {
			wanted = append(wanted, levelName(j.p, k, l))
		}
		j.breach(demand, []int{i}, "%s stands at %s when %s starts at %d; it needs %s",
			stateName(j.p, k), levelName(j.p, k, level), name(j.p, i), from, strings.Join(wanted, " or "))
	}
}

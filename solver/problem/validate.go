package problem

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// The greatest sizes that a valid problem may have. Within them no sum or
// product of the numbers in a problem leaves 63 bits: horizon times amount
// times activities is at most 10^18.
const (
	MaxHorizon    = 10_000_000        // units of time
	MaxLag        = 1_000_000_000     // either way
	MaxAmount     = 1_000_000         // of a resource, in use or there
	MaxActivities = 100_000           // in one problem
	MaxWeighted   = 1_000_000_000_000 // sum of |weight| times horizon in one objective
)

// Validate checks the rules of form that the nouns state. All faults come
// back joined; each names the field and index at which it was found, and what
// would be right. Whether any schedule exists is not its business.
func (p *Problem) Validate() error {
	if p == nil {
		return errors.New("there is no problem")
	}
	v := validation{p: p}
	if p.Horizon < 1 || p.Horizon > MaxHorizon {
		v.fault("horizon is %d; must be 1 to %d", p.Horizon, MaxHorizon)
	}
	if n := len(p.Activities); n > MaxActivities {
		v.fault("%d activities; at most %d are allowed", n, MaxActivities)
	}
	for i := range p.Activities {
		v.in("activities", i, func() { v.activity(&p.Activities[i]) })
	}
	v.lags("lags", p.Lags)
	for i := range p.Choices {
		v.in("choices", i, func() { v.choice(&p.Choices[i]) })
	}
	for i := range p.Resources {
		v.in("resources", i, func() { v.resource(&p.Resources[i]) })
	}
	for i := range p.States {
		v.in("states", i, func() { v.state(&p.States[i]) })
	}
	for i := range p.Objectives {
		v.in("objectives", i, func() { v.objective(&p.Objectives[i]) })
	}
	return errors.Join(v.faults...)
}

// validation walks a problem and remembers where it stands.
type validation struct {
	p      *Problem
	path   []field
	faults []error
}

type field struct {
	name  string
	index int
}

func (v *validation) in(name string, index int, check func()) {
	v.path = append(v.path, field{name, index})
	check()
	v.path = v.path[:len(v.path)-1]
}

func (v *validation) fault(format string, args ...any) {
	var where strings.Builder
	for i, f := range v.path {
		if i > 0 {
			where.WriteByte('.')
		}
		fmt.Fprintf(&where, "%s[%d]", f.name, f.index)
	}
	if where.Len() > 0 {
		where.WriteString(": ")
	}
	v.faults = append(v.faults, errors.New(where.String()+fmt.Sprintf(format, args...)))
}

// index checks that i is one of n.
func (v *validation) index(what string, i, n int) bool {
	switch {
	case i >= 0 && i < n:
		return true
	case n == 0:
		v.fault("%s is %d; there are none", what, i)
	default:
		v.fault("%s is %d; must be 0 to %d", what, i, n-1)
	}
	return false
}

func (v *validation) activity(a *Activity) {
	if a.MinDuration < 0 || a.MinDuration > MaxHorizon {
		v.fault("min is %d; must be 0 to %d", a.MinDuration, MaxHorizon)
	}
	if a.MaxDuration < a.MinDuration || a.MaxDuration > MaxHorizon {
		v.fault("max is %d; must be min (%d) to %d", a.MaxDuration, a.MinDuration, MaxHorizon)
	}
	for m := range a.Modes {
		v.in("modes", m, func() {
			v.uses(a.Modes[m].Uses)
			v.needs(a.Modes[m].Needs)
		})
	}
}

func (v *validation) uses(uses []Use) {
	for i, u := range uses {
		v.in("uses", i, func() {
			v.index("resource", u.Resource, len(v.p.Resources))
			if u.Amount < 1 || u.Amount > MaxAmount {
				v.fault("amount is %d; must be 1 to %d", u.Amount, MaxAmount)
			}
		})
	}
}

func (v *validation) needs(needs []Need) {
	for i, n := range needs {
		v.in("needs", i, func() {
			if v.index("state", n.State, len(v.p.States)) {
				v.levels(n.Levels, len(v.p.States[n.State].Levels))
			}
		})
	}
}

func (v *validation) levels(levels []int, n int) {
	if len(levels) == 0 {
		v.fault("levels is empty; must name at least one")
	}
	for _, l := range levels {
		v.index("level", l, n)
	}
}

func (v *validation) point(what string, pt Point) {
	if pt.Activity == Origin {
		if pt.End {
			v.fault("%s is the end of the origin; the origin has no length", what)
		}
		return
	}
	v.index(what+" activity", pt.Activity, len(v.p.Activities))
}

func (v *validation) lags(name string, lags []Lag) {
	for i, l := range lags {
		v.in(name, i, func() {
			v.point("from", l.From)
			v.point("to", l.To)
			if l.Min < -MaxLag || l.Min > MaxLag {
				v.fault("lag is %d; must be %d to %d", l.Min, -MaxLag, MaxLag)
			}
		})
	}
}

// choice allows an empty Any, which forbids If, but not with an empty If as
// well: that could never hold.
func (v *validation) choice(c *Choice) {
	for i, f := range c.If {
		v.in("if", i, func() {
			if v.index("activity", f.Activity, len(v.p.Activities)) {
				v.index("mode", f.Mode, max(1, len(v.p.Activities[f.Activity].Modes)))
			}
		})
	}
	if len(c.If) == 0 && len(c.Any) == 0 {
		v.fault("any is empty; without an if there must be at least one lag")
	}
	v.lags("any", c.Any)
}

func (v *validation) resource(r *Resource) {
	if r.Capacity < 0 || r.Capacity > MaxAmount {
		v.fault("capacity is %d; must be 0 to %d", r.Capacity, MaxAmount)
	}
	for i, c := range r.Closures {
		v.in("closures", i, func() {
			if c.From < 0 || c.Until <= c.From || c.Until > MaxLag {
				v.fault("runs from %d until %d; must begin at 0 or later and end after that, by %d", c.From, c.Until, MaxLag)
			}
			if c.Left < 0 || c.Left > r.Capacity {
				v.fault("left is %d; must be 0 to the capacity %d", c.Left, r.Capacity)
			}
		})
	}
	order := make([]int, len(r.Closures))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return r.Closures[a].From - r.Closures[b].From })
	for i := 1; i < len(order); i++ {
		a, b := order[i-1], order[i]
		if r.Closures[b].From < r.Closures[a].Until {
			v.fault("closures[%d] and closures[%d] overlap; cut them where they meet", a, b)
		}
	}
}

func (v *validation) state(s *State) {
	n := len(s.Levels)
	if n == 0 {
		v.fault("levels is empty; must name at least one")
		return
	}
	v.index("initial", s.Initial, n)
	v.uses(s.Uses)
	if s.ChangeFrom < 0 || s.ChangeFrom > MaxLag {
		v.fault("changeFrom is %d; must be 0 to %d", s.ChangeFrom, MaxLag)
	}
	if v.matrix(s.Change, n) {
		v.triangle(s.Change)
	}
}

// matrix checks that change is n by n and that its times are in range.
func (v *validation) matrix(change [][]Change, n int) bool {
	before := len(v.faults)
	if len(change) != n {
		v.fault("change has %d rows for %d levels", len(change), n)
	}
	for a, row := range change {
		if len(row) != n {
			v.fault("change[%d] has %d entries for %d levels", a, len(row), n)
		}
		for b, c := range row {
			if a != b && (c.Work < 0 || c.Settle < 0 || c.Work > MaxHorizon || c.Settle > MaxHorizon) {
				v.fault("change[%d][%d] takes work %d and settle %d; both must be 0 to %d", a, b, c.Work, c.Settle, MaxHorizon)
			}
		}
	}
	return len(v.faults) == before
}

// triangle checks that going by way of a third level is never quicker.
func (v *validation) triangle(change [][]Change) {
	takes := func(a, b int) int { return change[a][b].Work + change[a][b].Settle }
	for a := range change {
		for b := range change {
			for c := range change {
				if a != b && b != c && a != c && takes(a, c) > takes(a, b)+takes(b, c) {
					v.fault("change[%d][%d] takes %d, longer than %d by way of level %d", a, c, takes(a, c), takes(a, b)+takes(b, c), b)
				}
			}
		}
	}
}

func (v *validation) objective(o *Objective) {
	sum := 0
	for i, t := range o.Terms {
		v.in("terms", i, func() {
			v.point("point", t.Point)
			if t.Weight < -MaxWeighted || t.Weight > MaxWeighted {
				v.fault("weight is %d; must be %d to %d", t.Weight, -MaxWeighted, MaxWeighted)
			}
		})
		sum += min(max(t.Weight, -t.Weight), MaxWeighted)
		if sum > MaxWeighted/max(1, min(v.p.Horizon, MaxHorizon)) {
			v.fault("weights up to terms[%d] times the horizon exceed %d", i, MaxWeighted)
			break
		}
	}
	v.counted("changes", o.Changes)
	v.counted("switches", o.Switches)
	v.soft(o.Soft)
}

// counted checks a list of states whose changes are counted.
func (v *validation) counted(name string, states []int) {
	for i, k := range states {
		v.index(name, k, len(v.p.States))
		if slices.Contains(states[:i], k) {
			v.fault("%s names state %d twice", name, k)
		}
	}
}

func (v *validation) soft(list []Soft) {
	sum := 0
	for i := range list {
		v.in("soft", i, func() {
			s := &list[i]
			v.choice(&Choice{If: s.If, Any: s.Any})
			if s.Weight < 1 || s.Weight > MaxWeighted {
				v.fault("weight is %d; must be 1 to %d", s.Weight, MaxWeighted)
			}
			sum += min(max(s.Weight, 0), MaxWeighted)
		})
		if sum > MaxWeighted {
			v.fault("weights up to soft[%d] sum to more than %d", i, MaxWeighted)
			return
		}
	}
}

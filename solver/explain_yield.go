package solver

import (
	"fmt"
	"slices"

	"plait.example/solver/problem"
)

// Slack says how far one demand may give way, and at what price.
type Slack struct {
	Demand string // its name
	Most   int    // by so many units at most; 0: not by degrees
	Price  int    // of each unit; at least 1 if Most is not 0
	Drop   int    // price of leaving it out altogether; 0: it may not be left out
}

// Yield is how far one demand gives way.
type Yield struct {
	Demand  string
	By      int  // units
	Dropped bool // it is left out; By is then 0
}

// Relaxed is p with demands that give way. Lags of such a name ask By less
// (a deadline By later, a release By earlier, a maximal lag By longer), and so
// do those in a choice; a resource has By more; a closure leaves By more, though
// no more than the resource has. A state does not give way by degrees: it is
// kept, or dropped. What is dropped goes as in problem.Without. p is not changed.
func Relaxed(p *problem.Problem, yields []Yield) *problem.Problem {
	by, gone := map[string]int{}, map[string]bool{}
	for _, y := range yields {
		by[y.Demand], gone[y.Demand] = y.By, y.Dropped
	}
	by[""] = 0
	q := problem.Without(p, gone)
	for i := range q.Lags {
		q.Lags[i].Min -= by[q.Lags[i].Demand]
	}
	for i, c := range q.Choices {
		for k := range c.Any {
			q.Choices[i].Any[k].Min -= by[c.Demand]
		}
	}
	for i := range q.Resources {
		r := &q.Resources[i]
		r.Capacity += by[r.Demand]
		for k := range r.Closures {
			c := &r.Closures[k]
			c.Left = min(c.Left+by[c.Demand], r.Capacity)
		}
	}
	return q
}

// faulty says what is wrong with slacks for p; nil if nothing is.
func faulty(p *problem.Problem, slacks []Slack) error {
	names := p.Demands()
	seen := map[string]bool{}
	for _, s := range slacks {
		switch {
		case !slices.Contains(names, s.Demand):
			return fmt.Errorf("no demand has the name %q", s.Demand)
		case seen[s.Demand]:
			return fmt.Errorf("demand %q is named twice; once is enough", s.Demand)
		case s.Most < 0 || s.Price < 0 || s.Drop < 0:
			return fmt.Errorf("demand %q: neither amount nor price may be below 0", s.Demand)
		case s.Most > 0 && s.Price == 0:
			return fmt.Errorf("demand %q may give way by up to %d, but has no price; 1 is the least", s.Demand, s.Most)
		case s.Most == 0 && s.Drop == 0:
			return fmt.Errorf("demand %q cannot give way at all; set Most and Price, or Drop", s.Demand)
		case s.Most > widest || int64(s.Most)*int64(s.Price) > widest || s.Drop > widest:
			return fmt.Errorf("demand %q: amount times price may be at most %d", s.Demand, widest)
		}
		seen[s.Demand] = true
	}
	return nil
}

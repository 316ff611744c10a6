package verify

import (
	"fmt"
	"slices"

	"plait.example/solver/problem"
)

func name(p *problem.Problem, i int) string {
	if n := p.Activities[i].Name; n != "" {
		return n
	}
	return fmt.Sprintf("activity %d", i)
}

func modeName(p *problem.Problem, i, m int) string {
	if modes := p.Activities[i].Modes; m < len(modes) && modes[m].Name != "" {
		return "mode " + modes[m].Name
	}
	return fmt.Sprintf("mode %d", m)
}

func resourceName(p *problem.Problem, r int) string {
	if n := p.Resources[r].Name; n != "" {
		return n
	}
	return fmt.Sprintf("resource %d", r)
}

func stateName(p *problem.Problem, k int) string {
	if n := p.States[k].Name; n != "" {
		return n
	}
	return fmt.Sprintf("state %d", k)
}

func levelName(p *problem.Problem, k, level int) string {
	if n := p.States[k].Levels[level]; n != "" {
		return n
	}
	return fmt.Sprintf("level %d", level)
}

func pointName(p *problem.Problem, pt problem.Point) string {
	switch {
	case pt.Activity == problem.Origin:
		return "time 0"
	case pt.End:
		return "the end of " + name(p, pt.Activity)
	default:
		return "the start of " + name(p, pt.Activity)
	}
}

// broken says in words which lag does not hold and what would be right.
func broken(p *problem.Problem, s *problem.Solution, l problem.Lag) string {
	from, to := s.Time(l.From), s.Time(l.To)
	switch {
	case l.From.Activity == problem.Origin && l.To.Activity == problem.Origin:
		return fmt.Sprintf("time 0 cannot be %d after itself", l.Min)
	case l.From.Activity == problem.Origin:
		return fmt.Sprintf("%s is at %d, must be at %d or later", pointName(p, l.To), to, l.Min)
	case l.To.Activity == problem.Origin:
		return fmt.Sprintf("%s is at %d, must be at %d or earlier", pointName(p, l.From), from, -l.Min)
	case l.Min < 0:
		return fmt.Sprintf("%s is at %d, must be at most %d after %s at %d, so at %d or earlier",
			pointName(p, l.From), from, -l.Min, pointName(p, l.To), to, to-l.Min)
	default:
		return fmt.Sprintf("%s is at %d, must be at least %d after %s at %d, so at %d or later",
			pointName(p, l.To), to, l.Min, pointName(p, l.From), from, from+l.Min)
	}
}

// parts lists the activities of a lag, each once.
func parts(l problem.Lag) []int {
	var list []int
	for _, pt := range []problem.Point{l.From, l.To} {
		if pt.Activity != problem.Origin {
			list = append(list, pt.Activity)
		}
	}
	return distinct(list)
}

func distinct(list []int) []int {
	slices.Sort(list)
	return slices.Compact(list)
}

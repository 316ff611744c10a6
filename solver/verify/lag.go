package verify

import (
	"strings"

	"plait.example/solver/problem"
)

// lag checks time(To) >= time(From) + Min.
func (j *judge) lag(l problem.Lag) {
	if j.s.Time(l.To) < j.s.Time(l.From)+l.Min {
		j.breach(l.Demand, parts(l), "%s", broken(j.p, j.s, l))
	}
}

// choice checks that one lag of Any holds if all of If is so.
func (j *judge) choice(c problem.Choice) {
	var activities []int
	for _, f := range c.If {
		if j.s.Mode[f.Activity] != f.Mode {
			return
		}
		activities = append(activities, f.Activity)
	}
	var texts []string
	for _, l := range c.Any {
		if j.s.Time(l.To) >= j.s.Time(l.From)+l.Min {
			return
		}
		texts = append(texts, broken(j.p, j.s, l))
		activities = append(activities, parts(l)...)
	}
	if len(texts) == 0 {
		j.breach(c.Demand, activities, "%s cannot be together", ifWords(j.p, c.If))
		return
	}
	j.breach(c.Demand, distinct(activities), "none of %d ways holds: %s", len(texts), strings.Join(texts, "; or "))
}

// ifWords names the modes of a condition.
func ifWords(p *problem.Problem, when []problem.Chosen) string {
	var words []string
	for _, f := range when {
		words = append(words, name(p, f.Activity)+" in "+modeName(p, f.Activity, f.Mode))
	}
	return strings.Join(words, " and ")
}

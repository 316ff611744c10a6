package verify

import (
	"slices"
	"strings"

	"plait.example/solver/problem"
)

// occupied is an amount of a resource in use over [from, until).
type occupied struct {
	resource    int
	amount      int
	from, until int
	activity    int // or -1 for the work of a change
	by          string
}

// resource checks one resource at every moment at which its use or its
// capacity can differ from the moment before.
func (j *judge) resource(r int) {
	uses := j.usesOf(r)
	closures := j.p.Resources[r].Closures
	var edges []int
	for _, u := range uses {
		edges = append(edges, u.from, u.until)
	}
	for _, c := range closures {
		edges = append(edges, c.From, c.Until)
	}
	edges = distinct(edges)
	for i := 0; i+1 < len(edges); i++ {
		j.stretch(r, uses, edges[i], edges[i+1])
	}
}

// stretch checks [from, until), in which neither use nor capacity changes.
func (j *judge) stretch(r int, uses []occupied, from, until int) {
	left, demand := j.p.Resources[r].Capacity, j.p.Resources[r].Demand
	for _, c := range j.p.Resources[r].Closures {
		if c.From <= from && from < c.Until {
			left = c.Left
			if c.Demand != "" {
				demand = c.Demand
			}
		}
	}
	sum := 0
	var activities []int
	var by []string
	for _, u := range uses {
		if u.from <= from && from < u.until {
			sum += u.amount
			if u.activity >= 0 {
				activities = append(activities, u.activity)
			}
			if !slices.Contains(by, u.by) {
				by = append(by, u.by)
			}
		}
	}
	if sum > left {
		j.breach(demand, distinct(activities), "%s: %d in use where %d is there, from %d to %d, by %s",
			resourceName(j.p, r), sum, left, from, until, strings.Join(by, ", "))
	}
}

// usesOf lists what activities and the work of changes use of one resource.
func (j *judge) usesOf(r int) []occupied {
	var uses []occupied
	for i, a := range j.p.Activities {
		if len(a.Modes) == 0 || j.s.End[i] <= j.s.Start[i] {
			continue
		}
		for _, u := range a.Modes[j.s.Mode[i]].Uses {
			if u.Resource == r {
				uses = append(uses, occupied{r, u.Amount, j.s.Start[i], j.s.End[i], i, name(j.p, i)})
			}
		}
	}
	for _, w := range j.work {
		if w.resource == r {
			uses = append(uses, w)
		}
	}
	return uses
}

// occupy records the work of a change of state k.
func (j *judge) occupy(k int, uses []problem.Use, c turn) {
	for _, u := range uses {
		if c.worked > c.begun {
			j.work = append(j.work, occupied{
				u.Resource, u.Amount, c.begun, c.worked, -1,
				"the change of " + stateName(j.p, k) + " to " + levelName(j.p, k, c.level),
			})
		}
	}
}

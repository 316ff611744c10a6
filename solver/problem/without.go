package problem

import "slices"

// Demands lists the names that demands of p carry, each once, in the order of
// lags, choices, resources (each before its closures), states.
func (p *Problem) Demands() []string {
	var names []string
	seen := map[string]bool{"": true}
	add := func(name string) {
		if !seen[name] {
			seen[name] = true
			names = append(names, name)
		}
	}
	for _, l := range p.Lags {
		add(l.Demand)
	}
	for _, c := range p.Choices {
		add(c.Demand)
	}
	for _, r := range p.Resources {
		add(r.Demand)
		for _, c := range r.Closures {
			add(c.Demand)
		}
	}
	for _, s := range p.States {
		add(s.Demand)
	}
	return names
}

// Without is p less what carries these names. Lags, choices and closures of
// such a name are left out. A resource or state of such a name stays in its
// place, so that indices keep their meaning, but nothing uses or needs it any
// more. What carries no name always stays. p is not changed, and the two share
// no slice that either could alter.
func Without(p *Problem, demands map[string]bool) *Problem {
	gone := func(name string) bool { return name != "" && demands[name] }
	q := &Problem{Name: p.Name, Horizon: p.Horizon}
	uses := func(list []Use) []Use {
		return slices.DeleteFunc(slices.Clone(list), func(u Use) bool { return gone(p.Resources[u.Resource].Demand) })
	}
	for _, a := range p.Activities {
		a.Modes = slices.Clone(a.Modes)
		for i, m := range a.Modes {
			a.Modes[i].Uses = uses(m.Uses)
			a.Modes[i].Needs = needsLeft(p, m.Needs, gone)
		}
		q.Activities = append(q.Activities, a)
	}
	q.Lags = slices.DeleteFunc(slices.Clone(p.Lags), func(l Lag) bool { return gone(l.Demand) })
	for _, c := range p.Choices {
		if !gone(c.Demand) {
			c.If, c.Any = slices.Clone(c.If), slices.Clone(c.Any)
			q.Choices = append(q.Choices, c)
		}
	}
	for _, r := range p.Resources {
		whole := gone(r.Demand)
		r.Closures = slices.DeleteFunc(slices.Clone(r.Closures), func(c Closure) bool { return whole || gone(c.Demand) })
		q.Resources = append(q.Resources, r)
	}
	for _, s := range p.States {
		s.Levels, s.Uses = slices.Clone(s.Levels), uses(s.Uses)
		s.Change = slices.Clone(s.Change)
		for i := range s.Change {
			s.Change[i] = slices.Clone(s.Change[i])
		}
		q.States = append(q.States, s)
	}
	for _, o := range p.Objectives {
		o.Terms, o.Changes, o.Switches = slices.Clone(o.Terms), slices.Clone(o.Changes), slices.Clone(o.Switches)
		o.Soft = slices.Clone(o.Soft)
		for i, s := range o.Soft {
			o.Soft[i].If, o.Soft[i].Any = slices.Clone(s.If), slices.Clone(s.Any)
		}
		q.Objectives = append(q.Objectives, o)
	}
	return q
}

func needsLeft(p *Problem, needs []Need, gone func(string) bool) []Need {
	var left []Need
	for _, n := range needs {
		if !gone(p.States[n.State].Demand) {
			n.Levels = slices.Clone(n.Levels)
			left = append(left, n)
		}
	}
	return left
}

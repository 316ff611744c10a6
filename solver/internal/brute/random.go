package brute

import (
	"fmt"
	"math/rand/v2"

	"plait.example/solver/problem"
)

// Random is a tiny valid problem, the same for the same seed: two to four
// activities of length 0 to 3, some of variable length, lags both ways, a
// choice, resources with closures, one or two states, modes, and one to three
// objectives of every kind. About half of them have a schedule. Every demand
// has a name of its own.
func Random(seed uint64) *problem.Problem {
	g := generator{Rand: rand.New(rand.NewPCG(seed, 0x9e3779b97f4a7c15))}
	p := &problem.Problem{Name: fmt.Sprintf("random %d", seed), Horizon: 6 + g.IntN(4)}
	for r := range 1 + g.IntN(2) {
		p.Resources = append(p.Resources, g.resource(r, p.Horizon))
	}
	if g.IntN(2) == 0 {
		p.States = append(p.States, g.state(p))
	}
	n := 2 + g.IntN(3)
	for i := range n {
		p.Activities = append(p.Activities, g.activity(i, p))
	}
	for k := range g.IntN(5) {
		l := g.lag(n)
		l.Demand = fmt.Sprintf("lag %d", k)
		p.Lags = append(p.Lags, l)
	}
	for k := range g.IntN(3) {
		p.Choices = append(p.Choices, g.choice(k, p))
	}
	for k := range g.IntN(4) {
		p.Objectives = append(p.Objectives, g.objective(k, p))
	}
	if g.IntN(3) == 0 {
		g.kinds(p)
	}
	for k := range p.Objectives {
		g.more(&p.Objectives[k], p)
	}
	return p
}

// kinds adds a state whose changes take no time, and that most activities
// which use the first resource need: kinds of job.
func (g generator) kinds(p *problem.Problem) {
	st := problem.State{Name: "K", Initial: g.IntN(2), Demand: "kinds"}
	levels := 2 + g.IntN(2)
	for l := range levels {
		st.Levels = append(st.Levels, string(rune('p'+l)))
		st.Change = append(st.Change, make([]problem.Change, levels))
	}
	k := len(p.States)
	p.States = append(p.States, st)
	if g.IntN(2) == 0 {
		p.Resources[0].Capacity, p.Resources[0].Closures = 1, nil
	}
	for i := range p.Activities {
		kind := []int{g.IntN(levels)}
		if g.IntN(5) == 0 {
			kind = append(kind, (kind[0]+1)%levels)
		}
		for m := range p.Activities[i].Modes {
			mode := &p.Activities[i].Modes[m]
			if len(mode.Uses) > 0 && mode.Uses[0].Resource == 0 && g.IntN(6) > 0 {
				mode.Uses[0].Amount = 1
				mode.Needs = append(mode.Needs, problem.Need{State: k, Levels: kind})
			}
		}
	}
}

// more makes an objective count switches or what is broken, alone or besides.
func (g generator) more(o *problem.Objective, p *problem.Problem) {
	kind := g.IntN(6)
	if kind > 3 {
		return
	}
	if g.IntN(2) == 0 {
		*o = problem.Objective{Name: o.Name}
	}
	if kind == 0 && len(p.States) > 0 {
		o.Switches = []int{g.IntN(len(p.States))}
		if len(p.States) > 1 && g.IntN(3) == 0 {
			o.Switches = []int{1, 0}
		}
		if g.IntN(3) > 0 {
			return
		}
	}
	for range 1 + g.IntN(3) {
		c := g.choice(0, p)
		s := problem.Soft{If: c.If, Any: c.Any, Weight: 1 + g.IntN(3)}
		if len(s.If) > 0 && g.IntN(3) == 0 {
			s.Any = nil
		}
		o.Soft = append(o.Soft, s)
	}
}

type generator struct{ *rand.Rand }

func (g generator) resource(r, horizon int) problem.Resource {
	res := problem.Resource{Name: fmt.Sprintf("R%d", r), Capacity: 1 + g.IntN(3), Demand: fmt.Sprintf("resource %d", r)}
	at := 0
	for k := range g.IntN(3) {
		c := problem.Closure{From: at + g.IntN(4), Left: g.IntN(res.Capacity + 1), Demand: fmt.Sprintf("closure %d of %d", k, r)}
		c.Until = c.From + 1 + g.IntN(2)
		if at = c.Until; at <= horizon {
			res.Closures = append(res.Closures, c)
		}
	}
	return res
}

// state has change times that keep the triangle rule: each sum of work and
// settling is 1 or 2, or all are 0.
func (g generator) state(p *problem.Problem) problem.State {
	levels := 2 + g.IntN(2)
	st := problem.State{Name: "S", Initial: g.IntN(levels), ChangeFrom: g.IntN(2), Demand: "state"}
	instant := g.IntN(5) == 0
	for a := range levels {
		st.Levels = append(st.Levels, string(rune('a'+a)))
		row := make([]problem.Change, levels)
		for b := range row {
			if a != b && !instant {
				sum := 1 + g.IntN(2)
				row[b].Work = g.IntN(sum + 1)
				row[b].Settle = sum - row[b].Work
			}
		}
		st.Change = append(st.Change, row)
	}
	if g.IntN(2) == 0 {
		st.Uses = []problem.Use{{Resource: g.IntN(len(p.Resources)), Amount: 1}}
	}
	return st
}

func (g generator) activity(i int, p *problem.Problem) problem.Activity {
	a := problem.Activity{Name: string(rune('A' + i)), MinDuration: g.IntN(4)}
	a.MaxDuration = a.MinDuration + max(0, g.IntN(5)-2)
	for range g.IntN(3) {
		var m problem.Mode
		for r := range p.Resources {
			if g.IntN(3) > 0 {
				m.Uses = append(m.Uses, problem.Use{Resource: r, Amount: 1 + g.IntN(2)})
			}
		}
		if len(p.States) > 0 && g.IntN(2) == 0 {
			m.Needs = []problem.Need{{State: 0, Levels: g.Perm(len(p.States[0].Levels))[:1+g.IntN(2)]}}
		}
		a.Modes = append(a.Modes, m)
	}
	return a
}

func (g generator) point(n int) problem.Point {
	return problem.Point{Activity: g.IntN(n), End: g.IntN(2) == 0}
}

func (g generator) lag(n int) problem.Lag {
	l := problem.Lag{From: g.point(n), To: g.point(n)}
	switch g.IntN(6) {
	case 0: // a release date
		l.From, l.Min = problem.Zero(), 1+g.IntN(4)
	case 1: // a deadline
		l.To, l.Min = problem.Zero(), -3-g.IntN(6)
	case 2: // a maximal lag
		l.Min = -g.IntN(6)
	default:
		l.Min = g.IntN(4)
	}
	return l
}

func (g generator) choice(k int, p *problem.Problem) problem.Choice {
	n := len(p.Activities)
	c := problem.Choice{Demand: fmt.Sprintf("choice %d", k)}
	if g.IntN(2) == 0 {
		i := g.IntN(n)
		c.If = []problem.Chosen{{Activity: i, Mode: g.IntN(max(1, len(p.Activities[i].Modes)))}}
	}
	for range 1 + g.IntN(2) {
		c.Any = append(c.Any, g.lag(n))
	}
	return c
}

func (g generator) objective(k int, p *problem.Problem) problem.Objective {
	o := problem.Objective{Name: fmt.Sprintf("objective %d", k)}
	switch g.IntN(3) {
	case 0:
		o.Makespan = true
	case 1:
		if len(p.States) > 0 {
			o.Changes = []int{0}
			break
		}
		fallthrough
	default:
		for range 1 + g.IntN(2) {
			o.Terms = append(o.Terms, problem.Term{Point: g.point(len(p.Activities)), Weight: g.IntN(7) - 2})
		}
	}
	return o
}

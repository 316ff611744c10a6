package lcg

// Part is weight times a variable.
type Part struct {
	Weight int
	Var    Var
}

// linear demands sum of weight*value(side) <= limit, weights positive.
type linear struct {
	sides   []Side
	weights []int64
	limit   int64
	because []Lit
}

// AddLinear demands that the parts sum to at most limit.
func (e *Engine) AddLinear(parts []Part, limit int) {
	e.backTo(0)
	p := &linear{limit: int64(limit)}
	for _, a := range parts {
		switch {
		case a.Weight > 0:
			p.sides = append(p.sides, Side(2*a.Var))
			p.weights = append(p.weights, int64(a.Weight))
		case a.Weight < 0:
			p.sides = append(p.sides, Side(2*a.Var)+1)
			p.weights = append(p.weights, int64(-a.Weight))
		}
	}
	e.addPropagator(p, cheap, p.sides)
}

func (p *linear) run(e *Engine) bool {
	slack := p.limit
	for i, s := range p.sides {
		slack -= p.weights[i] * int64(e.bound[s])
	}
	if slack < 0 {
		e.conflict = p.others(e, e.conflict[:0], -1, -slack-1)
		return false
	}
	for i, s := range p.sides {
		most := int64(e.bound[s]) + slack/p.weights[i]
		if most < -int64(e.bound[s^1]) {
			spare := p.weights[i]*(most+1) - p.weights[i]*int64(e.bound[s]) - slack - 1
			p.because = p.others(e, p.because[:0], i, spare)
			if !e.setStored(Lit{s ^ 1, int32(-most)}, p.because) {
				return false
			}
		}
	}
	return true
}

// others lists the lower bounds of the sum's parts but one. What the deduction
// can do without, spare in all, first drops whole parts, then weakens one.
func (p *linear) others(e *Engine, out []Lit, skip int, spare int64) []Lit {
	for i, s := range p.sides {
		if i == skip {
			continue
		}
		over := int64(e.bound[s] - e.rootBound(s))
		if over*p.weights[i] <= spare {
			spare -= over * p.weights[i]
			continue
		}
		give := min(spare/p.weights[i], over)
		spare -= give * p.weights[i]
		out = append(out, Lit{s, e.bound[s] - int32(give)})
	}
	return out
}

// rootBound is the bound a side has with all events undone.
func (e *Engine) rootBound(s Side) int32 {
	first := e.bound[s]
	for i := e.last[s]; i >= 0; i = e.trail[i].prev {
		first = e.trail[i].old
	}
	return first
}

func (p *linear) unfold(_ *Engine, out []Lit, _ Lit, _, _ int32) []Lit { return out }

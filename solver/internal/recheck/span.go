package recheck

import "slices"

// span is a variable that says how much longer than base it is from one time
// to another.
type span struct {
	v        int
	from, to term
	base     int
}

// lengths: a span is as long as its ends say, and no shorter than the longest
// path between them.
func (c *checker) lengths(d *domain) {
	for _, s := range c.spans {
		if c.far != nil && !c.far.cycle {
			d.atLeast(s.v, c.far.least(s.from.v, s.to.v)+s.to.add-s.from.add-s.base)
		}
		d.atLeast(s.v, d.low(s.to)-d.high(s.from)-s.base)
		d.atMost(s.v, d.high(s.to)-d.low(s.from)-s.base)
		d.keepApart(apart{s.from, s.to, s.base + d.lo[s.v]})
		d.keepApart(apart{s.to, s.from, -s.base - d.hi[s.v]})
	}
}

// spanOf reads the definition of a span: from, to, base.
func (c *checker) spanOf(words []string) (view, bool) {
	if len(words) != 3 {
		return view{}, false
	}
	from, okFrom := c.term(words[0])
	to, okTo := c.term(words[1])
	base, okBase := c.number(words[2])
	far := 4 * c.p.Horizon // no honest log speaks of more
	if !okFrom || !okTo || !okBase || max(from.add, -from.add, to.add, -to.add, base, -base) > far {
		return view{}, false
	}
	w := c.make(-c.longestSpan(), c.longestSpan())
	c.spans = append(c.spans, span{w.v, from, to, base})
	return w, true
}

// longestSpan is more than any span, in either direction.
func (c *checker) longestSpan() int { return 16 * c.p.Horizon }

// sum reads another way to write an objective: amounts of spans, and whatever
// else it takes. It is the same sum, by the meaning of the spans alone.
func (c *checker) sum(words []string) {
	if len(words)%2 == 0 {
		c.fault("a sum must be an objective, then amounts and spans in turn")
		return
	}
	k, ok := c.number(words[0])
	if !ok || k < 0 || k >= len(c.values) {
		c.fault("a sum of objective %q; must be 0 to %d", words[0], len(c.values)-1)
		return
	}
	s := sum{value: c.values[k], parts: slices.Clone(c.sums[k].parts)}
	most := mostInSum / c.longestSpan() // amount in all
	for w := 1; w < len(words); w += 2 {
		amount, ok := c.number(words[w])
		named, known := c.names[words[w+1]]
		i := slices.IndexFunc(c.spans, func(s span) bool { return s.v == named.v })
		if ok = ok && known && i >= 0 && amount >= -most && amount <= most; !ok {
			c.fault("%q of %q is no amount of a span", words[w], words[w+1])
			return
		}
		most -= max(amount, -amount)
		x := c.spans[i]
		s.add(x.v, amount)
		s.add(x.to.v, -amount)
		s.add(x.from.v, amount)
		s.constant += amount * (x.base + x.from.add - x.to.add)
	}
	s.parts = slices.DeleteFunc(s.parts, func(p part) bool { return p.weight == 0 })
	c.sums = append(c.sums, s)
}

const mostInSum = 1 << 56 // so that no sum of products leaves 63 bits

// add adds a part.
func (s *sum) add(v, weight int) {
	for i := range s.parts {
		if s.parts[i].v == v {
			s.parts[i].weight += weight
			return
		}
	}
	s.parts = append(s.parts, part{v, weight})
}

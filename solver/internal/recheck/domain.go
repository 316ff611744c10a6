package recheck

import "slices"

// lit is a bound of a variable.
type lit struct {
	v     int
	upper bool
	k     int
}

const (
	atLeast = false
	atMost  = true
)

func (l lit) not() lit {
	if l.upper {
		return lit{l.v, atLeast, l.k + 1}
	}
	return lit{l.v, atMost, l.k - 1}
}

// domain holds the bounds of all variables; dead if one has no value left.
type domain struct {
	lo, hi  []int
	dead    bool
	touched []lit   // bounds that rules have not looked at yet
	orders  []apart // chosen by a search
	moved   []bool  // by activity: what a rule for cliques has not looked at yet
	stale   []bool  // by resource: likewise, for windows
}

func (d *domain) add(lo, hi int) int {
	v := len(d.lo)
	d.lo, d.hi = append(d.lo, lo), append(d.hi, hi)
	d.touched = append(d.touched, lit{v, atLeast, lo}, lit{v, atMost, hi})
	return v
}

func (d *domain) clone() *domain {
	e := &domain{}
	e.copy(d)
	return e
}

// copy makes d the same as o, in the room that d has.
func (d *domain) copy(o *domain) {
	d.lo, d.hi = append(d.lo[:0], o.lo...), append(d.hi[:0], o.hi...)
	d.touched = append(d.touched[:0], o.touched...)
	d.moved, d.stale = append(d.moved[:0], o.moved...), append(d.stale[:0], o.stale...)
	d.dead, d.orders = o.dead, slices.Clip(o.orders)
}

func (d *domain) atLeast(v, k int) {
	if k > d.lo[v] {
		d.lo[v] = k
		d.touched = append(d.touched, lit{v, atLeast, k})
		d.dead = d.dead || k > d.hi[v]
	}
}

func (d *domain) atMost(v, k int) {
	if k < d.hi[v] {
		d.hi[v] = k
		d.touched = append(d.touched, lit{v, atMost, k})
		d.dead = d.dead || k < d.lo[v]
	}
}

func (d *domain) fix(v, k int) {
	d.atLeast(v, k)
	d.atMost(v, k)
}

func (d *domain) hold(l lit) {
	if l.upper {
		d.atMost(l.v, l.k)
	} else {
		d.atLeast(l.v, l.k)
	}
}

func (d *domain) holds(l lit) bool {
	if l.upper {
		return d.hi[l.v] <= l.k
	}
	return d.lo[l.v] >= l.k
}

// fails says that no value is left with which l holds.
func (d *domain) fails(l lit) bool {
	if l.upper {
		return d.lo[l.v] > l.k
	}
	return d.hi[l.v] < l.k
}

// passed says that a bound has moved on since it was noted as touched: a later
// note stands for it.
func (d *domain) passed(l lit) bool {
	if l.upper {
		return d.hi[l.v] != l.k
	}
	return d.lo[l.v] != l.k
}

func (d *domain) fixed(v int) bool { return d.lo[v] == d.hi[v] }

// term is a variable plus a number.
type term struct{ v, add int }

func (d *domain) low(t term) int  { return d.lo[t.v] + t.add }
func (d *domain) high(t term) int { return d.hi[t.v] + t.add }

// apart demands to >= from + least.
type apart struct {
	from, to term
	least    int
}

func (d *domain) keepApart(a apart) {
	d.atLeast(a.to.v, d.low(a.from)+a.least-a.to.add)
	d.atMost(a.from.v, d.high(a.to)-a.least-a.from.add)
}

func (d *domain) sure(a apart) bool { return d.low(a.to) >= d.high(a.from)+a.least }

// ordered says that an order is sure or was chosen.
func (d *domain) ordered(a apart) bool { return d.sure(a) || slices.Contains(d.orders, a) }

func (d *domain) impossible(a apart) bool { return d.high(a.to) < d.low(a.from)+a.least }

// converse holds exactly when a does not.
func (a apart) converse() apart { return apart{a.to, a.from, 1 - a.least} }

package picture

import (
	"cmp"
	"math"
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// lane is a place with the strands that are in it.
type lane struct {
	place       practical.Place
	oven        string // where there are several
	name        string
	left, right float64
	subs        int // sub-lanes
	pieces      []*piece
}

// piece is a thread as it is drawn.
type piece struct {
	thread   timeplan.Thread
	wait     *timeplan.Wait
	lane     *lane // nil: it stays in the hands
	sub      int   // 0 is nearest to the hands
	x        float64
	line     float64 // how wide it is drawn
	from, to int     // minutes: it leaves the hands and comes back
	route    route
}

// order is how the lanes stand across the page.
var order = []practical.Place{
	practical.AtBench, practical.AtFreezer, practical.AtFridge, practical.AtWarm, practical.AtSide,
	practical.AtHands,
	practical.AtHob, practical.AtOven, practical.AtGrill, practical.AtMicrowave, practical.Served,
}

var laneNames = map[practical.Place]string{
	practical.AtBench: "bench", practical.AtFreezer: "freezer", practical.AtFridge: "fridge", practical.AtWarm: "warm",
	practical.AtSide: "side", practical.AtHands: "hands", practical.AtHob: "hob", practical.AtOven: "oven",
	practical.AtGrill: "grill", practical.AtMicrowave: "microwave", practical.Served: "served",
}

// forever is later than any clock.
const forever = 1 << 20

// choosePieces keeps the threads that can be drawn and gives each its lane. A thread whose rows
// are not there, or that would come back before it left, is left out.
func (f *frame) choosePieces() {
	rows := f.plan.Rows
	ovens := f.ovenNames()
	for _, t := range f.plan.Threads {
		if !drawable(t, len(rows)) {
			continue
		}
		if slices.ContainsFunc(f.pieces, func(p *piece) bool { return same(p.thread, t) }) {
			continue
		}
		p := &piece{thread: t, from: f.end[t.From], to: forever}
		if t.To >= 0 {
			p.to = max(p.from, f.at[t.To])
		}
		if t.Wait >= 0 && t.Wait < len(f.plan.Waits) {
			p.wait = &f.plan.Waits[t.Wait]
		}
		place := t.Place
		if _, known := laneNames[place]; !known {
			place = practical.AtSide
		}
		if t.To == -1 {
			place = practical.Served
		}
		if place != practical.AtHands {
			p.lane = f.laneOf(place, ovenOf(p, rows), ovens)
			p.lane.pieces = append(p.lane.pieces, p)
		}
		f.pieces = append(f.pieces, p)
	}
	for _, s := range f.plan.Ovens {
		f.laneOf(practical.AtOven, s.Oven, ovens)
	}
	f.laneOf(practical.AtHands, "", nil)
	slices.SortStableFunc(f.lanes, func(a, b *lane) int {
		return cmp.Or(
			cmp.Compare(slices.Index(order, a.place), slices.Index(order, b.place)),
			cmp.Compare(slices.Index(ovens, a.oven), slices.Index(ovens, b.oven)))
	})
}

// same says whether two threads are one line on the page: components of a dish
// that go the same way together.
func same(a, b timeplan.Thread) bool {
	a.Component, b.Component = "", ""
	return a == b
}

// chooseThickness sets the strands' widths: thinner where food only stands ready,
// and all thinner where sub-lanes stand close.
func (f *frame) chooseThickness() {
	usual := 6 * f.u
	for _, l := range f.lanes {
		for i, p := range l.pieces {
			for _, q := range l.pieces[:i] {
				if d := math.Abs(p.x-q.x) / max(1, math.Abs(float64(p.sub-q.sub))); p.sub != q.sub {
					usual = min(usual, max(0.55*d, 3.6*f.u))
				}
			}
		}
	}
	for _, p := range f.pieces {
		p.line = usual
		if p.wait == nil && p.lane != nil && p.thread.To >= 0 {
			p.line = usual * 0.74
		}
	}
}

// drawable says whether a thread's rows are there and in order.
func drawable(t timeplan.Thread, rows int) bool {
	return t.From >= 0 && t.From < rows && (t.To == -1 || t.To > t.From && t.To < rows)
}

// ovenNames is the names of the ovens, in the order of the plan; empty where there is only one.
func (f *frame) ovenNames() []string {
	var names []string
	note := func(name string) {
		if name != "" && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, s := range f.plan.Ovens {
		note(s.Oven)
	}
	for _, w := range f.plan.Waits {
		note(w.Oven)
	}
	if len(names) < 2 || len(names) > 4 {
		return nil
	}
	return names
}

// ovenOf is the oven that a piece is in.
func ovenOf(p *piece, rows []timeplan.Row) string {
	if p.wait != nil && p.wait.Oven != "" {
		return p.wait.Oven
	}
	return rows[p.thread.From].Oven
}

// laneOf finds the lane of a place, or adds it.
func (f *frame) laneOf(place practical.Place, oven string, ovens []string) *lane {
	if place != practical.AtOven || !slices.Contains(ovens, oven) {
		oven = ""
		if place == practical.AtOven && len(ovens) > 0 {
			oven = ovens[0]
		}
	}
	for _, l := range f.lanes {
		if l.place == place && l.oven == oven {
			return l
		}
	}
	l := &lane{place: place, oven: oven, name: laneNames[place]}
	if oven != "" {
		l.name = clip(oven, 14)
	}
	f.lanes = append(f.lanes, l)
	return l
}

// subLanes gives each piece of a lane a sub-lane in which no other is at the
// same time. The shortest stand nearest to the hands: a strand that is put in
// and taken out while another waits then never crosses it.
func (f *frame) subLanes() {
	for _, l := range f.lanes {
		l.subs = 1
		byLength := slices.Clone(l.pieces)
		slices.SortStableFunc(byLength, func(a, b *piece) int {
			return cmp.Or(cmp.Compare(a.to-a.from, b.to-b.from), cmp.Compare(b.from, a.from))
		})
		var taken [][]*piece
		for _, p := range byLength {
			for p.sub = 0; p.sub < len(taken); p.sub++ {
				if !slices.ContainsFunc(taken[p.sub], func(q *piece) bool { return p.from <= q.to && q.from <= p.to }) {
					break
				}
			}
			if p.sub == len(taken) {
				taken = append(taken, nil)
			}
			taken[p.sub] = append(taken[p.sub], p)
		}
		l.subs = max(1, len(taken))
	}
}

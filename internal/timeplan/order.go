package timeplan

import (
	"cmp"
	"slices"

	"plait.example/internal/practical"
)

// Order puts the rows in the order of the clock and lets the threads follow
// them. Rows that begin together keep their order, except that a row of no
// minutes comes first.
func (p *Plan) Order() {
	order := make([]int, len(p.Rows))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := p.Rows[a], p.Rows[b]
		return cmp.Or(cmp.Compare(x.At, y.At), cmp.Compare(min(x.Minutes, 1), min(y.Minutes, 1)))
	})
	rows, moved := make([]Row, len(order)), make([]int, len(order))
	for to, from := range order {
		rows[to], moved[from] = p.Rows[from], to
	}
	p.Rows = rows
	for i := range p.Threads {
		t := &p.Threads[i]
		t.From, t.To = follow(moved, t.From), follow(moved, t.To)
	}
}

// follow is where a row has moved to; -1 and other indices of no row stay.
func follow(moved []int, i int) int {
	if i < 0 || i >= len(moved) {
		return i
	}
	return moved[i]
}

// End is when the last row inside the clock ends; Start when there are none.
func (p *Plan) End() practical.TimeOfDay {
	end := p.Start
	for _, r := range p.Rows {
		if !r.Outside {
			end = max(end, r.End())
		}
	}
	return end
}

// Spare is the minutes in hand between the finish and what is allowed;
// negative when the plan runs over.
func (p *Plan) Spare() int { return int(p.Allowed - p.Finish) }

// DishOf is the dish with that letter, and its place in Dishes; -1 when there is none.
func (p *Plan) DishOf(letter string) (Dish, int) {
	for i, d := range p.Dishes {
		if d.Letter == letter {
			return d, i
		}
	}
	return Dish{}, -1
}

package app

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// move is a row on its way to another place in the order of the plan.
type move struct {
	where  Where
	moved  timeplan.Row
	beside timeplan.Row   // the row it is moved before or after
	order  []timeplan.Row // as it will be
	at     int            // where moved stands in order
}

func newMove(r Record, row string, where Where, beside string) (*move, error) {
	movable := canMove(r.Practical)
	rows := slices.DeleteFunc(slices.Clone(r.Plan.Rows), func(x timeplan.Row) bool { return !movable(x) && x.ID != row })
	from := slices.IndexFunc(rows, func(x timeplan.Row) bool { return x.ID == row })
	if from < 0 {
		return nil, noRow(row)
	}
	if !movable(rows[from]) {
		return nil, held(rows[from])
	}
	to, err := target(rows, from, where, beside)
	if err != nil {
		return nil, err
	}
	m := &move{where: where, moved: rows[from], beside: rows[to]}
	rows = slices.Delete(rows, from, from+1)
	m.at = slices.IndexFunc(rows, func(x timeplan.Row) bool { return x.ID == m.beside.ID })
	if where == Down || where == After {
		m.at++
	}
	m.order = slices.Insert(rows, m.at, m.moved)
	return m, m.allowed(r.Practical)
}

// target is the index of the row that the moved one goes before or after.
func target(rows []timeplan.Row, from int, where Where, beside string) (int, error) {
	to := from
	switch where {
	case Up:
		to--
	case Down:
		to++
	case Before, After:
		to = slices.IndexFunc(rows, func(x timeplan.Row) bool { return x.ID == beside })
		if to < 0 {
			return 0, noRow(beside)
		}
	default:
		return 0, practical.Fault{Code: practical.Invalid, Field: "where", Message: fmt.Sprintf("a row cannot be moved %q", where), Hint: "up, down, before or after"}
	}
	if to < 0 || to >= len(rows) || to == from {
		return 0, practical.Fault{Code: practical.Invalid, Field: "row", Message: fmt.Sprintf("%q cannot go further %s", short(rows[from].Text), where), Hint: "it is already there"}
	}
	return to, nil
}

// allowed refuses an order in which the moved row has passed one that the
// recipe itself puts on the other side.
func (m *move) allowed(p *practical.Practical) error {
	before := precedence(p)
	for i, other := range m.order {
		first, then := m.moved, other
		if i > m.at {
			first, then = other, m.moved
		}
		if i != m.at && before(first, then) {
			return practical.Fault{
				Code: practical.Invalid, Field: "row",
				Message: fmt.Sprintf("%q has to come before %q", short(first.Text), short(then.Text)),
				Hint:    "move the other row first, or change what the step follows",
			}
		}
	}
	return nil
}

// pin keeps the new order: the moved row stands between its new neighbours when
// it was put beside a row, and has passed one row when it went up or down. Pins
// that say otherwise are taken away.
func (m *move) pin(p *practical.Practical) {
	place := map[string]int{}
	for i, r := range m.order {
		place[r.ID] = i
	}
	p.Pins = slices.DeleteFunc(p.Pins, func(x practical.Pin) bool {
		if x.Row == m.moved.ID && x.At != nil {
			return true
		}
		of := x.Row == m.moved.ID || x.After == m.moved.ID
		return of && x.At == nil && place[x.Row] < place[x.After]
	})
	if m.where != Up && m.at > 0 {
		addPin(p, m.moved.ID, m.order[m.at-1].ID)
	}
	if m.where != Down && m.at+1 < len(m.order) {
		addPin(p, m.order[m.at+1].ID, m.moved.ID)
	}
}

func (m *move) words() string {
	if m.where == Up || m.where == Down {
		return string(m.where)
	}
	return fmt.Sprintf("%s %q", m.where, short(m.beside.Text))
}

func addPin(p *practical.Practical, row, after string) {
	pin := practical.Pin{Row: row, After: after}
	if !slices.Contains(p.Pins, pin) {
		p.Pins = append(p.Pins, pin)
	}
}

// canMove gives a test for rows that a pin may name: those of steps, the
// serving, and washing up on the way. Turning the oven, resting and what comes
// after the clock follow from others.
func canMove(p *practical.Practical) func(timeplan.Row) bool {
	rows := p.Rows()
	return func(r timeplan.Row) bool { return slices.Contains(rows, r.ID) || isWashUp(r.ID) }
}

func isWashUp(row string) bool { return strings.HasPrefix(row, "wash-up/") }

// stepOf is the step's id of a row's id ("A3" of "A3/put-in"), a dish's letter of its serve row.
func stepOf(row string) string {
	step, _, _ := strings.Cut(row, "/")
	return step
}

// precedence says whether a row has to come before another: the rows of a step
// keep their order, a step comes after those it follows, the serving after all
// steps of its dish, and everything after the set-up.
func precedence(p *practical.Practical) func(a, b timeplan.Row) bool {
	follows := map[string][]string{}
	for _, d := range p.Dishes {
		for _, s := range d.Steps {
			for _, a := range s.After {
				follows[s.ID] = append(follows[s.ID], a.Step)
			}
			follows[d.Letter] = append(follows[d.Letter], s.ID)
		}
	}
	return func(a, b timeplan.Row) bool {
		x, y := stepOf(a.ID), stepOf(b.ID)
		if x == y && !isWashUp(a.ID) {
			return true
		}
		if a.Action == timeplan.SetUp && b.Action != timeplan.SetUp {
			return true
		}
		return reaches(follows, y, x, map[string]bool{})
	}
}

// reaches says whether step from follows step to, directly or through others.
func reaches(follows map[string][]string, from, to string, seen map[string]bool) bool {
	if seen[from] {
		return false
	}
	seen[from] = true
	return slices.ContainsFunc(follows[from], func(next string) bool {
		return next == to || reaches(follows, next, to, seen)
	})
}

// Package timeplantest holds invented plans for tests of the rooms that show,
// print and judge plans. It knows nothing of how plans are found: the plans
// here are written by hand, minute by minute.
package timeplantest

import (
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// build adds the parts of a plan that follow from its rows.
type build struct {
	plan  *timeplan.Plan
	waits map[string]waitOf
}

// waitOf is what a step's wait asks for.
type waitOf struct {
	least, most int
	attention   practical.Attention
	every       int
}

// at reads a time that the author wrote; a slip of the pen is a panic in a test.
func at(clock string) practical.TimeOfDay {
	t, err := practical.ParseTimeOfDay(clock)
	if err != nil {
		panic(err)
	}
	return t
}

// row adds a row. The id's first part is the step, its first letter the dish
// unless the row is for all.
func (b *build) row(clock string, minutes int, id string, action timeplan.Action, place practical.Place, text string, with ...func(*timeplan.Row)) {
	r := timeplan.Row{ID: id, At: at(clock), Clock: at(clock), Minutes: minutes, Action: action, Place: place, Text: text}
	step, _, _ := strings.Cut(id, "/")
	for _, d := range b.plan.Dishes {
		if strings.HasPrefix(step, d.Letter) && strings.ToUpper(step) == step {
			r.Dish = d.Letter
		}
	}
	if len(step) > 1 && r.Dish != "" {
		r.Steps = []string{step}
	}
	if place == practical.AtOven {
		r.Oven = "oven"
	}
	for _, w := range with {
		w(&r)
	}
	if b.plan.Round > 1 {
		r.Clock -= r.Clock % practical.TimeOfDay(b.plan.Round)
	}
	b.plan.Rows = append(b.plan.Rows, r)
}

// The parts that only some rows have.
func check(s string) func(*timeplan.Row)  { return func(r *timeplan.Row) { r.Check = s } }
func safety(s string) func(*timeplan.Row) { return func(r *timeplan.Row) { r.Safety = s } }
func kit(s string) func(*timeplan.Row)    { return func(r *timeplan.Row) { r.Kit = s } }
func cook(n int) func(*timeplan.Row)      { return func(r *timeplan.Row) { r.Cook = n } }
func pinned(r *timeplan.Row)              { r.Pinned = true }
func outside(r *timeplan.Row)             { r.Outside = true }

func set(celsius int, words string) func(*timeplan.Row) {
	return func(r *timeplan.Row) { r.Celsius, r.Setting = celsius, words }
}

// pair makes the waits from the put-in rows and their take-outs.
func (b *build) pair() {
	outs := map[string]practical.TimeOfDay{}
	for _, r := range b.plan.Rows {
		if r.Action == timeplan.TakeOut {
			outs[r.Steps[0]] = r.At
		}
	}
	for i := range b.plan.Rows {
		r := &b.plan.Rows[i]
		if r.Action != timeplan.PutIn {
			continue
		}
		step := r.Steps[0]
		r.Until = outs[step]
		w := b.waits[step]
		wait := timeplan.Wait{
			Step: step, Dish: r.Dish, Place: r.Place, From: r.End(), Until: r.Until,
			Least: w.least, Most: w.most, Celsius: r.Celsius, Attention: w.attention, Every: w.every,
		}
		if r.Place == practical.AtOven {
			wait.Oven = "oven"
		}
		b.plan.Waits = append(b.plan.Waits, wait)
	}
}

// strand lays one component's thread through the rows named; an id of "" ends
// it there (it joined another component).
func (b *build) strand(dish, component string, ids ...string) {
	index, waits := map[string]int{}, map[string]int{}
	for i, r := range b.plan.Rows {
		index[r.ID] = i
	}
	for i, w := range b.plan.Waits {
		waits[w.Step] = i
	}
	for i := 1; i < len(ids); i++ {
		from, to := index[ids[i-1]], index[ids[i]]
		a, z := b.plan.Rows[from], b.plan.Rows[to]
		t := timeplan.Thread{Dish: dish, Component: component, From: from, To: to, Place: practical.AtSide, Wait: -1}
		switch {
		case a.Action == timeplan.PutIn:
			t.Place, t.Wait = a.Place, waits[a.Steps[0]]
		case a.Action == timeplan.SetUp:
			t.Place = practical.AtBench
		case a.End() == z.At:
			t.Place = practical.AtHands
		}
		b.plan.Threads = append(b.plan.Threads, t)
	}
	last := index[ids[len(ids)-1]]
	if b.plan.Rows[last].Action == timeplan.Serve {
		b.plan.Threads = append(b.plan.Threads, timeplan.Thread{
			Dish: dish, Component: component, From: last, To: -1, Place: practical.Served, Wait: -1,
		})
	}
}

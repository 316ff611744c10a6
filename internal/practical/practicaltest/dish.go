package practicaltest

import (
	"fmt"

	"pgregory.net/rapid"

	"plait.example/internal/practical"
)

// made is what has been drawn so far.
type made struct {
	p     *practical.Practical
	steps []practical.Step // of all dishes, in order
}

func (m *made) dish(t *rapid.T, letter string) practical.Dish {
	d := practical.Dish{Letter: letter, Name: words(t, "name"), Portions: rapid.IntRange(0, 8).Draw(t, "portions")}
	d.Serve = practical.Serve{
		Heat: rapid.SampledFrom([]practical.Heat{practical.Hot, practical.Cold, practical.AsIs}).Draw(t, "heat"),
		How:  odd(t, "how"), Minutes: rapid.IntRange(1, 6).Draw(t, "serve"),
		Within: rapid.SampledFrom([]int{0, 10, 30, 60}).Draw(t, "within"),
	}
	for range rapid.IntRange(0, 3).Draw(t, "ingredients") {
		d.Ingredients = append(d.Ingredients, practical.Ingredient{Raw: words(t, "raw"), Quantity: float64(rapid.IntRange(0, 4000).Draw(t, "quantity")) / 8, Note: odd(t, "note")})
	}
	if yes(t, 2, "allergens") {
		d.Allergens = []string{"milk", "egg"}
	}
	if yes(t, 6, "pasted") {
		d.Text = odd(t, "text") + rapid.SampledFrom([]string{"", "\v", "\f", "\u0085", "\ufeff", "\x7f", "\x01", "\x1b["}).Draw(t, "left by a word processor")
	}
	for i := range rapid.IntRange(2, 8).Draw(t, "steps") {
		s := m.step(t, fmt.Sprintf("%s%d", letter, i+1), d.Steps)
		d.Steps = append(d.Steps, s)
		m.steps = append(m.steps, s)
	}
	return d
}

func (m *made) step(t *rapid.T, id string, before []practical.Step) practical.Step {
	s := practical.Step{ID: id, Hands: hands(t, 15), Check: odd(t, "check"), Safety: odd(t, "safety"), Kit: odd(t, "kit")}
	onlySetUp := len(before) == 0 || before[len(before)-1].SetUp
	if onlySetUp && m.p.Clock.Start-m.p.Clock.SetUp >= 15 && yes(t, 3, "in set-up") {
		s.SetUp, s.Text, s.Hands = true, "gather the "+words(t, "text"), hands(t, 4)
		s.Hands.High++
		return s
	}
	s.Text = words(t, "text")
	s.Food = rapid.SampledFrom([]practical.Food{"", "", practical.Raw, practical.ReadyToEat}).Draw(t, "food")
	s.Component = rapid.SampledFrom([]string{"", "", "pastry", "filling"}).Draw(t, "component")
	s.Doubt = float64(rapid.IntRange(0, 4).Draw(t, "doubt")) / 4
	if yes(t, 5, "why") {
		s.Why = []string{odd(t, "why"), "common practice"}
	}
	s.Uses = m.uses(t)
	if s.Hands.High == 0 || yes(t, 2, "waits") {
		w := m.wait(t)
		s.Wait = &w
	}
	s.After = m.after(t, before)
	return s
}

// hands is an estimate of at most most as likely, and at least 1 as high.
func hands(t *rapid.T, most int) practical.Estimate {
	likely := rapid.IntRange(0, most).Draw(t, "likely")
	return practical.Estimate{Low: likely - likely/4, Likely: likely, High: likely + rapid.IntRange(0, 1+likely/2).Draw(t, "more")}
}

func (m *made) uses(t *rapid.T) []practical.Kit {
	kit := rapid.SampledFrom([]practical.Kit{practical.Ring, practical.Processor, practical.Mixer, practical.Microwave}).Draw(t, "kit")
	if m.p.Kitchen.Count(kit) == 0 || !yes(t, 4, "uses") {
		return nil
	}
	return []practical.Kit{kit}
}

// after is the step before as a rule, sometimes any earlier one, sometimes of another dish.
func (m *made) after(t *rapid.T, before []practical.Step) []practical.After {
	var out []practical.After
	add := func(step, label string) {
		a := practical.After{Step: step}
		if yes(t, 4, label) {
			a.Least = rapid.IntRange(1, 25).Draw(t, label+" least")
		}
		if yes(t, 4, label+" bounded") {
			most := a.Least + rapid.IntRange(0, 60).Draw(t, label+" most")
			a.Most = &most
		}
		out = append(out, a)
	}
	if len(before) > 0 && !yes(t, 5, "free") {
		add(before[len(before)-1].ID, "after the one before")
	}
	if len(before) > 1 && yes(t, 4, "joins") {
		add(rapid.SampledFrom(before[:len(before)-1]).Draw(t, "joined").ID, "joined")
	}
	if len(before) == 0 && len(m.steps) > 0 && yes(t, 20, "after another dish") {
		out = append(out, practical.After{Step: rapid.SampledFrom(m.steps).Draw(t, "of another dish").ID})
	}
	return out
}

// wait is food in a place that the kitchen has.
func (m *made) wait(t *rapid.T) practical.Wait {
	places := []practical.Place{practical.AtOven, practical.AtOven, practical.AtFridge, practical.AtFridge, practical.AtHob, practical.AtSide, practical.AtWarm}
	for place, kit := range map[practical.Place]practical.Kit{practical.AtFreezer: practical.FreezerKit} {
		if m.p.Kitchen.Count(kit) > 0 {
			places = append(places, place)
		}
	}
	if m.p.Kitchen.Grill != practical.NoGrill {
		places = append(places, practical.AtGrill)
	}
	w := practical.Wait{Place: rapid.SampledFrom(places).Draw(t, "place"), Least: rapid.IntRange(0, 40).Draw(t, "least")}
	if yes(t, 2, "has a most") {
		w.Most = max(1, w.Least+rapid.IntRange(0, 40).Draw(t, "most"))
	}
	switch rapid.IntRange(1, 8).Draw(t, "attention") {
	case 1:
		w.Attention = practical.Stay
	case 2:
		w.Attention, w.Every = practical.Look, rapid.SampledFrom([]int{5, 10, 15}).Draw(t, "every")
	case 3:
		w.Attention = practical.Leave
	}
	if w.Place == practical.AtOven {
		w.Celsius = rapid.SampledFrom([]int{150, 160, 170, 180, 190, 200, 210, 220}).Draw(t, "celsius")
		w.Band = rapid.SampledFrom([]int{0, 10, 20}).Draw(t, "band")
		w.Shelves = rapid.IntRange(0, 1).Draw(t, "shelves")
		if yes(t, 5, "door") {
			w.DoorShut = w.Least * 2 / 3
		}
	}
	if yes(t, 6, "own put in") {
		w.PutIn, w.TakeOut = rapid.IntRange(1, 3).Draw(t, "put in"), rapid.IntRange(1, 3).Draw(t, "take out")
	}
	return w
}

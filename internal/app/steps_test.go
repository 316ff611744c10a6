package app

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/practical"
)

// chain is an invented dish of three steps one after another, and a dish that
// waits for its second step.
func chain() *practical.Practical {
	most := 20
	return &practical.Practical{
		Dishes: []practical.Dish{
			{Letter: "A", Steps: []practical.Step{
				{ID: "A1", Text: "Rub in the butter. Add water; bring together.", Hands: practical.Estimate{Low: 4, Likely: 6, High: 9}},
				{ID: "A2", Text: "Chill.", After: []practical.After{{Step: "A1"}}, Wait: &practical.Wait{Least: 20, Place: practical.AtFridge}},
				{ID: "A3", Text: "Roll out.", Hands: practical.Estimate{Low: 3, Likely: 5, High: 8}, After: []practical.After{{Step: "A2", Most: &most}}},
			}},
			{Letter: "B", Steps: []practical.Step{{ID: "B1", Text: "Fill.", After: []practical.After{{Step: "A2", Least: 5}}}}},
		},
		Pins: []practical.Pin{{Row: "A3/hands"}, {Row: "B1/hands", After: "A2/take-out"}},
	}
}

// order writes who follows whom: "A1 A2<A1 ...".
func order(p *practical.Practical) []string {
	var all []string
	for _, s := range allSteps(p) {
		text := s.ID
		for _, a := range s.After {
			text += "<" + a.Step
		}
		all = append(all, text)
	}
	return all
}

func pins(p *practical.Practical) []string {
	var all []string
	for _, pin := range p.Pins {
		all = append(all, pin.Row+">"+pin.After)
	}
	return all
}

func TestStepEdits(t *testing.T) {
	for name, c := range map[string]struct {
		edit  func(p *practical.Practical) string
		look  string
		order []string
		pins  []string
	}{
		"add after the first": {
			func(p *practical.Practical) string { return AddStep(p, "A", "A1") }, "A2",
			[]string{"A1", "A2<A1", "A3<A2", "A4<A3", "B1<A3"},
			[]string{"A4/hands>", "B1/hands>A3/take-out"},
		},
		"add at the end": {
			func(p *practical.Practical) string { return AddStep(p, "A", "") }, "A4",
			[]string{"A1", "A2<A1", "A3<A2", "A4<A3", "B1<A2"},
			[]string{"A3/hands>", "B1/hands>A2/take-out"},
		},
		"remove the middle": {
			func(p *practical.Practical) string { return RemoveStep(p, "A", "A2") }, "A2",
			[]string{"A1", "A2<A1", "B1<A1"},
			[]string{"A2/hands>"},
		},
		"split": {
			func(p *practical.Practical) string { return SplitStep(p, "A", "A1", 0) }, "A1",
			[]string{"A1", "A2<A1", "A3<A2", "A4<A3", "B1<A3"},
			[]string{"A4/hands>", "B1/hands>A3/take-out"},
		},
		"move up past what it followed": {
			func(p *practical.Practical) string { return MoveStep(p, "A", "A3", -1) }, "A2",
			[]string{"A1", "A2<A1", "A3<A2", "B1<A3"},
			[]string{"A2/hands>", "B1/hands>A3/take-out"},
		},
		"move down at the end": {
			func(p *practical.Practical) string { return MoveStep(p, "A", "A3", 1) }, "",
			[]string{"A1", "A2<A1", "A3<A2", "B1<A2"},
			[]string{"A3/hands>", "B1/hands>A2/take-out"},
		},
		"join": {
			func(p *practical.Practical) string { id, _ := JoinStep(p, "A", "A1"); return id }, "A1",
			[]string{"A1", "A2<A1", "B1<A1"},
			[]string{"A2/hands>"},
		},
		"join after a wait is refused": {
			func(p *practical.Practical) string { id, _ := JoinStep(p, "A", "A2"); return id }, "",
			[]string{"A1", "A2<A1", "A3<A2", "B1<A2"},
			[]string{"A3/hands>", "B1/hands>A2/take-out"},
		},
		"no such step": {
			func(p *practical.Practical) string {
				return SplitStep(p, "A", "Z9", 0) + AddStep(p, "Z", "") + RemoveStep(p, "A", "B1")
			}, "",
			[]string{"A1", "A2<A1", "A3<A2", "B1<A2"},
			[]string{"A3/hands>", "B1/hands>A2/take-out"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			p := chain()
			if look := c.edit(p); look != c.look {
				t.Errorf("look at %q, want %q", look, c.look)
			}
			if diff := cmp.Diff(c.order, order(p)); diff != "" {
				t.Errorf("order (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(c.pins, pins(p)); diff != "" {
				t.Errorf("pins (-want +got):\n%s", diff)
			}
		})
	}
}

// Minutes are shared, never lost: 4 + 6 + 9 before and after.
func TestSplitKeepsMinutesAndJoinRestores(t *testing.T) {
	p := chain()
	SplitStep(p, "A", "A1", 0)
	a, b := p.Dishes[0].Steps[0], p.Dishes[0].Steps[1]
	if a.Text != "Rub in the butter." || b.Text != "Add water; bring together." {
		t.Errorf("texts %q and %q", a.Text, b.Text)
	}
	if a.Hands.Low+b.Hands.Low != 4 || a.Hands.Likely+b.Hands.Likely != 6 || a.Hands.High+b.Hands.High != 9 {
		t.Errorf("minutes %v and %v", a.Hands, b.Hands)
	}
	if _, err := JoinStep(p, "A", "A1"); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(order(chain()), order(p)); diff != "" {
		t.Errorf("order (-want +got):\n%s", diff)
	}
	if got := p.Dishes[0].Steps[0]; got.Text != chain().Dishes[0].Steps[0].Text || got.Hands != chain().Dishes[0].Steps[0].Hands {
		t.Errorf("joined again: %+v", got)
	}
}

func TestRemoveDish(t *testing.T) {
	p := chain()
	if !RemoveDish(p, "A") || RemoveDish(p, "A") {
		t.Error("a dish goes once")
	}
	if diff := cmp.Diff([]string{"B1"}, order(p)); diff != "" {
		t.Errorf("order (-want +got):\n%s", diff)
	}
	if len(p.Pins) != 0 {
		t.Errorf("pins left: %v", p.Pins)
	}
}

// A step is cut where one wants, and in its middle where that is no beginning of a word.
func TestSplitWhere(t *testing.T) {
	const text = "Add the stock, bring to the boil and simmer. Blend it."
	all, best := Cuts(text)
	var parts []string
	for _, at := range all {
		parts = append(parts, text[at:])
	}
	want := []string{"bring to the boil and simmer. Blend it.", "and simmer. Blend it.", "Blend it."}
	if diff := cmp.Diff(want, parts); diff != "" || best != len(text)-len("Blend it.") {
		t.Errorf("best %d; cuts (-want +got):\n%s", best, diff)
	}
	for at, second := range map[int]string{all[0]: want[0], all[1]: want[1], 3: "Blend it.", 0: "Blend it.", -1: "Blend it.", 999: "Blend it."} {
		p := &practical.Practical{Dishes: []practical.Dish{{Letter: "A", Steps: []practical.Step{{ID: "A1", Text: text}}}}}
		SplitStep(p, "A", "A1", at)
		if got := p.Dishes[0].Steps[1].Text; got != second {
			t.Errorf("cut at %d: %q, want %q", at, got, second)
		}
	}
	if all, best := Cuts("Blend"); len(all) != 0 || best != -1 {
		t.Errorf("one word: %v, %d", all, best)
	}
}

package web

import (
	"net/url"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/practical"
)

func TestApply(t *testing.T) {
	most := 15
	for name, c := range map[string]struct {
		typed url.Values
		want  func(p *practical.Practical)
		fault string
	}{
		"a time with a full stop":     {url.Values{"clock.start": {"9.30"}}, func(p *practical.Practical) { p.Clock.Start = 570 }, ""},
		"finish before start is kept": {url.Values{"clock.finish": {"03:00"}}, func(p *practical.Practical) { p.Clock.Finish = 180 }, ""},
		"no time":                     {url.Values{"clock.start": {"soon"}}, func(*practical.Practical) {}, "clock.start"},
		"minutes with their unit":     {url.Values{"dishes[0].steps[0].hands.high": {"15 min"}}, func(p *practical.Practical) { p.Dishes[0].Steps[0].Hands.High = 15 }, ""},
		"degrees with their sign":     {url.Values{"dishes[0].steps[3].wait.celsius": {"190 °C"}}, func(p *practical.Practical) { p.Dishes[0].Steps[3].Wait.Celsius = 190 }, ""},
		"no number":                   {url.Values{"kitchen.rings": {"four"}}, func(*practical.Practical) {}, "kitchen.rings"},
		"a number out of all measure": {url.Values{"kitchen.rings": {"99999999999999999999"}}, func(*practical.Practical) {}, "kitchen.rings"},
		"a box unticked":              {url.Values{"rules.oven-in-set-up": {off}}, func(p *practical.Practical) { p.Rules.OvenInSetUp = false }, ""},
		"a box ticked":                {url.Values{"rules.tasting-inside": {off, on}}, func(p *practical.Practical) { p.Rules.TastingInside = true }, ""},
		"kit ticked":                  {url.Values{"dishes[0].steps[0].uses": {"", "mixer", "ring"}}, func(p *practical.Practical) { p.Dishes[0].Steps[0].Uses = []practical.Kit{"mixer", "ring"} }, ""},
		"a wait where there was none": {url.Values{"dishes[0].steps[0].wait.place": {"side"}, "dishes[0].steps[0].wait.least": {"5"}}, func(p *practical.Practical) { p.Dishes[0].Steps[0].Wait = &practical.Wait{Place: "side", Least: 5} }, ""},
		"a wait taken away":           {url.Values{"dishes[0].steps[1].wait.place": {""}, "dishes[0].steps[1].wait.least": {"20"}}, func(p *practical.Practical) { p.Dishes[0].Steps[1].Wait = nil }, ""},
		"one more predecessor": {url.Values{"dishes[0].steps[3].after[1].step": {"B2"}, "dishes[0].steps[3].after[1].most": {"15"}}, func(p *practical.Practical) {
			p.Dishes[0].Steps[3].After = append(p.Dishes[0].Steps[3].After, practical.After{Step: "B2", Most: &most})
		}, ""},
		"out of the oven": {url.Values{"dishes[0].steps[3].wait.place": {"side"}, "dishes[0].steps[3].wait.celsius": {"200"}}, func(p *practical.Practical) {
			w := p.Dishes[0].Steps[3].Wait
			w.Place, w.Celsius, w.Band = "side", 0, 0
		}, ""},
		"no look any more": {url.Values{"dishes[1].steps[1].wait.attention": {"leave"}, "dishes[1].steps[1].wait.every": {"5"}}, func(p *practical.Practical) {
			w := p.Dishes[1].Steps[1].Wait
			w.Attention, w.Every = "leave", 0
		}, ""},
		"a predecessor taken away":  {url.Values{"dishes[0].steps[3].after[0].step": {""}}, func(p *practical.Practical) { p.Dishes[0].Steps[3].After = []practical.After{} }, ""},
		"an entry far past the end": {url.Values{"kitchen.ovens[99].name": {"x"}}, func(*practical.Practical) {}, ""},
		"a path outside the page":   {url.Values{"pins[0].row": {"A1/hands"}}, func(*practical.Practical) {}, ""},
		"no path at all":            {url.Values{"version": {"3"}, "dishes[": {"x"}, "dishes[-1].name": {"x"}, "clock..": {"x"}}, func(*practical.Practical) {}, ""},
		"untouched fields stay":     {url.Values{"dishes[0].steps[0].wait.place": {""}, "dishes[0].steps[0].wait.least": {"0"}, "dishes[0].steps[1].wait.attention": {"leave"}}, func(*practical.Practical) {}, ""},
	} {
		t.Run(name, func(t *testing.T) {
			want, got := menu(), menu()
			c.want(want)
			faults := apply(got, c.typed, "clock", "rules", "kitchen", "dishes")
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if c.fault == "" && len(faults) > 0 || c.fault != "" && (len(faults) != 1 || faults[0].Field != c.fault || faults[0].Hint == "") {
				t.Errorf("faults %v, want one at %q", faults, c.fault)
			}
		})
	}
}

// Whatever name a form field has, nothing breaks and no list grows by more than one.
func FuzzApply(f *testing.F) {
	for _, name := range []string{"clock.start", "dishes[0].steps[1].wait.place", "dishes[2].name", "a[b", "dishes[0]]", "kitchen.ovens[0", "dishes[0].steps[0].why"} {
		f.Add(name, "5")
	}
	f.Fuzz(func(t *testing.T, name, text string) {
		p := menu()
		apply(p, url.Values{name: {text}}, "title", "date", "cooks", "clock", "rules", "kitchen", "dishes")
		if len(p.Dishes) > 3 || len(p.Kitchen.Ovens) > 2 {
			t.Errorf("%q made %d dishes, %d ovens", name, len(p.Dishes), len(p.Kitchen.Ovens))
		}
	})
}

// Every word names a field that there is, and every answer of a choice is one that the rules of form take.
func TestWordsNameFields(t *testing.T) {
	p := menu()
	p.Kitchen.Taken = []practical.Taken{{Kit: practical.Ring, Number: 1, From: p.Clock.Start, Until: p.Clock.Finish}}
	p.Kitchen.GasTable = []practical.GasMark{{Mark: "4", Celsius: 180, Fan: 160, Fahrenheit: 350}}
	p.Clock.Breaks = []practical.Break{{At: p.Clock.Start + 60, Minutes: 10}}
	numbered := strings.NewReplacer("dishes.", "dishes[0].", "steps.", "steps[3].", "after.", "after[0].", "ovens.", "ovens[0].", "taken.", "taken[0].", "gas-table.", "gas-table[0].", "rest-breaks.", "rest-breaks[0].")
	for path, w := range words {
		full := numbered.Replace(path)
		if _, err := find(p, full, false); err != nil {
			t.Errorf("%s: %v", path, err)
		}
		if pattern(full) != path {
			t.Errorf("pattern of %s is %s", full, pattern(full))
		}
		for _, o := range w.options {
			try, err := p.Copy()
			if err != nil {
				t.Fatal(err)
			}
			if faults := apply(try, url.Values{full: {o.Value}}, full); len(faults) > 0 {
				t.Errorf("%s %q: %v", path, o.Value, faults)
			}
			for _, fault := range try.Validate() {
				if fault.Field == full {
					t.Errorf("%s refuses %q: %s", path, o.Value, fault.Message)
				}
			}
		}
	}
}

package practical

import "testing"

func TestReady(t *testing.T) {
	for _, tt := range []struct {
		name string
		edit func(*Practical)
		want string
	}{
		{"ready", func(*Practical) {}, ""},
		{"any number", func(p *Practical) { p.Rules.Dishes = 0 }, ""},
		{"no dish", func(p *Practical) { p.Dishes = nil }, `dishes: there is no dish yet; add at least one dish with its steps`},
		{"too few", func(p *Practical) { p.Rules.Dishes = 3 }, `dishes: the rules ask for 3 dishes, and there are 2; add or take away dishes, or change rules.dishes (0 is any number)`},
		{"no steps", func(p *Practical) { p.Dishes[1].Steps = nil }, `dishes[1].steps: dish B has no steps; type its steps, or paste its recipe`},
	} {
		p := small()
		tt.edit(p)
		if got := p.Ready().Error(); got != tt.want {
			t.Errorf("%s:\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

package app

import (
	"testing"

	"plait.example/internal/practical"
)

// Each way out changes the one thing that it names.
func TestGiveWay(t *testing.T) {
	for demand, holds := range map[string]func(p *practical.Practical) bool{
		"finish":         func(p *practical.Practical) bool { return p.Clock.Finish == 729 },
		"wash-up":        func(p *practical.Practical) bool { return p.Rules.WashEvery == 0 },
		"serving-window": func(p *practical.Practical) bool { return p.Rules.Window == 30 },
		"pace":           func(p *practical.Practical) bool { return p.Rules.Pace == practical.Quick },
		"hands":          func(p *practical.Practical) bool { return p.Cooks == 2 },
		"dish/A":         func(p *practical.Practical) bool { return len(p.Dishes) == 1 && p.Rules.Dishes == 0 },
		"pin/A3/hands":   func(p *practical.Practical) bool { return len(p.Pins) == 1 },
		"within/B":       func(p *practical.Practical) bool { return p.Dishes[1].Serve.Within == 0 },
		"wait-most/A2":   func(p *practical.Practical) bool { return p.Dishes[0].Steps[1].Wait.Most == 0 },
		"gap-most/A3/A2": func(p *practical.Practical) bool { return p.Dishes[0].Steps[2].After[0].Most == nil },
	} {
		t.Run(demand, func(t *testing.T) {
			p := chain()
			p.Cooks, p.Clock.Finish = 1, 720
			p.Rules = practical.Rules{WashEvery: 40, Window: 15, Pace: practical.Likely, Dishes: 2}
			p.Dishes[1].Serve.Within, p.Dishes[0].Steps[1].Wait.Most = 10, 60
			if holds(p) {
				t.Fatal("it holds before")
			}
			giveWay(p, demand, 9)
			if !holds(p) {
				t.Errorf("%+v", p)
			}
		})
	}
}

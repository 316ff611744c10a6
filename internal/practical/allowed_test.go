package practical

import "testing"

func TestAllowedAndSetUpFrom(t *testing.T) {
	three := func(edit func(*Practical)) *Practical {
		p := threeInThree() // set-up 08:30, start 09:00, finish 12:00, window 20
		edit(p)
		return p
	}
	tests := []struct {
		name           string
		p              *Practical
		setUp, allowed string
	}{
		{"no extra time", three(func(*Practical) {}), "08:30", "12:00"},
		// An awarding body's access guidance (2023) gives 180 as 225 at 25 %.
		{"25 % of all", three(func(p *Practical) { p.Clock.Extra = Extra{25, 25, 25} }), "08:22", "12:45"}, // 30 x 25 % = 7.5, up to 8
		{"25 % of cooking alone", three(func(p *Practical) { p.Clock.Extra.Cook = 25 }), "08:30", "12:40"}, // 160 x 25 % = 40
		{"25 % of serving alone", three(func(p *Practical) { p.Clock.Extra.Serve = 25 }), "08:30", "12:05"},
		{"rounded up once", three(func(p *Practical) { p.Clock.Extra = Extra{0, 1, 1} }), "08:30", "12:02"}, // 1.6 + 0.2 = 1.8
		{"rest breaks", three(func(p *Practical) { p.Clock.Breaks = []Break{{600, 10}, {660, 5}} }), "08:30", "12:15"},
		{"both", three(func(p *Practical) {
			p.Clock.Extra, p.Clock.Breaks = Extra{25, 25, 25}, []Break{{600, 10}}
		}), "08:22", "12:55"},
		{"a window longer than the clock", three(func(p *Practical) {
			p.Rules.Window, p.Clock.Finish, p.Clock.Extra = 100, 9*60+40, Extra{0, 100, 25}
		}), "08:30", "09:50"},
		{"not before midnight", three(func(p *Practical) {
			p.Clock.SetUp, p.Clock.Start, p.Clock.Extra.SetUp = 5, 65, 50
		}), "00:00", "12:00"},
	}
	for _, tt := range tests {
		if got := tt.p.SetUpFrom().String(); got != tt.setUp {
			t.Errorf("%s: set-up from %s, want %s", tt.name, got, tt.setUp)
		}
		if got := tt.p.Allowed().String(); got != tt.allowed {
			t.Errorf("%s: allowed until %s, want %s", tt.name, got, tt.allowed)
		}
	}
}

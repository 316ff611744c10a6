package practical

import (
	"testing"

	"pgregory.net/rapid"
)

// Ranges from published pages on heating an oven: electric and gas 10 to 15
// minutes, with a fan 8 to 12, up to 20 for 220 °C and more. Rise of 20 °C 3 to 5, fall
// of 40 °C 10 to 15: common practice, no source.
func TestHeatMinutesAreInTheUsualRanges(t *testing.T) {
	tests := []struct {
		fuel            Fuel
		from, to        int
		atLeast, atMost int
	}{
		{Electric, ColdOven, 180, 10, 15},
		{Fan, ColdOven, 180, 8, 12},
		{Gas, ColdOven, 180, 10, 15},
		{Electric, ColdOven, 220, 15, 20},
		{Gas, ColdOven, 220, 15, 20},
		{Fan, ColdOven, 110, 3, 8},
		{Electric, 180, 200, 3, 5},
		{Electric, 200, 160, 10, 15},
		{Gas, 180, 180, 0, 0},
	}
	for _, tt := range tests {
		if got := (Oven{Fuel: tt.fuel}).HeatMinutes(tt.from, tt.to); got < tt.atLeast || got > tt.atMost {
			t.Errorf("%s from %d to %d: %d minutes, want %d to %d", tt.fuel, tt.from, tt.to, got, tt.atLeast, tt.atMost)
		}
	}
}

func TestHeatMinutesOfAnOvensOwn(t *testing.T) {
	o := Oven{Fuel: Gas, Preheat: 16, Up: 2, Down: 10, DoorOpen: 3}
	for _, tt := range []struct{ from, to, want int }{
		{ColdOven, 180, 16},
		{ColdOven, 200, 18}, // 16 and 2 for 20 °C more
		{ColdOven, 170, 15}, // 16 less 10 °C at the flatter slope, 2 a 20 °C: 1 minute
		{180, 190, 1},
		{180, 195, 2}, // 1.5, rounded up
		{200, 180, 10},
		{200, 190, 5},
		{20, 20, 0},
	} {
		if got := o.HeatMinutes(tt.from, tt.to); got != tt.want {
			t.Errorf("from %d to %d: %d minutes, want %d", tt.from, tt.to, got, tt.want)
		}
	}
	if u := (Oven{Fuel: "peat"}).Usual(); u.Preheat == 0 || u.Up == 0 || u.Down == 0 || u.DoorOpen == 0 {
		t.Errorf("an unknown fuel has no minutes: %+v", u)
	}
}

// TestHeatMinutesByAThirdTemperature holds the planner's need: no detour is quicker.
func TestHeatMinutesByAThirdTemperature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		few := rapid.IntRange(0, 60)
		o := Oven{
			Fuel: rapid.SampledFrom([]Fuel{Electric, Fan, Gas}).Draw(t, "fuel"), Preheat: few.Draw(t, "preheat"), Up: few.Draw(t, "up"), Down: few.Draw(t, "down"),
		}
		heat := rapid.IntRange(coolest, hottest)
		from := rapid.OneOf(rapid.Just(ColdOven), heat).Draw(t, "from")
		via, to := heat.Draw(t, "via"), heat.Draw(t, "to")
		if straight, round := o.HeatMinutes(from, to), o.HeatMinutes(from, via)+o.HeatMinutes(via, to); straight > round {
			t.Fatalf("%+v: %d to %d takes %d minutes, by %d only %d", o, from, to, straight, via, round)
		}
		if o.HeatMinutes(from, from) != 0 || from != to && o.HeatMinutes(from, to) < 0 {
			t.Fatal("standing still takes time")
		}
	})
}

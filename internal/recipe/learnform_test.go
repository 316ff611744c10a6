package recipe

import (
	"testing"

	"pgregory.net/rapid"

	"plait.example/internal/practical"
)

// Whatever a teacher leaves of the steps, as long as it is in form itself, the next
// reading is in form too: each figure goes in with the others that belong to it.
func TestCorrectedStaysInForm(t *testing.T) {
	plain := Read(scones)[0]
	rapid.Check(t, func(t *rapid.T) {
		var list []Correction
		for _, s := range plain.Steps {
			if ownRow(s.ID) || !rapid.Bool().Draw(t, "corrected") {
				continue
			}
			after := s
			low := rapid.IntRange(1, 60).Draw(t, "low")
			after.Hands = practical.Around(low)
			place := rapid.SampledFrom([]practical.Place{"", practical.AtOven, practical.AtFridge, practical.AtHob, practical.AtSide, practical.AtGrill}).Draw(t, "place")
			after.Wait = nil
			if place != "" {
				after.Wait = &practical.Wait{Place: place, Least: low, Most: low + rapid.IntRange(0, 9).Draw(t, "more"), Attention: rapid.SampledFrom([]practical.Attention{"", practical.Look, practical.Stay}).Draw(t, "attention")}
				if after.Wait.Attention == practical.Look {
					after.Wait.Every = 5
				}
				if place == practical.AtOven {
					after.Wait.Celsius = rapid.IntRange(100, 250).Draw(t, "celsius")
				}
			}
			after.SetUp = rapid.Bool().Draw(t, "setup")
			if c, ok := Learn(s, after, "Scones", march, named(plain)); ok {
				list = append(list, c)
			}
		}
		p := practical.StartingPoints()[0].New()
		p.Rules.Dishes = 0
		other := scones
		if rapid.Bool().Draw(t, "other") {
			other = other + "\nServe warm.\n"
		}
		d := Reader{Corrections: NewCorrections(list)}.Read(other)[0].Dish("A")
		p.Rules.OutOfSetUp(&d)
		p.Dishes = []practical.Dish{d}
		if f := p.Validate(); len(f) > 0 {
			t.Fatalf("%v\n%s", f, NewCorrections(list).Write())
		}
	})
}

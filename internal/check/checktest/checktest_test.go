package checktest

import (
	"testing"

	"plait.example/internal/practical"
)

// finishes are the ends of the practicals, as their files say.
var finishes = map[string]practical.TimeOfDay{
	"toad": 960, "thai": 760, "buns": 740, "enchiladas": 720, "katsu": 960,

	"pie": 720, "lasagne": 960, "rolls": 690, "fishcakes": 720, "koftas": 945, "ravioli": 750, "biryani": 740, "burgers": 780,
	"scotch": 930, "goujons": 685, "soup": 930, "crepes": 720, "pasta": 950,
}

// A sound plan can be cooked as it stands.
func TestSoundPlansCanBeCooked(t *testing.T) {
	plans := every(t, Sound)
	if len(plans) != 43 {
		t.Fatalf("%d sound plans, 43 are wanted", len(plans))
	}
	for _, p := range plans {
		for _, m := range Follow(p, int(finishes[p.Menu])) {
			t.Errorf("%s, row %d: %s: %s", p.Name, m.Row, m.Kind, m.Text)
		}
	}
}

func TestPlanting(t *testing.T) {
	plans := every(t, Faulty)
	if len(plans) < 217 {
		t.Fatalf("%d plans with faults, at least 217 are wanted", len(plans))
	}
	faults := map[int]int{}
	for _, p := range plans {
		for _, w := range p.Planted {
			for _, f := range w.Faults {
				faults[f]++
			}
		}
		if len(p.Planted) == 0 {
			t.Errorf("%s has no fault", p.Name)
		}
	}
	t.Logf("%d plans, %d kinds of fault: %v", len(plans), len(faults), faults)
}

// every gives the plans of every folder.
func every(t *testing.T, of func(string) ([]Plan, error)) (all []Plan) {
	t.Helper()
	for _, folder := range []string{LookedAt, Second, Third, Fourth, Fifth} {
		plans, err := of(folder)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, plans...)
	}
	return all
}

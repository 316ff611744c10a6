package ingredient

import "testing"

// TestOldAmounts reads amounts as old books write them and as pictures are read. Invented.
func TestOldAmounts(t *testing.T) {
	for line, want := range map[string]struct {
		low        float64
		unit, name string
	}{
		"half-a-pound of suet":                 {0.5, "pound", "suet"},
		"half pint milk":                       {0.5, "pint", "milk"},
		"a quarter of a pound of butter":       {0.25, "pound", "butter"},
		"three quarters of a pint of new milk": {0.75, "pint", "new milk"},
		"a pint and a half of stock":           {1.5, "pint", "stock"},
		"a teacupful of milk":                  {1, "teacupful", "milk"},
		"1 1b stewing steak":                   {1, "lb", "stewing steak"},
		"A 6 lb gammon joint":                  {6, "lb", "gammon joint"},
		"11b flour":                            {1, "lb", "flour"},
		"1/2 1b flour":                         {0.5, "lb", "flour"},
	} {
		l := Parse(line)
		if a := l.First(); a.Low != want.low || a.Unit != want.unit || l.Name != want.name {
			t.Errorf("%q: got %v %q %q, want %v", line, a.Low, a.Unit, l.Name, want)
		}
	}
}

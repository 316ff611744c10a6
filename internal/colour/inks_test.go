package colour

import (
	"fmt"
	"testing"
)

// The levels of WCAG 2.2: 4.5 for text (1.4.3), 3 for lines and shapes (1.4.11).
func TestInksContrast(t *testing.T) {
	atLeast := func(what string, a, b string, want float64) {
		t.Helper()
		if got := Contrast(a, b); got < want {
			t.Errorf("%s: Contrast(%s, %s) = %.2f, want at least %.1f", what, a, b, got, want)
		}
	}
	for i := range Inks {
		ink := Ink(i)
		for _, ground := range []string{Paper, Ground, ink.Tint} {
			atLeast(ink.Name+" line", ink.Line, ground, 3)
			atLeast(ink.Name+" text", ink.Text, ground, 4.5)
		}
		atLeast(ink.Name+" letter", ink.On, ink.Line, 4.5)
		for _, hex := range []string{ink.Line, ink.On, ink.Text, ink.Tint} {
			if _, ok := Parse(hex); !ok {
				t.Errorf("%s: %q is not a colour", ink.Name, hex)
			}
		}
		// A photocopier must not lose the letter or the line either.
		atLeast(ink.Name+" line in grey", Grey(ink.Line), Grey(Ground), 3)
		atLeast(ink.Name+" letter in grey", Grey(ink.On), Grey(ink.Line), 4.5)
	}
	for _, hex := range []string{Dark, Soft, Warning} {
		for _, ground := range []string{Paper, Ground} {
			atLeast("neutral", hex, ground, 4.5)
		}
	}
}

// Goals in CIEDE2000, ours: no standard sets them. 10 is plain at a glance, even for thin lines
// apart from each other; 4 is seen side by side, where shape and pattern must help.
// ColorBrewer's designer calls no set of colours both photocopy-safe and colour-blind-safe,
// and only sets of three either.
func TestInksApart(t *testing.T) {
	type goals struct{ common, protan, deutan, tritan, grey float64 }
	for _, c := range []struct {
		name  string
		first int
		goals goals
	}{
		{"first four", 4, goals{30, 19, 19, 16, 9}},
		{"all eight", Inks, goals{15, 8.9, 8.9, 8, 3.7}},
	} {
		t.Run(c.name, func(t *testing.T) {
			sights := map[string]func(string) string{
				"common": func(h string) string { return h },
				"grey":   Grey,
			}
			for _, d := range Deficiencies() {
				sights[string(d)] = func(h string) string { return See(h, d) }
			}
			want := map[string]float64{"common": c.goals.common, "protan": c.goals.protan, "deutan": c.goals.deutan, "tritan": c.goals.tritan, "grey": c.goals.grey}
			for name, see := range sights {
				least, pair := 1000.0, ""
				for i := range c.first {
					for j := range i {
						a, b := Ink(i), Ink(j)
						if d := Distance(see(a.Line), see(b.Line)); d < least {
							least, pair = d, a.Name+" and "+b.Name
						}
					}
				}
				t.Logf("%s: least %.1f, %s", name, least, pair)
				if least < want[name] {
					t.Errorf("%s: %s are %.1f apart, want %.1f", name, pair, least, want[name])
				}
			}
		})
	}
}

func TestInksOwnShapeAndPattern(t *testing.T) {
	seen := map[string]bool{}
	for i := range Inks * Inks {
		ink := Ink(i)
		look := ink.Line + string(ink.Shape)
		if seen[look] {
			t.Errorf("ink %d repeats %s", i, look)
		}
		seen[look] = true
		if i >= Inks {
			continue
		}
		for _, key := range []string{"shape " + string(ink.Shape), "pattern " + ink.Pattern.Name, "pattern " + fmt.Sprint(ink.Pattern.Width, ink.Pattern.Dash)} {
			if seen[key] {
				t.Errorf("ink %d repeats %s", i, key)
			}
			seen[key] = true
		}
	}
	if Ink(-3).Line != Ink(0).Line {
		t.Error("a negative index is not the first ink")
	}
}

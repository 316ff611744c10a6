package recipe

import (
	"strings"
	"testing"
)

// TestMinutesByWeight: sums by hand. A pound is 453.59237 g by definition.
func TestMinutesByWeight(t *testing.T) {
	for _, c := range []struct {
		list, method string
		least, most  int
	}{
		{"1.5 kg chicken\n", "Roast the chicken at 190C for 20 minutes per 500 g plus 20 minutes.", 80, 80},         // 3 x 20 + 20
		{"1.5-2 kg chicken\n", "Roast the chicken at 190C for 20 minutes per 500 g plus 20 minutes.", 80, 100},      // 4 x 20 + 20
		{"3 lb brisket\n", "Cook the brisket at 160C, 25 minutes to the pound and 25 minutes over.", 100, 100},      // 3 x 25 + 25
		{"1 kg lamb\n", "Roast the lamb at 190C for 45 minutes per kg plus an extra 20 minutes.", 65, 65},           // 45 + 20
		{"900 g pork\n", "Roast the joint at 190C: 20 mins per 450g/1lb + 20 mins.", 60, 60},                        // 2 x 20 + 20
		{"2 lb beef\n", "Simmer the beef in water for 30-35 minutes per lb.", 60, 70},                               // 2 x 30, 2 x 35
		{"A 6 lb gammon joint\n", "Simmer, allowing 20 minutes to the pound and 20 minutes over.", 140, 140},        // 6 x 20 + 20
		{"2 kg turkey\n3 kg potatoes\n", "Roast it at 190C for 20 minutes for every 500g, plus 20 more.", 100, 100}, // the bird, not the potatoes
	} {
		s := readStep(t, c.list, c.method, "roast cook simmer minutes mins")
		if s.Wait == nil || s.Wait.Least != c.least || s.Wait.Most != c.most {
			t.Errorf("%q of %q: %+v, want %d to %d", c.method, c.list, s.Wait, c.least, c.most)
		}
		if why := strings.Join(s.Why, "; "); !strings.Contains(why, "in the list") || strings.Contains(why, "not in the figures") {
			t.Errorf("%q: reasons %q", c.method, why)
		}
	}
	s := readStep(t, "1 chicken\n", "Roast the chicken at 190C for 20 minutes per 500 g.", "roast")
	if s.Doubt < 0.3 || !strings.Contains(strings.Join(s.Why, "; "), "no weight of the food was found") {
		t.Errorf("without a weight: doubt %v, %v", s.Doubt, s.Why)
	}
}

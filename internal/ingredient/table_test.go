package ingredient

import (
	"strings"
	"testing"
)

// The embedded tables are whole: every row has a measure, every kitchen name its food.
func TestTables(t *testing.T) {
	if n := len(rows(measuresCSV)); n < 1500 {
		t.Fatalf("%d foods read", n)
	}
	for _, f := range foods().foods {
		if len(f.volumes)+len(f.pieces) == 0 {
			t.Errorf("%s %s has no measure", f.code, f.name)
		}
		for _, v := range f.volumes {
			if v.grams <= 0.01 || v.grams > 2.5 {
				t.Errorf("%s %s: %v g a ml", f.code, f.name, v.grams)
			}
		}
	}
	for _, r := range rows(namesCSV) {
		if foods().byCode[r[1]] == nil {
			t.Errorf("%q means %q, which is no row of measures.csv", r[0], r[1])
		}
	}
	if len(measuresCSV) > 200_000 {
		t.Errorf("measures.csv has %d bytes", len(measuresCSV))
	}
}

// A unit word stands in one list only, or the answer would hang on the order of a map.
func TestUnitWordsOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, list := range unitWords {
		for _, group := range strings.Fields(list) {
			for _, w := range strings.Split(group, ",") {
				if seen[w] {
					t.Errorf("%q is a unit twice", w)
				}
				seen[w] = true
			}
		}
	}
}

package act

import (
	"os"
	"slices"
	"strings"
	"testing"
)

// truth is a row of a file of testdata.
type truth struct {
	text  string
	kinds []Kind
}

func readTruth(t *testing.T, name string) (rows []truth) {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(string(data), "\n") {
		if strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "" {
			continue
		}
		text, kinds, _ := strings.Cut(line, "\t")
		r := truth{text: text}
		for _, k := range strings.Fields(kinds) {
			r.kinds = append(r.kinds, Kind(k))
		}
		rows = append(rows, r)
	}
	return rows
}

// said are the kinds of a row's acts that are said, equal neighbours once.
func said(text string) (kinds []Kind) {
	for _, a := range Read(text) {
		if !a.Implied {
			kinds = append(kinds, a.Kind)
		}
	}
	return slices.Compact(kinds)
}

// score counts the rows of a file whose acts are all right, and logs the others.
func score(t *testing.T, name string) (right, all int) {
	t.Helper()
	for _, r := range readTruth(t, name) {
		all++
		if got := said(r.text); slices.Equal(got, slices.Compact(slices.Clone(r.kinds))) {
			right++
		} else {
			t.Logf("%q: %v, want %v", r.text, got, r.kinds)
		}
	}
	t.Logf("%s: %d of %d rows right", name, right, all)
	return right, all
}

// The rows of heldout.tsv and then of later.tsv were written before any rule was
// changed for them: the first scores were 75 of 80 and 43 of 60. So were those of
// habits.tsv, 90 of 161 at first, and habits-last.tsv, 43 of 60. Those of
// rows.tsv were read while the rules were made.
func TestActsOfRows(t *testing.T) {
	for name, floor := range map[string]int{"rows.tsv": 100, "heldout.tsv": 95, "later.tsv": 90, "habits.tsv": 80, "habits-last.tsv": 70} {
		right, all := score(t, name)
		if 100*right < floor*all {
			t.Errorf("%s: %d of %d rows right, at least %d %% are wanted", name, right, all, floor)
		}
	}
}

package app

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// A plan that was printed to a PDF is read as the document that it was printed
// from: time, dish, what is done, special points (see the README there). Of 1650
// rows of 67 documents exported by LibreOffice 1646 were the same when this was
// written, and of 2420 rows in five layouts printed by Chromium 2380.
func TestPrintedPlansAreReadLikeTheirDocuments(t *testing.T) {
	printed, err := filepath.Glob("testdata/printed/*.pdf")
	if err != nil || len(printed) != 7 {
		t.Fatal(printed, err)
	}
	same, all := 0, 0
	for _, name := range printed {
		bare := strings.TrimSuffix(filepath.Base(name), ".pdf")
		sources, err := filepath.Glob("testdata/printed/" + bare + ".html")
		if err != nil {
			t.Fatal(err)
		}
		if len(sources) == 0 {
			if sources, err = filepath.Glob("../check/checktest/documents/" + bare + ".*"); err != nil || len(sources) != 1 {
				t.Fatal(bare, sources, err)
			}
		}
		want, got := rowsIn(t, sources[0]), rowsIn(t, name)
		all += len(want)
		for _, r := range want {
			if i := slices.IndexFunc(got, func(g written.Row) bool { return sameRow(r, g) }); i >= 0 {
				same++
				got = slices.Delete(got, i, i+1)
			} else {
				t.Logf("%s: %s %v %q is not read so", bare, r.At, r.Dishes, r.Text)
			}
		}
	}
	if all < 170 || same < all-2 {
		t.Errorf("%d of %d rows are the same", same, all)
	}
}

func rowsIn(t *testing.T, name string) []written.Row {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var p *practical.Practical
	plan, fault := readPlan(t.Context(), PlanFile{Name: name, Data: data}, p, &Checked{})
	if fault != nil {
		t.Fatal(fault)
	}
	return plan.Rows
}

// sameRow compares what people read in a row; where its lines break is nothing.
func sameRow(a, b written.Row) bool {
	plain := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	return a.At == b.At && plain(a.Text) == plain(b.Text) && plain(a.Points) == plain(b.Points) && slices.Equal(a.Dishes, b.Dishes)
}

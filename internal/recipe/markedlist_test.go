package recipe

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"
)

// TestMarkedLinesAsAList: every one of the lines that people marked, put under a
// heading as a list, comes out as one ingredient with its own words, with a method
// below it and without. The files and their licences: ../ingredient/testdata/NOTICE.md.
func TestMarkedLinesAsAList(t *testing.T) {
	for _, name := range []string{"marked_us.csv", "marked_metric.csv"} {
		f, err := os.Open("../ingredient/testdata/" + name)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(f).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		var lines []string
		for _, r := range rows[1:] {
			lines = append(lines, strings.Join(strings.Fields(r[0]), " "))
		}
		list := "Dish\n\nIngredients\n" + strings.Join(lines, "\n") + "\n"
		for _, text := range []string{list, list + "\nMethod\n1. Stir well.\n", strings.ReplaceAll(list, "\n", "\n- ") + "\n\nMethod\n1. Stir well.\n"} {
			got := Read(text)[0].Ingredients
			if len(got) != len(lines) {
				t.Errorf("%s: %d ingredients of %d lines", name, len(got), len(lines))
				continue
			}
			for i, ing := range got {
				if want := strings.Join(strings.Fields(unmarked.Replace(lines[i])), " "); ing.Raw != want {
					t.Errorf("%s: got %q, want %q", name, ing.Raw, want)
				}
			}
		}
	}
}

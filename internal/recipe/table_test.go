package recipe

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"plait.example/internal/practical"
)

// invented is a small technique table, invented.
const invented = "id,technique,skill group,complexity,learner low,learner likely,learner high,place,source,words\n" +
	"knead,Knead purée,10,basic,20,21,22,bench,invented,knead\n"

func mustTable(t *testing.T, data []byte) *Table {
	t.Helper()
	table, faults := ParseTable("t.csv", data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return table
}

// The reader goes by the teacher's table.
func TestReaderUsesTheTable(t *testing.T) {
	const method = "1. Knead the dough.\n2. Rub the butter into the flour."
	r := Reader{Techniques: mustTable(t, []byte(invented))}.Read(method)[0]
	s := stepLike(t, r, "Knead")
	if s.Hands != (practical.Estimate{Low: 20, Likely: 21, High: 22}) || !slices.Contains(s.Why, "'knead': technique table, knead purée, 20 to 22 minutes by hand") {
		t.Errorf("%+v", s)
	}
	if s := stepLike(t, r, "Rub"); !strings.Contains(strings.Join(s.Why, " "), "not in the technique table") {
		t.Errorf("a technique that this table does not have: %q", s.Why)
	}
	if s := stepLike(t, Read(method)[0], "Knead"); s.Hands.Likely == 21 {
		t.Error("the program's own table was changed")
	}
}

// A verb that only the teacher's table has is heard in the middle of a method too.
func TestReaderLearnsVerbs(t *testing.T) {
	mine := mustTable(t, []byte(invented+"spatchcock,Spatchcock a chicken,2,high,9,10,11,bench,invented,spatchcock+chicken\n"))
	for _, method := range []string{"1. Spatchcock the chicken.", "1. Wash the leeks, then spatchcock the chicken.", "1. Heat the oven to 200C. Carefully spatchcock the chicken and roast it for 50 minutes."} {
		var why []string
		for _, s := range (Reader{Techniques: mine}.Read(method)[0].Steps) {
			why = append(why, s.Why...)
		}
		if !slices.Contains(why, "'spatchcock': technique table, spatchcock a chicken, 9 to 11 minutes by hand") {
			t.Errorf("%s: %q", method, why)
		}
	}
}

// A table comes back the same from every way in which spreadsheets save it.
func TestTableFromSpreadsheets(t *testing.T) {
	want := mustTable(t, []byte(invented))
	utf16, err := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewEncoder().Bytes([]byte(strings.ReplaceAll(invented, ",", "\t")))
	if err != nil {
		t.Fatal(err)
	}
	western, err := charmap.Windows1252.NewEncoder().Bytes([]byte(strings.ReplaceAll(invented, ",", ";")))
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{
		"with a mark":          append([]byte("\xEF\xBB\xBF"), invented...),
		"lines of Windows":     []byte(strings.ReplaceAll(invented, "\n", "\r\n")),
		"UTF-16 and tabs":      utf16,
		"Windows, semicolons":  western,
		"empty rows":           []byte(invented + ",,,,,,,,,\n\n"),
		"empty column":         []byte(strings.ReplaceAll(invented, "\n", ",\n")),
		"columns other way":    []byte("words,id,technique,skill group,complexity,learner low,learner likely,learner high,place,source\nknead,knead,Knead purée,10,basic,20,21,22,bench,invented\n"),
		"capitals in the head": []byte(strings.Replace(invented, "learner low", " Learner Low ", 1)),
		"written and read":     want.Write(),
	} {
		got, faults := ParseTable("t.csv", data)
		if len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
			continue
		}
		if diff := cmp.Diff(want.Techniques, got.Techniques, cmpopts.IgnoreUnexported(Technique{})); diff != "" {
			t.Errorf("%s (-want +got)\n%s", name, diff)
		}
	}
	shipped := DefaultTable()
	if diff := cmp.Diff(shipped.Techniques, mustTable(t, shipped.Write()).Techniques, cmpopts.IgnoreUnexported(Technique{})); diff != "" {
		t.Errorf("the program's own table (-want +got)\n%s", diff)
	}
}

// Faults stand at the row and the column that a spreadsheet shows.
func TestTableFaults(t *testing.T) {
	row := func(old, new string) string { return strings.Replace(invented, old, new, 1) }
	for _, c := range []struct {
		name, data string
		row, col   int
		want       string
	}{
		{"empty", "", 0, 0, "the table is empty"},
		{"workbook", "PK\x03\x04", 0, 0, "this is a workbook"},
		{"no rows", strings.SplitAfter(invented, "\n")[0], 2, 1, "the table has no techniques"},
		{"missing column", row("technique,", ""), 1, 1, "the column “technique” is missing"},
		{"unknown column", row("source,", "origin,"), 1, 9, "“origin” is no column of the table"},
		{"column twice", row("source,words", "source,source"), 1, 10, "the column “source” is there twice"},
		{"empty cell", row("Knead purée", ""), 2, 2, "this cell is empty"},
		{"group", row(",10,", ",13,"), 2, 3, "13 is outside 1 to 12"},
		{"level", row("basic", "easy"), 2, 4, "“easy” is no level; write basic, medium or high"},
		{"minutes", row(",20,", ",ten,"), 2, 5, "“ten” is not a whole number"},
		{"order", row(",20,21,22", ",20,30,22"), 2, 6, "20, 30, 22 are not in order"},
		{"formula", row("bench", "=1+1"), 2, 8, "“=1+1” begins as a formula does"},
		{"hidden formula", row("bench", "-1+cmd|'x'!A0"), 2, 8, "begins as a formula does"},
		{"words", row("knead\n", "knead+/dough\n"), 2, 10, "“knead+/dough” has an empty place"},
		{"twice", invented + strings.SplitAfter(invented, "\n")[1], 3, 1, "“knead” is in row 2 already"},
		{"too far right", row("knead\n", "knead,more\n"), 2, 11, "“more” stands beyond the last column"},
		{"quotation", row("invented", `in"vented`), 2, 0, "a quotation mark is out of place"},
	} {
		table, faults := ParseTable("t.csv", []byte(c.data))
		if table != nil || len(faults) == 0 {
			t.Errorf("%s: %v, %v", c.name, table, faults)
			continue
		}
		f := faults[0]
		if f.Line != c.row || c.col != 0 && f.Column != c.col || !strings.Contains(f.Message+"; "+f.Hint, c.want) || f.Hint == "" || f.File != "t.csv" {
			t.Errorf("%s: %+v, want row %d, column %d, %q", c.name, f, c.row, c.col, c.want)
		}
	}
	if _, faults := ParseTable("t.csv", []byte(row("invented", "-18C"))); len(faults) > 0 {
		t.Errorf("a temperature below zero: %v", faults)
	}
	// Every fault is told, not the first alone.
	if _, faults := ParseTable("t.csv", []byte(row("10,basic,20", "13,easy,ten"))); len(faults) != 3 {
		t.Errorf("%d faults, want 3: %v", len(faults), faults)
	}
}

func FuzzParseTable(f *testing.F) {
	f.Add([]byte(invented))
	f.Add(bytes.ReplaceAll([]byte(invented), []byte(","), []byte(";")))
	f.Fuzz(func(t *testing.T, data []byte) {
		table, faults := ParseTable("t.csv", data)
		if (table == nil) != (len(faults) > 0) {
			t.Fatalf("%v and %v", table, faults)
		}
		if table != nil {
			mustTable(t, table.Write())
		}
	})
}

// The document names every column, and marks those that may not be empty.
func TestTableDocument(t *testing.T) {
	data, err := os.ReadFile("../../docs/techniques.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range Columns() {
		row := "| " + c.Name + " |"
		if c.Required {
			row = "| " + c.Name + " (needed) |"
		}
		if !strings.Contains(string(data), row) {
			t.Errorf("the document has no row %q", row)
		}
	}
}

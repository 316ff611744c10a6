package pdf_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/pdf"
	"plait.example/internal/format/table"
)

// A plan whose columns stand level, without a rule, with cells of two lines:
// set at their top, and in the middle of their row. Words are invented.
func TestLevelColumns(t *testing.T) {
	const x1, x2, x3 = 50, 120, 160
	top := say(x1, 750, "My plan") +
		say(x1, 700, "Time") + say(x2, 700, "Dish") + say(x3, 700, "Job") +
		say(x1, 680, "9:00") + say(x2, 680, "Tart") + say(x3, 680, "Rub in the fat and") + say(x3, 668, "chill it") +
		say(x1, 648, "9:20") + say(x2, 648, "Stew") + say(x3, 648, "Dice") +
		say(x2, 628, "Tart") + say(x3, 628, "Roll out") +
		say(x1, 600, "That is all of it and it goes on across the page to its end")
	middle := say(x1, 700, "Time") + say(x2, 700, "Dish") + say(x3, 700, "Job") +
		say(x3, 680, "Rub in the fat and") + say(x1, 674, "9:00") + say(x2, 674, "Tart") + say(x3, 668, "chill it") +
		say(x1, 648, "9:20") + say(x2, 648, "Stew") + say(x3, 648, "Dice") +
		say(x2, 628, "Tart") + say(x3, 628, "Roll out")
	want := []string{"Time|Dish|Job|", "9:00|Tart|Rub in the fat and chill it|", "9:20|Stew|Dice|", "|Tart|Roll out|"}
	for name, page := range map[string]string{"top": top, "middle": middle} {
		var found *table.Table
		words := ""
		d := read(t, drawn(t, page))
		for _, part := range d.Parts() {
			if part.Table != nil {
				found = part.Table
			}
			words += part.Text + "|"
		}
		if found == nil {
			t.Errorf("%s: no table in %+v", name, d.Parts())
			continue
		}
		var got []string
		for _, row := range found.Rows {
			line := ""
			for _, c := range row {
				line += c.Text() + "|"
			}
			got = append(got, line)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if name == "top" && words != "My plan||That is all of it and it goes on across the page to its end|" {
			t.Error(words)
		}
	}
}

// Two columns, as lines of a clock and a job are, stay lines.
func TestTwoColumnsStayLines(t *testing.T) {
	page := ""
	for i, text := range []string{"Rub in", "Chill", "Roll out", "Bake"} {
		page += say(50, 700-20*float64(i), "9:00 - 9:20") + say(160, 700-20*float64(i), text)
	}
	parts := read(t, drawn(t, page)).Parts()
	if want := []pdf.Part{{Text: "9:00 - 9:20\tRub in\n9:00 - 9:20\tChill\n9:00 - 9:20\tRoll out\n9:00 - 9:20\tBake"}}; len(parts) != 1 || parts[0].Table != nil || parts[0].Text != want[0].Text {
		t.Errorf("%+v", parts)
	}
}

// Bands of colour behind every other row show which lines are one row, where the
// first columns stand in the middle of a row and so between its lines.
func TestBandsShowRows(t *testing.T) {
	page := ""
	for i := range 8 {
		top := 700 - 30*float64(i)
		if i%2 == 0 {
			page += fmt.Sprintf("0.9 g 50 %g 400 30 re f 0 g\n", top-30)
		}
		page += say(55, top-18, fmt.Sprintf("9:%02d", 5*i)) + say(120, top-18, "T") + say(180, top-12, fmt.Sprintf("Job %d goes", i)) + say(180, top-24, "on below")
	}
	parts := read(t, drawn(t, page)).Parts()
	if len(parts) != 1 || parts[0].Table == nil || len(parts[0].Table.Rows) != 8 {
		t.Fatalf("%+v", parts)
	}
	for i, r := range parts[0].Table.Rows {
		if got, want := r[0].Text()+"|"+strings.Join(strings.Fields(r[2].Text()), " "), fmt.Sprintf("9:%02d|Job %d goes on below", 5*i, i); got != want {
			t.Errorf("row %d: %q, want %q", i, got, want)
		}
	}
}

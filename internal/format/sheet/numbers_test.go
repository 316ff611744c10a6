package sheet

import (
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// Formats of ECMA-376 part 1, 18.8.30 and 18.8.31. The wanted texts are from
// the standard's examples where it has them, else what spreadsheet programs
// show, from memory. 46154 is 12 May 2026.
func TestShow(t *testing.T) {
	for _, c := range []struct {
		value float64
		code  string
		want  string
		clock int
	}{
		{0.378472222222222, "h:mm", "9:05", 545},
		{0.378472222222222, "hh:mm:ss", "09:05:00", 545},
		{0.5486111111111, "h:mm AM/PM", "1:10 PM", 790},
		{0, "h:mm a/p", "12:00 a", 0},
		{0.5, `[$-809]h"."mm\ AM/PM;@`, "12.00 PM", 720},
		{1.0625, "[h]:mm", "25:30", -1},
		{0.0277777777777778, "[mm]", "40", 40},
		{0.0277777777777778, "[h]:mm:ss", "0:40:00", 40},
		{46154.604166666664, "dd/mm/yyyy h:mm", "12/05/2026 14:30", 870},
		{46154, "d mmm yy", "12 May 26", -1},
		{46154, "dddd, d mmmm yyyy", "Tuesday, 12 May 2026", -1},
		{0.999999999, "h:mm", "0:00", 0},
		{1, "d/m/yyyy", "1/1/1900", -1},
		{15, `0" mins"`, "15 mins", -1},
		{15, "General", "15", -1},
		{15, `General" min"`, "15 min", -1},
		{0.25, "0%", "25%", -1},
		{0.125, "0.0%", "12.5%", -1},
		{1234567.891, "#,##0.00", "1,234,567.89", -1},
		{999, "#,##0", "999", -1},
		{1234, "0000000", "0001234", -1},
		{905, `0\:00`, "9:05", -1},
		{905, "00\":\"00", "09:05", -1},
		{1305, "0.00", "1305.00", -1},
		{0.5, "0.##", "0.5", -1},
		{2, "0.##", "2", -1},
		{-3.5, "0.0;(0.0)", "(3.5)", -1},
		{-3.5, "0.0", "-3.5", -1},
		{0, `0;-0;"nothing"`, "nothing", -1},
		{2.5, "[$£-809]#,##0.00", "£2.50", -1},
		{1.75, "# ?/?", "1 3/4", -1},
		{0.3333333, "# ??/??", "1/3", -1},
		{1.5, "[Red]0.0", "1.5", -1},
		{12000, "0.0,\"k\"", "12.0k", -1},
		{180, `0"°C"`, "180°C", -1},
		{0.1 + 0.2, "", "0.3", -1},
		{1e20, "", "1e+20", -1},
		{7, "@", "7", -1},
		{7, `"seven"`, "seven", -1},
		{-1, "h:mm", "-1", -1},
	} {
		if got, clock := show(c.value, c.code, false); got != c.want || clock != c.clock {
			t.Errorf("%v in %q: %q, %d; want %q, %d", c.value, c.code, got, clock, c.want, c.clock)
		}
	}
	if got, _ := show(0, "d/m/yyyy", true); got != "1/1/1904" {
		t.Errorf("the first day of the other calendar is %s", got)
	}
}

// The usual formats as another program's library shows them.
func TestShowAsOthersDo(t *testing.T) {
	f := excelize.NewFile()
	defer f.Close()
	for _, code := range []string{"0", "0.00", "#,##0", "0%", "0.00%", "h:mm", "h:mm:ss", "hh:mm", "h:mm AM/PM", "mm:ss", "dd/mm/yyyy", "d-mmm-yy", "yyyy-mm-dd hh:mm", `0" mins"`, "[h]:mm"} {
		style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &code})
		if err != nil {
			t.Fatal(err)
		}
		for _, value := range []float64{0, 0.25, 0.378472222222222, 0.75, 1.5, 12, 905, 46154.604166666664} {
			if value < 1 && strings.Contains(code, "yy") { // a day before the first is told in different ways
				continue
			}
			if err := f.SetCellValue("Sheet1", "A1", value); err != nil {
				t.Fatal(err)
			}
			if err := f.SetCellStyle("Sheet1", "A1", "A1", style); err != nil {
				t.Fatal(err)
			}
			want, err := f.GetCellValue("Sheet1", "A1")
			if got, _ := show(value, code, false); got != strings.TrimSpace(want) || err != nil {
				t.Errorf("%v in %q: %q, the other has %q", value, code, got, want)
			}
		}
	}
}

func FuzzShow(f *testing.F) {
	f.Add(0.5, `[h]:mm;"x"\y_z*w@;0.0E+0;# ?/?`)
	f.Add(-1e9, "#,##0.00,,%;;AM/PM")
	f.Fuzz(func(t *testing.T, value float64, code string) {
		if _, clock := show(value, code, true); clock < -1 || clock >= 1440 {
			t.Errorf("clock %d", clock)
		}
	})
}

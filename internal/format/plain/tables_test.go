package plain_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/plain"
	"plait.example/internal/format/table"
)

// drawn is blocks as text: "L" before lines, cells in brackets.
func drawn(blocks []table.Block) string {
	var b strings.Builder
	for _, block := range blocks {
		if block.Table == nil {
			fmt.Fprintf(&b, "L%s %s\n", block.Item, block.Line.Text())
			continue
		}
		fmt.Fprintf(&b, "T%d\n", block.Table.Header)
		for _, row := range block.Table.Rows {
			for _, c := range row {
				fmt.Fprintf(&b, "[%s]", strings.ReplaceAll(c.Text(), "\n", "/"))
			}
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// Tables as people paste them; the words are invented. Pipe tables are those of
// the GitHub Flavored Markdown specification, 4.10; boxes those of programs
// that print tables.
func TestBlocks(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"lines of times", "9:05 - 9.20  Do this\n9.20 - 9.30  Do that\n\n* Wash up\n", "L 9:05 - 9.20  Do this\nL 9.20 - 9.30  Do that\nL- Wash up\n"},
		{"tabs", "Plan\nTime\tDish\tJob\r\n9:05\tT\tRub in\r\n\r\n9:20\t\tChill\nEnd", "L Plan\nT0\n[Time][Dish][Job]\n[9:05][T][Rub in]\n[9:20][][Chill]\nL End\n"},
		{"tabs and quotes", "9:05\t\"Rub in,\nchill\"\n9:20\tSay \"when\"\n", "T0\n[9:05][Rub in,/chill]\n[9:20][Say \"when\"]\n"},
		{"a first cell that is empty", "9:05\tRub in\n\tChill\n", "T0\n[9:05][Rub in]\n[][Chill]\n"},
		{"one line with a tab", "9:05\tRub in\n", "L 9:05\tRub in\n"},
		{"bars", "| Time | Job |\n|---|:-:|\n| 9.05 | Rub \\| in |\n| 9.20 | |\n", "T1\n[Time][Job]\n[9.05][Rub | in]\n[9.20][]\n"},
		{"bars inside only", "9:05 | chop\n9:10 | stir | taste\n", "T0\n[9:05][chop][]\n[9:10][stir][taste]\n"},
		{"a box with every line", "+------+-----+\n| Time | Do  |\n+======+=====+\n| 9.05 | Rub |\n|      | in  |\n+------+-----+\n| 9.20 | Dice |\n+------+-----+\nEnd", "T1\n[Time][Do]\n[9.05][Rub/in]\n[9.20][Dice]\nL End\n"},
		{"a box with one line", "┌──────┬─────┐\n│ Time │ Do  │\n├──────┼─────┤\n│ 9.05 │ Rub │\n│ 9.20 │ Dice│\n└──────┴─────┘", "T1\n[Time][Do]\n[9.05][Rub]\n[9.20][Dice]\n"},
		{"level", "Time      Dish   What to do\n 9:05     P      Rub in the fat,\n                 and chill\n10.20     C      Dice chicken\n10:40            Wash up\n\nEnd", "T0\n[Time][Dish][What to do]\n[9:05][P][Rub in the fat, and chill]\n[10.20][C][Dice chicken]\n[10:40][][Wash up]\nL End\n"},
		{"not level, as many", "9:05  P  Rub in\n10:15  Curry  Dice\n", "T0\n[9:05][P][Rub in]\n[10:15][Curry][Dice]\n"},
		{"a heading and a rule", "# Plan\n-----\nText", "L Plan\nL -----\nL Text\n"},
		{"prose", "Rub in the fat.  Chill it.\nRoll out.\n", "L Rub in the fat.  Chill it.\nL Roll out.\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := plain.Blocks(c.text)
			if diff := cmp.Diff(c.want, drawn(got)); diff != "" || err != nil {
				t.Error(err, diff)
			}
		})
	}
}

// Files of separated values, by RFC 4180 and as programs bend it.
func TestSeparated(t *testing.T) {
	for _, c := range []struct {
		name, text string
		sure       bool
		want       string
	}{
		{"commas", "Time,Dish,Job\r\n9:05,P,\"Rub in, \"\"gently\"\",\r\nchill\"\r\n9:20,C,Dice\r\n", false, "[Time][Dish][Job]\n[9:05][P][Rub in, \"gently\",/chill]\n[9:20][C][Dice]\n"},
		{"semicolons and decimal commas", "Zeit;Tun;kg\n9,05;Teig;0,5\n9,20;Ruhen;1,5\n", false, "[Zeit][Tun][kg]\n[9,05][Teig][0,5]\n[9,20][Ruhen][1,5]\n"},
		{"two columns under its name", "Time,Job\n9:05,Rub in\n", true, "[Time][Job]\n[9:05][Rub in]\n"},
		{"two columns without", "Rub in, chill\nRoll out, line\nFill, bake\n", false, ""},
		{"a list without its name", "200 g butter, diced\n3 eggs, beaten\n", false, ""},
		{"a table between bars", "| Time | Job |\n|---|---|\n| 9:05 | Rub in |\n", false, ""},
		{"two lines of prose", "Eggs, milk, flour\nSalt, oil, water\n", false, ""},
		{"said", "sep=|\n9:05|Rub; in\n", false, "[9:05][Rub; in]\n"},
		{"title rows", "My plan,,\n,,\nTime,Dish,Job\n9:05,P,Rub in\n", true, "[My plan][][]\n[][][]\n[Time][Dish][Job]\n[9:05][P][Rub in]\n"},
		{"formulas are words", "=1+1,@a,-3\n+4,\"=HYPERLINK(\"\"http://example.org\"\")\",x\n", true, "[=1+1][@a][-3]\n[+4][=HYPERLINK(\"http://example.org\")][x]\n"},
		{"a quote that is not closed", "a,\"b,c\nd,e,f\ng,h,i\n", true, "[a][\"b][c]\n[d][e][f]\n[g][h][i]\n"},
		{"one column", "a\nb\n", true, ""},
		{"nothing", "", true, ""},
		{"an empty last field", "a,b,\nc,d,\ne,f,", false, "[a][b][]\n[c][d][]\n[e][f][]\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, is := plain.Separated(c.text, c.sure)
			text := ""
			if is {
				_, text, _ = strings.Cut(drawn([]table.Block{{Table: &got}}), "\n")
			}
			if diff := cmp.Diff(c.want, text); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Texts that are nearly tables for long are read in one pass.
func TestLongTexts(t *testing.T) {
	for _, text := range []string{
		strings.Repeat("a  b  c\na  b  c  d\n", 40_000), strings.Repeat("-----\n", 100_000), strings.Repeat("| a |\nb | c | d\n", 50_000),
		strings.Repeat("a\t\"b\nc\n", 100_000), strings.Repeat("\"", 1<<20), strings.Repeat("a,\"", 200_000), strings.Repeat(" a  b", 100_000) + "\n c  d  e",
		strings.Repeat("a  b  c                                         d\n", 20_000),
	} {
		if _, err := plain.Blocks(text); err != nil && !errors.Is(err, table.ErrTooLarge) {
			t.Error(err)
		}
		plain.Separated(text, true)
	}
}

func FuzzBlocks(f *testing.F) {
	f.Add("a\tb\nc\td\n| a | b |\n|---|---|\n| c | d |\n\na  b  c\nd  e  f\n")
	f.Add("a,\"b\nc\",d\n")
	f.Fuzz(func(t *testing.T, text string) {
		blocks, err := plain.Blocks(text)
		if s, is := plain.Separated(text, true); is {
			blocks = append(blocks, table.Block{Table: &s})
		}
		for _, b := range blocks {
			if err != nil || b.Table == nil && len(b.Line) == 0 || b.Table != nil && len(b.Table.Rows) == 0 {
				t.Fatalf("%v %+v", err, b)
			}
			if b.Table != nil {
				for _, row := range b.Table.Rows {
					if len(row) != len(b.Table.Rows[0]) || len(row) == 0 {
						t.Fatalf("%+v", b.Table)
					}
				}
			}
		}
	})
}

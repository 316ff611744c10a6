package webpage_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/table"
	"plait.example/internal/format/webpage"
)

// drawn is blocks as text: cells between bars, "^" for covered ones, inks
// before the words, the shade after.
func drawn(blocks []table.Block) string {
	var b strings.Builder
	for _, block := range blocks {
		if block.Table == nil {
			fmt.Fprintf(&b, "%s%s%s\n", strings.Repeat("#", block.Heading), block.Item, inked(block.Line))
			continue
		}
		fmt.Fprintf(&b, "T%d %s\n", block.Table.Header, block.Table.Name)
		for _, row := range block.Table.Rows {
			cells := make([]string, len(row))
			for i, c := range row {
				for k, l := range c.Lines {
					if k > 0 {
						cells[i] += "/"
					}
					cells[i] += inked(l)
				}
				if c.Shade != "" {
					cells[i] += "#" + c.Shade
				}
				if c.Checked {
					cells[i] += "+"
				}
				if c.Down == 0 {
					cells[i] = "^"
				}
			}
			b.WriteString(strings.Join(cells, "|") + "\n")
		}
	}
	return b.String()
}

func inked(l table.Line) string {
	var b strings.Builder
	for _, p := range l {
		form := p.Ink
		if p.Shade != "" {
			form += "~" + p.Shade
		}
		if p.Struck {
			form += "-"
		}
		if form != "" {
			form = "{" + form + "}"
		}
		b.WriteString(form + p.Text)
	}
	return b.String()
}

// Pages are invented. Colours by CSS Color Module Level 4, weights of rules by
// Selectors Level 3, tables by the HTML Standard, 4.9.
func TestBlocks(t *testing.T) {
	for _, c := range []struct{ name, page, want string }{
		{"spans", `<table><tr><td rowspan=2>9:00<td>a<td>b<tr><td colspan=2>c<tr><td>9:10<td>d<td>e</table>`, "T0 \n9:00|a|b\n^|c|^\n9:10|d|e\n"},
		{"all that follow", `<table><tr><td rowspan=0>9:00<td>a<tr><td>b<tr><td>c</table>`, "T0 \n9:00|a\n^|b\n^|c\n"},
		{"head, caption, foot", `<table><caption>My <b>plan</b></caption><colgroup><col></colgroup><thead><tr><td>Time<td>Job</thead><tbody><tr><th>9:00<td>a</tbody></table>`, "T1 My plan\nTime|Job\n9:00|a\n"},
		{"a row of headings", `<table><tr><th>Time<th>Job<tr><td>9:00<td>a</table>`, "T1 \nTime|Job\n9:00|a\n"},
		{"cells without rows", `<table><td>9:00<td>a</table>`, "T0 \n9:00|a\n"},
		{"lines in a cell", `<table><tr><td>9:00<td><p>a<br>b</p><ul><li>c<li>d</ul><td><br>e</table>`, "T0 \n9:00|a/b/c/d|e\n"},
		{"numbers in a cell", `<table><tr><td>x<td><ol start=3><li>c<li>d</ol></table>`, "T0 \nx|3. c/4. d\n"},
		{
			"colours beside the words", `<table bgcolor=silver><tr style="background: #FF0"><td style="background-color:rgb(0, 50%, 255)">a<td bgcolor="lime">b<td>c<tr><td style="background:transparent">d<td style="background: url(red.png) no-repeat tomato">e<td style="background:#0f08"><span style="color:#f00;background:#0ff">f</span><s>g</s></table>`,
			"T0 \na#0080FF|b#00FF00|c#FFFF00\nd#C0C0C0|e#FF6347|{FF0000~00FFFF}f{-}g#00FF00\n",
		},
		{"a style sheet", `<style>/* x */ td{background:#ccc} .t{background:yellow!important} #p td.t, .other > td{color:rgba(0,0,255,.5)} @media print{.t{background:red}} tr:nth-child(2) td{background:red} .no{display:none} <!-- .c { font-style: italic; text-decoration: line-through } --></style>
<table id=p><tr><td class="x t">a<td>b<td class=c>c<tr class=no><td>gone</table><p class=no>gone<p class=t>d`, "T0 \n{0000FF}a#FFFF00|b#CCCCCC|{-}c#CCCCCC\n{~FFFF00}d\n"},
		{"boxes", `<table><tr><td><input type=checkbox checked> oven<td><input type=checkbox> gas</table>`, "T0 \noven+|gas\n"},
		{"a frame", `<table><tr><td><h2>Plan</h2><table><tr><td>9:00<td>a<tr><td>9:10<td>b</table><td>Notes</table>`, "##Plan\nT0 \n9:00|a\n9:10|b\nNotes\n"},
		{"a table in a cell", `<table><tr><td>9:00<td>x<table><tr><td>T<td>roll</table><tr><td>9:10<td>y</table>`, "T0 \n9:00|x/T\troll\n9:10|y\n"},
		{"lists", `<h1>Plan</h1><ul><li>one<li>two</ul><ol><li>three</ol>text`, "#Plan\n-one\n-two\n1.three\ntext\n"},
		{"words run together", "<p>a\n <b>b</b> c&nbsp; d<pre>e\tf\n g</pre>", "a b c d\ne\tf\ng\n"},
		{"what is not seen", `<p>a<script>x</script><span style="display: none">b</span><p hidden>c<template>d</template>`, "a\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := webpage.Read([]byte(c.page))
			if diff := cmp.Diff(c.want, drawn(p.Blocks)); diff != "" || err != nil {
				t.Error(err, diff)
			}
		})
	}
}

// A page cannot claim a plane of cells, or time without end by its styles.
func TestHostileTables(t *testing.T) {
	for _, page := range []string{
		"<table>" + strings.Repeat(`<tr><td colspan=1000 rowspan=65534>a`, 1000) + "</table>",
		"<table>" + strings.Repeat(`<td colspan=999>a`, 1000) + "</table>",
	} {
		if _, err := webpage.Read([]byte(page)); !errors.Is(err, table.ErrTooLarge) {
			t.Error(err)
		}
	}
	rules := strings.Repeat("div div div div div .a{color:red}", 2000)
	deep := strings.Repeat("<div>", 200) + strings.Repeat("<b class=a>x</b>", 20_000)
	if p, err := webpage.Read([]byte("<style>" + rules + "</style>" + deep)); err != nil || len(p.Blocks) == 0 {
		t.Error(err)
	}
	open := "<style>" + strings.Repeat("@media x{", 100_000) + "</style>a"
	if p, err := webpage.Read([]byte(open)); err != nil || drawn(p.Blocks) != "a\n" {
		t.Error(err)
	}
}

func FuzzBlocks(f *testing.F) {
	f.Add(`<style>td.a{background:#ff0;color:rgb(1,2,3)}</style><table><tr><td rowspan=3 class=a>a<td colspan=0>b<table><tr><td>c</table></table><input type=checkbox checked>`)
	f.Fuzz(func(t *testing.T, page string) {
		p, err := webpage.Read([]byte(page))
		if err != nil {
			return
		}
		for _, b := range p.Blocks {
			if b.Table == nil {
				if len(b.Line) == 0 {
					t.Fatal("an empty block")
				}
				continue
			}
			for i, row := range b.Table.Rows {
				if len(row) != len(b.Table.Rows[0]) {
					t.Fatalf("%+v", b.Table)
				}
				for at, c := range row {
					if c.Span < 1 || at+c.Span > len(row) || i+c.Down > len(b.Table.Rows) {
						t.Fatalf("%+v", c)
					}
				}
			}
		}
	})
}

package written

import (
	"strings"

	"plait.example/internal/format/table"
)

// table reads a table that is no plan: a menu, a key, the candidate's name.
func (k *keyReader) table(g *grid) {
	menu := -1
	for r := range g.rows {
		filled := g.filled(r)
		for i, c := range filled {
			text := g.words(r, c)
			k.candidate(text)
			k.begins(text)
			if candidateLabel.MatchString(text) && i+1 < len(filled) {
				k.candidate("Name: " + g.words(r, filled[i+1]))
			}
		}
		if menu >= 0 && len(g.words(r, menu)) > 2 && len(g.words(r, menu)) <= 60 {
			k.keyCell(g, r, menu)
			continue
		}
		if r < 3 && menu < 0 {
			if menu = menuColumn(g, r, filled); menu >= 0 {
				continue
			}
		}
		k.keyRow(g, r, filled)
	}
}

// menuColumn is the column of a menu's dishes, when the row is its headings.
func menuColumn(g *grid, r int, filled []int) int {
	best := -1
	for _, c := range filled {
		text := strings.ToLower(strings.Trim(g.words(r, c), " :"))
		if roleOf(text) != dishRole || dishWords.MatchString(text) || len(strings.Fields(text)) > 4 || r+1 >= len(g.rows) {
			continue
		}
		if best < 0 || !strings.Contains(strings.ToLower(g.words(r, best)), "dish") {
			best = c
		}
	}
	return best
}

// keyCell reads a dish's name with its colour, its own or that of a cell beside it.
func (k *keyReader) keyCell(g *grid, r, c int) {
	n := Named{Name: strings.ReplaceAll(g.words(r, c), "\n", " ")}
	n.Ink, n.Shade = cellColour(g.cell(r, c))
	for _, side := range []int{c - 1, c + 1} {
		cell := g.cell(r, side)
		text := plain(cell)
		switch {
		case len(text) == 1 && text >= "A" && text <= "Z":
			n.Letter = text
		case colourWords[strings.ToLower(text)] != "" && n.Ink == "" && n.Shade == "":
			n.Ink = colourWords[strings.ToLower(text)]
		case text == "" && n.Shade == "":
			n.Shade = dishColour(cell.Shade)
		}
	}
	k.name(n, nil)
}

func cellColour(c table.Cell) (ink, shade string) {
	ink, _ = inksOf(c.Lines)
	if shade = dishColour(c.Shade); shade == "" {
		shade = shadeOf(c.Lines)
	}
	return ink, shade
}

// keyRow reads a row of a key or of a menu: coloured names, a letter or a colour
// beside a name, "Dish 1" beside a name.
func (k *keyReader) keyRow(g *grid, r int, filled []int) {
	colours := map[string]bool{}
	for _, c := range filled {
		if ink, shade := cellColour(g.cell(r, c)); ink+shade != "" {
			colours[ink+shade] = true
		}
	}
	for i, c := range filled {
		text := g.words(r, c)
		next := ""
		if i+1 < len(filled) {
			next = g.words(r, filled[i+1])
		}
		ink, shade := cellColour(g.cell(r, c))
		m := dishPattern.FindStringSubmatch(text)
		switch {
		case len(text) > 60:
		case m != nil:
			k.name(Named{Name: m[2], Letter: figure(m[1]), Ink: ink, Shade: shade}, nil)
		case next != "" && len(next) <= 60 && (dishWords.MatchString(text) || colourWords[strings.ToLower(text)] != "" || len(text) == 1 && text >= "A" && text <= "Z"):
			k.keyCell(g, r, filled[i+1])
			if number := dishNumber(text); number != "" {
				k.name(Named{Name: next, Letter: number}, nil)
			}
		case ink+shade != "" && (len(colours) >= 2 || k.r.isDish(text)) && len(text) > 2:
			k.name(Named{Name: text, Ink: ink, Shade: shade}, nil)
		case ink+shade == "" && len(text) > 2 && k.beside(g, r, c):
			k.keyCell(g, r, c)
		default:
			k.letters(text)
			k.parts(text)
		}
	}
}

// beside says whether an empty cell in a colour stands next to a cell.
func (k *keyReader) beside(g *grid, r, c int) bool {
	for _, side := range []int{c - 1, c + 1} {
		if cell := g.cell(r, side); plain(cell) == "" && dishColour(cell.Shade) != "" {
			return true
		}
	}
	return false
}

func dishNumber(text string) string {
	m := dishPattern.FindStringSubmatch(text + ": x")
	if m == nil {
		return ""
	}
	return figure(m[1])
}

// around reads the rows above the headings of a plan, and legends inside it.
func (k *keyReader) around(g *grid, l layout) {
	for r := range g.rows {
		filled := g.filled(r)
		if r < l.first && !l.heads[r] {
			for i, c := range filled {
				cell := g.cell(r, c)
				for _, line := range cell.Lines {
					k.line(line, false)
				}
				if candidateLabel.MatchString(plain(cell)) && i+1 < len(filled) {
					k.candidate("Name: " + g.words(r, filled[i+1]))
				}
			}
		}
		if k.r.legend(g, r, l) {
			k.keyRow(g, r, filled)
		}
	}
}

// legend says whether a row of a plan is a key: no time, and two or more short
// texts each in its own colour, or the word key.
func (r *reader) legend(g *grid, row int, l layout) bool {
	filled := g.filled(row)
	if len(filled) < 2 || l.heads[row] {
		return false
	}
	if l.time >= 0 {
		if cell, _ := g.over(row, l.time); cell.Clock >= 0 {
			return false
		} else if _, is := stampOf(cell); is {
			return false
		}
	}
	if keyWord.MatchString(g.words(row, filled[0])) && len(g.words(row, filled[0])) < 12 {
		return true
	}
	colours := map[string]bool{}
	for _, c := range filled {
		ink, shade := cellColour(g.cell(row, c))
		if len(g.words(row, c)) > 40 || ink+shade == "" || colours[ink+shade] {
			return false
		}
		colours[ink+shade] = true
	}
	return true
}

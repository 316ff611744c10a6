package written

import "strings"

const farthestHead = 12 // rows down to which headings are looked for

// findHeads finds the rows of headings, and the same again further down.
func (l *layout) findHeads(g *grid, known func(string) bool) {
	for r := range min(len(g.rows), farthestHead) {
		if !isHead(g, r, known) {
			continue
		}
		l.heads[r], l.first = true, r+1
		l.name(g, r)
		for r+1 < len(g.rows) && l.second(g, r+1) {
			r++
			l.heads[r], l.first = true, r+1
			l.name(g, r)
		}
		for again := r + 1; again < len(g.rows); again++ {
			for head := range l.heads {
				if head < l.first && g.same(again, head) && len(g.filled(again)) > 0 {
					l.heads[again] = true
					break
				}
			}
		}
		return
	}
}

// name adds a row's words to the headings.
func (l *layout) name(g *grid, r int) {
	for c := range l.columns {
		cell, _ := g.over(r, c)
		if text := plain(cell); text != "" && text != l.columns[c].heading {
			l.columns[c].heading = strings.TrimSpace(l.columns[c].heading + " " + text)
		}
	}
}

// second says whether a row goes on with the headings of the one above: "From" and "To" under "Time".
func (l *layout) second(g *grid, r int) bool {
	roles := 0
	for _, c := range g.filled(r) {
		if _, is := stampOf(g.cell(r, c)); is && hasFigure(g.words(r, c)) || len(g.words(r, c)) > 30 {
			return false
		}
		if roleOf(g.words(r, c)) != noRole {
			roles++
		}
	}
	above, _ := g.over(r-1, 0)
	return roles >= 2 && (above.Down > 1 || len(g.filled(r)) < g.width || roles == len(g.filled(r)))
}

// hasFigure says whether a text has a figure in it.
func hasFigure(text string) bool { return strings.ContainsAny(text, "0123456789") }

// isHead says whether a row holds headings: two of them known, or one a time and
// the others short, or names of dishes.
func isHead(g *grid, r int, known func(string) bool) bool {
	roles, dishes, short := map[role]bool{}, 0, 0
	filled := g.filled(r)
	for _, c := range filled {
		text := g.words(r, c)
		if _, is := stampOf(g.cell(r, c)); is && hasFigure(text) {
			return false
		}
		if len(text) > longestHeading {
			return false
		}
		if role := roleOf(text); role != noRole {
			roles[role] = true
		}
		if known(text) || dishWords.MatchString(text) {
			dishes++
		}
		if len(text) <= 60 {
			short++
		}
	}
	timed := roles[timeRole] || roles[runningRole] || roles[minutesRole]
	switch {
	case len(filled) < 2:
		return false
	case len(roles) >= 2:
		return timed || roles[textRole] || roles[needRole] || g.head > r
	case roles[timeRole] || roles[runningRole]:
		return short == len(filled) && below(g, r, filled[0])
	}
	return dishes >= 2 && dishes >= len(filled)-1
}

// below says whether times stand under a heading.
func below(g *grid, r, c int) bool {
	for i := r + 1; i < min(len(g.rows), r+4); i++ {
		if _, is := stampOf(g.cell(i, c)); is {
			return true
		}
	}
	return false
}

package written

import (
	"strings"

	"plait.example/internal/format/table"
	"plait.example/internal/practical"
)

// Options is what is known besides the document.
type Options struct {
	Clock  *practical.Clock // of the practical; nil: not known
	Dishes []Named          // the practical's, by name and letter
}

// reader collects a plan.
type reader struct {
	o       Options
	plan    Plan
	entries []entry
	names   []Named // dishes that words may mean: the practical's, the key's, the menu's
	begins  int     // when the document says that the clock starts; -1: it does not
	serves  int     // when it says that it ends: -1: it does not
	earlier bool    // the heading above is of the day before
}

// Read reads a time plan out of a document's lines and tables, in any layout
// that people make. It never fails: what is no row of the plan stands in Other,
// what was not understood in Unread. Name is the file's.
func Read(name string, blocks []table.Block, o Options) Plan {
	r := &reader{o: o, begins: -1, serves: -1, plan: Plan{Name: name}}
	r.names = append(r.names, o.Dishes...)
	r.learn(blocks)
	if !r.tables(blocks) && !r.cards(blocks) && !r.lines(blocks) {
		r.untimed(blocks)
	}
	r.settle()
	r.account(blocks)
	if len(r.plan.Rows) == 0 {
		r.plan.Unread = append(r.plan.Unread, "no time plan was found: no table and no lines have times and what is done")
	}
	return r.plan
}

// tables reads the tables that are plans, with what stands around them; false
// when there is none.
func (r *reader) tables(blocks []table.Block) bool {
	readers := make([]func(dish []string), len(blocks))
	index, plans := -1, 0
	var before *layout
	for i, b := range blocks {
		if b.Table == nil {
			continue
		}
		index++
		if len(b.Table.Rows) == 0 {
			continue
		}
		readers[i], before = r.tableReader(b.Table, index, before)
		if readers[i] != nil {
			plans++
		}
	}
	if plans == 0 {
		return false
	}
	var dish []string // that the line before the table names, when the table is that dish's own
	for i, b := range blocks {
		switch {
		case readers[i] != nil:
			readers[i](dish)
			dish, r.earlier = nil, false
		case b.Table != nil:
			r.otherTable(b.Table)
			dish = nil
		default:
			text := lineText(b)
			r.other(text)
			r.dayOf(text)
			if dish = nil; plans > 1 && (b.Heading > 0 || dishPattern.MatchString(text)) {
				dish = r.dishesIn(text)
			}
		}
	}
	return true
}

// tableReader is how a table is read as a plan; nil when it is none. A table
// without headings goes on like the plan before it when it is as wide.
func (r *reader) tableReader(t *table.Table, index int, before *layout) (func(dish []string), *layout) {
	g := newGrid(t)
	if left, right, is := halves(t); is {
		first, before := r.tableReader(left, index, before)
		second, last := r.tableReader(right, index, before)
		if first != nil && second != nil {
			return func(dish []string) { first(dish); second(dish) }, last
		}
	}
	if side, works := onItsSide(t); side != nil {
		if read, last := r.tableReader(side, index, before); read != nil {
			return func(dish []string) { r.sideways(read, dish, works) }, last
		}
	}
	if a, is := acrossOf(g); is {
		return func([]string) { r.readAcross(g, a, index) }, before
	}
	l := layoutOf(g, r.isDish)
	if before != nil && len(l.heads) == 0 && len(before.columns) == g.width {
		if next := before.goesOn(g); next.plan() && next.stamped > 0 {
			l = next
		}
	}
	if !l.plan() {
		return nil, before
	}
	return func(dish []string) { r.readTable(g, l, index, dish) }, &l
}

// halves parts a table whose right half has the same headings as its left: a
// plan that goes on beside itself.
func halves(t *table.Table) (left, right *table.Table, is bool) {
	head, half := -1, 0
	for r := range min(len(t.Rows), 3) {
		row := t.Rows[r]
		if n := len(row) / 2; len(row) >= 4 && len(row)%2 == 0 && plain(row[0]) != "" {
			same := true
			for c := range n {
				same = same && strings.EqualFold(plain(row[c]), plain(row[c+n])) && plain(row[c]) != ""
			}
			if same && roleOf(plain(row[0])) != noRole {
				head, half = r, n
				break
			}
		}
	}
	if head < 0 {
		return nil, nil, false
	}
	left, right = &table.Table{Name: t.Name, Header: t.Header}, &table.Table{}
	for r, row := range t.Rows {
		for c, cell := range row[:half] {
			if cell.Down > 0 && c+cell.Span > half && r >= head {
				return nil, nil, false
			}
		}
		left.Rows = append(left.Rows, row[:half])
		right.Rows = append(right.Rows, row[half:])
	}
	return left, right, true
}

// goesOn is the layout for a table that goes on without headings.
func (l *layout) goesOn(g *grid) layout {
	next := *l
	next.heads, next.first = map[int]bool{}, 0
	next.columns = append([]column(nil), l.columns...)
	next.stamped = 0
	if l.time >= 0 {
		next.columns[l.time].filled, next.columns[l.time].stamps = 0, 0
		next.columns[l.time].measure(g, l.time, 0, nil)
		next.stamped = next.columns[l.time].stamps
	}
	return next
}

// other keeps words that are no row.
func (r *reader) other(text string) {
	if text = strings.TrimSpace(text); text != "" {
		r.plan.Other = append(r.plan.Other, text)
	}
}

func (r *reader) otherTable(t *table.Table) {
	g := newGrid(t)
	r.other(t.Name)
	for row := range g.rows {
		r.other(g.line(row))
	}
}

// leftOver keeps what an entry that is no row says.
func (r *reader) leftOver(e entry) {
	if !e.shared {
		r.other(e.written)
	}
	r.other(struck(e.lines))
	for _, list := range [][]string{e.points, e.besides} {
		for _, text := range list {
			r.other(text)
		}
	}
	if !e.section {
		r.other(strings.Join(e.dishes, ", "))
	}
}

// lineText is a line with the number of its item.
func lineText(b table.Block) string {
	text := strings.TrimSpace(b.Line.Text())
	if b.Item != "" && strings.ContainsAny(b.Item, "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ") {
		return b.Item + " " + text
	}
	return text
}

// settle makes the rows from the entries.
func (r *reader) settle() {
	r.colourDishes()
	r.oneDay()
	r.clocks()
	for i := range r.plan.Rows {
		r.plan.Rows[i].Number = i + 1
	}
}

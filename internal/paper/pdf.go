package paper

import (
	"fmt"

	"plait.example/internal/picture"
	"plait.example/internal/timeplan"
)

// PDF writes the plan on sheets of A4: heading and key, the table with its
// heading on every page and no row split, the plait, reminders of food safety.
// Fonts are embedded, the structure is tagged, and the same plan and sheet
// give the same bytes. A sign that the fonts lack is printed as U+FFFD.
func PDF(p *timeplan.Plan, s Sheet) ([]byte, error) {
	return set(p, s).output()
}

// set sets the whole document.
func set(p *timeplan.Plan, s Sheet) *document {
	l, v := layoutOf(s), viewOf(p)
	d := &document{pen: newPen(l, printable(v.Title)), layout: l, view: v, plan: p}
	d.root = d.tags.root
	d.page()
	d.heading(s.Name)
	d.reasons()
	d.table()
	d.footer()
	d.plait()
	d.numbers()
	return d
}

// document is a PDF in the making: y is where the next thing goes.
type document struct {
	*pen
	layout layout
	view   view
	plan   *timeplan.Plan
	root   *tag
	y      float64
	boxes  []rowBox
	strip  *strip // the plait beside the table; nil: it has pages of its own
}

// rowBox is where a row was put; tests ask for it.
type rowBox struct {
	page        int
	top, bottom float64
	part, parts int // of a row too tall for a page
}

const footRoom = 12.0 // for the page's number, above the lower margin

func (d *document) page() {
	d.f.AddPage()
	d.y = margin
}

// bottom is how far down a page may be filled.
func (d *document) bottom() float64 { return d.height - margin - footRoom }

func (d *document) left() float64  { return margin }
func (d *document) wide() float64  { return d.width - 2*margin }
func (d *document) right() float64 { return d.width - margin }

// room begins a new page unless so much room is left.
func (d *document) room(h float64) {
	if d.y+h > d.bottom() && d.y > margin {
		d.page()
	}
}

// paragraph writes a text over the whole width, or from x in.
func (d *document) paragraph(kind, text string, size float64, bold bool, in float64) {
	d.lines(kind, text, size, bold, in, d.wide()-in)
}

// lines writes a text of some width, a page's end between any two lines.
func (d *document) lines(kind, text string, size float64, bold bool, in, wide float64) {
	t := d.root.add(kind)
	for _, line := range setText([]span{{text, bold}}, size, wide) {
		d.room(line.height())
		d.in(t, func() { d.put([]setLine{line}, d.left()+in, d.y, mark{Index: -1}) })
		d.y += line.height()
	}
}

// heading writes title, name, date, finish and clock; across, the key stands
// beside them.
func (d *document) heading(name string) {
	l := d.layout
	nameWide := min(80*mm, d.wide()/2)
	title := setText([]span{{d.view.Title, true}}, min(l.text*1.8, 26), d.wide()-nameWide-12)
	t := d.root.add("H1")
	top := d.y
	d.in(t, func() { d.put(title, d.left(), d.y, mark{Index: -1}) })
	d.y += heightOf(title)
	d.name(name, d.right()-nameWide, top+heightOf(title[:1]), nameWide)
	under, wide := d.y+4, d.wide()
	beside := l.landscape && len(d.view.Key) <= 5
	if beside {
		wide *= 0.5
	}
	if d.view.Date != "" {
		d.lines("P", d.view.Date, l.text, false, 0, wide)
	}
	d.y += 4
	d.lines("P", d.view.Finish, l.text*1.2, true, 0, wide)
	d.lines("P", d.view.Clock, l.text, false, 0, wide)
	d.y += 6
	if beside && d.f.PageNo() == 1 {
		down := d.y
		d.y = under
		d.key(wide + 12)
		d.y = max(d.y, down)
	} else {
		d.key(0)
	}
}

// name writes the candidate's name on a line, or the line alone.
func (d *document) name(name string, x, base, wide float64) {
	size := d.layout.text
	t := d.root.add("P")
	from := x + measure(span{"Name ", false}, size)
	d.in(t, func() {
		x = d.write(x, base-4, size, inkText, span{"Name ", false})
		if lines := setText([]span{{name, true}}, size, d.right()-x-4); len(lines) > 0 {
			x += 4
			for _, s := range lines[0].spans {
				x = d.write(x, base-4, size, inkText, s)
			}
		}
	})
	d.aside(func() { d.rule(from, base, d.right()-from, 1, inkText) })
}

// reasons writes what cannot hold together and the ways out.
func (d *document) reasons() {
	list := func(head string, texts []string) {
		if len(texts) == 0 {
			return
		}
		d.paragraph("H2", head, d.layout.text, true, 0)
		for _, text := range texts {
			d.paragraph("P", "• "+text, d.layout.text, false, 8)
		}
		d.y += 4
	}
	list("These cannot hold together", d.view.Conflict)
	list("Ways out, the cheapest first", d.view.WaysOut)
}

// key writes the dishes with their marks, from x in.
func (d *document) key(in float64) {
	l := d.layout
	for _, k := range d.view.Key {
		lines := setText([]span{{k.Mark.Letter + "\u00a0 " + k.Name, true}, {k.Say, false}}, l.text, d.wide()-in-30)
		h := max(heightOf(lines), 24)
		d.room(h)
		t := d.root.add("P")
		d.aside(func() { d.mark(k.Mark, d.left()+in+13, d.y+12, 9) })
		d.in(t, func() { d.put(lines, d.left()+in+30, d.y+(h-heightOf(lines))/2, mark{Index: -1}) })
		d.y += h
	}
	d.y += 6
}

// mark draws a dish's shape with its letter around (x, y).
func (d *document) mark(m mark, x, y, r float64) {
	if m.Index < 0 {
		return
	}
	d.path(picture.Mark{Path: picture.Outline(m.Ink.Shape, x, y, r), Fill: m.Ink.Line}, func(p picture.Point) (float64, float64) { return p.X, p.Y }, 1)
	size := letterSize(m) * r
	letter := span{printable(m.Letter), true}
	d.write(x-measure(letter, size)/2, y+picture.Drop(m.Ink.Shape)*r+size*0.345, size, m.Ink.On, letter)
}

// footer writes ovens, notes and the reminders of food safety.
func (d *document) footer() {
	l := d.layout
	d.y += 10
	list := func(head string, texts []string) {
		if len(texts) == 0 {
			return
		}
		d.room(4 * l.small * leading)
		d.paragraph("H2", head, l.small*1.1, true, 0)
		for _, text := range texts {
			d.paragraph("P", "• "+text, l.small, false, 6)
		}
		d.y += 4
	}
	list("Oven", d.view.Ovens)
	list("Notes", d.view.Notes)
	list("Food safety", d.view.Safety)
}

// numbers writes title and page number at the foot of every page.
func (d *document) numbers() {
	title := setText([]span{{fmt.Sprintf("%s (seed %d)", d.view.Title, d.plan.Seed), false}}, 9, d.wide()*0.7)
	last := d.f.PageCount()
	for page := 1; page <= last; page++ {
		d.f.SetPage(page)
		d.aside(func() {
			y := d.height - margin - 2
			if len(title) > 0 {
				x := d.left()
				for _, s := range title[0].spans {
					x = d.write(x, y, 9, inkSoft, s)
				}
			}
			n := span{fmt.Sprintf("page %d of %d", page, last), false}
			d.write(d.right()-measure(n, 9), y, 9, inkSoft, n)
		})
	}
}

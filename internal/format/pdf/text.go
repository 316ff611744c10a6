package pdf

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// headingShare is the greatest share of a document's letters that one size of
// heading has.
const headingShare = 0.15

// sizes tells headings from the body of a text by the size of letters.
type sizes struct {
	body float64 // size of most letters
	many map[float64]bool
}

// Text is the document in lines: "# " before lines in larger letters than the
// rest, a blank line where the page leaves one, and the lines of a paragraph
// that were broken at the margin as one.
func (d Document) Text() string {
	s := d.sizes()
	var b strings.Builder
	for _, p := range d.Pages {
		b.WriteString(p.text(s))
		b.WriteByte('\n')
	}
	return strings.TrimSpace(b.String())
}

func (d Document) sizes() sizes {
	s := sizes{many: map[float64]bool{}}
	letters := map[float64]int{}
	most, all := 0, 0
	for _, p := range d.Pages {
		for _, l := range p.Lines {
			letters[l.Size] += len(l.Text)
			all += len(l.Text)
			if n := letters[l.Size]; n > most {
				most, s.body = n, l.Size
			}
		}
	}
	for size, n := range letters {
		s.many[size] = float64(n) > headingShare*float64(all) && all > 300
	}
	return s
}

func (p Page) text(s sizes) string {
	var b strings.Builder
	gap := p.leading()
	margins := p.margins()
	for i, l := range p.Lines {
		heading := s.mark(l)
		if i > 0 {
			last := p.Lines[i-1]
			down := last.Base - l.Base
			switch {
			case s.mark(last) == heading && down > 0 && down < 1.7*max(gap, l.Size) && last.goesOn(l, margins[i-1], heading != ""):
				join(&b, l.Text)
				continue
			case down > apart(last, l)*max(gap, l.Size) || down < 0 || heading != "" || s.mark(last) != "":
				b.WriteString("\n\n")
			default:
				b.WriteByte('\n')
			}
		}
		b.WriteString(heading + l.Text)
	}
	return b.String() + "\n"
}

// apart is from how many times the usual distance on two lines are two blocks;
// rows of a table stand further apart than lines of a paragraph.
func apart(l, next Line) float64 {
	if strings.Contains(l.Text, "\t") && strings.Contains(next.Text, "\t") {
		return 2.5
	}
	return 1.35
}

// join adds a line to a paragraph; a word that was parted at the margin stays
// parted when a hyphen may belong to it.
func join(b *strings.Builder, text string) {
	if !strings.HasSuffix(b.String(), "-") {
		b.WriteByte(' ')
	}
	b.WriteString(text)
}

// mark is "# " or "## " for a short line in larger letters.
func (s sizes) mark(l Line) string {
	first, _ := utf8.DecodeRuneInString(l.Text)
	switch n := utf8.RuneCountInString(l.Text); {
	case n > 100 || n < 3 || strings.Contains(l.Text, "\t") || unicode.IsLower(first) || s.many[l.Size]:
		return ""
	case l.Size >= 1.5*s.body:
		return "# "
	case l.Size >= 1.15*s.body:
		return "## "
	}
	return ""
}

// whole is all lines of the page of which these may be a part.
func (p Page) whole() []Line {
	if p.around != nil {
		return p.around
	}
	return p.Lines
}

// leading is the usual distance of base lines on the page.
func (p Page) leading() float64 {
	var gaps []float64
	all := p.whole()
	for i := 1; i < len(all); i++ {
		if down := all[i-1].Base - all[i].Base; down > 0 && down < 3*all[i].Size {
			gaps = append(gaps, down)
		}
	}
	if len(gaps) == 0 {
		return 0
	}
	slices.Sort(gaps)
	return gaps[len(gaps)/3] // lines of paragraphs are nearer than paragraphs
}

// margins is for each line the right edge of the lines that begin about where it does.
func (p Page) margins() []float64 {
	edge := map[int]float64{} // by left edge, in half inches
	for _, l := range p.whole() {
		at := int(l.Left / 36)
		edge[at] = max(edge[at], l.Right)
	}
	margins := make([]float64, len(p.Lines))
	for i, l := range p.Lines {
		at := int(l.Left / 36)
		margins[i] = max(edge[at-1], edge[at], edge[at+1])
	}
	return margins
}

var listMark = regexp.MustCompile(`^(?:[•·▪■□☐◦\-–*]|\(?[0-9]{1,2}[.)]|(?i:step) [0-9]+)\s`)

// goesOn says whether the next line belongs to the same paragraph: its first
// word had no room on this one, and the words do not say otherwise.
func (l Line) goesOn(next Line, margin float64, heading bool) bool {
	if strings.Contains(l.Text+next.Text, "\t") || listMark.MatchString(next.Text) || next.Left > l.Left+6*l.Size {
		return false
	}
	if heading {
		return true
	}
	if l.Right+0.2*l.Size+next.first < margin {
		return false
	}
	first, _ := utf8.DecodeRuneInString(next.Text)
	last, _ := utf8.DecodeLastRuneInString(l.Text)
	long := utf8.RuneCountInString(l.Text)
	if unicode.IsLower(first) || strings.ContainsRune(",;-–(&", last) {
		return long >= 25
	}
	return long >= 45
}

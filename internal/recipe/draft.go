package recipe

import (
	"cmp"
	"strings"

	"plait.example/internal/practical"
)

// draft is a recipe whose lines have been sorted into their sections.
type draft struct {
	title       string
	titleLevel  int
	start, end  int // bytes of the source
	head        heading
	serves      int
	ingredients []listed
	items       []item
	unread      []string
	leads       []string // the words before a list that is written as a sentence
}

// listed is a line of the ingredient list.
type listed struct {
	line      line
	component string
}

// item is a paragraph or list entry of the method.
type item struct {
	start, end int // bytes in the source
	numbered   bool
	component  string
	ts         []token
	late       bool   // of a part that is told after the whole of the rest
	table      *Table // the technique table in use; nil: the default
}

// sorter sorts lines into drafts.
type sorter struct {
	lines  []line
	all    []*draft
	cur    *draft
	part   section
	comp   string
	block  string    // the part that has a list and a method of its own; empty: none is open
	tip    bool      // the line before belongs to a tip
	open   bool      // the last item may go on in the next line
	bare   bool      // a marker stood alone on the line before
	blocks []block   // by line
	ahead  []section // by line: the next heading's section
	heads  []string  // headings that no ingredient or step has taken up yet
}

// drafts sorts the lines into recipes.
func drafts(lines []line) []*draft {
	s := &sorter{lines: lines, blocks: blocks(lines)}
	s.lookAhead()
	s.begin(0)
	for i := range lines {
		s.take(i)
	}
	s.begin(endOf(lines))
	s.all = s.all[:len(s.all)-1]
	var out []*draft
	for _, d := range s.all {
		if len(d.items) > 0 || len(d.ingredients) > 0 {
			out = append(out, d)
		} else if len(out) > 0 {
			out[len(out)-1].unread = append(out[len(out)-1].unread, d.leftover()...)
		}
	}
	if len(out) > 0 && len(s.all) > 0 && out[0] != s.all[0] {
		out[0].unread = append(s.all[0].leftover(), out[0].unread...)
	}
	return out
}

func endOf(lines []line) int {
	if len(lines) == 0 {
		return 0
	}
	return lines[len(lines)-1].end
}

// leftover is the words of a draft that turned out to be no recipe.
func (d *draft) leftover() []string {
	if d.title == "" {
		return d.unread
	}
	return append([]string{d.title}, d.unread...)
}

func (s *sorter) begin(at int) {
	if s.cur != nil {
		s.cur.end = at
		s.cur.unread = append(s.cur.unread, s.heads...)
		s.heads = nil
	}
	s.cur = &draft{start: at}
	s.all = append(s.all, s.cur)
	s.part, s.comp, s.block, s.open, s.bare = front, "", "", false, false
}

func (s *sorter) take(i int) {
	l := s.lines[i]
	switch {
	case l.blank:
		s.open = false
	case l.aside:
		s.cur.unread = append(s.cur.unread, l.text)
	case l.bare:
		s.bare, s.open = true, false
	case s.nestedTitle(i):
		s.cur.unread = append(s.cur.unread, s.cur.title)
		s.cur.title, s.cur.titleLevel = strings.Trim(l.text, ":*_# "), l.heading
	case s.newRecipe(i) && s.ofSameDish(i):
		s.partBlock(l)
	case s.newRecipe(i):
		s.begin(l.head)
		s.cur.title, s.cur.titleLevel = strings.Trim(l.text, ":*_# "), l.heading
	case (isHeading(l) || s.subheading(i)) && !s.bare:
		s.heading(l)
	default:
		s.content(i)
	}
}

// subheading says whether a short line inside a method names a part: "White sauce".
func (s *sorter) subheading(i int) bool {
	l := s.lines[i]
	if s.part != methodPart || l.marker != noMarker || len(l.ts) > 4 || len(l.ts) == 0 || len(clauses(l.ts)) > 0 || !l.ts[0].upper || l.ts[0].kind != word {
		return false
	}
	if n := len(s.cur.items); n > 0 && s.open {
		if last := s.cur.items[n-1].ts; !last[len(last)-1].is(".", "!", "?", ")") {
			return false
		}
	}
	return !l.ts[len(l.ts)-1].is(".", "!", "?", ",", ";") && len(at2(s.lines, i+1).ts) > 4
}

// heading enters a section or a component.
func (s *sorter) heading(l line) {
	s.open = false
	if len(s.heads) > 0 {
		s.cur.unread = append(s.cur.unread, s.heads...)
		s.heads = nil
	}
	if _, said := portions(l.ts); said && s.cur.title != "" && s.meta(l, ingredientPart) {
		return // "SERVES 4" below a title in capitals
	}
	part, ok := partOf(l.ts)
	near := !ok && strings.Contains(strings.ToLower(l.text), "ingredients") && len(l.ts) <= 8
	if near {
		part, ok = ingredientPart, true
	}
	switch {
	case part == methodPart && len(s.cur.items) > 0 && len(l.ts) == 2 && l.ts[1].is("ii", "2", "iii", "3", "b"):
		s.part, s.comp = notePart, "" // another way to make the same thing
		s.cur.unread = append(s.cur.unread, l.text)
	case ok && l.marker == noMarker && !(part == methodPart && s.part == methodPart && l.heading == 0):
		s.part, s.comp = part, s.block
		if n := portionsOfList(l.ts); n > 0 && part == ingredientPart {
			s.cur.serves = cmp.Or(s.cur.serves, n)
		} else if c := afterColonOrBracket(l); c != "" {
			s.comp = c
		}
		if wordCount(l.ts) > 1 || part == notePart || near {
			s.heads = []string{l.text}
		}
	case s.cur.title == "" && s.part == front && !strings.HasSuffix(l.text, ":") && !navigation(l):
		s.cur.title, s.cur.titleLevel = strings.Trim(l.text, ":*_# "), l.heading
	case s.part == front && strings.HasPrefix(strings.ToLower(l.text), "for "):
		s.part, s.comp = ingredientPart, component(l)
		s.heads = []string{l.text}
	case s.part == methodPart && startsWithVerb(l.ts) && !l.ts[0].is("make", "prepare"):
		s.heads = []string{l.text} // "Knead the dough:" names a step and no part of the dish
	case s.part == methodPart && at(l.ts, 0).is("step", "stage", "day"):
		s.comp = "" // "Step No 4"
	case s.part == ingredientPart || s.part == methodPart:
		s.comp = component(l)
		s.heads = []string{l.text}
	default:
		s.cur.unread = append(s.cur.unread, l.text)
	}
}

// afterColonOrBracket is the component in "Ingredients (Base Dough)" and "Method: the sauce".
func afterColonOrBracket(l line) string {
	if i := strings.IndexByte(l.text, '('); i > 0 {
		return strings.Trim(l.text[i:], "() :")
	}
	return ""
}

// content takes a line that is no heading.
func (s *sorter) content(i int) {
	l := s.lines[i]
	if s.meta(l, s.ahead[i]) {
		return
	}
	s.tip = s.tip && i > 0 && !s.lines[i-1].blank && l.marker == noMarker && !s.endedOnPurpose(i) || tipLine(l.ts)
	if s.tip {
		s.cur.unread = append(s.cur.unread, l.text)
		return
	}
	s.guessPart(i)
	switch s.part {
	case ingredientPart:
		s.cur.ingredients = append(s.cur.ingredients, listed{l, s.comp})
		s.bare = false
		s.takeUp()
	case methodPart:
		s.method(l, s.endedOnPurpose(i))
	default:
		if s.cur.title == "" && s.part == front && len(l.ts) <= 12 && l.marker == noMarker && !navigation(l) {
			s.cur.title = l.text
			return
		}
		s.cur.unread = append(s.cur.unread, l.text)
	}
}

// guessPart moves to another section where a line shows that one has begun.
func (s *sorter) guessPart(i int) {
	l := s.lines[i]
	switch s.part {
	case front:
		switch {
		case s.ahead[i] == ingredientPart:
		case ingredientLike(l) && (s.cur.title != "" || i > 0 || ingredientLike(at2(s.lines, i+1))):
			s.part = ingredientPart
		case s.ahead[i] == methodPart:
		case methodLike(l) && (l.marker == numbered || s.cur.title != "" && (!introduces(l) || told(l.ts)) || len(clauses(l.ts)) >= 2):
			s.part = methodPart
		}
	case notePart:
		if len(s.cur.items) == 0 && len(s.cur.ingredients) > 0 && methodLike(l) && l.marker == numbered && !s.methodHeadingAhead(i) {
			s.part, s.comp, s.open = methodPart, "", false // after a list of equipment
		}
	case ingredientPart:
		if methodLike(l) && (!ingredientLike(l) || l.marker == numbered) && !s.methodHeadingAhead(i) && !s.listGoesOn(i) {
			s.part, s.comp, s.open = methodPart, s.block, false
		}
	}
}

// lookAhead notes for every line the next heading of a list of ingredients or a method.
func (s *sorter) lookAhead() {
	s.ahead = make([]section, len(s.lines)+1)
	for i := len(s.lines) - 1; i >= 0; i-- {
		s.ahead[i] = s.ahead[i+1]
		if part, ok := partOf(s.lines[i].ts); ok && isHeading(s.lines[i]) && part != notePart {
			s.ahead[i] = part
		}
	}
}

// methodHeadingAhead says whether the method of this recipe has a heading further down.
func (s *sorter) methodHeadingAhead(i int) bool { return s.ahead[i] == methodPart }

// navigation says that a line was copied with a web page and is no title.
func navigation(l line) bool {
	return messageHead(l.ts) || strings.ContainsAny(l.text, "|>»©") || has(l.ts, "skip to", "jump to", "log in", "sign in", "print", "share", "save recipe", "menu", "search", "home", "newsletter", "cookies policy", "rate this", "reviews", "preparation time", "cooking time", "prep time", "cook time", "dietary") || at(l.ts, 0).is("recipes", "recipe", "by", "photo")
}

// introduces says that a line talks about the dish instead of telling what to do.
func introduces(l line) bool {
	return len(clauses(l.ts)) == 0 || has(l.ts[:min(len(l.ts), 6)], "this", "these", "I", "my", "our", "is", "are", "recipe") && !startsWithVerb(l.ts)
}

func at2(ls []line, i int) line {
	for ; i < len(ls); i++ {
		if !ls[i].blank {
			return ls[i]
		}
	}
	return line{blank: true}
}

func wordCount(ts []token) int {
	n := 0
	for _, t := range ts {
		n += boolInt(t.kind == word)
	}
	return n
}

// newRecipe says whether line i is the title of another recipe.
func (s *sorter) newRecipe(i int) bool {
	l := s.lines[i]
	if len(s.cur.items) == 0 && (len(s.cur.ingredients) == 0 || s.part != notePart) || l.marker != noMarker || len(l.ts) > 12 {
		return false
	}
	if _, ok := partOf(l.ts); ok || s.block != "" && s.part == ingredientPart {
		return false
	}
	if _, ok := portions(l.ts); ok {
		return false
	}
	if l.heading > 0 && s.cur.titleLevel > 0 && !(l.heading == boldHeading && s.cur.titleLevel == boldHeading) {
		return l.heading <= s.cur.titleLevel
	}
	if l.heading == 0 && !l.gap || strings.HasSuffix(l.text, ".") || strings.HasSuffix(l.text, ":") {
		return false
	}
	return s.listFollows(i + 1)
}

// listFollows says whether an ingredient list begins within a few lines.
func (s *sorter) listFollows(i int) bool {
	for seen := 0; i < len(s.lines) && seen < 5; i++ {
		l := s.lines[i]
		if l.blank {
			continue
		}
		seen++
		if part, ok := partOf(l.ts); ok && isHeading(l) {
			return part == ingredientPart
		}
		if l.marker == numbered {
			return false
		}
		if ingredientLike(l) && ingredientLike(at2(s.lines, i+1)) {
			return true
		}
	}
	return false
}

// read turns the sorted lines into a recipe.
func (d *draft) read(text string) Recipe {
	r := Recipe{Title: d.title, Serves: d.serves, Unread: d.unread}
	if title, n := titlePortions(d.title); n > 0 {
		r.Title = title
		if r.Serves == 0 {
			r.Serves = n
		}
	}
	d.readList(text, &r)
	if d.head.makes == 0 && strings.Contains(strings.ToLower(d.title), "makes") {
		d.head.makes = r.Serves
	}
	readMethod(text, d.items, d.head, &r)
	if r.Title == "" && len(d.items) > 0 {
		r.Title = firstWords(text, d.items[0])
	}
	if len(r.Steps) == 0 {
		r.Unread = append(r.Unread, "No method was found in this recipe; a method is sentences that say what to do.")
	}
	if r.Serve.Heat == "" {
		r.Serve.Heat = practical.AsIs
	}
	return r
}

// firstWords is the title of a recipe that begins in running text: "Brownies. 200 g dark chocolate, ...".
func firstWords(text string, it item) string {
	s := sentences(it.ts)
	if len(s) < 2 || s[0][1] > 7 || len(clauses(it.ts[:s[0][1]])) > 0 || it.ts[0].kind != word {
		return ""
	}
	return strings.TrimRight(quote(text, it.ts, 0, s[0][1]), ". ")
}

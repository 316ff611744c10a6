package written

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/format/table"
)

// learn reads what the document says around the plan: who wrote it, its dishes,
// the key of their colours and letters, when the clock starts.
func (r *reader) learn(blocks []table.Block) {
	k := keyReader{r: r}
	for _, b := range blocks {
		if b.Table == nil {
			k.line(b.Line, b.Heading > 0)
			continue
		}
		g := newGrid(b.Table)
		l := layoutOf(g, r.isDish)
		_, across := acrossOf(g)
		switch {
		case !l.plan() && !across:
			k.table(g)
		case len(g.rows) > 0:
			k.around(g, l)
		}
		k.after = 0
	}
}

// keyReader looks for dishes in lines and in tables that are no plan.
type keyReader struct {
	r     *reader
	after int // lines left in which dishes are listed, after "Menu" or "Key"
}

var (
	candidatePattern = regexp.MustCompile(`(?i)^[\s*•-]*(?:(?:candidate|pupil|student|learner)(?:['’]?s)?(?: name)?|name(?: of (?:candidate|pupil|student|learner))?|full name|written by|by)\s*[:–=]\s*(\S.*)$`)
	candidateLabel   = regexp.MustCompile(`(?i)^[\s*•-]*(?:(?:candidate|pupil|student|learner)(?:['’]?s)?(?: name)?|name|full name|name of (?:candidate|pupil|student|learner))\s*[:–]?\s*$`)
	candidateEnd     = regexp.MustCompile(`(?i)\s*(?:\t|\s{3,}|[|;]|,?\s*\b(?:candidate (?:no|number)|number|no\.|class|form|date|centre|center|group|year|teacher|exam|school|tutor|set)\b\s*[:.\d]).*$`)
	dishPattern      = regexp.MustCompile(`(?i)^[\s*•-]*(?:(?:dish|recipe|product|course)\s*(?:no\.?\s*)?(\d|one|two|three|four|five|[a-f])|starter|main(?: course| dish)?|dessert|pudding|side(?: dish)?|accompaniment)(?:\s+name)?\s*[:=.)–-]\s*(\S.*)$`)
	listPattern      = regexp.MustCompile(`(?i)^[\s*•-]*(?:(?:my |the |chosen )?(?:\w+ )?(?:dishes|menu)(?: (?:are|is|chosen|for[^:]*))?)\s*[:–-]\s*(\S.*)$`)
	listHead         = regexp.MustCompile(`(?i)^[\s*•-]*(?:(?:my |the |chosen |final )?(?:\w+ )?(?:dishes|menu)|(?:colour )?key|colou?r cod(?:e|ing))\s*[:–-]?\s*$`)
	letterPattern    = regexp.MustCompile(`^[\s*•-]*\(?([A-Z]{1,3}|[1-9])\)?\s*[=:–]\s*(\S.{2,59})$`)
	letterDash       = regexp.MustCompile(`^[\s*•-]*\(?([A-Z])\)?\s*[-.)]\s*(\S.{2,59})$`)
	nameFirst        = regexp.MustCompile(`^(\S.{2,59}?)\s*[=:–-]\s*([A-Z]{1,3}|[A-Za-z ]{3,12})$|^(\S.{2,59}?)\s*\(([A-Z]{1,3}|[A-Za-z ]{3,12})\)$`)
	keyWord          = regexp.MustCompile(`(?i)^\s*(?:colour |color )?(?:key|cod(?:e|ing))\b\s*[:–-]?\s*`)
	servePattern     = regexp.MustCompile(`(?i)(?:\bserv(?:e|ing|ice)(?: time)?(?: (?:is|at|for))?|\bT(?:-0)? ?=)\s*[:=–-]?\s*(\d[\d:.]*\s*(?:noon|[ap]m)?)`)
	startPattern     = regexp.MustCompile(`(?i)\b(?:start(?:s|ing)?(?: time| at)?|begins?(?: at)?|clock|session|exam|practical|cooking|time(?: allowed)?)\b[^\d]{0,20}(\d[\d:.]*\s*(?:[ap]m)?)`)
)

// line reads a line outside the plan.
func (k *keyReader) line(l table.Line, heading bool) {
	text := strings.TrimSpace(l.Text())
	if text == "" {
		return
	}
	if _, _, timed := leading(text, false); timed {
		k.after = 0
		return
	}
	k.candidate(text)
	k.begins(text)
	listed := k.after > 0
	if k.after > 0 {
		k.after--
	}
	if listHead.MatchString(text) {
		k.after = 8
		return
	}
	switch m := dishPattern.FindStringSubmatch(text); {
	case m != nil:
		k.name(Named{Name: m[2], Letter: figure(m[1])}, l)
		return
	case k.letters(text):
		return
	case keyWord.MatchString(text):
		k.pieces(l, true)
		k.parts(keyWord.ReplaceAllString(text, ""))
		return
	}
	if m := listPattern.FindStringSubmatch(text); m != nil {
		for _, part := range listParts(m[1]) {
			k.name(Named{Name: part}, nil)
		}
		k.pieces(l, false)
		return
	}
	switch k.pieces(l, listed); {
	case heading:
		k.after = 0
	case listed && len(text) <= 60 && !k.parts(text):
		k.name(Named{Name: strings.Trim(text, " .,;•*-–")}, l)
	}
}

var figures = map[string]string{"one": "1", "two": "2", "three": "3", "four": "4", "five": "5"}

func figure(s string) string {
	if f, word := figures[strings.ToLower(s)]; word {
		return f
	}
	return strings.ToUpper(s)
}

// candidate reads who wrote the plan.
func (k *keyReader) candidate(text string) {
	m := candidatePattern.FindStringSubmatch(text)
	if m == nil || k.r.plan.Candidate != "" {
		return
	}
	name := candidateEnd.ReplaceAllString(m[1], "")
	if name = strings.Trim(name, " ._-…:\t"); name != "" && len(name) <= 80 {
		k.r.plan.Candidate = name
	}
}

// begins reads when the clock starts.
func (k *keyReader) begins(text string) {
	if m := servePattern.FindStringSubmatch(text); m != nil && k.r.serves < 0 {
		if st, ok := readStamp(m[1]); ok && st.kind == clock {
			k.r.serves = usualHour(st)
		}
	}
	m := startPattern.FindStringSubmatch(text)
	if m == nil || k.r.begins >= 0 {
		return
	}
	if st, ok := readStamp(m[1]); ok && (st.kind == clock || st.kind == digits && st.number >= 600) && len(st.times) > 0 {
		k.r.begins = usualHour(st)
	}
}

// letters reads "Q = quiche", alone or several in a line.
func (k *keyReader) letters(text string) bool {
	parts := listParts(keyWord.ReplaceAllString(text, ""))
	found := false
	for _, part := range parts {
		m := letterPattern.FindStringSubmatch(part)
		if m == nil && (len(parts) > 1 || k.after > 0) {
			m = letterDash.FindStringSubmatch(part)
		}
		if m != nil {
			k.name(Named{Name: m[2], Letter: m[1]}, nil)
			found = true
		}
	}
	return found
}

// parts reads "red = quiche", "quiche (red)", "quiche - Q"; false when it is none of them.
func (k *keyReader) parts(text string) bool {
	found := false
	for _, part := range listParts(text) {
		if n, ok := coloured(part); ok {
			k.name(n, nil)
			found = true
		}
	}
	return found
}

// coloured reads a dish with the name of a colour or a letter.
func coloured(part string) (Named, bool) {
	left, right, cut := strings.Cut(part, "=")
	for _, sign := range []string{":", " - ", " – ", " is "} {
		if !cut {
			left, right, cut = strings.Cut(part, sign)
		}
	}
	if m := nameFirst.FindStringSubmatch(part); !cut && m != nil {
		left, right, cut = m[1]+m[3], m[2]+m[4], true
	}
	if !cut {
		return Named{}, false
	}
	left, right = strings.TrimSpace(left), strings.TrimSpace(right)
	for _, way := range [][2]string{{left, right}, {right, left}} {
		word, name := strings.ToLower(strings.TrimSuffix(strings.ToLower(way[0]), " pen")), way[1]
		if c, is := colourWords[word]; is && len(name) > 2 && colourWords[strings.ToLower(name)] == "" {
			return Named{Name: name, Ink: c}, true
		}
		if (len(way[0]) == 1 && way[0] >= "A" && way[0] <= "Z" || isSign(way[0])) && len(name) > 2 {
			return Named{Name: name, Letter: way[0]}, true
		}
	}
	return Named{}, false
}

// isSign says whether a text is one sign that is no letter and no figure, such as
// a coloured dot or a star.
func isSign(text string) bool {
	sign, size := utf8.DecodeRuneInString(text)
	return sign != utf8.RuneError && unicode.Is(unicode.So, sign) && strings.Trim(text[size:], "\uFE0F") == ""
}

// listParts parts a list of dishes at commas and the like.
func listParts(text string) (parts []string) {
	for _, p := range listSplit.Split(text, -1) {
		if p = strings.Trim(p, " .,;•*\t"); p != "" {
			parts = append(parts, p)
		}
	}
	return parts
}

var listSplit = regexp.MustCompile(`\s*[,;|\t•]\s*|\s{3,}|\s+/\s+`)

// pieces reads words in several colours as a key. In a key, or where a dish is
// named, one coloured piece is enough.
func (k *keyReader) pieces(l table.Line, key bool) {
	var found []Named
	inks := map[string]bool{}
	for _, p := range l {
		text := strings.Trim(p.Text, " .,;:|/•-–=\t\u00A0")
		ink, shade := dishColour(p.Ink), dishColour(p.Shade)
		if len(text) < 2 || len(text) > 60 || ink == "" && shade == "" || keyWord.MatchString(text) {
			continue
		}
		inks[ink+shade] = true
		found = append(found, Named{Name: text, Ink: ink, Shade: shade})
	}
	for _, n := range found {
		if key || len(inks) >= 2 && len(found) == len(inks) || k.r.isDish(n.Name) {
			k.name(n, nil)
		}
	}
}

// mostDishes is more than any menu has; what else looks like a dish is none.
const mostDishes = 30

// name keeps a dish of the document, with the colour of its line if that is given.
func (k *keyReader) name(n Named, l table.Line) {
	n.Name = strings.Trim(n.Name, " .,;:•*-–\t")
	if l != nil && n.Ink == "" {
		n.Ink, _ = inksOf([]table.Line{l})
		n.Shade = shadeOf([]table.Line{l})
	}
	if n.Name == "" || len(n.Name) > 80 || len(k.r.plan.Dishes) >= mostDishes || all[strings.ToLower(n.Name)] || nothing[strings.ToLower(n.Name)] || courseWord.MatchString(n.Name) {
		return
	}
	for i, have := range k.r.plan.Dishes {
		if sameName(have.Name, n.Name) {
			k.r.plan.Dishes[i] = mix(have, n)
			k.r.remember(k.r.plan.Dishes[i])
			return
		}
	}
	k.r.plan.Dishes = append(k.r.plan.Dishes, n)
	k.r.remember(n)
}

// courseWord is a course without a dish.
var courseWord = regexp.MustCompile(`(?i)^(?:starter|main|main course|dessert|pudding|side|accompaniment|dish|dish \w|course|menu|name|colou?r|key)$`)

// mix is what two mentions of a dish say together.
func mix(a, b Named) Named {
	for _, f := range []struct{ to, from *string }{{&a.Letter, &b.Letter}, {&a.Ink, &b.Ink}, {&a.Shade, &b.Shade}} {
		if *f.to == "" {
			*f.to = *f.from
		}
	}
	return a
}

// remember keeps a dish among those that words may mean, before the others.
func (r *reader) remember(n Named) {
	for i, have := range r.names {
		if have.Name == n.Name {
			r.names[i] = n
			return
		}
	}
	r.names = append([]Named{n}, r.names...)
}

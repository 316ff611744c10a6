package webpage

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/format/table"
)

// Limits of style sheets; rules beyond are passed over.
const (
	maxRules = 2000
	maxTries = 5_000_000 // comparisons of a rule with an element
)

// sheet is the rules of a page's style elements that give colours and signs to
// words, by the tag, class or identifier that they ask for last.
type sheet struct {
	rules map[string][]rule
	tries int
}

// rule is declarations for elements that the last compound names, inside those
// that the others name.
type rule struct {
	inside  []compound
	last    compound
	weight  int // ids, then classes, then tags (Selectors Level 3, 9)
	declare []declaration
}

type compound struct {
	tag, id string
	classes []string
}

type declaration struct{ property, value string }

var (
	comment  = regexp.MustCompile(`(?s)/\*.*?\*/|<!--|-->`)
	simple   = regexp.MustCompile(`^([a-z][a-z0-9]*|\*)?((?:[.#][\w-]+)*)$`)
	handle   = regexp.MustCompile(`[.#][\w-]+`)
	address  = regexp.MustCompile(`url\([^)]*\)`)
	coloured = regexp.MustCompile(`rgba?\([^)]*\)|#[0-9a-f]{3,8}\b|\b[a-z]+\b`)
)

// styles reads the style elements of a page.
func styles(root *node) *sheet {
	s := &sheet{rules: map[string][]rule{}}
	count := 0
	root.each(func(n *node) bool {
		if n.tag == "style" {
			s.read(comment.ReplaceAllString(n.content(), " "), &count)
		}
		return n.tag != "style"
	})
	return s
}

func (s *sheet) read(text string, count *int) {
	for text != "" && *count < maxRules {
		head, rest, open := strings.Cut(text, "{")
		body, after, shut := strings.Cut(rest, "}")
		if !open || !shut {
			return
		}
		if at := strings.TrimSpace(head); strings.HasPrefix(at, "@") { // rules inside are for other devices; the rest of a page's rules do not nest
			if text = after; strings.Contains(body, "{") {
				text = beyond(rest)
			}
			continue
		}
		text = after
		declare := declarations(body)
		for _, selector := range strings.Split(head, ",") {
			if r, fits := selects(selector); fits && len(declare) > 0 && *count < maxRules {
				*count++
				r.declare = declare
				s.rules[r.last.key()] = append(s.rules[r.last.key()], r)
			}
		}
	}
}

// beyond is what comes after the brace that ends a block of rules.
func beyond(text string) string {
	depth := 1
	for i := range len(text) {
		switch text[i] {
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return text[i+1:]
			}
		}
	}
	return ""
}

// selects reads a selector of tags, classes and identifiers, one inside another.
func selects(selector string) (r rule, fits bool) {
	parts := strings.Fields(strings.ReplaceAll(selector, ">", " "))
	if len(parts) == 0 || len(parts) > 8 {
		return r, false
	}
	for _, part := range parts {
		m := simple.FindStringSubmatch(part)
		if m == nil {
			return r, false
		}
		c := compound{tag: strings.Trim(m[1], "*")}
		if c.tag != "" {
			r.weight++
		}
		for _, h := range handle.FindAllString(m[2], -1) {
			if h[0] == '#' {
				c.id = h[1:]
				r.weight += 10_000
			} else {
				c.classes = append(c.classes, h[1:])
				r.weight += 100
			}
		}
		r.inside = append(r.inside, c)
	}
	last := len(r.inside) - 1
	r.last, r.inside = r.inside[last], r.inside[:last]
	return r, true
}

func (c compound) key() string {
	switch {
	case c.id != "":
		return "#" + c.id
	case len(c.classes) > 0:
		return "." + c.classes[0]
	}
	return c.tag
}

func (c compound) fits(n *node) bool {
	if c.tag != "" && c.tag != n.tag || c.id != "" && c.id != n.attribute("id") {
		return false
	}
	for _, class := range c.classes {
		if !slices.Contains(strings.Fields(n.attribute("class")), class) {
			return false
		}
	}
	return true
}

// declarations are those that this package heeds.
func declarations(body string) (list []declaration) {
	for _, part := range strings.Split(body, ";") {
		property, value, has := strings.Cut(part, ":")
		property = strings.ToLower(strings.TrimSpace(property))
		switch property {
		case "color", "background", "background-color", "font-weight", "font-style", "text-decoration", "text-decoration-line", "display", "visibility":
			if has {
				list = append(list, declaration{property, strings.ToLower(strings.TrimSpace(strings.ReplaceAll(value, "!important", "")))})
			}
		}
	}
	return list
}

// of gives the declarations for an element in the order in which they count;
// path are the elements around it, the outermost first.
func (s *sheet) of(n *node, path []*node) (list []declaration) {
	var found []rule
	keys := []string{"", n.tag}
	if id := n.attribute("id"); id != "" {
		keys = append(keys, "#"+id)
	}
	for _, class := range strings.Fields(n.attribute("class")) {
		keys = append(keys, "."+class)
	}
	for _, key := range keys {
		for _, r := range s.rules[key] {
			if s.tries++; s.tries > maxTries {
				return nil
			}
			if r.last.fits(n) && s.within(r.inside, path) {
				at := len(found)
				for at > 0 && found[at-1].weight > r.weight {
					at--
				}
				found = append(found[:at], append([]rule{r}, found[at:]...)...)
			}
		}
	}
	for _, r := range found {
		list = append(list, r.declare...)
	}
	return list
}

func (s *sheet) within(inside []compound, path []*node) bool {
	for at := len(path) - 1; at >= 0 && len(inside) > 0; at-- {
		s.tries++
		if inside[len(inside)-1].fits(path[at]) {
			inside = inside[:len(inside)-1]
		}
	}
	return len(inside) == 0
}

// colour is the colour in a value of CSS, "" for none that is seen.
func colour(value string) string {
	for _, word := range coloured.FindAllString(address.ReplaceAllString(value, " "), -1) {
		switch {
		case strings.HasPrefix(word, "#") && (len(word) == 5 || len(word) == 9): // with how far it is seen through
			if opaque := word[1+(len(word)-1)*3/4:]; strings.Trim(opaque, "0") == "" {
				return ""
			}
			word = word[:1+(len(word)-1)*3/4]
			fallthrough
		case strings.HasPrefix(word, "#"):
			return table.Colour(word)
		case strings.HasPrefix(word, "rgb"):
			return byFigures(word)
		case namedColours[word] != "":
			return table.Colour(namedColours[word])
		}
	}
	return ""
}

var figures = regexp.MustCompile(`[0-9.]+%?`)

// byFigures is rgb(255, 0, 0) and the like.
func byFigures(value string) string {
	parts := figures.FindAllString(value, -1)
	if len(parts) < 3 {
		return ""
	}
	var rgb string
	for i, part := range parts[:min(len(parts), 4)] {
		share, percent := strings.CutSuffix(part, "%")
		n, err := strconv.ParseFloat(share, 64)
		if err != nil {
			return ""
		}
		if i == 3 {
			if n == 0 {
				return ""
			}
			break
		}
		if percent {
			n = n * 255 / 100
		}
		n = math.Round(min(n, 255))
		rgb += strconv.FormatInt(int64(n)/16, 16) + strconv.FormatInt(int64(n)%16, 16)
	}
	return table.Colour(rgb)
}

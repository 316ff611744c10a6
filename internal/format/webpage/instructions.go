package webpage

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// instructions are the sections of a method, however deep its parts are nested.
// Parts inside a part have both names.
func instructions(v any) []Section {
	var m method
	m.add(v, "")
	return slices.DeleteFunc(m.sections, func(s Section) bool { return len(s.Steps) == 0 })
}

type method struct{ sections []Section }

// step puts a step in the section of that name.
func (m *method) step(section, text string) {
	if text == "" {
		return
	}
	if n := len(m.sections); n == 0 || m.sections[n-1].Name != section {
		m.sections = append(m.sections, Section{Name: section})
	}
	last := &m.sections[len(m.sections)-1]
	last.Steps = append(last.Steps, text)
}

func (m *method) add(v any, section string) {
	switch v := v.(type) {
	case []any:
		for _, e := range inOrder(v) {
			m.add(e, section)
		}
	case object:
		m.addObject(v, section)
	default:
		m.addText(text(v), section)
	}
}

func (m *method) addObject(o object, section string) {
	items := get(o, "itemListElement", "steps", "step", "@list")
	switch {
	case isA(o, "HowToSection"):
		name := line(get(o, "name"))
		if section != "" && name != "" {
			name = section + ": " + name
		} else if name == "" {
			name = section
		}
		if items == nil {
			items = get(o, "text")
		}
		m.add(items, name)
	case isA(o, "HowToStep") || isA(o, "HowToDirection") || isA(o, "HowToTip") || items == nil:
		if inner := get(o, "item"); inner != nil && get(o, "text") == nil {
			m.add(inner, section)
			return
		}
		m.step(section, step(o))
	default:
		m.add(items, section)
	}
}

// addText adds the lines of a text: a step each, a heading as the name of a section.
func (m *method) addText(text, section string) {
	for _, l := range strings.Split(text, "\n") {
		l = strings.TrimSpace(l)
		if heading := strings.TrimLeft(l, "#"); heading != l {
			section = strings.TrimSpace(heading)
			continue
		}
		m.step(section, unnumbered(bare(l)))
	}
}

var (
	numbered   = regexp.MustCompile(`^(?:(?i:step)\s*)?[0-9]{1,2}(?:[.):]\s+|\s*[-–]\s+)`)
	stepNumber = regexp.MustCompile(`^(?i:step)?\s*[0-9]{0,3}[.:]?$`)
)

// unnumbered is a step without its number.
func unnumbered(s string) string { return s[len(numbered.FindString(s)):] }

// step is the text of a HowToStep: its name when that says something else than
// the text, its text, its directions, and its tips marked as such.
func step(o object) string {
	var parts []string
	body := line(get(o, "text"))
	for _, e := range inOrder(listOf(get(o, "itemListElement", "steps"))) {
		inner, is := e.(object)
		s := line(e)
		if is {
			s = step(inner)
		}
		if s != "" && s != body {
			parts = append(parts, s)
		}
	}
	if body == "" || len(parts) == 0 || !strings.Contains(body, parts[0]) {
		body = oneLine(body + " " + strings.Join(parts, " "))
	}
	whole := line(get(o, "name"))
	name := strings.TrimRight(whole, ".…: ")
	switch {
	case body == "":
		body = whole
	case name != "" && !stepNumber.MatchString(name) && !strings.Contains(strings.ToLower(body), strings.ToLower(name)):
		body = name + ": " + body
	}
	if isA(o, "HowToTip") && body != "" {
		return "Tip: " + body
	}
	return unnumbered(body)
}

// inOrder is a list by the positions of its elements, when all have one.
func inOrder(list []any) []any {
	positions := make(map[int]int, len(list))
	for i, e := range list {
		o, is := e.(object)
		if !is {
			return list
		}
		p, err := strconv.Atoi(line(get(o, "position")))
		if err != nil {
			return list
		}
		positions[i] = p
	}
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return positions[a] - positions[b] })
	sorted := make([]any, len(list))
	for i, at := range order {
		sorted[i] = list[at]
	}
	return sorted
}

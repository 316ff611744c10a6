package written

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"

	"plait.example/internal/format/table"
	"plait.example/internal/practical"
)

// Own reads a plan that plait itself wrote as text or JSON; false when it is none.
func Own(name, text string) (Plan, bool) {
	r := &reader{begins: -1, serves: -1, plan: Plan{Name: name}}
	is := strings.HasPrefix(strings.TrimSpace(text), "{") && r.ownJSON(text) || r.ownText(strings.Split(text, "\n"))
	return r.plan, is
}

// ownJSON reads a plan as JSON.
func (r *reader) ownJSON(text string) bool {
	var plan struct {
		Title  string
		Dishes []struct {
			Named
			Allergens []string
		}
		Notes []string
		Rows  *[]struct {
			Clock   practical.TimeOfDay
			Minutes int
			Dish    string
			Text    string
			Setting string
			Check   string
			Safety  string
			Kit     string
		}
	}
	if err := json.Unmarshal([]byte(text), &plan); err != nil || plan.Rows == nil {
		return false
	}
	r.plan.Other = append([]string{plan.Title}, plan.Notes...)
	for _, d := range plan.Dishes {
		r.plan.Dishes = append(r.plan.Dishes, d.Named)
		if len(d.Allergens) > 0 {
			r.other(d.Name + " contains " + strings.Join(d.Allergens, ", "))
		}
	}
	for i, row := range *plan.Rows {
		var dishes []string
		if row.Dish != "" {
			dishes = []string{row.Dish}
		}
		text := row.Text
		if row.Setting != "" && !strings.Contains(text, row.Setting) {
			text += " (" + row.Setting + ")"
		}
		r.plan.Rows = append(r.plan.Rows, Row{
			Number: i + 1, Table: -1, Line: i, Written: row.Clock.String(), Clock: Said, At: row.Clock, Minutes: row.Minutes,
			Dishes: dishes, Text: text, Points: joinLines(row.Check, row.Safety, row.Kit),
		})
	}
	return true
}

func joinLines(parts ...string) string {
	var filled []string
	for _, p := range parts {
		if p != "" {
			filled = append(filled, p)
		}
	}
	return strings.Join(filled, "\n")
}

var (
	ownHead = regexp.MustCompile(`^Time +Min +(Cook +)?Step +Action +(What to do)$`)
	ownRow  = regexp.MustCompile(`^(\d\d?:\d\d)\S* +(\d+) +(?:(?:[12]|-|–|both) +)?(\S+) +(set-up|do|PUT-IN|TAKE-OUT|turn-to|wash-up|serve|rest) +(.*)$`)
	ownDish = regexp.MustCompile(`^  ([A-Z])  (.+?)(?: \| .*)?$`)
)

// ownText reads a plan as text.
func (r *reader) ownText(lines []string) bool {
	head := slices.IndexFunc(lines, func(l string) bool { return ownHead.MatchString(strings.TrimRight(l, " \r")) })
	if head < 0 {
		return false
	}
	within := false
	for i, text := range lines {
		text = strings.TrimRight(text, " \r")
		m := ownRow.FindStringSubmatch(text)
		switch {
		case i >= head && ownHead.MatchString(text):
			within = true
			r.other(text)
		case within && m != nil:
			r.ownRow(m, i)
		case within && strings.HasPrefix(text, "     ") && len(r.entries) > 0:
			r.ownUnder(strings.TrimSpace(text))
		default:
			within = within && text != ""
			if m := ownDish.FindStringSubmatch(text); m != nil && i < head {
				r.plan.Dishes = append(r.plan.Dishes, Named{Letter: m[1], Name: m[2]})
			}
			r.other(text)
		}
	}
	r.settle()
	return true
}

func (r *reader) ownRow(m []string, i int) {
	e := entry{table: -1, line: i, mode: clockMode, written: m[1], minutes: number(m[2]), lines: []table.Line{{{Text: m[5]}}}}
	e.stamp, _ = readStamp(m[1])
	if m[3] != "all" {
		if dish := strings.TrimRight(strings.SplitN(m[3], "+", 2)[0], "0123456789"); dish != "" {
			e.dishes = []string{dish}
		}
	}
	e.besides = []string{m[2], m[3], m[4]}
	r.entries = append(r.entries, e)
}

// ownUnder reads a line that stands under a row: a label of its own, or more of the text.
func (r *reader) ownUnder(text string) {
	e := &r.entries[len(r.entries)-1]
	for _, label := range []string{"-> ", "Kit: ", "Check: ", "Safety: ", "Steps: "} {
		if strings.HasPrefix(text, label) {
			e.points = append(e.points, text)
			return
		}
	}
	if n := len(e.points); n > 0 {
		e.points[n-1] += " " + text
		return
	}
	e.lines[len(e.lines)-1] = append(e.lines[len(e.lines)-1], table.Piece{Text: " " + text})
}

func number(s string) (n int) {
	for _, d := range s {
		n = n*10 + int(d-'0')
	}
	return n
}

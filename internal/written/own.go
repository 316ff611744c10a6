package written

import (
	"encoding/json"
	"regexp"
	"strings"

	"plait.example/internal/format/table"
	"plait.example/internal/practical"
)

// ownJSON reads a plan that plait wrote as JSON; false when it is none.
func (r *reader) ownJSON(blocks []table.Block) bool {
	if len(blocks) == 0 || blocks[0].Table != nil || !strings.HasPrefix(strings.TrimSpace(blocks[0].Line.Text()), "{") {
		return false
	}
	var b strings.Builder
	for _, block := range blocks {
		b.WriteString(block.Line.Text() + "\n")
	}
	var plan struct {
		Title  string
		Dishes []Named
		Notes  []string
		Rows   *[]struct {
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
	if err := json.Unmarshal([]byte(b.String()), &plan); err != nil || plan.Rows == nil {
		return false
	}
	r.plan.Dishes, r.plan.Other = plan.Dishes, append([]string{plan.Title}, plan.Notes...)
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

// ownText reads a plan that plait wrote as text; false when it is none.
func (r *reader) ownText(blocks []table.Block) bool {
	head := -1
	for i, b := range blocks {
		if b.Table == nil && ownHead.MatchString(strings.TrimRight(b.Line.Text(), " ")) {
			head = i
			break
		}
	}
	if head < 0 {
		return false
	}
	for i, b := range blocks {
		text := b.Line.Text()
		if m := ownRow.FindStringSubmatch(text); m != nil && i > head {
			r.ownRow(m, i)
			continue
		}
		if i > head && strings.HasPrefix(text, "     ") && len(r.entries) > 0 {
			r.ownUnder(strings.TrimSpace(text))
			continue
		}
		if m := ownDish.FindStringSubmatch(text); m != nil && i < head {
			r.plan.Dishes = append(r.plan.Dishes, Named{Letter: m[1], Name: m[2]})
		}
		r.other(text)
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

package paper

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// ReadText reads a plan that Text wrote. What cannot be read is a fault with
// its line, and the rest is read all the same; the plan is never nil. Threads,
// names of demands and costs are not on paper and stay empty.
func ReadText(b []byte) (*timeplan.Plan, practical.Faults) {
	r := &textReader{plan: &timeplan.Plan{Hours: 24, Round: 1, Cooks: 1, Status: timeplan.Feasible}}
	for i, line := range strings.Split(strings.ReplaceAll(string(b), "\r\n", "\n"), "\n") {
		r.lines = append(r.lines, textLine{number: i + 1, text: strings.TrimRight(line, " ")})
	}
	r.heading()
	for r.next < len(r.lines) {
		r.section()
	}
	r.complete()
	nameRows(r.plan.Rows)
	return r.plan, r.faults
}

// textLine is a line and its number from 1.
type textLine struct {
	number int
	text   string
}

// indent is how many spaces a line begins with; -1 for an empty line.
func (l textLine) indent() int {
	if l.text == "" {
		return -1
	}
	return len(l.text) - len(strings.TrimLeft(l.text, " "))
}

type textReader struct {
	lines  []textLine
	next   int
	plan   *timeplan.Plan
	cells  []string // of each row and then each wait, until the dishes are all known
	faults practical.Faults
}

func (r *textReader) fault(line int, field, message, hint string) {
	r.faults = append(r.faults, practical.Fault{Line: line, Field: field, Message: message, Hint: hint, Code: practical.Invalid})
}

// take is the line at hand with the lines set in more deeply after it, as one
// text. The line's own text is what stands from column from on.
func (r *textReader) take(from int) string {
	first := r.lines[r.next]
	parts := []string{string([]rune(first.text)[min(from, width(first.text)):])}
	deep := first.indent()
	for r.next++; r.next < len(r.lines) && r.lines[r.next].indent() > deep; r.next++ {
		parts = append(parts, r.lines[r.next].text)
	}
	return unwrap(parts)
}

// Patterns of the sentences at the head.
var (
	clockPattern = regexp.MustCompile(`^Set-up from (\S+)( [ap]m)?\. Clock (\S+)( [ap]m)? to (\S+)( [ap]m)?\. (One cook|Two cooks)\. Times to (the minute|(\d+) minutes)\.$`)
	endPattern   = regexp.MustCompile(`^(Does not fit: no plan was found\.|(Does not fit: f|F)inishes (\d\d?:\d\d)(, (\d+) minutes? over)?\.)( No plan can finish before (\d\d?:\d\d)\.)?( This is the earliest\.)?( \d+ minutes? in hand\.)?$`)
	seedPattern  = regexp.MustCompile(`^Seed (-?\d+): `)
)

// heading reads title, date, clock and finish.
func (r *textReader) heading() {
	if r.lines[0].text == "" {
		r.fault(1, "title", "the first line is empty", "begin with the plan's title, underlined with =")
		return
	}
	r.plan.Title = r.take(0)
	if r.next < len(r.lines) && strings.Trim(r.lines[r.next].text, "=") == "" {
		r.next++
	}
	read := map[string]bool{}
	for ; r.next < len(r.lines) && r.lines[r.next].text != ""; r.next++ {
		line := r.lines[r.next]
		switch d, err := time.Parse("Monday 2 January 2006", line.text); {
		case err == nil:
			r.plan.Date = d.Format(time.DateOnly)
		case clockPattern.MatchString(line.text):
			r.clock(line)
			read["clock"] = true
		case endPattern.MatchString(line.text):
			r.end(line)
			read["finish"] = true
		default:
			r.fault(line.number, "", fmt.Sprintf("%q is not a line of the heading", line.text), "title, date, clock, finish; then an empty line")
		}
	}
	if !read["clock"] {
		r.fault(1, "clock", "the heading does not say when the clock starts", `such as "Set-up from 08:30. Clock 09:00 to 12:00. One cook. Times to the minute."`)
	}
	if !read["finish"] {
		r.fault(1, "finish", "the heading does not say when the plan finishes", `such as "Finishes 11:44."`)
	}
}

// clock reads the clock sentence, which also tells a 12-hour clock.
func (r *textReader) clock(line textLine) {
	m := clockPattern.FindStringSubmatch(line.text)
	if m[2] != "" {
		r.plan.Hours = 12
	}
	setUp, err := practical.ParseTimeOfDay(m[1] + m[2])
	if err != nil {
		r.fault(line.number, "set-up", err.Error(), "")
	}
	r.plan.SetUp = setUp
	for i, to := range map[int]*practical.TimeOfDay{3: &r.plan.Start, 5: &r.plan.Allowed} {
		t, err := practical.ParseTimeOfDay(m[i] + m[i+1])
		if err != nil {
			r.fault(line.number, "clock", err.Error(), "")
		}
		*to = after(earliest(r.plan), t, day)
	}
	if m[7] == "Two cooks" {
		r.plan.Cooks = 2
	}
	if m[9] != "" {
		r.plan.Round = max(1, r.number(line.number, "clock", m[9]))
	}
}

func (r *textReader) end(line textLine) {
	m := endPattern.FindStringSubmatch(line.text)
	if strings.HasPrefix(m[0], "Does not fit") {
		r.plan.Status = timeplan.Infeasible
	}
	if m[3] != "" {
		r.plan.Finish = r.time(line.number, "finish", m[3])
	}
	if m[5] != "" {
		r.plan.Over = r.number(line.number, "over", m[5])
	}
	if m[7] != "" {
		r.plan.Bound = r.time(line.number, "bound", m[7])
	}
	if m[8] != "" {
		r.plan.Status = timeplan.Optimal
	}
}

// time reads a time of the plan: the first that the clock can mean.
func (r *textReader) time(line int, field, s string) practical.TimeOfDay {
	t, err := practical.ParseTimeOfDay(s)
	if err != nil {
		r.fault(line, field, err.Error(), "")
		return r.plan.SetUp
	}
	if r.plan.Hours == 12 {
		return after(earliest(r.plan), t, day/2)
	}
	return after(earliest(r.plan), t, day)
}

func (r *textReader) number(line int, field, s string) int {
	n, err := strconv.Atoi(s)
	if err != nil {
		r.fault(line, field, fmt.Sprintf("%q is not a number", s), "write whole minutes or degrees in figures")
	}
	return n
}

// section reads one heading with what stands under it.
func (r *textReader) section() {
	line := r.lines[r.next]
	switch {
	case line.text == "", line.text == legend:
		r.next++
	case line.text == headConflict:
		r.each(func(_ int, s string) { r.plan.Conflict = append(r.plan.Conflict, timeplan.Demand{Text: s}) })
	case line.text == headWaysOut:
		r.each(r.wayOut)
	case line.text == headNotes:
		r.each(func(_ int, s string) { r.plan.Notes = append(r.plan.Notes, s) })
	case line.text == headDishes:
		r.each(r.dish)
	case line.text == headOvens:
		r.each(r.setting)
	case line.text == headSafety:
		r.each(func(int, string) {})
	case strings.HasPrefix(line.text, headWaits+" "):
		r.each(r.wait)
	case strings.HasPrefix(line.text, headRows) && strings.HasSuffix(line.text, headText):
		r.rows(width(line.text) - width(headText))
	case seedPattern.MatchString(line.text):
		seed, err := strconv.ParseInt(seedPattern.FindStringSubmatch(line.text)[1], 10, 64)
		if err != nil {
			r.fault(line.number, "seed", "the seed is not a number of 64 bits", "")
		}
		r.plan.Seed = seed
		r.next++
	default:
		r.fault(line.number, "", fmt.Sprintf("%q is not a part of a plan", clean(line.text)), "headings and rows as plait writes them")
		r.next++
	}
}

// each reads the set-in items under a heading, a bullet before each or not.
func (r *textReader) each(item func(line int, s string)) {
	bulleted := r.lines[r.next].text != headDishes && !strings.HasPrefix(r.lines[r.next].text, headWaits)
	for r.next++; r.next < len(r.lines) && r.lines[r.next].indent() == 2; {
		number := r.lines[r.next].number
		text := r.take(2)
		if bulleted {
			text = strings.TrimPrefix(text, "- ")
		}
		item(number, strings.TrimSpace(text))
	}
}

func (r *textReader) wayOut(line int, s string) {
	way := timeplan.WayOut{Text: s}
	if text, finish, ok := strings.Cut(s, " | finishes "); ok {
		way.Text, way.Finish = text, r.time(line, "ways_out", finish)
	}
	r.plan.WaysOut = append(r.plan.WaysOut, way)
}

func (r *textReader) dish(line int, s string) {
	parts := strings.Split(s, " | ")
	letter, name, _ := strings.Cut(strings.TrimSuffix(parts[0], " |"), " ")
	d := timeplan.Dish{Letter: letter, Name: strings.TrimPrefix(strings.TrimSpace(name), "| ")}
	for _, part := range parts[1:] {
		if list, ok := strings.CutPrefix(part, "contains "); ok {
			d.Allergens = strings.Split(list, ", ")
		}
		for heat, words := range heatWords {
			if part == words {
				d.Heat = heat
			}
		}
	}
	if d.Heat == "" {
		r.fault(line, "dishes", fmt.Sprintf("dish %s does not say how it is served", letter), "such as | served hot")
	}
	r.plan.Dishes = append(r.plan.Dishes, d)
}

package paper

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// The headings of the text form. A heading stands at the first column; rows
// begin with a time, everything else is set in.
const (
	headConflict = "These cannot hold together:"
	headWaysOut  = "Ways out, the cheapest first:"
	headDishes   = "Dishes"
	headRows     = "Time"
	headWaits    = "Waiting"
	headOvens    = "Oven"
	headNotes    = "Notes"
	headSafety   = "Food safety"
	headText     = "What to do"
	seedSentence = "Seed %d: the same practical with the same seed gives this plan again."
)

// The labels of the lines under a row.
const (
	markPinned  = "*" // after a time
	markOutside = "+"
	legend      = "After a time, * means pinned, + means after the clock has ended."
	labelWhere  = "-> "
	labelSteps  = "Steps: "
	labelKit    = "Kit: "
	labelCheck  = "Check: "
	labelSafety = "Safety: "
	anOven      = "oven" // the name of an oven that has no other
	forAll      = "all"  // a row for no dish in particular
)

// Text writes the plan as plain text of at most 100 columns, lines ending in a
// line feed. ReadText reads it back.
func Text(p *timeplan.Plan) []byte {
	w := &textWriter{plan: printed(p)}
	w.sole = soleOven(w.plan)
	w.heading()
	w.reasons()
	w.dishes()
	w.rows()
	w.waits()
	w.ovens()
	w.bullets(headNotes, w.plan.Notes)
	w.bullets(headSafety, safety)
	w.line("")
	w.line(fmt.Sprintf(seedSentence, w.plan.Seed))
	return []byte(w.b.String())
}

// textWriter writes a plan that has been through printed.
type textWriter struct {
	plan *timeplan.Plan
	sole string // the name of the only oven, which need not be said
	b    strings.Builder
}

func (w *textWriter) line(s string) {
	w.b.WriteString(strings.TrimRight(s, " "))
	w.b.WriteByte('\n')
}

// block writes a text after a prefix; its further lines are set in.
func (w *textWriter) block(prefix, text string, in int) {
	for i, l := range wrap(text, columns-width(prefix), columns-in) {
		if i == 0 {
			w.line(prefix + l)
		} else {
			w.line(strings.Repeat(" ", in) + l)
		}
	}
}

func (w *textWriter) time(t practical.TimeOfDay) string { return t.Write(w.plan.Hours) }

func (w *textWriter) heading() {
	w.block("", w.plan.Title, 2)
	w.line(strings.Repeat("=", min(width(w.plan.Title), columns)))
	if w.plan.Date != "" {
		w.line(dateWords(w.plan.Date))
	}
	w.line(clockSentence(w.plan))
	w.line(finishSentence(w.plan))
}

func (w *textWriter) bullets(heading string, texts []string) {
	if len(texts) == 0 {
		return
	}
	w.line("")
	w.line(heading)
	for _, t := range texts {
		w.block("  - ", t, 4)
	}
}

// reasons says why it does not fit, and what would help.
func (w *textWriter) reasons() {
	var demands, ways []string
	for _, d := range w.plan.Conflict {
		demands = append(demands, d.Text)
	}
	for _, o := range w.plan.WaysOut {
		way := o.Text
		if o.Finish > 0 {
			way += " | finishes " + w.time(o.Finish)
		}
		ways = append(ways, way)
	}
	w.bullets(headConflict, demands)
	w.bullets(headWaysOut, ways)
}

func (w *textWriter) dishes() {
	if len(w.plan.Dishes) == 0 {
		return
	}
	w.line("")
	w.line(headDishes)
	for _, d := range w.plan.Dishes {
		said := []string{d.Name, heatWords[d.Heat]}
		if len(d.Allergens) > 0 {
			said = append(said, "contains "+strings.Join(d.Allergens, ", "))
		}
		w.block("  "+d.Letter+"  ", strings.TrimPrefix(strings.Join(said, " | "), " "), 5)
	}
}

// rows writes the table. What to do begins where the heading says.
func (w *textWriter) rows() {
	if len(w.plan.Rows) == 0 {
		return
	}
	cook := ""
	if w.plan.Cooks > 1 {
		cook = "Cook  "
	}
	head := fmt.Sprintf("%-6s %3s  %s%-5s %-8s  ", headRows, "Min", cook, "Step", "Action")
	w.line("")
	w.line(head + headText)
	places := putPlaces{}
	for _, r := range w.plan.Rows {
		w.row(r, places.usual(r), width(head))
		places.note(r)
	}
	if slices.ContainsFunc(w.plan.Rows, func(r timeplan.Row) bool { return r.Pinned || r.Outside }) {
		w.line("")
		w.line(legend)
	}
}

// cookMark is which of a pair does a row; no cook in particular means both.
func cookMark(cook int) string {
	if cook == 0 {
		return "both"
	}
	return strconv.Itoa(cook)
}

// putPlaces is where each step's food was put, so that a take-out need not say it again.
type putPlaces map[string]whereabouts

type whereabouts struct {
	place practical.Place
	oven  string
}

func (m putPlaces) note(r timeplan.Row) {
	if r.Action == timeplan.PutIn && len(r.Steps) > 0 {
		m[r.Steps[0]] = whereabouts{r.Place, r.Oven}
	}
}

// usual is where a row takes place if it says nothing of it.
func (m putPlaces) usual(r timeplan.Row) whereabouts {
	if r.Action == timeplan.TakeOut && len(r.Steps) > 0 {
		return m[r.Steps[0]]
	}
	return whereabouts{place: usualPlace(r.Action)}
}

// row writes one row with the lines under it, which begin at column in.
func (w *textWriter) row(r timeplan.Row, usual whereabouts, in int) {
	time, cook, cell := w.time(r.Clock), "", rowCell(w.plan, r)
	if r.Pinned {
		time += markPinned
	}
	if r.Outside {
		time += markOutside
	}
	if w.plan.Cooks > 1 {
		cook = fmt.Sprintf("%-4s  ", cookMark(r.Cook))
	}
	w.block(fmt.Sprintf("%-6s %3d  %s%-5s %-8s  ", time, r.Minutes, cook, cell, actionMark(r.Action)), r.Text, in+2)
	under := func(label, text string) {
		if text != "" {
			w.block(strings.Repeat(" ", in), label+text, in+2)
		}
	}
	under(labelWhere, strings.Join(w.where(r, usual), " | "))
	if wideCell(w.plan, r) {
		under(labelSteps, strings.Join(r.Steps, ", "))
	}
	under(labelKit, r.Kit)
	under(labelCheck, r.Check)
	under(labelSafety, r.Safety)
}

// where is the parts of the line that says when it comes out, where it is and
// how hot.
func (w *textWriter) where(r timeplan.Row, usual whereabouts) []string {
	var parts []string
	if r.Until > 0 {
		parts = append(parts, "out at "+w.time(r.Until))
	}
	if place := w.place(r.Place, r.Oven); place != w.place(usual.place, usual.oven) && place != "" {
		parts = append(parts, place)
	}
	return append(parts, heatParts(r.Celsius, r.Setting)...)
}

// place is a place's words, with the oven's name in a kitchen of several.
func (w *textWriter) place(p practical.Place, oven string) string {
	if p == practical.AtOven && oven != "" && oven != w.sole {
		return fmt.Sprintf(`oven "%s"`, oven)
	}
	return placeWords[p]
}

// heatParts is a temperature and its words, the temperature apart only where
// the words do not begin with it.
func heatParts(celsius int, words string) []string {
	var parts []string
	if words != "" {
		parts = append(parts, "set to "+words)
	}
	if celsius != celsiusOf(words) {
		parts = append(parts, fmt.Sprintf("recipe %d °C", celsius))
	}
	return parts
}

// celsiusOf is the figure that a setting begins with; 0 when it begins otherwise.
func celsiusOf(words string) int {
	figure, _, ok := strings.Cut(words, " °C")
	n, err := strconv.Atoi(figure)
	if !ok || err != nil || n < 0 {
		return 0
	}
	return n
}

// actionMark is how the text form writes an action: pairs stand out in capitals.
func actionMark(a timeplan.Action) string {
	if a == timeplan.PutIn || a == timeplan.TakeOut {
		return strings.ToUpper(string(a))
	}
	return string(a)
}

// actionOf reads an action's mark; empty when it is none.
func actionOf(mark string) timeplan.Action {
	for _, a := range []timeplan.Action{
		timeplan.SetUp, timeplan.Do, timeplan.PutIn, timeplan.TakeOut,
		timeplan.TurnTo, timeplan.WashUp, timeplan.Serve, timeplan.Rest,
	} {
		if actionMark(a) == mark {
			return a
		}
	}
	return ""
}

func (w *textWriter) waits() {
	if len(w.plan.Waits) == 0 {
		return
	}
	w.line("")
	w.line(headWaits + " (food is in its place and the hands are elsewhere)")
	for _, v := range w.plan.Waits {
		parts := []string{
			w.place(v.Place, v.Oven),
			fmt.Sprintf("%s to %s", w.time(v.From), w.time(v.Until)),
			fmt.Sprintf("needs %d minutes or more", v.Least),
		}
		if v.Most > 0 {
			parts[2] = fmt.Sprintf("needs %d to %d minutes", v.Least, v.Most)
		}
		if v.Celsius > 0 {
			parts = append(parts, fmt.Sprintf("%d °C", v.Celsius))
		}
		switch {
		case v.Attention == practical.Stay:
			parts = append(parts, "do not leave it")
		case v.Attention == practical.Look && v.Every > 0:
			parts = append(parts, fmt.Sprintf("look every %d minutes", v.Every))
		case v.Attention == practical.Look:
			parts = append(parts, "look at it")
		}
		w.block(fmt.Sprintf("  %-5s ", cell(w.plan, v.Dish, []string{v.Step})), strings.Join(parts, " | "), 8)
	}
}

func (w *textWriter) ovens() {
	if len(w.plan.Ovens) == 0 {
		return
	}
	w.line("")
	w.line(headOvens)
	for _, s := range w.plan.Ovens {
		parts := []string{fmt.Sprintf("turn at %s", w.time(s.Turned)), "hot by " + w.time(s.Hot), "until " + w.time(s.Until)}
		if s.Oven != anOven {
			parts = append(parts, fmt.Sprintf(`oven "%s"`, s.Oven))
		}
		w.block("  - ", strings.Join(append(parts, heatParts(s.Celsius, s.Words)...), " | "), 4)
	}
}

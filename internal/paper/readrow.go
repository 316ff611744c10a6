package paper

import (
	"fmt"
	"regexp"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// rows reads the table; what to do begins at column in.
func (r *textReader) rows(in int) {
	for r.next++; r.next < len(r.lines) && r.lines[r.next].text != ""; {
		line := r.lines[r.next]
		if line.indent() > 0 {
			r.fault(line.number, "rows", "this line belongs to no row", "a row begins with its time at the first column")
			r.next++
			continue
		}
		if row, ok := r.rowHead(line, in); ok {
			r.rowLines(&row, in)
			r.plan.Rows = append(r.plan.Rows, row)
		} else {
			r.next++
		}
	}
}

// rowHead reads time, minutes, cook, step and action, and leaves what to do.
func (r *textReader) rowHead(line textLine, in int) (timeplan.Row, bool) {
	rest := line.text
	word := func() string {
		w, left, _ := strings.Cut(strings.TrimLeft(rest, " "), " ")
		rest = left
		return w
	}
	clock, minutes := word(), word()
	clock, outside := strings.CutSuffix(clock, markOutside)
	clock, pinned := strings.CutSuffix(clock, markPinned)
	row := timeplan.Row{Pinned: pinned, Outside: outside}
	before := len(r.faults)
	row.At = r.time(line.number, "clock", clock)
	row.Clock = row.At
	row.Minutes = r.number(line.number, "minutes", minutes)
	if r.plan.Cooks > 1 {
		if cook := word(); cook != cookMark(0) {
			row.Cook = r.number(line.number, "cook", cook)
		}
	}
	step := word()
	mark := word()
	row.Action = actionOf(mark)
	if row.Action == "" {
		r.fault(line.number, "action", fmt.Sprintf("%q is not an action", mark), "set-up, do, PUT-IN, TAKE-OUT, turn-to, wash-up, serve or rest")
	}
	if len(r.faults) > before {
		return row, false
	}
	r.cells = append(r.cells, step)
	r.lines[r.next].text = strings.Repeat(" ", in) + strings.TrimLeft(rest, " ")
	return row, true
}

// rowLines reads what to do and the lines under it: a label begins at column
// in, the rest of a text is set in further.
func (r *textReader) rowLines(row *timeplan.Row, in int) {
	text := []string{r.lines[r.next].text}
	for r.next++; r.next < len(r.lines) && r.lines[r.next].indent() > in; r.next++ {
		text = append(text, r.lines[r.next].text)
	}
	row.Text = unwrap(text)
	for r.next < len(r.lines) && r.lines[r.next].indent() == in {
		number := r.lines[r.next].number
		r.under(number, row, r.take(in))
	}
}

// under reads one labelled line.
func (r *textReader) under(line int, row *timeplan.Row, text string) {
	for label, to := range map[string]*string{labelKit: &row.Kit, labelCheck: &row.Check, labelSafety: &row.Safety} {
		if rest, ok := strings.CutPrefix(text, label); ok {
			*to = rest
			return
		}
	}
	if rest, ok := strings.CutPrefix(text, labelSteps); ok {
		row.Steps = strings.Split(rest, ", ")
		return
	}
	rest, ok := strings.CutPrefix(text, labelWhere)
	if !ok {
		r.fault(line, "rows", fmt.Sprintf("%q has no label", clean(text)), "-> , Steps: , Kit: , Check: or Safety: ")
		return
	}
	for _, part := range strings.Split(rest, " | ") {
		r.where(line, row, part)
	}
}

// placeOf reads a place's words, with an oven's name after it.
func placeOf(part string) (practical.Place, string, bool) {
	for place, words := range placeWords {
		if part == words {
			return place, "", true
		}
	}
	if name, ok := ovenName(part); ok {
		return practical.AtOven, name, true
	}
	return "", "", false
}

// ovenName reads oven "left".
func ovenName(part string) (string, bool) {
	name, ok := strings.CutPrefix(part, `oven "`)
	return strings.TrimSuffix(name, `"`), ok && strings.HasSuffix(name, `"`)
}

func (r *textReader) where(line int, row *timeplan.Row, part string) {
	if due, ok := strings.CutPrefix(part, "out at "); ok {
		row.Until = r.time(line, "until", due)
		return
	}
	if place, oven, ok := placeOf(part); ok {
		row.Place, row.Oven = place, oven
		return
	}
	if !r.heat(line, part, &row.Celsius, &row.Setting) {
		r.fault(line, "rows", fmt.Sprintf("%q is neither a time, a place nor a setting", part), "such as out at 10:05 | oven | set to 200 °C")
	}
}

// heat reads what heatParts wrote.
func (r *textReader) heat(line int, part string, celsius *int, words *string) bool {
	if figure, ok := strings.CutPrefix(part, "recipe "); ok {
		*celsius = r.number(line, "celsius", strings.TrimSuffix(figure, " °C"))
		return true
	}
	set, ok := strings.CutPrefix(part, "set to ")
	if !ok {
		return false
	}
	*words, *celsius = set, celsiusOf(set)
	return true
}

// needPattern is how long a wait may be.
var needPattern = regexp.MustCompile(`^needs (\d+)( or more|( to (\d+))) minutes$|^needs (\d+) minutes or more$`)

func (r *textReader) wait(line int, s string) {
	step, rest, _ := strings.Cut(s, " ")
	w := timeplan.Wait{}
	for i, part := range strings.Split(strings.TrimSpace(rest), " | ") {
		if i == 0 {
			place, oven, ok := placeOf(part)
			if !ok {
				r.fault(line, "waits", fmt.Sprintf("%q is not a place", part), "such as oven, fridge, side")
			}
			w.Place, w.Oven = place, oven
			continue
		}
		r.waitPart(line, &w, part)
	}
	w.Step = step
	r.plan.Waits = append(r.plan.Waits, w)
}

// waitPart reads one part of a wait after its place.
func (r *textReader) waitPart(line int, w *timeplan.Wait, part string) {
	from, until, isTimes := strings.Cut(part, " to ")
	switch m := needPattern.FindStringSubmatch(part); {
	case m != nil && m[5] != "":
		w.Least = r.number(line, "least", m[5])
	case m != nil:
		w.Least, w.Most = r.number(line, "least", m[1]), r.number(line, "most", m[4])
	case part == "do not leave it":
		w.Attention = practical.Stay
	case part == "look at it":
		w.Attention = practical.Look
	case strings.HasPrefix(part, "look every "):
		w.Attention = practical.Look
		w.Every = r.number(line, "every", strings.TrimSuffix(strings.TrimPrefix(part, "look every "), " minutes"))
	case strings.HasSuffix(part, " °C"):
		w.Celsius = r.number(line, "celsius", strings.TrimSuffix(part, " °C"))
	case isTimes:
		w.From, w.Until = r.time(line, "from", from), r.time(line, "until", until)
	default:
		r.fault(line, "waits", fmt.Sprintf("%q is not a part of a wait", part), "place, times, what it needs, heat, how to watch it")
	}
}

func (r *textReader) setting(line int, s string) {
	v := timeplan.Setting{Oven: anOven}
	for _, part := range strings.Split(s, " | ") {
		key, rest := part, ""
		if name, ok := ovenName(part); ok {
			v.Oven = name
			continue
		}
		for _, k := range []string{"turn at ", "hot by ", "until "} {
			if after, ok := strings.CutPrefix(part, k); ok {
				key, rest = k, after
				break
			}
		}
		switch key {
		case "turn at ":
			v.Turned = r.time(line, "turned", rest)
		case "hot by ":
			v.Hot = r.time(line, "hot", rest)
		case "until ":
			v.Until = r.time(line, "until", rest)
		default:
			if !r.heat(line, part, &v.Celsius, &v.Words) {
				r.fault(line, "ovens", fmt.Sprintf("%q is not a part of a setting", part), "such as turn at 08:57 | hot by 09:10 | until 10:41 | set to 200 °C")
			}
		}
	}
	r.plan.Ovens = append(r.plan.Ovens, v)
}

// complete reads the cells now that all dishes are known, and says again what
// a row need not say: where a take-out is, which the only oven is.
func (r *textReader) complete() {
	sole, places := soleOven(r.plan), putPlaces{}
	for i := range r.plan.Rows {
		row := &r.plan.Rows[i]
		dish, steps := readCell(r.plan, r.cells[i])
		row.Dish = dish
		if steps != nil {
			row.Steps = steps
		}
		if usual := places.usual(*row); row.Place == "" {
			row.Place, row.Oven = usual.place, usual.oven
		}
		if row.Place == practical.AtOven && row.Oven == "" {
			row.Oven = sole
		}
		places.note(*row)
	}
	for i := range r.plan.Waits {
		w := &r.plan.Waits[i]
		dish, steps := readCell(r.plan, w.Step)
		w.Dish, w.Step = dish, strings.Join(steps, "+")
		if w.Place == practical.AtOven && w.Oven == "" {
			w.Oven = sole
		}
	}
}

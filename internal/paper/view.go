package paper

import (
	"fmt"
	"strings"

	"plait.example/internal/colour"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// view is a plan as HTML and PDF lay it out.
type view struct {
	Title, Date, Clock, Finish string
	Fits                       bool
	Conflict, WaysOut          []string
	Key                        []dishKey
	Bands                      []band
	Ovens, Notes               []string
	Safety                     []string
}

// dishKey is a dish in the key.
type dishKey struct {
	Mark mark
	Name string
	Say  string // how it is served, what it contains
}

// mark is what tells a dish: letter, colour and shape together.
type mark struct {
	Index  int // of the dish; -1: a row for all
	Letter string
	Ink    colour.DishInk
}

// band is a stretch of rows under a line that says what they are.
type band struct {
	Title string
	Rows  []line
}

// line is one row of the plan. Empty fields are not shown.
type line struct {
	Time, Cook string
	Pinned     bool
	Mark       mark
	Tag        string // in a word, what kind of row
	Text       string
	Due        string // of a put-in: when it comes out
	Since      string // of a take-out: when it went in
	Minutes    string
	Setting    string
	Kit        string
	Check      string
	Safety     string
}

// tags is the word beside a dish's mark.
var tags = map[timeplan.Action]string{
	timeplan.PutIn: "IN", timeplan.TakeOut: "OUT", timeplan.TurnTo: "OVEN",
	timeplan.WashUp: "WASH UP", timeplan.Serve: "SERVE", timeplan.Rest: "REST",
}

// viewOf makes the view of a plan. All texts are clean.
func viewOf(p *timeplan.Plan) view {
	v := view{
		Title: clean(p.Title), Date: dateWords(clean(p.Date)), Clock: clockSentence(p), Finish: finishSentence(p),
		Fits: p.Status != timeplan.Infeasible && p.Over == 0, Safety: safety,
	}
	if v.Title == "" {
		v.Title = "Time plan"
	}
	for _, d := range p.Conflict {
		v.Conflict = append(v.Conflict, clean(d.Text))
	}
	for _, w := range p.WaysOut {
		way, finish := clean(w.Text), w.Finish.Write(p.Hours)
		if w.Finish > 0 && !strings.Contains(way, finish) {
			way += ": then it finishes at " + finish
		}
		v.WaysOut = append(v.WaysOut, way)
	}
	for i, d := range p.Dishes {
		said := []string{heatWords[d.Heat]}
		if len(d.Allergens) > 0 {
			said = append(said, "contains "+clean(strings.Join(d.Allergens, ", ")))
		}
		v.Key = append(v.Key, dishKey{Mark: markOf(p, d.Letter, i), Name: clean(d.Name), Say: strings.TrimPrefix(strings.Join(said, "; "), "; ")})
	}
	for _, s := range p.Ovens {
		v.Ovens = append(v.Ovens, ovenSentence(p, s))
	}
	for _, n := range p.Notes {
		v.Notes = append(v.Notes, clean(n))
	}
	v.Bands = bands(p)
	return v
}

func ovenSentence(p *timeplan.Plan, s timeplan.Setting) string {
	name := ""
	if soleOven(p) == "" && s.Oven != "" {
		name = clean(s.Oven) + ": "
	}
	return fmt.Sprintf("%sturn to %s at %s; hot by %s; stays so until %s.", name, clean(s.Words),
		s.Turned.Write(p.Hours), s.Hot.Write(p.Hours), s.Until.Write(p.Hours))
}

func markOf(p *timeplan.Plan, letter string, index int) mark {
	if index < 0 {
		if _, index = p.DishOf(letter); index < 0 || letter == "" {
			return mark{Index: -1, Letter: clean(letter)}
		}
	}
	return mark{Index: index, Letter: clean(letter), Ink: colour.Ink(index)}
}

// bands parts the rows: set-up, the clock, and what runs over.
func bands(p *timeplan.Plan) []band {
	var all []band
	title := func(r timeplan.Row) string {
		switch {
		case r.Outside:
			return fmt.Sprintf("After the clock has ended at %s", p.Allowed.Write(p.Hours))
		case r.At < p.Start:
			return "Set-up: only these jobs before the clock starts"
		case r.End() > p.Allowed && p.Over > 0:
			return fmt.Sprintf("The clock ends at %s: from here on it does not fit", p.Allowed.Write(p.Hours))
		}
		return fmt.Sprintf("The clock starts at %s", p.Start.Write(p.Hours))
	}
	went := putTimes{}
	for _, r := range p.Rows {
		t := title(r)
		if len(all) == 0 || all[len(all)-1].Title != t && r.Action != timeplan.SetUp {
			all = append(all, band{Title: t})
		}
		went.note(r)
		b := &all[len(all)-1]
		b.Rows = append(b.Rows, lineOf(p, r, went))
	}
	return all
}

// putTimes is when each step's food was put in.
type putTimes map[string]practical.TimeOfDay

func (m putTimes) note(r timeplan.Row) {
	if r.Action == timeplan.PutIn && len(r.Steps) > 0 {
		m[r.Steps[0]] = r.Clock
	}
}

func lineOf(p *timeplan.Plan, r timeplan.Row, went putTimes) line {
	l := line{
		Time: r.Clock.Write(p.Hours), Pinned: r.Pinned, Mark: markOf(p, r.Dish, -1), Tag: tags[r.Action],
		Text: clean(r.Text), Minutes: fmt.Sprint(r.Minutes), Kit: clean(r.Kit), Check: clean(r.Check), Safety: clean(r.Safety),
	}
	if p.Cooks > 1 {
		l.Cook = "cook " + cookMark(r.Cook)
		if r.Cook == 0 {
			l.Cook = "both"
		}
	}
	if r.Until > 0 {
		l.Due = dueWords(p, r)
	}
	if r.Action == timeplan.TakeOut && len(r.Steps) > 0 {
		if in, ok := went[r.Steps[0]]; ok {
			l.Since = "in since " + in.Write(p.Hours)
		}
	}
	if l.Setting = clean(r.Setting); l.Setting != "" && r.Oven != "" && soleOven(p) == "" {
		l.Setting = clean(r.Oven) + ": " + l.Setting
	}
	return l
}

// style is how a piece of a cell is set.
type style string

// The styles.
const (
	styleText    style = "text"
	styleDue     style = "due"
	styleSince   style = "since"
	styleSetting style = "setting"
	styleKit     style = "kit"
	styleCheck   style = "check"
	styleSafety  style = "safety"
)

// piece is a paragraph of a cell.
type piece struct {
	Style style
	Label string // bold, before the text
	Text  string
}

// pieces is what a column says of a row; what has no column of its own is
// said with what to do.
func (l layout) pieces(r line, p part) []piece {
	var all []piece
	add := func(s style, label, text string) {
		if text != "" {
			all = append(all, piece{s, label, text})
		}
	}
	kit := func(label string) {
		add(styleSetting, "", r.Setting)
		add(styleKit, label, r.Kit)
	}
	points := func(check, safety string) {
		add(styleCheck, check, r.Check)
		add(styleSafety, safety, r.Safety)
	}
	switch p {
	case partWhat:
		add(styleText, "", r.Text)
		add(styleDue, "", r.Due)
		add(styleSince, "", r.Since)
		if !l.has(partKit) {
			if strings.Contains(r.Text, r.Setting) {
				r.Setting = ""
			}
			kit("Kit:")
		}
		if !l.has(partPoints) && !l.has(partCheck) {
			points("Check:", "Safety:")
		}
	case partKit:
		kit("")
	case partPoints:
		points("Check:", "Safety:")
	case partCheck:
		add(styleCheck, "", r.Check)
	case partSafety:
		add(styleSafety, "", r.Safety)
	}
	return all
}

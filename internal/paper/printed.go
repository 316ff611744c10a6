package paper

import (
	"cmp"
	"strings"
	"time"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// printed is what of a plan is on the text form, as it is written there: the
// times in minutes after the midnight before set-up, a row's time as the row
// gives it, texts on one line. ReadText(Text(p)) is printed(p).
func printed(p *timeplan.Plan) *timeplan.Plan {
	q := &timeplan.Plan{
		Title: clean(p.Title), Date: clean(p.Date), SetUp: p.SetUp % day, Hours: p.Hours,
		Round: max(p.Round, 1), Cooks: min(max(p.Cooks, 1), 2), Status: p.Status, Over: max(p.Over, 0), Seed: p.Seed,
	}
	if q.SetUp < 0 {
		q.SetUp += day
	}
	if q.Title == "" {
		q.Title = "Time plan"
	}
	if q.Status != timeplan.Optimal && q.Status != timeplan.Infeasible {
		q.Status = timeplan.Feasible
	}
	if _, err := time.Parse(time.DateOnly, q.Date); err != nil {
		q.Date = ""
	}
	t := func(t practical.TimeOfDay) practical.TimeOfDay { return after(earliest(q), t, day) }
	q.Start, q.Allowed = t(p.Start), t(p.Allowed)
	if p.Bound > 0 {
		q.Bound = t(p.Bound)
	}
	if q.Over > 0 {
		q.Status = timeplan.Infeasible
	}
	if len(p.Rows) > 0 || q.Status != timeplan.Infeasible {
		q.Finish = t(p.Finish)
	} else {
		q.Over = 0
	}
	printedDishes(q, p)
	places := putPlaces{}
	for _, r := range p.Rows {
		s := printedRow(q, r, t, soleOven(p))
		if usual := places.usual(s); s.Place == "" && usual.place != "" {
			s.Place, s.Oven = usual.place, usual.oven
		}
		places.note(s)
		q.Rows = append(q.Rows, s)
	}
	nameRows(q.Rows)
	printedLists(q, p, t)
	if q.Hours != 12 || spread(q) >= day/2 {
		q.Hours = 24
	}
	return q
}

const day practical.TimeOfDay = 24 * 60

// after is the first moment from base on that shows the same on a clock that
// comes round every period.
func after(base, t, period practical.TimeOfDay) practical.TimeOfDay {
	return base + ((t-base)%period+period)%period
}

// spread is how far the plan's last time is from its first.
func spread(q *timeplan.Plan) practical.TimeOfDay {
	last := max(q.Start, q.Allowed, q.Bound, q.Finish)
	for _, r := range q.Rows {
		last = max(last, r.Clock, r.Until)
	}
	for _, w := range q.Waits {
		last = max(last, w.From, w.Until)
	}
	for _, s := range q.Ovens {
		last = max(last, s.Turned, s.Hot, s.Until)
	}
	for _, w := range q.WaysOut {
		last = max(last, w.Finish)
	}
	return last - earliest(q)
}

// earliest is the first moment that a time on the plan can mean: an hour
// before set-up, so that a row rounded down still comes before its next.
func earliest(q *timeplan.Plan) practical.TimeOfDay { return max(q.SetUp-60, 0) }

// soleOven is the name of the only oven of the plan; empty when there are several.
func soleOven(p *timeplan.Plan) string {
	name := ""
	for i, s := range p.Ovens {
		called := cmp.Or(segment(s.Oven), anOven)
		if i > 0 && called != name {
			return ""
		}
		name = called
	}
	return name
}

func printedDishes(q, p *timeplan.Plan) {
	for _, d := range p.Dishes {
		d.Letter, d.Name = token(d.Letter), segment(d.Name)
		if d.Letter == "" || d.Letter == forAll {
			d.Letter = "?" + d.Letter
		}
		if heatWords[d.Heat] == "" {
			d.Heat = practical.AsIs
		}
		var allergens []string
		for _, a := range d.Allergens {
			if a = strings.ReplaceAll(segment(a), ",", ";"); a != "" {
				allergens = append(allergens, a)
			}
		}
		d.Allergens = allergens
		q.Dishes = append(q.Dishes, d)
	}
}

func printedRow(q *timeplan.Plan, r timeplan.Row, t func(practical.TimeOfDay) practical.TimeOfDay, oven string) timeplan.Row {
	s := timeplan.Row{
		At: t(r.Clock), Clock: t(r.Clock), Minutes: r.Minutes, Dish: token(r.Dish), Action: r.Action, Place: r.Place,
		Oven: segment(r.Oven), Celsius: max(r.Celsius, 0), Setting: segment(r.Setting), Text: clean(r.Text),
		Kit: clean(r.Kit), Check: clean(r.Check), Safety: clean(r.Safety), Pinned: r.Pinned, Outside: r.Outside,
	}
	if actionOf(actionMark(r.Action)) != r.Action {
		s.Action = timeplan.Do
	}
	if placeWords[s.Place] == "" {
		s.Place = usualPlace(s.Action)
	}
	if s.Place == practical.AtOven && s.Oven == "" {
		s.Oven = oven
	}
	if s.Place != practical.AtOven {
		s.Oven = ""
	}
	if q.Cooks > 1 {
		s.Cook = min(max(r.Cook, 0), 9)
	}
	if r.Until > 0 {
		s.Until = t(written(t(r.Until), q.Round))
	}
	for _, step := range r.Steps {
		if step = token(step); step != "" {
			s.Steps = append(s.Steps, step)
		}
	}
	return s
}

// nameRows gives each row the name that its step and action make, where no
// other row has it.
func nameRows(rows []timeplan.Row) {
	count := map[string]int{}
	name := func(r timeplan.Row) string {
		switch {
		case r.Action == timeplan.Serve && r.Dish != "":
			return r.Dish + "/serve"
		case len(r.Steps) == 1 && (r.Action == timeplan.PutIn || r.Action == timeplan.TakeOut):
			return r.Steps[0] + "/" + string(r.Action)
		case len(r.Steps) == 1:
			return r.Steps[0] + "/hands"
		}
		return ""
	}
	for _, r := range rows {
		count[name(r)]++
	}
	for i, r := range rows {
		if rows[i].ID = ""; count[name(r)] == 1 {
			rows[i].ID = name(r)
		}
	}
}

func printedLists(q, p *timeplan.Plan, t func(practical.TimeOfDay) practical.TimeOfDay) {
	sole := soleOven(p)
	for _, w := range p.Waits {
		v := timeplan.Wait{
			Step: token(w.Step), Dish: token(w.Dish), Place: w.Place, From: t(w.From), Until: t(w.Until),
			Least: max(w.Least, 0), Most: max(w.Most, 0), Celsius: max(w.Celsius, 0), Oven: segment(w.Oven), Attention: w.Attention, Every: max(w.Every, 0),
		}
		if v.Step == "" {
			v.Step = "?"
		}
		if placeWords[v.Place] == "" {
			v.Place = practical.AtSide
		}
		if v.Place == practical.AtOven && v.Oven == "" {
			v.Oven = sole
		}
		if v.Place != practical.AtOven {
			v.Oven = ""
		}
		if v.Attention != practical.Look && v.Attention != practical.Stay {
			v.Attention = ""
		}
		if v.Attention != practical.Look {
			v.Every = 0
		}
		q.Waits = append(q.Waits, v)
	}
	for _, s := range p.Ovens {
		q.Ovens = append(q.Ovens, timeplan.Setting{
			Oven: cmp.Or(segment(s.Oven), anOven), Celsius: max(s.Celsius, 0), Words: segment(s.Words), Turned: t(s.Turned), Hot: t(s.Hot), Until: t(s.Until),
		})
	}
	for _, n := range p.Notes {
		if n = clean(n); n != "" {
			q.Notes = append(q.Notes, n)
		}
	}
	for _, d := range p.Conflict {
		if text := clean(d.Text); text != "" {
			q.Conflict = append(q.Conflict, timeplan.Demand{Text: text})
		}
	}
	for _, w := range p.WaysOut {
		v := timeplan.WayOut{Text: segment(w.Text)}
		if w.Finish > 0 {
			v.Finish = t(w.Finish)
		}
		if v.Text != "" {
			q.WaysOut = append(q.WaysOut, v)
		}
	}
}

// token makes one short word of a letter or a step's name.
func token(s string) string {
	s = strings.Map(func(r rune) rune {
		if strings.ContainsRune(`:+|,\`, r) {
			return '_'
		}
		return r
	}, clean(s))
	s = strings.ReplaceAll(s, " ", "_")
	if r := []rune(s); len(r) > 30 {
		s = string(r[:29]) + "…"
	}
	return s
}

// segment makes a text that can stand between bars.
func segment(s string) string { return clean(strings.ReplaceAll(s, "|", "/")) }

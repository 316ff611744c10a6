package network

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver/problem"
)

// plan writes a solution as a plan. Its status is the caller's to fill in.
func (n *network) plan(s *problem.Solution) *timeplan.Plan {
	p := n.practical
	plan := &timeplan.Plan{
		Title: p.Title, Date: p.Date,
		SetUp: n.origin, Start: p.Clock.Start, Allowed: n.at(n.allowed), Finish: n.at(s.Start[n.finish]),
		Hours: p.Clock.Hours, Round: max(1, p.Clock.Round), Cooks: p.Cooks,
		Rows: []timeplan.Row{}, Waits: []timeplan.Wait{}, Threads: []timeplan.Thread{}, Ovens: []timeplan.Setting{},
	}
	for _, d := range p.Dishes {
		plan.Dishes = append(plan.Dishes, timeplan.Dish{Letter: d.Letter, Name: d.Name, Heat: d.Serve.Heat, Allergens: d.Allergens})
	}
	plan.Rows = n.rows(s)
	n.giveCooks(plan.Rows, s)
	writeClock(plan)
	waits := n.waits(s, plan)
	n.threads(s, plan, waits)
	plan.Ovens = n.settings(s)
	return plan
}

// rows are the activities with hands, the changes of state, the rest breaks and
// what comes after the clock, in the order of the clock.
func (n *network) rows(s *problem.Solution) []timeplan.Row {
	var rows []timeplan.Row
	for a, j := range n.jobs {
		if j.row == "" || (j.part == partHands && j.minutes == 0) {
			continue
		}
		row := n.row(a, j, s)
		row.At = n.at(s.Start[a])
		rows = append(rows, row)
	}
	rows = append(rows, n.changeRows(s)...)
	for i, b := range n.practical.Clock.Breaks {
		if n.minute(b.At) >= s.Start[n.finish] {
			continue // all is done by then
		}
		rows = append(rows, timeplan.Row{
			ID: fmt.Sprintf("rest/%d", i+1), At: b.At, Minutes: b.Minutes, Action: timeplan.Rest,
			Text: "Rest break. The clock stops; food that is cooking or chilling goes on.",
		})
	}
	slices.SortStableFunc(rows, func(a, b timeplan.Row) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Minutes, b.Minutes), cmp.Compare(a.ID, b.ID))
	})
	at := n.at(s.Start[n.finish])
	for _, j := range n.afterwards {
		row := n.row(-1, j, s)
		row.At, row.Outside = at, true
		rows = append(rows, row)
		at = row.End()
	}
	return rows
}

// row is one activity in words.
func (n *network) row(a int, j job, s *problem.Solution) timeplan.Row {
	row := timeplan.Row{ID: j.row, Minutes: j.minutes, Pinned: n.pinned(j.row)}
	if j.dish >= 0 {
		row.Dish = n.practical.Dishes[j.dish].Letter
	}
	if j.step != nil {
		row.Steps = []string{j.step.ID}
	}
	switch j.part {
	case partReady:
		row.Action, row.Text = timeplan.SetUp, "Wash hands. Apron on, hair tied back. Read the plan through."
		if s != nil && s.Start[a] >= n.start {
			row.Action = timeplan.Do
		}
	case partHands:
		n.handsRow(&row, j)
	case partPutIn:
		n.putInRow(&row, j, s)
	case partTakeOut:
		n.takeOutRow(&row, j, s)
	case partServe:
		n.serveRow(&row, j)
	case partWashUp:
		row.Action, row.Text = timeplan.WashUp, "Wash up and wipe down. Kit back in its place."
	case partTasting:
		row.Action, row.Text = timeplan.Do, "Taste and note: appearance, aroma, flavour, texture. Photograph the dishes."
	case partClean:
		row.Action, row.Text = timeplan.WashUp, "Clean down: wash up, wipe the bench, hob and sink. Oven and rings off."
	}
	return row
}

func (n *network) pinned(row string) bool {
	return slices.ContainsFunc(n.practical.Pins, func(p practical.Pin) bool { return p.Row == row })
}

func (n *network) handsRow(row *timeplan.Row, j job) {
	row.Action, row.Text, row.Place = timeplan.Do, sentence(j.step.Text), practical.AtHands
	if j.step.SetUp {
		row.Action, row.Place = timeplan.SetUp, practical.AtBench
	}
	if slices.Contains(j.step.Uses, practical.Ring) {
		row.Place = practical.AtHob
	}
	row.Kit, row.Safety = kitWords(j.step), j.step.Safety
	if j.step.Wait == nil || !hasRows(j.step.Wait.Place) {
		row.Check = j.step.Check
	}
}

// kitWords are the machines that a step's hands use, then its small kit. A ring
// is no kit to fetch, and a machine that the step names itself is named once.
func kitWords(s *practical.Step) string {
	var words []string
	for _, k := range s.Uses {
		if k != practical.Ring && !strings.Contains(s.Kit, string(k)) {
			words = append(words, string(k))
		}
	}
	if s.Kit != "" {
		words = append(words, s.Kit)
	}
	return strings.Join(words, ", ")
}

// putInRow says what goes where, at what setting, and for how long.
func (n *network) putInRow(row *timeplan.Row, j job, s *problem.Solution) {
	w, jobs := j.step.Wait, n.steps[j.step.ID]
	row.Action, row.Place = timeplan.PutIn, w.Place
	n.heatOf(row, jobs, s)
	if s != nil {
		row.Until = n.at(s.Start[jobs.takeOut])
	}
	row.Text = fmt.Sprintf("%s: %s.", putInWords[w.Place], n.foodWords(j))
	if jobs.hands < 0 {
		row.Text = sentence(j.step.Text)
		row.Kit, row.Safety = kitWords(j.step), j.step.Safety
	}
	if w.Attention == practical.Look || w.Attention == practical.Stay || w.DoorShut > 0 {
		row.Text = strings.TrimRight(row.Text, " ,;:") // what follows is a sentence of its own
		if !strings.HasSuffix(row.Text, ".") && !strings.HasSuffix(row.Text, "!") {
			row.Text += "."
		}
	}
	switch {
	case w.Attention == practical.Look && w.Every >= max(w.Least, 1):
		row.Text += " Look at it before it is due."
	case w.Attention == practical.Look:
		row.Text += fmt.Sprintf(" Look at it every %d minutes.", max(1, w.Every))
	case w.Attention == practical.Stay:
		row.Text += " Stay with it; do not leave it."
	}
	if w.DoorShut > 0 {
		row.Text += fmt.Sprintf(" Door stays shut for the first %d minutes.", w.DoorShut)
	}
	if w.Place == practical.AtOven && row.Celsius > 0 && row.Celsius != w.Celsius {
		row.Text = strings.TrimRight(row.Text, " ,;:.") + fmt.Sprintf(". The oven is at %d °C: near enough to the recipe's %d °C.", row.Celsius, w.Celsius)
	}
}

var putInWords = map[practical.Place]string{
	practical.AtOven: "Put in the oven", practical.AtHob: "Leave on the hob", practical.AtGrill: "Put under the grill",
	practical.AtMicrowave: "Put in the microwave", practical.AtWarm: "Put in a warm place",
	practical.AtFridge: "Put in the fridge", practical.AtFreezer: "Put in the freezer",
}

var takeOutWords = map[practical.Place]string{
	practical.AtOven: "Take out of the oven", practical.AtHob: "Take off the hob", practical.AtGrill: "Take from under the grill",
	practical.AtMicrowave: "Take out of the microwave", practical.AtWarm: "Take from the warm place",
	practical.AtFridge: "Take out of the fridge", practical.AtFreezer: "Take out of the freezer",
}

func (n *network) takeOutRow(row *timeplan.Row, j job, s *problem.Solution) {
	w := j.step.Wait
	row.Action, row.Place, row.Check = timeplan.TakeOut, w.Place, j.step.Check
	row.Text = fmt.Sprintf("%s: %s.", takeOutWords[w.Place], n.foodWords(j))
	if s != nil {
		if o := n.ovenOf(n.steps[j.step.ID], s); o != nil {
			row.Oven = n.ovenLabel(o)
		}
	}
	if w.Place == practical.AtOven || w.Place == practical.AtGrill {
		row.Safety = "Dry oven gloves. Stand back as the door opens."
	}
}

// foodWords names what is moved: the component, or the dish.
func (n *network) foodWords(j job) string {
	if j.step.Component != "" {
		return j.step.Component
	}
	return n.practical.Dishes[j.dish].Name
}

func (n *network) serveRow(row *timeplan.Row, j job) {
	dish := n.practical.Dishes[j.dish]
	row.Action, row.Place = timeplan.Serve, practical.Served
	row.Text = "Serve " + dish.Name
	switch dish.Serve.Heat {
	case practical.Hot:
		row.Text += " hot"
		row.Check = "Hot right through; plate warm, rim clean"
	case practical.Cold:
		row.Text += " cold"
		row.Check = "Cold to the touch; rim clean"
	}
	if how := presentation(dish.Serve.How); how != "" {
		row.Text += ": " + how
	}
	row.Text += "."
}

// ovenOf is the cavity that a step's wait is in, nil where it is in none.
func (n *network) ovenOf(s *stepJobs, solution *problem.Solution) *ovenState {
	if s.oven == nil {
		return nil
	}
	return &n.ovens[s.oven[solution.Mode[s.wait]]]
}

// ovenLabel names an oven only where there are several.
func (n *network) ovenLabel(o *ovenState) string {
	if o.oven == nil || len(n.practical.Kitchen.Ovens) < 2 {
		return ""
	}
	return ovenName(o.oven)
}

// heatOf writes what the oven stands at while the wait lasts.
func (n *network) heatOf(row *timeplan.Row, jobs *stepJobs, s *problem.Solution) {
	if s == nil {
		return
	}
	if o := n.ovenOf(jobs, s); o != nil {
		row.Oven = n.ovenLabel(o)
		if c := o.celsius[levelAt(n.problem, s, o.state, s.Start[jobs.wait])]; c > 0 {
			row.Celsius, row.Setting = c, n.practical.Kitchen.Setting(c)
		}
	}
}

// levelAt is the level at which a state stands at a time.
func levelAt(p *problem.Problem, s *problem.Solution, state, at int) int {
	level := p.States[state].Initial
	for _, c := range s.Changes {
		if c.State == state && c.At <= at {
			level = c.Level
		}
	}
	return level
}

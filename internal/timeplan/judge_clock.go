package timeplan

import (
	"slices"

	"plait.example/internal/practical"
)

// ovens judges each oven's dial from the rows alone, then the list of
// settings against the rows.
func (j *judge) ovens() {
	names := j.ovenNames()
	for _, name := range names {
		j.dial(name)
		j.settings(name)
	}
}

// ovenNames is every oven of the plan. A row without a name means the only
// oven there is.
func (j *judge) ovenNames() []string {
	var names []string
	note := func(name string) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, s := range j.plan.Ovens {
		note(s.Oven)
	}
	for _, r := range j.plan.Rows {
		if usesOven(r) && (r.Oven != "" || len(names) == 0) {
			note(r.Oven)
		}
	}
	return names
}

// usesOven says whether a row is about an oven. A grill that stands apart is
// none; one in an oven's cavity turns that oven's dial.
func usesOven(r Row) bool {
	if r.Place == practical.AtGrill && r.Oven == ApartGrill {
		return false
	}
	return r.Action == TurnTo || r.Place == practical.AtOven && (r.Action == PutIn || r.Action == TakeOut)
}

// dial follows one oven's dial down the rows: what goes in must find the
// temperature that it asks for, and keep it until it comes out.
func (j *judge) dial(name string) {
	celsius, turned := 0, -1
	inside := map[string]int{} // step -> its put-in
	for i, r := range j.plan.Rows {
		if !usesOven(r) || r.Oven != name && r.Oven != "" {
			continue
		}
		switch r.Action {
		case TurnTo:
			for _, s := range sortedKeys(inside) {
				if r.Celsius != j.plan.Rows[inside[s]].Celsius {
					j.serious("oven", "What is in the oven at that time?", []int{inside[s], i},
						"the oven is turned to %d °C at %s with %s inside, which needs %d °C", r.Celsius, j.write(r.At), s, j.plan.Rows[inside[s]].Celsius)
				}
			}
			celsius, turned = r.Celsius, i
		case PutIn:
			if turned < 0 {
				j.serious("oven", "What must be true of the oven at that time?", []int{i}, "something is put in at %s and the oven was never turned on", j.write(r.At))
			} else if celsius != r.Celsius {
				j.serious("oven", "How hot is the oven at that time?", []int{turned, i},
					"at %s the oven stands at %d °C; what is put in needs %d °C", j.write(r.At), celsius, r.Celsius)
			}
			for _, s := range r.Steps {
				inside[s] = i
			}
		case TakeOut:
			for _, s := range r.Steps {
				delete(inside, s)
			}
		}
	}
}

// settings judges the list of what an oven stands at: no two at once, each
// with its row, and each load within one that is hot.
func (j *judge) settings(name string) {
	var list []Setting
	for _, s := range j.plan.Ovens {
		if s.Oven == name {
			list = append(list, s)
		}
	}
	for i, s := range list {
		if s.Hot < s.Turned || s.Until < s.Turned {
			j.serious("oven", "", nil, "the oven is listed as hot at %s and changed at %s, before it is turned at %s", j.write(s.Hot), j.write(s.Until), j.write(s.Turned))
		}
		if i > 0 && s.Turned < list[i-1].Until {
			j.serious("oven", "", nil, "the oven is turned to %d °C at %s while it stands at %d °C until %s", s.Celsius, j.write(s.Turned), list[i-1].Celsius, j.write(list[i-1].Until))
		}
		if !slices.ContainsFunc(j.plan.Rows, func(r Row) bool {
			return r.Action == TurnTo && (r.Oven == name || r.Oven == "") && r.Celsius == s.Celsius && j.near(r.At, s.Turned)
		}) {
			j.serious("oven", "When do you turn it?", nil, "the oven is listed at %d °C from %s, but no row turns it", s.Celsius, j.write(s.Turned))
		}
	}
	for _, c := range couples(j.plan.Rows) {
		if len(c.in) == 1 && len(c.out) == 1 {
			j.load(name, list, c.in[0], c.out[0])
		}
	}
}

// load judges that one load finds the oven hot and stays within its setting.
func (j *judge) load(name string, list []Setting, in, out int) {
	a, z := j.plan.Rows[in], j.plan.Rows[out]
	if !usesOven(a) || a.Oven != name && a.Oven != "" {
		return
	}
	for _, s := range list {
		if s.Celsius == a.Celsius && s.Hot <= a.End()+j.loose && z.At <= s.Until+j.loose {
			return
		}
	}
	j.serious("oven", "Is the oven hot by then?", []int{in, out}, "from %s to %s the oven is not listed as hot at %d °C", j.write(a.At), j.write(z.At), a.Celsius)
}

// stages judges that only set-up comes before the clock starts. The dial may
// be turned and a set-up job may put its food in a place.
func (j *judge) stages() {
	early := map[string]bool{}
	for _, r := range j.plan.Rows {
		if r.Action == SetUp {
			for _, s := range r.Steps {
				early[s] = true
			}
		}
	}
	for i, r := range j.plan.Rows {
		switch {
		case r.At < j.plan.SetUp-j.loose:
			j.serious("set-up", "When may you begin?", []int{i}, "the row at %s comes before set-up begins at %s", j.write(r.At), j.write(j.plan.SetUp))
		case r.Action == SetUp && r.End() > j.plan.Start:
			j.serious("set-up", "", []int{i}, "set-up still goes on at %s, when the clock has started", j.write(r.End()))
		case r.At+j.loose < j.plan.Start && r.Action != SetUp && r.Action != TurnTo && !slices.ContainsFunc(r.Steps, func(s string) bool { return early[s] }):
			j.serious("set-up", "Which of these may be done before time starts?", []int{i}, "the row at %s comes before the clock starts at %s", j.write(r.At), j.write(j.plan.Start))
		}
	}
}

// serving judges that each dish has one serve row, which ends it, and that
// nothing follows the last clean-down.
func (j *judge) serving() {
	if len(j.plan.Rows) == 0 {
		return
	}
	for _, d := range j.plan.Dishes {
		var serve []int
		for i, r := range j.plan.Rows {
			if r.Dish != d.Letter {
				continue
			}
			if len(serve) > 0 && r.Action != Serve && r.Action != WashUp {
				j.serious("serve", "Has it not been served by then?", []int{serve[0], i}, "dish %s is worked on at %s, after it was served", d.Letter, j.write(r.At))
			}
			if r.Action == Serve {
				serve = append(serve, i)
			}
		}
		if len(serve) != 1 {
			j.serious("serve", "What will the plate look like?", serve, "dish %s has %d serve rows; it needs one", d.Letter, len(serve))
		}
	}
	last := len(j.plan.Rows) - 1
	for i, r := range j.plan.Rows {
		if r.Action == WashUp && i < last && i > j.lastServe() {
			if next := j.plan.Rows[last]; next.Action != WashUp && next.Action != Rest && !next.Outside {
				j.serious("clean-down", "What comes last?", []int{i, last}, "a row follows the last clean-down at %s", j.write(next.At))
			}
			break
		}
	}
}

// lastServe is the index of the last serve row; the last row's when there is none.
func (j *judge) lastServe() int {
	for i := len(j.plan.Rows) - 1; i >= 0; i-- {
		if j.plan.Rows[i].Action == Serve {
			return i
		}
	}
	return len(j.plan.Rows)
}

// finish judges the finish, what is allowed, and what is said of both.
func (j *judge) finish() {
	p := j.plan
	if len(p.Rows) == 0 {
		if p.Status != Infeasible {
			j.serious("finish", "", nil, "there are no rows, and yet the plan is called %s", p.Status)
		}
		return
	}
	if end := p.End(); !j.near(end, p.Finish) {
		j.serious("finish", "What is your finish time?", []int{len(p.Rows) - 1}, "the last row ends at %s, but the plan says that it finishes at %s", j.write(end), j.write(p.Finish))
	}
	over := max(0, int(p.Finish-p.Allowed))
	if over != p.Over {
		j.serious("over", "What happens at the finish time?", nil, "the plan finishes %d minutes after %s, but says %d", over, j.write(p.Allowed), p.Over)
	}
	if over > 0 && p.Status != Infeasible {
		j.serious("over", "", nil, "the plan runs over and is called %s", p.Status)
	}
	if p.Status == Infeasible && len(p.Conflict) == 0 {
		j.serious("conflict", "", nil, "the plan does not fit and does not say what cannot hold together")
	}
	if p.Bound > p.Finish {
		j.serious("bound", "", nil, "no plan is said to finish before %s, yet this one finishes at %s", j.write(p.Bound), j.write(p.Finish))
	}
	if p.Status == Optimal && p.Bound != p.Finish {
		j.serious("bound", "", nil, "the finish at %s is called the earliest, but only %s is proved", j.write(p.Finish), j.write(p.Bound))
	}
	j.within()
}

// within judges that no row ends after what is allowed, unless the plan says
// that it runs over.
func (j *judge) within() {
	for i, r := range j.plan.Rows {
		if r.Outside && r.At+j.loose < j.plan.Finish {
			j.serious("finish", "", []int{i}, "the row at %s is called outside the clock, and begins before the finish at %s", j.write(r.At), j.write(j.plan.Finish))
		}
		if !r.Outside && r.End() > j.plan.Allowed+practical.TimeOfDay(j.plan.Over)+j.loose {
			j.serious("finish", "What happens at the finish time?", []int{i}, "the row at %s ends at %s; the clock ends at %s", j.write(r.At), j.write(r.End()), j.write(j.plan.Allowed))
		}
	}
}

func sortedKeys(m map[string]int) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

package timeplan

import (
	"slices"

	"plait.example/internal/practical"
)

// couple is the rows around one wait; -1 where there is none.
type couple struct {
	step    string
	in, out []int
}

// couples gathers put-in and take-out rows by step, in the order of the plan.
func couples(rows []Row) []couple {
	var all []couple
	of := map[string]int{}
	for i, r := range rows {
		if r.Action != PutIn && r.Action != TakeOut {
			continue
		}
		steps := r.Steps
		if len(steps) == 0 {
			steps = []string{"?" + r.ID} // no step: it can have no partner
		}
		for _, s := range steps {
			if _, ok := of[s]; !ok {
				of[s] = len(all)
				all = append(all, couple{step: s})
			}
			c := &all[of[s]]
			if r.Action == PutIn {
				c.in = append(c.in, i)
			} else {
				c.out = append(c.out, i)
			}
		}
	}
	return all
}

// pairs judges that each put-in has exactly one take-out, later, of the same
// step, in the same place, when its row says it is due; and the other way round.
func (j *judge) pairs() {
	for _, c := range couples(j.plan.Rows) {
		switch {
		case len(c.out) == 0:
			j.serious("pair", "When does it come out, and how will you know?", slices.Clone(c.in), "%s is put in and never taken out", c.step)
			continue
		case len(c.in) == 0:
			j.serious("pair", "When did it go in?", slices.Clone(c.out), "%s is taken out and was never put in", c.step)
			continue
		case len(c.in) > 1 || len(c.out) > 1:
			j.serious("pair", "", slices.Concat(c.in, c.out), "%s is put in %d times and taken out %d times", c.step, len(c.in), len(c.out))
			continue
		}
		in, out := j.plan.Rows[c.in[0]], j.plan.Rows[c.out[0]]
		both := func() []int { return []int{c.in[0], c.out[0]} }
		if out.At+j.loose < in.End() || c.out[0] < c.in[0] {
			j.serious("pair", "Which comes first?", both(), "%s is taken out at %s, before it has been put in at %s", c.step, j.write(out.At), j.write(in.At))
		}
		if !j.near(in.Until, out.At) && in.Until != out.Clock {
			j.serious("until", "When does it come out?", both(), "%s is due out at %s, yet its row stands at %s", c.step, j.write(in.Until), j.write(out.At))
		}
		if in.Place != out.Place || in.Oven != out.Oven && out.Oven != "" {
			j.serious("place", "Where is it?", both(), "%s is put in the %s and taken out of the %s", c.step, in.Place, out.Place)
		}
	}
}

// waits judges that the list of waits says the same as the rows, and that each
// is as long as its food asks.
func (j *judge) waits() {
	pairs := map[string]couple{}
	for _, c := range couples(j.plan.Rows) {
		pairs[c.step] = c
	}
	listed := map[string]bool{}
	for _, w := range j.plan.Waits {
		listed[w.Step] = true
		length := int(w.Until - w.From)
		if length < w.Least {
			j.serious("wait", "Is that long enough?", nil, "%s waits %d minutes, from %s to %s; it needs %d", w.Step, length, j.write(w.From), j.write(w.Until), w.Least)
		}
		if w.Most > 0 && length > w.Most {
			j.serious("wait", "What happens if it waits longer?", nil, "%s waits %d minutes, from %s to %s; it can wait %d at most", w.Step, length, j.write(w.From), j.write(w.Until), w.Most)
		}
		c := pairs[w.Step]
		if len(c.in) != 1 || len(c.out) != 1 {
			if len(c.in)+len(c.out) == 0 && w.Place != practical.AtSide && w.Place != practical.AtBench {
				j.serious("wait", "", nil, "%s waits from %s, but no row puts it in or takes it out", w.Step, j.write(w.From))
			}
			continue
		}
		j.between(w, c.in[0], c.out[0])
	}
	for _, c := range couples(j.plan.Rows) {
		if !listed[c.step] && len(c.in) == 1 && len(c.out) == 1 {
			j.serious("wait", "", []int{c.in[0], c.out[0]}, "%s is put in and taken out, but its wait is not listed", c.step)
		}
	}
}

// between judges that a wait lies between its two rows.
func (j *judge) between(w Wait, in, out int) {
	a, z := j.plan.Rows[in], j.plan.Rows[out]
	if !j.begins(w.From, a) || !j.near(w.Until, z.At) {
		j.serious("wait", "", []int{in, out}, "%s is listed as waiting from %s to %s, but its rows leave %s to %s",
			w.Step, j.write(w.From), j.write(w.Until), j.write(a.End()), j.write(z.At))
	}
	if w.Place != a.Place {
		j.serious("place", "Where is it?", []int{in, out}, "%s is listed in the %s, but put in the %s", w.Step, w.Place, a.Place)
	}
	if w.Celsius != a.Celsius {
		j.serious("celsius", "How hot, on this cooker?", []int{in, out}, "%s is listed at %d °C, but put in at %d °C", w.Step, w.Celsius, a.Celsius)
	}
}

// begins says whether a wait can begin at that time: when the put-in has ended.
func (j *judge) begins(from practical.TimeOfDay, in Row) bool { return j.near(from, in.End()) }

// watched judges that nobody is sent away from a wait that must not be left.
func (j *judge) watched() {
	for _, w := range j.plan.Waits {
		if w.Attention != practical.Stay {
			continue
		}
		cook := 0
		for _, r := range j.plan.Rows {
			if r.Action == PutIn && slices.Contains(r.Steps, w.Step) {
				cook = r.Cook
			}
		}
		for i, r := range j.plan.Rows {
			other := j.plan.Cooks > 1 && r.Cook != 0 && r.Cook != cook
			if other || r.Minutes == 0 || r.At+j.loose >= w.Until || r.End() <= w.From+j.loose || slices.Contains(r.Steps, w.Step) {
				continue
			}
			j.serious("watch", "Who is watching the pan?", []int{i}, "%s must be watched from %s to %s, and the row of %s sends the cook away",
				w.Step, j.write(w.From), j.write(w.Until), j.write(r.At))
		}
	}
}

package practical

import (
	"fmt"
	"slices"
	"strings"
)

// order judges what comes after what: known steps, no ring, set-up before the rest.
func (j *judge) order() {
	setUp, ids := map[string]bool{}, []string(nil)
	for _, d := range j.p.Dishes {
		for _, s := range d.Steps {
			setUp[s.ID] = s.SetUp
			ids = append(ids, s.ID)
		}
	}
	for i, d := range j.p.Dishes {
		for k, s := range d.Steps {
			for n, a := range s.After {
				path := fmt.Sprintf("dishes[%d].steps[%d].after[%d]", i, k, n)
				j.after(path, s, a, setUp, ids)
			}
		}
	}
	j.ring()
}

func (j *judge) after(path string, s Step, a After, setUp map[string]bool, ids []string) {
	before, known := setUp[a.Step]
	switch {
	case a.Step == "":
	case a.Step == s.ID:
		j.faultf(path+".step", "name another step", "step %s comes after itself", clip(s.ID))
	case !known:
		hint := "the steps are " + strings.Join(ids[:min(len(ids), 30)], ", ")
		if near := nearestID(a.Step, ids); near != "" {
			hint = fmt.Sprintf("did you mean %q; %s", near, hint)
		}
		j.faultf(path+".step", hint, "there is no step %q", clip(a.Step))
	case s.SetUp && !before:
		j.faultf(path+".step", "let it follow set-up steps only, or do it after the start", "set-up step %s comes after %s, which is not set-up", clip(s.ID), a.Step)
	}
	if a.Most != nil && *a.Most < a.Least {
		j.faultf(path+".most", fmt.Sprintf("%d or more, or leave it out for no most", a.Least), "the least of %d minutes is more than the most of %d", a.Least, *a.Most)
	}
}

// nearestID is the step id closest to what was written; ids keep their case.
func nearestID(id string, ids []string) string {
	lower := make([]string, len(ids))
	for i, known := range ids {
		lower[i] = strings.ToLower(known)
	}
	if i := slices.Index(lower, nearest(id, lower)); i >= 0 {
		return ids[i]
	}
	return ""
}

// ring names a cycle of steps, each of which would have to come after the next.
func (j *judge) ring() {
	const fresh, open, done = 0, 1, 2
	state, steps, where := map[string]int{}, map[string]Step{}, map[string]string{}
	var ids, trail []string
	for i, d := range j.p.Dishes {
		for k, s := range d.Steps {
			if _, twice := steps[s.ID]; !twice {
				steps[s.ID], where[s.ID] = s, fmt.Sprintf("dishes[%d].steps[%d].after", i, k)
				ids = append(ids, s.ID)
			}
		}
	}
	var visit func(id string)
	visit = func(id string) {
		state[id] = open
		trail = append(trail, id)
		for _, a := range steps[id].After {
			if _, known := steps[a.Step]; !known || a.Step == id {
				continue
			}
			switch state[a.Step] {
			case fresh:
				visit(a.Step)
			case open:
				j.cycle(trail[slices.Index(trail, a.Step):], where[a.Step])
			}
		}
		trail = trail[:len(trail)-1]
		state[id] = done
	}
	for _, id := range ids {
		if state[id] == fresh {
			visit(id)
		}
	}
}

func (j *judge) cycle(steps []string, path string) {
	names := append(slices.Clone(steps), steps[0])
	j.faultf(path, "let one of them not come after the next", "the steps go round in a ring: %s", strings.Join(names, " after "))
}

package network

import (
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver/problem"
)

// A plan from before an edit is where the new search begins. Its rows are found
// again by the names and the words of their steps, since an edit may have named
// the steps anew; what is new stands where what it follows ends. The hint need
// not hold: the engine mends it, and lets go only of what it must.

// hint is the plan from before as times of this problem, nil without one.
func (n *network) hint(before *timeplan.Plan) *problem.Solution {
	if before == nil || len(before.Rows) == 0 {
		return nil
	}
	o := readOld(before)
	o.moved = n.practical.Clock.Start - before.Start
	names := n.oldNames(o)
	size := len(n.problem.Activities)
	s := &problem.Solution{Start: make([]int, size), End: make([]int, size), Mode: make([]int, size)}
	for _, jobs := range n.order {
		n.hintStep(s, o, jobs, names[jobs.step.ID])
	}
	last := 0
	for a, j := range n.jobs {
		if j.step == nil && j.part != partFinish {
			s.Start[a] = n.hintBeside(o, j, last)
			s.End[a] = s.Start[a] + j.minutes
		}
		last = max(last, s.End[a])
	}
	s.Start[n.finish], s.End[n.finish] = last, last
	return s
}

// old is a plan from before, by its rows' and waits' names.
type old struct {
	plan  *timeplan.Plan
	moved practical.TimeOfDay // the clock starts so much later now
	rows  map[string]timeplan.Row
	waits map[string]timeplan.Wait // by step
	words map[string]string        // by step: what its first row says
	steps map[string][]string      // by dish: in the order of the plan
}

func readOld(p *timeplan.Plan) *old {
	o := &old{
		plan: p, rows: map[string]timeplan.Row{}, waits: map[string]timeplan.Wait{},
		words: map[string]string{}, steps: map[string][]string{},
	}
	for _, r := range p.Rows {
		o.rows[r.ID] = r
		step := firstOf(r.Steps)
		if _, known := o.words[step]; !known && step != "" {
			o.words[step] = r.Text
			o.steps[r.Dish] = append(o.steps[r.Dish], step)
		}
	}
	for _, w := range p.Waits {
		o.waits[w.Step] = w
	}
	return o
}

// letter is what a dish was called in the plan from before: the dish of the
// same name, else of the same letter.
func (o *old) letter(d practical.Dish) string {
	for _, was := range o.plan.Dishes {
		if was.Name == d.Name {
			return was.Letter
		}
	}
	return d.Letter
}

// oldNames are the names that the steps had: those of the steps of the same
// dish with the same words, else with the same name. A step that is new has none.
func (n *network) oldNames(o *old) map[string]string {
	names, taken := map[string]string{}, map[string]bool{}
	give := func(same func(jobs *stepJobs, was string) bool) {
		for _, jobs := range n.order {
			if names[jobs.step.ID] != "" {
				continue
			}
			for _, was := range o.steps[o.letter(n.practical.Dishes[jobs.dish])] {
				if !taken[was] && same(jobs, was) {
					names[jobs.step.ID], taken[was] = was, true
					break
				}
			}
		}
	}
	sameWords := func(jobs *stepJobs, was string) bool { return sentence(jobs.step.Text) == o.words[was] }
	sameName := func(jobs *stepJobs, was string) bool { return jobs.step.ID == was }
	give(func(jobs *stepJobs, was string) bool { return sameName(jobs, was) && sameWords(jobs, was) })
	give(sameWords)
	give(sameName)
	return names
}

// hintStep gives a step's activities the times that they had. What had none
// begins when the one before it ends.
func (n *network) hintStep(s *problem.Solution, o *old, jobs *stepJobs, was string) {
	at := 0
	for _, after := range jobs.step.After {
		at = max(at, s.End[n.steps[after.Step].last])
	}
	for _, a := range []int{jobs.hands, jobs.putIn, jobs.wait, jobs.takeOut} {
		if a < 0 {
			continue
		}
		j := n.jobs[a]
		length := j.minutes
		if j.part == partWait {
			length = jobs.step.Wait.Least
			if w, known := o.waits[was]; known {
				at, length = n.minute(w.From+o.moved), int(w.Until-w.From)
				s.Mode[a] = n.modeOf(jobs, w)
			}
		} else if r, known := o.rows[was+"/"+string(j.part)]; known {
			at = n.minute(r.At + o.moved)
		}
		s.Start[a], s.End[a] = max(0, at), max(0, at)+length
		at = s.End[a]
	}
}

// modeOf is the way to wait that a wait from before had: the same oven, else the first.
func (n *network) modeOf(jobs *stepJobs, w timeplan.Wait) int {
	for mode, oven := range jobs.oven {
		if n.ovenLabel(&n.ovens[oven]) == w.Oven {
			return mode
		}
	}
	return 0
}

// hintBeside is the time that a row beside the steps had; one that is new
// begins at last.
func (n *network) hintBeside(o *old, j job, last int) int {
	name := j.row
	if j.part == partServe {
		name = o.letter(n.practical.Dishes[j.dish]) + "/serve"
	}
	if r, known := o.rows[name]; known {
		return max(0, n.minute(r.At+o.moved))
	}
	return last
}

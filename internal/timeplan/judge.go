package timeplan

import (
	"fmt"
	"slices"

	"plait.example/internal/practical"
)

// Judge reads a plan a second time, as it is printed, with arithmetic of its
// own: it shares nothing with what made the plan. An empty answer means that
// the rows are in the order of the clock, no cook does two things at once,
// every put-in has its take-out and its wait, every oven stands at what is
// asked for, each dish is served, and the clock is kept or the plan says by
// how much it is not.
//
// It also reads plans that came back from print, where a row's minute is only
// known as it was written. If Round is more than 1 and every row's At equals its
// Clock, a row may begin up to Round-1 minutes after what is written.
func Judge(p *Plan) []Finding {
	j := &judge{plan: p, ids: rowIDs(p.Rows)}
	if p.Round > 1 && asWritten(p.Rows) {
		j.loose = practical.TimeOfDay(p.Round - 1)
	}
	j.form()
	j.order()
	j.hands()
	j.pairs()
	j.waits()
	j.watched()
	j.ovens()
	j.stages()
	j.serving()
	j.finish()
	return j.found
}

// judge collects findings.
type judge struct {
	plan  *Plan
	ids   []string
	loose practical.TimeOfDay // a row may begin so much later than it says
	found []Finding
}

// serious adds a finding about the rows with these indices.
func (j *judge) serious(rule, question string, rows []int, format string, args ...any) {
	j.add(Serious, rule, question, rows, format, args...)
}

func (j *judge) add(severity Severity, rule, question string, rows []int, format string, args ...any) {
	f := Finding{Rule: rule, Severity: severity, Text: fmt.Sprintf(format, args...), Question: question}
	slices.Sort(rows)
	for _, i := range rows {
		f.Rows = append(f.Rows, j.ids[i])
	}
	j.found = append(j.found, f)
}

// rowIDs names each row: its id, or its number from 1 where it has none.
func rowIDs(rows []Row) []string {
	ids := make([]string, len(rows))
	for i, r := range rows {
		ids[i] = r.ID
		if r.ID == "" {
			ids[i] = fmt.Sprintf("row %d", i+1)
		}
	}
	return ids
}

func asWritten(rows []Row) bool {
	return !slices.ContainsFunc(rows, func(r Row) bool { return r.At != r.Clock })
}

// near says whether two times can be the same moment, as written.
func (j *judge) near(a, b practical.TimeOfDay) bool { return a-b <= j.loose && b-a <= j.loose }

// write writes a time on the plan's clock.
func (j *judge) write(t practical.TimeOfDay) string { return t.Write(j.plan.Hours) }

// form judges each row by itself.
func (j *judge) form() {
	known := []Action{SetUp, Do, PutIn, TakeOut, TurnTo, WashUp, Serve, Rest}
	seen := map[string]int{}
	for i, r := range j.plan.Rows {
		at := []int{i}
		if r.Minutes < 0 {
			j.serious("minutes", "How long does it take?", at, "the row at %s takes %d minutes", j.write(r.At), r.Minutes)
		}
		if !slices.Contains(known, r.Action) {
			j.serious("action", "", at, "the row at %s has the unknown action %q", j.write(r.At), r.Action)
		}
		if r.Dish != "" {
			if _, n := j.plan.DishOf(r.Dish); n < 0 {
				j.serious("dish", "Which dish is this for?", at, "the row at %s is for dish %q, which is not in the key", j.write(r.At), r.Dish)
			}
		}
		if round := max(j.plan.Round, 1); r.Clock > r.At || r.At-r.Clock >= practical.TimeOfDay(round) {
			j.serious("clock", "", at, "the row begins at %s but is written as %s", r.At, r.Clock)
		}
		if r.Cook < 0 || r.Cook > max(j.plan.Cooks, 1) {
			j.serious("cook", "Who does this?", at, "the row at %s is for cook %d of %d", j.write(r.At), r.Cook, j.plan.Cooks)
		}
		if r.ID != "" {
			if k, twice := seen[r.ID]; twice {
				j.serious("id", "", []int{k, i}, "two rows are called %q", r.ID)
			}
			seen[r.ID] = i
		}
	}
}

// order judges that the clock never runs backwards.
func (j *judge) order() {
	for i := 1; i < len(j.plan.Rows); i++ {
		a, b := j.plan.Rows[i-1], j.plan.Rows[i]
		if b.At < a.At {
			j.serious("order", "Read me the times in order?", []int{i - 1, i}, "%s stands after %s", j.write(b.At), j.write(a.At))
		}
	}
}

// hands judges that no cook does two things at once. A row of a pair that
// names no cook (a rest) is for both.
func (j *judge) hands() {
	for cook := 1; cook <= max(j.plan.Cooks, 1); cook++ {
		free, last := practical.TimeOfDay(-1), -1
		for i, r := range j.plan.Rows {
			if j.plan.Cooks > 1 && r.Cook != 0 && r.Cook != cook {
				continue
			}
			begins := r.At
			if last >= 0 && begins < free {
				begins = min(free, r.At+j.loose)
			}
			if last >= 0 && begins < free && r.Minutes > 0 {
				before := j.plan.Rows[last]
				j.serious("hands", "Which one are you touching?", []int{last, i},
					"at %s the hands are still busy with the row of %s (%d min)", j.write(r.At), j.write(before.At), before.Minutes)
			}
			if end := begins + practical.TimeOfDay(max(r.Minutes, 0)); end >= free {
				free, last = end, i
			}
		}
	}
}

package network

import (
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver/problem"
)

// giveCooks writes into the rows which of a pair does each.
func (n *network) giveCooks(rows []timeplan.Row, s *problem.Solution) {
	if n.practical.Cooks < 2 {
		return
	}
	if n.cookOf == nil {
		n.cookOf = n.cooks(rows, s)
	}
	for i := range rows {
		rows[i].Cook = n.cookOf[rows[i].ID]
	}
}

// cooks shares the rows of a pair out, by their names: each to the cook who had
// the dish last, if free, else to the other. Two suffice, since no more than two
// jobs are ever at once (interval graphs are perfect). A cook who stays with a
// pan is busy from putting it on to taking it off.
func (n *network) cooks(rows []timeplan.Row, s *problem.Solution) map[string]int {
	cookOf, had, held := map[string]int{}, map[string]int{}, map[string]int{}
	free := make([]practical.TimeOfDay, n.practical.Cooks)
	for _, r := range rows {
		if r.Action == timeplan.Rest || r.Minutes == 0 {
			continue
		}
		cook, busy := had[r.Dish], r.End()
		stays := n.stays(r)
		switch {
		case stays != nil && r.Action == timeplan.TakeOut:
			cook = held[stays.step.ID]
		case free[cook] > r.At:
			cook = slices.IndexFunc(free, func(t practical.TimeOfDay) bool { return t <= r.At })
		}
		if cook < 0 {
			continue // more jobs than cooks: the judge will say so
		}
		if stays != nil && r.Action == timeplan.PutIn {
			held[stays.step.ID], busy = cook, n.at(s.End[stays.takeOut])
		}
		free[cook], had[r.Dish], cookOf[r.ID] = busy, cook, cook+1
	}
	return cookOf
}

// stays is the step of a row that puts in or takes out what must be watched.
func (n *network) stays(r timeplan.Row) *stepJobs {
	if r.Action != timeplan.PutIn && r.Action != timeplan.TakeOut {
		return nil
	}
	if jobs := n.steps[r.Steps[0]]; jobs.step.Wait.Attention == practical.Stay {
		return jobs
	}
	return nil
}

package network

import (
	"fmt"
	"maps"
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver/problem"
)

// changeRows are the changes that the cook makes: the oven's dial, the grill,
// a clean-down between raw and ready-to-eat, a machine rinsed.
func (n *network) changeRows(s *problem.Solution) (rows []timeplan.Row) {
	names := n.changeNames(s)
	for _, id := range slices.Sorted(maps.Keys(names)) {
		i := names[id]
		row := n.changeRow(s.Changes[i], levelBefore(n.problem, s, i))
		row.ID, row.At = id, n.at(s.Changes[i].At)
		row.Minutes, _ = n.changeCost(s, i)
		rows = append(rows, row)
	}
	return rows
}

// changeNames names the changes that are work, such as "oven/2", and gives
// each its index in the solution.
func (n *network) changeNames(s *problem.Solution) map[string]int {
	names, count := map[string]int{}, map[int]int{}
	for i, c := range s.Changes {
		if work, _ := n.changeCost(s, i); work > 0 {
			count[c.State]++
			names[fmt.Sprintf("%s/%d", n.problem.States[c.State].Name, count[c.State])] = i
		}
	}
	return names
}

// levelBefore is the level from which the i-th change goes.
func levelBefore(p *problem.Problem, s *problem.Solution, i int) int {
	level := p.States[s.Changes[i].State].Initial
	for _, before := range s.Changes[:i] {
		if before.State == s.Changes[i].State {
			level = before.Level
		}
	}
	return level
}

func (n *network) changeRow(c problem.StateChange, from int) timeplan.Row {
	if c.State == n.bench {
		return timeplan.Row{
			Action: timeplan.WashUp,
			Text:   "Clean down after raw food: board, knife and bench, detergent then disinfectant. Wash hands.",
			Safety: "Before food that is eaten as it is.",
		}
	}
	for _, r := range n.rinsed {
		if r.state == c.State {
			return timeplan.Row{
				Action: timeplan.WashUp, Kit: string(r.kit), Dish: n.practical.Dishes[r.dishes[c.Level-1]].Letter,
				Text: fmt.Sprintf("Rinse the %s for %s.", r.kit, n.practical.Dishes[r.dishes[c.Level-1]].Name),
			}
		}
	}
	return n.turnRow(c, from)
}

// turnRow is the oven or the grill turned on, or to another setting.
func (n *network) turnRow(c problem.StateChange, from int) timeplan.Row {
	for i := range n.ovens {
		o := &n.ovens[i]
		if o.state != c.State {
			continue
		}
		name, label := "oven", n.ovenLabel(o)
		if label != "" {
			name = label
		}
		row := timeplan.Row{Action: timeplan.TurnTo, Place: practical.AtOven, Oven: label}
		to := o.celsius[c.Level]
		switch {
		case to < 0:
			row.Place, row.Text = practical.AtGrill, "Turn the grill on to high."
			if o.oven == nil {
				row.Oven = timeplan.ApartGrill
			}
			if o.oven != nil && from > 0 {
				row.Text = "Turn the " + name + " to grill, high."
			}
		case from == 0:
			row.Celsius, row.Setting = to, n.practical.Kitchen.Setting(to)
			row.Text = fmt.Sprintf("Turn the %s on: %s. Shelves in place first.", name, row.Setting)
		default:
			row.Celsius, row.Setting = to, n.practical.Kitchen.Setting(to)
			row.Text = fmt.Sprintf("Turn the %s to %s.", name, row.Setting)
		}
		return row
	}
	return timeplan.Row{Action: timeplan.TurnTo, Text: "Change the setting."}
}

// settings are what each oven stands at, from each turn of its dial to the next.
func (n *network) settings(s *problem.Solution) []timeplan.Setting {
	settings := []timeplan.Setting{}
	for i := range n.ovens {
		o := &n.ovens[i]
		if o.oven == nil {
			continue
		}
		level, first := n.problem.States[o.state].Initial, len(settings)
		for _, c := range s.Changes {
			if c.State != o.state {
				continue
			}
			change := n.problem.States[o.state].Change[level][c.Level]
			level = c.Level
			if len(settings) > first {
				settings[len(settings)-1].Until = n.at(c.At)
			}
			set := timeplan.Setting{
				Oven: ovenName(o.oven), Turned: n.at(c.At), Hot: n.at(c.At + change.Work + change.Settle), Words: "grill, high",
			}
			if celsius := o.celsius[c.Level]; celsius > 0 {
				set.Celsius, set.Words = celsius, n.practical.Kitchen.Setting(celsius)
			}
			settings = append(settings, set)
		}
		if len(settings) > first {
			last := &settings[len(settings)-1]
			last.Until = max(last.Hot, n.lastOut(i, s))
		}
	}
	return settings
}

// lastOut is when the last load comes out of an oven.
func (n *network) lastOut(oven int, s *problem.Solution) (last practical.TimeOfDay) {
	for _, jobs := range n.order {
		if jobs.oven != nil && jobs.oven[s.Mode[jobs.wait]] == oven {
			last = max(last, n.at(s.End[jobs.wait]))
		}
	}
	return last
}

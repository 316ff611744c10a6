package network

import (
	"plait.example/internal/practical"
	"plait.example/solver/problem"
)

// The bench's levels.
const (
	benchClean = 0
	benchRaw   = 1
)

// benchState keeps raw and ready-to-eat apart: from a raw job to the next on
// food eaten as it is, the bench, the knife and the hands are cleaned down. The
// other way needs nothing. Separation of raw and ready-to-eat food: general
// food-safety guidance; the minutes are a setting.
func (n *network) benchState() {
	if !n.touches(practical.Raw) {
		return
	}
	minutes := n.practical.Rules.RawClean
	n.bench = len(n.problem.States)
	n.problem.States = append(n.problem.States, problem.State{
		Name:   "bench",
		Levels: []string{"clean", "raw"},
		Change: [][]problem.Change{{{}, {}}, {{Work: minutes}, {}}},
		Uses:   []problem.Use{n.inHands()},
		Demand: n.demand("clean-down", "", "a clean-down of %d minutes stands between raw food and food eaten as it is", minutes),
	})
}

func (n *network) touches(food practical.Food) bool {
	for _, d := range n.practical.Dishes {
		for _, s := range d.Steps {
			if s.Food == food {
				return true
			}
		}
	}
	return false
}

// hygiene is what a job on such food asks of the bench.
func (n *network) hygiene(food practical.Food) []problem.Need {
	if n.bench < 0 {
		return nil
	}
	switch food {
	case practical.Raw:
		return []problem.Need{{State: n.bench, Levels: []int{benchRaw}}}
	case practical.ReadyToEat:
		return []problem.Need{{State: n.bench, Levels: []int{benchClean}}}
	}
	return nil
}

// rinseState is a single processor or mixer that several dishes use.
type rinseState struct {
	kit    practical.Kit
	state  int
	dishes []int // of each level but the first, which is clean
}

// rinseStates put a rinse between two dishes' uses of the same machine.
func (n *network) rinseStates() {
	k := n.practical.Kitchen
	for _, m := range []struct {
		kit    practical.Kit
		number int
	}{{practical.Processor, k.Processors}, {practical.Mixer, k.Mixers}} {
		dishes := n.users(m.kit)
		if m.number != 1 || len(dishes) < 2 || n.practical.Rules.Rinse == 0 {
			continue
		}
		state := problem.State{
			Name: string(m.kit), Levels: []string{"clean"}, Uses: []problem.Use{n.inHands()},
			Demand: n.demand("rinse/"+string(m.kit), "", "the %s is rinsed between two dishes", m.kit),
		}
		for _, d := range dishes {
			state.Levels = append(state.Levels, n.practical.Dishes[d].Letter)
		}
		for from := range state.Levels {
			row := make([]problem.Change, len(state.Levels))
			for to := range row {
				if from > 0 && to != from {
					row[to].Work = n.practical.Rules.Rinse
				}
			}
			state.Change = append(state.Change, row)
		}
		n.rinsed = append(n.rinsed, rinseState{kit: m.kit, state: len(n.problem.States), dishes: dishes})
		n.problem.States = append(n.problem.States, state)
	}
}

// users are the dishes whose hands use a kind of kit.
func (n *network) users(kit practical.Kit) (dishes []int) {
	for d, dish := range n.practical.Dishes {
		for _, s := range dish.Steps {
			if len(dishes) > 0 && dishes[len(dishes)-1] == d {
				break
			}
			for _, u := range s.Uses {
				if u == kit {
					dishes = append(dishes, d)
					break
				}
			}
		}
	}
	return dishes
}

// rinseNeed asks that the machine be this dish's while it is used.
func (n *network) rinseNeed(kit practical.Kit, dish int) []problem.Need {
	for _, r := range n.rinsed {
		for i, d := range r.dishes {
			if r.kit == kit && d == dish {
				return []problem.Need{{State: r.state, Levels: []int{i + 1}}}
			}
		}
	}
	return nil
}

package network

import (
	"fmt"
	"slices"

	"plait.example/internal/practical"
	"plait.example/solver/problem"
)

// grillHeats is how long a grill takes to be hot, in minutes. Common practice, no source.
const grillHeats = 5

// grillCelsius stands for a grill's heat when an oven cavity cools from it. A judgement.
const grillCelsius = 220

// ovenState is one cavity as the problem sees it.
type ovenState struct {
	oven       *practical.Oven // nil for a grill of its own
	state      int             // index into the problem's states
	shelves    int             // index into its resources; -1 for a grill of its own
	celsius    []int           // of each level; 0 off, -1 the grill
	grillLevel int             // -1: cannot grill
}

// ovenStates makes a state and a shelf resource of every oven that is used, and
// of a grill that stands apart.
func (n *network) ovenStates() {
	k := n.practical.Kitchen
	temperatures := n.candidates()
	for i := range k.Ovens {
		oven := &k.Ovens[i]
		shelves := n.resource(oven.Name+" shelves", oven.Shelves,
			n.demand("shelves/"+oven.Name, "", "the %s has %s", ovenName(oven), counted(oven.Shelves, "shelf")))
		for j, t := range k.Taken {
			if t.Kit == practical.OvenShelf && i == 0 {
				n.taken(j, t, shelves)
			}
		}
		o := ovenState{oven: oven, shelves: shelves, celsius: append([]int{0}, temperatures...), grillLevel: -1}
		if i == 0 && k.Grill == practical.GrillInOven {
			o.grillLevel = len(o.celsius)
			o.celsius = append(o.celsius, -1)
		}
		n.addOvenState(o, ovenName(oven))
	}
	if k.Grill == practical.SeparateGrill {
		n.addOvenState(ovenState{shelves: -1, celsius: []int{0, -1}, grillLevel: 1}, "grill")
	}
}

func ovenName(o *practical.Oven) string {
	if o.Name == "" {
		return "oven"
	}
	return o.Name
}

func (n *network) addOvenState(o ovenState, name string) {
	state := problem.State{
		Name: name, Uses: []problem.Use{n.inHands()},
		Demand: n.demand("oven/"+name, "", "the %s has one setting at a time, and changing it takes time", name),
	}
	if !n.practical.Rules.OvenInSetUp {
		state.ChangeFrom = n.start
	}
	for _, c := range o.celsius {
		state.Levels = append(state.Levels, levelName(c))
		row := make([]problem.Change, len(o.celsius))
		for j, to := range o.celsius {
			row[j] = problem.Change{Work: 1, Settle: heatMinutes(o.oven, c, to)}
		}
		state.Change = append(state.Change, row)
	}
	closeTriangles(state.Change)
	o.state = len(n.problem.States)
	n.problem.States = append(n.problem.States, state)
	n.ovens = append(n.ovens, o)
}

func levelName(celsius int) string {
	switch celsius {
	case 0:
		return "off"
	case -1:
		return "grill"
	default:
		return fmt.Sprintf("%d C", celsius)
	}
}

// heatMinutes is how long a cavity takes from one level's heat to another's.
func heatMinutes(o *practical.Oven, from, to int) int {
	if from == to || to == 0 {
		return 0
	}
	if to == -1 {
		return grillHeats
	}
	if o == nil {
		return grillHeats
	}
	switch from {
	case 0:
		from = 20
	case -1:
		from = grillCelsius
	}
	return o.HeatMinutes(from, to)
}

// closeTriangles makes no way round shorter than the direct one, as the problem demands.
func closeTriangles(change [][]problem.Change) {
	for b := range change {
		for a := range change {
			for c := range change {
				if a == b || b == c || a == c {
					continue
				}
				round := change[a][b].Work + change[a][b].Settle + change[b][c].Work + change[b][c].Settle
				if direct := &change[a][c]; direct.Work+direct.Settle > round {
					direct.Settle = round - direct.Work
				}
			}
		}
	}
}

// candidates are the temperatures that any plan needs to consider: what a
// recipe names, and, where two bands meet but neither name lies in both, the
// least temperature that lies in both. Bands that meet pairwise have a common
// point, and the greatest of their lower ends is one (Helly, in one dimension).
func (n *network) candidates() []int {
	var named, edges []int
	type band struct{ low, high int }
	var bands []band
	for d := range n.practical.Dishes {
		for i := range n.practical.Dishes[d].Steps {
			if w := n.practical.Dishes[d].Steps[i].Wait; w != nil && w.Place == practical.AtOven {
				named = append(named, w.Celsius)
				edges = append(edges, w.Celsius-w.Band)
				bands = append(bands, band{w.Celsius - w.Band, w.Celsius + w.Band})
			}
		}
	}
	inside := func(c int) (set string) {
		for _, b := range bands {
			if b.low <= c && c <= b.high {
				set += "1"
			} else {
				set += "0"
			}
		}
		return set
	}
	slices.Sort(named)
	named = slices.Compact(named)
	slices.Sort(edges)
	for _, e := range slices.Compact(edges) {
		if set := inside(e); shares(set) && !slices.ContainsFunc(named, func(c int) bool { return covers(inside(c), set) }) {
			named = append(named, e)
		}
	}
	slices.Sort(named)
	return slices.Compact(named)
}

// shares says whether a set of loads, written in ones and noughts, has two or more.
func shares(set string) bool {
	ones := 0
	for _, r := range set {
		if r == '1' {
			ones++
		}
	}
	return ones > 1
}

// covers says whether set a holds all of set b.
func covers(a, b string) bool {
	for i := range b {
		if b[i] == '1' && a[i] == '0' {
			return false
		}
	}
	return true
}

// ovenModes are the ways to bake a load: one a fitting oven.
func (n *network) ovenModes(w *practical.Wait) (modes []problem.Mode, ovens []int) {
	for i, o := range n.ovens {
		if o.oven == nil {
			continue
		}
		var levels []int
		for level, c := range o.celsius {
			if c > 0 && w.Celsius-w.Band <= c && c <= w.Celsius+w.Band {
				levels = append(levels, level)
			}
		}
		amount := max(1, w.Shelves)
		if len(levels) > 0 && amount <= o.oven.Shelves {
			modes = append(modes, problem.Mode{
				Name:  ovenName(o.oven),
				Uses:  []problem.Use{{Resource: o.shelves, Amount: amount}},
				Needs: []problem.Need{{State: o.state, Levels: levels}},
			})
			ovens = append(ovens, i)
		}
	}
	return modes, ovens
}

// grillUse is what grilling takes: the grill pan and a hot grill, or the whole cavity.
func (n *network) grillUse() (uses []problem.Use, needs []problem.Need, oven int) {
	for i, o := range n.ovens {
		if o.grillLevel < 0 {
			continue
		}
		needs = []problem.Need{{State: o.state, Levels: []int{o.grillLevel}}}
		if o.oven == nil {
			return []problem.Use{{Resource: n.kit[practical.GrillPan], Amount: 1}}, needs, i
		}
		return []problem.Use{{Resource: o.shelves, Amount: 1}}, needs, i
	}
	return nil, nil, -1
}

// doors keeps the oven door shut: another load goes in or comes out either
// before a load's wait begins (or with it), or not until the door may open again.
func (n *network) doors() {
	for _, a := range n.order {
		if a.oven == nil {
			continue
		}
		for _, b := range n.order {
			if a != b && b.oven != nil {
				n.door(a, b)
			}
		}
	}
}

func (n *network) door(a, b *stepJobs) {
	for modeA, ovenA := range a.oven {
		for modeB, ovenB := range b.oven {
			shut := max(a.step.Wait.DoorShut, doorRecovery(n.ovens[ovenA].oven))
			if ovenA != ovenB || shut <= 0 {
				continue
			}
			demand := n.demand("door/"+a.step.ID, a.step.ID,
				"the oven door stays shut for %d minutes once %s is in", shut, n.food(a))
			for _, event := range []int{b.putIn, b.takeOut} {
				n.problem.Choices = append(n.problem.Choices, problem.Choice{
					If: []problem.Chosen{{Activity: a.wait, Mode: modeA}, {Activity: b.wait, Mode: modeB}},
					Any: []problem.Lag{
						{From: problem.Start(event), To: problem.Start(a.wait)},
						{From: problem.Start(a.wait), To: problem.Start(event), Min: shut},
					},
					Demand: demand,
				})
			}
		}
	}
}

// doorRecovery is how long an oven needs between two openings, in minutes.
// Where the kitchen does not say: 3, common practice, no source.
func doorRecovery(o *practical.Oven) int {
	if o.DoorOpen > 0 {
		return o.DoorOpen
	}
	return 3
}

package network

import (
	"fmt"

	"plait.example/internal/practical"
	"plait.example/solver/problem"
)

// resources are the hands, the looks and the counted kit, with their calendars.
func (n *network) resources() {
	p, k := n.practical, n.practical.Kitchen
	text := "one pair of hands does one thing at a time"
	if p.Cooks > 1 {
		text = fmt.Sprintf("%d cooks do at most %d things at a time", p.Cooks, p.Cooks)
	}
	n.hands = n.resource("hands", p.Cooks, n.demand("hands", "", "%s", text))
	n.looks = n.resource("looks", p.Rules.Looks,
		n.demand("looks", "", "you keep an eye on at most %s at once", counted(p.Rules.Looks, "thing")))
	for _, c := range []struct {
		kit    practical.Kit
		number int
	}{
		{practical.Ring, k.Rings},
		{practical.Processor, k.Processors},
		{practical.Mixer, k.Mixers},
		{practical.Microwave, k.Microwaves},
		{practical.FridgeKit, k.FridgeShelves},
		{practical.FreezerKit, k.FreezerShelves},
	} {
		demand := n.demand("kit/"+string(c.kit), "", "the kitchen has %s", counted(c.number, kitWord(c.kit)))
		n.kit[c.kit] = n.resource(string(c.kit), c.number, demand)
	}
	if k.Grill == practical.SeparateGrill {
		n.kit[practical.GrillPan] = n.resource("grill", 1, n.demand("kit/grill", "", "there is one grill"))
	}
	n.breaks()
	for i, t := range k.Taken {
		if t.Kit != practical.OvenShelf {
			n.taken(i, t, n.kit[t.Kit])
		}
	}
}

func (n *network) resource(name string, capacity int, demand string) int {
	n.problem.Resources = append(n.problem.Resources, problem.Resource{Name: name, Capacity: capacity, Demand: demand})
	return len(n.problem.Resources) - 1
}

// breaks close the hands, and the looks with them: food that must be looked at
// cannot be left alone for a break.
func (n *network) breaks() {
	for i, b := range n.practical.Clock.Breaks {
		demand := n.demand(fmt.Sprintf("rest-break/%d", i+1), "",
			"a rest break of %d minutes at %s", b.Minutes, n.clockWords(b.At))
		from := n.minute(b.At)
		for _, r := range []int{n.hands, n.looks} {
			n.closure(r, problem.Closure{From: from, Until: from + b.Minutes, Demand: demand})
		}
	}
}

// taken closes part of a resource while the kit is someone else's.
func (n *network) taken(i int, t practical.Taken, resource int) {
	demand := n.demand(fmt.Sprintf("taken/%d", i+1), "",
		"somebody else has %s from %s to %s", counted(t.Number, kitWord(t.Kit)), n.clockWords(t.From), n.clockWords(t.Until))
	n.closure(resource, problem.Closure{
		From: max(0, n.minute(t.From)), Until: n.minute(t.Until), Demand: demand,
		Left: max(0, n.problem.Resources[resource].Capacity-t.Number),
	})
}

func (n *network) closure(resource int, c problem.Closure) {
	if c.Until > c.From && c.Until > 0 {
		r := &n.problem.Resources[resource]
		r.Closures = append(r.Closures, c)
	}
}

package app

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// TakeWayOut makes the change that a way out of the plan of version proposes,
// named by its demand, as one labelled version that can be undone, and plans
// again. A demand that the plan does not offer is a fault.
func (a *App) TakeWayOut(ctx context.Context, id string, version int, demand string, o PlanOptions) (Record, error) {
	r, err := a.planned(ctx, id, version)
	if err != nil {
		return r, err
	}
	i := slices.IndexFunc(r.Plan.WaysOut, func(w timeplan.WayOut) bool { return w.Demand == demand })
	if i < 0 {
		return r, practical.Fault{
			Code: practical.Invalid, Field: "way-out", Message: fmt.Sprintf("the plan offers no way out %q", demand), Hint: "choose one that it offers",
		}
	}
	return a.replan(ctx, r, r.Plan.WaysOut[i].Text, func(p *practical.Practical) { giveWay(p, demand, r.Plan.Over) }, o)
}

// giveWay lets one demand of a practical give way; over is by how many minutes
// the plan runs over.
func giveWay(p *practical.Practical, demand string, over int) {
	kind, of, _ := strings.Cut(demand, "/")
	switch kind {
	case "finish":
		p.Clock.Finish += practical.TimeOfDay(over)
	case "wash-up":
		p.Rules.WashEvery = 0
	case "serving-window":
		p.Rules.Window *= 2
	case "pace":
		p.Rules.Pace = practical.Quick
	case "hands":
		p.Cooks = 2
	case "dish":
		RemoveDish(p, of)
		p.Rules.Dishes = 0
	case "pin":
		p.Pins = slices.DeleteFunc(p.Pins, func(x practical.Pin) bool { return x.Row == of })
	case "within":
		if d := dishOf(p, of); d != nil {
			d.Serve.Within = 0
		}
	case "wait-most", "gap-most":
		loosen(p, of)
	}
}

// loosen takes the most off a step's wait ("A3") or off its gap after another ("A3/A2").
func loosen(p *practical.Practical, of string) {
	id, before, gap := strings.Cut(of, "/")
	for _, s := range allSteps(p) {
		if s.ID != id {
			continue
		}
		if !gap && s.Wait != nil {
			s.Wait.Most = 0
		}
		for i := range s.After {
			if gap && s.After[i].Step == before {
				s.After[i].Most = nil
			}
		}
	}
}

package paper

import (
	"fmt"
	"time"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// safety is what stands under every plan.
var safety = []string{
	"The safety notes here are reminders of usual practice. They do not approve anything.",
	"Local food-safety rules, the school's risk assessment and the responsible adult decide.",
	"Cook through: 75 °C in the middle, or an equivalent. Keep hot food at 63 °C or above, chilled food below 8 °C, better 5 °C.",
	"Keep raw meat, fish and egg apart from food that is eaten as it is. Check every label for allergens.",
}

// placeWords is what a cook calls each place.
var placeWords = map[practical.Place]string{
	practical.AtBench: "bench", practical.AtFreezer: "freezer", practical.AtFridge: "fridge",
	practical.AtWarm: "warm place", practical.AtSide: "side", practical.AtHands: "hands",
	practical.AtHob: "hob", practical.AtOven: "oven", practical.AtGrill: "grill",
	practical.AtMicrowave: "microwave", practical.Served: "served",
}

// heatWords is how a dish is served.
var heatWords = map[practical.Heat]string{
	practical.Hot: "served hot", practical.Cold: "served cold", practical.AsIs: "served as it is",
}

// usualPlace is where the hands are in a row of that kind, so that only other
// places need saying.
func usualPlace(a timeplan.Action) practical.Place {
	switch a {
	case timeplan.SetUp:
		return practical.AtBench
	case timeplan.Do, timeplan.WashUp:
		return practical.AtHands
	case timeplan.TurnTo:
		return practical.AtOven
	case timeplan.Serve:
		return practical.Served
	}
	return ""
}

// dateWords writes 2026-11-25 as "Wednesday 25 November 2026"; anything else stays.
func dateWords(date string) string {
	d, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return date
	}
	return d.Format("Monday 2 January 2006")
}

// onClock writes a time with its half of the day where the plan's clock has
// twelve hours.
func onClock(t practical.TimeOfDay, hours int) string {
	if hours != 12 {
		return t.String()
	}
	half := " am"
	if int(t)/60%24 >= 12 {
		half = " pm"
	}
	return t.Write(12) + half
}

// clockSentence says when the session is, who cooks, and how exact the times are.
func clockSentence(p *timeplan.Plan) string {
	cooks, exact := "One cook.", "Times to the minute."
	if p.Cooks > 1 {
		cooks = "Two cooks."
	}
	if p.Round > 1 {
		exact = fmt.Sprintf("Times to %d minutes.", p.Round)
	}
	return fmt.Sprintf("Set-up from %s. Clock %s to %s. %s %s",
		onClock(p.SetUp, p.Hours), onClock(p.Start, p.Hours), onClock(p.Allowed, p.Hours), cooks, exact)
}

// finishSentence says when the plan finishes, by how much it runs over or what
// is in hand, and what is proved.
func finishSentence(p *timeplan.Plan) string {
	said := ""
	switch {
	case p.Status == timeplan.Infeasible && len(p.Rows) == 0:
		said = "Does not fit: no plan was found."
	case p.Over > 0:
		said = fmt.Sprintf("Does not fit: finishes %s, %s over.", p.Finish.Write(p.Hours), minutes(p.Over))
	case p.Status == timeplan.Infeasible:
		said = fmt.Sprintf("Does not fit: finishes %s.", p.Finish.Write(p.Hours))
	default:
		said = fmt.Sprintf("Finishes %s.", p.Finish.Write(p.Hours))
	}
	if p.Bound > 0 {
		said += fmt.Sprintf(" No plan can finish before %s.", p.Bound.Write(p.Hours))
	}
	if p.Status == timeplan.Optimal {
		said += " This is the earliest."
	}
	if spare := p.Spare(); spare > 0 && p.Over == 0 && len(p.Rows) > 0 {
		said += fmt.Sprintf(" %s in hand.", minutes(spare))
	}
	return said
}

// minutes writes a number of minutes.
func minutes(n int) string {
	if n == 1 {
		return "1 minute"
	}
	return fmt.Sprintf("%d minutes", n)
}

// dueWords says when a put-in comes out again: "out at 10:05".
func dueWords(p *timeplan.Plan, r timeplan.Row) string {
	return "out at " + written(r.Until, p.Round).Write(p.Hours)
}

// written is a time as rows are written: rounded down.
func written(t practical.TimeOfDay, round int) practical.TimeOfDay {
	return t - t%practical.TimeOfDay(max(round, 1))
}

package timeplantest

import (
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// TooMuch is a plan that runs over: rolls and soup in an hour, with the demands
// that cannot hold together and the ways out.
func TooMuch() *timeplan.Plan {
	b := &build{
		plan: &timeplan.Plan{
			Title: "Rolls and soup in an hour",
			SetUp: at("08:45"), Start: at("09:00"), Finish: at("10:14"), Allowed: at("10:00"),
			Hours: 24, Round: 1, Cooks: 1, Status: timeplan.Infeasible, Bound: at("10:12"), Over: 14, Seed: 7,
			Dishes: []timeplan.Dish{
				{Letter: "A", Name: "Quick bread rolls", Heat: practical.AsIs, Allergens: []string{"gluten"}},
				{Letter: "B", Name: "Carrot soup", Heat: practical.Hot},
			},
			Ovens: []timeplan.Setting{{Oven: "oven", Celsius: 220, Words: "220 °C, fan 200 °C, gas 7", Turned: at("09:30"), Hot: at("09:50"), Until: at("10:10")}},
			Conflict: []timeplan.Demand{
				{Name: "finish", Text: "everything ends by 10:00"},
				{Name: "wait-least/A1", Text: "the dough proves at least 40 minutes", Step: "A1"},
				{Name: "wait-least/A2", Text: "the rolls bake at least 15 minutes", Step: "A2"},
				{Name: "clean-down", Text: "the last clean-down is inside the clock"},
			},
			WaysOut: []timeplan.WayOut{
				{Text: "finish 14 minutes later", Demand: "finish", Finish: at("10:14"), Cost: 14},
				{Text: "prove the dough 26 minutes instead of 40", Demand: "wait-least/A1", Finish: at("10:00"), Cost: 28},
			},
		},
		waits: map[string]waitOf{"A1": {least: 40, most: 75}, "A2": {least: 15, most: 20}, "B1": {least: 20, most: 40, attention: practical.Look, every: 10}},
	}
	b.row("08:45", 10, "set-up/hands", timeplan.SetUp, practical.AtBench, "Wash hands; weigh everything.")
	b.row("09:00", 9, "A1/hands", timeplan.Do, practical.AtHands, "Mix to a soft dough; knead until smooth.")
	b.row("09:09", 1, "A1/put-in", timeplan.PutIn, practical.AtWarm, "Cover the dough and put it in a warm place.")
	b.row("09:10", 14, "B1/hands", timeplan.Do, practical.AtHands, "Peel and slice carrots and onion; sweat in oil.", safety("Claw grip."))
	b.row("09:24", 1, "B1/put-in", timeplan.PutIn, practical.AtHob, "Add stock and put it on to simmer.")
	b.row("09:25", 5, "wash-up/1", timeplan.WashUp, practical.AtHands, "Wash up; wipe down.")
	b.row("09:30", 1, "oven/turn-to/1", timeplan.TurnTo, practical.AtOven, "Turn the oven on to 220 °C, fan 200 °C, gas 7.", set(220, "220 °C, fan 200 °C, gas 7"))
	b.row("09:45", 1, "B1/take-out", timeplan.TakeOut, practical.AtHob, "Take the soup off the heat.")
	b.row("09:46", 4, "B2/hands", timeplan.Do, practical.AtHands, "Blend the soup; season.", kit("processor"), safety("Let it stop bubbling first; half fill."))
	b.row("09:50", 1, "A1/take-out", timeplan.TakeOut, practical.AtWarm, "Fetch the dough.", check("Doubled."))
	b.row("09:51", 3, "A2/hands", timeplan.Do, practical.AtHands, "Shape 6 rolls.")
	b.row("09:54", 1, "A2/put-in", timeplan.PutIn, practical.AtOven, "Put the rolls in.", set(220, "220 °C, fan 200 °C, gas 7"))
	b.row("10:02", 4, "B3/hands", timeplan.Do, practical.AtHob, "Heat the soup until it bubbles.", check("75 °C or more."))
	b.row("10:06", 2, "B/serve", timeplan.Serve, practical.Served, "Serve the soup in bowls.")
	b.row("10:10", 1, "A2/take-out", timeplan.TakeOut, practical.AtOven, "Take the rolls out.", check("Sounds hollow when tapped."))
	b.row("10:11", 1, "A/serve", timeplan.Serve, practical.Served, "Serve the rolls in a basket.")
	b.row("10:12", 2, "wash-up/2", timeplan.WashUp, practical.AtHands, "Last clean-down.")
	b.pair()
	b.strand("A", "dough", "A1/hands", "A1/put-in", "A1/take-out", "A2/hands", "A2/put-in", "A2/take-out", "A/serve")
	b.strand("B", "soup", "B1/hands", "B1/put-in", "B1/take-out", "B2/hands", "B3/hands", "B/serve")
	return b.plan
}

// Pair is a short plan by two cooks on a 12-hour clock past noon, written to
// five minutes, with a rest break.
func Pair() *timeplan.Plan {
	b := &build{
		plan: &timeplan.Plan{
			Title: "Two dishes by a pair",
			SetUp: at("12:30"), Start: at("12:45"), Finish: at("13:41"), Allowed: at("13:45"),
			Hours: 12, Round: 5, Cooks: 2, Status: timeplan.Optimal, Bound: at("13:41"), Seed: 3,
			Dishes: []timeplan.Dish{
				{Letter: "A", Name: "Flatbreads", Heat: practical.AsIs, Allergens: []string{"gluten"}},
				{Letter: "B", Name: "Bean salad", Heat: practical.Cold},
			},
		},
		waits: map[string]waitOf{"A1": {least: 15, most: 40}},
	}
	b.row("12:30", 8, "set-up/1", timeplan.SetUp, practical.AtBench, "Wash hands; weigh everything.", cook(1))
	b.row("12:30", 8, "set-up/2", timeplan.SetUp, practical.AtBench, "Wash hands; wash the vegetables.", cook(2))
	b.row("12:45", 9, "A1/hands", timeplan.Do, practical.AtHands, "Mix and knead the dough.", cook(1))
	b.row("12:47", 12, "B1/hands", timeplan.Do, practical.AtHands, "Chop peppers, onion and herbs.", cook(2), safety("Claw grip."))
	b.row("12:54", 1, "A1/put-in", timeplan.PutIn, practical.AtSide, "Cover the dough and leave it to rest.", cook(1))
	b.row("13:00", 5, "rest/1", timeplan.Rest, "", "Rest break: hands off, sit down.")
	b.row("13:11", 1, "A1/take-out", timeplan.TakeOut, practical.AtSide, "Fetch the dough.", cook(1))
	b.row("13:12", 8, "A2/hands", timeplan.Do, practical.AtHands, "Divide and roll out thin.", cook(1))
	b.row("13:14", 6, "B2/hands", timeplan.Do, practical.AtHands, "Drain the beans; mix with dressing.", cook(2))
	b.row("13:20", 12, "A3/hands", timeplan.Do, practical.AtHob, "Fry the flatbreads, two minutes a side.", cook(1), check("Brown spots."), safety("Hot pan; handle inwards."))
	b.row("13:22", 6, "wash-up/1", timeplan.WashUp, practical.AtHands, "Wash up.", cook(2))
	b.row("13:29", 3, "B/serve", timeplan.Serve, practical.Served, "Spoon into the glass bowl; scatter herbs.", cook(2))
	b.row("13:32", 2, "A/serve", timeplan.Serve, practical.Served, "Stack in a napkin.", cook(1))
	b.row("13:34", 7, "wash-up/2", timeplan.WashUp, practical.AtHands, "Last clean-down together.", cook(1))
	b.row("13:34", 7, "wash-up/3", timeplan.WashUp, practical.AtHands, "Last clean-down together.", cook(2))
	b.row("13:45", 5, "tasting", timeplan.Do, practical.AtHands, "Taste and take photographs.", outside)
	b.pair()
	b.strand("A", "dough", "A1/hands", "A1/put-in", "A1/take-out", "A2/hands", "A3/hands", "A/serve")
	b.strand("B", "salad", "B1/hands", "B2/hands", "B/serve")
	return b.plan
}

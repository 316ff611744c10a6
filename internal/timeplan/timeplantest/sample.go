package timeplantest

import (
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

const (
	hot  = "200 °C, fan 180 °C, gas 6"
	warm = "180 °C, fan 160 °C, gas 4"
)

// Sample is a plan of three invented dishes in three hours by one cook: a
// rough-puff pasty, gnocchi with a pepper sauce, choux buns. Each call makes a
// new one.
func Sample() *timeplan.Plan {
	b := &build{
		plan: &timeplan.Plan{
			Title: "Three dishes in three hours", Date: "2026-11-25",
			SetUp: at("08:30"), Start: at("09:00"), Finish: at("11:55"), Allowed: at("12:00"),
			Hours: 24, Round: 1, Cooks: 1, Status: timeplan.Feasible, Bound: at("11:53"), Seed: 1,
			Dishes: []timeplan.Dish{
				{Letter: "A", Name: "Rough-puff beef pasty", Heat: practical.Hot, Allergens: []string{"gluten", "milk", "egg"}},
				{Letter: "B", Name: "Potato gnocchi with roasted pepper sauce", Heat: practical.Hot, Allergens: []string{"gluten", "egg"}},
				{Letter: "C", Name: "Choux buns with vanilla custard", Heat: practical.Cold, Allergens: []string{"gluten", "milk", "egg"}},
			},
			Ovens: []timeplan.Setting{
				{Oven: "oven", Celsius: 200, Words: hot, Turned: at("08:57"), Hot: at("09:10"), Until: at("10:41")},
				{Oven: "oven", Celsius: 180, Words: warm, Turned: at("10:41"), Hot: at("10:51"), Until: at("11:44")},
			},
			Notes: []string{"The pastry stands longer in the fridge than it needs; that does it no harm."},
		},
		waits: map[string]waitOf{
			"A1": {least: 20, most: 40},
			"A2": {least: 20, most: 90},
			"A4": {least: 30, most: 35},
			"B1": {least: 20, most: 30},
			"B2": {least: 18, most: 25, attention: practical.Look, every: 10},
			"B3": {least: 10, most: 20, attention: practical.Look, every: 5},
			"B4": {least: 10, most: 30},
			"B5": {least: 10, most: 90},
			"B6": {least: 8, most: 25},
			"C1": {least: 10, most: 40},
			"C2": {least: 25, most: 30},
			"C3": {least: 20, most: 60},
			"C4": {least: 30, most: 75},
		},
	}
	b.morning()
	b.midday()
	b.end()
	b.pair()
	b.strand("A", "pastry", "A0/hands", "A1/hands", "A1/put-in", "A1/take-out", "A2/hands", "A2/put-in", "A2/take-out",
		"A4/hands", "A4/put-in", "A4/take-out", "A/serve")
	b.strand("A", "filling", "A3/hands", "A4/hands")
	b.strand("B", "sauce", "B1/hands", "B1/put-in", "B1/take-out", "B3/hands", "B3/put-in", "B3/take-out", "B/serve")
	b.strand("B", "gnocchi", "B0/hands", "B2/hands", "B2/put-in", "B2/take-out", "B4/hands", "B4/put-in", "B4/take-out",
		"B5/hands", "B5/put-in", "B5/take-out", "B7/hands", "B/serve")
	b.strand("B", "water", "B6/put-in", "B6/take-out", "B7/hands")
	b.strand("C", "buns", "C0/hands", "C1/hands", "C1/put-in", "C1/take-out", "C2/hands", "C2/put-in", "C2/take-out",
		"C3/hands", "C3/put-in", "C3/take-out", "C5/hands", "C/serve")
	b.strand("C", "custard", "C4/hands", "C4/put-in", "C4/take-out", "C5/hands")
	return b.plan
}

// morning is set-up and the first hour.
func (b *build) morning() {
	const (
		setUp, do, in, out, wash, turn = timeplan.SetUp, timeplan.Do, timeplan.PutIn, timeplan.TakeOut, timeplan.WashUp, timeplan.TurnTo
		bench, hands, fridge, side     = practical.AtBench, practical.AtHands, practical.AtFridge, practical.AtSide
		hob, oven                      = practical.AtHob, practical.AtOven
	)
	b.row("08:30", 3, "set-up/hands", setUp, bench, "Wash hands, apron on, hair tied back.", safety("Wash for 20 seconds; dry well."))
	b.row("08:33", 7, "A0/hands", setUp, bench, "Weigh everything for the pasty; put the butter back in the fridge.", kit("scales, 4 bowls"))
	b.row("08:40", 6, "B0/hands", setUp, bench, "Weigh everything for the gnocchi and the sauce.", kit("scales, 3 bowls"))
	b.row("08:46", 6, "C0/hands", setUp, bench, "Weigh everything for the buns and the custard.", kit("scales, 4 bowls"),
		safety("Nuts are not in the recipe; check the labels for the allergens in the key."))
	b.row("08:52", 5, "set-up/trays", setUp, bench, "Line two baking trays; gather rolling pin, piping bag and wire rack.")
	b.row("08:57", 1, "oven/turn-to/1", turn, oven, "Turn the oven on to 200 °C, fan 180 °C, gas 6.", set(200, hot))
	b.row("09:00", 10, "A1/hands", do, hands, "Stir the cold butter cubes into the flour; add iced water and bring it to a rough dough.",
		kit("large bowl, round-bladed knife"), check("Lumps of butter can still be seen."))
	b.row("09:10", 1, "A1/put-in", in, fridge, "Wrap the dough and put it in the fridge.")
	b.row("09:11", 7, "C1/hands", do, hob, "Boil water and butter; take off the heat and beat in the flour.", kit("saucepan, wooden spoon"),
		check("The paste leaves the side of the pan."), safety("Turn the pan handle inwards."))
	b.row("09:18", 1, "C1/put-in", in, side, "Spread the paste on a plate and leave it to cool.")
	b.row("09:19", 4, "B1/hands", do, hands, "Halve and seed the peppers; rub with oil and lay them skin side up.", kit("brown board, knife, tray"),
		safety("Claw grip; keep the point of the knife down."))
	b.row("09:23", 1, "B1/put-in", in, oven, "Put the peppers in on the top shelf.", set(200, hot), safety("Dry oven gloves."))
	b.row("09:24", 3, "B2/hands", do, hands, "Scrub the potatoes and put them, in their skins, in cold salted water.", kit("large pan with lid"))
	b.row("09:27", 1, "B2/put-in", in, hob, "Put the pan on to boil, lid on.", check("Look at 09:38: it bubbles gently."))
	b.row("09:28", 5, "wash-up/1", wash, hands, "Wash up; wipe down the bench.")
	b.row("09:33", 1, "A1/take-out", out, fridge, "Take the dough out of the fridge.")
	b.row("09:34", 10, "A2/hands", do, hands, "Roll to a long strip, fold in three, turn; do it four times.", kit("rolling pin, flour dredger"),
		check("Edges square, layers showing."))
	b.row("09:44", 1, "A2/put-in", in, fridge, "Wrap the pastry and put it back in the fridge.")
	b.row("09:45", 2, "B1/take-out", out, oven, "Take the peppers out; tip into a bowl and cover with a plate.", kit("oven gloves, bowl, plate"),
		check("Skins blistered and black in places."), safety("Hot tray: say so before you move."))
	b.row("09:47", 2, "B2/take-out", out, hob, "Drain the potatoes.", kit("colander"), check("A knife slides in easily."),
		safety("Pour away from you: steam burns."))
	b.row("09:49", 6, "B4/hands", do, hands, "Peel the potatoes while warm and press through the ricer.", kit("ricer, clean cloth"))
	b.row("09:55", 1, "B4/put-in", in, side, "Spread the potato on a tray and let the steam go.")
	b.row("09:56", 1, "C1/take-out", out, side, "Fetch the choux paste.", check("Cool enough to touch."))
}

// midday is the second hour and a little more.
func (b *build) midday() {
	const (
		do, in, out, wash, turn  = timeplan.Do, timeplan.PutIn, timeplan.TakeOut, timeplan.WashUp, timeplan.TurnTo
		hands, fridge, side, hob = practical.AtHands, practical.AtFridge, practical.AtSide, practical.AtHob
		oven                     = practical.AtOven
	)
	b.row("09:57", 12, "C2/hands", do, hands, "Beat in the eggs little by little until glossy; pipe 12 buns.", kit("electric whisk, piping bag, 1 lined tray"),
		check("It drops from the spoon in a V."), safety("Raw egg: wash hands after."))
	b.row("10:09", 1, "C2/put-in", in, oven, "Put the buns in on the middle shelf. Keep the door shut until 10:30.", set(200, hot), safety("Dry oven gloves."))
	b.row("10:10", 1, "B4/take-out", out, side, "Fetch the potato.")
	b.row("10:11", 12, "B5/hands", do, hands, "Mix potato, yolk and flour to a soft dough; roll, cut and mark 40 gnocchi.", kit("bowl, table knife, fork"),
		check("Soft, not sticky."), safety("Raw egg: wash hands after."))
	b.row("10:23", 1, "B5/put-in", in, fridge, "Put the gnocchi in the fridge on a floured tray.")
	b.row("10:24", 9, "C4/hands", do, hob, "Whisk yolks, sugar and cornflour; pour on hot milk; stir over the heat until thick.", kit("pan, whisk, jug"),
		check("Thick, glossy, no taste of flour."), safety("Stir without stopping; it spits as it thickens."))
	b.row("10:33", 1, "C4/put-in", in, side, "Pour into a shallow dish, cover the surface, stand it in iced water.", kit("shallow dish, film, ice"),
		safety("Cool it quickly: in the fridge within 90 minutes."))
	b.row("10:34", 3, "wash-up/2", wash, hands, "Clean down after raw egg: wash board, bowls, bench and hands.")
	b.row("10:37", 1, "C2/take-out", out, oven, "Take the buns out.", check("Deep gold, light, firm at the sides."), safety("Dry oven gloves."))
	b.row("10:38", 2, "C3/hands", do, hands, "Pierce each bun with a skewer to let the steam out.", kit("skewer, wire rack"))
	b.row("10:40", 1, "C3/put-in", in, side, "Leave the buns on the rack to cool.")
	b.row("10:41", 1, "oven/turn-to/2", turn, oven, "Turn the oven down to 180 °C, fan 160 °C, gas 4.", set(180, warm))
	b.row("10:42", 8, "B3/hands", do, hands, "Skin the peppers; blend with tomatoes and garlic.", kit("processor, small pan"),
		safety("Unplug before you touch the blade."))
	b.row("10:50", 1, "B3/put-in", in, hob, "Put the sauce on to simmer, lid ajar.", check("Look at 10:55 and stir."))
	b.row("10:51", 10, "A3/hands", do, hands, "Dice beef, potato and onion small; season and mix.", kit("red board, knife, bowl"),
		check("All dice smaller than a fingernail."), safety("Raw beef: red board; wash hands after."))
	b.row("11:01", 1, "B3/take-out", out, hob, "Take the sauce off the heat; lid on.", check("It coats the spoon."))
	b.row("11:02", 1, "A2/take-out", out, fridge, "Take the pastry out of the fridge.")
	b.row("11:03", 10, "A4/hands", do, hands, "Roll out, cut 4 rounds, fill, fold and crimp; brush with egg.", kit("rolling pin, cutter, brush, tray"),
		check("Edges sealed all round."), safety("Raw beef and egg."))
	b.row("11:13", 1, "A4/put-in", in, oven, "Put the pasties in on the middle shelf.", set(180, warm), safety("Dry oven gloves."))
}

// end is filling, serving and the last clean-down.
func (b *build) end() {
	const (
		do, in, out, wash, serve = timeplan.Do, timeplan.PutIn, timeplan.TakeOut, timeplan.WashUp, timeplan.Serve
		hands, fridge, side, hob = practical.AtHands, practical.AtFridge, practical.AtSide, practical.AtHob
		oven                     = practical.AtOven
	)
	b.row("11:14", 4, "wash-up/3", wash, hands, "Clean down after raw beef and egg: red board away, bench, taps, hands.",
		safety("Before anything that is eaten as it is."))
	b.row("11:18", 1, "B6/put-in", in, hob, "Put a large pan of salted water on to boil, lid on.", kit("large pan with lid"))
	b.row("11:19", 1, "C4/take-out", out, side, "Fetch the custard.", check("Cold all through."))
	b.row("11:20", 1, "C3/take-out", out, side, "Fetch the buns.", check("Quite cold."))
	b.row("11:21", 10, "C5/hands", do, hands, "Whip the cream, fold into the custard; split and fill the buns.", kit("whisk, piping bag"),
		check("Soft peaks."), pinned)
	b.row("11:31", 3, "C/serve", serve, practical.Served, "Pile up the buns on the cake stand; dust with icing sugar.")
	b.row("11:34", 1, "B5/take-out", out, fridge, "Take the gnocchi out of the fridge.")
	b.row("11:35", 1, "B6/take-out", out, hob, "The water boils: lid off.")
	b.row("11:36", 6, "B7/hands", do, hob, "Boil the gnocchi in two lots; lift out when they float. Warm the sauce.", kit("slotted spoon"),
		check("They float; firm to the bite."), safety("Lower them in gently: boiling water."))
	b.row("11:42", 2, "B/serve", serve, practical.Served, "Toss in the sauce; serve in warm bowls with basil.")
	b.row("11:44", 1, "A4/take-out", out, oven, "Take the pasties out.", kit("probe"), check("Deep gold; 75 °C in the middle."),
		safety("Probe the thickest one; clean the probe."))
	b.row("11:45", 2, "A/serve", serve, practical.Served, "Serve the pasties on the wooden board with watercress.")
	b.row("11:47", 8, "wash-up/4", wash, hands, "Oven and hob off. Wash up, dry and put away; bench, sink and floor clean.", check("Ask for your unit to be seen."))
}

package picture

import (
	"fmt"
	"math/rand/v2"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

func clock(s string) practical.TimeOfDay {
	t, err := practical.ParseTimeOfDay(s)
	if err != nil {
		panic(err)
	}
	return t
}

// supper is a short plan, invented, in which everything that is drawn happens once: set-up, an oven
// turned on and turned down, waits in five places, a look, a rest break, a pinned row, a wash-up, serving.
func supper() *timeplan.Plan {
	p := &timeplan.Plan{
		Title: "Flans & a fool", SetUp: clock("09:40"), Start: clock("10:00"), Finish: clock("11:20"), Allowed: clock("11:30"),
		Hours: 24, Round: 1, Cooks: 1, Status: timeplan.Feasible, Bound: clock("11:12"),
		Dishes: []timeplan.Dish{{Letter: "A", Name: "Leek flans"}, {Letter: "B", Name: "Plum fool"}, {Letter: "C", Name: "Soda bread"}},
		Ovens: []timeplan.Setting{
			{Oven: "oven", Celsius: 200, Words: "200 °C, fan 180 °C, gas 6", Turned: clock("09:56"), Hot: clock("10:10"), Until: clock("10:47")},
			{Oven: "oven", Celsius: 160, Words: "160 °C, fan 140 °C, gas 3", Turned: clock("10:47"), Hot: clock("10:55"), Until: clock("11:14")},
		},
		Waits: []timeplan.Wait{
			{Step: "A1", Dish: "A", Place: practical.AtFridge, From: clock("10:09"), Until: clock("10:40"), Least: 30},
			{Step: "B1", Dish: "B", Place: practical.AtHob, From: clock("10:15"), Until: clock("10:29"), Least: 12, Attention: practical.Look, Every: 5},
			{Step: "C1", Dish: "C", Place: practical.AtOven, From: clock("10:23"), Until: clock("10:46"), Least: 22, Celsius: 200, Oven: "oven"},
			{Step: "B2", Dish: "B", Place: practical.AtFreezer, From: clock("10:32"), Until: clock("11:10"), Least: 20},
			{Step: "A2", Dish: "A", Place: practical.AtOven, From: clock("10:55"), Until: clock("11:13"), Least: 18, Celsius: 160, Oven: "oven"},
			{Step: "C2", Dish: "C", Place: practical.AtSide, From: clock("10:47"), Until: clock("11:16"), Least: 10},
			{Step: "B3", Dish: "B", Place: practical.AtHob, From: clock("10:57"), Until: clock("11:03"), Least: 5, Attention: practical.Stay},
		},
	}
	row := func(id, at string, minutes int, dish string, action timeplan.Action, place practical.Place, text string) {
		p.Rows = append(p.Rows, timeplan.Row{ID: id, At: clock(at), Clock: clock(at), Minutes: minutes, Dish: dish, Action: action, Place: place, Text: text})
	}
	row("A0/hands", "09:40", 9, "A", timeplan.SetUp, practical.AtBench, "Weigh for the flans; grease four tins")
	row("oven/1", "09:56", 1, "", timeplan.TurnTo, practical.AtOven, "Turn the oven on to 200 °C, fan 180 °C, gas 6")
	row("A1/hands", "10:00", 8, "A", timeplan.Do, practical.AtHands, "Rub in and bind the pastry")
	row("A1/put-in", "10:08", 1, "A", timeplan.PutIn, practical.AtFridge, "Pastry into the fridge")
	row("B1/hands", "10:09", 5, "B", timeplan.Do, practical.AtHands, "Stone the plums, slice them, and put them in a pan with sugar and two spoons of water")
	row("B1/put-in", "10:14", 1, "B", timeplan.PutIn, practical.AtHob, "Plums on to stew")
	row("C1/hands", "10:15", 7, "C", timeplan.Do, practical.AtHands, "Mix and shape the bread")
	row("C1/put-in", "10:22", 1, "C", timeplan.PutIn, practical.AtOven, "Bread in")
	row("wash/1", "10:23", 4, "", timeplan.WashUp, "", "Wash up, wipe down")
	row("B1/take-out", "10:29", 2, "B", timeplan.TakeOut, practical.AtHob, "Plums off the heat; sieve")
	row("B2/put-in", "10:31", 1, "B", timeplan.PutIn, practical.AtFreezer, "Purée into the freezer")
	row("rest/1", "10:33", 5, "", timeplan.Rest, "", "Rest break")
	row("A1/take-out", "10:40", 1, "A", timeplan.TakeOut, practical.AtFridge, "Fetch the pastry")
	row("A2/hands", "10:41", 5, "A", timeplan.Do, practical.AtHands, "Roll out and line the tins")
	row("C1/take-out", "10:46", 1, "C", timeplan.TakeOut, practical.AtOven, "Bread out, on to a rack")
	row("oven/2", "10:47", 1, "", timeplan.TurnTo, practical.AtOven, "Turn the oven down to 160 °C, fan 140 °C, gas 3")
	row("A3/hands", "10:48", 6, "A", timeplan.Do, practical.AtHands, "Fill with leeks and custard")
	row("A2/put-in", "10:54", 1, "A", timeplan.PutIn, practical.AtOven, "Flans in")
	row("B3/put-in", "10:56", 1, "B", timeplan.PutIn, practical.AtHob, "Sugar on to melt")
	row("B3/take-out", "11:03", 2, "B", timeplan.TakeOut, practical.AtHob, "Caramel off the heat; pour on to paper")
	row("B2/take-out", "11:10", 1, "B", timeplan.TakeOut, practical.AtFreezer, "Fetch the purée")
	row("B/serve", "11:11", 2, "B", timeplan.Serve, practical.Served, "Fold into cream; serve the fool in glasses")
	row("A2/take-out", "11:13", 1, "A", timeplan.TakeOut, practical.AtOven, "Flans out")
	row("A/serve", "11:14", 2, "A", timeplan.Serve, practical.Served, "Serve the flans hot")
	row("C/serve", "11:16", 1, "C", timeplan.Serve, practical.Served, "Serve the bread in a cloth")
	row("wash/2", "11:17", 3, "", timeplan.WashUp, "", "Clean down")
	p.Rows[20].Pinned = true
	index := map[string]int{}
	for i, r := range p.Rows {
		index[r.ID] = i
	}
	thread := func(dish, component, from, to string, place practical.Place, wait int) {
		t := timeplan.Thread{Dish: dish, Component: component, From: index[from], To: -1, Place: place, Wait: wait}
		if to != "" {
			t.To = index[to]
		}
		p.Threads = append(p.Threads, t)
	}
	thread("A", "pastry", "A0/hands", "A1/hands", practical.AtBench, -1)
	thread("A", "pastry", "A1/hands", "A1/put-in", practical.AtHands, -1)
	thread("A", "pastry", "A1/put-in", "A1/take-out", practical.AtFridge, 0)
	thread("A", "pastry", "A1/take-out", "A2/hands", practical.AtHands, -1)
	thread("A", "", "A2/hands", "A3/hands", practical.AtSide, -1)
	thread("A", "", "A3/hands", "A2/put-in", practical.AtHands, -1)
	thread("A", "", "A2/put-in", "A2/take-out", practical.AtOven, 4)
	thread("A", "", "A2/take-out", "A/serve", practical.AtHands, -1)
	thread("A", "", "A/serve", "", practical.Served, -1)
	thread("B", "plums", "B1/hands", "B1/put-in", practical.AtHands, -1)
	thread("B", "plums", "B1/put-in", "B1/take-out", practical.AtHob, 1)
	thread("B", "purée", "B1/take-out", "B2/put-in", practical.AtHands, -1)
	thread("B", "purée", "B2/put-in", "B2/take-out", practical.AtFreezer, 3)
	thread("B", "caramel", "B3/put-in", "B3/take-out", practical.AtHob, 6)
	thread("B", "caramel", "B3/take-out", "B/serve", practical.AtSide, -1)
	thread("B", "", "B2/take-out", "B/serve", practical.AtHands, -1)
	thread("B", "", "B/serve", "", practical.Served, -1)
	thread("C", "", "C1/hands", "C1/put-in", practical.AtHands, -1)
	thread("C", "", "C1/put-in", "C1/take-out", practical.AtOven, 2)
	thread("C", "", "C1/take-out", "C/serve", practical.AtSide, 5)
	thread("C", "", "C/serve", "", practical.Served, -1)
	return p
}

// clashing is supper with one row moved into another's minutes.
func clashing() *timeplan.Plan {
	p := supper()
	p.Rows[6].At, p.Rows[6].Clock = clock("10:12"), clock("10:12") // bread while the plums are in the hands
	p.Rows[5], p.Rows[6] = p.Rows[6], p.Rows[5]
	for i := range p.Threads {
		swap := func(n *int) {
			switch *n {
			case 5:
				*n = 6
			case 6:
				*n = 5
			}
		}
		swap(&p.Threads[i].From)
		swap(&p.Threads[i].To)
	}
	return p
}

// hostile is text that would break out of an SVG if it could.
var hostile = []string{
	`</text><script>alert(1)</script>`, `" onload="alert(1)`, `' style='fill:red`, `]]><!--`, `&lt;b&gt; &#x3c;`,
	"\x00\x01\x1b[31m", "\xff\xfe broken", "\u202eright to left", "a\nb\tc", `<a xlink:href="javascript:x">`, "data:text/html,x", "\ufffe\uffff", "🥧𝔅",
	"",
}

// randomPlan is any plan at all: times out of order, indices out of range,
// hostile words, unknown places and dishes.
func randomPlan(seed uint64) *timeplan.Plan {
	rng := rand.New(rand.NewPCG(seed, 17))
	word := func() string { return hostile[rng.IntN(len(hostile))] }
	at := func() practical.TimeOfDay { return practical.TimeOfDay(rng.IntN(1700) - 100) }
	p := &timeplan.Plan{
		Title: word(), SetUp: at(), Start: at(), Finish: at(), Allowed: at(),
		Hours: 12 + 12*rng.IntN(2), Cooks: rng.IntN(4), Over: rng.IntN(3) * 7,
	}
	letters := []string{"A", "B", "C", "D", "E", "F", "G", "H", "I", "?", ""}
	for i := range rng.IntN(10) {
		p.Dishes = append(p.Dishes, timeplan.Dish{Letter: letters[i], Name: word() + " " + word()})
	}
	letter := func() string {
		if rng.IntN(12) == 0 {
			return word()
		}
		return letters[rng.IntN(len(letters))]
	}
	places := []practical.Place{
		practical.AtBench, practical.AtFreezer, practical.AtFridge, practical.AtWarm, practical.AtSide, practical.AtHands,
		practical.AtHob, practical.AtOven, practical.AtGrill, practical.AtMicrowave, practical.Served, "", "attic",
	}
	actions := []timeplan.Action{timeplan.SetUp, timeplan.Do, timeplan.PutIn, timeplan.TakeOut, timeplan.TurnTo, timeplan.WashUp, timeplan.Serve, timeplan.Rest, "juggle"}
	ovens := []string{"", "left", "right", word()}
	now := practical.TimeOfDay(500 + rng.IntN(300))
	for i := range rng.IntN(45) {
		r := timeplan.Row{
			ID: fmt.Sprintf("%d%s", i, word()), At: now, Clock: now, Minutes: rng.IntN(15), Dish: letter(), Text: word() + " " + word(),
			Action: actions[rng.IntN(len(actions))], Place: places[rng.IntN(len(places))], Cook: rng.IntN(4), Pinned: rng.IntN(9) == 0,
			Oven: ovens[rng.IntN(len(ovens))],
		}
		if rng.IntN(25) == 0 {
			r.At, r.Minutes = at(), rng.IntN(100_000)-50_000
		}
		now += practical.TimeOfDay(rng.IntN(12))
		p.Rows = append(p.Rows, r)
	}
	for range rng.IntN(12) {
		p.Waits = append(p.Waits, timeplan.Wait{
			Dish: letter(), Place: places[rng.IntN(len(places))], From: at(), Until: at(), Oven: ovens[rng.IntN(len(ovens))],
			Attention: []practical.Attention{"", practical.Look, practical.Stay}[rng.IntN(3)], Every: rng.IntN(30) - 3,
		})
	}
	for range rng.IntN(60) {
		p.Threads = append(p.Threads, timeplan.Thread{
			Dish: letter(), Component: word(), From: rng.IntN(len(p.Rows)+4) - 2, To: rng.IntN(len(p.Rows)+4) - 2,
			Place: places[rng.IntN(len(places))], Wait: rng.IntN(len(p.Waits)+4) - 2,
		})
	}
	for range rng.IntN(4) {
		p.Ovens = append(p.Ovens, timeplan.Setting{Oven: ovens[rng.IntN(len(ovens))], Words: word() + ", " + word(), Turned: at(), Hot: at(), Until: at()})
	}
	return p
}

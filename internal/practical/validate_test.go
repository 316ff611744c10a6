package practical

import (
	"strings"
	"testing"
)

// small is a valid practical of two dishes, for tests to break.
func small() *Practical {
	p := threeInThree()
	p.Rules.Dishes = 2
	most := 30
	p.Dishes = []Dish{
		{
			Letter: "A", Name: "Scones", Serve: Serve{Heat: Hot, Minutes: 3},
			Steps: []Step{
				{ID: "A1", Text: "Weigh flour and butter", Hands: Around(5), SetUp: true},
				{ID: "A2", Text: "Rub in and shape", Hands: Around(10)},
				{
					ID: "A3", Text: "Glaze and bake", Hands: Around(2), After: []After{{Step: "A2", Least: 0, Most: &most}},
					Wait: &Wait{Least: 12, Most: 15, Place: AtOven, Celsius: 220, Band: 10},
				},
			},
		},
		{
			Letter: "B", Name: "Soup", Serve: Serve{Heat: Hot, Minutes: 3},
			Steps: []Step{
				{ID: "B1", Text: "Chop the vegetables", Hands: Around(10), Food: Raw},
				{ID: "B2", Text: "Simmer", After: []After{{Step: "B1"}}, Wait: &Wait{Least: 20, Most: 30, Place: AtHob, Attention: Look, Every: 10}},
			},
		},
	}
	return p
}

func at(minutes TimeOfDay) *TimeOfDay { return &minutes }

func TestValidate(t *testing.T) {
	step := func(p *Practical) *Step { return &p.Dishes[0].Steps[1] }
	oven := func(p *Practical) *Wait { return p.Dishes[0].Steps[2].Wait }
	tests := []struct {
		name string
		edit func(*Practical)
		want string
	}{
		{"nothing wrong", func(*Practical) {}, ""},
		{"no dishes while editing", func(p *Practical) { p.Dishes = nil }, ""},
		{"no title", func(p *Practical) { p.Title = " " }, `title: nothing is written here; give the practical a title`},
		{"date", func(p *Practical) { p.Date = "4 December" }, `date: "4 December" is not a date; write year-month-day, such as 2026-12-04`},
		{"finish before start", func(p *Practical) { p.Clock.Finish = 8*60 + 45 }, `clock.finish: the finish at 08:45 is before the start at 09:00; a finish after 09:00; past midnight, count the hours on, such as 24:30`},
		{"finish is start", func(p *Practical) { p.Clock.Finish = p.Clock.Start }, `clock.finish: the finish is the start: there is no time to cook; a finish after 09:00`},
		{"set-up after start", func(p *Practical) { p.Clock.SetUp = 9*60 + 10 }, `clock.set-up: set-up begins at 09:10, after the start at 09:00; set-up begins at 09:00 or before`},
		{"thirteen hours", func(p *Practical) { p.Clock.Finish = 22 * 60 }, `clock.finish: from start to finish are 780 minutes; at most 720 minutes (12 hours)`},
		{"set-up a day before", func(p *Practical) { p.Clock.SetUp, p.Clock.Start, p.Clock.Finish = 0, 1500, 1600 }, `clock.set-up: set-up begins 1500 minutes before the start; at most 720 minutes before the start`},
		{"past the day after", func(p *Practical) {
			p.Clock.SetUp, p.Clock.Start, p.Clock.Finish, p.Clock.Breaks = 2700, 2700, 2870, []Break{{2800, 20}}
		}, `clock.finish: with extra time and rest breaks the clock runs past the end of the day after; start earlier
dishes[0].steps[0]: the step takes at least 4 minutes, and set-up has 0; a shorter step or a longer practical`},
		{"negative time", func(p *Practical) { p.Clock.SetUp = -1 }, `clock.set-up: -1 minutes after midnight is not a time of day; 00:00 to 23:59, or to 47:59 for the day after`},
		{"hours", func(p *Practical) { p.Clock.Hours = 13 }, `clock.hours: 13 is not known here; 12 or 24`},
		{"extra time", func(p *Practical) { p.Clock.Extra.Cook = -5 }, `clock.extra-time.cook: -5 is out of range; 0 to 100 per cent`},
		{"break outside", func(p *Practical) { p.Clock.Breaks = []Break{{8 * 60, 10}} }, `clock.rest-breaks[0].at: the break at 08:00 for 10 minutes is outside the clock; a break lies between 09:00 and 12:10`},
		{"breaks overlap", func(p *Practical) { p.Clock.Breaks = []Break{{10 * 60, 10}, {10*60 + 5, 10}} }, `clock.rest-breaks[1].at: the break at 10:05 overlaps the break at 10:00 (number 1); keep breaks apart, or make one longer break of them`},
		{"break without length", func(p *Practical) { p.Clock.Breaks = []Break{{10 * 60, 0}} }, `clock.rest-breaks[0].minutes: 0 is out of range; 1 to 120 minutes`},
		{"wash-up of nothing", func(p *Practical) { p.Rules.WashUp = 0 }, `rules.wash-up: a wash-up is asked for every 60 minutes, but takes none; give it minutes, such as 5, or set wash-up-every to 0`},
		{"wash-up all the time", func(p *Practical) { p.Rules.WashEvery = 5 }, `rules.wash-up-every: a wash-up every 5 minutes leaves no time to cook; 15 or more, or 0 for the end only`},
		{"set-up verb", func(p *Practical) { p.Rules.SetUpVerbs = []string{"weigh", "Weigh out", "weigh", ""} }, `rules.set-up-verbs[3]: nothing is written here; write a verb such as weigh
rules.set-up-verbs[1]: "Weigh out" is not a verb; one word in small letters, such as weigh
rules.set-up-verbs[2]: "weigh" stands here twice; keep it once`},
		{"pace", func(p *Practical) { p.Rules.Pace = "lickly" }, `rules.pace: "lickly" is not known here; did you mean "likely"; one of: low, likely, high`},
		{"looks", func(p *Practical) { p.Rules.Looks = 0 }, `rules.looks: 0 is out of range; 1 to 6 waits`},
		{"three cooks", func(p *Practical) { p.Cooks = 3 }, `cooks: 3 is out of range; 1 to 2 cooks`},
		{"no cook", func(p *Practical) { p.Cooks = 0 }, `cooks: 0 is out of range; 1 to 2 cooks`},
		{"minus one ring", func(p *Practical) { p.Kitchen.Rings = -1 }, `kitchen.rings: -1 is out of range; 0 to 12 rings`},
		{"two ovens of a name", func(p *Practical) { p.Kitchen.Ovens = append(p.Kitchen.Ovens, p.Kitchen.Ovens[0]) }, `kitchen.ovens[1].name: two ovens are named "oven"; give each oven a name of its own, such as left and right`},
		{"grill in no oven", func(p *Practical) { p.Kitchen.Ovens, p.Kitchen.Grill, p.Dishes = nil, GrillInOven, nil }, `kitchen.grill: the grill is in the oven, but there is no oven; separate or none, or add an oven`},
		{"taken more than there is", func(p *Practical) { p.Kitchen.Taken = []Taken{{Kit: Ring, Number: 5, From: 600, Until: 590}} }, `kitchen.taken[0].until: it is taken from 10:00 until 09:50; a time after 10:00
kitchen.taken[0].number: 5 × ring taken, but the kitchen has 4 × ring; change kitchen.rings, or take fewer`},
		{"gas table", func(p *Practical) { p.Kitchen.GasTable = []GasMark{{"4", 180, 190, 350}, {"4", 170, 150, 325}} }, `kitchen.gas-table[0].fan: a fan oven at 190 °C is hotter than one without at 180 °C; 160 or a little more
kitchen.gas-table[1].mark: gas mark "4" stands here twice; keep it once
kitchen.gas-table[1].celsius: gas 4 at 170 °C is no hotter than gas 4 at 180 °C; list the marks from cool to hot`},
		{"fuel", func(p *Practical) { p.Kitchen.Ovens[0].Fuel = "wood" }, `kitchen.ovens[0].fuel: "wood" is not known here; one of: electric, fan, gas`},
		{"letter", func(p *Practical) { p.Dishes[0].Letter = "a" }, `dishes[0].letter: "a" is not a letter; one capital letter, A to Z`},
		{"no letter", func(p *Practical) { p.Dishes[0].Letter = "" }, `dishes[0].letter: nothing is written here; give the dish a letter, A to Z`},
		{"same letter", func(p *Practical) { p.Dishes[1].Letter = "A" }, `dishes[1].letter: letter A is that of the dish "Scones" already; give each dish a letter of its own`},
		{"dish without a name", func(p *Practical) { p.Dishes[1].Name = "" }, `dishes[1].name: nothing is written here; name the dish`},
		{"recipe outside the folder", func(p *Practical) { p.Dishes[1].Recipe = "../secret.txt" }, `dishes[1].recipe: "../secret.txt" lies outside the practical file's folder; a file in the practical file's own folder or below it, such as recipes/scones.txt`},
		{"same id", func(p *Practical) { p.Dishes[1].Steps[0].ID = "A2" }, `dishes[1].steps[0].id: id A2 is that of a step of "Scones" already; give each step of the practical an id of its own
dishes[1].steps[1].after[0].step: there is no step "B1"; did you mean "A1"; the steps are A1, A2, A3, A2, B2`},
		{"id with a slash", func(p *Practical) { p.Dishes[1].Steps[1].ID = "B/2" }, `dishes[1].steps[1].id: "B/2" is not an id; letters, digits, dot and dash, such as A3`},
		{"no text", func(p *Practical) { step(p).Text = "" }, `dishes[0].steps[1].text: nothing is written here; say what is to be done`},
		{"estimates do not rise", func(p *Practical) { step(p).Hands = Estimate{5, 4, 6} }, `dishes[0].steps[1].hands: the minutes do not rise: low 5, likely 4, high 6; low at most likely, likely at most high`},
		{"601 minutes", func(p *Practical) { step(p).Hands = Estimate{5, 6, 601} }, `dishes[0].steps[1].hands.high: 601 is out of range; 0 to 600 minutes`},
		{"no time", func(p *Practical) { step(p).Hands = Estimate{} }, `dishes[0].steps[1].hands: the step takes no time: neither hands nor a wait; give the minutes of hands, such as 5, or a wait`},
		{"unknown kit", func(p *Practical) { step(p).Uses = []Kit{"mixr"} }, `dishes[0].steps[1].uses[0]: "mixr" is not known here; did you mean "mixer"; one of: ring, oven-shelf, grill, processor, mixer, microwave, fridge-shelf, freezer-shelf`},
		{"kit not there", func(p *Practical) { step(p).Uses, p.Kitchen.Mixers = []Kit{Mixer}, 0 }, `dishes[0].steps[1].uses[0]: the step uses 1 mixer, but the kitchen has no mixer; change kitchen.mixers, or do it another way`},
		{"kit twice", func(p *Practical) { step(p).Uses = []Kit{Processor, Processor} }, `dishes[0].steps[1].uses[1]: the step uses 2 × processor, but the kitchen has 1 processor; change kitchen.processors, or do it another way`},
		{"food", func(p *Practical) { step(p).Food = "cooked" }, `dishes[0].steps[1].food: "cooked" is not known here; one of: raw, ready-to-eat`},
		{"doubt", func(p *Practical) { step(p).Doubt = 1.5 }, `dishes[0].steps[1].doubt: 1.5 is out of range; 0 to 1`},
		{"control characters", func(p *Practical) { step(p).Check = "a\x00b" }, `dishes[0].steps[1].check: the text holds characters that cannot be written; type it again as plain text`},
		{"pasted by a word processor", func(p *Practical) { p.Dishes[0].Text = "\ufeffScones\v\x01\f" }, ""},
		{"pasted zero", func(p *Practical) { p.Dishes[0].Text = "Scones\x00" }, `dishes[0].text: the text holds characters that cannot be written; type it again as plain text`},
		{"pasted book", func(p *Practical) { p.Dishes[0].Text = strings.Repeat("x", 500_001) }, `dishes[0].text: the text has 500001 bytes; at most 500000 bytes`},
		{"not UTF-8", func(p *Practical) { step(p).Check = "\xff" }, `dishes[0].steps[1].check: the text holds characters that cannot be written; type it again as plain text`},
		{"a novel", func(p *Practical) { step(p).Text = strings.Repeat("x", 2001) }, `dishes[0].steps[1].text: the text has 2001 bytes; at most 2000 bytes`},
		{"step longer than the practical", func(p *Practical) { oven(p).Least, oven(p).Most = 178, 0 }, `dishes[0].steps[2]: the step takes at least 182 minutes, and the clock has 180; a shorter step or a longer practical`},
		{"least above most", func(p *Practical) { oven(p).Least = 16 }, `dishes[0].steps[2].wait.most: the least of 16 minutes is more than the most of 15; 16 or more, or 0 for no most`},
		{"no temperature", func(p *Practical) { oven(p).Celsius = 0 }, `dishes[0].steps[2].wait.celsius: the wait in the oven has no temperature; give degrees Celsius of an oven without fan, such as 180`},
		{"too hot", func(p *Practical) { oven(p).Celsius = 301 }, `dishes[0].steps[2].wait.celsius: 301 °C is out of range; 50 to 300 °C, of an oven without fan`},
		{"too cool", func(p *Practical) { oven(p).Celsius = 49 }, `dishes[0].steps[2].wait.celsius: 49 °C is out of range; 50 to 300 °C, of an oven without fan`},
		{"no oven", func(p *Practical) { p.Kitchen.Ovens = nil }, `dishes[0].steps[2].wait.place: the kitchen has no oven; change kitchen.ovens, or let the food wait elsewhere`},
		{"no rings", func(p *Practical) { p.Kitchen.Rings = 0 }, `dishes[1].steps[1].wait.place: the kitchen has no rings; change kitchen.rings, or let the food wait elsewhere`},
		{"no grill", func(p *Practical) { p.Kitchen.Grill, *oven(p) = NoGrill, Wait{Least: 5, Place: AtGrill} }, `dishes[0].steps[2].wait.place: the kitchen has no grill; change kitchen.grill, or let the food wait elsewhere`},
		{"shelves", func(p *Practical) { oven(p).Shelves = 3 }, `dishes[0].steps[2].wait.shelves: the wait takes 3 shelves, and the largest oven has 2; 2 or fewer`},
		{"shelves of the side", func(p *Practical) { *oven(p) = Wait{Least: 5, Place: AtSide, Shelves: 1} }, `dishes[0].steps[2].wait.shelves: shelves are of oven, fridge and freezer, and this wait is at "side"; leave it out`},
		{"two temperatures in the words", func(p *Practical) {
			p.Dishes[0].Steps[2].Text = "Bake at 220 °C (fan 200 °C), then turn down to 180C"
		}, `dishes[0].steps[2].text: the words ask the oven for 220 °C and 180 °C in one wait; make a step for each temperature, so that each has its minutes`},
		{"fan and gas figures are one temperature", func(p *Practical) {
			p.Dishes[0].Steps[2].Text = "Bake at 220 °C (200 °C fan, gas 7)"
		}, ""},
		{"heat in the fridge", func(p *Practical) { *oven(p) = Wait{Least: 5, Place: AtFridge, Celsius: 5, Band: 1, DoorShut: 2} }, `dishes[0].steps[2].wait.celsius: a temperature is set at an oven, and this wait is at "fridge"; leave it out, and say it in the step's words or check
dishes[0].steps[2].wait.band: a band of temperatures is an oven's, and this wait is at "fridge"; leave it out
dishes[0].steps[2].wait.door-shut: the door that stays shut is an oven's, and this wait is at "fridge"; leave it out`},
		{"waits in the hands", func(p *Practical) { oven(p).Place = AtHands }, `dishes[0].steps[2].wait.place: food does not wait at "hands"; where the food stands meanwhile, such as side, fridge, hob or oven`},
		{"unknown place", func(p *Practical) { oven(p).Place = "ovn" }, `dishes[0].steps[2].wait.place: "ovn" is not known here; did you mean "oven"; one of: bench, freezer, fridge, warm, side, hands, hob, oven, grill, microwave, served`},
		{"look how often", func(p *Practical) { oven(p).Attention = Look }, `dishes[0].steps[2].wait.every: the wait needs a look, but not how often; give the minutes between two looks, such as 10`},
		{"every without a look", func(p *Practical) { oven(p).Every = 5 }, `dishes[0].steps[2].wait.every: a look every 5 minutes is for a wait that needs a look; attention: look, or leave every out`},
		{"door shut longer than the wait", func(p *Practical) { oven(p).DoorShut = 13 }, `dishes[0].steps[2].wait.door-shut: the door stays shut for 13 minutes, longer than the wait's least of 12; 12 or less`},
		{"set-up does real work", func(p *Practical) { p.Dishes[0].Steps[0].Text = "Chop the onions" }, `dishes[0].steps[0].text: "chop" is not allowed in set-up; allowed in set-up: weigh, measure, gather, collect, wash, grease, line, label, set, lay, open`},
		{"set-up hides real work", func(p *Practical) { p.Dishes[0].Steps[0].Text = "Weigh the flour and rub in the butter" }, `dishes[0].steps[0].text: "rub" is not allowed in set-up; allowed in set-up: weigh, measure, gather, collect, wash, grease, line, label, set, lay, open`},
		{"set-up uses the oven", func(p *Practical) {
			p.Dishes[0].Steps[0].Wait = &Wait{Least: 5, Place: AtOven, Celsius: 180}
		}, `dishes[0].steps[0].wait.place: a set-up step does not use the oven; do it after the start; allowed in set-up: weigh, measure, gather, collect, wash, grease, line, label, set, lay, open`},
		{"no set-up verbs", func(p *Practical) { p.Rules.SetUpVerbs = nil }, `dishes[0].steps[0].text: "weigh" is not allowed in set-up; rules.set-up-verbs allows nothing`},
		{"oven on in set-up", func(p *Practical) { p.Dishes[0].Steps[0].Text = "Preheat the oven" }, `dishes[0].steps[0].text: "preheat" is not allowed in set-up; allowed in set-up: weigh, measure, gather, collect, wash, grease, line, label, set, lay, open`},
		{"oven on in set-up allowed", func(p *Practical) {
			p.Dishes[0].Steps[0].Text, p.Rules.OvenInSetUp = "Turn on the oven and grease a tray", true
		}, ""},
		{"set-up longer than there is", func(p *Practical) { p.Clock.SetUp = p.Clock.Start }, `dishes[0].steps[0]: the step takes at least 4 minutes, and set-up has 0; a shorter step or a longer practical`},
		{"set-up after the start", func(p *Practical) { p.Dishes[0].Steps[0].After = []After{{Step: "B1"}} }, `dishes[0].steps[0].after[0].step: set-up step A1 comes after B1, which is not set-up; let it follow set-up steps only, or do it after the start`},
		{"unknown step", func(p *Practical) { step(p).After = []After{{Step: "b1"}} }, `dishes[0].steps[1].after[0].step: there is no step "b1"; did you mean "B1"; the steps are A1, A2, A3, B1, B2`},
		{"no step", func(p *Practical) { step(p).After = []After{{}} }, `dishes[0].steps[1].after[0].step: nothing is written here; name the step it comes after, such as A3`},
		{"after itself", func(p *Practical) { step(p).After = []After{{Step: "A2"}} }, `dishes[0].steps[1].after[0].step: step A2 comes after itself; name another step`},
		{"a ring", func(p *Practical) {
			step(p).After = []After{{Step: "B2"}}
			p.Dishes[1].Steps[0].After = []After{{Step: "A3"}}
		}, `dishes[0].steps[1].after: the steps go round in a ring: A2 after B2 after B1 after A3 after A2; let one of them not come after the next`},
		{"gap that falls", func(p *Practical) { p.Dishes[0].Steps[2].After[0].Least = 40 }, `dishes[0].steps[2].after[0].most: the least of 40 minutes is more than the most of 30; 40 or more, or leave it out for no most`},
		{"gap of minus five", func(p *Practical) { p.Dishes[0].Steps[2].After[0].Least = -5 }, `dishes[0].steps[2].after[0].least: -5 is out of range; 0 to 1440 minutes`},
		{"pins", func(p *Practical) {
			p.Pins = []Pin{
				{Row: "A3/hands", At: at(540)}, {Row: "wash-up/2", At: at(600)}, {Row: "oven/1", At: at(545)}, {Row: "clean-down", After: "A/serve"}, {Row: "A/serve", After: "B/serve"},
			}
		}, ""},
		{"pin to an unknown row", func(p *Practical) { p.Pins = []Pin{{Row: "A9/hands", At: at(540)}} }, `pins[0].row: there is no row "A9/hands"; did you mean "A1/hands"; a row is named like A3/hands, A3/put-in, A3/take-out, A/serve or wash-up/2`},
		{"pin to a part that is not there", func(p *Practical) { p.Pins = []Pin{{Row: "A2/put-in", At: at(540)}} }, `pins[0].row: step or dish A2 has no row "A2/put-in"; did you mean "A3/put-in"; a row is named like A3/hands, A3/put-in, A3/take-out, A/serve or wash-up/2`},
		{"pin to nothing", func(p *Practical) { p.Pins = []Pin{{Row: "A2/hands"}} }, `pins[0]: the pin holds A2/hands at nothing; give at: a time, or after: another row`},
		{"pin after itself", func(p *Practical) { p.Pins = []Pin{{Row: "A2/hands", After: "A2/hands"}} }, `pins[0].after: row A2/hands comes after itself; name another row`},
		{"pin outside", func(p *Practical) { p.Pins = []Pin{{Row: "A2/hands", At: at(500)}} }, `pins[0].at: 08:20 is outside the practical; 08:30 to 12:00`},
		{"pinned twice", func(p *Practical) { p.Pins = []Pin{{Row: "A2/hands", At: at(540)}, {Row: "A2/hands", At: at(550)}} }, `pins[1].row: row A2/hands is pinned to a time already; pin it to one time`},
		{"201 steps", func(p *Practical) { p.Dishes[0].Steps = make([]Step, 201) }, `dishes: there are 203 steps; at most 200 steps in one practical; a dish has seldom more than 15`},
		{"13 dishes", func(p *Practical) { p.Dishes = make([]Dish, 13) }, `dishes: there are 13 dishes; at most 12 dishes in one practical`},
		{"501 ingredients", func(p *Practical) { p.Dishes[0].Ingredients = make([]Ingredient, 501) }, `dishes[0].ingredients: the list has 501 entries; at most 500`},
		{"order of faults", func(p *Practical) { p.Cooks, p.Clock.Hours, p.Kitchen.Rings, step(p).Text = 0, 0, -1, "" }, `clock.hours: 0 is not known here; 12 or 24
kitchen.rings: -1 is out of range; 0 to 12 rings
cooks: 0 is out of range; 1 to 2 cooks
dishes[0].steps[1].text: nothing is written here; say what is to be done`},
	}
	for _, tt := range tests {
		p := small()
		tt.edit(p)
		if got := p.Validate().Error(); got != tt.want {
			t.Errorf("%s:\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

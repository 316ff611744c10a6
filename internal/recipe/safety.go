package recipe

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// foodOf is what the hands touch in a step: raw food, or food that is eaten as it is.
func foodOf(ts []token) practical.Food {
	meat := namesRawMeat(ts) && !has(ts, "cooked chicken", "cooked", "stock", "browned", "done", "tinned", "smoked", "ham") && !has(ts, "chicken stock", "beef stock", "chicken broth", "fish sauce")
	handles := has(ts, "cut", "chop", "dice", "slice", "trim", "coat", "season", "rub", "marinate", "skewer", "shape", "form", "mix", "add", "brown", "fry", "sear", "put", "place", "mince", "brush", "roll", "stuff", "joint", "wrap", "lay", "thread", "bone", "fillet", "grill", "bash", "flatten", "combine", "toss", "dip", "arrange", "cook", "rinse", "drain")
	switch {
	case meat && handles:
		return practical.Raw
	case has(ts, "egg", "yolk", "yolks", "whites") && has(ts, "crack", "beat", "whisk", "separate", "break", "brush", "dip", "add", "mix") && !has(ts, "boiled egg", "hard boiled", "eggs are cooked", "egg noodles", "egg fried"):
		return practical.Raw
	case hasAny(ts, "garnish", "salad", "lettuce", "icing", "decorate", "dressing") || has(ts, "whipped cream") || has(ts, "slice", "carve", "tear", "scatter") && has(ts, "bread", "basil", "herbs", "parsley", "cooked", "serve", "cake"):
		return practical.ReadyToEat
	}
	return ""
}

// neverCooked marks a dish that no heat touches and that holds nothing raw, a slaw
// or a salad, as food that is eaten as it is from its first step of hands on.
// Which dishes these are is common practice, no source. One step tells too little.
func neverCooked(steps []practical.Step) {
	if len(steps) < 2 {
		return
	}
	for _, s := range steps {
		if s.Food == practical.Raw || slices.Contains(s.Uses, practical.Ring) || s.Wait != nil && hotPlace(s.Wait.Place) {
			return
		}
	}
	for i := range steps {
		if s := &steps[i]; s.Hands.Likely > 0 && s.ID != serveID && !strings.HasPrefix(s.ID, choreID) {
			s.Food = practical.ReadyToEat
		}
	}
}

// control is a usual control, with the words that call for it.
type control struct {
	words []string
	text  string
}

// controls are reminders of what is usual; local rules and the school's risk assessment decide.
var controls = []control{
	{[]string{"fry", "deep-fry", "hot oil", "saute", "sear"}, "hot fat: stay with the pan, handle turned in, lay food away from you"},
	{[]string{"caramel", "caramelise", "toffee", "brittle", "boil the sugar", "sugar syrup", "hot syrup"}, "very hot sugar: do not taste or leave it"},
	{[]string{"boil", "steam", "drain", "simmer", "poach", "blanch"}, "steam: lid and water away from you"},
	{[]string{"chop", "slice", "dice", "cut", "mince", "trim", "carve", "halve", "quarter", "fillet", "shred"}, "knife: claw grip, damp cloth under the board"},
	{[]string{"grate", "zest", "grater"}, "grater: stop short of the fingertips"},
	{[]string{"processor", "blender", "blitz", "liquidise"}, "blade: unplug before emptying; hot liquids half full, lid held with a cloth"},
}

// safetyOf is the usual controls that apply to a step, most serious first.
func safetyOf(j *job, food practical.Food) string {
	var out []string
	ts := j.ts
	if food == practical.Raw {
		if namesRawMeat(ts) {
			out = append(out, "raw meat or fish: its own board and knife, then wash hands and clean down")
		} else {
			out = append(out, "raw egg: wash hands and whisk at once")
		}
	}
	if j.waiting() != nil && hotPlace(j.waiting().place) && namesRawMeat(ts) || has(ts, "chicken", "turkey", "pork", "mince", "sausage", "burger") && has(ts, "cook", "bake", "roast", "grill", "fry", "simmer") {
		out = append(out, "cook to a core of 75 °C")
	}
	if j.waiting() != nil && (j.waiting().place == practical.AtOven || j.waiting().place == practical.AtGrill) {
		out = append(out, "hot: oven gloves")
	}
	for _, c := range controls {
		if has(ts, c.words...) {
			out = append(out, c.text)
		}
	}
	if has(ts, "rice") && j.waiting() != nil && hotPlace(j.waiting().place) {
		out = append(out, "rice: serve at once or cool within an hour")
	}
	return strings.Join(out, "; ")
}

func hotPlace(p practical.Place) bool {
	return p == practical.AtOven || p == practical.AtHob || p == practical.AtGrill || p == practical.AtMicrowave
}

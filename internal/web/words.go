package web

import (
	"fmt"
	"strings"

	"plait.example/internal/practical"
)

// kind says how a value is typed.
type kind string

// The kinds of field.
const (
	line   kind = "line"
	number kind = "number"
	date   kind = "date"
	area   kind = "area"
	choice kind = "choice"
	tick   kind = "tick"
	ticks  kind = "ticks"
)

// word is how one value of a practical is asked for.
type word struct {
	label, unit, hint string
	kind              kind
	wide              bool // takes a whole line
	options           []Option
}

// Option is one answer of a choice or one box of several.
type Option struct {
	Value, Text string
	Chosen      bool
}

// words names every value that a page can ask for, by its path without
// numbers. The same words stand in labels, in faults and beside Undo.
var words = map[string]word{
	"title": {label: "Title", kind: line, wide: true},
	"date":  {label: "Date", kind: date},
	"cooks": {label: "Who cooks", kind: choice, options: []Option{{Value: "1", Text: "one cook"}, {Value: "2", Text: "a pair"}}},

	"clock.set-up":              {label: "Set-up from", kind: line, hint: "Jobs that are allowed before the clock."},
	"clock.start":               {label: "Start", kind: line, hint: "The clock starts."},
	"clock.finish":              {label: "Finish", kind: line, hint: "Before any extra time and rest breaks."},
	"clock.hours":               {label: "Times are written", kind: choice, options: []Option{{Value: "24", Text: "24-hour: 13:05"}, {Value: "12", Text: "12-hour: 1:05"}}},
	"clock.round":               {label: "Rows are written to", kind: choice, options: []Option{{Value: "1", Text: "the minute"}, {Value: "5", Text: "5 minutes"}}},
	"clock.extra-time.set-up":   {label: "Extra time for set-up", unit: "%", kind: number},
	"clock.extra-time.cook":     {label: "Extra time for cooking", unit: "%", kind: number},
	"clock.extra-time.serve":    {label: "Extra time for serving", unit: "%", kind: number},
	"clock.rest-breaks.at":      {label: "Rest break at", kind: line},
	"clock.rest-breaks.minutes": {label: "Rest break lasts", unit: "minutes", kind: number},

	"rules.dishes":            {label: "Dishes asked for", kind: number, hint: "0 for any number."},
	"rules.set-up-verbs":      {label: "Jobs allowed in set-up", kind: area, hint: "Words with commas between, such as weigh, grease, line."},
	"rules.oven-in-set-up":    {label: "The oven may be turned on before the clock", kind: tick},
	"rules.tasting-inside":    {label: "Tasting is inside the time", kind: tick},
	"rules.tasting":           {label: "Tasting and photographs", unit: "minutes", kind: number},
	"rules.clean-down-inside": {label: "The last clean-down is inside the time", kind: tick},
	"rules.clean-down":        {label: "The last clean-down", unit: "minutes", kind: number},
	"rules.wash-up-every":     {label: "Wash up at least every", unit: "minutes", kind: number, hint: "0 for only at the end."},
	"rules.wash-up":           {label: "One wash-up takes", unit: "minutes", kind: number},
	"rules.raw-clean-down":    {label: "Clean-down after raw food", unit: "minutes", kind: number, hint: "Before food that is eaten as it is."},
	"rules.rinse":             {label: "Rinse a processor or mixer", unit: "minutes", kind: number, hint: "Between two dishes."},
	"rules.serving-window":    {label: "All dishes are served within", unit: "minutes", kind: number},
	"rules.looks":             {label: "Pans that need a look, at once", kind: number},
	"rules.pace": {label: "Pace to plan for", kind: choice, options: []Option{
		{Value: string(practical.Quick), Text: "quick: the low minutes"}, {Value: string(practical.Likely), Text: "usual: the likely minutes"}, {Value: string(practical.Steady), Text: "steady: the high minutes"},
	}},

	"kitchen.ovens.name":           {label: "Oven’s name", kind: line},
	"kitchen.ovens.fuel":           {label: "Fuel", kind: choice, options: []Option{{Value: "electric", Text: "electric, no fan"}, {Value: "fan", Text: "electric fan"}, {Value: "gas", Text: "gas"}}},
	"kitchen.ovens.shelves":        {label: "Shelves", kind: number},
	"kitchen.ovens.preheat":        {label: "From cold to 180 °C takes", unit: "minutes", kind: number, hint: "0 for what is usual."},
	"kitchen.ovens.up":             {label: "Getting 20 °C hotter takes", unit: "minutes", kind: number, hint: "0 for what is usual."},
	"kitchen.ovens.down":           {label: "Getting 20 °C cooler takes", unit: "minutes", kind: number, hint: "0 for what is usual."},
	"kitchen.ovens.door-recovery":  {label: "The door may open again after", unit: "minutes", kind: number, hint: "0 for what is usual."},
	"kitchen.rings":                {label: "Rings on the hob", kind: number},
	"kitchen.grill":                {label: "Grill", kind: choice, options: []Option{{Value: "none", Text: "none"}, {Value: "separate", Text: "separate"}, {Value: "in-oven", Text: "inside the first oven"}}},
	"kitchen.processors":           {label: "Food processors", kind: number},
	"kitchen.mixers":               {label: "Mixers", kind: number},
	"kitchen.microwaves":           {label: "Microwaves", kind: number},
	"kitchen.fridge-shelves":       {label: "Fridge shelves", kind: number},
	"kitchen.freezer-shelves":      {label: "Freezer shelves", kind: number},
	"kitchen.taken.kit":            {label: "What", kind: choice, options: kitOptions(practical.Ring, practical.OvenShelf, practical.GrillPan, practical.Processor, practical.Mixer, practical.Microwave, practical.FridgeKit, practical.FreezerKit)},
	"kitchen.taken.number":         {label: "How many", kind: number},
	"kitchen.taken.from":           {label: "From", kind: line},
	"kitchen.taken.until":          {label: "Until", kind: line},
	"kitchen.gas-table.mark":       {label: "Gas mark", kind: line},
	"kitchen.gas-table.celsius":    {label: "Without fan", unit: "°C", kind: number},
	"kitchen.gas-table.fan":        {label: "Fan", unit: "°C", kind: number},
	"kitchen.gas-table.fahrenheit": {label: "Without fan", unit: "°F", kind: number},

	"dishes.name":          {label: "Name of the dish", kind: line, wide: true},
	"dishes.portions":      {label: "Portions", kind: number},
	"dishes.text":          {label: "Recipe", kind: area},
	"dishes.allergens":     {label: "Allergens", kind: area, hint: "Words with commas between. Check the packets."},
	"dishes.serve.heat":    {label: "Served", kind: choice, options: []Option{{Value: "hot", Text: "hot"}, {Value: "cold", Text: "cold"}, {Value: "as-is", Text: "as it is"}}},
	"dishes.serve.how":     {label: "How it is presented", kind: area, hint: "Plate, portion, garnish."},
	"dishes.serve.minutes": {label: "Plating and garnish", unit: "minutes", kind: number},
	"dishes.serve.within":  {label: "Served within", unit: "minutes of its last step", kind: number, hint: "0 for no limit."},

	"dishes.steps.text":           {label: "What to do", kind: area},
	"dishes.steps.hands.low":      {label: "Low", unit: "min", kind: number},
	"dishes.steps.hands.likely":   {label: "Likely", unit: "min", kind: number},
	"dishes.steps.hands.high":     {label: "High", unit: "min", kind: number},
	"dishes.steps.uses":           {label: "Kit in use while the hands work", kind: ticks, options: kitOptions(practical.Ring, practical.GrillPan, practical.Processor, practical.Mixer, practical.Microwave)},
	"dishes.steps.wait.place":     {label: "Where it waits", kind: choice, options: placeOptions()},
	"dishes.steps.wait.least":     {label: "At least", unit: "min", kind: number},
	"dishes.steps.wait.most":      {label: "At most", unit: "min", kind: number, hint: "0 for no limit."},
	"dishes.steps.wait.celsius":   {label: "Oven, without fan", unit: "°C", kind: number},
	"dishes.steps.wait.band":      {label: "Give or take", unit: "°C", kind: number},
	"dishes.steps.wait.shelves":   {label: "Shelves it needs", kind: number, hint: "0 means 1."},
	"dishes.steps.wait.attention": {label: "While it waits", kind: choice, options: []Option{{Value: "leave", Text: "it can be left"}, {Value: "look", Text: "it needs a look now and then"}, {Value: "stay", Text: "it must be watched"}}},
	"dishes.steps.wait.every":     {label: "A look every", unit: "min", kind: number},
	"dishes.steps.wait.door-shut": {label: "Door stays shut for the first", unit: "min", kind: number},
	"dishes.steps.wait.put-in":    {label: "Putting in", unit: "min", kind: number, hint: "0 means 1."},
	"dishes.steps.wait.take-out":  {label: "Taking out", unit: "min", kind: number, hint: "0 means 1."},
	"dishes.steps.after.step":     {label: "Comes after", kind: choice},
	"dishes.steps.after.least":    {label: "Gap at least", unit: "min", kind: number},
	"dishes.steps.after.most":     {label: "Gap at most", unit: "min", kind: number, hint: "Empty for no limit."},
	"dishes.steps.food":           {label: "The hands touch", kind: choice, options: []Option{{Value: "", Text: "neither raw nor ready to eat"}, {Value: "raw", Text: "raw meat, fish, egg, unwashed vegetables"}, {Value: "ready-to-eat", Text: "food eaten as it is"}}},
	"dishes.steps.set-up":         {label: "Done in set-up, before the clock", kind: tick},
	"dishes.steps.component":      {label: "Part of the dish", kind: line, hint: "Such as pastry or sauce. May be empty."},
	"dishes.steps.kit":            {label: "Small kit", kind: line, wide: true},
	"dishes.steps.check":          {label: "How you know it is right", kind: line, wide: true},
	"dishes.steps.safety":         {label: "Safety reminder", kind: line, wide: true},
}

var kitWords = map[practical.Kit]string{
	practical.Ring: "ring", practical.OvenShelf: "oven shelf", practical.GrillPan: "grill", practical.Processor: "food processor",
	practical.Mixer: "mixer", practical.Microwave: "microwave", practical.FridgeKit: "fridge shelf", practical.FreezerKit: "freezer shelf",
}

func kitOptions(kits ...practical.Kit) []Option {
	options := make([]Option, len(kits))
	for i, k := range kits {
		options[i] = Option{Value: string(k), Text: kitWords[k]}
	}
	return options
}

var placeWords = map[practical.Place]string{
	practical.AtBench: "bench", practical.AtFreezer: "freezer", practical.AtFridge: "fridge", practical.AtWarm: "warm place",
	practical.AtSide: "side", practical.AtHands: "hands", practical.AtHob: "hob", practical.AtOven: "oven",
	practical.AtGrill: "grill", practical.AtMicrowave: "microwave", practical.Served: "served",
}

func placeOptions() []Option {
	options := []Option{{Value: "", Text: "no wait"}}
	for _, p := range []practical.Place{practical.AtSide, practical.AtFridge, practical.AtFreezer, practical.AtWarm, practical.AtHob, practical.AtOven, practical.AtGrill, practical.AtMicrowave} {
		options = append(options, Option{Value: string(p), Text: placeWords[p]})
	}
	return options
}

// pattern is a path without its numbers.
func pattern(path string) string {
	var b strings.Builder
	skip := false
	for _, r := range path {
		switch {
		case r == '[':
			skip = true
		case r == ']':
			skip = false
		case !skip:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// wholes names what is no field of its own.
var wholes = map[string]string{
	"dishes": "Dishes", "dishes.letter": "Letter", "dishes.recipe": "Recipe file", "dishes.steps": "Steps", "dishes.steps.id": "Name",
	"dishes.steps.hands": "Hands", "dishes.steps.wait": "Wait", "dishes.steps.after": "Order", "dishes.ingredients": "Ingredients",
	"kitchen.ovens": "Ovens", "kitchen.taken": "Kit that others have", "kitchen.gas-table": "Gas table", "clock.rest-breaks": "Rest breaks",
	"pins": "Pinned row", "pins.row": "Pinned row", "pins.at": "Pinned time", "pins.after": "Pinned after",
}

// say names the value at a path for a person: “Step A3, hands, likely”.
func say(p *practical.Practical, path string) string {
	w, known := words[pattern(path)]
	label := w.label
	if whole, ok := wholes[pattern(path)]; ok && !known {
		label = whole
	} else if !known {
		label = capital(path)
	}
	names, err := parts(path)
	if err != nil {
		return label
	}
	where := ""
	for _, n := range names {
		switch {
		case n.index < 0:
		case n.name == "dishes" && n.index < len(p.Dishes):
			where = "dish " + p.Dishes[n.index].Letter
		case n.name == "steps" && names[0].index < len(p.Dishes) && n.index < len(p.Dishes[names[0].index].Steps):
			where = "step " + p.Dishes[names[0].index].Steps[n.index].ID
			if n == names[len(names)-1] {
				return capital(where)
			}
		case n.name == "ovens" || n.name == "rest-breaks" || n.name == "taken" || n.name == "gas-table":
			where = fmt.Sprintf("%s %d", strings.TrimSuffix(strings.ReplaceAll(n.name, "-", " "), "s"), n.index+1)
		}
	}
	if strings.Contains(path, ".hands.") {
		label = "hands, " + strings.ToLower(label)
	}
	if where == "" {
		return label
	}
	return capital(where) + ", " + strings.ToLower(label[:1]) + label[1:]
}

package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// kitInUse is the counted kit that the hands use in a job.
func kitInUse(j *job) []practical.Kit {
	var kit []practical.Kit
	hob := false
	for _, c := range j.clauses {
		if c.wait {
			continue
		}
		hob = hob || c.place == practical.AtHob && (c.verb.deed != moves || has(j.it.ts[c.from:c.to], "heat", "scald"))
		if t := j.it.techniqueFor(c.verb.name, j.it.ts[c.from:c.to]); t != nil && t.Place == "hob" && (c.verb.deed == fries || c.verb.deed == cooks || c.verbIs("melt", "scramble", "thicken")) && c.place == "" {
			hob = hob || !has(j.ts, "microwave")
		}
	}
	if hob {
		kit = append(kit, practical.Ring)
	}
	ts := j.ts
	if (has(ts, "food processor", "processor", "blender") || hasAny(ts, "blitz", "whizz", "liquidise", "pulse")) && !has(ts, "stick blender", "hand blender") {
		kit = append(kit, practical.Processor)
	}
	if has(ts, "stand mixer", "electric mixer", "dough hook", "food mixer", "freestanding mixer") {
		kit = append(kit, practical.Mixer)
	}
	if has(ts, "microwave") && (j.waiting() == nil || j.waiting().place != practical.AtMicrowave) {
		kit = append(kit, practical.Microwave)
	}
	return kit
}

// smallTools are the words for kit to have at hand.
var smallTools = []string{
	"saucepan", "frying pan", "wok", "griddle", "baking tray", "baking sheet", "roasting tin", "cake tin", "loaf tin", "muffin tin", "bun tin", "pie dish", "ovenproof dish", "baking dish", "casserole",
	"mixing bowl", "sieve", "colander", "whisk", "electric whisk", "rolling pin", "grater", "peeler", "palette knife", "spatula", "wooden spoon", "slotted spoon", "tongs", "piping bag", "cutter",
	"pastry brush", "wire rack", "foil", "cling film", "baking paper", "greaseproof paper", "parchment paper", "baking parchment", "kitchen paper", "stick blender", "hand blender", "food processor", "masher", "measuring jug", "jug", "skewer", "ramekin", "baking beans", "probe", "thermometer", "ladle", "steamer", "lid", "rice paper", "cocktail sticks",
}

// smallKit names the kit that the step's words name.
func smallKit(j *job) string {
	var out []string
	for _, k := range smallTools {
		if has(j.ts, k) && !partOfOther(out, k) {
			out = append(out, k)
		}
	}
	return strings.Join(out, ", ")
}

func partOfOther(list []string, k string) bool {
	for _, x := range list {
		if strings.HasSuffix(x, k) {
			return true
		}
	}
	return false
}

// setUpJob says whether a step is clearly one for before the clock: it only weighs, greases, lines or gathers.
func setUpJob(j *job) bool {
	if j.kind != handsJob || len(j.clauses) == 0 {
		return false
	}
	if len(j.ts) == 0 || verbs[j.ts[0].text].name == "" {
		return false // a set-up job is told by its first word
	}
	for _, c := range j.clauses {
		body := j.ts
		switch {
		case c.verb.deed == heatsUp:
		case c.verbIs("weigh", "gather") && !has(body, "edge", "edges", "dough", "pastry"):
		case c.verbIs("grease", "line", "butter", "flour", "oil", "prepare") && has(body, "tin", "tins", "tray", "trays", "sheet", "dish", "ramekin", "ramekins", "basin", "basins", "pan", "pans", "mould", "moulds", "sheets") && !has(body, "pastry", "paste", "dough", "bacon", "biscuit", "base of the", "crust", "beans"):
		default:
			return false
		}
	}
	return true
}

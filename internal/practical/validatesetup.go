package practical

import (
	"slices"
	"strings"
)

// work are verbs of real work, which a set-up step's words may hide after "and".
// Words that name foods and kit as well (cream, bread, zest) are not among them.
var work = strings.Fields(`bake beat blanch blend boil carve chill chop coat cook crimp cube cut deseed dice drain fillet fold fry
 garnish glaze grate grill halve hull joint knead mash melt mix peel pipe poach prove roast roll rub segment shape shred simmer
 slice stir strain trim whip whisk`)

// setUp judges a step that is to be done before the clock: its verbs, and no oven.
func (j *judge) setUp(path string, s Step) {
	allowed := j.p.Rules.SetUpVerbs
	hint := "allowed in set-up: " + strings.Join(allowed, ", ")
	if len(allowed) == 0 {
		hint = "rules.set-up-verbs allows nothing"
	}
	if s.Wait != nil && s.Wait.Place == AtOven {
		j.fault(path+".wait.place", "a set-up step does not use the oven", "do it after the start; "+hint)
	}
	verbs := verbsOf(s.Text)
	if len(verbs) > 0 && !slices.Contains(allowed, verbs[0]) {
		j.faultf(path+".text", hint, "%q is not allowed in set-up", verbs[0])
		return
	}
	for _, v := range verbs {
		if slices.Contains(work, v) && !slices.Contains(allowed, v) {
			j.faultf(path+".text", hint, "%q is not allowed in set-up", v)
		}
	}
}

// verbsOf are the words with which the clauses of a step's text begin: the
// first word, and those after "and", "then" or a mark. In small letters,
// without -ing. Words that are not verbs can be among them.
func verbsOf(text string) []string {
	var verbs []string
	begins := true
	for _, raw := range strings.Fields(strings.ToLower(text)) {
		word := strings.Trim(raw, ".,;:()!?\"'")
		switch {
		case word == "and" || word == "then" || word == "":
			begins = true
			continue
		case begins:
			verbs = append(verbs, strings.TrimSuffix(word, "ing"))
		}
		begins = strings.ContainsAny(raw[len(raw)-1:], ".,;:")
	}
	return verbs
}

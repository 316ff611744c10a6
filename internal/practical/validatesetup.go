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

// lighting are the verbs of turning an oven on, allowed where the rules allow that.
var lighting = []string{"heat", "light", "preheat", "pre-heat", "switch", "turn"}

// NotInSetUp is the first verb of a step's text that the rules do not allow
// in set-up, "" when they allow the whole step. The words judged are those that
// begin a clause: the first of all must be allowed, later ones must not be
// verbs of work.
func (r Rules) NotInSetUp(text string) string {
	allowed := func(verb string) bool {
		return slices.Contains(r.SetUpVerbs, verb) || r.OvenInSetUp && slices.Contains(lighting, verb)
	}
	for i, verb := range verbsOf(text) {
		if !allowed(verb) && (i == 0 || slices.Contains(work, verb)) {
			return verb
		}
	}
	return ""
}

// OutOfSetUp moves the steps that the rules do not allow in set-up, and those
// that follow others, to after the start. It is for dishes read from recipes, which know
// no rules: a step that they hold fit for set-up is done within the clock instead.
func (r Rules) OutOfSetUp(d *Dish) {
	inSetUp := map[string]bool{}
	for i := range d.Steps {
		s := &d.Steps[i]
		follows := slices.ContainsFunc(s.After, func(a After) bool { return !inSetUp[a.Step] })
		if s.SetUp && (follows || s.Wait != nil && s.Wait.Place == AtOven || r.NotInSetUp(s.Text) != "") {
			s.SetUp = false
		}
		inSetUp[s.ID] = s.SetUp
	}
}

// setUp judges a step that is to be done before the clock: its verbs, and no oven.
func (j *judge) setUp(path string, s Step) {
	hint := "allowed in set-up: " + strings.Join(j.p.Rules.SetUpVerbs, ", ")
	switch {
	case len(j.p.Rules.SetUpVerbs) == 0:
		hint = "rules.set-up-verbs allows nothing"
	case j.p.Rules.OvenInSetUp:
		hint += ", and turning the oven on"
	}
	if s.Wait != nil && s.Wait.Place == AtOven {
		j.fault(path+".wait.place", "a set-up step does not use the oven", "do it after the start; "+hint)
	}
	if verb := j.p.Rules.NotInSetUp(s.Text); verb != "" {
		j.faultf(path+".text", hint, "%q is not allowed in set-up", verb)
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

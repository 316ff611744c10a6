package check

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// spices are what a row may call spices, herbs or seasoning.
var (
	spices    = lex("allspice, cumin, turmeric, paprika, thyme, oregano, rosemary, sage, cinnamon, cardamom, masala, nutmeg, cloves, garam, ras, hanout, fenugreek, chilli powder, curry powder, coriander, cayenne, mustard seed*, bay, mixed spice, star anise, pepper*")
	spiceSaid = lex("spice*, herbs, herb, seasoning*, flavouring*, rub, curry paste, aromatics")
)

// everywhere are foods that no plan names each time.
var everywhere = lex("salt, pepper, water, oil, seasoning, butter, flour, sugar, garlic, spray, pinch, spice*, herb*, vanilla, egg*, milk, baking, bicarbonate, powder, black, ice")

// unused is the name of an ingredient that I could not find in the plan; empty:
// it is there, or a row stands for a step that takes it, or its step is missing
// as a whole, which another rule tells.
func (v *view) unused(letter, name string, steps []practical.Step) string {
	keys := foodKeys(name)
	if len(keys) == 0 {
		return ""
	}
	for _, r := range v.rows {
		if (r.about(letter) || len(r.Letters) == 0) && (mentions(r.all(), keys) || spiceSaid.in(r.words) && spices.in(wordsOf(name))) {
			return ""
		}
	}
	named := false
	for i := range steps {
		if !mentions(wordsOf(steps[i].Text), keys) {
			continue
		}
		seen := v.steps[steps[i].ID]
		if !seen.seen() || !v.spells(seen) {
			return "" // its step is missing, or the row says the step as a whole
		}
		named = true
	}
	if !named {
		return ""
	}
	return strings.ToLower(name)
}

// spells says that the rows of a step name at least half of its foods, so that
// one that is not named is missing.
func (v *view) spells(s *stepSeen) bool {
	named, all := 0, 0
	for _, ing := range s.dish.Ingredients {
		keys := foodKeys(ing.Name)
		if len(keys) == 0 || !mentions(wordsOf(s.step.Text), keys) {
			continue
		}
		all++
		if slices.ContainsFunc(s.rows, func(r *row) bool { return mentions(r.words, keys) }) {
			named++
		}
	}
	return named > 0 && 2*named >= all
}

// foodKeys are the words by which a food is known, without endings.
func foodKeys(name string) (keys []string) {
	for _, w := range wordsOf(name) {
		if len(w) > 2 && !everywhere.in([]string{w}) && !plainFood.in([]string{w}) {
			keys = append(keys, strings.TrimSuffix(strings.TrimSuffix(w, "s"), "e"))
			if strings.HasPrefix(w, "breadcrumb") {
				keys = append(keys, "crumb")
			}
		}
	}
	return keys
}

var plainFood = lex("raw, red, hot, dry, tin, tins, can, cans, big, low, fat, few, any, the, and, for, not, but, from, lean, ripe, mixed, into, cut, tbsp, tsp, thin, thick, fine, sauce, green, yellow, cooked, frozen, fresh, large, small, medium, plain, whole, white, brown, ground, dried, chopped, sliced, diced, grated, caster, icing, self, raising, olive, vegetable, sunflower, clove*, tinned, unsalted, salted, double, single, boneless, skinless, free, range, strong, bread, about, finely, into, pieces, extra, with")

func mentions(words, keys []string) bool {
	return slices.ContainsFunc(keys, func(k string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, k) || len(w) >= 4 && strings.HasPrefix(k, w) })
	})
}

package check

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
)

// The method: is each step there, once, and after what it needs?
var methodTests = map[string]test{
	"step-missing":       stepMissing,
	"step-doubled":       stepDoubled,
	"out-of-order":       outOfOrder,
	"prepared-after-use": preparedAfterUse,
	"dish-missing":       dishMissing,
	"ingredient-unused":  ingredientUnused,
}

// stepDoubled tells a step with a wait that the plan does twice, far apart.
func stepDoubled(v *view, f *asker) {
	v.eachStep(func(s *stepSeen) {
		var rows []*row
		for _, r := range s.rows {
			if v.sure(r, s.step.ID) >= 0.8 && len(r.Steps) == 1 && r.hands.Low > 1 {
				rows = append(rows, r)
			}
		}
		for i, r := range rows[:max(0, len(rows)-1)] {
			next := rows[i+1]
			if sameKinds(r, next) && next.place > r.place+1 && strings.EqualFold(strings.Join(r.words, " "), strings.Join(next.words, " ")) && !again.in(next.words) {
				f.tell(saw{rows: []*row{next, r}, step: s.step.ID, minutes: next.least(), say: map[string]string{"step": v.stepText(s)}})
				return
			}
		}
	})
	if v.recipes {
		return
	}
	for i, r := range v.inTime { // without a recipe: the same words of one dish
		for _, o := range v.inTime[i+1:] {
			if len(r.words) > 2 && r.only() != "" && r.samely(o) && slices.Equal(r.words, o.words) && r.hands.Low > 2 && !r.has(act.WashUp, act.CleanDown, act.WashHands, act.Test, act.Prove, act.Chill, act.TakeOut) {
				f.tell(saw{rows: []*row{o, r}, minutes: o.least(), say: map[string]string{"step": strings.Join(strings.Fields(o.Text), " ")}})
			}
		}
	}
}

var again = lex("again, second, other, more, another, rest, remaining, continue*, next")

func (v *view) sure(r *row, id string) float64 {
	for _, s := range r.Steps {
		if s.ID == id && s.Part == match.Whole {
			return s.Sure
		}
	}
	return 0
}

func sameKinds(a, b *row) bool {
	return slices.EqualFunc(a.deeds, b.deeds, func(x, y *deed) bool { return x.Kind == y.Kind && x.Verb == y.Verb })
}

// outOfOrder tells steps that stand before what they need.
func outOfOrder(v *view, f *asker) {
	v.eachStep(func(s *stepSeen) {
		if len(s.rows) == 0 || s.nameless && slices.Contains(s.kinds, act.TurnOven) {
			return
		}
		for _, a := range s.step.After {
			before := v.steps[a.Step]
			if before == nil || len(before.rows) == 0 || v.preparing(before) || !v.sameFood(before, s) && !v.addedTo(before, s) || v.otherThread(before, s) {
				continue
			}
			if late, early := before.rows[0], s.rows[len(s.rows)-1]; v.wrongWay(late, early, before, s) {
				f.tell(saw{rows: []*row{early, late}, dish: s.dish.Letter, step: s.step.ID, say: map[string]string{"step": v.stepText(before)}})
				return
			}
		}
	})
	v.usualOrder(f)
}

// addedTo says that a step puts something into what the step before has on the
// hob: "pour in the tomatoes".
func (v *view) addedTo(before, s *stepSeen) bool {
	words := wordsOf(s.step.Text)
	for i, w := range words {
		if i > 0 && words[i-1] == "the" && slices.ContainsFunc(before.verbs, func(verb string) bool { return len(verb) > 3 && strings.HasPrefix(w, verb) }) {
			return true // "mash the potatoes", "top with the mash"
		}
	}
	if s.order == before.order+1 && madeBefore.in(words) {
		return true
	}
	return len(s.step.After) == 1 && slices.Contains(before.kinds, act.Hob) && intoIt.in(wordsOf(s.step.Text)) && s.order == before.order+1
}

// madeBefore are words of a step for what the step before has made.
var madeBefore = lex("the filling, of filling, of the filling, the mixture, of mixture")

var intoIt = lex("pour in, add, stir in, return, tip in, whisk in, beat in, mix in, throw in, put in")

// otherThread says that a step begins with an ingredient of its own and shares
// with the one before only what is in everything.
func (v *view) otherThread(before, s *stepSeen) bool {
	return s.fresh && !v.addedTo(before, s) && !slices.ContainsFunc(s.foods, func(o string) bool {
		return slices.Contains(before.foods, o) && !vessel.in([]string{o}) && !everywhere.in([]string{o})
	}) && !joining.in(wordsOf(strings.ReplaceAll(s.step.Text, "rolling pin", "")))
}

// wrongWay says that every row of a step is before every row of the one it needs.
func (v *view) wrongWay(late, early *row, before, s *stepSeen) bool {
	if early.prepares() {
		return false // cutting ahead is no harm
	}
	if late.backwards || early.backwards || early.place >= late.place || early.begin >= late.begin {
		return false
	}
	return v.sure(early, s.step.ID) >= 0.6 && v.sure(late, before.step.ID) >= 0.6
}

// prepares says that a row only cuts and gathers.
func (r *row) prepares() bool {
	small := slices.ContainsFunc(r.deeds, func(d *deed) bool { return smallWork.in([]string{d.Verb}) })
	return (r.has(act.Cut) || small) && !slices.ContainsFunc(r.deeds, func(d *deed) bool {
		return d.Kind != act.Cut && d.Kind != act.SetUp && d.Kind != act.Other && d.Kind != act.WashHands && d.Kind != act.CleanDown
	})
}

// preparing says that a step is cutting and weighing: prepared-after-use tells it.
func (v *view) preparing(s *stepSeen) bool {
	return slices.Contains(s.kinds, act.Cut) && !slices.ContainsFunc(s.kinds, func(k act.Kind) bool { return k != act.Cut && k != act.SetUp && k != act.Other })
}

// order is what must come first on any dish, where no recipe says it: the later
// act with its words, and the earlier one that it needs.
var order = []struct {
	later, earlier       act.Kind
	laterWords, earlyFor *lexicon
	name                 string
}{
	{act.Shape, act.Mix, lex("roll*"), lex("pastry, shortcrust, dough"), "making the pastry or dough"},
	{act.Prove, act.Mix, nil, lex("dough, knead*, yeast"), "making the dough"},
	{act.Decorate, act.PutIn, lex("ice, icing, buttercream, ganache"), lex("cake*, sponge*, biscuit*, cupcake*, bun, buns"), "baking"},
	{act.Fill, act.PutIn, lex("cream"), lex("choux, cake*, sponge*, profiterole*, eclair*, buns"), "baking"},
	{act.Cut, act.PutIn, lex("carve*, carving"), nil, "roasting"},
}

// usualOrder tells acts that come before what they need, by what is common to all dishes.
func (v *view) usualOrder(f *asker) {
	for _, o := range order {
		for _, later := range v.of(o.later) {
			if later.row.backwards || later.row.only() == "" || o.laterWords != nil && !o.laterWords.in(later.words) {
				continue
			}
			var after *deed
			found := false
			for _, e := range v.of(o.earlier) {
				if e.row.backwards || !e.row.samely(later.row) || o.earlyFor != nil && !o.earlyFor.in(e.row.words) {
					continue
				}
				if e.place < later.place {
					found = true
				} else if after == nil && e.row != later.row {
					after = e
				}
			}
			if !found && after != nil {
				f.tell(saw{rows: []*row{later.row, after.row}, say: map[string]string{"step": o.name}})
			}
		}
	}
}

// preparedAfterUse tells food that is cut only after it has been used.
func preparedAfterUse(v *view, f *asker) {
	for _, cut := range v.of(act.Cut) {
		if cut.row.backwards || toServe.in(cut.row.words) || cut.row.only() == "" || cut.row.has(act.TakeOut, act.FromCold, act.Serve, act.Plate, act.Decorate) {
			continue
		}
		for _, o := range cut.Objects {
			if use := v.usedBefore(cut, o); use != nil {
				f.tell(saw{rows: []*row{use.row, cut.row}, say: map[string]string{"food": wordFor(o, cut.row.words), "step": strings.Join(strings.Fields(cut.row.Text), " ")}})
				break
			}
		}
	}
	v.eachStep(func(s *stepSeen) {
		for _, a := range s.step.After {
			before := v.steps[a.Step]
			if before == nil || len(before.rows) == 0 || len(s.rows) == 0 || !v.preparing(before) || !v.sameFood(before, s) {
				continue
			}
			if late, early := before.rows[0], s.rows[len(s.rows)-1]; v.wrongWay(late, early, before, s) {
				f.tell(saw{rows: []*row{early, late}, dish: s.dish.Letter, step: s.step.ID, say: map[string]string{"food": "it", "step": v.stepText(before)}})
				return
			}
		}
	})
}

// wordFor is the word of the row that a stem stands for.
func wordFor(stem string, words []string) string {
	for _, w := range words {
		if strings.HasPrefix(w, stem) {
			return w
		}
	}
	return stem
}

var toServe = lex("shell*, over, on top, little, while hot, hot, skins, boiled, roasted, drained, garnish*, serve*, serving, decorat*, topping, salad, slice into, portion*, into slices, into squares, baked, cooked, cooled")

// usedBefore is a deed that cooks or mixes the food before it is cut, where
// nothing has cut it earlier.
func (v *view) usedBefore(cut *deed, food string) *deed {
	var use *deed
	for _, d := range v.deeds[:cut.place] {
		if d.row == cut.row || d.row.backwards || !d.row.samely(cut.row) || !slices.Contains(d.Objects, food) {
			continue
		}
		switch d.Kind {
		case act.Cut:
			return nil
		case act.Mix:
			if use == nil && d.row.has(act.Hob) && !v.wholeFirst(d) {
				use = d
			}
		case act.Hob, act.Fill, act.PutIn, act.Decorate:
			if use == nil && !v.wholeFirst(d) && !v.bakedBetween(d, cut) {
				use = d
			}
		}
	}
	return use
}

// bakedBetween says that the dish is in the oven between two deeds: what is cut then is baked.
func (v *view) bakedBetween(a, b *deed) bool {
	return slices.ContainsFunc(v.deeds[a.place:b.place], func(o *deed) bool {
		return o.row.samely(a.row) && o.row != b.row && (o.Kind == act.PutIn || o.Kind == act.TakeOut) && o.place > a.place
	})
}

// wholeFirst says that a food is cooked whole and cut afterwards.
func (v *view) wholeFirst(d *deed) bool {
	return unattended(d.Act) || d.Kind == act.PutIn || rawMeat.in(d.words)
}

// dishMissing tells dishes of the menu for which no row stands.
func dishMissing(v *view, f *asker) {
	told := false
	if v.Practical != nil {
		for _, d := range v.Practical.Dishes {
			if v.nothingOf(d) && (v.lettered() || !v.mentioned(d.Name)) {
				told = true
				f.tell(saw{dish: d.Letter, say: map[string]string{"what": d.Name}})
			}
		}
	}
	if told || v.recipes {
		return
	}
	for _, n := range v.Plan.Dishes {
		if n.Name != "" && !v.named(n.Name, n.Letter) && !v.mentioned(n.Name) {
			f.tell(saw{say: map[string]string{"what": n.Name}})
		}
	}
}

// nothingOf says that no row works on the dish.
func (v *view) nothingOf(d practical.Dish) bool {
	for _, s := range d.Steps {
		if v.steps[s.ID].seen() {
			return false
		}
	}
	return !slices.ContainsFunc(v.rowsOfDish(d.Letter), func(r *row) bool { return r.only() == d.Letter && r.handles() })
}

// lettered says that most rows are known to be about a dish.
func (v *view) lettered() bool {
	n := 0
	for _, r := range v.rows {
		if len(r.Letters) > 0 {
			n++
		}
	}
	return 2*n > len(v.rows)
}

// named says that any row says the dish.
func (v *view) named(name, letter string) bool {
	return slices.ContainsFunc(v.rows, func(r *row) bool {
		return slices.ContainsFunc(r.Dishes, func(d string) bool { return strings.EqualFold(d, name) || letter != "" && strings.EqualFold(d, letter) })
	})
}

// mentioned says that the words of any row name the dish, by a word of its name.
func (v *view) mentioned(name string) bool {
	for _, w := range wordsOf(name) {
		if len(w) < 4 || plainWord.in([]string{w}) {
			continue
		}
		stem := w[:len(w)-1]
		for _, r := range v.rows {
			if slices.ContainsFunc(r.words, func(o string) bool { return strings.HasPrefix(o, stem) }) {
				return true
			}
		}
	}
	return false
}

var plainWord = lex("with, and, chicken, cheese, sauce, fresh, served, salad, cream, chocolate, homemade, style")

// remainder are words of a row that takes all that is left of the list.
var remainder = lex("remaining ingredients, other ingredients, rest ingredients, rest of the ingredients, all ingredients, all the ingredients, ingredients in, remaining sauce ingredients, remaining, dry ingredients, wet ingredients, dry stuff, dry bits")

// ingredientUnused tells foods of a recipe's list that nothing in the plan takes.
func ingredientUnused(v *view, f *asker) {
	if !v.recipes {
		return
	}
	for i := range v.Practical.Dishes {
		d := &v.Practical.Dishes[i]
		if len(d.Steps) == 0 || len(v.rowsOfDish(d.Letter)) == 0 || slices.ContainsFunc(v.rowsOfDish(d.Letter), func(r *row) bool { return remainder.in(r.words) }) {
			continue
		}
		var unused []string
		for _, ing := range d.Ingredients {
			if name := v.unused(d.Letter, ing.Name, d.Steps); name != "" && !slices.Contains(unused, name) {
				unused = append(unused, name)
			}
		}
		if len(unused) > 0 {
			f.tell(saw{dish: d.Letter, say: map[string]string{"what": list(unused), "number": fmt.Sprint(len(unused))}})
		}
	}
}

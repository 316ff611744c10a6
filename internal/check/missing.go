package check

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
)

// stepMissing tells steps of a recipe for which no row stands, dish by dish.
func stepMissing(v *view, f *asker) {
	missing := map[string][]*stepSeen{}
	v.eachStep(func(s *stepSeen) {
		if (!s.seen() || v.onlyOut(s)) && s.weighty(f.limit("least")) && !v.folded(s) {
			missing[s.dish.Letter] = append(missing[s.dish.Letter], s)
		}
	})
	v.eachStep(func(s *stepSeen) {
		if !s.seen() && !s.weighty(f.limit("least")) && !s.step.SetUp && s.step.Hands.Likely >= smallStep && v.ownFoodAbsent(s) {
			missing[s.dish.Letter] = append(missing[s.dish.Letter], s)
		}
	})
	for _, s := range v.missingRuns(f.limit("least")) {
		missing[s.dish.Letter] = append(missing[s.dish.Letter], s)
	}
	v.eachStep(func(s *stepSeen) {
		if s.seen() && !s.step.SetUp && v.partMissing(s) {
			missing[s.dish.Letter] = append(missing[s.dish.Letter], s)
		}
	})
	for _, letter := range v.dishes {
		list := missing[letter]
		if len(list) == 0 || len(v.rowsOfDish(letter)) == 0 {
			continue // a dish without rows is told by itself
		}
		for i, s := range list {
			if i == f.limit("most") {
				break
			}
			where, rows := "", v.around(s)
			if len(rows) > 0 {
				where = ", before " + v.quote(rows[0])
			} else if r := v.rowBefore(s); r != nil {
				where, rows = ", after "+v.quote(r), []*row{r}
			}
			f.tell(saw{rows: rows, dish: letter, step: s.step.ID, minutes: s.minutes(), say: map[string]string{"step": v.stepText(s), "where": where}})
		}
	}
}

// smallStep is the least minutes of a small step that is told when no row names
// what it alone takes.
const smallStep = 1

// ownFoodAbsent says that an ingredient comes in this step first, and that no
// row of the dish names it, nor spices or the rest of the list.
func (v *view) ownFoodAbsent(s *stepSeen) bool {
	own, absent := 0, 0
	for _, ing := range s.namedFoods() {
		keys, first := foodKeys(ing.Name), true
		v.eachStep(func(o *stepSeen) {
			if o.dish == s.dish && o.order < s.order && mentions(wordsOf(o.step.Text), keys) {
				first = false
			}
		})
		if !first {
			continue
		}
		own++
		if !slices.ContainsFunc(v.rowsOfDish(s.dish.Letter), func(r *row) bool {
			return mentions(r.all(), keys) || remainder.in(r.words) || spiceSaid.in(r.words) && spices.in(wordsOf(ing.Name))
		}) {
			absent++
		}
	}
	return absent > 0 && 2*absent >= own
}

// onlyOut says that rows take a dish from the cold, and that none puts it there.
func (v *view) onlyOut(s *stepSeen) bool {
	w := s.step.Wait
	if w == nil || w.Place != practical.AtFridge || w.Least < 30 || len(s.rows) > 0 {
		return false
	}
	return !slices.ContainsFunc(v.rowsOfDish(s.dish.Letter), func(r *row) bool { return r.has(act.Chill, act.Freeze) && !r.has(act.FromCold) })
}

// missingRuns are the first steps of runs of small ones, none of them in the
// plan, that together take the minutes that a plan must show: "make the sauce"
// in three sentences.
func (v *view) missingRuns(least int) (firsts []*stepSeen) {
	first := map[string]*stepSeen{} // of the run that a step belongs to
	minutes := map[*stepSeen]int{}
	number := map[*stepSeen]int{}
	v.eachStep(func(s *stepSeen) {
		if s.seen() || s.step.SetUp || s.weighty(least) || v.folded(s) {
			return
		}
		first[s.step.ID] = s
		for _, a := range s.step.After {
			if f := first[a.Step]; f != nil {
				first[s.step.ID] = f
				break
			}
		}
		f := first[s.step.ID]
		number[f]++
		minutes[f] += s.minutes()
	})
	v.eachStep(func(s *stepSeen) {
		if number[s] > 1 && minutes[s] >= least {
			firsts = append(firsts, s)
		}
	})
	return firsts
}

// partMissing says that of the ingredients that a step names, no row of the
// dish names two or more, and that they are half of them: a row stands for the
// step, and only for a part of it.
func (v *view) partMissing(s *stepSeen) bool {
	named, absent := 0, 0
	for _, ing := range s.namedFoods() {
		keys := foodKeys(ing.Name)
		named++
		if !slices.ContainsFunc(v.rowsOfDish(s.dish.Letter), func(r *row) bool { return mentions(r.all(), keys) }) {
			absent++
		}
	}
	return !v.cutsAll(s.dish.Letter) && absent >= 2 && 2*absent >= named && slices.Contains(s.kinds, act.Cut)
}

// namedFoods are the ingredients of the dish that the step's words name.
func (s *stepSeen) namedFoods() (named []practical.Ingredient) {
	words := wordsOf(s.step.Text)
	for _, ing := range s.dish.Ingredients {
		if keys := foodKeys(ing.Name); len(keys) > 0 && mentions(words, keys) {
			named = append(named, ing)
		}
	}
	return named
}

// minutes is what the step takes at the least, its wait included.
func (s *stepSeen) minutes() int {
	if s.step.Wait != nil {
		return s.step.Hands.Likely + s.step.Wait.Least
	}
	return s.step.Hands.Likely
}

// weighty says that a step is one that a plan must show: it takes time, or its
// food waits somewhere.
func (s *stepSeen) weighty(least int) bool {
	if slices.ContainsFunc(s.kinds, func(k act.Kind) bool { return k == act.Hob || k == act.Reheat || k == act.Grill }) {
		least--
	}
	if len(s.kinds) > 0 && !slices.ContainsFunc(s.kinds, func(k act.Kind) bool { return k != act.Ready && k != act.HeatOven && k != act.SetUp }) {
		return false // a tin that is not ready is told by its own rule
	}
	return !s.step.SetUp && (s.step.Wait != nil && s.step.Wait.Least >= least || s.step.Hands.Likely >= least)
}

// folded says that a row, though it stands for other steps, names what is done
// in this one and to what: "make the white sauce" for all its steps.
func (v *view) folded(s *stepSeen) bool {
	for _, r := range v.rowsOfDish(s.dish.Letter) {
		for _, d := range r.deeds {
			if !s.nameless && slices.Contains(s.kinds, d.Kind) && !v.usedBy(d, s) && slices.ContainsFunc(d.Objects, func(o string) bool {
				return slices.Contains(s.foods, o) && !vessel.in([]string{o}) && !everywhere.in([]string{o})
			}) {
				return true
			}
		}
	}
	if v.namedWhole(s) {
		return true
	}
	if v.preparing(s) && v.cutsAll(s.dish.Letter) {
		return true
	}
	if v.preparing(s) && slices.ContainsFunc(v.rowsOfDish(s.dish.Letter), func(r *row) bool { return mentions(r.words, s.foods) }) {
		return true
	}
	if w := s.step.Wait; w != nil && w.Least > 0 {
		figure := fmt.Sprint(w.Least)
		if slices.ContainsFunc(v.rowsOfDish(s.dish.Letter), func(r *row) bool { return slices.Contains(r.words, figure) && mentions(r.words, s.foods) }) {
			return true
		}
	}
	if v.timeIsThere(s) {
		return true
	}
	if w := s.step.Wait; w != nil && (w.Place == practical.AtHob && v.cooksEnough(s) || w.Place != practical.AtHob && v.enough(s)) {
		return true
	}
	if heats := slices.ContainsFunc(s.kinds, func(k act.Kind) bool { return k == act.Hob || k == act.Grill }); heats && s.nameless {
		return v.cooksEnough(s)
	}
	if s.nameless && s.step.Wait == nil && s.step.Hands.Likely >= 4 && len(s.kinds) > 0 && slices.Contains(s.kinds, act.Mix) {
		return v.enough(s) && v.verbThere(s)
	}
	return (len(s.foods) == 0 || s.nameless) && (v.enough(s) || s.step.Wait == nil && s.step.Hands.Likely < 8)
}

// verbThere says that a row of the dish says a verb of the step, or what comes to the same.
func (v *view) verbThere(s *stepSeen) bool {
	return slices.ContainsFunc(v.rowsOfDish(s.dish.Letter), func(r *row) bool {
		return slices.ContainsFunc(r.deeds, func(d *deed) bool {
			return slices.ContainsFunc(s.verbs, func(verb string) bool {
				return verb == d.Verb || blends.in([]string{verb}) && blends.in([]string{d.Verb})
			})
		})
	})
}

var blends = lex("blend, blitz, pure, puree, process, whizz, liquidis*, mash, press, push, sieve, sift")

// usedBy says that a deed surely stands for another step, of the same kind and
// of a food of the deed.
func (v *view) usedBy(d *deed, s *stepSeen) bool {
	return slices.ContainsFunc(d.row.Steps, func(m match.Step) bool {
		o := v.steps[m.ID]
		return o != nil && o != s && m.Sure >= 0.8 && slices.Contains(o.kinds, d.Kind) && slices.ContainsFunc(d.Objects, func(w string) bool {
			return slices.Contains(o.foods, w)
		})
	})
}

// cooksEnough says that a row of the dish cooks on the hob or under the grill
// what the step works on, or names no food, and stands for no other step of that kind.
func (v *view) cooksEnough(s *stepSeen) bool {
	return slices.ContainsFunc(v.rowsOfDish(s.dish.Letter), func(r *row) bool {
		spare := 0
		for _, d := range r.deeds {
			if (d.Kind == act.Hob || d.Kind == act.Grill) && (len(d.Objects) == 0 || slices.ContainsFunc(d.Objects, func(o string) bool { return slices.Contains(s.foods, o) })) {
				spare++
			}
		}
		for _, m := range r.Steps {
			if o := v.steps[m.ID]; o != nil && slices.ContainsFunc(o.kinds, func(k act.Kind) bool { return k == act.Hob || k == act.Grill }) {
				spare--
			}
		}
		return spare > 0
	})
}

// namedWhole says that one row names all the ingredients that a step works on,
// or says that what it makes is kept cold.
func (v *view) namedWhole(s *stepSeen) bool {
	words := wordsOf(s.step.Text)
	var all [][]string
	for _, ing := range s.dish.Ingredients {
		if keys := foodKeys(ing.Name); len(keys) > 0 && mentions(words, keys) {
			all = append(all, keys)
		}
	}
	cold := s.step.Wait != nil && s.step.Wait.Place == practical.AtFridge
	return slices.ContainsFunc(v.rowsOfDish(s.dish.Letter), func(r *row) bool {
		if cold && coldWords.in(r.words) && mentions(r.words, s.foods) && !r.has(act.FromCold) {
			return true
		}
		return len(all) > 1 && !slices.ContainsFunc(all, func(keys []string) bool { return !mentions(r.words, keys) })
	})
}

// cutsAll says that a row of the dish cuts "the vegetables" or "the ingredients" as one.
func (v *view) cutsAll(letter string) bool {
	return slices.ContainsFunc(v.rowsOfDish(letter), func(r *row) bool {
		return slices.ContainsFunc(r.deeds, func(d *deed) bool { return d.Kind == act.Cut && allOfThem.in(d.words) })
	})
}

var allOfThem = lex("veg*, ingredients, everything, all, fruit")

// timeIsThere says that a step of no hands, food that stands at the side, has
// its minutes between the rows before and after it though no row says so.
func (v *view) timeIsThere(s *stepSeen) bool {
	w := s.step.Wait
	if w == nil || w.Place != practical.AtSide || s.step.Hands.Likely > 1 {
		return false
	}
	var before *row
	for _, a := range s.step.After {
		if p := v.steps[a.Step]; p != nil {
			for _, r := range slices.Concat(p.rows, p.outs) {
				if before == nil || r.place > before.place {
					before = r
				}
			}
		}
	}
	if before == nil {
		return false
	}
	end, _ := v.served(s.dish.Letter)
	for _, id := range s.next {
		if next := v.steps[id]; len(next.rows) > 0 {
			end = next.rows[0].begin
		}
	}
	return end-before.begin >= w.Least
}

// enough says that the dish's rows hold as many acts of the step's kind as its
// recipe: a "leave to cool" that names nothing cannot be told from another.
func (v *view) enough(s *stepSeen) bool {
	kinds := s.waitKinds()
	if len(kinds) == 0 && len(s.kinds) > 0 {
		kinds = s.kinds[len(s.kinds)-1:]
	}
	asked, there := 0, 0
	v.eachStep(func(o *stepSeen) {
		if o.dish == s.dish && slices.ContainsFunc(o.kinds, func(k act.Kind) bool { return slices.Contains(kinds, k) }) {
			asked++
		}
	})
	for _, r := range v.rowsOfDish(s.dish.Letter) {
		n := 0
		for _, d := range r.deeds {
			if slices.Contains(kinds, d.Kind) {
				n++
			}
		}
		if n == 0 && slices.Contains(kinds, act.Chill) && inCold.in(r.words) && !r.has(act.FromCold) {
			n = 1
		}
		there += n
	}
	return asked > 0 && there >= asked
}

// waitKinds are the acts that begin the step's wait.
func (s *stepSeen) waitKinds() []act.Kind {
	if s.step.Wait == nil {
		return nil
	}
	switch s.step.Wait.Place {
	case practical.AtFridge:
		return []act.Kind{act.Chill, act.Marinate}
	case practical.AtFreezer:
		return []act.Kind{act.Freeze}
	case practical.AtWarm:
		return []act.Kind{act.Prove}
	case practical.AtSide:
		return []act.Kind{act.Cool, act.Rest, act.Soak}
	}
	return nil
}

// around is the row before which a missing step would stand: that of the step
// after it, if it has one.
func (v *view) around(s *stepSeen) []*row {
	for _, id := range s.next {
		if next := v.steps[id]; len(next.rows) > 0 {
			return []*row{next.rows[0]}
		}
	}
	return nil
}

// rowBefore is the last row of the step that a missing one follows; nil: none.
func (v *view) rowBefore(s *stepSeen) (last *row) {
	for _, a := range s.step.After {
		if before := v.steps[a.Step]; before != nil {
			for _, r := range before.rows {
				if last == nil || r.place > last.place {
					last = r
				}
			}
		}
	}
	return last
}

func (v *view) stepText(s *stepSeen) string {
	text := []rune(strings.Join(strings.Fields(s.step.Text), " "))
	if len(text) > longestQuote {
		return string(text[:longestQuote]) + " ..."
	}
	return strings.TrimSuffix(string(text), ".")
}

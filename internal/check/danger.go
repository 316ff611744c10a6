package check

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/act"
)

// reheatedTwice tells food that is heated up more than once.
func reheatedTwice(v *view, f *asker) {
	for _, letter := range v.dishes {
		var rows []*row
		for _, r := range v.rowsOfDish(letter) {
			if (r.has(act.Reheat) || reheats.in(r.words)) && !r.has(act.Plate) && !platesOnly.in(r.words) {
				rows = append(rows, r)
			}
		}
		if len(rows) > 1 {
			f.tell(saw{rows: []*row{rows[1], rows[0]}, dish: letter})
		}
	}
}

var (
	reheats    = lex("reheat*, re heat*, warm through, heat through")
	platesOnly = lex("plate*, flatbread*, naan*, bread, bowls, tortilla*, pitta*, buns, rolls")
)

// marinadeReused tells a marinade of raw food that comes on to the table.
func marinadeReused(v *view, f *asker) {
	var raw *row
	for _, r := range v.inTime {
		if r.has(act.Marinate) && raw == nil {
			raw = r
			continue
		}
		if raw == nil || r.backwards || !marinade.in(r.words) || !r.shares(raw) {
			continue
		}
		if pourOver.in(r.words) && !marinadeOK.in(r.words) && !r.has(act.Hob) && v.cookedBy(r) {
			f.tell(saw{rows: []*row{r, raw}})
			return
		}
	}
}

// cookedBy says that something of the row's dish has been cooked before it.
func (v *view) cookedBy(r *row) bool {
	return slices.ContainsFunc(v.inTime[:r.place], func(o *row) bool { return o.shares(r) && o.has(act.Hob, act.PutIn, act.Grill) })
}

// allergensUnmarked tells a menu with allergens that the plan never names.
func allergensUnmarked(v *view, f *asker) {
	if !v.recipes {
		return
	}
	var names []string
	for _, d := range v.Practical.Dishes {
		for _, a := range d.Allergens {
			if !slices.Contains(names, a) {
				names = append(names, a)
			}
		}
	}
	if len(names) == 0 {
		return
	}
	texts := slices.Clone(v.Plan.Other)
	for _, r := range v.rows {
		texts = append(texts, r.Text, r.Points)
	}
	for _, t := range texts {
		if words := wordsOf(t); allergySaid.in(words) || namesAllergens(words) {
			return
		}
	}
	f.tell(saw{say: map[string]string{"what": list(names), "number": fmt.Sprint(len(names))}})
}

// namesAllergens says that words list allergens: three by name, and two of them
// names that methods hardly use, or people who are to be told.
func namesAllergens(words []string) bool {
	n, law := map[string]bool{}, map[string]bool{}
	for i, w := range words {
		switch one := words[i : i+1]; {
		case lawNames.in(one):
			n[w], law[w] = true, true
		case allergenFoods.in(one):
			n[strings.TrimSuffix(w, "s")] = true
		}
	}
	return (toldOf.in(words) || len(law) >= 2) && len(n) >= 3
}

// Words of the 14 allergens that UK food law wants named: those that methods
// hardly use, and those that are foods as well.
var (
	lawNames      = lex("wheat, soya, soy, gluten, dairy, sulphite*, sulphur, lupin, crustacean*, mollusc*, shellfish, celery, sesame, peanut*")
	allergenFoods = lex("milk, egg, eggs, fish, nut, nuts, almond*, hazelnut*, walnut*, mustard, cheese, prawn*, barley, rye, oats")
	toldOf        = lex("warn*, tell, ask, label*, taster*, customer*, people, guest*, teacher*, eater*, sign, has got, whoever")
)

var allergySaid = lex("allerg*, label them, menu has, dish has, dishes have, milk and egg, egg and milk, wheat and milk, milk and wheat, intoleran*, coeliac, contains, gluten, nut free, dairy free, dietary, vegan")

// hotFatNoNote tells hot fat or sugar with nothing said of how to be safe with
// it, in its row or in those of the dish about it.
func hotFatNoNote(v *view, f *asker) {
	for _, r := range v.inTime {
		if !hotFat.in(r.words) && !fryingFat(r) || !r.has(act.Hob) && !hotFat.in(r.words) || !hotFat.in(r.words) && !r.has(act.Hob) {
			continue
		}
		if hotFatNotes.in(r.all()) || r.has(act.Serve, act.Plate, act.Decorate) && !r.has(act.Hob) || v.notedNear(r, f.limit("near")) {
			continue
		}
		f.at(r)
	}
}

// notedNear says that a row of the dish within so many minutes has a note of
// how to be safe with hot fat.
func (v *view) notedNear(r *row, minutes int) bool {
	return slices.ContainsFunc(v.inTime, func(o *row) bool {
		return o != r && o.samely(r) && abs(o.begin-r.begin) <= minutes && (fatSaid.in(o.all()) || o.has(act.Hob)) && hotFatNotes.in(o.points)
	})
}

// fryingFat says that something is fried in fat that is named, or meat or fish is.
func fryingFat(r *row) bool {
	if slices.ContainsFunc(r.deeds, func(d *deed) bool { return d.Kind == act.Hob && fries.in(d.words) && !slices.Contains(d.words, "oil") }) &&
		slices.ContainsFunc(r.deeds, func(d *deed) bool { return d.Kind == act.Mix && slices.Contains(d.words, "oil") }) {
		return false // the oil is stirred in afterwards
	}
	return fries.in(r.words) && !slices.Contains(r.words, "dry") && (slices.Contains(r.words, "oil") || bothSides.in(r.words) || slices.Contains(r.words, "butter") && rawMeat.in(r.words))
}

var (
	fries   = lex("fry, fried, frying, shallow")
	fatSaid = lex("oil, fat, fryer, butter, lard, sugar, caramel")
)

// walksAway tells hands that are wanted elsewhere while something must be watched.
func walksAway(v *view, f *asker) {
	if v.cooks() > 1 {
		return
	}
	for _, d := range v.deeds {
		if !d.job.watch || d.row.backwards {
			continue
		}
		from, until := d.early, d.early+max(d.job.Low, 1)
		for _, o := range v.inTime[d.row.place+1:] {
			if o.backwards || !o.timed || o.begin >= until-f.limit("slack") {
				break
			}
			if o.hands.Low >= f.limit("work") && !o.has(act.Serve) && o.begin+o.hands.Low > from && !goesOn(d, o) {
				f.tell(saw{rows: []*row{o, d.row}, minutes: min(until, o.begin+o.hands.Low) - max(from, o.begin)})
				return
			}
		}
	}
}

// goesOn says that a row goes on with what is in the pan.
func goesOn(d *deed, r *row) bool {
	if !r.samely(d.row) || !r.has(act.Hob) && !tipped.in(r.words) {
		return false
	}
	return tipped.in(r.words) || slices.ContainsFunc(r.deeds, func(o *deed) bool {
		return len(o.Objects) == 0 || slices.ContainsFunc(o.Objects, func(w string) bool { return slices.Contains(d.Objects, w) })
	}) && !slices.ContainsFunc(r.deeds, func(o *deed) bool { return o.Kind == act.Hob && len(o.Objects) > 0 })
}

package recipe

import (
	"fmt"

	"plait.example/internal/practical"
)

// usual is how long a wait lasts when the text does not say.
type usual struct {
	least, most int // minutes; most 0: no most
	words       string
}

// usualWaits gives, per place and verb, the usual minutes of a wait whose length
// is not said. The first row that fits counts. Common practice in school
// kitchens: judgement, not measured; no source.
var usualWaits = []struct {
	verbs string // of the clause; "*" any
	place practical.Place
	words []string // one of them stands in the clause or step; none: any
	usual usual
}{
	{"boil-up bring", practical.AtHob, []string{"milk", "cream", "stock", "sauce", "tomatoes", "butter"}, usual{3, 8, "to the boil"}},
	{"boil-up bring", practical.AtHob, []string{"water"}, usual{8, 12, "water to boil"}},
	{"boil-up bring", practical.AtHob, nil, usual{3, 8, "to the boil"}},
	{"*", practical.AtHob, []string{"potato", "potatoes"}, usual{15, 20, "boiling potatoes"}},
	{"*", practical.AtHob, []string{"rice"}, usual{12, 18, "rice"}},
	{"*", practical.AtHob, []string{"pasta", "spaghetti", "penne", "macaroni", "lasagne"}, usual{8, 12, "dried pasta"}},
	{"*", practical.AtHob, []string{"noodle", "noodles"}, usual{3, 6, "noodles"}},
	{"*", practical.AtHob, []string{"egg", "eggs"}, usual{6, 10, "boiling eggs"}},
	{"simmer stew cook", practical.AtHob, []string{"tender"}, usual{20, 40, "simmer until tender"}},
	{"blanch parboil scald", practical.AtHob, nil, usual{2, 8, "blanch"}},
	{"steam", practical.AtHob, nil, usual{6, 20, "steam"}},
	{"poach", practical.AtHob, nil, usual{6, 12, "poach"}},
	{"reduce", practical.AtHob, nil, usual{8, 20, "reduce"}},
	{"*", practical.AtHob, nil, usual{10, 20, "simmer"}},
	{"prove rise proof ferment", "", []string{"second", "again", "tray", "tin", "shaped"}, usual{20, 45, "second prove"}},
	{"prove rise proof ferment", "", nil, usual{45, 75, "first prove"}},
	{"marinate marinade", "", []string{"fish", "salmon", "cod", "prawn"}, usual{10, 30, "marinate fish"}},
	{"marinate marinade", "", nil, usual{20, 0, "marinate"}},
	{"*", practical.AtFridge, []string{"jelly", "gelatine", "mousse", "panna cotta", "cheesecake", "set"}, usual{60, 0, "set in the fridge"}},
	{"*", practical.AtFridge, nil, usual{20, 0, "chill"}},
	{"*", practical.AtFreezer, nil, usual{15, 0, "freeze to firm"}},
	{"cool", "", []string{"slightly", "a little", "few"}, usual{5, 0, "cool slightly"}},
	{"cool", "", []string{"completely", "cold", "cake", "sponge", "fully"}, usual{30, 0, "cool before icing or filling"}},
	{"cool", "", nil, usual{15, 0, "cool on a rack"}},
	{"rest stand", "", []string{"steak", "meat", "beef", "lamb", "chicken", "joint", "briefly"}, usual{5, 15, "rest meat"}},
	{"rest stand", "", []string{"dough", "pastry"}, usual{15, 0, "rest dough"}},
	{"rest stand", "", nil, usual{5, 0, "stand"}},
	{"soak infuse steep macerate", "", nil, usual{10, 0, "soak"}},
	{"*", practical.AtOven, []string{"potato", "potatoes"}, usual{40, 60, "bake or roast potatoes"}},
	{"*", practical.AtOven, []string{"biscuit", "cookie", "scone", "roll", "bun"}, usual{10, 18, "bake small things"}},
	{"*", practical.AtOven, []string{"bread", "loaf"}, usual{25, 40, "bake bread"}},
	{"*", practical.AtOven, nil, usual{20, 30, "bake"}},
	{"*", practical.AtGrill, nil, usual{4, 8, "grill"}},
	{"*", practical.AtMicrowave, nil, usual{1, 3, "microwave"}},
	{"*", "", nil, usual{10, 0, "wait"}},
}

// usualWait is the table's figure for the clause.
func usualWait(c clause, ts []token) usual {
	for _, row := range usualWaits {
		if row.place != "" && row.place != c.place {
			continue
		}
		if row.verbs != "*" && !nameIn(row.verbs, c.verb.name) && !(c.verb.deed == boils && nameIn(row.verbs, "boil-up")) {
			continue
		}
		if len(row.words) > 0 && !has(ts, row.words...) {
			continue
		}
		return row.usual
	}
	return usual{10, 0, "wait"}
}

func nameIn(list, name string) bool {
	for _, w := range fieldsOf(list) {
		if w == name {
			return true
		}
	}
	return false
}

// makeWait turns the waiting clause of a job into a wait, and says why.
func makeWait(text string, j *job) (practical.Wait, []string, float64) {
	c := j.waiting()
	w := practical.Wait{Place: c.place, Attention: c.look}
	if c.look == practical.Look {
		w.Every = max(c.every, 1)
	}
	var why []string
	doubt := 0.05
	d, ts, shift := c.said, j.it.ts, c.shift
	if d == nil && j.borrowed != nil {
		d, ts, shift = j.borrowed, j.lender.ts, 0
	}
	if d != nil {
		turns := *d
		turns.times(max(1, j.turns))
		d = &turns
		w.Least, w.Most = d.least, d.most
		switch {
		case d.capped:
			w.Least = max(1, d.least/2)
		case (d.open || cold(c.place)) && d.least == d.most:
			w.Most = 0
		case proves(c) && d.least == d.most:
			w.Most = d.least + d.least/4
		}
		if d.vague {
			doubt = 0.3
		}
		if j.turns > 1 {
			why, doubt = append(why, j.inTurns()), max(doubt, 0.3)
		}
		why = append(why, "'"+quote(text, ts, shift+d.from, shift+d.to)+"': said")
		if d.reason != "" {
			why, doubt = append(why, d.reason), max(doubt, 0.3)
		}
	} else {
		u := usualWait(*c, j.around())
		w.Least, w.Most = u.least, u.most
		doubt = 0.55
		why = append(why, fmt.Sprintf("%s: no time said, usually %s", u.words, rangeWords(u.least, u.most)))
	}
	w.Least = max(w.Least, 1)
	if w.Most > 0 {
		w.Most = max(w.Most, w.Least)
	}
	if w.Least > maxWait || w.Most > maxWait {
		doubt = max(doubt, 0.6)
		why = append(why, "longer than a day: in a practical it counts as a day; do it before")
	}
	if c.place == practical.AtOven {
		doubt = max(doubt, ovenFigures(text, j, &w, &why))
	}
	return w, why, doubt
}

// withinDay is the wait as a practical can hold it: no longer than a day.
func withinDay(w *practical.Wait) *practical.Wait {
	if w == nil || w.Least <= maxWait && w.Most <= maxWait {
		return w
	}
	day := *w
	day.Least, day.Most = min(w.Least, maxWait), 0
	return &day
}

// maxWait is the longest wait that a practical holds, a day in minutes.
const maxWait = 24 * 60

func rangeWords(least, most int) string {
	switch {
	case most == 0:
		return fmt.Sprintf("%d minutes or more", least)
	case most == least:
		return fmt.Sprintf("%d minutes", least)
	}
	return fmt.Sprintf("%d to %d minutes", least, most)
}

// cold says that food may stay in the place longer than is said.
func cold(p practical.Place) bool {
	return p == practical.AtFridge || p == practical.AtFreezer || p == practical.AtSide
}

func proves(c *clause) bool { return c.place == practical.AtWarm }

// ovenFigures fills the temperature, its band and how long the door stays shut.
func ovenFigures(text string, j *job, w *practical.Wait, why *[]string) float64 {
	doubt := 0.0
	w.Band = 10
	for _, h := range j.waiting().heats {
		if h.oven {
			w.Celsius = h.celsius
			if h.clash && inList(h.figures, j.oven) {
				w.Celsius = j.oven // the figure that agrees with what was said before
			}
			*why = append(*why, fmt.Sprintf("'%s': said; %d °C without fan", quote(text, j.it.ts, j.waiting().shift+h.from, j.waiting().shift+h.to), w.Celsius))
			if h.clash {
				doubt = 0.5
				*why = append(*why, "the figures that stand together do not go together: look at the temperature")
			}
			if h.word {
				doubt = 0.25
			}
			break
		}
	}
	if w.Celsius == 0 && j.oven > 0 {
		w.Celsius = j.oven
		*why = append(*why, j.ovenWhy)
	}
	if w.Celsius == 0 {
		w.Celsius, doubt = 180, 0.7
		*why = append(*why, "no oven temperature found: 180 °C, a moderate oven, is a guess")
	}
	if w.Celsius < 50 || w.Celsius > 300 {
		w.Celsius = min(max(w.Celsius, 50), 300)
		doubt = 0.8
	}
	if has(j.it.ts[max(0, j.from-12):j.to], "sponge", "choux", "souffle", "soufflé", "batter", "cake", "yorkshire", "eclair", "profiterole", "toad", "muffin", "cupcake") {
		w.DoorShut = w.Least * 2 / 3
	}
	return doubt
}

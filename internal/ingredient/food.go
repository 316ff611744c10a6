package ingredient

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
	"sync"
)

// food is a food of the composition tables with what a measure of it weighs. The tables and their
// licences: NOTICE.md.
type food struct {
	code, name string
	head       map[string]bool // words of the first part of the name, singular
	words      map[string]bool // all words of the name, singular
	volumes    []lying         // grams in a millilitre
	pieces     map[string]float64
}

// lying is how a food lies in the cup: "chopped", "sifted", "packed".
type lying struct {
	words []string
	grams float64
}

//go:embed measures.csv
var measuresCSV string

//go:embed names.csv
var namesCSV string

// table is the foods by what people call them.
type table struct {
	foods  []*food
	byCode map[string]*food
	byWord map[string][]*food // by each word of the name
	called map[string]*food   // kitchen names: "plain flour"
}

var foods = sync.OnceValue(func() table {
	t := table{byCode: map[string]*food{}, byWord: map[string][]*food{}, called: map[string]*food{}}
	for _, r := range rows(measuresCSV) {
		f := newFood(r[0], r[1], r[2])
		t.foods = append(t.foods, f)
		t.byCode[f.code] = f
		for w := range f.words {
			t.byWord[w] = append(t.byWord[w], f)
		}
	}
	for _, r := range rows(namesCSV) {
		t.called[strings.Join(stems(r[0]), " ")] = t.byCode[r[1]]
	}
	return t
})

// rows reads an embedded table less its head. The tables are part of the program, and a test reads
// them whole, so that a broken row cannot ship.
func rows(s string) [][]string {
	all, err := csv.NewReader(strings.NewReader(s)).ReadAll()
	if err != nil || len(all) == 0 {
		return nil
	}
	return all[1:]
}

func newFood(code, name, measures string) *food {
	f := &food{code: code, name: name, head: map[string]bool{}, words: map[string]bool{}, pieces: map[string]float64{}}
	for i, part := range strings.Split(name, ",") {
		for _, w := range stems(part) {
			f.words[w] = true
			if i == 0 || i == 1 && categories[strings.ToLower(strings.SplitN(name, ",", 2)[0])] {
				f.head[w] = true
			}
		}
	}
	for _, m := range strings.Split(measures, "; ") {
		key, value, _ := strings.Cut(m, "=")
		g, err := strconv.ParseFloat(value, 64)
		if err != nil {
			continue
		}
		if rest, ok := strings.CutPrefix(key, "ml"); ok && (rest == "" || rest[0] == ' ') {
			f.volumes = append(f.volumes, lying{stems(rest), g})
		} else {
			f.pieces[strings.Join(stems(key), " ")] = g
		}
	}
	return f
}

// categories are first words of a table's name that are no food themselves: "Spices, cumin seed".
var categories = map[string]bool{
	"spices": true, "nuts": true, "seeds": true, "fish": true, "leavening agents": true, "beverages": true, "alcoholic beverage": true, "cheese": true, "oil": true,
	"crustaceans": true, "mollusks": true, "soup": true, "sauce": true, "candies": true, "syrups": true, "sugars": true, "beans": true, "peppers": true, "vinegar": true, "squash": true,
	"cream": true, "milk": true, "yogurt": true, "wheat flour": true, "rice": true,
}

// american turns a British word into the one of the tables.
var american = map[string]string{
	"courgette": "zucchini", "aubergine": "eggplant", "prawn": "shrimp", "yoghurt": "yogurt", "chilli": "chili", "swede": "rutabaga", "beetroot": "beet", "mangetout": "pea",
	"rocket": "arugula", "sultana": "raisin", "porridge": "oat", "treacle": "molasses", "wholemeal": "whole-grain", "sweetcorn": "corn", "coriander": "coriander", "cornflour": "cornstarch",
	"gammon": "ham", "mince": "ground", "haricot": "navy", "satsuma": "tangerine", "clementine": "clementine", "pepperoni": "pepperoni", "groundnut": "peanut",
}

// stems are the words of a text in lower case and singular, with British names turned into those of
// the tables.
func stems(s string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(accents.Replace(strings.ToLower(s)), func(r rune) bool { return strings.ContainsRune(" ,;()/\"&:", r) }) {
		w = strings.Trim(w, ".'*")
		w = oneOf(w)
		if a, ok := american[w]; ok {
			w = a
		}
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}

// accents are letters that kitchens write with their accents or without: "purée", "jalapeño".
var accents = strings.NewReplacer("é", "e", "è", "e", "ê", "e", "ë", "e", "á", "a", "à", "a", "â", "a", "ä", "a", "ã", "a", "í", "i", "î", "i", "ï", "i", "ó", "o", "ô", "o", "ö", "o", "õ", "o",
	"ú", "u", "û", "u", "ü", "u", "ñ", "n", "ç", "c")

// oneOf gives the singular of a food's name by the ending.
func oneOf(w string) string {
	switch {
	case len(w) < 4 || strings.HasSuffix(w, "ss") || strings.HasSuffix(w, "us"):
		return w
	case w == "leaves" || w == "halves" || w == "loaves":
		return strings.TrimSuffix(w, "ves") + "f"
	case strings.HasSuffix(w, "ies"):
		return strings.TrimSuffix(w, "ies") + "y"
	case strings.HasSuffix(w, "oes"), strings.HasSuffix(w, "shes"), strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "xes"):
		return strings.TrimSuffix(w, "es")
	}
	return strings.TrimSuffix(w, "s")
}

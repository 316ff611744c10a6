package recipe

import (
	"fmt"
	"strings"

	"plait.example/internal/practical"
)

// Minutes per weight: "20 minutes per 500 g plus 20 minutes". The weight of the
// food stands in the list of ingredients.

// gramsOf are the weights of the units in which such times are given: exact, by definition.
var gramsOf = map[string]float64{
	"g": 1, "gram": 1, "grams": 1, "kg": 1000, "kilo": 1000, "kilogram": 1000,
	"lb": 453.59237, "lbs": 453.59237, "pound": 453.59237, "pounds": 453.59237,
}

// perWeight reads "per 500 g", "to the pound", "for every 450 g/1 lb", "a lb" at
// token i: the grams that the minutes before it are for, and the token after; 0: none.
func perWeight(ts []token, i int) (grams float64, next int) {
	j := i
	switch t := at(ts, j); {
	case t.is("per", "/"):
		j++
	case t.is("to", "for", "a") && at(ts, j+1).is("the", "every", "each"):
		j += 2
	case t.is("for", "every", "each", "a", "an"):
		j++
		j += boolInt(at(ts, j).is("every", "each"))
	default:
		return 0, i
	}
	many, end := readNumber(ts, j)
	if end == j {
		many = 1
	}
	unit := gramsOf[at(ts, end).text]
	if unit == 0 || at(ts, end).kind != word {
		return 0, i
	}
	end++
	if at(ts, end).is("(", "/", "or") { // "per 450 g (1 lb)", "per 500g/1lb"
		k := end + 1
		_, after := readNumber(ts, k)
		if gramsOf[at(ts, after).text] > 0 {
			end = after + 1
			end += boolInt(at(ts, end).is(")"))
		}
	}
	return many * unit, end
}

// perWeightNear says that minutes for a weight stand just before token i.
func perWeightNear(ts []token, i int) bool {
	for j := max(0, i-7); j < i; j++ {
		if grams, _ := perWeight(ts, j); grams > 0 {
			return true
		}
	}
	return false
}

// byWeight multiplies minutes that are given per weight by the weight of the
// food that the step names, or else of the heaviest meat, bird or fish of the list.
func byWeight(jobs []job, list []practical.Ingredient) {
	for i := range jobs {
		w := jobs[i].waiting()
		if w == nil || w.said == nil || w.said.perGrams == 0 {
			continue
		}
		w.said.weighed(jobs[i].it.ts[jobs[i].from:jobs[i].to], list)
	}
}

// weighed works out the whole time, with its reason.
func (d *duration) weighed(ts []token, list []practical.Ingredient) {
	ing, low, high := heaviest(ts, list)
	if low == 0 {
		d.vague = true
		d.reason = "the minutes are for each " + weightWords(d.perGrams) + ", and no weight of the food was found: look at the time"
		return
	}
	extra := stretch{d.exact.low - d.rate.low, d.exact.high - d.rate.high, false}
	d.last(stretch{extra.low + d.rate.low*low/d.perGrams, extra.high + d.rate.high*high/d.perGrams, d.exact.vague})
	sum := fmt.Sprintf("%s minutes for each %s", figureRange(d.rate), weightWords(d.perGrams))
	if extra.high > 0 {
		sum += fmt.Sprintf(" and %s more", figureRange(extra))
	}
	d.reason = fmt.Sprintf("'%s' in the list: %s makes %s", ing, sum, rangeWords(d.least, d.most))
}

func figureRange(s stretch) string {
	if s.high > s.low {
		return decimalWords(s.low) + " to " + decimalWords(s.high)
	}
	return decimalWords(s.low)
}

func decimalWords(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }

// weightWords is a weight as the text may have said it.
func weightWords(grams float64) string {
	switch pounds := grams / gramsOf["lb"]; {
	case pounds > 0.99 && pounds < 1.01 && grams != 450:
		return "pound"
	case grams == 1000:
		return "kg"
	case grams >= 1000 && grams == float64(int(grams/1000))*1000:
		return decimalWords(grams/1000) + " kg"
	}
	return decimalWords(grams) + " g"
}

// heaviest is the line of the list that a step cooks by its weight: the one whose
// food the step names, else the heaviest of meat, poultry and fish; with its grams.
func heaviest(ts []token, list []practical.Ingredient) (raw string, low, high float64) {
	for _, named := range []bool{true, false} {
		for _, ing := range list {
			unit := gramsOfUnit(ing.Unit)
			if unit == 0 || ing.Quantity == 0 {
				continue
			}
			food := tokenize(ing.Name, 0)
			if named && !sharesFood(ts, food) || !named && !namesRawMeat(food) && !has(food, "joint", "ham", "bird", "goose", "topside", "brisket") {
				continue
			}
			if g := ing.Quantity * unit; g > low {
				raw, low, high = ing.Raw, g, max(g, ing.Most*unit)
			}
		}
		if low > 0 {
			break
		}
	}
	return raw, low, high
}

// gramsOfUnit is the grams of a unit: "kg", or the size of one piece, "6 lb"; 0: it is no weight.
func gramsOfUnit(unit string) float64 {
	ts := tokenize(unit, 0)
	v, next := readNumber(ts, 0)
	if next == 0 {
		v = 1
	}
	if next+1 != len(ts) {
		return 0
	}
	return v * gramsOf[ts[next].text]
}

// sharesFood says that the words of a step name a food that is cooked by its weight.
func sharesFood(ts, food []token) bool {
	if !namesRawMeat(food) && !has(food, "joint", "ham", "bird", "goose", "topside", "brisket") {
		return false
	}
	for _, f := range food {
		for _, t := range ts {
			if f.kind == word && t.kind == word && len(f.text) > 2 && !notFoods[f.text] && f.food() == t.food() {
				return true
			}
		}
	}
	return false
}

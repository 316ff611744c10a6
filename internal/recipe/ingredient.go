package recipe

import (
	"strconv"
	"strings"

	"plait.example/internal/ingredient"
	"plait.example/internal/practical"
)

// units are the words that measure: what tells a line of a list, and a time or a
// temperature, from a weight.
var units = set(`g gram grams gm gms gr kg kilo kilos kilogram kilograms mg ml millilitre millilitres milliliter milliliters l litre litres liter liters cl dl
	tsp tsps teaspoon teaspoons tbsp tbsps tbs tbl tablespoon tablespoons dessertspoon dessertspoons dsp dessertspoonful teaspoonful tablespoonful
	cup cups oz ozs ounce ounces lb lbs pound pounds pint pints pt quart quarts fl gallon gallons stick sticks
	pinch pinches dash dashes handful handfuls knob knobs sprig sprigs bunch bunches clove cloves slice slices rasher rashers piece pieces
	tin tins can cans jar jars packet packets pack packs sachet sachets bag bags box boxes tub tubs carton cartons bottle bottles tube tubes block blocks sheet sheets
	stalk stalks head heads leaf leaves drop drops splash drizzle glass glasses fillet fillets ball balls loaf loaves pot pots bar bars cube cubes ear ears punnet punnets pods pod
	strip strips package packages grind grinds squeeze scoop scoops spoonful nest nests mug mugs inch inches cm mm`)

// unmarked takes off the signs of bold and italic.
var unmarked = strings.NewReplacer("**", "", "__", "", "*", "")

// readIngredient reads a line of the list. A line without a letter or figure is no ingredient.
func readIngredient(l line) (practical.Ingredient, bool) {
	ing := practical.Ingredient{Raw: strings.Join(strings.Fields(unmarked.Replace(l.text)), " ")}
	if strings.Count(ing.Raw, "|") > 1 {
		ing.Raw = strings.Trim(ing.Raw, "| ") // a row of a table
	}
	if !hasWord(l.ts) {
		return ing, false
	}
	read := ingredient.Parse(ing.Raw)
	a := read.First()
	ing.Quantity, ing.Unit = round3(a.Low), unitOf(read)
	if a.Words == "a" && !saysOne(l.ts) {
		ing.Quantity = 0 // "pinch of salt"
	} else if a.High > a.Low {
		ing.Most = round3(a.High)
	}
	if oz, pounds := ouncesOnTop(read); pounds {
		ing.Quantity, ing.Most = round3(a.Low+oz/16), 0
	}
	ing.Name, ing.Note = read.Product()
	return ing, true
}

func hasWord(ts []token) bool {
	for _, t := range ts {
		if t.kind != sign {
			return true
		}
	}
	return false
}

// saysOne says that a line begins with "a" or "an", and so means one.
func saysOne(ts []token) bool {
	for _, t := range ts {
		if t.kind == word {
			return t.is("a", "an")
		}
	}
	return false
}

func round3(v float64) float64 { return float64(int(v*1000+0.5)) / 1000 }

// unitOf is the unit of a line's first amount as it is written for one, with its
// size and the size of its pack: "large clove", "400 g tin", "g sachet"; the size
// alone when things are counted.
func unitOf(l ingredient.Line) string {
	a := l.First()
	unit := strings.Join(strings.Fields(a.Size+" "+a.Unit+" "+a.Pack), " ")
	if len(l.Amounts) > 1 && l.Amounts[1].Relation == ingredient.Each && a.Pack == "" {
		return strings.TrimSpace(amountText(l.Amounts[1]) + " " + l.Amounts[1].Unit + " " + unit)
	}
	return unit
}

// amountText is an amount's number: "400", "4-6".
func amountText(a ingredient.Amount) string {
	if a.High > a.Low {
		return decimal(a.Low) + "-" + decimal(a.High)
	}
	return decimal(a.Low)
}

// ouncesOnTop is the ounces of "2 lb 4 oz".
func ouncesOnTop(l ingredient.Line) (float64, bool) {
	if len(l.Amounts) < 2 || l.Amounts[1].Relation != ingredient.Plus {
		return 0, false
	}
	return l.Amounts[1].Low, ingredient.UnitName(l.First().Unit) == "pound" && ingredient.UnitName(l.Amounts[1].Unit) == "ounce"
}

func decimal(v float64) string { return strconv.FormatFloat(round3(v), 'f', -1, 64) }

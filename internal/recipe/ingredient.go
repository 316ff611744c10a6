package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// units are words that measure an ingredient.
var units = set(`g gram grams gm gms gr kg kilo kilos kilogram kilograms mg ml millilitre millilitres milliliter milliliters l litre litres liter liters cl dl
	tsp tsps teaspoon teaspoons tbsp tbsps tbs tbl tablespoon tablespoons dessertspoon dessertspoons dsp dessertspoonful teaspoonful tablespoonful
	cup cups oz ozs ounce ounces lb lbs pound pounds pint pints pt quart quarts fl gallon gallons stick sticks
	pinch pinches dash dashes handful handfuls knob knobs sprig sprigs bunch bunches clove cloves slice slices rasher rashers piece pieces
	tin tins can cans jar jars packet packets pack packs sachet sachets bag bags box boxes tub tubs carton cartons bottle bottles tube tubes block blocks sheet sheets
	stalk stalks head heads leaf leaves drop drops splash drizzle glass glasses fillet fillets ball balls loaf loaves pot pots bar bars cube cubes ear ears punnet punnets pods pod
	strip strips package packages grind grinds squeeze scoop scoops spoonful nest nests mug mugs inch inches cm mm`)

// sizes count as the unit when no other stands there.
var sizes = set("large medium small medium-sized large-sized small-sized medium-size big heaped level heaping thumb-sized whole")

// packs are containers that may follow a size: "400 g tin".
var packs = set("tin tins can cans jar jars packet packets pack packs sachet sachets bag bags box boxes tub tubs carton cartons bottle bottles block blocks sheet sheets package packages ball balls pot pots tube tubes bar bars")

// readIngredient reads a line of the list. A line without a letter or figure is no ingredient.
func readIngredient(text string, l line) (practical.Ingredient, bool) {
	ing := practical.Ingredient{Raw: strings.Join(strings.Fields(strings.NewReplacer("**", "", "__", "", "*", "").Replace(l.text)), " ")}
	ts := l.ts
	for len(ts) > 0 && ts[0].kind == sign && !ts[0].is("(") {
		ts = ts[1:]
	}
	if len(ts) == 0 {
		return ing, false
	}
	i := readQuantity(text, ts, &ing)
	name, note := nameAndNote(text, ts[i:])
	if ing.Quantity == 0 {
		if q, from, to := trailingQuantity(text, ts); q.Quantity > 0 {
			ing.Quantity, ing.Most, ing.Unit = q.Quantity, q.Most, q.Unit
			name, note = nameAndNote(text, ts[:from])
			_, rest := nameAndNote(text, ts[to:])
			note = joinNotes(note, strings.Trim(phrase(text, ts[to:]), " ,;"), rest)
		}
	}
	ing.Name, ing.Note = name, joinNotes(ing.Note, note)
	if cut := strings.LastIndexByte(ing.Name, ' '); ing.Unit == "" && cut > 0 && ing.Quantity > 0 {
		if last := strings.ToLower(ing.Name[cut+1:]); contains([]string{"clove", "cloves", "sprig", "sprigs", "rasher", "rashers"}, last) {
			ing.Name, ing.Unit = ing.Name[:cut], unitName(last) // "2 garlic cloves"
		}
	}
	return ing, true
}

func joinNotes(parts ...string) string {
	var out []string
	for _, p := range parts {
		p = strings.Trim(p, " ,;-")
		if p != "" && (len(out) == 0 || !strings.Contains(out[len(out)-1], p)) {
			out = append(out, p)
		}
	}
	return strings.Join(out, ", ")
}

// readQuantity reads the figures and the unit at the head of the line and gives the index after them.
func readQuantity(text string, ts []token, ing *practical.Ingredient) int {
	i := 0
	for at(ts, i).is("about", "approx", "approximately", "around", "roughly", "~", "≈", ".") {
		i++
	}
	s, next := readSpan(ts, i)
	switch {
	case next > i:
		i = next
		if at(ts, i).is("a", "an") && s.low < 1 {
			i++ // "half a lemon"
		}
	case at(ts, i).is("a", "an") && (units[at(ts, i+1).text] || at(ts, i+1).is("few", "good", "generous", "small", "large", "little", "couple", "big")):
		s, i = span{1, 1}, i+1
		if at(ts, i).is("few") {
			s, i = span{3, 3}, i+1
		} else if at(ts, i).is("couple") {
			s, i = span{2, 2}, i+1+boolInt(at(ts, i+1).is("of"))
		}
	case units[at(ts, i).text] && !at(ts, i).is("clove", "cloves", "leaf", "leaves", "fillet", "fillets", "sheet", "bar", "box", "glass", "pot"):
		// "pinch of salt": a unit without a figure
	default:
		return 0
	}
	ing.Quantity, ing.Most = round3(s.low), 0
	if s.high > s.low {
		ing.Most = round3(s.high)
	}
	return readUnit(text, ts, i, ing)
}

func round3(v float64) float64 { return float64(int(v*1000+0.5)) / 1000 }

// readUnit reads "g", "tbsp", "x 400 g tins", "(400 g) tins", "large", and a second measure that stands beside it.
func readUnit(text string, ts []token, i int, ing *practical.Ingredient) int {
	if at(ts, i).is("+") {
		i++
	}
	if at(ts, i).is("x") {
		if _, next := readNumber(ts, i+1); next > i+1 && units[at(ts, next).text] {
			end := next + 1
			if at(ts, end).is("/") {
				if _, k := readNumber(ts, end+1); k > end+1 && units[at(ts, k).text] && packs[at(ts, k+1).text] {
					ing.Unit = quote(text, ts, i+1, end) + " " + at(ts, k+1).text // "2 x 400g/14oz tins"
					ing.Note = quote(text, ts, end+1, k+1)
					return skipOf(ts, k+2)
				}
			}
			if packs[at(ts, end).text] {
				end++
			}
			ing.Unit = quote(text, ts, i+1, end)
			return skipOf(ts, end)
		}
		i++
	}
	if at(ts, i).is("-") && !at(ts, i).gap {
		i++
	}
	if end := packSize(ts, i); end > i {
		ing.Unit = strings.ReplaceAll(quote(text, ts, i, end), "-", " ") // "2 400 g tins", "1 16-ounce can"
		return skipOf(ts, end)
	}
	if at(ts, i).is("(") {
		if close := closing(ts, i); close > i && units[at(ts, close+1).text] {
			ing.Note = quote(text, ts, i+1, close)
			i = close + 1
		}
	}
	for at(ts, i).is("good", "generous", "little", "rounded", "scant") && units[at(ts, i+1).text] {
		i++
	}
	size := ""
	if at(ts, i).is("heaped", "level", "heaping", "small", "large", "big", "medium", "thin", "thick") && units[at(ts, i+1).text] {
		size, i = at(ts, i).text+" ", i+1
	}
	if u := at(ts, i); units[u.text] && u.kind == word && i+1 < len(ts) {
		ing.Unit = size + unitName(u.text)
		i++
		if u.is("fl") && at(ts, i).is("oz", ".") {
			for at(ts, i).is("oz", ".") {
				i++
			}
			ing.Unit = "fl oz"
		}
		for at(ts, i).is(".", "+") {
			i++
		}
		if (packs[at(ts, i).text] || u.is("cm", "inch") && at(ts, i).is("piece", "pieces")) && i+1 < len(ts) {
			ing.Unit += " " + unitName(at(ts, i).text)
			i++
		}
	} else if sizes[u.text] {
		ing.Unit = u.text
		i++
	}
	if next := otherMeasure(text, ts, i, ing); next > i {
		i = next
		if packs[at(ts, i).text] && i+1 < len(ts) && ing.Unit != "" {
			ing.Unit += " " + unitName(at(ts, i).text) // "400g/14oz tin"
			i++
		}
	}
	return skipOf(ts, i)
}

// packSize is the index after a size with its pack: "400 g tins", "16-ounce can"; i when there is none.
func packSize(ts []token, i int) int {
	_, next := readNumber(ts, i)
	if next == i {
		return i
	}
	if at(ts, next).is("-") {
		next++
	}
	if units[at(ts, next).text] && (packs[at(ts, next+1).text] || at(ts, next+1).is("piece", "pieces")) {
		return next + 2
	}
	return i
}

// otherMeasure passes over "(1 tbsp)" and "/ 44 ml", which say the same again.
func otherMeasure(text string, ts []token, i int, ing *practical.Ingredient) int {
	if at(ts, i).is("(", "[") {
		if close := closing(ts, i); close > i {
			ing.Note = joinNotes(ing.Note, quote(text, ts, i+1, close))
			return close + 1
		}
	}
	if at(ts, i).is("/", "or", "-") {
		j := i + 1
		for at(ts, j).is("~", "about", "≈") {
			j++
		}
		if _, next := readSpan(ts, j); next > j && units[at(ts, next).text] && next+1 < len(ts) {
			ing.Note = joinNotes(ing.Note, quote(text, ts, j, next+1))
			return next + 1
		}
	}
	return i
}

func skipOf(ts []token, i int) int {
	if at(ts, i).is("of") && i+1 < len(ts) {
		return i + 1
	}
	return i
}

// closing is the index of the bracket that closes the one at i, or -1.
func closing(ts []token, i int) int {
	for j := i + 1; j < len(ts); j++ {
		if ts[j].is(")", "]") {
			return j
		}
	}
	return -1
}

// unitName is the unit as it is written for one.
func unitName(u string) string {
	if n, ok := unitNames[u]; ok {
		return n
	}
	return u
}

var unitNames = func() map[string]string {
	m := map[string]string{}
	for _, row := range []string{
		"g gram grams gm gms gr", "kg kilo kilos kilogram kilograms", "ml millilitre millilitres milliliter milliliters", "l litre litres liter liters",
		"tsp tsps teaspoon teaspoons teaspoonful", "tbsp tbsps tbs tbl tablespoon tablespoons tablespoonful", "dessertspoon dessertspoons dsp dessertspoonful", "oz ozs ounce ounces", "lb lbs pound pounds", "pint pints pt",
		"cup cups", "quart quarts", "stick sticks", "pinch pinches", "dash dashes", "handful handfuls", "knob knobs", "sprig sprigs", "bunch bunches", "clove cloves",
		"slice slices", "rasher rashers", "piece pieces", "tin tins", "can cans", "jar jars", "packet packets", "pack packs", "sachet sachets", "bag bags", "box boxes", "tub tubs",
		"carton cartons", "bottle bottles", "block blocks", "sheet sheets", "stalk stalks", "head heads", "leaf leaves", "drop drops", "ear ears", "package packages", "glass glasses", "fillet fillets", "ball balls",
		"loaf loaves", "pot pots", "bar bars", "cube cubes", "strip strips", "nest nests", "mug mugs", "inch inches", "gallon gallons",
	} {
		var first string
		for _, w := range strings.Fields(row) {
			if first == "" {
				first = w
			}
			m[w] = first
		}
	}
	return m
}()

// nameAndNote cuts the rest of the line where the preparation begins: at a comma, a bracket, a spaced dash.
func nameAndNote(text string, ts []token) (name, note string) {
	cut := len(ts)
	for j, t := range ts {
		if j > 0 && (t.is(",", "(", ";") || t.is("-") && t.gap && at(ts, j+1).gap) || j > 0 && t.is("to") && at(ts, j+1).is("taste", "serve", "garnish", "dust", "decorate") || j > 0 && t.is("for") && !at(ts, j+1).is("the") {
			cut = j
			break
		}
		if t.is("(") && j == 0 {
			if close := closing(ts, 0); close > 0 && close+1 < len(ts) {
				name, note = nameAndNote(text, ts[close+1:])
				return name, joinNotes(quote(text, ts, 1, close), note)
			}
		}
	}
	name = strings.Trim(phrase(text, ts[:cut]), " ,;*_[]|")
	return name, strings.TrimSuffix(strings.Trim(phrase(text, ts[cut:]), " ,;-("), ")")
}

// phrase is the words of the tokens, without markup.
func phrase(text string, ts []token) string {
	var b strings.Builder
	for i, t := range ts {
		if t.is("*", "_", "[", "]") {
			continue
		}
		if i > 0 && t.gap {
			b.WriteByte(' ')
		}
		b.WriteString(text[t.start:t.end])
	}
	return strings.TrimSpace(b.String())
}

// trailingQuantity reads "Boneless chicken 1/2 lb": the amount after the name.
func trailingQuantity(text string, ts []token) (practical.Ingredient, int, int) {
	for i := 1; i < len(ts); i++ {
		if ts[i].is(",", "(") {
			break
		}
		if ts[i].is("|") {
			continue
		}
		if ts[i].kind != number {
			continue
		}
		var q practical.Ingredient
		s, next := readSpan(ts, i)
		if next == i || next < len(ts) && !units[at(ts, next).text] && !sizes[at(ts, next).text] && !at(ts, next).is(",", "(") {
			return practical.Ingredient{}, 0, 0
		}
		q.Quantity = round3(s.low)
		if s.high > s.low {
			q.Most = round3(s.high)
		}
		if u := at(ts, next); units[u.text] || sizes[u.text] {
			q.Unit, next = unitName(u.text), next+1
		}
		return q, i, next
	}
	return practical.Ingredient{}, 0, 0
}

package recipe

import (
	"math"
	"strconv"

	"plait.example/internal/practical"
)

// heat is a temperature that the text states.
type heat struct {
	celsius  int // oven without fan, or of the food when not oven
	from, to int // tokens
	oven     bool
	word     bool // "moderate oven": the figure is a handbook's
	figures  []int
	clash    bool // the figures that stand together disagree by more than 15 C
}

// atom is one figure of a temperature as written.
type atom struct {
	value      float64
	fan        bool
	scale      string // "c", "f", "gas", "" when not said
	from, next int
}

// heats finds every temperature that the tokens state, in order.
func heats(ts []token) []heat {
	var out []heat
	for i := 0; i < len(ts); i++ {
		if h, next := heatWord(ts, i); next > i {
			h.from, h.to = i, next
			if f, end := figureBeside(ts, next); end > next {
				h = f // "a hot oven (450 F)": the figure counts
				h.from, next = i, end
			}
			out = append(out, h)
			i = next - 1
			continue
		}
		if !mayBeginHeat(ts, i) {
			continue
		}
		atoms, next := readAtoms(ts, i)
		if h, ok := settle(ts, atoms, i, next); ok {
			out = append(out, h)
			i = next - 1
		}
	}
	return out
}

// mayBeginHeat is a quick look whether a temperature can begin at token i.
func mayBeginHeat(ts []token, i int) bool {
	t := at(ts, i)
	return t.kind == number || t.kind == word && (t.text[0] == 'f' || t.text[0] == 'g' || t.text[0] == 'm' || t.text[0] == 'r' || t.text[0] == 'c' || t.text == "no")
}

// figureBeside reads the figures that stand beside words for an oven's heat.
func figureBeside(ts []token, i int) (heat, int) {
	j := i
	for j < i+3 && at(ts, j).is("(", ",", "at", "of", "about", "-", ":", "to", "[") {
		j++
	}
	atoms, next := readAtoms(ts, j)
	h, ok := settle(ts, atoms, j, next)
	if !ok || atoms[0].scale == "" && !atoms[0].fan {
		return heat{}, i
	}
	h.oven = true
	return h, next
}

// readAtoms reads the figures that stand together: "200C/180C fan/gas 6".
func readAtoms(ts []token, i int) ([]atom, int) {
	var atoms []atom
	next := i
	for j := i; ; {
		a, k := readAtom(ts, j)
		if k == j {
			return atoms, closed(ts, next)
		}
		if n := len(atoms); n > 0 && a.fan && a.scale != "gas" && sameHeat(atoms[n-1], a) {
			atoms[n-1].fan = true // "160 °C/320 °F fan-forced"
		}
		atoms = append(atoms, a)
		next, j = k, k
		for at(ts, j).is("/", "(", ")", ",", "or", "[", "]", ";", "-", "to", "and", "=", ".", "|", "for", "in", "a", "the", "if", "using", "with") && j < next+4 {
			j++
		}
		if fanAlone(ts, j) {
			for i := range atoms {
				atoms[i].fan = atoms[i].scale != "gas" // "170 °C (340 °F) fan"
			}
			return atoms, closed(ts, afterFan(ts, j))
		}
		if j == next && !at(ts, j).is("gas", "gasmark", "fan", "gm", "mark") {
			return atoms, closed(ts, next)
		}
		if at(ts, j-1).is("to", "-") && a.scale != "" && j == next+1 && !at(ts, j).is("gas") {
			return atoms, closed(ts, next) // a range; the figures do not stand for one another
		}
	}
}

// sameHeat says that two figures are one temperature on two scales.
func sameHeat(a, b atom) bool {
	if a.scale == b.scale || a.scale == "gas" || b.scale == "gas" || a.scale == "" || b.scale == "" {
		return false
	}
	c, f := a.value, b.value
	if a.scale == "f" {
		c, f = f, c
	}
	return math.Abs(c-(f-32)*5/9) < 8
}

// closed takes in a bracket that ends the figures.
func closed(ts []token, i int) int {
	if at(ts, i).is(")", "]") {
		return i + 1
	}
	return i
}

// isFan says that a token is a word for an oven with a fan.
func isFan(t token) bool {
	return t.is("fan", "fan-forced", "fan-assisted", "convection", "fan-oven")
}

// coolest is the lowest figure that can be an oven's, in degrees Celsius; a lower
// one after "fan" is minutes: "150 fan 40 mins".
const coolest = 50

// fanAlone says that a word for the fan stands at i, with no figure of its own after it.
func fanAlone(ts []token, i int) bool {
	if !isFan(at(ts, i)) {
		return false
	}
	j := afterFan(ts, i)
	n := at(ts, j)
	return n.kind != number || n.value < coolest || at(ts, j+1).is("min", "mins", "minute", "minutes", "hour", "hours", "m", "mn")
}

// afterFan is the index after "fan oven", "fan-assisted:", "fan oven to".
func afterFan(ts []token, i int) int {
	i++
	for at(ts, i).is("oven", "assisted", "forced", "-", ":", "bake", "setting", "mode") {
		i++
	}
	if at(ts, i).is("to", "at", "on", "is") && at(ts, i+1).kind == number {
		i++
	}
	return i
}

// readAtom reads one figure: "180C", "fan 160", "gas mark 4", "GM4", "350 degrees F".
func readAtom(ts []token, i int) (atom, int) {
	a := atom{from: i}
	j := i
	if isFan(at(ts, j)) {
		a.fan, j = true, afterFan(ts, j)
	}
	if g, k := gasMark(ts, j); k > j {
		a.scale, a.value, a.next = "gas", g, k
		return a, k
	}
	t := at(ts, j)
	if t.kind != number || t.value != math.Trunc(t.value) || t.value > 600 || a.fan && t.value < coolest {
		return atom{}, i
	}
	a.value, j = t.value, j+1
	first := j
	if at(ts, j).is("-", "to") && at(ts, j+1).kind == number && at(ts, j+1).value > a.value && at(ts, j+2).is("°", "c", "f", "degrees", "℃", "℉", "deg", "celsius", "fahrenheit", "centigrade") {
		j += 2 // "350-360 F": the lower figure
	}
	a.scale, j = readScale(ts, j, a.value)
	if at(ts, j).is("-", "to") && at(ts, j+1).kind == number && at(ts, j+1).value > a.value && at(ts, j+1).value <= a.value+40 {
		if scale, k := readScale(ts, j+2, at(ts, j+1).value); k > j+2 && scale == a.scale {
			j = k // "180C-190C"
		}
	}
	if at(ts, j).is("cfan") {
		a.scale, a.fan, j = "c", true, j+1
	}
	k := j
	if at(ts, k).is("(", "-", "in", "for") {
		k++
		for k <= j+2 && at(ts, k).is("a", "the") {
			k++
		}
	}
	if fanAlone(ts, k) {
		a.fan = true
		j = closed(ts, afterFan(ts, k))
	} else if at(ts, k).is("conventional", "static") {
		j = closed(ts, k+1)
	}
	if a.scale == "" && !a.fan && !bareHeat(ts, i, first, a.value) {
		return atom{}, i
	}
	a.next = j
	return a, j
}

// readScale reads "°C", "degrees F", "deg. F.", "C".
func readScale(ts []token, i int, v float64) (string, int) {
	j, degrees := i, false
	if at(ts, j).is("-") && !at(ts, j).gap && at(ts, j+1).is("degree", "degrees") {
		j++
	}
	for at(ts, j).is("°", "deg", "degs", "degree", "degrees") || degrees && at(ts, j).is(".") && !at(ts, j).gap && (!at(ts, j+1).upper || at(ts, j+1).is("c", "f")) {
		degrees, j = true, j+1
	}
	scale := ""
	switch t := at(ts, j); {
	case t.is("c", "celsius", "centigrade", "celcius", "℃", "c'"), t.is("oc") && !t.gap:
		scale, j = "c", j+1
	case t.is("f", "fahrenheit", "farenheit", "farenheight", "℉"), t.is("of") && !t.gap:
		scale, j = "f", j+1
	case t.is("c-fan"):
		return "c", j
	case degrees && v > 260:
		return "f", j
	case degrees:
		return "c", j
	}
	if t := at(ts, j); scale != "" && t.is(".") && !t.gap && at(ts, j+1).is(",", ")", "/", "or", "mark", "gas", ";") {
		j++ // "375 deg. F., Mark 5"
	}
	return scale, j
}

// bareHeat says whether a figure without a scale is an oven's: "at 180", "180/160 fan".
func bareHeat(ts []token, i, j int, v float64) bool {
	if v < 90 || v > 475 || math.Mod(v, 5) != 0 {
		return false
	}
	prev, n := at(ts, i-1), at(ts, j)
	if n.is("/") && (at(ts, j+1).kind == number && at(ts, j+1).value >= 90 || isFan(at(ts, j+1)) || at(ts, j+1).is("gas")) {
		return prev.is("at", "to", "(", "oven", "around", "about", "/", "on")
	}
	if n.is("(") && (isFan(at(ts, j+1)) || at(ts, j+2).is("fan", "f", "°", "c")) {
		return has(ts[max(0, i-9):i], "oven", "preheat", "bake", "roast")
	}
	if n.kind == word && (units[n.text] || timeUnits[n.text] > 0 && !n.is("f")) || n.is("x", "%") || n.is("-", "/") && at(ts, j+1).kind != word {
		return false
	}
	near := ts[max(0, i-9):min(len(ts), j+4)]
	switch {
	case prev.is("at", "to", "oven"):
		return has(near, "oven", "preheat", "bake", "roast", "heat", "temperature", "temp", "turn down", "turn up", "down to", "up to") && !has(near, "oil", "fryer")
	case prev.is(","):
		return has(ts[max(0, i-8):i], "oven") && (n.kind == sign || j >= len(ts))
	case prev.is("on", ":", "="):
		return has(ts[max(0, i-4):i], "oven", "temp", "temperature")
	}
	return prev.is("bake", "roast") && n.kind == number // "bake 180 20 mins"
}

// gasMark reads "gas mark 4", "gas 4", "mark 4", "GM4", "Gas ½", "regulo 4"; of "gas 4-5" the first.
func gasMark(ts []token, i int) (float64, int) {
	j := i
	switch t := at(ts, j); {
	case t.is("gas"):
		j++
		for at(ts, j).is("mark", "mk", ":", "no", ".", "regulo", "number", "(", "m") {
			j++
		}
	case t.is("no") && at(ts, i-1).is("at", "gas", "oven", "on", "to", "regulo") && (at(ts, j+1).is(".") || at(ts, j+1).kind == number):
		j += 1 + boolInt(at(ts, j+1).is("."))
	case t.is("gm", "mark", "gasmark", "gas-mark", "regulo"):
		j++
	case t.is("g") && at(ts, j+1).is(".") && at(ts, j+2).is("m"):
		j += 3 + boolInt(at(ts, j+3).is("."))
	case t.is("g") && t.upper && at(ts, j+1).kind == number && !at(ts, j+1).gap:
		j++
	default:
		return 0, i
	}
	v, next := readNumber(ts, j)
	if next == j || v > 10 || v <= 0 || at(ts, next).is("minutes", "mins", "min") {
		return 0, i
	}
	if at(ts, next).is("-") && !at(ts, next).gap || at(ts, next).is("or", "to") {
		if high, k := readNumber(ts, next+1); k > next+1 && high == v+1 {
			return v, k
		}
	}
	return v, next
}

// settle makes one temperature of the figures that stand together.
func settle(ts []token, atoms []atom, from, to int) (heat, bool) {
	if len(atoms) == 0 {
		return heat{}, false
	}
	h := heat{from: from, to: to}
	var figures []int
	best := 0
	for _, a := range atoms {
		c, rank := a.oven()
		if c < 40 || c > 320 {
			continue
		}
		figures = append(figures, c)
		if rank > best {
			best, h.celsius = rank, c
		}
	}
	if len(figures) == 0 {
		return heat{}, false
	}
	h.figures = figures
	for _, c := range figures {
		h.clash = h.clash || c-h.celsius > 15 || h.celsius-c > 15
	}
	h.oven = ovenHeat(ts, from, to, atoms)
	return h, true
}

// oven is the figure for an oven without fan, and how far it is to be trusted.
func (a atom) oven() (celsius, rank int) {
	switch {
	case a.scale == "gas":
		return celsiusOfGas(a.value), 2
	case a.scale == "f" || a.scale == "" && a.value > 260:
		c := practical.CelsiusOfFahrenheit(int(a.value))
		if a.fan {
			c = practical.CelsiusOfFan(c)
		}
		return c, 1
	case a.fan:
		return practical.CelsiusOfFan(int(a.value)), 3
	}
	return int(a.value), 4
}

// ovenHeat says whether a temperature is an oven's and not that of oil, syrup or the food.
func ovenHeat(ts []token, from, to int, atoms []atom) bool {
	for _, a := range atoms {
		if a.fan || a.scale == "gas" {
			return true
		}
	}
	before := ts[max(0, from-8):from]
	if has(before, "air fryer", "air fry", "air-fryer", "air-fry") {
		return true
	}
	after := ts[to:min(len(ts), to+4)]
	switch {
	case has(after, "oil", "soft ball", "hard ball", "core", "internal", "in the middle", "in the centre", "in the center", "inside", "sugar thermometer", "probe", "thermometer", "stage", "water", "milk"):
		return has(before, "oven", "bake", "roast") && !coolFigure(atoms)
	case has(before, "oven", "bake", "roast", "preheat", "broil") || has(after, "oven", "gas", "fan", "convection"):
		return !has(before, "fryer", "heat oil", "heat the oil", "centre is", "middle is", "reads", "core temperature", "internal temperature")
	}
	return !has(before, "oil", "fat", "fry", "fryer", "core", "internal", "centre", "center", "middle", "thickest", "probe", "thermometer", "syrup", "sugar", "caramel", "water", "milk", "custard", "jam", "reach", "read",
		"warm", "temperature of", "chocolate", "deep", "boil", "lukewarm", "liquid", "fridge", "freezer", "dough", "room", "steep", "brew") && !coolFigure(atoms)
}

// coolFigure says that the first figure is too low for an oven that is not named.
func coolFigure(atoms []atom) bool {
	c, _ := atoms[0].oven()
	return c < 90
}

// celsiusOfGas is the handbook's figure for a mark; 0 for a mark that no cooker has.
func celsiusOfGas(mark float64) int {
	name := strconv.Itoa(int(mark))
	if mark == 0.25 {
		name = "1/4"
	} else if mark == 0.5 {
		name = "1/2"
	}
	c, _ := practical.CelsiusOfGas(name)
	return c
}

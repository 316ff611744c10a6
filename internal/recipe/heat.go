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
			out = append(out, h)
			i = next - 1
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

// readAtoms reads the figures that stand together: "200C/180C fan/gas 6".
func readAtoms(ts []token, i int) ([]atom, int) {
	var atoms []atom
	next := i
	for j := i; ; {
		a, k := readAtom(ts, j)
		if k == j {
			return atoms, next
		}
		atoms = append(atoms, a)
		next, j = k, k
		for at(ts, j).is("/", "(", ")", ",", "or", "[", "]", ";", "-", "to", "and", "=") && j < next+3 {
			j++
		}
		if at(ts, j).is("fan") && at(ts, j+1).kind != number {
			for i := range atoms {
				atoms[i].fan = atoms[i].scale != "gas" // "170 °C (340 °F) fan"
			}
			return atoms, j + 1
		}
		if j == next && !at(ts, j).is("gas", "fan") {
			return atoms, closed(ts, next)
		}
	}
}

// closed takes in a bracket that ends the figures.
func closed(ts []token, i int) int {
	if at(ts, i).is(")") {
		return i + 1
	}
	return i
}

// readAtom reads one figure: "180C", "fan 160", "gas mark 4", "GM4", "350 degrees F".
func readAtom(ts []token, i int) (atom, int) {
	a := atom{from: i}
	j := i
	if at(ts, j).is("fan") {
		a.fan, j = true, j+1
		if at(ts, j).is("oven", "assisted", ":") {
			j++
		}
	}
	if g, k := gasMark(ts, j); k > j {
		a.scale, a.value, a.next = "gas", g, k
		return a, k
	}
	t := at(ts, j)
	if t.kind != number || t.value != math.Trunc(t.value) {
		return atom{}, i
	}
	a.value, j = t.value, j+1
	if at(ts, j).is("-", "to") && at(ts, j+1).kind == number && at(ts, j+1).value > a.value && at(ts, j+2).is("°", "c", "f", "degrees") {
		j += 2 // "350-360 F": the lower figure
	}
	degrees := false
	for at(ts, j).is("°", "deg", "degs", "degree", "degrees") || degrees && at(ts, j).is(".") && !at(ts, j).gap && !at(ts, j+1).upper {
		degrees, j = true, j+1
	}
	switch {
	case at(ts, j).is("c", "celsius", "centigrade", "celcius"):
		a.scale, j = "c", j+1
	case at(ts, j).is("f", "fahrenheit", "farenheit"):
		a.scale, j = "f", j+1
	case at(ts, j).is("cfan"):
		a.scale, a.fan, j = "c", true, j+1
	case degrees && a.value > 260:
		a.scale = "f"
	case degrees:
		a.scale = "c"
	}
	k := j
	if at(ts, k).is("(", "-") {
		k++
	}
	if at(ts, k).is("fan") && at(ts, k+1).kind != number || at(ts, k).is("in") && at(ts, k+1).is("a") && at(ts, k+2).is("fan") {
		a.fan = true
		for !at(ts, k).is("fan") {
			k++
		}
		j = closed(ts, k+1)
		if at(ts, j).is("oven", "assisted", "forced") {
			j = closed(ts, j+1)
		}
	}
	if a.scale == "" && !a.fan && !bareHeat(ts, i, j, a.value) {
		return atom{}, i
	}
	a.next = j
	return a, j
}

// bareHeat says whether a figure without a scale is an oven's: "at 180", "180/160 fan".
func bareHeat(ts []token, i, j int, v float64) bool {
	if v < 90 || v > 475 || math.Mod(v, 5) != 0 {
		return false
	}
	if n := at(ts, j); n.is("/") && at(ts, j+1).kind == number || n.is("/") && at(ts, j+1).is("fan", "gas") {
		return at(ts, i-1).is("at", "to", "(", "oven", "around", "about", "/")
	}
	if n := at(ts, j); n.kind == word && (units[n.text] || timeUnits[n.text] > 0) || n.is("/", "x", "-") {
		return false
	}
	return at(ts, i-1).is("at", "to", "oven") && has(ts[max(0, i-9):min(len(ts), j+4)], "oven", "preheat", "bake", "roast", "heat")
}

// gasMark reads "gas mark 4", "gas 4", "mark 4", "GM4", "Gas ½".
func gasMark(ts []token, i int) (float64, int) {
	j := i
	switch {
	case at(ts, j).is("gas"):
		j++
		for at(ts, j).is("mark", "mk", ":", "no", ".") {
			j++
		}
	case at(ts, j).is("gm", "mark", "gasmark"):
		j++
	default:
		return 0, i
	}
	v, next := readNumber(ts, j)
	if next == j || v > 10 || v <= 0 || at(ts, next).is("minutes", "mins", "min") {
		return 0, i
	}
	if at(ts, next).is("-") && !at(ts, next).gap {
		if high, k := readNumber(ts, next+1); k > next+1 && high == v+1 {
			return v, k // "gas 4-5"
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
	after := ts[to:min(len(ts), to+4)]
	if has(before, "oven", "bake", "roast", "preheat", "broil") || has(after, "oven", "gas", "fan", "convection") {
		return true
	}
	return !has(before, "oil", "fat", "core", "internal", "probe", "thermometer", "syrup", "sugar", "water", "milk", "custard", "jam", "reach", "read", "warm", "temperature of", "chocolate", "deep") &&
		!has(after, "core", "internal", "in the middle", "in the centre", "inside")
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

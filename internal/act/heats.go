package act

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// heatAt is a heat with the bytes that say it.
type heatAt struct {
	Heat
	start, end int
}

// Heats reads the temperatures of the oven that a text says, in its order.
// Those of a pan's heat, of oil or sugar and of the core of food are not the oven's.
func Heats(text string) (heats []Heat) {
	for _, h := range heatsOf(text) {
		heats = append(heats, h.Heat)
	}
	return heats
}

// A figure of degrees Celsius that an oven can be set to; a plain number
// without "C" or "degrees" must lie between plainLeast and celsiusMost.
const (
	celsiusLeast, plainLeast, celsiusMost = 50, 90, 290
	fahrenheitLeast, fahrenheitMost       = 210, 575 // an oven's dial
	coreMost                              = 100      // degrees Celsius that food reaches
)

func heatsOf(text string) (heats []heatAt) {
	ts := scan(text)
	for i, t := range ts {
		if t.kind == word {
			ts[i].text = Known(nil).mend(t.text)
		}
	}
	for i := 0; i < len(ts); {
		h, end := heatHere(ts, i)
		if end == i {
			i++
			continue
		}
		h.start, h.end = ts[i].start, ts[end-1].end
		h.Written = text[h.start:h.end]
		heats = append(heats, h)
		i = end
	}
	return heats
}

// heatHere reads a heat that begins at token i; end is i when there is none.
func heatHere(ts []token, i int) (heatAt, int) {
	if h, end := gasHere(ts, i); end > i {
		return h, end
	}
	if h, end := wordsHere(ts, i); end > i {
		return h, end
	}
	j, fan := i, false
	if ts[i].is("fan") {
		for j, fan = i+1, true; at(ts, j).is("oven", "assisted", "at", "to", "-", ":", "on") && j < i+3; j++ {
		}
	}
	n := at(ts, j)
	if n.kind != number || n.value != float64(int(n.value)) || at(ts, j+1).is("/") && at(ts, j+2).kind == number && n.value < 10 {
		return heatAt{}, i
	}
	h, end := degrees(ts, j, fan)
	if end == j || notOven(ts, i, end, h) {
		return heatAt{}, i
	}
	h.Fan = h.Fan || fan
	return settle(h), end
}

// degrees reads "180", "180C", "180 °C", "180 degrees C fan", "350F".
func degrees(ts []token, j int, fan bool) (h heatAt, end int) {
	value := int(min(ts[j].value, 1e6))
	end = j + 1
	unit := fan
	for at(ts, end).is("°", "o", "degrees", "*") && end < j+3 {
		unit, end = true, end+1
	}
	h.Scale, h.Celsius = Degrees, value
	switch t := at(ts, end); {
	case t.is("c", "celsius", "oc"):
		unit, end = true, end+1
	case t.is("f", "fahrenheit", "of"):
		h.Scale, unit, end = Fahrenheit, true, end+1
	case t.is("cf", "fc"):
		unit, h.Fan, end = true, true, end+1
	}
	k := end
	if at(ts, k).is("(") {
		k++
	}
	next := at(ts, k+1)
	if at(ts, k).is("fan") && (next.kind != number || int(next.value) >= value || next.value < plainLeast) {
		h.Fan, unit, end = true, true, k+1
		if k > 0 && at(ts, k-1).is("(") && next.is(")") {
			end++
		}
	}
	if next := at(ts, end+1); !unit && value >= plainLeast && value <= celsiusMost && at(ts, end).is("-", "to", "or") && next.kind == number && next.value > float64(value) && next.value <= celsiusMost {
		other, stop := degrees(ts, end+1, false)
		unit, h.Scale, h.Fan = stop > end+1, other.Scale, other.Fan
	}
	if !unit && !ovenSays(ts, j, end, value) {
		return h, j
	}
	return h, end
}

// ovenSays tells whether a number without a unit is an oven's: "oven on at
// 180", "bake 200 gas 6".
func ovenSays(ts []token, j, end, value int) bool {
	next := at(ts, end)
	if value < plainLeast || value > celsiusMost || value%5 != 0 || next.in(units) {
		return false
	}
	if gas := next.is("gas", "gm", "mark") || next.is("/", ",", "-") && (at(ts, end+1).is("gas", "gm", "mark", "fan") || at(ts, end+2).is("fan")); gas {
		return true
	}
	for k := max(0, j-7); k < min(len(ts), end+4); k++ {
		if ts[k].kind == word && ovenVerbs[ts[k].text] {
			return true
		}
	}
	if at(ts, j-1).is("in") && value >= 120 && value%10 == 0 && next.is("for", ",", "-") {
		return true // "buns in 200 for 20 min"
	}
	return at(ts, j-1).is("at", "@")
}

var (
	ovenVerbs = exactly("oven ovens bake baking baked bakes roast roasting roasted preheat preheated preheating blind pre-heat")
	units     = words("g kg gram grams ml l cl litre litres cm mm inch inches min mins minute minutes hour hours hr hrs oz lb tbsp tsp sec secs second seconds pm am kcal portions % x")
	otherHeat = exactly("core internal probe probed thermometer oil fryer fry fried frying deep-fry sugar syrup caramel water milk custard temperature hold hot-hold cooked centre center middle inside chicken fridge freezer")
	ofFood    = exactly("core internal probe probed thermometer centre center middle")
)

// notOven says whether a temperature is that of food, oil or a pan.
func notOven(ts []token, i, end int, h heatAt) bool {
	oven := false
	for k := max(0, i-6); k < min(len(ts), end+4); k++ {
		oven = oven || ovenVerbs[ts[k].text]
	}
	for k := i - 1; k >= max(0, i-5) && !ts[k].is(".", ";", "\n"); k-- {
		if ovenVerbs[ts[k].text] {
			break
		}
		if ofFood[ts[k].text] || !oven && otherHeat[ts[k].text] && !ts[k].is("temperature", "chicken", "inside", "cooked") {
			return true
		}
	}
	if h.Scale == Degrees && h.Celsius <= coreMost && !h.Fan && !oven || h.Celsius < celsiusLeast {
		return true
	}
	return at(ts, end).is("core") || h.Celsius > fahrenheitMost
}

// settle turns the figure as written into an oven without fan, and marks what no dial has.
func settle(h heatAt) heatAt {
	switch written := h.Celsius; {
	case h.Scale == Fahrenheit && written < fahrenheitLeast:
		// "160F": the fan's figure, most likely.
		h.Implausible, h.Fan, h.Celsius = true, true, practical.CelsiusOfFan(written)
	case h.Scale == Fahrenheit && written < 250:
		h.Implausible, h.Fan, h.Celsius = true, true, practical.CelsiusOfFan(written)
	case h.Scale == Fahrenheit:
		h.Celsius = practical.CelsiusOfFahrenheit(written)
	case written > celsiusMost:
		h.Implausible, h.Celsius = true, practical.CelsiusOfFahrenheit(written)
	case h.Fan:
		h.Celsius = practical.CelsiusOfFan(written)
	}
	return h
}

// gasHere reads "gas 4", "gas mark 4", "GM4", "mark 4", "gas mark 1/2", "no. 6".
func gasHere(ts []token, i int) (heatAt, int) {
	j := i
	switch {
	case ts[i].is("gas"):
		for j++; at(ts, j).is("mark", "no", "number", ".", "-", ":", "at", "down", "up", "to") && j < i+4; j++ {
		}
	case ts[i].is("gm", "gasmark", "regulo", "mark"):
		for j++; at(ts, j).is(".", "-", ":") && j < i+3; j++ {
		}
	default:
		return heatAt{}, i
	}
	n := at(ts, j)
	if n.kind != number {
		return heatAt{}, i
	}
	mark, value, end := n.text, n.value, j+1
	if at(ts, end).is("/") && at(ts, end+1).kind == number && n.value == 1 {
		mark, value, end = "1/"+at(ts, end+1).text, 1/max(1, at(ts, end+1).value), end+2
	}
	c, ok := practical.CelsiusOfGas(strings.TrimSuffix(mark, ".0"))
	h := heatAt{Heat: Heat{Celsius: c, Gas: value, Scale: GasMark}}
	switch {
	case ok:
	case value >= plainLeast && value <= celsiusMost:
		h.Heat = Heat{Celsius: int(value), Scale: Degrees, Implausible: true}
	case value == float64(int(value)) || value*2 != float64(int(value*2)):
		return heatAt{}, i
	default: // "gas 4.5": between two marks
		low, _ := practical.CelsiusOfGas(string(rune('0' + int(value))))
		h.Celsius = low + 5
	}
	return h, end
}

// wordsHere reads "hot oven", "moderate oven", "very cool oven".
func wordsHere(ts []token, i int) (heatAt, int) {
	j := i
	if ts[j].is("very", "fairly", "moderately") {
		j++
	}
	if at(ts, j).is("hot", "moderate", "cool", "slow", "medium", "low", "warm") && at(ts, j+1).is("oven") && !at(ts, i-1).is("not") {
		return heatAt{Heat: Heat{Scale: Words}}, j + 2
	}
	return heatAt{}, i
}

// heatsIn are the heats whose words begin in the bytes from start up to end.
func heatsIn(all []heatAt, start, end int) (heats []Heat) {
	for _, h := range all {
		if h.start >= start && h.start < end {
			heats = append(heats, h.Heat)
		}
	}
	return slices.Clip(heats)
}

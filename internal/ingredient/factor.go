package ingredient

import "strings"

// Measures is whose spoons, pints and fluid ounces a recipe means. Weights are the same in both.
type Measures int

// The measures. A cup is the United States cup in both: British recipes do not measure in cups.
const (
	British  Measures = iota // spoons of 5, 10 and 15 ml (common practice), the imperial pint
	American                 // United States customary measures
)

// Exact by definition: the pound is 0.45359237 kg and the imperial gallon 4.54609 litres (Weights and
// Measures Act 1985, schedule 1); the United States gallon is 231 cubic inches of 2.54 cm (NIST
// Handbook 44, appendix C; from memory).
const (
	pound          = 453.59237
	ounce          = pound / 16
	imperialGallon = 4546.09
	usGallon       = 231 * 2.54 * 2.54 * 2.54
)

// sameUnit gives the one name of a unit that is written in several ways.
var sameUnit = func() map[string]string {
	out := map[string]string{}
	for _, group := range strings.Split(`gram g gr gm gramme gms|kilogram kg kilo|milligram mg|ounce oz|pound lb|teaspoon tsp teaspoonful|tablespoon tbsp tablespoonful tbs tbl tblsp tablesp tblspn
		dessertspoon dsp|millilitre ml milliliter|centilitre cl|decilitre dl|litre l liter ltr|cup c cupful|pint pt|quart qt|gallon gal|gill|inch|centimetre cm centimeter|
		fluid ounce`, "|") {
		names := strings.Fields(group)
		if strings.Contains(group, "fluid") {
			out["fluid ounce"], out["fluid oz"], out["fl ounce"], out["fl oz"], out["fl"], out["floz"] = "fluid ounce", "fluid ounce", "fluid ounce", "fluid ounce", "fluid ounce", "fluid ounce"
			continue
		}
		for _, n := range names {
			out[n] = names[0]
		}
	}
	return out
}()

// UnitName gives the full British name of a unit, "tablespoon" for "tbsp"; any other word as it is.
func UnitName(unit string) string {
	if s, ok := sameUnit[strings.ToLower(unit)]; ok {
		return s
	}
	return unit
}

var grams = map[string]float64{"gram": 1, "kilogram": 1000, "milligram": 0.001, "ounce": ounce, "pound": pound}

var millilitres = [2]map[string]float64{
	British: {
		"millilitre": 1, "centilitre": 10, "decilitre": 100, "litre": 1000, "teaspoon": 5, "dessertspoon": 10, "tablespoon": 15, "cup": usGallon / 16,
		"fluid ounce": imperialGallon / 160, "gill": imperialGallon / 32, "pint": imperialGallon / 8, "quart": imperialGallon / 4, "gallon": imperialGallon,
	},
	American: {
		"millilitre": 1, "centilitre": 10, "decilitre": 100, "litre": 1000, "teaspoon": usGallon / 768, "dessertspoon": 10, "tablespoon": usGallon / 256, "cup": usGallon / 16,
		"fluid ounce": usGallon / 128, "gill": usGallon / 32, "pint": usGallon / 8, "quart": usGallon / 4, "gallon": usGallon,
	},
}

// GramsIn gives the grams in one of a unit of weight.
func GramsIn(unit string) (float64, bool) {
	g, ok := grams[UnitName(unit)]
	return g, ok
}

// MillilitresIn gives the millilitres in one of a unit of volume.
func (m Measures) MillilitresIn(unit string) (float64, bool) {
	ml, ok := millilitres[m&1][UnitName(unit)]
	return ml, ok
}

package webpage

import "strings"

// unitCodes are the common codes of UN/CEFACT Recommendation 20 in which a
// property's unit can be given, in words. G21 (cup) is the one in schema.org's
// example; the others are from memory.
var unitCodes = map[string]string{
	"G21": "cup", "G24": "tbsp", "G25": "tsp", "GRM": "g", "KGM": "kg", "MGM": "mg", "MLT": "ml", "CLT": "cl", "DLT": "dl", "LTR": "litre",
	"ONZ": "oz", "LBR": "lb", "OZA": "fl oz", "OZI": "fl oz", "PTI": "pint", "QTI": "quart", "CMT": "cm", "INH": "inch", "EA": "", "C62": "", "H87": "",
}

// ingredients are the lines of one value: a string, several lines in one string,
// or an object with an amount and a name.
func ingredients(v any) (lines []string) {
	o, is := v.(object)
	if !is {
		for _, s := range strings.Split(text(v), "\n") {
			if s = bare(s); s != "" {
				lines = append(lines, s)
			}
		}
		return lines
	}
	if items := get(o, "itemListElement", "ingredients", "recipeIngredient"); items != nil {
		for _, e := range listOf(items) {
			lines = append(lines, ingredients(e)...)
		}
		return lines
	}
	if inner := get(o, "item"); inner != nil {
		return ingredients(inner)
	}
	if s := oneLine(amount(o) + " " + line(get(o, "name", "text", "@value"))); s != "" {
		lines = append(lines, s)
	}
	return lines
}

// amount is the number and unit of a PropertyValue, QuantitativeValue or HowToSupply.
func amount(o object) string {
	if inner := get(o, "requiredQuantity"); inner != nil {
		if q, is := inner.(object); is {
			return amount(q)
		}
		return line(inner)
	}
	value := line(get(o, "value"))
	if low, high := line(get(o, "minValue")), line(get(o, "maxValue")); value == "" {
		value = strings.Trim(low+"-"+high, "-")
	}
	unit := line(get(o, "unitText"))
	if unit == "" {
		code := line(get(o, "unitCode"))
		word, known := unitCodes[strings.ToUpper(code)]
		if unit = word; !known {
			unit = code
		}
	}
	return value + " " + unit
}

// bare is a line without the sign of a list before it.
func bare(s string) string {
	s = strings.TrimSpace(s)
	for _, sign := range []string{"- ", "* ", "• ", "· ", "▢ ", "☐ ", "– "} {
		if rest, has := strings.CutPrefix(s, sign); has {
			return strings.TrimSpace(rest)
		}
	}
	return strings.TrimLeft(s, "•▢☐ ")
}

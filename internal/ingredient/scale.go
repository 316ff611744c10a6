package ingredient

import (
	"math"
	"slices"
	"strings"
)

// Scale gives the line for another number of portions. Each amount is rounded as a cook would measure
// it: eggs and other whole things stay whole, spoons go in quarters, grams and millilitres above 50
// in fives. A pinch, a handful, the size of a tin and a line without a figure stay as they are. Raw
// is written anew with the new figures. A number of portions that is not above nought changes nothing.
// How to round is common practice, no source.
func Scale(l Line, from, to float64) Line {
	by := to / from
	if !(by > 0) || math.IsInf(by, 0) || by == 1 || from <= 0 {
		return l
	}
	out := l
	out.Amounts = slices.Clone(l.Amounts)
	out.tokens = slices.Clone(l.tokens)
	words := map[int]string{}
	for i, a := range out.Amounts {
		b, changed := a.scaled(by, l.Name)
		if !changed {
			continue
		}
		out.Amounts[i] = b
		if b.token >= 0 {
			words[b.token] = b.figure()
			if b.unitToken >= 0 {
				words[b.unitToken] = agreeing(l.tokens[b.unitToken].text, b.High)
			}
			if a.Words == "half" && b.token+1 < len(l.tokens) && l.tokens[b.token+1].is("a", "an") {
				words[b.token+1] = ""
			}
			out.tokens[b.token].num = &number{low: b.Low, high: b.High}
		}
		if at := l.counted(i); at >= 0 {
			words[at] = nounFor(l.tokens[at].text, b.High)
		}
	}
	out.Raw = l.rewritten(words)
	out.Name = Parse(out.Raw).Name
	return out
}

// scaled multiplies an amount and rounds it. changed is false for what stays as it is.
func (a Amount) scaled(by float64, name string) (b Amount, changed bool) {
	if a.Relation == Each || a.Low <= 0 || vague[a.Unit] || a.Words == "a" || a.Words == "few" {
		return a, false
	}
	b = a
	step := a.steps(name)
	b.Low = rounded(a.Low*by, step)
	b.High = max(b.Low, rounded(a.High*by, step))
	if a.High == a.Low {
		b.High = b.Low
	}
	b.Words = ""
	return b, b.Low != a.Low || b.High != a.High
}

// steps gives the rounding step for a value.
func (a Amount) steps(name string) func(float64) float64 {
	switch u := UnitName(a.Unit); u {
	case "gram", "millilitre":
		return func(v float64) float64 { return pick(v, 10, 0.5, 50, 1, 5) }
	case "kilogram", "litre":
		return func(v float64) float64 { return pick(v, 0.05, 0.001, 1, 0.005, 0.05) }
	case "teaspoon", "dessertspoon", "tablespoon":
		return func(v float64) float64 { return pick(v, 0.2, 0.125, 0, 0.25, 0.25) }
	case "cup", "pint", "pound", "quart":
		return func(v float64) float64 { return pick(v, 1, 0.125, 0, 0.25, 0.25) }
	case "ounce", "fluid ounce":
		return func(v float64) float64 { return pick(v, 4, 0.25, 16, 0.5, 1) }
	case "inch", "centimetre", "stick":
		return func(float64) float64 { return 0.5 }
	case "":
		if !strings.Contains(strings.ToLower(name), "egg") || strings.Contains(strings.ToLower(name), "eggplant") {
			return func(v float64) float64 { return pick(v, 3, 0.5, 0, 1, 1) } // half an onion
		}
	case "tin", "can", "packet", "jar", "package", "bunch", "head", "pack":
		return func(v float64) float64 { return pick(v, 3, 0.5, 0, 1, 1) }
	}
	return func(float64) float64 { return 1 }
}

// pick gives the step below the first bound, from there to the second, and above.
func pick(v, first, below, second, between, above float64) float64 {
	switch {
	case v < first:
		return below
	case v < second:
		return between
	}
	return above
}

// rounded rounds to the step for the value, never to nought.
func rounded(v float64, step func(float64) float64) float64 {
	s := step(v)
	n := math.Max(1, math.Round(v/s))
	return math.Round(n*s*1000) / 1000
}

// figure writes an amount as a cook writes it: fractions for spoons and cups, decimals for metric.
func (a Amount) figure() string {
	show := mixed
	switch UnitName(a.Unit) {
	case "gram", "kilogram", "millilitre", "litre", "centilitre", "decilitre", "centimetre":
		show = decimal
	}
	if a.High > a.Low {
		return show(a.Low) + "-" + show(a.High)
	}
	return show(a.Low)
}

// mixed writes eighths as fractions: 1.5 is "1 1/2".
func mixed(v float64) string {
	whole, part := math.Modf(v)
	eighths := part * 8
	if eighths == 0 || eighths != math.Round(eighths) {
		return decimal(v)
	}
	f := []string{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"}[int(eighths)]
	if whole == 0 {
		return f
	}
	return decimal(whole) + " " + f
}

// agreeing is a unit word in the number that the figure asks for: "1 cup", "2 cups". Short forms stay.
func agreeing(w string, n float64) string {
	one := singular(strings.ToLower(w))
	if len(one) < 3 || one == "tsp" || one == "tbsp" || w != strings.ToLower(w) || strings.HasSuffix(w, ".") || one == w && UnitName(one) != one {
		return w
	}
	switch {
	case n <= 1:
		return one
	case strings.HasSuffix(one, "ch") || strings.HasSuffix(one, "sh") || strings.HasSuffix(one, "x"):
		return one + "es"
	case strings.HasSuffix(one, "f"):
		return strings.TrimSuffix(one, "f") + "ves"
	}
	return one + "s"
}

// rewritten is the line with some of its tokens written otherwise.
func (l Line) rewritten(words map[int]string) string {
	var b strings.Builder
	at := 0
	for i, t := range l.tokens {
		w, ok := words[i]
		if !ok {
			continue
		}
		b.WriteString(l.text[at:t.from])
		b.WriteString(w)
		at = t.to
		if w == "" && at < len(l.text) && l.text[at] == ' ' {
			at++
		}
	}
	b.WriteString(l.text[at:])
	return b.String()
}

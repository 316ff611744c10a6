package paper

import (
	"strings"

	"plait.example/internal/fonts"
	"plait.example/internal/timeplan"
)

// standIn is printed for a sign that no font here has.
const standIn = '\uFFFD'

// printable replaces what no font here has, or what a PDF's fonts cannot
// number, by the stand-in.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == 0x200B || r == 0x00AD || r == 0xFEFF: // no width: nothing to see
			return -1
		case r > 0xFFFF || !fonts.Regular.Has(r) && !fonts.FallbackRegular.Has(r):
			return standIn
		}
		return r
	}, clean(s))
}

// needsFallback says whether the plan has a sign that only the fallback has.
func needsFallback(p *timeplan.Plan) bool {
	texts := []string{p.Title}
	for _, d := range p.Dishes {
		texts = append(append(texts, d.Letter, d.Name), d.Allergens...)
	}
	for _, r := range p.Rows {
		texts = append(texts, r.Text, r.Kit, r.Check, r.Safety, r.Setting, r.Oven)
	}
	for _, d := range p.Conflict {
		texts = append(texts, d.Text)
	}
	for _, w := range p.WaysOut {
		texts = append(texts, w.Text)
	}
	for _, t := range append(texts, p.Notes...) {
		for _, r := range clean(t) {
			if !fonts.Regular.Has(r) {
				return true
			}
		}
	}
	return false
}

package paper

import (
	"slices"
	"strings"

	"plait.example/internal/timeplan"
)

// cell writes dish and steps as one word: "A3", "A3+A4", "A" for a dish as a
// whole, "all" for no dish. Where that would read back otherwise it is
// written out, dish before the colon: "A:mix".
func cell(p *timeplan.Plan, dish string, steps []string) string {
	short := strings.Join(steps, "+")
	if len(steps) == 0 {
		if short = dish; dish == "" {
			short = forAll
		}
	}
	if d, s := readCell(p, short); d == dish && slices.Equal(s, steps) {
		return short
	}
	return dish + ":" + strings.Join(steps, "+")
}

// readCell undoes cell.
func readCell(p *timeplan.Plan, word string) (dish string, steps []string) {
	if dish, list, ok := strings.Cut(word, ":"); ok {
		return dish, splitSteps(list)
	}
	if word == forAll {
		return "", nil
	}
	for _, d := range p.Dishes {
		if word == d.Letter {
			return word, nil
		}
		if strings.HasPrefix(word, d.Letter) && len(d.Letter) > len(dish) {
			dish = d.Letter
		}
	}
	return dish, splitSteps(word)
}

func splitSteps(list string) []string {
	if list == "" {
		return nil
	}
	return strings.Split(list, "+")
}

// rowCell is the cell of a row; where the steps make it too wide for its
// column they are written under the row instead.
func rowCell(p *timeplan.Plan, r timeplan.Row) string {
	if wideCell(p, r) {
		return cell(p, r.Dish, nil)
	}
	return cell(p, r.Dish, r.Steps)
}

func wideCell(p *timeplan.Plan, r timeplan.Row) bool {
	return len(r.Steps) > 0 && width(cell(p, r.Dish, r.Steps)) > 12
}

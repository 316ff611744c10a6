package app

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"plait.example/internal/practical"
)

// bypass lets whatever came after a step that is gone come after its own predecessors.
func bypass(p *practical.Practical, gone practical.Step) {
	for _, s := range allSteps(p) {
		k := slices.IndexFunc(s.After, func(a practical.After) bool { return a.Step == gone.ID })
		if k < 0 {
			continue
		}
		s.After = slices.Delete(s.After, k, k+1)
		for _, a := range gone.After {
			if a.Step != s.ID && !slices.ContainsFunc(s.After, func(x practical.After) bool { return x.Step == a.Step }) {
				s.After = append(s.After, practical.After{Step: a.Step})
			}
		}
	}
}

// renumber names the steps of a dish by its letter and their order, here and
// wherever they are referred to. It gives the new name of each old one.
func renumber(p *practical.Practical, d *practical.Dish) map[string]string {
	names := map[string]string{}
	for i := range d.Steps {
		names[d.Steps[i].ID] = fmt.Sprintf("%s%d", d.Letter, i+1)
	}
	for _, s := range allSteps(p) {
		for k := range s.After {
			if name, ok := names[s.After[k].Step]; ok {
				s.After[k].Step = name
			}
		}
	}
	for i := range d.Steps {
		d.Steps[i].ID = names[d.Steps[i].ID]
	}
	row := func(of string) string {
		if name, ok := names[stepOf(of)]; ok {
			return name + strings.TrimPrefix(of, stepOf(of))
		}
		return of
	}
	for i := range p.Pins {
		p.Pins[i].Row, p.Pins[i].After = row(p.Pins[i].Row), row(p.Pins[i].After)
	}
	return names
}

func dishOf(p *practical.Practical, letter string) *practical.Dish {
	for i := range p.Dishes {
		if p.Dishes[i].Letter == letter {
			return &p.Dishes[i]
		}
	}
	return nil
}

func stepIndex(d *practical.Dish, id string) int {
	if d == nil {
		return -1
	}
	return slices.IndexFunc(d.Steps, func(s practical.Step) bool { return s.ID == id })
}

func allSteps(p *practical.Practical) []*practical.Step {
	var all []*practical.Step
	for i := range p.Dishes {
		for j := range p.Dishes[i].Steps {
			all = append(all, &p.Dishes[i].Steps[j])
		}
	}
	return all
}

// freeID is an id that no step of the dish has.
func freeID(d *practical.Dish) string {
	for n := len(d.Steps) + 1; ; n++ {
		if id := fmt.Sprintf("%s%d", d.Letter, n); stepIndex(d, id) < 0 {
			return id
		}
	}
}

// cutAt cuts a text before the word that begins at a byte, else in halves.
func cutAt(text string, at int) (string, string) {
	if at <= 0 || at >= len(text) || text[at-1] != ' ' || text[at] == ' ' {
		return halves(text)
	}
	return strings.TrimSpace(text[:at]), text[at:]
}

// Cuts is where a step's text can be cut in two: the bytes at which a sentence, a
// part of one, or a joining word begins. best is the one that SplitStep takes by
// itself, -1 when the text is one word.
func Cuts(text string) (all []int, best int) {
	for _, mark := range []string{". ", "; ", ", ", " and ", " then "} {
		for at := 0; ; {
			i := strings.Index(text[at:], mark)
			if i < 0 {
				break
			}
			at += i + len(mark)
			from := at
			if mark[0] == ' ' {
				from = at - len(mark) + 1 // the joining word goes with the second
			}
			all = append(all, from)
		}
	}
	best = -1
	if _, second := halves(text); second != "" {
		best = strings.LastIndex(text, second)
		all = append(all, best)
	}
	slices.Sort(all)
	return slices.Compact(all), best
}

// halves cuts a text at the end of the sentence, else the clause, else the
// word, nearest to its middle.
func halves(text string) (string, string) {
	for _, mark := range []string{". ", "; ", ", ", " "} {
		best := -1
		for at := 0; ; {
			i := strings.Index(text[at:], mark)
			if i < 0 {
				break
			}
			at += i + len(mark)
			if best < 0 || distance(at, len(text)/2) < distance(best, len(text)/2) {
				best = at
			}
		}
		if best > 0 && best < len(text) && utf8.RuneStart(text[best]) {
			return strings.TrimSpace(text[:best]), strings.TrimSpace(text[best:])
		}
	}
	return text, ""
}

func distance(a, b int) int { return max(a-b, b-a) }

func kitOf(a, b []practical.Kit) []practical.Kit {
	all := slices.Clone(a)
	for _, k := range b {
		if !slices.Contains(all, k) {
			all = append(all, k)
		}
	}
	return all
}

func both(a, b string) string {
	if a == "" || b == "" || a == b {
		return a + strings.TrimPrefix(b, a)
	}
	return strings.TrimSuffix(a, ".") + "; " + b
}

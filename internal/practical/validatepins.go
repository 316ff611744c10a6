package practical

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// ownRow are rows that belong to no step: the plan makes them as needed, some
// named for what is cleaned or turned on and then numbered.
var ownRow = regexp.MustCompile(`^(ready|clean-down|tasting)$|^(wash-up|rest|bench|grill|processor|mixer)/[0-9]+$`)

// turned says that a row's name is one of an oven's dial, such as "oven/1".
func (k Kitchen) turned(row string) bool {
	cut := strings.LastIndexByte(row, '/')
	return cut > 0 && slices.ContainsFunc(k.Ovens, func(o Oven) bool { return o.Name == row[:cut] })
}

// Rows are the names of the rows that dishes and steps give a plan, in the
// order of the practical: "A3/hands", "A3/put-in", "A3/take-out", "A/serve". A pin
// can name these, and rows such as "wash-up/2" that the plan makes as needed.
func (p *Practical) Rows() []string {
	var rows []string
	for _, d := range p.Dishes {
		for _, s := range d.Steps {
			if s.Hands.High > 0 {
				rows = append(rows, s.ID+"/hands")
			}
			if s.Wait != nil {
				rows = append(rows, s.ID+"/put-in", s.ID+"/take-out")
			}
		}
		rows = append(rows, d.Letter+"/serve")
	}
	return rows
}

// pins judges what is held: known rows, at a time or after another row.
func (j *judge) pins() {
	rows := j.p.Rows()
	seen := map[string]bool{}
	for i, pin := range j.p.Pins {
		path := fmt.Sprintf("pins[%d]", i)
		j.row(path+".row", pin.Row, rows)
		if pin.After != "" {
			j.row(path+".after", pin.After, rows)
		}
		switch {
		case pin.At == nil && pin.After == "":
			j.faultf(path, "give at: a time, or after: another row", "the pin holds %s at nothing", clip(pin.Row))
		case pin.After != "" && pin.After == pin.Row:
			j.faultf(path+".after", "name another row", "row %s comes after itself", clip(pin.Row))
		case pin.At != nil && (*pin.At < j.p.SetUpFrom() || *pin.At > j.p.Allowed()):
			j.faultf(path+".at", fmt.Sprintf("%v to %v", j.p.SetUpFrom(), j.p.Allowed()), "%v is outside the practical", *pin.At)
		}
		if pin.At != nil && seen[pin.Row] {
			j.faultf(path+".row", "pin it to one time", "row %s is pinned to a time already", clip(pin.Row))
		}
		seen[pin.Row] = seen[pin.Row] || pin.At != nil
	}
}

func (j *judge) row(path, row string, rows []string) {
	if row == "" || slices.Contains(rows, row) || ownRow.MatchString(row) || j.p.Kitchen.turned(row) {
		return
	}
	hint := "a row is named like A3/hands, A3/put-in, A3/take-out, A/serve or wash-up/2"
	if near := nearestID(row, rows); near != "" {
		hint = fmt.Sprintf("did you mean %q; %s", near, hint)
	}
	if id, _, _ := strings.Cut(row, "/"); id != "" && slices.ContainsFunc(rows, func(r string) bool { return strings.HasPrefix(r, id+"/") }) {
		j.faultf(path, hint, "step or dish %s has no row %q", clip(id), clip(row))
		return
	}
	j.faultf(path, hint, "there is no row %q", clip(row))
}

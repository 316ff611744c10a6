package checktest

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/practical"
)

// Faulty gives the plans of a folder with planted faults.
func Faulty(folder string) ([]Plan, error) {
	sound, err := Sound(folder)
	if err != nil {
		return nil, err
	}
	data, err := Menus.ReadFile(folder + "/planted.txt")
	if err != nil {
		return nil, err
	}
	var all []planting
	for n, line := range strings.Split(string(data), "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if strings.HasPrefix(line, "variant ") {
			all = append(all, begin(strings.Fields(line), sound))
			continue
		}
		if err := all[len(all)-1].change(line); err != nil {
			return nil, fmt.Errorf("%s/planted.txt, line %d: %w", folder, n+1, err)
		}
	}
	var plans []Plan
	for _, p := range all {
		plan, err := p.done()
		if err != nil {
			return nil, err
		}
		plans = append(plans, plan)
	}
	return plans, nil
}

// planting is a plan while it is changed; rows are named by their marks until the end.
type planting struct {
	plan Plan
	want []wanted
}

type wanted struct {
	faults []int
	marks  []string
}

func begin(words []string, sound []Plan) planting {
	i := slices.IndexFunc(sound, func(p Plan) bool { return p.Name == words[3] })
	p := sound[i]
	p.Name, p.Sound, p.Rows = words[1], false, slices.Clone(p.Rows)
	return planting{plan: p}
}

func (p *planting) change(line string) error {
	what, expected, _ := strings.Cut(line, "==>")
	for _, one := range strings.Fields(expected) {
		w, err := readWanted(one)
		if err != nil {
			return err
		}
		p.want = append(p.want, w)
	}
	verb, rest, _ := strings.Cut(strings.TrimSpace(what), " ")
	return p.apply(verb, strings.TrimSpace(rest))
}

func readWanted(s string) (w wanted, err error) {
	faults, marks, placed := strings.Cut(s, "@")
	for _, f := range strings.Split(faults, "|") {
		n, err := strconv.Atoi(f)
		if err != nil {
			return w, fmt.Errorf("%q is no number of a fault", f)
		}
		w.faults = append(w.faults, n)
	}
	if placed {
		w.marks = strings.Split(marks, ",")
	}
	return w, nil
}

func (p *planting) at(mark string) (int, error) {
	i := slices.IndexFunc(p.plan.Rows, func(r Row) bool { return r.Mark == mark })
	if i < 0 {
		return 0, fmt.Errorf("%s has no row %s", p.plan.Name, mark)
	}
	return i, nil
}

// apply makes one change. Changes of a row name it first.
func (p *planting) apply(verb, rest string) error {
	plan := &p.plan
	number, _ := strconv.Atoi(rest)
	switch verb {
	case "clear-points":
		for i := range plan.Rows {
			plan.Rows[i].Points = ""
		}
	case "sequential":
		plan.Rows = oneByOne(plan.Rows)
	case "every":
		first, _ := p.at("3")
		for i := first; i < len(plan.Rows); i++ {
			plan.Rows[i].Clock = plan.Rows[first].Clock + practical.TimeOfDay(number*(i-first))
		}
	case "drop-dish":
		plan.Rows = slices.DeleteFunc(plan.Rows, func(r Row) bool { return r.Dish == rest })
	case "everywhere":
		was, is, _ := strings.Cut(rest, "->")
		for i := range plan.Rows {
			plan.Rows[i].replace(strings.TrimSpace(was), strings.TrimSpace(is))
		}
	case "finish":
		plan.Finish = rest
	case "extra":
		plan.Extra = number
	case "rings":
		plan.Rings = number
	case "shelves":
		plan.Shelves = number
	case "grill":
		plan.OneGrill = true
	default:
		return p.row(verb, rest)
	}
	return nil
}

func (p *planting) row(verb, rest string) error {
	mark, rest, _ := strings.Cut(rest, " ")
	i, err := p.at(mark)
	if err != nil {
		return err
	}
	rows := p.plan.Rows
	switch verb {
	case "drop":
		p.plan.Rows = slices.Delete(rows, i, i+1)
	case "text":
		rows[i].Text = rest
	case "acts":
		rows[i].Acts = strings.Fields(rest)
	case "replace":
		was, is, _ := strings.Cut(rest, "->")
		if !rows[i].replace(strings.TrimSpace(was), strings.TrimSpace(is)) {
			err = fmt.Errorf("row %s of %s has no %q", mark, p.plan.Name, was)
		}
	case "points":
		rows[i].Points = rest
	case "time", "move":
		rows[i].Clock, err = clock(rest)
		if verb == "move" {
			slices.SortStableFunc(rows, func(a, b Row) int { return cmp.Compare(a.Clock, b.Clock) })
		}
	case "swap":
		j, err := p.at(rest)
		if err != nil {
			return err
		}
		rows[i].Text, rows[j].Text = rows[j].Text, rows[i].Text
		rows[i].Acts, rows[j].Acts = rows[j].Acts, rows[i].Acts
	case "after":
		var row Row
		if row, err = readRow(mark + "+ " + rest); err == nil {
			p.plan.Rows = slices.Insert(rows, i+1, row)
		}
	default:
		err = fmt.Errorf("%q is no change", verb)
	}
	return err
}

// replace changes words of a row, or else of its points.
func (r *Row) replace(was, is string) bool {
	for _, text := range []*string{&r.Text, &r.Points} {
		if strings.Contains(*text, was) {
			*text = strings.TrimSpace(strings.ReplaceAll(*text, was, is))
			return true
		}
	}
	return false
}

// oneByOne puts each dish's rows together, dish after dish, with the minutes they had.
func oneByOne(rows []Row) []Row {
	start := slices.IndexFunc(rows, func(r Row) bool { return r.Dish != "all" })
	length := func(i int) practical.TimeOfDay {
		if i+1 < len(rows) {
			return max(1, rows[i+1].Clock-rows[i].Clock)
		}
		return 5
	}
	out := slices.Clone(rows[:start])
	now := rows[start].Clock
	var dishes []string
	for _, r := range rows[start:] {
		if !slices.Contains(dishes, r.Dish) && r.Dish != "all" {
			dishes = append(dishes, r.Dish)
		}
	}
	for _, d := range append(dishes, "all") {
		for i := start; i < len(rows); i++ {
			if rows[i].Dish != d {
				continue
			}
			r := rows[i]
			r.Clock = now
			now += length(i)
			out = append(out, r)
		}
	}
	return out
}

// done turns marks into numbers of rows.
func (p *planting) done() (Plan, error) {
	for _, w := range p.want {
		planted := Planted{Faults: w.faults}
		for _, m := range w.marks {
			i, err := p.at(m)
			if err != nil {
				continue // a row that was taken out, told by its neighbours
			}
			planted.Rows = append(planted.Rows, i+1)
		}
		if len(w.marks) > 0 && len(planted.Rows) == 0 {
			return Plan{}, fmt.Errorf("%s: none of the rows %v is there", p.plan.Name, w.marks)
		}
		p.plan.Planted = append(p.plan.Planted, planted)
	}
	return p.plan, nil
}

package match

import (
	"math"
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/written"
)

// How sure a step is that goes along with another, and one of all that are served together.
const (
	sureAlong = 0.55
	sureAll   = 0.8
)

// collect puts the pieces' steps together by row.
func (k *known) collect(m *Matched, allowed []map[int]bool, pieces []piece, fit [][]float64, at []int) {
	along := k.along(pieces, at)
	for i := range pieces {
		p := &pieces[i]
		if p.fixed {
			continue
		}
		row := &m.Rows[p.row]
		list := along[i]
		if at[i] >= 0 {
			list = append(list, at[i])
		}
		slices.Sort(list)
		for _, j := range list {
			s := Step{ID: k.steps[j].id, Part: Whole, Sure: sureAlong}
			if j == at[i] {
				s.Part, s.Sure = k.part(p, &k.steps[j]), k.sure(p, fit[i], j)
			}
			row.add(s)
		}
	}
	for i := range pieces {
		for _, d := range k.servesAll(m.Plan.Rows[pieces[i].row], &pieces[i]) {
			m.Rows[pieces[i].row].add(Step{ID: k.steps[k.dishes[d].to-1].id, Part: Whole, Sure: sureAll})
		}
	}
	k.weighAll(m, pieces)
	for n := range m.Rows {
		k.finish(n, &m.Rows[n], allowed[n], pieces, fit)
	}
}

// servesAll are the dishes that a piece serves when it serves more than one:
// those it names, or all for "serve everything" in a row of no dish.
func (k *known) servesAll(r written.Row, p *piece) (dishes []int) {
	if p.kind != act.Serve && p.kind != act.Plate || len(p.allow) == 1 {
		return nil
	}
	for d := range k.dishes {
		if named(k.dishes[d].name, p) {
			dishes = append(dishes, d)
		}
	}
	if len(dishes) > 1 {
		return dishes
	}
	if len(dishes) == 1 || p.kind != act.Serve && !everything(r.Text) {
		return nil
	}
	own := 0
	for _, w := range p.words {
		if !k.steps[0].serve && w.stem != "serv" && k.rare[w.stem] > 0 {
			own++
		}
	}
	if own > 0 && !everything(r.Text) {
		return nil
	}
	for d := range k.dishes {
		dishes = append(dishes, d)
	}
	return dishes
}

// named says whether a piece says a word of the name.
func named(name map[string]bool, p *piece) bool {
	for _, w := range p.words {
		if name[w.stem] && len(w.stem) > 2 {
			return true
		}
	}
	return false
}

func everything(text string) bool {
	for _, w := range strings.Fields(strings.ToLower(text)) {
		switch strings.Trim(w, ".,;!") {
		case "everything", "all", "both", "dishes", "food", "meal":
			return true
		}
	}
	return false
}

// add puts a step to a row, once; hands' work and wait in one row are the whole step.
func (r *Row) add(s Step) {
	for i := range r.Steps {
		if r.Steps[i].ID == s.ID {
			switch {
			case r.Steps[i].Part == "":
				r.Steps[i].Part = s.Part
			case s.Part != "" && r.Steps[i].Part != s.Part:
				r.Steps[i].Part = Whole
			}
			r.Steps[i].Sure = max(r.Steps[i].Sure, s.Sure)
			return
		}
	}
	r.Steps = append(r.Steps, s)
}

// part says which part of the step a piece is.
func (k *known) part(p *piece, s *stepWords) Part {
	switch {
	case s.ends == "":
		return Whole
	case p.kind == act.TakeOut && s.ends == act.PutIn, p.kind == act.FromCold && (s.ends == act.Chill || s.ends == act.Freeze):
		return TakeOut
	case p.kind == act.Test || p.kind == act.Probe || p.kind == act.Timer:
		return "" // as the rest of the row has it
	case begins[p.kind] && (p.kind == s.ends || s.ends != act.Hob && s.kinds[p.kind]):
		return PutIn
	}
	return Whole
}

// begins are the kinds with which a wait begins.
var begins = map[act.Kind]bool{
	act.PutIn: true, act.Chill: true, act.Freeze: true, act.Prove: true, act.Rest: true, act.Cool: true, act.Marinate: true, act.Soak: true, act.Microwave: true,
}

// sure is how much better the step is than the next best of another place, 0 to 1.
func (k *known) sure(p *piece, fit []float64, j int) float64 {
	other := 0.0
	for i, f := range fit {
		if len(p.allow) > 0 && !slices.Contains(p.allow, k.steps[i].dish) {
			continue
		}
		if i != j && !(k.steps[i].dish == k.steps[j].dish && i >= j-1 && i <= j+1) {
			other = max(other, f)
		}
	}
	return round(1 / (1 + math.Exp(-2.5*(fit[j]-other)-1)))
}

func round(x float64) float64 { return math.Round(x*100) / 100 }

// finish sets the row's letters and how sure it is.
func (k *known) finish(n int, row *Row, allowed map[int]bool, pieces []piece, fit [][]float64) {
	best, about := -needed, map[int]bool{}
	for i := range pieces {
		if pieces[i].row != n {
			continue
		}
		if pieces[i].dish >= 0 {
			about[pieces[i].dish] = true
		}
		if !pieces[i].chore {
			for _, f := range fit[i] {
				best = max(best, f)
			}
		}
	}
	served := map[int]bool{}
	for j := range k.steps {
		if slices.ContainsFunc(row.Steps, func(s Step) bool { return s.ID == k.steps[j].id }) {
			served[k.steps[j].dish] = true
		}
	}
	if len(served) == len(k.dishes) {
		about = served
	}
	if len(about) == 0 {
		about = allowed
	}
	for d := range k.dishes {
		if about[d] && len(about) < len(k.dishes) || about[d] && len(row.Steps) > 0 && len(k.dishes) == 1 {
			row.Letters = append(row.Letters, k.dishes[d].letter)
		}
	}
	if len(row.Steps) == 0 {
		row.Sure = round(1 / (1 + math.Exp(2.5*best+0.5)))
		return
	}
	sum := 0.0
	for i, s := range row.Steps {
		sum += s.Sure
		if s.Part == "" {
			row.Steps[i].Part = Whole
			if slices.ContainsFunc(row.Acts, func(a act.Act) bool { return a.Kind == act.TakeOut }) {
				row.Steps[i].Part = TakeOut
			}
		}
	}
	row.Sure = round(sum / float64(len(row.Steps)))
}

// fixedPieces are pieces for the steps that the teacher says a row stands for:
// the other rows are matched around them.
func (k *known) fixedPieces(n int, ids []string) (list []piece) {
	for j := range k.steps {
		if slices.Contains(ids, k.steps[j].id) {
			list = append(list, piece{row: n, kind: act.Other, dish: -1, fixed: true, step: j, speaks: make([]float64, len(k.dishes))})
		}
	}
	return list
}

// fix sets what the teacher said.
func (k *known) fix(row *Row, ids []string) {
	row.Sure = 1
	for _, id := range ids {
		row.Steps = append(row.Steps, Step{ID: id, Part: k.fixedPart(row, id), Sure: 1})
		for j := range k.steps {
			if letter := k.dishes[k.steps[j].dish].letter; k.steps[j].id == id && !slices.Contains(row.Letters, letter) {
				row.Letters = append(row.Letters, letter)
			}
		}
	}
}

func (k *known) fixedPart(row *Row, id string) Part {
	for j := range k.steps {
		if k.steps[j].id != id {
			continue
		}
		part := Whole
		for i, a := range row.Acts {
			p := k.part(&piece{kind: a.Kind}, &k.steps[j])
			if i == 0 || p == part {
				part = p
			} else {
				return Whole
			}
		}
		return part
	}
	return Whole
}

// weighAll gives a row that weighs everything the weighing of every dish it may be about.
func (k *known) weighAll(m *Matched, pieces []piece) {
	for i := range pieces {
		p := &pieces[i]
		if p.kind != act.SetUp || p.verb != "weigh" && p.verb != "measur" || !everything(m.Rows[p.row].Text) && !generalWeighing(p, k) {
			continue
		}
		for j := range k.steps {
			if s := &k.steps[j]; s.words["weigh"] == 1 && (s.setUp || s.kinds[act.SetUp]) && (len(p.allow) == 0 || slices.Contains(p.allow, s.dish)) {
				m.Rows[p.row].add(Step{ID: s.id, Part: Whole, Sure: sureAll})
			}
		}
	}
}

// generalWeighing says whether no food is named: "weigh out ingredients".
func generalWeighing(p *piece, k *known) bool {
	for _, w := range p.words {
		if w.stem != "weigh" && k.rare[w.stem] > 0 && w.stem != "ingredi" && w.stem != "equip" {
			return false
		}
	}
	return true
}

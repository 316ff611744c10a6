package match

import (
	"math"
	"slices"

	"plait.example/internal/act"
)

// collect puts the pieces' steps together by row.
func (k *known) collect(m *Matched, pieces []piece, fit [][]float64, at []int) {
	along := k.along(pieces, fit, at)
	for i := range pieces {
		p := &pieces[i]
		row := &m.Rows[p.row]
		if at[i] >= 0 {
			row.add(Step{ID: k.steps[at[i]].id, Part: k.part(p, &k.steps[at[i]]), Sure: k.sure(fit[i], at[i])})
		}
		for _, j := range along[i] {
			row.add(Step{ID: k.steps[j].id, Part: Whole, Sure: 0.55})
		}
	}
	for i := range pieces {
		if everyServe(&pieces[i]) {
			for _, d := range k.dishes {
				m.Rows[pieces[i].row].add(Step{ID: k.steps[d.to-1].id, Part: Whole, Sure: 0.8})
			}
		}
	}
	for n := range m.Rows {
		k.finish(n, &m.Rows[n], pieces, fit)
	}
}

// everyServe says whether a piece serves all the dishes: "serve everything".
func everyServe(p *piece) bool {
	if p.kind != act.Serve || p.dish >= 0 {
		return false
	}
	return true
}

// add puts a step to a row, once; hands' work and wait in one row are the whole step.
func (r *Row) add(s Step) {
	for i := range r.Steps {
		if r.Steps[i].ID == s.ID {
			if r.Steps[i].Part != s.Part {
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
	case p.kind == s.ends && !(s.ends == act.Hob && len(s.kinds) > 1):
		return PutIn
	}
	return Whole
}

// sure is how much better the step is than the next best of another place, 0 to 1.
func (k *known) sure(fit []float64, j int) float64 {
	other := 0.0
	for i, f := range fit {
		if i != j && !(k.steps[i].dish == k.steps[j].dish && i >= j-1 && i <= j+1) {
			other = max(other, f)
		}
	}
	return round(1 / (1 + math.Exp(-2.5*(fit[j]-other)-1)))
}

func round(x float64) float64 { return math.Round(x*100) / 100 }

// finish sets the row's letters and how sure it is.
func (k *known) finish(n int, row *Row, pieces []piece, fit [][]float64) {
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
	for _, s := range row.Steps {
		sum += s.Sure
	}
	row.Sure = round(sum / float64(len(row.Steps)))
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

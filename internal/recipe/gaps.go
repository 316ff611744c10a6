package recipe

import (
	"plait.example/internal/practical"
)

// gaps writes the gaps that food sets: cooling before icing, pastry resting, meat resting.
func (l *linker) gaps() {
	index := map[string]int{}
	for i, s := range l.r.Steps {
		index[s.ID] = i
	}
	for i := range l.r.Steps {
		s := &l.r.Steps[i]
		for k := range s.After {
			p := index[s.After[k].Step]
			if i == l.serving {
				continue
			}
			if most, why := hurry(&l.jobs[p], &l.jobs[i]); most > 0 {
				s.After[k].Most = &most
				s.Why = append(s.Why, why)
			}
			if least, why := gapBetween(&l.jobs[p], &l.jobs[i]); least > 0 {
				s.After[k].Least = least
				s.Why = append(s.Why, why)
				s.Doubt = max(s.Doubt, 0.3)
			}
		}
	}
}

// gapBetween is the least minutes that food asks for between two jobs, 0 for none. Common practice, no source.
func gapBetween(p, j *job) (int, string) {
	baked := p.waiting() != nil && p.waiting().place == practical.AtOven
	if j.waiting() != nil {
		return 0, ""
	}
	switch {
	case p.waiting() != nil && hotPlace(p.waiting().place) && whenCold(j.ts):
		return 30, "'when cold': at least 30 minutes to cool, common practice"
	case (baked && hasAny(j.ts, "icing", "frosting", "buttercream", "fill", "sandwich", "ganache") || baked && has(j.ts, "whipped cream")) && !has(j.ts, "cool"):
		return 30, "cool at least 30 minutes before icing or filling: common practice"
	case baked && has(j.ts, "carve") || baked && namesRawMeat(p.ts) && has(j.ts, "slice"):
		return 10, "rest meat before carving: common practice"
	case p.waiting() == nil && has(p.ts, "pastry", "rub in", "breadcrumbs") && has(p.ts, "dough", "pastry", "together") && rolls(j) && has(p.ts, "butter", "fat", "margarine", "lard"):
		return 15, "let pastry rest at least 15 minutes before rolling: common practice"
	}
	return 0, ""
}

func rolls(j *job) bool {
	for _, c := range j.clauses {
		if c.verbIs("roll") {
			return true
		}
	}
	return false
}

// whenCold says that a job begins "when cold", "once cooled".
func whenCold(ts []token) bool {
	return at(ts, 0).is("when", "once", "after") && has(ts[:min(len(ts), 6)], "cold", "cool", "completely cool")
}

// hurry is the most minutes between two jobs at the same hot pan, 0 for no limit. Common practice, no source.
func hurry(p, j *job) (int, string) {
	hot := false
	for _, c := range p.clauses {
		hot = hot || p.weak || c.verb.deed == fries || c.verb.deed == cooks && c.place == practical.AtHob && !c.wait && c.hands != nil
	}
	if !hot || has(p.ts, "remove", "set aside", "drain", "off the heat") || p.it.component != j.it.component {
		return 0, ""
	}
	for _, c := range j.clauses {
		if atHob(c) || c.verb.deed == minor {
			return 5, "the pan is hot: go on within 5 minutes, common practice"
		}
	}
	return 0, ""
}

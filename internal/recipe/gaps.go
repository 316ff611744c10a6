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
	baked := p.wait != nil && p.wait.place == practical.AtOven
	switch {
	case p.wait != nil && hotPlace(p.wait.place) && whenCold(j.ts):
		return 30, "'when cold': at least 30 minutes to cool, common practice"
	case (baked && hasAny(j.ts, "icing", "frosting", "buttercream", "fill", "sandwich", "ganache") || baked && has(j.ts, "whipped cream")) && !has(j.ts, "cool"):
		return 30, "cool at least 30 minutes before icing or filling: common practice"
	case baked && has(j.ts, "carve") || baked && namesRawMeat(p.ts) && has(j.ts, "slice"):
		return 10, "rest meat before carving: common practice"
	case p.wait == nil && has(p.ts, "pastry", "rub in", "breadcrumbs") && has(p.ts, "dough", "pastry", "together") && rolls(j) && has(p.ts, "butter", "fat", "margarine", "lard"):
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

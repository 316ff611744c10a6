package recipe

// sourceOf says where a job stands in the text and which technique it is.
func sourceOf(id string, j *job) Source {
	return Source{Step: id, Start: j.start(), End: j.end(), Technique: techniqueOf(j), Celsius: statedHeat(j)}
}

// statedHeat is the temperature that a job's words state, the oven's before any other.
func statedHeat(j *job) int {
	stated := 0
	for _, h := range heats(j.ts) {
		if h.oven {
			return h.celsius
		}
		if stated == 0 {
			stated = h.celsius
		}
	}
	return stated
}

// techniqueOf is the technique of a job's wait; without one, that of the clause
// with most minutes of hands, the first of equals. It is empty when no clause
// calls for one, and for turning the oven on and tidying, which are rows of the plan.
func techniqueOf(j *job) string {
	if j.kind == ovenJob || j.kind == choreJob {
		return ""
	}
	if c := j.waiting(); c != nil {
		if t := j.it.techniqueFor(c.verb.name, j.it.ts[c.from:c.to]); t != nil {
			return t.ID
		}
	}
	best, most := "", -1
	for i := range j.clauses {
		c := &j.clauses[i]
		if c.wait || c.other {
			continue
		}
		t := j.it.techniqueFor(c.verb.name, j.it.ts[c.at:c.to])
		if t == nil && j.to-j.from < longJob {
			t = j.it.techniqueFor(c.verb.name, j.it.ts[j.from:j.to])
		}
		if t != nil && t.Learner.Likely > most {
			best, most = t.ID, t.Learner.Likely
		}
	}
	return best
}

// longJob is how many tokens a job may have so that words from all of it tell the technique of one verb.
const longJob = 200

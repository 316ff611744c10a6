package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

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

// techniqueOf is the technique of a job's wait. Without a wait it is that of the
// clause with most minutes of hands, the first of equals. It is empty when no
// clause calls for one, and for turning the oven on and tidying, which are rows of
// the plan. A technique of hands alone is never that of a wait that can be left:
// "cover and stew" is not covering.
func techniqueOf(j *job) string {
	if j.kind == ovenJob || j.kind == choreJob {
		return ""
	}
	if c := j.waiting(); c != nil {
		t := j.it.techniqueFor(c.verb.name, j.it.ts[c.from:c.to])
		if t != nil && t.waitsAs(c) {
			return t.ID
		}
		return j.it.usualTechnique(c.place)
	}
	best, most := "", -1
	for i := range j.clauses {
		c := &j.clauses[i]
		if c.other {
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

// usualTechnique is what food does in a place of heat when the words say no more
// than "cook": the table's row for it, if it has one.
func (it *item) usualTechnique(p practical.Place) string {
	id := map[practical.Place]string{practical.AtOven: "bake", practical.AtHob: "simmer", practical.AtGrill: "grill"}[p]
	table := it.table
	if table == nil {
		table = DefaultTable()
	}
	if table.Find(id) == nil {
		return ""
	}
	return id
}

// waitsAs says that a technique can be what a clause waits for: its food waits in
// that place by the table, or the hands stay with it there.
func (t *Technique) waitsAs(c *clause) bool {
	if c.look == practical.Stay || c.verb.deed == boils {
		return t.Place == string(c.place)
	}
	where := strings.NewReplacer("bench", string(practical.AtSide), "warm place", string(practical.AtWarm)).Replace(t.WaitPlace)
	return t.Wait.Most > 0 && strings.Contains(where, string(c.place))
}

// longJob is how many tokens a job may have so that words from all of it tell the technique of one verb.
const longJob = 200

package recipe

import (
	"fmt"
	"math"

	"plait.example/internal/practical"
)

// sum adds minutes up in halves, so that many small jobs do not each cost a whole minute.
type sum struct{ low, likely, high float64 }

func (s *sum) add(low, likely, high, factor float64) {
	s.low += low * factor
	s.likely += likely * factor
	s.high += high * factor
}

// handsOf is the minutes of hands of a job, with the reasons.
func handsOf(text string, j *job) (practical.Estimate, []string, float64) {
	var total sum
	var why []string
	doubt := 0.05
	said := timedJob(*j)
	seen := map[string]bool{}
	minors := 0.0
	whole := len(j.clauses) > 0 && j.clauses[len(j.clauses)-1].whole
	if d := j.borrowed; d != nil && j.waiting() == nil {
		said, whole = true, true
		total.add(float64(d.least), float64(d.most), float64(d.most), 1)
		why = append(why, "'"+quote(text, j.lender.ts, d.from, d.to)+"': said")
	}
	for i := range j.clauses {
		c := &j.clauses[i]
		switch {
		case c.verbIs("make", "prepare") && detailed(j, i):
			// "Make the topping. Sieve the flour ...": what follows says how
		case c.wait || c.other || c.verb.deed == heatsUp || c.verb.deed == lets && c.hands == nil:
		case c.hands != nil:
			d := *c.hands
			d.times(max(1, j.turns))
			mid := (d.least + d.most + 1) / 2
			total.add(float64(max(d.least, 1)), float64(max(mid, 1)), float64(max(d.most, 1)), 1)
			why = append(why, "'"+quote(text, j.it.ts, c.shift+d.from, c.shift+d.to)+"': said")
			if j.turns > 1 {
				why, doubt = append(why, j.inTurns()), max(doubt, 0.3)
			}
			if d.vague {
				doubt = max(doubt, 0.3)
			}
		case said && c.hands == nil && (whole || c.verb.deed == fries || c.verb.deed == cooks):
			// the time that is said is the cooking's
		case c.verb.deed == minor && said, c.verb.deed == minor && j.it.techniqueFor(c.verb.name, j.it.ts[c.from:c.to]) == nil, c.verb.deed == moves && j.waiting() != nil:
			minors += 0.5
		default:
			t, w, d := estimate(j, c, seen)
			if said && (t.likely < 3 || c.to-c.at <= 1) {
				continue
			}
			total.add(t.low, t.likely, t.high, 1)
			if w != "" {
				why = append(why, w)
			}
			doubt = max(doubt, d)
		}
	}
	if !said && j.waiting() == nil {
		total.add(minors, minors, minors*2, 1)
	}
	e := practical.Estimate{Low: int(total.low), Likely: int(total.likely + 0.5), High: int(math.Ceil(total.high))}
	if j.waiting() == nil {
		e.Low = max(e.Low, 1)
		if len(why) == 0 {
			why = append(why, "a minute or two: adding and moving")
			doubt = max(doubt, 0.2)
			e.High = max(e.High, 2)
		}
	}
	e.Likely = max(e.Low, e.Likely)
	e.High = max(e.Likely, e.High)
	return capped(e), why, doubt
}

// capped keeps minutes within what a step may have.
func capped(e practical.Estimate) practical.Estimate {
	e.Low, e.Likely, e.High = min(e.Low, 600), min(e.Likely, 600), min(e.High, 600)
	return e
}

// estimate takes a clause's minutes from the technique table.
func estimate(j *job, c *clause, seen map[string]bool) (sum, string, float64) {
	body := j.it.ts[c.at:c.to]
	t := j.it.techniqueFor(c.verb.name, body)
	if t == nil && j.to-j.from < 200 {
		t = j.it.techniqueFor(c.verb.name, j.it.ts[j.from:j.to])
	}
	quoted := c.verb.name
	if t == nil {
		if c.verb.deed == moves {
			return sum{0, 0.5, 1}, "", 0.1
		}
		return sum{1, 2, 4}, fmt.Sprintf("'%s': not in the technique table, 1 to 4 minutes is a guess", quoted), 0.5
	}
	factor := 1.0
	if t.Each {
		factor = 1 + 0.5*float64(min(things(body)-1, 5))
	}
	if seen[t.ID] {
		factor /= 2
	}
	seen[t.ID] = true
	s := sum{float64(t.Learner.Low) * factor, float64(t.Learner.Likely) * factor, float64(t.Learner.High) * factor}
	return s, fmt.Sprintf("'%s': technique table, %s, %g to %g minutes by hand", quoted, lowerFirst(t.Name), s.low, s.high), 0.15
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return string(s[0]|0x20) + s[1:]
}

// things counts what a clause names, by its commas and ands.
func things(ts []token) int {
	n := 1
	for i, t := range ts {
		if i > 0 && t.is(",", "and") && !at(ts, i-1).is(",") && i < len(ts)-1 {
			n++
		}
	}
	return n
}

// detailed says that the job goes on with the work that clause i only names.
func detailed(j *job, i int) bool {
	for _, c := range j.clauses[i+1:] {
		if c.verb.deed == works || c.verb.deed == fries || c.verb.deed == cooks {
			return true
		}
	}
	return false
}

package recipe

import (
	"plait.example/internal/practical"
)

func onlyMinor(cs []clause) bool {
	for _, c := range cs {
		if c.verb.deed != minor {
			return false
		}
	}
	return true
}

// joinSmall joins, inside an item, sentences that only turn the oven on and
// hands of less than a minute to the hands beside them.
func joinSmall(jobs []job) []job {
	var out []job
	for _, j := range jobs {
		n := len(out)
		if n > 0 && putsIn(out[n-1], j) {
			p := &out[n-1]
			wait := len(p.clauses)
			for k := range j.clauses {
				if &j.clauses[k] == j.wait {
					wait += k
				}
			}
			p.wait.wait = false
			p.to = j.to
			p.clauses = append(p.clauses, j.clauses...)
			p.wait = &p.clauses[wait]
			continue
		}
		if n > 0 && joins(out[n-1], j) {
			p := &out[n-1]
			p.to = j.to
			p.clauses = append(p.clauses, j.clauses...)
			if p.kind == idleJob {
				kind, wait := j.kind, -1
				for k := range j.clauses {
					if &j.clauses[k] == j.wait {
						wait = len(p.clauses) - len(j.clauses) + k
					}
				}
				p.kind, p.oven = kind, j.oven
				if wait >= 0 {
					p.wait = &p.clauses[wait]
				}
			} else if p.wait != nil {
				p.wait = repoint(p)
			}
			continue
		}
		out = append(out, j)
	}
	return out
}

// putsIn says that p only puts the food where j then says how long it stays.
func putsIn(p, j job) bool {
	return p.wait != nil && j.wait != nil && p.wait.verb.deed == moves && p.wait.said == nil && j.wait.said != nil && p.wait.place == j.wait.place && p.wait.place != practical.AtHob && len(j.clauses) == 1
}

func repoint(p *job) *clause {
	for k := range p.clauses {
		if p.clauses[k].at == p.wait.at {
			return &p.clauses[k]
		}
	}
	return p.wait
}

func joins(p, j job) bool {
	switch {
	case p.kind == ovenJob:
		return j.kind == ovenJob
	case p.kind == idleJob:
		return j.kind != serveJob && j.kind != ovenJob
	case j.kind == idleJob:
		return true
	}
	return p.kind == handsJob && j.kind == handsJob && onlyMinor(j.clauses) && !timedJob(p) && !timedJob(j)
}

func timedJob(j job) bool {
	for _, c := range j.clauses {
		if c.hands != nil {
			return true
		}
	}
	return false
}

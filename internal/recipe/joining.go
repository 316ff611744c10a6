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

// joinSmall joins, inside an item, what is too small for a step of its own to the job beside it.
func joinSmall(jobs []job) []job {
	var out []job
	for _, j := range jobs {
		n := len(out)
		switch {
		case n == 0:
			out = append(out, j)
		case putsIn(out[n-1], j):
			out[n-1].waiting().wait = false
			out[n-1].swallow(j, true)
		case joins(out[n-1], j):
			out[n-1].swallow(j, out[n-1].kind == idleJob)
		default:
			out = append(out, j)
		}
	}
	return out
}

// swallow joins the job after p to it; led says that the other gives the kind and the wait.
func (p *job) swallow(j job, led bool) {
	p.to = j.to
	if led {
		p.kind, p.oven, p.waitAt, p.weak = j.kind, j.oven, 0, j.weak
		if j.waitAt > 0 {
			p.waitAt = len(p.clauses) + j.waitAt
		}
	}
	p.clauses = append(p.clauses, j.clauses...)
}

// putsIn says that p only puts the food where j then says how long it stays.
func putsIn(p, j job) bool {
	return p.waiting() != nil && j.waiting() != nil && p.waiting().verb.deed == moves && p.waiting().said == nil && j.waiting().said != nil && p.waiting().place == j.waiting().place && p.waiting().place != practical.AtHob && j.waitAt == 1
}

func joins(p, j job) bool {
	switch {
	case p.kind == ovenJob || p.kind == choreJob:
		return j.kind == p.kind
	case j.kind == choreJob:
		return false
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

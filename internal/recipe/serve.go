package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// lastServe is the job that serves, -1 when there is none: the last of the
// method, if it is a serving job.
func lastServe(jobs []job) int {
	if last := beforeLate(jobs) - 1; last >= 0 && jobs[last].kind == serveJob {
		return last
	}
	return -1
}

// makeServe reads how the dish is served from its serving sentence.
func makeServe(text string, jobs []job, i int, title []token) practical.Serve {
	j := jobs[i]
	s := servedAs(jobs, title)
	s.How = strings.Join(strings.Fields(text[j.start():j.end()]), " ")
	switch {
	case has(j.ts, "hot", "warm", "immediately", "at once", "straight away", "lukewarm", "piping"):
		s.Heat = practical.Hot
	case has(j.ts, "cold", "chilled", "ice"):
		s.Heat = practical.Cold
	}
	for _, c := range j.clauses {
		if c.hands != nil {
			s.Minutes = max(s.Minutes, min(c.hands.most, 60))
		}
	}
	if has(j.ts, "garnish", "decorate", "scatter", "sprinkle", "arrange", "slice", "drizzle", "topped") {
		s.Minutes = max(s.Minutes, 5)
	}
	if has(j.ts, "immediately", "at once", "straight away", "straightaway", "right away") {
		s.Within = 5
	}
	return s
}

// servedAs guesses how a dish is served from the last place its food was in.
func servedAs(jobs []job, title []token) practical.Serve {
	s := practical.Serve{Heat: practical.AsIs, Minutes: 3}
	if has(title, "cake", "sponge", "biscuit", "cookie", "bread", "loaf", "meringue", "pavlova", "syrup", "muffin", "jam", "icing", "brownie", "shortbread", "flapjack", "scone", "ketchup", "relish", "chutney", "mustard", "straws", "macaroon", "cupcake", "cookies") {
		return s
	}
	for i := len(jobs) - 1; i >= 0; i-- {
		j := jobs[i]
		if j.waiting() == nil {
			for _, c := range j.clauses {
				if atHob(c) {
					s.Heat = practical.Hot
					return s
				}
			}
			if hasAny(j.ts, "ice", "icing", "decorate", "frosting") || has(j.ts, "whipped cream", "when cold") {
				return s
			}
			continue
		}
		switch j.waiting().place {
		case practical.AtFridge, practical.AtFreezer:
			s.Heat = practical.Cold
		case practical.AtOven, practical.AtHob, practical.AtGrill, practical.AtMicrowave:
			s.Heat = practical.Hot
			if has(j.ts, "cake", "sponge", "biscuit", "cookie", "bread", "loaf", "meringue", "syrup", "muffin", "jam") {
				s.Heat = practical.AsIs
			}
		case practical.AtSide:
			if j.waiting().verb.name == "rest" && namesRawMeat(j.ts) || j.waiting().verb.name != "cool" && j.waiting().said != nil && j.waiting().said.most <= 10 {
				s.Heat = practical.Hot
			}
		default:
			continue
		}
		return s
	}
	return s
}

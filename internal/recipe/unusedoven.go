package recipe

import "plait.example/internal/practical"

// unusedOven puts the longest cooking in the oven when the oven is turned on
// and nothing is said to go in: "Heat the oven to 190 C. Arrange the meat in the
// pot. Cook for 3 hours".
func unusedOven(jobs []job, head heading) {
	on := -1
	if head.celsius > 0 {
		on = 0
	}
	longest := -1
	for i := range jobs {
		j := &jobs[i]
		if j.kind == ovenJob && on < 0 {
			on = i
		}
		w := j.waiting()
		if w == nil {
			continue
		}
		if w.place == practical.AtOven {
			return
		}
		if w.place != practical.AtHob || on < 0 || w.said == nil || w.said.least < 15 || !w.verbIs("cook", "braise", "stew", "casserole") || placeWords(j.it.ts[w.from:w.to]) != "" || has(j.it.ts[w.from:w.to], "boil", "simmer", "water", "stirring", "rice", "pasta") {
			continue
		}
		if longest < 0 || w.said.least > jobs[longest].waiting().said.least {
			longest = i
		}
	}
	if longest < 0 {
		return
	}
	w := jobs[longest].waiting()
	w.place, w.look, w.every = practical.AtOven, practical.Leave, 0
}

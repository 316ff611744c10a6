package recipe

import (
	"fmt"
	"strconv"
	"strings"

	"plait.example/internal/practical"
)

// readMethod turns the items of a method into the steps of r.
func readMethod(text string, items []item, head heading, r *Recipe) {
	cx := &context{}
	var jobs []job
	for i := range items {
		if i > 0 && items[i].component != items[i-1].component {
			cx.place, cx.wet = "", false
		}
		jobs = append(jobs, splitItem(cx, &items[i])...)
	}
	jobs = trimJobs(text, jobs, r)
	adoptTimes(jobs)
	for i := 1; i < len(jobs); i++ {
		if p := &jobs[i-1]; p.it != jobs[i].it && putsIn(*p, jobs[i]) {
			p.waiting().wait = false
			p.kind, p.waitAt = handsJob, 0
		}
	}
	for i := range jobs {
		jobs[i].ts = jobs[i].it.ts[jobs[i].from:jobs[i].to]
	}
	unusedOven(jobs, head)
	settleOven(text, jobs, head)
	lendCookTime(jobs, head)
	batches(jobs, head.makes)
	byWeight(jobs, r.Ingredients)
	serving := lastServe(jobs)
	ids := names(jobs, serving)
	facts := knownFoods(r.Ingredients)
	for i := range jobs {
		s := makeStep(text, &jobs[i])
		s.ID = ids[i]
		r.Steps = append(r.Steps, s)
		r.Sources = append(r.Sources, sourceOf(s.ID, &jobs[i]))
	}
	neverCooked(r.Steps)
	link(jobs, r, facts, serving)
	if serving >= 0 {
		r.Serve = makeServe(text, jobs, serving, tokenize(r.Title, 0))
	} else {
		r.Serve = servedAs(jobs, tokenize(r.Title, 0))
	}
}

func (j *job) start() int { return j.it.ts[j.from].start }
func (j *job) end() int   { return j.it.ts[j.to-1].end }

// deedWords is the words of the job without an opening such as "once the chicken is brown".
func (j *job) deedWords() []token {
	if len(j.clauses) > 0 && at(j.ts, 0).is("while", "whilst", "as", "once", "when", "after") && j.clauses[0].at > j.from {
		return j.it.ts[j.clauses[0].at:j.to]
	}
	return j.ts
}

// trimJobs moves items in which no verb was found to Unread.
func trimJobs(text string, jobs []job, r *Recipe) []job {
	var out []job
	for _, j := range jobs {
		if j.from >= j.to {
			continue
		}
		if j.kind == idleJob {
			if c := j.it.component; c != "" && !contains(r.Unread, c) {
				r.Unread = append(r.Unread, c)
			}
			r.Unread = append(r.Unread, strings.TrimSpace(text[j.start():j.end()]))
			continue
		}
		out = append(out, j)
	}
	return out
}

// adoptTimes gives "after 15 minutes of frying" to the job before when that one has no time of its own.
func adoptTimes(jobs []job) {
	for i := 1; i < len(jobs); i++ {
		d, p := jobs[i].refers, &jobs[i-1]
		if d == nil {
			continue
		}
		if back := spokenOf(jobs, i); back >= 0 {
			p = &jobs[back]
			jobs[i].follows = back + 1
		}
		if worksOn(jobs, i) && !timedJob(jobs[i-1]) && jobs[i-1].waiting() == nil && jobs[i-1].kind == handsJob {
			jobs[i-1].borrowed, jobs[i-1].lender = d, jobs[i].it // "after 10 minutes of kneading"
			continue
		}
		if p.kind != waitJob && p.kind != handsJob || len(p.clauses) == 0 || p.it == jobs[i].it && p.waiting() == nil {
			continue
		}
		if p.waiting() != nil && p.waiting().said == nil && !p.weak {
			p.borrowed = d
			p.lender = jobs[i].it
		} else if p.waiting() == nil && d.least < 3 {
			if c := &p.clauses[len(p.clauses)-1]; c.hands == nil && !timedJob(*p) && p.it != jobs[i].it && (c.place == practical.AtHob || c.verb.deed == fries || c.verb.deed == cooks) {
				p.borrowed, p.lender = d, jobs[i].it
			}
		} else if p.waiting() == nil {
			if k := heatedAt(p); k >= 0 {
				c := &p.clauses[k]
				p.borrowed, p.lender = d, jobs[i].it
				p.kind, p.waitAt = waitJob, k+1
				c.wait, c.look, c.every, c.place = true, practical.Look, 5, practical.AtHob
			}
		}
	}
}

// spokenOf is the job that "after 20 minutes" in job i speaks of: the last that
// waits, or one that fries or cooks without a time and is named ("after 15
// minutes of frying the potatoes"); -1: none.
func spokenOf(jobs []job, i int) int {
	for back := i - 1; back >= max(0, i-5); back-- {
		if w := jobs[back].waiting(); w != nil && !jobs[back].weak && back >= i-3 {
			return back
		}
		k := heatedAt(&jobs[back])
		if k < 0 || jobs[back].it == jobs[i].it {
			continue
		}
		after := jobs[i].it.ts[jobs[i].from:jobs[i].to]
		for _, t := range after[:min(len(after), 12)] {
			if t.kind == word && t.stem == stem(jobs[back].clauses[k].verb.name) && strings.HasSuffix(t.text, "ing") {
				return back
			}
		}
	}
	return -1
}

// worksOn says that job i begins by speaking of work that took some time.
func worksOn(jobs []job, i int) bool {
	ts := jobs[i].it.ts[jobs[i].from:jobs[i].to]
	for _, t := range ts[:min(len(ts), 10)] {
		if t.kind == word && strings.HasSuffix(t.text, "ing") && verbByStem[t.stem].name != "" && contains([]string{"knead", "whisk", "beat", "stir", "mix", "cream", "rub", "work"}, verbByStem[t.stem].name) {
			return true
		}
	}
	return false
}

// heatedAt is the clause in which a job of hands fries or cooks without a time; -1: none.
func heatedAt(j *job) int {
	if j.waiting() != nil || timedJob(*j) {
		return -1
	}
	for k := len(j.clauses) - 1; k >= 0; k-- {
		if c := &j.clauses[k]; c.verb.deed == fries || c.verb.deed == cooks {
			return k
		}
	}
	return -1
}

// settleOven gives every oven step its temperature: its own, the last one said
// before it, or the first one said after it in the method.
func settleOven(text string, jobs []job, head heading) {
	celsius, why := head.celsius, head.ovenWhy
	first, firstWhy := 0, ""
	for i := range jobs {
		for _, c := range jobs[i].clauses {
			for _, h := range c.heats {
				if h.oven && first == 0 {
					first, firstWhy = h.celsius, "'"+quote(text, jobs[i].it.ts, c.shift+h.from, c.shift+h.to)+"': said later in the method"
				}
			}
		}
	}
	for i := range jobs {
		j := &jobs[i]
		bakes := j.waiting() != nil && j.waiting().place == practical.AtOven
		for pass := range 2 { // what is said up to the baking, then what is said after it
			for k := range j.clauses {
				c := &j.clauses[k]
				if later := bakes && c.at >= j.waiting().at; later != (pass == 1) {
					continue
				}
				for _, h := range c.heats {
					if h.oven {
						celsius = h.celsius
						why = fmt.Sprintf("'%s': said before; %d °C without fan", quote(text, j.it.ts, c.shift+h.from, c.shift+h.to), h.celsius)
					}
				}
			}
			if pass == 0 {
				j.oven, j.ovenWhy = celsius, why
			}
		}
		if j.oven == 0 {
			j.oven, j.ovenWhy = first, firstWhy
		}
	}
}

// lendCookTime gives the time at the head of the recipe to the one baking that has none, when no other heat is timed.
func lendCookTime(jobs []job, head heading) {
	if head.cook == nil {
		return
	}
	var bake *job
	for i := range jobs {
		switch w := jobs[i].waiting(); {
		case w == nil || !hotPlace(w.place):
		case w.said != nil || jobs[i].borrowed != nil || bake != nil || w.place != practical.AtOven:
			return
		default:
			bake = &jobs[i]
		}
	}
	if bake != nil {
		bake.borrowed, bake.lender = head.cook, &item{ts: head.cookLine}
	}
}

// names gives the jobs their ids: numbers, and the names of those that Dish leaves out.
func names(jobs []job, serving int) []string {
	ids := make([]string, len(jobs))
	n, ovens, chores := 0, 0, 0
	for i, j := range jobs {
		switch {
		case i == serving:
			ids[i] = serveID
		case j.kind == ovenJob:
			ovens++
			ids[i] = ovenID
			if ovens > 1 {
				ids[i] = ovenID + "-" + strconv.Itoa(ovens)
			}
		case j.kind == choreJob:
			chores++
			ids[i] = choreID
			if chores > 1 {
				ids[i] = choreID + "-" + strconv.Itoa(chores)
			}
		default:
			n++
			ids[i] = strconv.Itoa(n)
		}
	}
	return ids
}

// heatingTime gives a step that turns the oven on the time that is said for its heating.
func heatingTime(text string, j *job, s *practical.Step) {
	for _, c := range j.clauses {
		for _, d := range c.times {
			if d.role != lasts || d.most > maxWait {
				continue
			}
			s.Wait = &practical.Wait{Least: max(1, d.least), Most: d.most, Place: practical.AtOven, Celsius: j.oven, Band: 10, Attention: practical.Leave}
			if d.open {
				s.Wait.Most = 0
			}
			s.Why = append(s.Why, "'"+quote(text, j.it.ts, c.shift+d.from, c.shift+d.to)+"': said")
			return
		}
	}
}

// makeStep turns a job into a step, without its id and its order.
func makeStep(text string, j *job) practical.Step {
	s := practical.Step{Text: text[j.start():j.end()], Component: j.it.component}
	var doubt float64
	if j.kind == choreJob {
		s.Why = []string{"washing, tidying and evaluating are rows of the plan, not a step of the dish"}
		return s
	}
	if j.kind == ovenJob {
		heatingTime(text, j, &s)
		s.Why = append(s.Why, []string{"turning the oven on is a row of the plan, not a step of hands"}...)
		return s
	}
	s.Hands, s.Why, doubt = handsOf(text, j)
	if j.waiting() != nil {
		w, why, d := makeWait(text, j)
		s.Wait = &w
		s.Why = append(s.Why, why...)
		doubt = max(doubt, d)
	}
	if others := unusedTimes(text, j, s.Why); len(others) > 0 {
		s.Why = append(s.Why, others...)
		doubt = max(doubt, 0.5)
	}
	s.Uses = kitInUse(j)
	s.Food = foodOf(j.deedWords())
	s.SetUp = setUpJob(j)
	s.Check = checksOf(text, j)
	s.Kit = smallKit(j)
	s.Safety = safetyOf(j, s.Food)
	s.Doubt = float64(int(doubt*100+0.5)) / 100
	return s
}

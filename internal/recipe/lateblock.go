package recipe

import "plait.example/internal/practical"

// late says that a job belongs to a part of the dish that is told after the
// whole of the rest, with a list and a method of its own.
func (j *job) late() bool { return j.it.late }

// beforeLate is the number of jobs before the first that is told late.
func beforeLate(jobs []job) int {
	for i := range jobs {
		if jobs[i].late() {
			return i
		}
	}
	return len(jobs)
}

// startsLate begins with no part at hand where a part told late begins.
func (l *linker) startsLate(i int) {
	if !l.jobs[i].late() || i > 0 && l.jobs[i-1].late() && l.jobs[i-1].it.component == l.jobs[i].it.component {
		return
	}
	if l.serving < 0 {
		l.settleEnd()
	}
	l.threads, l.cur = nil, -1
}

// tieLate joins a part that is told late to the job that uses it: the first
// that names it, or the serving; and what it adds to the dish comes after the dish.
func (l *linker) tieLate() {
	end := beforeLate(l.jobs)
	for i := end; i < len(l.jobs); i++ {
		last := i+1 == len(l.jobs) || l.jobs[i+1].it.component != l.jobs[i].it.component
		if l.onDish(i) {
			l.comesAfter(i, l.lastOf(end))
			l.comesAfter(l.serving, i)
			return
		}
		if !last {
			continue
		}
		use := l.firstUse(end, lastNoun(tokenize(l.jobs[i].it.component, 0)))
		if use < 0 {
			use = l.serving
		}
		l.comesAfter(use, i)
	}
}

// onDish says that job i of a late part works on the dish told before: "drop them into the stew".
func (l *linker) onDish(i int) bool {
	return l.dish != "" && theWord(l.jobs[i].ts, l.dish)
}

// lastOf is the last job before end that is a step of hands or a wait; -1: none.
func (l *linker) lastOf(end int) int {
	for i := end - 1; i >= 0; i-- {
		if k := l.jobs[i].kind; i != l.serving && (k == handsJob || k == waitJob) {
			return i
		}
	}
	return -1
}

// firstUse is the first job before end that names a part by its noun; -1: none.
func (l *linker) firstUse(end int, noun string) int {
	for i := 0; i < end; i++ {
		for _, t := range l.jobs[i].ts {
			if t.kind == word && t.stem == noun && l.jobs[i].kind != ovenJob && l.jobs[i].kind != choreJob {
				return i
			}
		}
	}
	return -1
}

// comesAfter adds that job i comes after job before.
func (l *linker) comesAfter(i, before int) {
	if i < 0 || before < 0 || i == before {
		return
	}
	l.after[i] = append(l.after[i], practical.After{Step: l.r.Steps[before].ID})
}

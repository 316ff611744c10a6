package recipe

import (
	"plait.example/internal/practical"
)

// thread is a part of the dish on its own way: the dough, the sauce.
type thread struct {
	last      int             // its last job
	holds     map[string]bool // stems of foods and products in it
	component string
	beside    int  // the job that waited when this thread began; -1: none
	waiting   bool // its last job is a long wait
	prep      bool // its last job only makes ingredients ready, and began it
}

// link gives the steps their order.
func link(jobs []job, r *Recipe, foods map[string]bool, serving int) {
	l := &linker{jobs: jobs, r: r, foods: foods, shared: sharedFoods(r.Ingredients), title: titleWords(r.Title), dish: lastWord(r.Title), serving: serving, cur: -1}
	for i := range jobs {
		l.take(i)
	}
	l.gaps()
}

type linker struct {
	jobs    []job
	r       *Recipe
	foods   map[string]bool
	shared  map[string]bool // foods that stand in several lines of the list
	title   map[string]bool // words of the title
	dish    string          // stem of the title's last word: what is made
	threads []*thread
	cur     int // the thread that words without a name speak of
	serving int
	ovens   []int // jobs that turn the oven on and have no baking yet
}

// names is the foods and products that a job names, by stem.
func (l *linker) names(i int) map[string]bool {
	m := map[string]bool{}
	ts := beforeWhile(l.jobs[i].ts)
	for k, t := range ts {
		if t.kind == word && l.foods[t.food()] && !at(ts, k+1).is("board", "knife") {
			m[t.food()] = true
		}
	}
	for _, p := range products {
		if has(ts, p) && !beingMade(ts, stem(p)) {
			m[stem(p)] = true
		}
	}
	return m
}

// take finds which threads a job continues, joins them, and writes its After.
func (l *linker) take(i int) {
	j := &l.jobs[i]
	if j.kind == ovenJob {
		l.ovens = append(l.ovens, i)
		return
	}
	if j.kind == choreJob {
		return
	}
	if l.r.Steps[i].SetUp {
		return // before the clock: nothing comes before it, and all that follows comes after it
	}
	names := l.names(i)
	l.lendNames(j, names)
	touched, why := l.touched(i, names)
	if i == l.serving {
		touched = l.allThreads()
	}
	s := &l.r.Steps[i]
	for _, k := range touched {
		s.After = append(s.After, practical.After{Step: l.r.Steps[l.threads[k].last].ID})
	}
	if why != "" {
		s.Why = append(s.Why, why)
	}
	if j.waiting() != nil && j.waiting().place == practical.AtOven {
		for _, o := range l.ovens {
			s.After = append(s.After, practical.After{Step: l.r.Steps[o].ID})
		}
		l.ovens = nil
	}
	was := -1
	if l.cur >= 0 && !inList(touched, l.cur) {
		was = l.threads[l.cur].last
	}
	l.merge(i, touched, names)
	l.threads[l.cur].beside, l.threads[l.cur].prep = was, was >= 0 && prepOnly(j)
}

// lendNames gives the foods of "while the cakes cool" to the thread that waits, and takes them from the job.
func (l *linker) lendNames(j *job, names map[string]bool) {
	if l.cur < 0 || !at(j.ts, 0).is("while", "whilst", "as") || meanwhile(j.ts) == "" {
		return
	}
	for _, t := range upToSign(j.ts) {
		if n := t.food(); names[n] || t.kind == word && isProduct(n) {
			l.threads[l.cur].holds[n] = true
			delete(names, n)
		}
	}
}

// merge makes one thread of those that job i continues.
func (l *linker) merge(i int, touched []int, names map[string]bool) {
	t := &thread{last: i, holds: names, component: l.jobs[i].it.component, beside: -1, waiting: longWait(l.jobs[i])}
	for _, c := range tokenize(t.component, 0) {
		if c.kind == word && len(c.text) > 2 && !notFoods[c.text] {
			t.holds[c.stem] = true
		}
	}
	if pressed(&l.jobs[i]) {
		t.holds[stem("base")], t.holds[stem("crust")] = true, true
	}
	if makesDough(&l.jobs[i]) {
		t.holds["dough"] = true
	}
	if t.holds["dough"] || t.holds[stem("pastry")] {
		t.holds["dough"], t.holds[stem("pastry")] = true, true
	}
	gone := map[int]bool{}
	for _, k := range touched {
		gone[k] = true
		for n := range l.threads[k].holds {
			t.holds[n] = true
		}
	}
	var rest []*thread
	for k, old := range l.threads {
		if !gone[k] {
			rest = append(rest, old)
		}
	}
	l.threads = append(rest, t)
	l.cur = len(l.threads) - 1
}

// pressed says that a job presses crumbs into a tin or a glass: that is the base.
func pressed(j *job) bool {
	for _, c := range j.clauses {
		if c.verbIs("press") && has(j.ts, "into", "in", "onto", "over") {
			return true
		}
	}
	return false
}

// makesDough says that fat is rubbed into flour and bound: that is the pastry.
func makesDough(j *job) bool {
	for _, c := range j.clauses {
		if c.verbIs("rub") {
			return has(j.ts, "water", "egg", "yolk", "milk", "together", "dough", "bind")
		}
	}
	return false
}

// longWait says that a job leaves time for something else.
func longWait(j job) bool {
	if j.waiting() == nil || j.waiting().look == practical.Stay {
		return false
	}
	if j.waiting().said != nil {
		return j.waiting().said.least >= 8
	}
	return usualWait(*j.waiting(), j.around()).least >= 8
}

// touched is the threads that job i continues, with the reason when it is not simply the step before.
func (l *linker) touched(i int, names map[string]bool) ([]int, string) {
	if len(l.threads) == 0 {
		return nil, ""
	}
	j := &l.jobs[i]
	refs := l.refers(j.ts, names)
	if l.speaksOfUnknown(j, names) {
		return l.allThreads(), ""
	}
	if k := l.inOven(j); k >= 0 && !inList(refs, k) {
		refs = append(refs, k)
	}
	if k := l.hotWater(j); k >= 0 && !inList(refs, k) {
		refs = append(refs, k)
	}
	if k := l.holding(j.follows - 1); j.follows > 0 && k >= 0 && !inList(refs, k) {
		refs = append(refs, k)
	}
	if l.wholeDish(j) {
		return l.allThreads(), ""
	}
	cur := l.threads[l.cur]
	if hasAny(j.ts, "everything") && meanwhile(j.ts) == "" && !freshBowl(j.ts) && (j.it.component == "" || j.it.component == cur.component) {
		return l.allThreads(), ""
	}
	switch parallel, why := l.startsBeside(i, cur, refs, names); {
	case parallel:
		var others []int
		for _, k := range refs {
			if k != l.cur {
				others = append(others, k)
			}
		}
		return others, why
	case len(refs) > 0 && !inList(refs, l.cur) && l.named(j.ts, refs):
		if len(l.threads) > 1 && !leans(j) {
			return refs, ""
		}
	}
	if !inList(refs, l.cur) {
		if k := l.holding(cur.beside); j.first && len(refs) == 0 && k >= 0 && (goesToHeat(j) || l.jobs[cur.last].it == l.jobs[cur.beside].it) && !leans(j) {
			refs = append(refs, k) // back to what waited
		} else if cur.prep && k >= 0 && !inList(refs, k) && len(refs) == 0 {
			refs = append(refs, k) // what was made ready goes to what was there before
		}
		refs = append(refs, l.cur)
	}
	return refs, ""
}

// allThreads is every part of the dish so far.
func (l *linker) allThreads() []int {
	all := make([]int, len(l.threads))
	for k := range all {
		all[k] = k
	}
	return all
}

// speaksOfUnknown says that a job works on a thing the cook has made, such as
// "the pastry", that no thread is known to hold. It may come from any of them:
// too much order is safer than too little.
func (l *linker) speaksOfUnknown(j *job, names map[string]bool) bool {
	for n := range names {
		if made[n] && l.heldBy(n) == 0 && theWord(j.ts, n) && !beingMade(j.ts, n) {
			return true
		}
	}
	return false
}

// wholeDish says that a job speaks of the dish by its title: "the panna cottas".
func (l *linker) wholeDish(j *job) bool {
	for i, t := range j.ts {
		if t.kind == word && l.title[t.stem] && !l.foods[t.stem] && (at(j.ts, i-1).is("the", "your") || at(j.ts, i-2).is("the") && l.title[at(j.ts, i-1).stem]) && !isProduct(t.stem) && !beingMade(j.ts, t.stem) {
			return true
		}
	}
	return false
}

// holding is the thread whose last job is i; -1: none.
func (l *linker) holding(i int) int {
	for k, t := range l.threads {
		if i >= 0 && t.last == i {
			return k
		}
	}
	return -1
}

// goesToHeat says that a job cooks something.
func goesToHeat(j *job) bool {
	if j.waiting() != nil && hotPlace(j.waiting().place) {
		return true
	}
	for _, c := range j.clauses {
		if atHob(c) {
			return true
		}
	}
	return false
}

// inOven is the thread whose food a job takes out of the oven; -1: none.
func (l *linker) inOven(j *job) int {
	if !has(j.ts, "out of the oven", "from the oven", "from oven", "out of oven") {
		return -1
	}
	for k := len(l.threads) - 1; k >= 0; k-- {
		if w := l.jobs[l.threads[k].last].waiting(); w != nil && w.place == practical.AtOven {
			return k
		}
	}
	return -1
}

// hotWater is the thread whose water was put on to boil, when a job uses hot water; -1: none.
func (l *linker) hotWater(j *job) int {
	if !has(j.ts, "hot water", "boiling water", "the water", "simmering water") {
		return -1
	}
	for k := len(l.threads) - 1; k >= 0; k-- {
		if p := &l.jobs[l.threads[k].last]; p.waiting() != nil && p.waiting().place == practical.AtHob && has(p.ts, "water") {
			return k
		}
	}
	return -1
}

// refers is the threads that hold something the job names.
func (l *linker) refers(ts []token, names map[string]bool) []int {
	var out []int
	for k, t := range l.threads {
		for n := range t.holds {
			if names[n] && !l.shared[n] && (!common[n] || l.heldBy(n) == 1 && (onlyOnce[n] && theWord(ts, n) || preparedFood(ts, n))) {
				out = append(out, k)
				break
			}
		}
	}
	return out
}

// heldBy counts the threads that hold a food.
func (l *linker) heldBy(food string) int {
	n := 0
	for _, t := range l.threads {
		n += boolInt(t.holds[food])
	}
	return n
}

// named says that one of the threads is spoken of with "the": the dough, the sauce.
func (l *linker) named(ts []token, refs []int) bool {
	for i, t := range ts {
		if !t.is("the", "your", "each", "both", "remaining") {
			continue
		}
		for d := 1; d <= 3; d++ {
			n := at(ts, i+d)
			for _, k := range refs {
				if n.kind == word && l.threads[k].holds[n.stem] && (!common[n.stem] || onlyOnce[n.stem]) {
					return true
				}
			}
		}
	}
	return false
}

func inList(list []int, x int) bool {
	for _, v := range list {
		if v == x {
			return true
		}
	}
	return false
}

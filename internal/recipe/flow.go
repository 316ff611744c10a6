package recipe

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// thread is a part of the dish on its own way: the dough, the sauce.
type thread struct {
	last      int             // its last job
	holds     map[string]bool // stems of foods and products in it
	component string
	beside    int   // the job that waited when this thread began; -1: none
	waiting   bool  // its last job is a long wait
	prep      bool  // its last job only makes ingredients ready, and began it
	vague     bool  // it holds what is not named: "all the vegetables"
	ready     bool  // all its jobs only make ingredients ready
	from      []int // the jobs by which it began as a part of its own, without a word that said so
	owes      []int // the jobs that left it so; it must be named when it comes back
}

// link gives the steps their order. Parts that began without a word that said
// so and did not come back by name are linked again, as the text has them.
func link(jobs []job, r *Recipe, foods map[string]bool, serving int) {
	l := &linker{jobs: jobs, r: r, foods: foods, shared: sharedFoods(r.Ingredients), title: titleWords(r.Title), titlePart: titleParts(r.Title), compounds: compounds(r.Ingredients), dish: dishWord(r.Title), serving: serving, barred: map[int]bool{}}
	for again := true; again; {
		l.pass()
		again = false
		for _, i := range l.unexplained {
			again = again || !l.barred[i]
			l.barred[i] = true
		}
	}
	for i := range r.Steps {
		r.Steps[i].After = l.after[i]
		r.Steps[i].Why = append(r.Steps[i].Why, l.whys[i]...)
	}
	l.gaps()
}

// pass links all jobs once.
func (l *linker) pass() {
	l.threads, l.cur, l.ovens, l.unexplained, l.learned = nil, -1, nil, nil, map[string]bool{}
	l.after, l.whys = make([][]practical.After, len(l.jobs)), make([][]string, len(l.jobs))
	for i := range l.jobs {
		l.startsLate(i)
		l.take(i)
	}
	if l.serving < 0 {
		l.settleEnd()
	}
	l.tieLate()
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

	titlePart   map[string]int             // the part of the title that a word stands in
	compounds   map[string]map[string]bool // see compounds
	learned     map[string]bool            // stems of names that the text gave to parts
	barred      map[int]bool               // jobs that must not leave a part
	unexplained []int                      // jobs that left a part which came back without being named
	start       int                        // the job at hand when it began a part of its own; -1: it did not
	after       [][]practical.After
	whys        [][]string
}

// names is the foods and products that a job names, by stem.
func (l *linker) names(i int) map[string]bool {
	m := map[string]bool{}
	ts := beforeWhile(l.jobs[i].ts)
	for k, t := range ts {
		if t.kind == word && l.foods[t.food()] && !at(ts, k+1).is("board", "knife") && !l.bought(ts, k) {
			m[t.food()] = true
			if !t.is(fishes...) || !l.compounds[stem("sauce")]["fish"] {
				addKinds(m, t.stem)
			}
		}
	}
	for _, p := range products {
		if has(ts, p) && (strings.Contains(p, " ") || l.namesProduct(ts, p)) {
			if s := stem(p); !beingMade(ts, s) {
				m[s] = true
			}
		}
	}
	for _, t := range ts {
		if t.kind == word && l.learned[t.stem] {
			m[t.stem] = true
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
	l.start = -1
	refs := l.refers(j.ts, names)
	if k := l.mainThread(); k >= 0 && i != l.serving && l.wholeDish(j) && !inList(refs, k) {
		refs = append(refs, k)
	}
	touched, why := l.touched(i, names, refs)
	if i == l.serving {
		touched = l.allThreads()
	}
	if l.cur >= 0 && !inList(touched, l.cur) && meanwhile(j.ts) == "" && l.mustJoin(l.threads[l.cur]) {
		touched, l.start = append(touched, l.cur), -1
	}
	l.settle(touched, l.withDish(i, touched, refs))
	for _, k := range touched {
		l.after[i] = append(l.after[i], practical.After{Step: l.r.Steps[l.threads[k].last].ID})
	}
	if why != "" {
		l.whys[i] = append(l.whys[i], why)
	}
	if j.waiting() != nil && j.waiting().place == practical.AtOven {
		for _, o := range l.ovens {
			l.after[i] = append(l.after[i], practical.After{Step: l.r.Steps[o].ID})
		}
		l.ovens = nil
	}
	was := -1
	if l.cur >= 0 && !inList(touched, l.cur) {
		was = l.threads[l.cur].last
	}
	l.merge(i, touched, names)
	l.learn(i)
	l.threads[l.cur].beside, l.threads[l.cur].prep = was, was >= 0 && prepOnly(j)
	if was >= 0 && l.start < 0 && prepOnly(j) {
		l.threads[l.cur].from = []int{i}
	}
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
	if makesDough(&l.jobs[i]) || kneads(&l.jobs[i]) {
		t.holds["dough"] = true
	}
	if t.holds["dough"] || t.holds[stem("pastry")] {
		t.holds["dough"], t.holds[stem("pastry")], t.holds[stem("case")] = true, true, true
	}
	if l.start >= 0 {
		t.from = []int{l.start}
	} else if len(touched) == 1 {
		t.from = l.threads[touched[0]].from
	}
	t.ready = prepOnly(&l.jobs[i])
	t.vague = has(l.jobs[i].ts, "ingredients", "everything") || len(touched) < 2 && has(l.jobs[i].ts, "vegetables")
	gone := map[int]bool{}
	for _, k := range touched {
		t.vague, t.ready = t.vague || l.threads[k].vague, t.ready && l.threads[k].ready
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

// kneads says that a job kneads: that is the dough.
func kneads(j *job) bool {
	for _, c := range j.clauses {
		if c.verbIs("knead") {
			return true
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
func (l *linker) touched(i int, names map[string]bool, refs []int) ([]int, string) {
	if len(l.threads) == 0 {
		return nil, ""
	}
	j := &l.jobs[i]
	if len(refs) == 0 && l.opensPart(j, l.threads[l.cur]) {
		return nil, "begins a part of its own by name: needs nothing before it"
	}
	refs = slices.Clone(refs)
	if l.speaksOfUnknown(j, names) || fillsBare(j) && l.heldBy(stem("filling")) == 0 {
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
		if l.mainThread() < 0 || i == l.serving {
			return l.allThreads(), ""
		}
		return refs, "" // the dish is among them by its name
	}
	cur := l.threads[l.cur]
	if (hasAny(j.ts, "everything") || has(j.ts, "the lot")) && meanwhile(j.ts) == "" && !freshBowl(j.ts) && (j.it.component == "" || j.it.component == cur.component) {
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
	case len(refs) == 0 && l.startsOwn(i, cur, names):
		l.left(i)
		return nil, "begins with ingredients that nothing has used yet: needs nothing before it"
	case len(refs) > 0 && !inList(refs, l.cur) && l.named(j.ts, refs):
		if len(l.threads) > 1 && !l.leansStill(j, refs) {
			return refs, ""
		}
	}
	if !inList(refs, l.cur) {
		if k := l.holding(cur.beside); j.first && len(refs) == 0 && k >= 0 && (goesToHeat(j) || l.jobs[cur.last].it == l.jobs[cur.beside].it) && !leans(j) {
			refs = append(refs, k) // back to what waited
		} else if cur.prep && k >= 0 && !inList(refs, k) && len(refs) == 0 && l.goesBack(i, k, cur) {
			refs = append(refs, k) // what was made ready goes to what was there before
		}
		refs = append(refs, l.cur)
	}
	return refs, ""
}

// goesBack says that what was made ready goes to thread k, which was there
// before: not when the same item goes on with it and the other waits away from the hob.
func (l *linker) goesBack(i, k int, cur *thread) bool {
	other := l.threads[k]
	if l.barred[i] || laidOver(l.jobs[i].ts) || has(l.jobs[i].ts, "on top") || l.jobs[cur.last].it != l.jobs[i].it || !l.holdsOwn(other) {
		return true
	}
	w := l.jobs[i].waiting()
	boils := w != nil && w.verbIs("boil", "steam", "parboil", "blanch")
	for _, c := range l.jobs[other.last].clauses {
		if !boils && (atHob(c) || l.stands(k) == practical.AtHob) {
			return true
		}
	}
	other.owes = append(other.owes, i)
	return false
}

// allThreads is every part of the dish so far.
func (l *linker) allThreads() []int {
	all := make([]int, len(l.threads))
	for k := range all {
		all[k] = k
	}
	return all
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
	if !has(j.ts, "out of the oven", "from the oven", "from oven", "out of oven", "tin out", "tray out", "tins out", "trays out", "dish out") {
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

func inList(list []int, x int) bool {
	for _, v := range list {
		if v == x {
			return true
		}
	}
	return false
}

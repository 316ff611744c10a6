package recipe

// jobKind is what a stretch of the method is to the plan.
type jobKind int

const (
	handsJob jobKind = iota
	waitJob
	ovenJob  // only turns the oven on
	choreJob // only washes up, puts an apron on, evaluates: rows of the plan
	serveJob // serves
	idleJob  // no verb was found
)

// job is a stretch of an item that becomes a step.
type job struct {
	kind     jobKind
	from, to int // tokens of the item
	it       *item
	clauses  []clause
	waitAt   int  // 1 + the clause that waits; 0: none
	weak     bool // only comes to the boil: a simmer that follows takes it in
	first    bool // first job of its item
	refers   *duration
	ts       []token // the item's tokens from from to to
	oven     int     // the oven's temperature here
	ovenWhy  string
	borrowed *duration // the wait's minutes, said in the next item
	lender   *item
	turns    int // how often the said minutes are gone through; 0: once
	pieces   int // pieces a turn; 0: not said
	follows  int // 1 + the job that "after 20 minutes" speaks of; 0: none
}

// waiting is the clause of the job that waits; nil: none.
func (j *job) waiting() *clause {
	if j.waitAt == 0 {
		return nil
	}
	return &j.clauses[j.waitAt-1]
}

// around is the words of a job's item for one that only comes to the boil, else the job's own.
func (j *job) around() []token {
	if j.weak {
		return j.it.ts[max(0, j.from-20):j.to]
	}
	return j.ts
}

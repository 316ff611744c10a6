// Package solver finds, improves and proves schedules for problems with
// minimal and maximal time lags, renewable and state resources. Its search is
// lazy clause generation; a serial schedule-generation scheme gives the first
// answers; every answer passes the judge in package verify before it leaves.
package solver

import (
	"io"
	"time"

	"plait.example/solver/problem"
)

// Status says what is known about the first objective.
type Status int

// The four answers.
const (
	Unknown    Status = iota // the limits ended the search before a solution or a proof
	Feasible                 // a solution, not proved best
	Optimal                  // a solution whose first objective no other beats
	Infeasible               // proof that no solution exists
)

func (s Status) String() string {
	return [...]string{"unknown", "feasible", "optimal", "infeasible"}[s]
}

// Options bound and steer a search. Effort, not the clock, is the limit that
// keeps results repeatable: same problem, same options, same result to the byte.
type Options struct {
	Seed     int64             // steers ties and restarts
	Effort   int64             // greatest amount of work, in conflicts of the search; other work counts as its worth in conflicts. 0 means 200000
	Efforts  []int64           // by objective: the greatest effort for it, of that in all. 0, or none: a share of what is left; below 0: none at all, it is kept as good as the first solution has it
	Memory   int64             // about how many bytes the search may remember; 0 means no limit. It forgets sooner, then stops
	Time     time.Duration     // a safety net on the wall clock; 0 means none. A result it cut short may not repeat
	Start    *problem.Solution // a schedule to begin from, or nil. If the judge refuses it, as a schedule of a problem that has changed a little since, the search begins near it
	Proof    io.Writer         // takes a log of all that is deduced, for a checker of proofs; nil, at no cost, for none. An error of it is Solve's
	Improved func(Progress)    // called at each better solution and better bound; may be nil
}

// Progress is one step of a running search.
type Progress struct {
	Solution *problem.Solution // the best so far, or nil
	Level    int               // which objective is being worked on
	Value    int               // its value in Solution
	Bound    int               // no solution has less
}

// Result is what a search knows at its end.
type Result struct {
	Status   Status
	Solution *problem.Solution // nil when Unknown or Infeasible
	Levels   []Level           // one an objective, in order
	Bound    int               // lower bound on the first objective; valid in every status
	Seed     int64
	Stats    Stats
}

// Level is one objective's outcome: Value in the solution, Bound the proved least, given the better levels.
type Level struct {
	Name   string
	Value  int
	Bound  int
	Proved bool
}

// Stats counts the work done, for people who tune.
type Stats struct {
	Conflicts, Decisions, Propagations, Restarts, Learnt int64
	Improvements                                         int64
	Elapsed                                              time.Duration
}

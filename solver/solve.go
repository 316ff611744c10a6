package solver

import (
	"context"
	"errors"
	"fmt"
	"time"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// usualEffort is the greatest effort if Options name none.
const usualEffort = 200_000

// Solve looks for the best schedule of p, objective by objective. It returns
// an error if p is not valid, or if ctx ends before anything is known; a
// limit is no error. A context that ends later gives what is known by then.
func Solve(ctx context.Context, p *problem.Problem, o Options) (Result, error) {
	begin := time.Now()
	if err := p.Validate(); err != nil {
		return Result{}, fmt.Errorf("the problem is not valid: %w", err)
	}
	if err := ctx.Err(); err != nil {
		return Result{}, err
	}
	s := newSolving(ctx, p, o, begin)
	s.run()
	s.finish(begin)
	if err := s.proof.end(&s.result); err != nil && s.wrong == nil {
		return s.result, err
	}
	if s.wrong != nil {
		return s.result, s.wrong
	}
	if s.best == nil && s.result.Status == Unknown && ctx.Err() != nil {
		return s.result, ctx.Err()
	}
	return s.result, nil
}

// solving is one call of Solve.
type solving struct {
	p        *problem.Problem
	o        Options
	goals    []problem.Objective
	m        *model
	b        *brancher
	left     int64 // effort, in conflicts
	stop     func() bool
	quick    bool // before the first solution: no dear propagation yet
	best     *problem.Solution
	values   []int // of best, by objective
	bounds   []int // by objective, given the values before; proved
	level    int   // the objective in hand
	result   Result
	improved int64
	wrong    error
	crowd    *crowd // nil unless the problem is a plain project
	roamer   *roamer
	proof    *proof // nil unless one is asked for
	floor    int    // bound of the first objective before there is a model
}

func newSolving(ctx context.Context, p *problem.Problem, o Options, begin time.Time) *solving {
	s := &solving{p: p, o: o, goals: objectives(p), left: o.Effort, proof: newProof(o.Proof, p)}
	if s.left <= 0 {
		s.left = usualEffort
	}
	s.result.Seed = o.Seed
	s.stop = func() bool {
		return ctx.Err() != nil || o.Time > 0 && time.Since(begin) > o.Time || s.m != nil && s.m.e.Full()
	}
	return s
}

// run does everything up to the proof or the limit.
func (s *solving) run() {
	if s.begin() {
		s.descend()
	}
}

// descend takes objective after objective, and keeps what is reached of each.
func (s *solving) descend() {
	for s.level = range s.goals {
		if s.aim(); s.wrong == nil {
			s.improve()
		}
		if s.wrong != nil {
			return
		}
		s.proof.keep(s.level, s.values[s.level])
		s.m.e.AddClause(s.m.within(s.level, s.values[s.level]))
	}
}

// begin finds a first solution; false if there is nothing more to do.
func (s *solving) begin() bool {
	if _, ok := temporal(s.p).earliest(); !ok {
		s.result.Status = Infeasible
		return false
	}
	if s.o.Start != nil && len(verify.Check(s.p, s.o.Start)) == 0 {
		s.offer(s.o.Start)
	}
	s.gather()
	if s.best != nil && len(s.goals) == 1 && s.values[0] <= s.floor {
		return false
	}
	s.m = s.proof.post(s.p, s.o.Seed)
	s.m.e.SetMemory(s.o.Memory)
	s.b = newBrancher(s.m)
	s.roamer = newRoamer(s.p, s.o.Seed)
	if s.best != nil {
		s.m.prefer(s.best)
		return true
	}
	if s.o.Start != nil && fits(s.p, s.o.Start) && s.mend(s.o.Start) {
		return true
	}
	return s.wrong == nil && s.first()
}

// offer takes a solution if the judge accepts it and it is better than the
// best. It reports whether it was.
func (s *solving) offer(sol *problem.Solution) bool {
	values := make([]int, len(s.goals))
	for k, g := range s.goals {
		values[k] = verify.Value(s.p, g, sol)
	}
	if s.best != nil && !lexLess(values, s.values) {
		return false
	}
	s.best, s.values = sol, values
	s.improved++
	s.tell()
	return true
}

func lexLess(a, b []int) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return false
}

// tell reports progress to the caller.
func (s *solving) tell() {
	if s.o.Improved == nil {
		return
	}
	p := Progress{Solution: s.best, Level: s.level}
	if s.best != nil {
		p.Value = s.values[s.level]
	}
	p.Bound = s.boundOf(s.level)
	s.o.Improved(p)
}

// boundOf is the proved bound of a level, as far as it is known.
func (s *solving) boundOf(level int) int {
	if level < len(s.bounds) {
		return s.bounds[level]
	}
	if s.m == nil {
		return s.floor
	}
	return s.m.bound(level)
}

// take reads the engine's solution and offers it; false if the judge refuses
// it, which is a fault of this program.
func (s *solving) take() bool {
	sol := s.m.extract()
	if breaches := verify.Check(s.p, sol); len(breaches) > 0 {
		s.wrong = errors.Join(errors.New("internal error: the judge refuses a schedule that the search found"), errors.New(breaches[0].String()))
		return false
	}
	for v := range s.m.e.Vars() {
		s.m.e.Prefer(lcg.Var(v), s.m.e.Low(lcg.Var(v)))
	}
	s.m.e.Reset()
	before := s.values
	s.offer(sol)
	s.hold(before)
	return true
}

// hold keeps what a solution has gained by the way in objectives before the one
// in hand, which need not have been proved best: or else the search would find
// again and again what is worse there, and be refused.
func (s *solving) hold(before []int) {
	for j := 0; j < s.level && j < len(before); j++ {
		if s.values[j] < before[j] {
			s.proof.keep(j, s.values[j])
			s.m.e.AddClause(s.m.within(j, s.values[j]))
		}
	}
}

// finish fills in the result.
func (s *solving) finish(begin time.Time) {
	r := &s.result
	r.Solution = s.best
	if s.m != nil {
		e := s.m.e.Stats
		r.Stats = Stats{
			Conflicts: e.Conflicts, Decisions: e.Decisions, Propagations: e.Propagations,
			Restarts: e.Restarts, Learnt: e.Learnt, Improvements: s.improved,
		}
	}
	r.Stats.Elapsed = time.Since(begin)
	if s.wrong != nil {
		r.Status, r.Solution = Unknown, nil
	}
	if r.Status == Infeasible {
		return
	}
	r.Bound = s.boundOf(0)
	if s.best == nil || s.wrong != nil {
		return
	}
	r.Status = Feasible
	for k, g := range s.goals {
		l := Level{Name: g.Name, Value: s.values[k], Bound: s.boundOf(k)}
		l.Proved = l.Bound >= l.Value
		r.Levels = append(r.Levels, l)
	}
	if r.Levels[0].Proved {
		r.Status = Optimal
	}
}

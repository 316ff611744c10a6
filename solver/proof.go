package solver

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// proof writes what the search deduces as lines of text, for a program that
// shares nothing with it to check (docs/engine.md has the grammar). All its
// methods work on nil, and do nothing then.
type proof struct {
	w       *bufio.Writer
	names   *names
	defined int // lines of names written
}

// newProof begins a log, or returns nil if none is asked for.
func newProof(w io.Writer, p *problem.Problem) *proof {
	if w == nil {
		return nil
	}
	f := &proof{w: bufio.NewWriter(w)}
	f.line("proof 1 activities %d horizon %d objectives %d", len(p.Activities), p.Horizon, len(objectives(p)))
	return f
}

func (f *proof) line(format string, args ...any) {
	if f != nil {
		fmt.Fprintf(f.w, format+"\n", args...) // a failed write is told by end
	}
}

// post compiles the problem. If a log is wanted, the meaning of the variables
// is written, and from then on all that the engine deduces.
func (f *proof) post(p *problem.Problem, seed int64) *model {
	if f == nil {
		return compile(p, seed)
	}
	m := compileNamed(p, seed)
	f.names = m.names
	f.define()
	m.e.Log(f.learnt)
	return m
}

// define writes the names that are new.
func (f *proof) define() {
	if f == nil {
		return
	}
	for _, l := range f.names.lines[f.defined:] {
		f.line("%s", l)
	}
	f.defined = len(f.names.lines)
}

// learnt writes a clause; without literals it is a refutation.
func (f *proof) learnt(clause []lcg.Lit) {
	f.line("%s", strings.TrimSpace("clause "+f.names.clause(clause)))
}

// bound says that no schedule has less than v for objective k, given what is
// kept of those before it.
func (f *proof) bound(k, v int) { f.line("bound %d %d", k, v) }

// keep says that from here on only schedules with at most v for objective k
// are looked at.
func (f *proof) keep(k, v int) { f.line("keep %d %d", k, v) }

// end writes the schedule and closes the log: a log without its last line is
// torn. It returns the first error of writing.
func (f *proof) end(r *Result) error {
	if f == nil {
		return nil
	}
	if s := r.Solution; s != nil {
		f.line("starts%s", numbers(s.Start))
		f.line("ends%s", numbers(s.End))
		f.line("modes%s", numbers(s.Mode))
		for _, c := range s.Changes {
			f.line("change %d %d %d", c.State, c.Level, c.At)
		}
	}
	for k, l := range r.Levels {
		f.line("value %d %d bound %d", k, l.Value, l.Bound)
	}
	f.line("end %s", r.Status)
	if err := f.w.Flush(); err != nil {
		return fmt.Errorf("writing the proof: %w", err)
	}
	return nil
}

func numbers(list []int) string {
	var b strings.Builder
	for _, n := range list {
		fmt.Fprintf(&b, " %d", n)
	}
	return b.String()
}

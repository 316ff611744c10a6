// Package recheck replays a proof: it reads a problem and the log of what a
// search deduced, and says of every step whether it follows from the problem
// and the steps before it. It owns a plain reading of every constraint (minute
// by minute, pair by pair) and a plain complete search for what that reading
// does not show at once. It must know nothing of the search: it shares the
// nouns of package problem with it and no code.
//
// Every variable of a log is a function of the schedule that its "let" line
// names. A clause is right if every schedule of the problem fulfils it; so no
// definition can do harm, and only clauses, bounds and claims are checked.
package recheck

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"plait.example/solver/problem"
)

// Report says what became of the steps of a log. A step is a clause or a bound.
type Report struct {
	Propagated int      // steps that plain propagation showed
	Searched   int      // steps that needed the complete search
	Unchecked  int      // steps for which the search was longer than allowed; nothing rests on them
	Refuted    int      // steps that a schedule contradicts
	Faults     []string // what is wrong, by line
	Status     string   // as claimed: optimal, feasible, infeasible, unknown
	Values     []int    // of the log's schedule, one an objective
	Bounds     []int    // shown, given at most the values before; -2^60 where nothing was
	Proved     bool     // the claim follows from the steps that were checked
}

// Sound says that nothing in the log is wrong. Steps may be unchecked.
func (r *Report) Sound() bool { return r.Refuted == 0 && len(r.Faults) == 0 }

func (r *Report) String() string {
	word := "not proved"
	if r.Proved {
		word = "proved"
	}
	s := fmt.Sprintf("%s %s: %d steps by propagation, %d by search, %d unchecked, %d refuted",
		r.Status, word, r.Propagated, r.Searched, r.Unchecked, r.Refuted)
	for _, f := range r.Faults {
		s += "\n" + f
	}
	return s
}

// Replay checks a log against its problem. Each step that propagation does not
// show may take a search of so many nodes; 0 means none. The error is one of
// reading, or says that the problem is not valid; what is wrong with the log
// itself stands in the report.
func Replay(p *problem.Problem, log io.Reader, nodes int) (*Report, error) {
	if err := p.Validate(); err != nil {
		return nil, fmt.Errorf("the problem is not valid: %w", err)
	}
	c := newChecker(p, nodes)
	lines := bufio.NewScanner(log)
	lines.Buffer(nil, longestLine)
	for lines.Scan() && !c.ended {
		c.at++
		c.line(strings.Fields(lines.Text()))
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	if !c.ended {
		c.fault("the log is torn: it has no last line")
	}
	if !c.r.Sound() {
		c.r.Proved = false
	}
	return &c.r, nil
}

const (
	longestLine = 1 << 24
	mostFaults  = 20
)

func (c *checker) fault(format string, args ...any) {
	if len(c.r.Faults) < mostFaults {
		c.r.Faults = append(c.r.Faults, fmt.Sprintf("line %d: ", c.at)+fmt.Sprintf(format, args...))
	}
}

// line deals with one line of the log.
func (c *checker) line(words []string) {
	if len(words) == 0 {
		return
	}
	if (words[0] == "proof") != (c.at == 1) {
		c.fault("a log begins with its one line \"proof 1 ...\"")
		return
	}
	rest := words[1:]
	switch words[0] {
	case "proof":
		c.header(rest)
	case "let":
		c.let(rest)
	case "sum":
		c.sum(rest)
	case "clause":
		if clause, ok := c.clause(rest); ok {
			c.step(clause)
		}
	case "bound":
		if k, v, ok := c.goal(rest); ok {
			c.bound(k, v)
		}
	case "keep":
		if k, v, ok := c.goal(rest); ok {
			c.keep(k, v)
		}
	case "starts", "ends", "modes":
		c.column(words[0], rest)
	case "change":
		c.change(rest)
	case "value":
		c.claim(rest)
	case "end":
		c.end(rest)
	default:
		c.fault("%q is no step; must be let, sum, clause, bound, keep, starts, ends, modes, change, value or end", words[0])
	}
}

func (c *checker) header(rest []string) {
	want := fmt.Sprintf("1 activities %d horizon %d objectives %d", c.n, c.p.Horizon, len(c.values))
	if got := strings.Join(rest, " "); got != want {
		c.fault("the log is of another problem: %q; must be %q", got, want)
	}
}

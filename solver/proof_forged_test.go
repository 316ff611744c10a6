package solver_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"plait.example/solver"
	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
)

// sample is a proof with its problem and result.
type sample struct {
	p     *problem.Problem
	r     solver.Result
	lines []string
}

// samples are proofs of optimal values that replay without a gap.
func samples(t *testing.T) (list []sample) {
	t.Helper()
	for seed := uint64(5000); seed < 5000+uint64(drawn(200)); seed++ {
		p := brute.Random(seed)
		r, log := logged(t, p, solver.Options{Seed: int64(seed)})
		if c := replayed(t, p, log, 3000); r.Status == solver.Optimal && bytes.Contains(log, []byte("\nkeep 0")) && c.Proved && c.Unchecked == 0 {
			list = append(list, sample{p, r, strings.Split(strings.TrimSpace(string(log)), "\n")})
		}
	}
	p := read(t, "ubo20_psp49.sch")
	r, log := logged(t, p, solver.Options{Seed: 1})
	list = append(list, sample{p, r, strings.Split(strings.TrimSpace(string(log)), "\n")})
	if len(list) < drawn(70) {
		t.Fatalf("only %d proofs to forge", len(list))
	}
	return list
}

// with is the log with lines put in before the first that begins so.
func (s *sample) with(before string, lines ...string) []byte {
	var out []string
	done := false
	for _, l := range s.lines {
		if !done && strings.HasPrefix(l, before) {
			out, done = append(out, lines...), true
		}
		out = append(out, l)
	}
	return []byte(strings.Join(out, "\n") + "\n")
}

// changed is the log with one piece of text in place of another.
func (s *sample) changed(from, to string) []byte {
	return bytes.Replace([]byte(strings.Join(s.lines, "\n")+"\n"), []byte(from), []byte(to), 1)
}

// TestForgedProofsAreRefused corrupts proofs. A clause that the schedule
// contradicts, a bound above the value, a claim that there is no schedule,
// values and schedules that are not so, and missing lines are all told.
func TestForgedProofsAreRefused(t *testing.T) {
	told := map[string]int{}
	for _, s := range samples(t) {
		for name, log := range forgeries(&s) {
			if bytes.Equal(log, []byte(strings.Join(s.lines, "\n")+"\n")) {
				continue
			}
			c := replayed(t, s.p, log, 3000)
			if c.Sound() && c.Proved {
				t.Errorf("%s of %s: %v\n%s", name, s.p.Name, c, log)
			}
			if strings.HasPrefix(name, "step") && c.Refuted == 0 {
				t.Errorf("%s of %s is not refuted: %v", name, s.p.Name, c)
			}
			told[name]++
		}
	}
	t.Log(told)
	for name, n := range told {
		if n < drawn(30) {
			t.Errorf("%s: only %d", name, n)
		}
	}
}

func forgeries(s *sample) map[string][]byte {
	v := s.r.Levels[0].Value
	start := s.r.Solution.Start[0]
	claim := fmt.Sprintf("value 0 %d bound %d", v, v)
	text := strings.Join(s.lines, "\n") + "\n"
	forged := map[string][]byte{
		"step: clause later":  s.with("bound", fmt.Sprintf("clause s0>=%d", start+1)),
		"step: empty clause":  s.with("bound", "clause"),
		"step: bound":         s.with("keep", fmt.Sprintf("bound 0 %d", v+1)),
		"step: infeasible":    []byte(text[:strings.Index(text, "bound 0")] + "end infeasible\n"),
		"better value":        s.changed(claim, fmt.Sprintf("value 0 %d bound %d", v-1, v-1)),
		"higher bound":        s.changed(claim, fmt.Sprintf("value 0 %d bound %d", v, v+1)),
		"other schedule":      s.changed(fmt.Sprintf("starts %d", start), fmt.Sprintf("starts %d", start+100)),
		"kept less":           s.changed(fmt.Sprintf("keep 0 %d", v), fmt.Sprintf("keep 0 %d", v-1)),
		"no end":              []byte(text[:strings.LastIndex(text, "end ")]),
		"no bound":            []byte(text[:strings.Index(text, "bound 0")] + text[strings.Index(text, "starts"):]),
		"unknown name":        s.with("bound", "clause nobody>=1"),
		"of another problem":  s.changed("horizon ", "horizon 1"),
		"an objective before": s.with("bound 0", "bound 1 0"),
	}
	if len(s.r.Levels) == 1 {
		delete(forged, "no bound") // the bound of the claim itself is then checked at the end
	}
	return forged
}

// TestDroppedClausesMatter leaves steps out: by propagation alone, later
// steps then do not follow, and that is told; with the search they follow from
// the problem, or stay unchecked, but are never refuted.
func TestDroppedClausesMatter(t *testing.T) {
	p := read(t, "j3046_6.sm")
	if testing.Short() {
		p = read(t, "j3010_4.sm") // a third of the steps
	}
	_, log := logged(t, p, solver.Options{Seed: 1})
	whole := replayed(t, p, log, 0)
	if whole.Unchecked > 0 || !whole.Proved {
		t.Fatalf("without search: %v", whole)
	}
	lines := strings.Split(string(log), "\n")
	r := rand.New(rand.NewPCG(1, 1))
	var kept []string
	dropped := 0
	for _, l := range lines {
		if strings.HasPrefix(l, "clause") && r.IntN(2) == 0 {
			dropped++
			continue
		}
		kept = append(kept, l)
	}
	less := replayed(t, p, []byte(strings.Join(kept, "\n")), 0)
	if dropped < 50 || less.Unchecked == 0 || !less.Sound() {
		t.Errorf("%d dropped: %v", dropped, less)
	}
	t.Logf("%d of %d steps dropped: %v", dropped, whole.Propagated, less)
}

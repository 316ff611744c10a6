package lcg

import "testing"

// three makes tasks of these lengths, earliest and latest starts, and looks at
// them as at tasks that never overlap.
func three(t *testing.T, tasks ...[3]int) (*Engine, []Term) {
	t.Helper()
	e := New(1)
	var list []Task
	var starts []Term
	for _, x := range tasks {
		s := Term{Var: e.NewVar(x[1], x[2])}
		starts = append(starts, s)
		list = append(list, Task{Start: s, End: s.Plus(x[0]), Amount: 1, Present: True, Least: x[0]})
	}
	e.AddDisjunctive(list)
	if !e.propagate() {
		t.Fatal("a contradiction")
	}
	return e, starts
}

// The third (7 long) ends at 7 or later; the others (5 and 4) start by 2 and by
// 6, so both come first and it starts at 9 or later.
func TestDetectablePrecedences(t *testing.T) {
	e, s := three(t, [3]int{5, 0, 2}, [3]int{4, 0, 6}, [3]int{7, 0, 20})
	if got := e.Min(s[2]); got != 9 {
		t.Errorf("starts at %d or later, want 9", got)
	}
}

// The same backwards from 30: ends at 21 or earlier, so starts by 14.
func TestDetectableSuccessors(t *testing.T) {
	e, s := three(t, [3]int{5, 23, 25}, [3]int{4, 20, 26}, [3]int{7, 3, 23})
	if got := e.Max(s[2]); got != 14 {
		t.Errorf("starts at %d or earlier, want 14", got)
	}
}

// The first two take from 0 to 10 at least, and the third (2 long) starts by 9:
// it is not last, so it ends before the one that is starts, by 8.
func TestNotLast(t *testing.T) {
	e, s := three(t, [3]int{5, 0, 8}, [3]int{5, 0, 8}, [3]int{2, 0, 9})
	if got := e.Max(s[2]) + 2; got != 8 {
		t.Errorf("ends at %d or earlier, want 8", got)
	}
}

// The same backwards from 20: not first, so it starts when another ends, at 12
// or later.
func TestNotFirst(t *testing.T) {
	e, s := three(t, [3]int{5, 7, 15}, [3]int{5, 7, 15}, [3]int{2, 9, 18})
	if got := e.Min(s[2]); got != 12 {
		t.Errorf("starts at %d or later, want 12", got)
	}
}

// Tasks that can overlap nothing anyway teach nothing.
func TestDisjunctiveWithRoom(t *testing.T) {
	e, s := three(t, [3]int{2, 0, 20}, [3]int{3, 0, 20}, [3]int{4, 0, 20})
	for i := range s {
		if e.Min(s[i]) != 0 || e.Max(s[i]) != 20 {
			t.Errorf("task %d moved to %d..%d", i, e.Min(s[i]), e.Max(s[i]))
		}
	}
}

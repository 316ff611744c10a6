package lcg

import "fmt"

// Var is an integer variable of an Engine.
type Var int32

// Side is one bound of a variable: 2v stands for v itself (its lower bound
// rises), 2v+1 for -v (the upper bound of v falls).
type Side int32

// Lit is an order literal: the value of a side is at least Min. On side 2v it
// says v >= Min, on side 2v+1 it says -v >= Min, so v <= -Min. A Boolean is a
// variable of 0..1. Literals need no creation: any (side, number) is one.
type Lit struct {
	Side Side
	Min  int32
}

// AtLeast is the literal v >= k.
func AtLeast(v Var, k int) Lit { return Lit{Side(2 * v), int32(k)} }

// AtMost is the literal v <= k.
func AtMost(v Var, k int) Lit { return Lit{Side(2*v) + 1, int32(-k)} }

// Is is the literal that a Boolean variable is 1.
func Is(v Var) Lit { return AtLeast(v, 1) }

// Not is the negation: v >= k becomes v <= k-1.
func (l Lit) Not() Lit { return Lit{l.Side ^ 1, 1 - l.Min} }

// Var is the variable that the literal speaks of.
func (l Lit) Var() Var { return Var(l.Side >> 1) }

func (l Lit) String() string {
	if l.Side&1 == 0 {
		return fmt.Sprintf("[x%d>=%d]", l.Var(), l.Min)
	}
	return fmt.Sprintf("[x%d<=%d]", l.Var(), -l.Min)
}

// Term is a variable plus a constant: a view that costs nothing.
type Term struct {
	Var Var
	Add int32
}

// Plus is the term moved by k.
func (t Term) Plus(k int) Term { return Term{t.Var, t.Add + int32(k)} }

// AtLeast is the literal t >= k.
func (t Term) AtLeast(k int) Lit { return Lit{Side(2 * t.Var), int32(k) - t.Add} }

// AtMost is the literal t <= k.
func (t Term) AtMost(k int) Lit { return Lit{Side(2*t.Var) + 1, t.Add - int32(k)} }

package practical

import (
	"fmt"
	"reflect"
	"sort"
	"strings"
)

// Limits on a practical as a whole: beyond them it is a mistake or meant to do harm.
const (
	MaxDishes  = 12
	MaxSteps   = 200     // of all dishes
	MaxLength  = 12 * 60 // minutes from start to finish
	maxText    = 2000    // bytes of a step's text
	maxPasted  = 500_000
	maxFaults  = 500
	maxListing = 500 // entries of any list
)

// judge collects what Validate finds.
type judge struct {
	p      *Practical
	faults Faults
}

func (j *judge) fault(path, message, hint string) {
	j.faults = append(j.faults, Fault{Field: path, Message: message, Hint: hint, Code: Invalid})
}

func (j *judge) faultf(path, hint, message string, args ...any) {
	j.fault(path, fmt.Sprintf(message, args...), hint)
}

// Validate judges the form of a practical: everything that can be said of it
// without planning it. A practical without dishes is valid, as while one is
// being made; see Ready. Each fault's Field is the path as in the file. Faults
// come in the order clock, rules, kitchen, dishes, pins.
func (p *Practical) Validate() Faults {
	j := &judge{p: p}
	if j.tooMuch() {
		return j.faults
	}
	j.values(reflect.ValueOf(p).Elem(), "")
	j.clock()
	j.breaks()
	j.rules()
	j.kitchen()
	j.dishes()
	j.order()
	j.pins()
	return j.inOrder()
}

// tooMuch says what is too large to be judged at all.
func (j *judge) tooMuch() bool {
	steps := 0
	for _, d := range j.p.Dishes {
		steps += len(d.Steps)
	}
	switch {
	case len(j.p.Dishes) > MaxDishes:
		j.faultf("dishes", fmt.Sprintf("at most %d dishes in one practical", MaxDishes), "there are %d dishes", len(j.p.Dishes))
	case steps > MaxSteps:
		j.faultf("dishes", fmt.Sprintf("at most %d steps in one practical; a dish has seldom more than 15", MaxSteps), "there are %d steps", steps)
	}
	return len(j.faults) > 0
}

// inOrder sorts the faults by the order of the struct's fields, so that they
// read as the file does, and drops a second fault of the same field and words.
func (j *judge) inOrder() Faults {
	rank := map[string]int{}
	for i, name := range fieldNames(reflect.TypeFor[Practical]()) {
		rank[name] = i
	}
	top := func(f Fault) int {
		head := f.Field
		if cut := strings.IndexAny(head, ".["); cut >= 0 {
			head = head[:cut]
		}
		return rank[head]
	}
	sort.SliceStable(j.faults, func(a, b int) bool { return top(j.faults[a]) < top(j.faults[b]) })
	var out Faults
	seen := map[string]bool{}
	for _, f := range j.faults {
		if key := f.Field + "\x00" + f.Message; !seen[key] {
			seen[key] = true
			out = append(out, f)
		}
	}
	return out[:min(len(out), maxFaults)]
}

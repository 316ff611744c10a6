package timeplan

import "fmt"

// Aim is what a plan is made as good in as can be.
type Aim string

// The aims, the most important first.
const (
	AimFinish   Aim = "finish"       // minutes from the beginning of set-up to the finish
	AimFresh    Aim = "freshness"    // minutes that hot food stands before it is served
	AimOven     Aim = "oven-changes" // turns of the dial of an oven or a grill
	AimSwitches Aim = "switches"     // times that the cook goes from one dish to another
	AimWashUps  Aim = "wash-ups"     // points for wash-ups that are close together
	AimOrder    Aim = "own-order"    // steps begun before the one above them in their recipe
)

// Level is how good a plan is in one aim, before its times are put on marks of
// five minutes.
type Level struct {
	Aim    Aim  `json:"aim"`
	Value  int  `json:"value"`
	Bound  int  `json:"bound"`  // no plan that is as good in the aims before has less
	Proved bool `json:"proved"` // Value is the least
}

// Aims says in sentences, the most important first, how good the plan is and
// what of that is proved: each among plans that are as good in the ones above.
func (p *Plan) Aims() (said []string) {
	for _, l := range p.Levels {
		if words := l.words(p); words != "" {
			said = append(said, words)
		}
	}
	return said
}

func (l Level) words(p *Plan) string {
	switch l.Aim {
	case AimFinish:
		if l.Proved {
			return "It cannot finish sooner: proved."
		}
		return fmt.Sprintf("Whether it can finish sooner: not proved, but never before %s.", p.Bound.Write(p.Hours))
	case AimFresh:
		if l.Value == 0 {
			return "Hot food is served the moment it is ready."
		}
		return fmt.Sprintf("Hot food stands for %s before it is served. %s", counted(l.Value, "minute"), l.proof("Less"))
	case AimOven:
		return fmt.Sprintf("The oven or grill is turned %s. %s", times(l.Value), l.proof("Fewer"))
	case AimSwitches:
		if l.Value == 0 {
			return "Nobody changes from one dish to another."
		}
		who := "You change"
		if p.Cooks > 1 {
			who = "The two of you change"
		}
		return fmt.Sprintf("%s from one dish to another %s. %s", who, times(l.Value), l.proof("Fewer"))
	case AimWashUps:
		if l.Value == 0 {
			return "The wash-ups are well apart."
		}
		return "Some wash-ups are close together. " + l.proof("Further apart")
	case AimOrder:
		if l.Value == 0 {
			return "Every dish keeps to the order of its recipe."
		}
		return fmt.Sprintf("%s begun before the one above it in the recipe. %s", steps(l.Value), l.proof("Fewer"))
	}
	return ""
}

// proof says whether better can be had.
func (l Level) proof(better string) string {
	if l.Proved {
		return better + ": proved impossible."
	}
	return better + ": not proved impossible."
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

func steps(n int) string {
	if n == 1 {
		return "1 step is"
	}
	return fmt.Sprintf("%d steps are each", n)
}

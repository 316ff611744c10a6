package practical

import "fmt"

// Ready judges what planning needs beyond the form that Validate judges: dishes,
// as many as the rules ask for, each with steps.
func (p *Practical) Ready() Faults {
	j := &judge{p: p}
	switch asked, has := p.Rules.Dishes, len(p.Dishes); {
	case has == 0:
		j.fault("dishes", "there is no dish yet", "add at least one dish with its steps")
	case asked > 0 && asked != has:
		j.faultf("dishes", "add or take away dishes, or change rules.dishes (0 is any number)", "the rules ask for %d dishes, and there are %d", asked, has)
	}
	for i, d := range p.Dishes {
		if len(d.Steps) == 0 {
			j.faultf(fmt.Sprintf("dishes[%d].steps", i), "type its steps, or paste its recipe", "dish %s has no steps", clip(d.Letter))
		}
	}
	return j.faults
}

package practical

import (
	"fmt"
	"regexp"
	"time"
)

// clock judges the times against each other.
func (j *judge) clock() {
	c := j.p.Clock
	if c.SetUp > c.Start {
		j.faultf("clock.set-up", fmt.Sprintf("set-up begins at %v or before", c.Start), "set-up begins at %v, after the start at %v", c.SetUp, c.Start)
	} else if c.Start-c.SetUp > MaxLength {
		j.faultf("clock.set-up", fmt.Sprintf("at most %d minutes before the start", MaxLength), "set-up begins %d minutes before the start", int(c.Start-c.SetUp))
	}
	switch {
	case c.Finish < c.Start:
		j.faultf("clock.finish", fmt.Sprintf("a finish after %v; past midnight, count the hours on, such as 24:30", c.Start), "the finish at %v is before the start at %v", c.Finish, c.Start)
	case c.Finish == c.Start:
		j.faultf("clock.finish", fmt.Sprintf("a finish after %v", c.Start), "the finish is the start: there is no time to cook")
	case c.Finish-c.Start > MaxLength:
		j.faultf("clock.finish", fmt.Sprintf("at most %d minutes (%d hours)", MaxLength, MaxLength/60), "from start to finish are %d minutes", int(c.Finish-c.Start))
	case j.p.Allowed() > lastMinute:
		j.fault("clock.finish", "with extra time and rest breaks the clock runs past the end of the day after", "start earlier")
	}
	if d := j.p.Date; d != "" {
		if _, err := time.Parse(time.DateOnly, d); err != nil {
			j.faultf("date", "write year-month-day, such as 2026-12-04", "%q is not a date", clip(d))
		}
	}
}

// breaks judges the rest breaks: inside the clock, and apart.
func (j *judge) breaks() {
	breaks, ends := j.p.Clock.Breaks, j.p.Allowed()
	for i, b := range breaks {
		path := fmt.Sprintf("clock.rest-breaks[%d].at", i)
		if b.At < j.p.Clock.Start || b.At+TimeOfDay(b.Minutes) > ends {
			j.faultf(path, fmt.Sprintf("a break lies between %v and %v", j.p.Clock.Start, ends), "the break at %v for %d minutes is outside the clock", b.At, b.Minutes)
		}
		for k, other := range breaks[:i] {
			if b.At < other.At+TimeOfDay(other.Minutes) && other.At < b.At+TimeOfDay(b.Minutes) {
				j.faultf(path, "keep breaks apart, or make one longer break of them", "the break at %v overlaps the break at %v (number %d)", b.At, other.At, k+1)
			}
		}
	}
}

// rules judges the rules against each other.
func (j *judge) rules() {
	r := j.p.Rules
	if r.WashEvery > 0 && r.WashUp == 0 {
		j.faultf("rules.wash-up", "give it minutes, such as 5, or set wash-up-every to 0", "a wash-up is asked for every %d minutes, but takes none", r.WashEvery)
	}
	if r.WashEvery > 0 && r.WashEvery < 15 {
		j.faultf("rules.wash-up-every", "15 or more, or 0 for the end only", "a wash-up every %d minutes leaves no time to cook", r.WashEvery)
	}
	seen := map[string]bool{}
	for i, verb := range r.SetUpVerbs {
		path := fmt.Sprintf("rules.set-up-verbs[%d]", i)
		if verb != "" && !verbForm.MatchString(verb) {
			j.faultf(path, "one word in small letters, such as weigh", "%q is not a verb", clip(verb))
		}
		if seen[verb] {
			j.faultf(path, "keep it once", "%q stands here twice", clip(verb))
		}
		seen[verb] = true
	}
}

// verbForm is one verb as a set-up step begins with it.
var verbForm = regexp.MustCompile(`^\p{Ll}[\p{Ll}-]*$`)

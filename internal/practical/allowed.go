package practical

// SetUpFrom is when set-up may begin, its extra time included: set-up is made
// longer by beginning earlier. Not before midnight.
func (p *Practical) SetUpFrom() TimeOfDay {
	length := max(0, int(p.Clock.Start-p.Clock.SetUp))
	return max(0, p.Clock.SetUp-TimeOfDay(share(length*p.Clock.Extra.SetUp)))
}

// Allowed is when the clock ends, with extra time and rest breaks. The time from
// start to finish less the serving window is cooking and is extended by the
// extra time for cooking, the window by that for serving; rounded up to whole
// minutes. A rest break stops the clock, so the finish moves by as much.
//
// Where the extra time falls is for the school to say: an awarding body's
// guidance of 2023 gives 25 % to all stages or to some, by the candidate's need.
func (p *Practical) Allowed() TimeOfDay {
	length := max(0, int(p.Clock.Finish-p.Clock.Start))
	window := min(max(0, p.Rules.Window), length)
	extra := share((length-window)*p.Clock.Extra.Cook + window*p.Clock.Extra.Serve)
	return p.Clock.Finish + TimeOfDay(extra+p.Clock.rest())
}

// rest is the minutes of all rest breaks.
func (c Clock) rest() int {
	sum := 0
	for _, b := range c.Breaks {
		sum += b.Minutes
	}
	return sum
}

// share is hundredths as a whole, rounded up.
func share(hundredths int) int { return (hundredths + 99) / 100 }

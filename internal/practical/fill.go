package practical

import (
	"fmt"
	"slices"
)

// fillClock keeps the starting point's lengths where the file moves the start alone.
func (d *decoder) fillClock(c *Clock, from Clock) {
	if d.at["clock.start"] == nil {
		return
	}
	if d.at["clock.set-up"] == nil {
		c.SetUp = max(0, c.Start-(from.Start-from.SetUp))
	}
	if d.at["clock.finish"] == nil {
		c.Finish = min(lastMinute, c.Start+(from.Finish-from.Start))
	}
}

// fillLetters gives a dish without a letter the next one that is free.
func (d *decoder) fillLetters(dishes []Dish) {
	var taken []string
	for _, dish := range dishes {
		taken = append(taken, dish.Letter)
	}
	next := 'A'
	for i := range dishes {
		for dishes[i].Letter == "" && next <= 'Z' {
			if !slices.Contains(taken, string(next)) {
				dishes[i].Letter = string(next)
			}
			next++
		}
	}
}

// fillSteps gives a dish's steps their ids and what each comes after.
func (d *decoder) fillSteps(dish *Dish, path string) {
	last := map[string]string{} // the last step of each component
	before := ""                // the step before, of whichever component
	for i := range dish.Steps {
		s := &dish.Steps[i]
		if s.ID == "" {
			s.ID = fmt.Sprintf("%s%d", dish.Letter, i+1)
		}
		follows := before
		if s.Component != "" {
			follows = last[s.Component]
		}
		if d.at[fmt.Sprintf("%s.steps[%d].after", path, i)] == nil && !s.SetUp && follows != "" {
			s.After = []After{{Step: follows}}
		}
		last[s.Component], before = s.ID, s.ID
	}
}

package recipe

import (
	"fmt"

	"plait.example/internal/format/webpage"
)

// timesNote says that a page's own times and the steps as they were read are far
// apart; empty when they are not, or the page gives no times.
func timesNote(page webpage.Recipe, r Recipe) string {
	said := page.Total
	if said == 0 {
		said = page.Prep + page.Cook
	}
	read := longestPath(r)
	if said == 0 || read == 0 || read <= said*3/2+farApart && said <= read*2+farApart {
		return ""
	}
	return fmt.Sprintf("The page says %d minutes in all; the steps as they were read take about %d when each begins as soon as it can. Look at the doubtful ones first.", said, read)
}

// farApart is the minutes that two figures may differ by besides their ratio.
// Judgement: pages count neither weighing nor cooling.
const farApart = 15

// longestPath is the likely minutes from the first step to the last when each
// begins as soon as those before it have ended.
func longestPath(r Recipe) int {
	ends := map[string]int{}
	longest := 0
	for _, s := range r.Steps { // a step comes after earlier ones alone
		begin := 0
		for _, a := range s.After {
			begin = max(begin, ends[a.Step]+a.Least)
		}
		end := begin + s.Hands.Likely
		if s.Wait != nil {
			end += s.Wait.Least
		}
		ends[s.ID] = end
		longest = max(longest, end)
	}
	return longest
}

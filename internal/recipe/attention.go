package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// attention says how closely a wait is to be watched.
func (cx *context) attention(body []token, c *clause) {
	switch {
	case c.look != "":
		return
	case c.place != practical.AtHob:
		c.look = practical.Leave
		if c.every == 0 {
			c.every = tendedEvery(body, c)
		}
		if c.every > 0 {
			c.look = practical.Look
		}
		return
	case stirsAlways(body), stirsOften(body) && shortTime(c):
		c.look = practical.Stay
		return
	}
	c.look = practical.Look
	if c.every != 0 {
		return
	}
	c.every = 5
	if c.verb.name == "simmer" || c.verb.name == "stew" || c.verb.name == "braise" || c.verb.name == "steam" {
		c.every = 10
	}
	if stirsOften(body) {
		c.every = 3
	}
}

func stirsAlways(body []token) bool {
	return (hasAny(body, "constantly", "continuously", "continually") || has(body, "all the time", "the whole time", "keep stirring", "without stopping", "constant stirring", "active stirring", "vigorously", "keep whisking")) && has(body, "stir", "whisk", "beat", "turn", "toss", "move")
}

func stirsSometimes(body []token) bool {
	return has(body, "occasionally", "occasional", "from time to time", "now and then", "now and again", "every now", "every so often", "once or twice", "halfway", "half way", "half-way", "regularly", "often", "frequently")
}

func stirsOften(body []token) bool {
	if has(body, "often", "frequently", "regularly") {
		return true
	}
	for i, t := range body {
		if t.is("stirring", "whisking", "tossing") && i > 0 && (at(body, i+1).kind != word || at(body, i+1).is("until", "till", "so")) {
			return true // "for 5 minutes, stirring"
		}
	}
	return false
}

// staysUpTo is the minutes up to which what is stirred often keeps the hands at the pan: common practice, no source.
const staysUpTo = 8

// shortTime says that a clause states minutes in which frequent stirring leaves no time for other work.
func shortTime(c *clause) bool {
	for _, d := range c.times {
		if d.role == lasts {
			return d.most <= staysUpTo
		}
	}
	return false
}

// tends are the words for what is done to food while it waits.
var tends = set("turn turning baste basting stir stirring shake shaking toss tossing flip flipping rotate rotating skim skimming swap swapping check checking spin spinning brush brushing spoon spooning fork forking mix mixing whisk whisking top topping fold folding")

// tendedEvery is how often, in minutes, a clause that leaves food somewhere
// says to see to it: "turning after 12 minutes", "basting every 10", "giving
// them a shake halfway", "stirring once or twice"; 0: never.
func tendedEvery(body []token, c *clause) int {
	said := 0
	for _, d := range c.times {
		if d.role == lasts {
			said = d.least
			break
		}
	}
	for i, t := range body {
		if i+c.from <= c.at || !tends[t.text] || !strings.HasSuffix(t.text, "ing") && !at(body, i-1).is("a", "good", "quick", "gentle", "little") {
			continue
		}
		for _, d := range c.times {
			if (d.role == refersBack || d.role == describes || d.role == ends) && d.from > c.from+i && d.from-c.from-i < 10 && d.least < 60 {
				return d.least
			}
		}
		return often(body[i:min(i+12, len(body))], said)
	}
	return 0
}

// often is how many minutes lie between two looks by words without a figure, when the wait lasts some minutes; 0: no such words.
func often(ts []token, said int) int {
	if said == 0 {
		said = 30
	}
	switch {
	case has(ts, "once or twice", "twice", "two or three times"):
		return max(said/3, 1)
	case has(ts, "halfway", "half way", "half-way", "midway", "once", "half time", "half-time"), has(ts, "part way"):
		return max(said/2, 1)
	case stirsOften(ts):
		return max(said/6, 3)
	case stirsSometimes(ts):
		return max(said/4, 5)
	}
	return 0
}

package recipe

import (
	"plait.example/internal/practical"
)

// attention says how closely a wait is to be watched.
func (cx *context) attention(body []token, c *clause) {
	switch {
	case c.look != "":
	case c.place != practical.AtHob:
		c.look = practical.Leave
		if c.every > 0 {
			c.look = practical.Look
		}
		return
	case stirsAlways(body):
		c.look = practical.Stay
		return
	default:
		c.look = practical.Look
	}
	if c.look == practical.Look && c.every == 0 {
		c.every = 5
		if c.verb.name == "simmer" || c.verb.name == "stew" || c.verb.name == "braise" || c.verb.name == "steam" {
			c.every = 10
		}
		if has(body, "often", "frequently", "regularly") {
			c.every = 3
		}
	}
}

func stirsAlways(body []token) bool {
	return (hasAny(body, "constantly", "continuously", "continually") || has(body, "all the time", "keep stirring", "without stopping", "constant stirring", "active stirring", "vigorously", "keep whisking")) && has(body, "stir", "whisk", "beat", "turn", "toss", "move")
}

func stirsSometimes(body []token) bool {
	return has(body, "occasionally", "occasional", "from time to time", "now and then", "every now", "every so often", "once or twice", "halfway", "half way", "half-way", "regularly", "often", "frequently")
}

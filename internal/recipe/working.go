package recipe

import "plait.example/internal/practical"

// working handles verbs of hands with a time beside them.
func (cx *context) working(body []token, c *clause, said *duration) {
	named := placeWords(body)
	c.place = ""
	if leavesFridge(body, said) {
		c.wait, c.place = true, practical.AtSide
		cx.attention(body, c)
		return
	}
	if c.verbIs("turn", "switch", "light") && has(body, "on") && has(body, "oven", "grill") && !has(body, "off", "down") {
		c.verb.deed, c.verb.place = heatsUp, practical.AtOven
		return
	}
	if said == nil && putToCool(body, c) {
		c.verb = verbs["cool"]
		c.wait, c.place, c.look = true, practical.AtSide, practical.Leave
		return
	}
	if said != nil && c.every > 0 && tends[c.verb.name] && said.from < c.at {
		c.wait, c.place = true, practical.AtSide // "2 hours, turn it every 30 minutes"
		if hotPlace(cx.place) {
			c.place = cx.place
		}
		cx.attention(body, c)
		return
	}
	if c.verb.name == "get" && has(body, "oven") && hasAny(body, "hot", "on", "heating", "going", "ready") {
		c.verb.deed, c.verb.place = heatsUp, practical.AtOven
		return
	}
	if said != nil && said.most >= 4 && cx.place != practical.AtOven && has(body, "to dry", "to steam dry", "to drain", "to cool", "to rest", "to soak", "to set", "to firm", "to harden") {
		c.wait, c.place = true, practical.AtSide
		if named == practical.AtFridge || named == practical.AtFreezer || named == practical.AtWarm {
			c.place = named
		}
		cx.attention(body, c)
		return
	}
	if has(body, "simmering water", "bain marie", "bain-marie", "double boiler") && !has(body, "into the", "add") {
		c.place = practical.AtHob
	}
	if named == practical.AtHob || named == "" && cx.place == practical.AtHob && (c.verbIs("stir", "deglaze", "ladle", "scramble", "thicken") || c.verbIs("whisk") && has(body, "sauce", "milk", "roux", "stock", "custard", "broth", "gravy", "bits")) && !has(body, "bowl", "jug", "peaks", "batter", "dough") {
		c.place = practical.AtHob
	}
	if named == "" && c.verbIs("stir") && has(body, "saucepan", "pan") && has(body, "until") && !has(body, "into", "tin") {
		c.place = practical.AtHob
	}
	if named == "" && cx.place == practical.AtHob && (said != nil && c.verbIs("stir", "continue", "keep", "mix", "toss", "begin", "work", "beat") || stirsAlways(body)) && !has(body, "bowl", "jug", "dough", "peaks", "batter", "board", "processor", "mixer", "cool", "cold", "cooled") {
		c.place = practical.AtHob
	}
	if named == "" && c.verbIs("stir", "whisk") && has(body, "until") && hasAny(body, "boils", "boiling", "bubbles", "bubbling", "simmers") {
		c.place = practical.AtHob
	}
	if said != nil && named == "" && ovenStated(c) {
		named = practical.AtOven
	}
	if said == nil {
		if named == practical.AtOven && !c.verbIs("turn", "line", "grease", "prepare", "check", "wipe", "remove", "take", "open") && has(body, "in", "into") && has(body, "put", "place", "pop", "back") || named == practical.AtOven && c.verbIs("take", "slide", "push", "throw") && has(body, "to the oven", "into the oven", "in the oven") {
			c.wait, c.place = true, named
			cx.attention(body, c)
		}
		return
	}
	if cx.place == practical.AtOven && named == "" && c.verbIs("remove", "take", "lift") && has(body, "beans", "foil", "lid", "paper") {
		named = practical.AtOven
	}
	switch {
	case c.verbIs("drain", "press", "strain", "dry", "dissolve", "salt", "hang") && said.most >= 5,
		named == practical.AtOven || named == practical.AtFridge || named == practical.AtFreezer || named == practical.AtGrill || named == practical.AtMicrowave || named == practical.AtWarm:
		c.wait, c.place = true, practical.AtSide
		if named != "" && named != practical.AtHob {
			c.place = named
		}
		if c.place == practical.AtGrill {
			c.look = practical.Stay
		}
		cx.attention(body, c)
	case c.verbIs("cover", "wrap"):
		c.wait, c.place = true, practical.AtSide
		cx.attention(body, c)
	}
}

// head is the clause up to its "until".
func head(body []token) []token {
	for i, t := range body {
		if t.is("until", "till", "so") {
			return body[:i]
		}
	}
	return body
}

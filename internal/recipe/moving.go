package recipe

import "plait.example/internal/practical"

// leavesFridge says that food is taken out of the cold some time before it is wanted.
func leavesFridge(body []token, said *duration) bool {
	if said != nil && said.most >= 5 && hasAny(body, "pull", "take", "get", "bring", "lift") && hasAny(body, "out") && hasAny(body, "ahead", "beforehand", "earlier") {
		return true // "pull the chicken out 30 minutes ahead"
	}
	if said != nil && said.most >= 5 && hasAny(body, "get", "take", "bring") && hasAny(body, "out") && hasAny(body, "pastry", "butter", "meat", "steak", "steaks", "beef", "lamb", "chicken", "joint", "cheese") && placeWords(body) == "" && !hasAny(body, "pan", "tin", "water", "bowl") {
		return true // "get the pastry out, about 10 minutes"
	}
	return said != nil && said.most >= 5 && has(body, "out of the fridge", "out of fridge", "from the fridge", "out of the refrigerator", "from the refrigerator", "from fridge", "out of the freezer", "from the freezer", "to room temperature", "come to room")
}

// changesOven says that a clause turns the oven up or down.
func changesOven(body []token, c *clause) bool {
	return !c.wait && c.verbIs("reduce", "lower", "turn", "increase", "raise", "drop", "switch", "set", "bring") && (ovenStated(c) || hasAny(body, "oven")) && !hasAny(body, "off", "into")
}

// moving handles putting food in a place: it waits there when a time is said, or when the place is one for waiting.
func (cx *context) moving(body []token, c *clause, said *duration) {
	named := placeWords(body)
	if leavesFridge(body, said) {
		c.wait, c.place = true, practical.AtSide
		cx.attention(body, c)
		return
	}
	if said == nil && has(body, "oven") && (c.verb.name == "set" && ovenStated(c) || c.verbIs("switch", "put") && hasAny(body, "on") && !has(body, "shelf", "in", "into", "tray") && (c.verb.name == "switch" || !has(body, "on the oven"))) {
		c.verb.deed, c.verb.place = heatsUp, practical.AtOven
		return
	}
	if (c.verb.name == "bring" || c.verb.deed == moves && named == practical.AtHob && has(body, "to boil")) && has(body, "boil", "simmer", "bubble", "boiling") || has(body, "come to the boil", "come to a boil") {
		c.verb.deed, c.place = boils, practical.AtHob
		c.wait = said != nil
		if c.wait {
			cx.attention(body, c)
		}
		return
	}
	if c.verb.name == "reduce" && !has(body, "heat", "temperature", "oven") && (said != nil || has(body, "until", "by half", "to half", "by a")) {
		c.wait, c.place = true, practical.AtHob
		cx.attention(body, c)
		return
	}
	if said == nil && (c.verbIs("transfer", "place", "put", "set", "pop") && has(body, "rack", "cooling") && !has(body, "drain", "paper", "shelf", "roasting") || putToCool(body, c)) {
		c.verb = verbs["cool"]
		c.wait, c.place, c.look = true, practical.AtSide, practical.Leave
		return
	}
	if said == nil && has(body, "aside") && has(body, "to set", "to harden", "to firm", "to thicken", "to infuse", "to soak", "to rest", "to cool") {
		c.wait, c.place = true, practical.AtSide
		cx.attention(body, c)
		return
	}
	if said == nil {
		if c.verb.deed == moves && (named == practical.AtFridge || named == practical.AtFreezer || named == practical.AtWarm) ||
			c.verb.deed == moves && named == practical.AtOven && !c.verbIs("turn", "reduce", "lower", "increase", "raise", "set") && has(body, "in", "into", "to the oven") {
			c.wait, c.place = true, named
			cx.attention(body, c)
			return
		}
		c.place = ""
		if named == practical.AtHob || c.verbIs("put") && has(body, "on to scald", "on to boil", "on to heat") {
			c.place = named
		}
		return
	}
	if named == "" && c.verb.deed == minor && (littleByLittle(body) || has(body, "over")) && said.most <= 20 {
		c.place = ""
		if cx.place == practical.AtHob && cx.wet {
			c.place = practical.AtHob
		}
		return
	}
	switch {
	case named == "" && has(body, "rest", "resting", "stand", "to cool"):
		c.place = practical.AtSide
	case named == "" && cx.place == practical.AtMicrowave && !has(body, "fridge", "aside"):
		c.place = practical.AtMicrowave
	case named == "" && (ovenStated(c) || cx.oven > 0 && cx.place == practical.AtOven && (has(body, "back in", "back into") || c.verb.name == "return")):
		c.place = practical.AtOven
	case named == "" && has(body, "grill", "broiler"):
		c.place, c.look = practical.AtGrill, practical.Stay
	case named == "" && has(body, "simmer", "flame", "set heat", "the heat low"):
		c.place = practical.AtHob
	case named == "" && cx.place == practical.AtHob && (has(body, "lid", "heat", "cover") || c.verb.deed == minor):
		c.place = practical.AtHob
	case named == "":
		c.place = practical.AtSide
	default:
		c.place = named
	}
	if c.place == practical.AtGrill {
		c.look = practical.Stay
	}
	c.wait = !(c.verb.deed == minor && said.most <= 5) && !(named == "" && said.most <= 1)
	if c.place == practical.AtHob && said.most <= 3 {
		c.wait = false
		return
	}
	cx.attention(body, c)
}

// littleByLittle says that something goes in bit by bit, under the hands.
func littleByLittle(body []token) bool {
	return has(body, "at a time", "gradually", "bit by bit", "little by little", "slowly", "spoonful", "ladleful", "ladle", "steady stream", "thin stream", "drizzle")
}

// putToCool says that food is taken or put somewhere to cool: "remove to a rack to cool completely".
func putToCool(body []token, c *clause) bool {
	return (c.verb.deed == moves || c.verbIs("remove", "take", "turn", "tip", "lift", "slide", "invert", "unmould", "drain", "spread")) &&
		has(body, "to cool", "to go cold", "until cool", "until cold", "till cool", "till cold", "until completely cool", "until completely cold") && !has(body, "before", "oven to", "fridge", "freezer")
}

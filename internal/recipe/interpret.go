package recipe

import "plait.example/internal/practical"

// context is what the method has said so far, as far as later words lean on it.
type context struct {
	place   practical.Place // where the food last was in the heat
	oven    int             // the oven's last stated temperature; 0: none
	ovenWhy string
	grill   bool // the grill was lit
	wet     bool // the pan holds liquid
	lit     bool // the oven was set in this item
}

// interpret decides what a clause asks for: minutes of hands, or a wait and its place.
func (cx *context) interpret(ts []token, c *clause) {
	body := ts[c.from:c.to]
	if c.at < len(ts) && at(ts, c.at-1).is("air") && (c.verb.deed == fries || c.verb.deed == cooks || c.verb.deed == waits) {
		c.verb = verbs["air-fry"]
	}
	if c.verb.name == "grill" && c.at == 0 && at(ts, 1).is("on") && (at(ts, 2).kind != word || at(ts, 2).is("high", "full", "medium") && at(ts, 3).kind != word) {
		c.verb, cx.grill = verb{name: "preheat", deed: heatsUp, place: practical.AtGrill}, true
	}
	c.place = c.verb.place
	if c.verb.deed == heatsUp && has(body, "pan", "skillet", "griddle", "wok", "oil") && !has(body, "oven", "grill") {
		c.verb = verbs["heat"]
	}
	var said *duration
	for i := range c.times {
		if d := &c.times[i]; d.role == lasts && d.from < c.at && c.from == 0 && ts[0].is("after", "once", "when") {
			d.role = refersBack
		}
		if d := &c.times[i]; d.role == lasts && d.to <= c.at && at(ts, d.to).is("before") {
			d.role = ends // "15 minutes before you eat, dress it"
		}
		if d := c.times[i]; d.role == refersBack && d.to <= c.at {
			body = ts[max(c.from, d.to):c.to]
			for k := range body {
				if body[k].is(",") && d.to+k < c.at {
					body = body[k:]
					break
				}
			}
		}
		if c.times[i].role == lasts && said == nil {
			said = &c.times[i]
		} else if c.times[i].role == lasts && joinedTimes(ts, *said, c.times[i]) {
			said.plus(c.times[i])
			said.to = c.times[i].to
		}
		if c.times[i].role == recurs && c.times[i].least > 0 && c.times[i].least < 60 {
			c.every = c.times[i].least
		}
	}
	if said == nil && (c.verb.deed == waits || c.verb.deed == cooks) && has(body, "check", "test", "look") {
		for i := range c.times {
			if d := &c.times[i]; d.from > c.at && (d.role == refersBack || d.role == describes) {
				d.open, d.vague, said = true, true, d // "bake until golden, checking after 20 minutes"
				break
			}
		}
	}
	switch c.verb.deed {
	case waits:
		cx.waiting(body, c, said)
	case cooks:
		cx.cooking(body, c, said)
	case fries:
		cx.frying(body, c, said)
	case moves, minor:
		cx.moving(body, c, said)
	case lets:
		cx.letting(ts, c, said)
	case works:
		cx.working(body, c, said)
	}
	if !c.wait && said != nil && c.hands == nil {
		c.hands = said
	}
	if c.wait {
		c.said = said
	}
	cx.remember(body, c)
}

// joinedTimes says that two times in one clause follow one another: "10 minutes on one side and 5 on the other".
func joinedTimes(ts []token, a, b duration) bool {
	between := ts[a.to:b.from]
	if a.perGrams > 0 && len(between) <= 4 && has(between, "and") {
		return true // "25 minutes to the pound and 25 over"
	}
	return hasAny(between, "plus", "+") || has(between, "one side and", "and") && has(ts[b.to:min(len(ts), b.to+5)], "other side", "the other")
}

// remember keeps what later clauses lean on.
func (cx *context) remember(body []token, c *clause) {
	for _, h := range c.heats {
		if h.oven {
			cx.oven = h.celsius
		}
	}
	if changesOven(body, c) {
		cx.place = practical.AtOven
		return
	}
	switch {
	case c.wait && cx.place == practical.AtHob && (c.place == practical.AtSide && c.verbIs("cool") || c.place == practical.AtFridge || c.place == practical.AtFreezer || c.place == practical.AtWarm),
		cx.place == practical.AtHob && c.verbIs("knead", "roll", "shape"):
		cx.place = ""
	case c.wait && (c.place == practical.AtOven || c.place == practical.AtHob || c.place == practical.AtGrill), c.place == practical.AtMicrowave:
		cx.place = c.place
	case cx.place == practical.AtMicrowave && !namesPan(body) && c.verb.deed != fries && placeWords(body) != practical.AtHob:
	case c.verbIs("put", "return", "place", "set") && has(body, "back on") && !has(body, "plate", "tray", "rack", "lid", "top"):
		cx.place = practical.AtHob
	case c.place == practical.AtHob || namesPan(body) && !(has(body, "kettle") && c.verb.deed != boils):
		cx.place = practical.AtHob
	case c.verb.deed == heatsUp && has(body, "grill", "broiler"):
		cx.place = practical.AtGrill
	case c.verb.deed == heatsUp:
		cx.place, cx.lit = practical.AtOven, ovenStated(c)
		return
	case has(body, "baking tray", "baking sheet", "tin", "oven dish", "roasting tin", "baking dish", "pie dish"):
		cx.place = practical.AtOven
	}
	if cx.place == practical.AtHob && (leavesPan(body, c) || c.wait && c.place == practical.AtSide && has(body, "cold water", "sink", "ice")) {
		cx.place = ""
	}
	if offHeat(body) && !c.wait && c.hands == nil {
		cx.place = ""
	}
	if has(body, "water", "stock", "milk", "broth", "wine", "tomatoes", "tomato", "cream", "passata", "boil", "simmer", "soup", "coconut milk", "juice") {
		cx.wet = true
	}
	if c.verb.deed == fries || has(body, "heat", "melt") && has(body, "oil", "butter", "fat", "lard") {
		cx.wet = false
	}
	if has(body, "grill", "broiler") && has(body, "preheat", "heat", "turn on", "light") {
		cx.grill = true
	}
}

// waiting handles verbs of leaving: bake, simmer, prove, chill.
func (cx *context) waiting(body []token, c *clause, said *duration) {
	c.wait = !has(body, "as above", "as before", "as directed above")
	if !c.wait {
		return
	}
	named := placeWords(body)
	switch c.verb.name {
	case "bake", "roast":
		if c.verb.name == "roast" && said != nil && said.most <= 5 && named == "" && cx.place != practical.AtOven {
			cx.frying(body, c, said) // spices in a dry pan
			return
		}
		if named == practical.AtHob && has(body, "pan", "skillet") {
			c.place = practical.AtHob
		}
	case "grill", "broil":
		if has(body, "grill pan", "griddle", "in the pan", "barbecue", "flame", "skillet") || c.verb.name == "grill" && cx.place == practical.AtHob && !cx.grill && !has(body, "under") {
			cx.frying(body, c, said)
			return
		}
		c.look = practical.Stay
	case "braise", "casserole", "stew", "steam", "poach":
		if c.verb.name == "steam" && has(body, "steam dry", "dry") {
			c.place = practical.AtSide
			break
		}
		if named == practical.AtOven || ovenStated(c) {
			c.place = practical.AtOven
		}
	case "sweat", "soften", "caramelise", "caramelize", "render":
		cx.frying(body, c, said)
		return
	case "marinate", "marinade":
		c.place = practical.AtFridge
		if named == practical.AtSide {
			c.place = practical.AtSide
		}
	case "rise", "prove", "proof", "ferment", "cool", "rest", "stand", "soak", "infuse", "steep", "macerate", "thaw", "defrost", "bloom":
		if named == practical.AtFridge || named == practical.AtFreezer || named == practical.AtWarm {
			c.place = named
		}
		if c.verb.name == "cool" && said == nil && has(body, "tap", "running water", "cold water") && !has(body, "until", "leave") {
			c.wait, c.place = false, ""
			return
		}
		if c.verb.name == "stand" && said == nil && has(body, "stand the", "stand it", "stand them") && has(body, "in", "on") && !has(body, "until", "let", "leave") {
			c.wait, c.place = false, ""
			return
		}
	case "boil", "simmer", "parboil", "blanch", "scald", "bubble":
		if stirsAlways(body) && (said == nil || said.most <= 12) {
			c.wait = false
			return
		}
		if c.verb.name == "scald" && said == nil || said != nil && said.most <= 2 {
			c.wait = false
			return
		}
	}
	cx.attention(body, c)
}

func ovenStated(c *clause) bool {
	for _, h := range c.heats {
		if h.oven {
			return true
		}
	}
	return false
}

// cooking handles verbs that take their place from the words around: cook, heat, toast, warm.
func (cx *context) cooking(body []token, c *clause, said *duration) {
	named := placeWords(body)
	if named == "" && ovenStated(c) {
		named = practical.AtOven
	}
	if named == practical.AtSide || named == practical.AtFridge || named == practical.AtWarm {
		named = ""
	}
	if c.verb.name == "air-fry" || has(body, "air fryer") {
		named = practical.AtOven
	}
	if c.verb.name != "cook" && (named == practical.AtOven && has(body, "oven") && said == nil && ovenStated(c) || has(body, "heat the oven", "heat oven", "heat your oven", "warm the oven")) {
		c.verb.deed = heatsUp
		c.verb.place = practical.AtOven
		return
	}
	if named == practical.AtGrill && said == nil && c.verb.name == "heat" {
		c.verb.deed = heatsUp
		cx.grill = true
		return
	}
	if named == "" && cx.place == practical.AtMicrowave && !namesPan(body) {
		named = practical.AtMicrowave
	}
	if named == "" && cx.place == practical.AtOven && said != nil && hasAny(body, "further", "final", "another", "more") && !namesPan(body) && !has(body, "stirring", "simmer", "boil") {
		named = practical.AtOven
	}
	if named == "" && cx.place == practical.AtGrill && said != nil && said.most <= 30 && !namesPan(body) {
		named = practical.AtGrill
	}
	if named == "" {
		named = practical.AtHob
		if cx.place == practical.AtOven && said != nil && (said.least >= 8 || cx.lit && said.least >= 4) && c.verb.name == "cook" && !namesPan(body) && !has(body, "oil", "butter", "pasta", "rice", "potatoes", "noodles", "water", "heat", "onion", "spaghetti", "stirring", "gently", "juice", "simmer") {
			named = practical.AtOven
		}
		if c.verb.name == "toast" && has(body, "bread", "slices", "muffin", "bagel") && !namesPan(body) {
			named = practical.AtGrill
		}
	}
	c.place = named
	if named != practical.AtHob {
		c.wait = said != nil || named == practical.AtOven
		if named == practical.AtGrill {
			c.look = practical.Stay
		}
		cx.attention(body, c)
		return
	}
	if said == nil && c.verb.name != "cook" {
		return // heat the oil: a minute or two of hands
	}
	liquid := cx.wet || has(body, "water", "boiling", "covered", "lid", "simmer", "stock", "milk", "pasta", "rice", "noodles", "potatoes", "low heat", "gently", "slow", "broth")
	if has(head(body), "oil", "butter", "frying pan", "skillet", "wok") || !has(body, "sauce", "soup") && has(body, "brown", "golden", "soft", "softened", "translucent", "fragrant", "crisp") && !has(body, "water", "boil", "boiling", "simmer", "stock", "covered", "broth", "thickens", "gently") {
		liquid = false
	}
	if sides(body) {
		liquid = false
	}
	if !liquid || stirsAlways(body) || said != nil && said.most <= 3 && !has(body, "pasta", "water", "cover") {
		cx.frying(body, c, said)
		return
	}
	c.wait = true
	cx.attention(body, c)
}

// frying handles what the hands stay at. A long gentle fry is a wait with looks.
func (cx *context) frying(body []token, c *clause, said *duration) {
	c.place, c.wait = practical.AtHob, false
	if placeWords(body) == practical.AtOven || ovenStated(c) && !has(body, "oil") {
		c.place, c.wait = practical.AtOven, true
		cx.attention(body, c)
		return
	}
	if said == nil || said.most <= 10 && !(stirsSometimes(body) && said.least >= 8) {
		return
	}
	c.wait, c.look = true, practical.Stay
	if c.verb.deed == cooks || stirsSometimes(body) || has(body, "low heat", "gently", "slowly", "soften", "sweat", "low") {
		c.look = ""
		cx.attention(body, c)
		c.every = min(c.every, 5)
	}
}

func (c *clause) verbIs(names ...string) bool {
	for _, n := range names {
		if c.verb.name == n {
			return true
		}
	}
	return false
}

// offHeat says that a clause ends the cooking at the hob: "take the pan off the heat", "turn off the heat".
func offHeat(body []token) bool {
	return !has(body, "oven") && has(body, "off the heat", "off heat", "heat off", "turn off the", "switch off the", "from the heat", "from heat", "off the hob", "off the stove", "gas off", "off the ring") && !has(body, "back on")
}

// leavesPan says that what was heated goes out of its pan: "pour over the dry ingredients".
func leavesPan(body []token, c *clause) bool {
	return c.verbIs("pour", "tip", "strain", "transfer", "scrape", "spoon") && hasAny(body, "over", "into", "onto", "on") &&
		hasAny(body, "bowl", "ingredients", "flour", "tin", "dish", "jug", "blender", "processor", "mould", "jar", "jars", "flask", "case", "tray", "base", "crust", "yolks", "eggs", "basin", "tub", "liquidiser", "yeast")
}

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
	c.place = c.verb.place
	if c.verb.deed == heatsUp && has(body, "pan", "skillet", "griddle", "wok", "oil") && !has(body, "oven", "grill") {
		c.verb = verbs["heat"]
	}
	var said *duration
	for i := range c.times {
		if d := &c.times[i]; d.role == lasts && d.from < c.at && c.from == 0 && ts[0].is("after", "once", "when") {
			d.role = refersBack
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

// leavesFridge says that food is taken out of the cold some time before it is wanted.
func leavesFridge(body []token, said *duration) bool {
	return said != nil && said.most >= 5 && has(body, "out of the fridge", "out of fridge", "from the fridge", "out of the refrigerator", "from the refrigerator", "from fridge", "out of the freezer", "from the freezer", "to room temperature", "come to room")
}

// joinedTimes says that two times in one clause follow one another: "10 minutes on one side and 5 on the other".
func joinedTimes(ts []token, a, b duration) bool {
	between := ts[a.to:b.from]
	return has(between, "plus") || has(between, "one side and", "and") && has(ts[b.to:min(len(ts), b.to+5)], "other side", "the other")
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
	case c.wait && (c.place == practical.AtOven || c.place == practical.AtHob || c.place == practical.AtGrill):
		cx.place = c.place
	case c.place == practical.AtHob || namesPan(body):
		cx.place = practical.AtHob
	case c.verb.deed == heatsUp && has(body, "grill", "broiler"):
		cx.place = practical.AtGrill
	case c.verb.deed == heatsUp:
		cx.place, cx.lit = practical.AtOven, ovenStated(c)
		return
	case has(body, "baking tray", "baking sheet", "tin", "oven dish", "roasting tin", "baking dish", "pie dish"):
		cx.place = practical.AtOven
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

// changesOven says that a clause turns the oven up or down.
func changesOven(body []token, c *clause) bool {
	return !c.wait && c.verbIs("reduce", "lower", "turn", "increase", "raise", "drop", "switch", "set", "bring") && (ovenStated(c) || hasAny(body, "oven")) && !hasAny(body, "off", "into")
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
	if named == "" && cx.place == practical.AtGrill && said != nil && said.most <= 30 && !namesPan(body) {
		named = practical.AtGrill
	}
	if named == "" {
		named = practical.AtHob
		if cx.place == practical.AtOven && said != nil && (said.least >= 8 || cx.lit && said.least >= 4) && c.verb.name == "cook" && !namesPan(body) && !has(body, "oil", "butter", "pasta", "rice", "potatoes", "noodles", "water", "heat", "onion", "spaghetti", "stirring") {
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

// moving handles putting food in a place: it waits there when a time is said, or when the place is one for waiting.
func (cx *context) moving(body []token, c *clause, said *duration) {
	named := placeWords(body)
	if leavesFridge(body, said) {
		c.wait, c.place = true, practical.AtSide
		cx.attention(body, c)
		return
	}
	if said == nil && has(body, "oven") && (c.verb.name == "set" && ovenStated(c) || c.verbIs("switch", "put") && hasAny(body, "on") && !has(body, "on the oven", "shelf", "in", "into", "tray")) {
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
	if said == nil && c.verbIs("transfer", "place", "put", "set", "pop") && has(body, "rack", "cooling") && !has(body, "drain", "paper", "shelf", "roasting") {
		c.verb = verbs["cool"]
		c.wait, c.place, c.look = true, practical.AtSide, practical.Leave
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
	case named == "" && ovenStated(c):
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

func (c *clause) verbIs(names ...string) bool {
	for _, n := range names {
		if c.verb.name == n {
			return true
		}
	}
	return false
}

// littleByLittle says that something goes in bit by bit, under the hands.
func littleByLittle(body []token) bool {
	return has(body, "at a time", "gradually", "bit by bit", "little by little", "slowly", "spoonful", "ladleful", "ladle", "steady stream", "thin stream", "drizzle")
}

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

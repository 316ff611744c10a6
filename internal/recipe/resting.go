package recipe

import (
	"plait.example/internal/practical"
)

// letting handles "let rise", "leave to cool", "allow to stand": the inner verb decides.
func (cx *context) letting(ts []token, c *clause, said *duration) {
	inner, ok := innerVerb(ts[c.at+1 : c.to])
	body := ts[c.from:c.to]
	if c.verb.name == "give" && said != nil && inner.deed == fries {
		ok = false // "give it 15 minutes to crisp"
	}
	if has(body, "cook off", "cook out", "cook away", "evaporate") && said == nil {
		c.place = practical.AtHob
		return
	}
	if c.verb.name == "keep" && keepsWorking(ts[c.at+1:c.to]) {
		cx.keeping(body, c, said)
		return
	}
	if !ok && has(body, "heat up", "warm up", "get hot") {
		cx.frying(body, c, said)
		return
	}
	if inner.name == "soften" && !has(body, "heat", "pan", "onion", "onions") {
		ok = false
	}
	if ok {
		outer := c.verb
		c.verb = inner
		switch inner.deed {
		case waits:
			c.place = inner.place
			cx.waiting(body, c, said)
		case cooks, fries:
			cx.cooking(body, c, said)
		default:
			c.verb = outer
			cx.resting(body, c, said)
		}
		return
	}
	cx.resting(body, c, said)
}

// resting is leaving food where it is or in the place that is named.
func (cx *context) resting(body []token, c *clause, said *duration) {
	named := placeWords(body)
	if c.verb.name == "wait" && cx.place == practical.AtHob && named == "" && said != nil && !has(body, "cool", "rest", "cold") {
		cx.frying(body, c, said)
		return
	}
	if c.verbIs("let", "give", "allow", "leave") && cx.place == practical.AtHob && named == "" && (has(body, "bubble", "come to the boil", "come to a boil", "come to boil", "reduce", "release", "evaporate", "thicken") || c.verb.name == "give") && !has(body, "cool", "rest", "fridge", "stand") {
		cx.onRing(body, c, said)
		return
	}
	if c.verb.name == "give" && said != nil && named == "" && (cx.place == practical.AtOven || cx.place == practical.AtMicrowave || cx.place == practical.AtGrill) && !has(body, "rest", "stand", "cool") {
		c.wait, c.place = true, cx.place
		cx.attention(body, c)
		return
	}
	if said != nil && said.most <= 2 && cx.place == practical.AtHob && named == "" && c.verbIs("leave", "let", "allow") && !has(body, "cool", "rest", "stand", "aside", "test", "plate", "cover", "lid") {
		c.place = practical.AtHob
		return
	}
	setting := has(body, "set", "firm", "harden", "thicken", "solid")
	if said == nil && named == "" && c.verb.name == "leave" && hasAny(body, "until", "till") && !hasAny(body, "aside") {
		c.wait, c.place = true, practical.AtSide
		if cx.place == practical.AtHob && hasAny(body, "golden", "brown", "browned", "crisp", "bubbling", "bubbles", "thick", "reduced", "underneath") {
			c.place = practical.AtHob
		}
		cx.attention(body, c)
		return
	}
	if said == nil && !setting && has(body, "cold", "cool", "soften", "softened", "room temperature", "lukewarm", "absorb", "puff") && !has(body, "fold") {
		setting = true
	}
	if said == nil && !setting && (named == "" || named == practical.AtSide || named == practical.AtHob) || c.verb.name == "keep" && said == nil {
		c.place = ""
		return
	}
	c.wait, c.place = true, practical.AtSide
	if cx.place == practical.AtOven && (has(body, "inside", "in there", "door ajar", "door shut", "door open", "door closed", "turned off", "switched off") || named == practical.AtOven) {
		named = practical.AtOven
	}
	if named != "" {
		c.place = named
	} else if c.verb.name == "wait" && cx.place == practical.AtHob && has(body, "bubble", "reduce", "simmer", "thick", "sauce") {
		c.place = practical.AtHob
	} else if setting && has(body, "chill", "jelly", "gelatine", "the cold") {
		c.place = practical.AtFridge
	}
	cx.attention(body, c)
}

// keepsWorking says "keep stirring", "keep on mixing".
func keepsWorking(ts []token) bool {
	for i := 0; i < min(3, len(ts)); i++ {
		if ts[i].is("moving") {
			return true
		}
		if v, ok := verbByStem[ts[i].stem]; ok && v.deed == works && len(ts[i].text) > 4 && ts[i].text[len(ts[i].text)-3:] == "ing" {
			return true
		}
	}
	return false
}

// keeping is work that goes on, over the heat when the food is there: with a
// long time and a stir now and then it is a wait with looks.
func (cx *context) keeping(body []token, c *clause, said *duration) {
	named := placeWords(body)
	c.place = ""
	if cx.place == practical.AtHob && named != practical.AtSide || named == practical.AtHob {
		c.place = practical.AtHob
	}
	if said == nil || said.most < 15 && !stirsSometimes(body) {
		return
	}
	c.wait = true
	if c.place == "" {
		c.place = practical.AtSide
	}
	if stirsSometimes(body) || has(body, "once in a while", "every few") {
		cx.attention(body, c)
		return
	}
	c.look = practical.Stay
}

// onRing is food left on the heat: it comes to the boil, or bubbles for some minutes.
func (cx *context) onRing(body []token, c *clause, said *duration) {
	c.place = practical.AtHob
	if said == nil && has(body, "come to") {
		c.verb.deed, c.wait = boils, false
		return
	}
	c.wait = said == nil || said.most > 3
	if said == nil && !has(body, "until", "reduce") {
		c.wait = false
		return
	}
	if c.wait {
		cx.attention(body, c)
	}
}

// innerVerb finds the verb after let, leave, allow: in plain form or with -ing.
func innerVerb(ts []token) (verb, bool) {
	for i, t := range ts {
		if t.kind != word || i > 8 {
			continue
		}
		if at(ts, i-1).is("the", "a", "of") {
			continue
		}
		if t.is("sit", "rest", "resting", "relax", "sitting") {
			return verbs["rest"], true
		}
		if v, ok := verbs[t.text]; ok && (v.deed == waits || v.deed == cooks || v.deed == fries) && !t.is("heat", "warm") {
			return v, true
		}
		if v, ok := waitByStem[t.stem]; ok && len(t.text) > 4 && t.text[len(t.text)-3:] == "ing" {
			return v, true
		}
	}
	return verb{}, false
}

var waitByStem = func() map[string]verb {
	m := map[string]verb{}
	for _, g := range verbGroups {
		if g.deed == waits {
			for _, w := range fieldsOf(g.words) {
				m[stem(w)] = verbs[w]
			}
		}
	}
	return m
}()

package recipe

import "strings"

// apply puts the steps of a recipe right as they were put right before.
func (c *Corrections) apply(r *Recipe) {
	if c == nil || len(c.byWords) == 0 {
		return
	}
	ids, named := map[string]string{}, map[string]string{}
	for _, s := range r.Steps {
		if ownRow(s.ID) {
			continue
		}
		named[s.ID] = sentenceOf(s.Text)
		if key := NormalWords(s.Text); ids[key] == "" {
			ids[key] = s.ID
		}
	}
	for i := range r.Steps {
		one, known := c.For(r.Steps[i].Text)
		if known && !ownRow(r.Steps[i].ID) {
			one.put(r, i, ids, named)
		}
	}
}

// ownRow says whether a step is left to the plan: the oven, a chore, the serving.
func ownRow(id string) bool {
	return id == serveID || strings.HasPrefix(id, ovenID) || strings.HasPrefix(id, choreID)
}

// put puts one step right. What does not fit this recipe is left as it was read.
func (c Correction) put(r *Recipe, i int, ids, named map[string]string) {
	var done []string
	for _, one := range c.Figures {
		f := figureNamed(one.Name)
		if f == nil {
			continue
		}
		old := r.Steps[i]
		was := f.of(old, named)
		if was == one.Now || f.around && was != one.Was {
			continue
		}
		wrong := f.put(&r.Steps[i], one.Now, ids)
		if wrong != "" || f.of(r.Steps[i], named) == was || f.name == "follows" && circular(r.Steps) {
			r.Steps[i] = old
			continue
		}
		done = append(done, f.say(Figure{one.Name, was, one.Now}))
	}
	if len(done) > 0 {
		r.Steps[i].Doubt = 0
		r.Steps[i].Why = append([]string{"your correction of " + c.Day() + ": " + strings.Join(done, "; ")}, r.Steps[i].Why...)
	}
}

// say is a figure as written in the words of people: "hands 8 to 12 minutes,
// likely 10 (read as 8)".
func (f *figure) say(one Figure) string {
	now := f.brief(one.Now)
	if now != none {
		span, likely, more := strings.Cut(now, ", likely ")
		now = span + f.unit
		if more {
			now += ", likely " + likely
		}
	}
	return f.label + " " + now + " (read as " + f.brief(one.Was) + ")"
}

// brief is a figure's text on one line.
func (f *figure) brief(text string) string {
	const longest = 80
	text = strings.ReplaceAll(text, "\n", ", ")
	if runes := []rune(text); len(runes) > longest {
		text = string(runes[:longest-1]) + "…"
	}
	return text
}

// Say is the correction in words, for people.
func (c Correction) Say() string {
	var all []string
	for _, one := range c.Figures {
		if f := figureNamed(one.Name); f != nil {
			all = append(all, f.say(one))
		}
	}
	return strings.Join(all, "; ")
}

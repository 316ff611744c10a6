package recipe

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"plait.example/internal/practical"
)

// Correction is what a teacher changed of a step, remembered by the step's words.
type Correction struct {
	Words   string   // of the step, as they stood
	Recipe  string   // the dish in which it was put right; may be empty
	Date    string   // YYYY-MM-DD
	Figures []Figure // what was changed, in the order of FigureNames; never empty
}

// Figure is one figure of a step: how it was read and what the teacher made of
// it, both as the file of corrections writes them.
type Figure struct{ Name, Was, Now string }

// Corrections is what a teacher put right, by the words of steps. A nil one is empty.
type Corrections struct {
	byWords map[string]Correction
}

// NewCorrections makes the memory of a list; of two for the same words the later
// in the list stands.
func NewCorrections(list []Correction) *Corrections {
	c := &Corrections{map[string]Correction{}}
	for _, one := range list {
		c.byWords[NormalWords(one.Words)] = one
	}
	return c
}

// All is every correction, the newest first, those of a day by their words.
func (c *Corrections) All() []Correction {
	if c == nil {
		return nil
	}
	list := make([]Correction, 0, len(c.byWords))
	for _, one := range c.byWords {
		list = append(list, one)
	}
	slices.SortFunc(list, func(a, b Correction) int {
		return cmp.Or(cmp.Compare(b.Date, a.Date), cmp.Compare(a.Words, b.Words))
	})
	return list
}

// For is the correction of a step's words.
func (c *Corrections) For(words string) (Correction, bool) {
	if c == nil {
		return Correction{}, false
	}
	one, ok := c.byWords[NormalWords(words)]
	return one, ok
}

// sameWords are spellings that mean the same in a step.
var sameWords = map[string]string{
	"minute": "min", "minutes": "min", "mins": "min", "hours": "hour", "hr": "hour", "hrs": "hour",
	"degrees": "", "degree": "", "the": "", "a": "", "an": "", "your": "", "for": "",
}

// longestKey is how much of a step's words counts, in bytes.
const longestKey = 2000

// NormalWords is a step's words as corrections are found by: stems, without
// capitals, signs, articles and the word that joins it to the step before;
// numbers are kept. "And knead the dough, 8 mins." is "knead dough 8 min".
func NormalWords(words string) string {
	words = sentenceOf(words)
	words = strings.ToValidUTF8(words[:min(len(words), longestKey)], "")
	var out []string
	for _, t := range tokenize(words, 0) {
		w, replaced := sameWords[t.text]
		switch {
		case t.kind == sign:
			continue
		case t.kind == number:
			w = strconv.FormatFloat(t.value, 'g', 6, 64)
		case !replaced:
			w = t.stem
		}
		if w != "" {
			out = append(out, w)
		}
	}
	return strings.Join(out, " ")
}

// Learn is what changed between a step as it stood and as the teacher left it.
// It is false when nothing that is remembered did. named gives the words of the
// steps of the dish by id, for what a step follows.
func Learn(before, after practical.Step, dish string, on time.Time, named map[string]string) (Correction, bool) {
	c := Correction{Words: before.Text, Recipe: dish, Date: on.Format(time.DateOnly)}
	for _, f := range remembered {
		if was, now := f.of(before, named), f.of(after, named); was != now {
			c.Figures = append(c.Figures, Figure{f.name, was, now})
		}
	}
	return c, len(c.Figures) > 0 && NormalWords(c.Words) != ""
}

// Then is a correction with a newer one of the same words made on top of it:
// what had been read stays what had been read. It is false when the newer one
// takes back all that the older one did.
func (c Correction) Then(newer Correction) (Correction, bool) {
	out := newer
	out.Figures = nil
	for _, f := range remembered {
		old, had := c.figure(f.name)
		now, has := newer.figure(f.name)
		switch {
		case has && had:
			now.Was = old.Was
		case had:
			now = old
		}
		if (has || had) && now.Was != now.Now {
			out.Figures = append(out.Figures, now)
		}
	}
	return out, len(out.Figures) > 0
}

func (c Correction) figure(name string) (Figure, bool) {
	i := slices.IndexFunc(c.Figures, func(f Figure) bool { return f.Name == name })
	if i < 0 {
		return Figure{}, false
	}
	return c.Figures[i], true
}

// Day is the day of the correction as people write it: "12 March 2026".
func (c Correction) Day() string {
	day, err := time.Parse(time.DateOnly, c.Date)
	if err != nil {
		return c.Date
	}
	return day.Format("2 January 2006")
}

// Sound is the correction without figures that cannot be put into a step, such as
// minutes out of order. It is false when none is left.
func (c Correction) Sound() (Correction, bool) {
	kept := c
	kept.Figures = nil
	for _, one := range c.Figures {
		f := figureNamed(one.Name)
		scratch := practical.Step{Wait: &practical.Wait{Place: practical.AtOven}}
		if f != nil && f.put(&scratch, one.Now, nil) == "" {
			kept.Figures = append(kept.Figures, one)
		}
	}
	return kept, len(kept.Figures) > 0
}

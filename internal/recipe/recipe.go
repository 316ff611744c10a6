// Package recipe reads the text of recipes into the trade's nouns: ingredients,
// and timed, connected steps, each figure with its reason. It works by rules and
// tables over tokens: no language model, no network, the same answer every time.
// It knows nothing of clocks, kitchens in use, plans or screens.
package recipe

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/practical"
)

// Recipe is one recipe as it was read.
type Recipe struct {
	Title       string
	Serves      int // portions; 0: not said
	Ingredients []practical.Ingredient

	// Steps holds the whole method in the order of the text; a part that the text
	// tells last may be needed by a step before it. Besides the
	// numbered steps ("1", "2", ...) there may be sentences that only turn the
	// oven on ("oven", "oven-2", ...), wash up or tidy ("chore", ...), and the
	// serving ("serve"); Dish leaves those out, because a plan makes rows of its
	// own for them.
	Steps []practical.Step

	Text    string   // the part of the text that the recipe was read from, whole
	Unread  []string // text that was not understood, and notes on what was wrong with it
	Sources []Source // where each step's text stands
	Serve   practical.Serve
}

// Source says where a step's text stands in the text given to Read: the bytes
// from Start up to, not including, End.
type Source struct {
	Step       string
	Start, End int
	Celsius    int    // the temperature that the step's own words state: the oven's, without fan, else that of oil, syrup or food; 0: none
	Technique  string // ID of the technique that the step is, in the technique table; empty: none fits
}

// Read reads every recipe in the text, with the technique table that comes with
// the program and no teacher's corrections. It never fails: what it does not
// understand stands in Unread. A text without any recipe gives one empty
// recipe whose Unread says so.
func Read(text string) []Recipe { return Reader{}.Read(text) }

func emptyNote(text string) []string {
	if strings.TrimSpace(text) == "" {
		return []string{"There is no text here; paste a recipe with its ingredients and its method."}
	}
	return []string{"No recipe was found in this text; a recipe has a list of ingredients and a method in sentences.", strings.TrimSpace(text)}
}

// Dish is the recipe as a dish of a practical, its steps named by the letter:
// "A1", "A2", and so on. Each step's text is made a sentence of its own: it loses
// a joining word ("and", "then"), a last comma, markup, and begins with a capital. Serving is the dish's own row; turning the oven on is
// left to the plan, and its words stay as a reason of the steps that bake.
func (r Recipe) Dish(letter string) practical.Dish {
	d := practical.Dish{
		Letter: letter, Name: r.Title, Portions: r.Serves, Serve: r.Serve,
		Text:        r.Text,
		Ingredients: append([]practical.Ingredient(nil), r.Ingredients...),
		Allergens:   allergens(r.Ingredients),
	}
	left := map[string]bool{}
	for _, s := range r.Steps {
		left[s.ID] = s.ID == serveID || strings.HasPrefix(s.ID, ovenID) || strings.HasPrefix(s.ID, choreID)
	}
	for _, s := range r.Steps {
		if left[s.ID] {
			continue
		}
		s.ID, s.Text, s.Wait = letter+s.ID, sentenceOf(s.Text), withinDay(s.Wait)
		after := s.After
		s.After = nil
		for _, a := range after {
			if left[a.Step] {
				continue
			}
			a.Step = letter + a.Step
			s.After = append(s.After, a)
		}
		d.Steps = append(d.Steps, s)
	}
	d.Steps = inOrder(d.Steps)
	return d
}

// inOrder puts steps after those that they need, and otherwise leaves them as
// they stand: a part that the text tells last may be needed before.
func inOrder(steps []practical.Step) []practical.Step {
	placed, out := map[string]bool{}, make([]practical.Step, 0, len(steps))
	ready := func(s practical.Step) bool {
		return !placed[s.ID] && !slices.ContainsFunc(s.After, func(a practical.After) bool { return !placed[a.Step] })
	}
	for len(out) < len(steps) {
		i := slices.IndexFunc(steps, ready)
		if i < 0 {
			return steps
		}
		placed[steps[i].ID] = true
		out = append(out, steps[i])
	}
	return out
}

// sentenceOf is a piece of the source as a sentence of its own.
func sentenceOf(piece string) string {
	words := strings.Fields(plainText(piece))
	for len(words) > 1 && contains([]string{"and", "then", "but", "&", ","}, strings.ToLower(words[0])) {
		words = words[1:]
	}
	s := strings.TrimRight(strings.Join(words, " "), " ,;:-")
	if r, n := utf8.DecodeRuneInString(s); n > 0 {
		s = string(unicode.ToUpper(r)) + s[n:]
	}
	return s
}

// plainText takes off emphasis and the addresses of links.
func plainText(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if stop := skipLink(s, i); stop > i && s[i] == ']' {
			i = stop - 1
			continue
		}
		if s[i] == '*' || s[i] == '[' || s[i] == ']' || strings.HasPrefix(s[i:], "__") {
			continue
		}
		b.WriteByte(s[i])
	}
	return b.String()
}

// Names of the steps that Dish leaves out; a second one of a kind is "oven-2", and so on.
const (
	OvenStep  = "oven"
	ChoreStep = "chore"
	ServeStep = "serve"

	ovenID  = OvenStep
	choreID = ChoreStep
	serveID = ServeStep
)

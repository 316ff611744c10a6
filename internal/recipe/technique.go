package recipe

import (
	_ "embed"
	"strings"
	"sync"

	"plait.example/internal/practical"
)

// Technique is a row of the technique table. Minutes are for two to four
// portions: judgement, not measured.
type Technique struct {
	ID, Name   string
	Group      int                // 1 to 12: the skill groups of the national subject content for food preparation and nutrition
	Complexity Complexity         // common practice, contested
	Contested  Complexity         // another level that is in use; empty: none
	Learner    practical.Estimate // of hands, for a practised fifteen-year-old
	Skilled    practical.Estimate // of hands, for a skilled cook
	Wait       Span               // minutes without the hands, as a whole
	WaitWhat   string             // what happens meanwhile
	WaitPlace  string             // where
	Watch      bool               // must be watched while the hands work
	Place      string             // what the hands work at: bench, hob, food processor, ...
	Kit        string             // small kit
	Heat       string             // temperature, in words
	Quality    string             // how the cook knows that it is right
	Control    string             // usual control; local rules and the risk assessment decide
	Terms      string             // key terms
	Source     string             // where the figures come from
	Each       bool               // the minutes are for one thing named: a second one adds half as much
	Match      string             // the words that call for it: alternatives parted by ";", terms by "+", words by "/"; the first term is the verb
	Whole      string             // the words that show it in a whole recipe, written the same way; "!" before a term speaks against it

	alternatives []wanted     // Match, read
	whole        [][][]string // Whole, read
}

// Complexity is how hard a technique is held to be.
type Complexity string

// The levels.
const (
	Basic  Complexity = "basic"
	Medium Complexity = "medium"
	High   Complexity = "high"
)

// Span is minutes from least to most; both 0: none.
type Span struct{ Least, Most int }

// Groups names the twelve skill groups; Groups[0] is group 1.
var Groups = [12]string{
	"general practical skills", "knife skills", "preparing fruit and vegetables", "use of the cooker", "use of equipment", "cooking methods",
	"preparing, combining and shaping", "sauce making", "tenderising and marinating", "dough", "raising agents", "setting mixtures",
}

// wanted is one alternative of a technique's words.
type wanted struct {
	verbs []string
	terms [][]string
}

//go:embed techniques.csv
var techniqueCSV []byte

// DefaultTable is the technique table that comes with the program.
var DefaultTable = sync.OnceValue(func() *Table {
	t, faults := ParseTable("techniques.csv", techniqueCSV)
	if len(faults) > 0 {
		panic("recipe: the embedded technique table cannot be read: " + faults.Error())
	}
	return t
})

func readMatch(s string) []wanted {
	var out []wanted
	for _, terms := range readTerms(s) {
		out = append(out, wanted{terms[0], terms[1:]})
	}
	return out
}

// readTerms reads alternatives of terms of words.
func readTerms(s string) (out [][][]string) {
	for alternative := range strings.SplitSeq(s, ";") {
		var terms [][]string
		for term := range strings.SplitSeq(alternative, "+") {
			var words []string
			for w := range strings.SplitSeq(term, "/") {
				words = append(words, strings.ToLower(strings.TrimSpace(w)))
			}
			terms = append(terms, words)
		}
		if len(terms) > 1 || terms[0][0] != "" {
			out = append(out, terms)
		}
	}
	return out
}

// techniqueFor is the most specific technique of the table in use that fits a
// verb of the item and the words around it; nil when none does.
func (it *item) techniqueFor(verb string, ts []token) *Technique {
	if it.table == nil {
		return DefaultTable().find(verb, ts)
	}
	return it.table.find(verb, ts)
}

// find is the most specific technique that fits a verb and the words around it; nil when none does.
func (t *Table) find(verb string, ts []token) *Technique {
	var best *Technique
	score := -1
	for _, at := range t.byVerb[verb] {
		w := &t.Techniques[at.row].alternatives[at.alternative]
		if len(w.terms) > score && w.fits(ts) {
			best, score = &t.Techniques[at.row], len(w.terms)
		}
	}
	return best
}

func (w wanted) fits(ts []token) bool {
	for _, t := range w.terms {
		if !has(ts, t...) {
			return false
		}
	}
	return true
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

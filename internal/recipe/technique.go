package recipe

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
	"sync"
)

// Technique is a row of the technique table. Minutes are for a practised
// fifteen-year-old cooking two to four portions: judgement, not measured.
type Technique struct {
	ID, Name     string
	Group        int    // 1 to 12: the skill groups of the national subject content for food preparation and nutrition
	GroupName    string //
	Complexity   string // basic, medium or high; common practice, contested
	Low          int    // hands minutes
	Likely       int
	High         int
	WaitLow      int // minutes without the hands, as a whole
	WaitHigh     int
	WaitWhat     string
	Watch        bool     // must be watched while the hands work
	Resource     string   // what the hands work at: bench, hob, processor, ...
	Equipment    string   // small kit
	Quality      string   // how the cook knows that it is right
	Safety       string   // usual control
	Terms        string   // technical terms
	Source       string   // where the figures come from
	Each         bool     // the minutes are for one thing named: a second one adds half as much
	Match        string   // the words that call for it: alternatives parted by ";", terms by "+", words by "/"; the first term is the verb
	alternatives []wanted // Match, read
}

// wanted is one alternative of a technique's words.
type wanted struct {
	verbs []string
	terms [][]string
}

//go:embed techniques.csv
var techniqueCSV string

// Techniques is the technique table, in the order of its file.
func Techniques() []Technique { return append([]Technique(nil), techniqueTable()...) }

var techniqueTable = sync.OnceValue(func() []Technique {
	rows, err := csv.NewReader(strings.NewReader(techniqueCSV)).ReadAll()
	if err != nil {
		panic("recipe: the embedded technique table cannot be read: " + err.Error())
	}
	col := map[string]int{}
	for i, name := range rows[0] {
		col[name] = i
	}
	var out []Technique
	for _, r := range rows[1:] {
		get := func(name string) string { return r[col[name]] }
		num := func(name string) int { n, _ := strconv.Atoi(get(name)); return n }
		t := Technique{
			ID: get("id"), Name: get("technique"), Group: num("skill_group_no"), GroupName: get("skill_group"), Complexity: get("complexity"),
			Low: num("hands_on_low"), Likely: num("hands_on_likely"), High: num("hands_on_high"), WaitLow: num("unattended_low"), WaitHigh: num("unattended_high"),
			WaitWhat: get("unattended_what"), Watch: get("must_watch") == "yes", Resource: get("resource_hands_on"), Equipment: get("equipment"),
			Quality: get("quality_checks"), Safety: get("safety_control"), Terms: get("technical_terms"), Source: get("source"), Each: get("each") == "yes", Match: get("match"),
		}
		t.alternatives = readMatch(t.Match)
		out = append(out, t)
	}
	return out
})

func readMatch(s string) []wanted {
	var out []wanted
	for _, alt := range strings.Split(s, ";") {
		terms := strings.Split(strings.TrimSpace(alt), "+")
		if terms[0] == "" {
			continue
		}
		w := wanted{verbs: strings.Split(terms[0], "/")}
		for _, t := range terms[1:] {
			w.terms = append(w.terms, strings.Split(t, "/"))
		}
		out = append(out, w)
	}
	return out
}

// techniqueFor is the most specific technique that fits a verb and the words around it; nil when none does.
func techniqueFor(verb string, ts []token) *Technique {
	var best *Technique
	score := -1
	table := techniqueTable()
	for i := range table {
		for _, w := range table[i].alternatives {
			if len(w.terms) <= score || !contains(w.verbs, verb) || !w.fits(ts) {
				continue
			}
			best, score = &table[i], len(w.terms)
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

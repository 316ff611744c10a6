package check

import (
	_ "embed"
	"slices"
)

// Rules is the rule set in force: which rules are on, how serious each is, its
// wording and its limits. The zero value stands for Usual.
type Rules struct{ list []Rule }

// Rule is one rule: what is data of it, and its test.
type Rule struct {
	Name     string
	Fault    int // of the trade's list of 62 faults; 0: none of them
	Family   string
	Severity Severity
	On       bool
	Times    bool   // it judges by the clock, so only where most rows have a time
	Evidence string // wording, with {places} for what the rule saw
	Question string
	Answer   string
	Limits   []Limit
	test     test
}

// Limit is a figure that a rule goes by.
type Limit struct {
	Name   string
	Value  int
	Unit   string // "minutes", "degrees" (Celsius), "rows", "words", "loads"
	Source string // "common practice, no source", or where it is from
}

// test looks at a plan and tells what it sees.
type test func(v *view, f *asker)

// families are the tests of each family by the rule's name, in the order of the
// families for people.
var families = []struct {
	name  string
	tests map[string]test
}{
	{"clock", clockTests},
	{"pairs", pairTests},
	{"oven and kit", ovenTests},
	{"food", foodTests},
	{"method", methodTests},
	{"hygiene and safety", hygieneTests},
	{"dovetailing", dovetailTests},
	{"words", wordTests},
}

//go:embed rules.yaml
var usualFile []byte

// usual is the rule set that ships, read once.
var usual = mustUsual()

func mustUsual() Rules {
	rules, err := readUsual(usualFile)
	if err != nil {
		panic("rules.yaml: " + err.Error()) // it is built in, and a test reads it
	}
	return rules
}

// Usual is the rule set that ships.
func Usual() Rules { return Rules{list: slices.Clone(usual.list)} }

// List is every rule, in the order of the families.
func (r Rules) List() []Rule {
	if r.list == nil {
		return slices.Clone(usual.list)
	}
	return slices.Clone(r.list)
}

// Named is the rule of this name. False: there is none.
func (r Rules) Named(name string) (Rule, bool) {
	for _, rule := range r.List() {
		if rule.Name == name {
			return rule, true
		}
	}
	return Rule{}, false
}

// limit is the value of one of the rule's limits. Every limit that a test asks
// for is in the file: a test holds that.
func (r Rule) limit(name string) int {
	for _, l := range r.Limits {
		if l.Name == name {
			return l.Value
		}
	}
	panic("rule " + r.Name + " has no limit " + name)
}

// testOf finds a rule's test and family by its name.
func testOf(name string) (family string, t test) {
	for _, f := range families {
		if t := f.tests[name]; t != nil {
			return f.name, t
		}
	}
	return "", nil
}

package check

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// Every test has its entry in the file of rules and every entry its test; each
// of the trade's 62 faults has a rule.
func TestUsualRules(t *testing.T) {
	tests := 0
	for _, f := range families {
		tests += len(f.tests)
	}
	faults := map[int]bool{}
	names := map[string]bool{}
	for _, r := range Usual().List() {
		if names[r.Name] {
			t.Errorf("%s stands twice", r.Name)
		}
		names[r.Name], faults[r.Fault] = true, true
		if r.Family == "" || rank(r.Severity) < 0 || r.Evidence == "" || r.Answer == "" {
			t.Errorf("%s is not complete: %+v", r.Name, r)
		}
		if r.Question == "" && r.Name != "cheap-reordering" {
			t.Errorf("%s asks nothing", r.Name)
		}
		if q := strings.ToLower(r.Question); strings.Contains(q, "forgot") || strings.Contains(strings.ToLower(r.Evidence), "you ") {
			t.Errorf("%s: %q blames", r.Name, q)
		}
		for _, l := range r.Limits {
			if l.Source == "" || l.Unit == "" {
				t.Errorf("%s: limit %s has no source or unit", r.Name, l.Name)
			}
		}
	}
	if tests != len(names) {
		t.Errorf("%d tests, %d rules in the file", tests, len(names))
	}
	for n := 1; n <= 62; n++ {
		if !faults[n] {
			t.Errorf("fault %d has no rule", n)
		}
	}
}

// What a learner is asked gives no figure away that the answer holds.
func TestQuestionsGiveNothingAway(t *testing.T) {
	for _, r := range Usual().List() {
		for _, p := range placesOf(r.Question) {
			switch p {
			case "least", "most", "need", "method", "recipe", "range", "celsius", "minutes", "said":
				t.Errorf("%s: the question says {%s}", r.Name, p)
			}
		}
	}
}

// No finding of any plan of the tests has a place that was not filled.
func TestEveryPlaceIsFilled(t *testing.T) {
	for _, cases := range [][]ruleCase{clockCases, pairCases, ovenCases, foodCases, methodCases, hygieneCases, dovetailCases, wordCases} {
		for _, c := range cases {
			for _, f := range checked(t, c.with, c.bad) {
				for _, text := range []string{f.Evidence, f.Question, f.Answer} {
					if strings.ContainsAny(text, "{}") || strings.Contains(text, "  ") || strings.Contains(text, "''") || strings.HasPrefix(text, ":") {
						t.Errorf("%s: %q", f.Rule, text)
					}
				}
				rule, _ := Usual().Named(f.Rule)
				if f.Evidence == "" || f.Answer == "" || f.Family != rule.Family {
					t.Errorf("%+v", f)
				}
			}
		}
	}
}

// The figures of food safety against what the UK Food Standards Agency
// publishes, as it is republished: a core of 75 C for 30 seconds or 70 C for 2
// minutes; cold at 8 C or below; hot held at 63 C or above; cooled within 90
// minutes; reheated once.
func TestFoodSafetyFigures(t *testing.T) {
	for rule, want := range map[string]string{
		"no-core-check":   "75 C for 30 s, or 70 C for 2 min",
		"raw-left-out":    "8 C or below",
		"cold-dish-out":   "one period of up to 4 h",
		"hot-dish-early":  "63 C or more",
		"hot-into-fridge": "8 C within 90 min",
		"left-warm":       "above 63 C",
		"reheated-twice":  "reheated once",
	} {
		r, _ := Usual().Named(rule)
		if !strings.Contains(r.Answer, want) || r.Severity != Stops {
			t.Errorf("%s (%s) says %q, without %q", rule, r.Severity, r.Answer, want)
		}
	}
}

// Core temperatures that are said to do the same: time at 70 C times ten for
// every z degrees below, z = 7.5 (guidance of the agency for 70 C and 2 minutes).
func TestCoreEquivalents(t *testing.T) {
	if got := 2 / math.Pow(10, 5/7.5); got < 0.4 || got > 0.5 { // 26 s at 75 C; the agency rounds up to 30
		t.Errorf("at 75 C %.2f minutes", got)
	}
}

// The table of jobs reads, and low, likely and high stand in that order.
func TestJobs(t *testing.T) {
	n := 0
	for kind, list := range jobs {
		n += len(list)
		if len(list[len(list)-1].words) > 0 {
			t.Errorf("%s has no line for every other job", kind)
		}
		for _, j := range list {
			if j.Low > j.Likely || j.Likely > j.High {
				t.Errorf("%s: %+v", kind, j.Estimate)
			}
		}
	}
	if n < 80 {
		t.Errorf("only %d jobs", n)
	}
	got := jobOf(&act.Act{Kind: act.Cut, Objects: []string{"chicken", "onion"}}, []string{"dice", "chicken", "and", "onion"})
	if got.Low != 8 { // trimming and dicing meat 5, dicing an onion 3: common practice, no source
		t.Errorf("dicing chicken and onion takes %d at the least", got.Low)
	}
}

func TestReadRules(t *testing.T) {
	rules, faults := ReadRules("ours.yaml", []byte(`
rules:
  in-never-out:
    severity: marks
    question: "What happens to {dish} after {time}?"
  timer-not-set:
    on: false
  gap:
    limits:
      longest: 25
`))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if r, _ := rules.Named("in-never-out"); r.Severity != Marks || r.Question != "What happens to {dish} after {time}?" || !r.On {
		t.Errorf("in-never-out: %+v", r)
	}
	if r, _ := rules.Named("timer-not-set"); r.On {
		t.Error("timer-not-set is still on")
	}
	if r, _ := rules.Named("gap"); r.limit("longest") != 25 || r.Limits[0].Source != "the teacher's" {
		t.Errorf("gap: %+v", r.Limits)
	}
	if r, _ := Usual().Named("gap"); r.limit("longest") != 15 {
		t.Error("a teacher's file has changed the usual rules")
	}
	found := Run(planOf(t, nil, pairCases[0].bad), Options{Rules: rules})
	i := slices.IndexFunc(found, func(f Finding) bool { return f.Rule == "in-never-out" })
	if i < 0 || found[i].Question != "What happens to A after 09:20?" || found[i].Severity != Marks {
		t.Errorf("found:\n%s", shown(found))
	}
}

// A file that a teacher wrote wrongly is told line by line, and changes nothing.
func TestReadRulesFaults(t *testing.T) {
	const text = `rules:
  in-never-outt: {on: false}
  gap:
    on: perhaps
    severity: fatal
    question: "How many {eggs}?"
    limits:
      longest: many
      width: 3
  overrun: 5
extra: 1
`
	rules, faults := ReadRules("ours.yaml", []byte(text))
	var lines []int
	for _, f := range faults {
		lines = append(lines, f.Line)
		if f.File != "ours.yaml" || f.Message == "" || f.Hint == "" || f.Code != practical.Invalid {
			t.Errorf("%+v", f)
		}
	}
	if want := []int{2, 4, 5, 6, 8, 9, 10, 11}; !slices.Equal(lines, want) {
		t.Errorf("faults in lines %v, want %v:\n%v", lines, want, faults)
	}
	if fmt.Sprint(rules.List()[0].Severity, rules.List()[0].On) != fmt.Sprint(Usual().List()[0].Severity, true) {
		t.Error("a file with faults has changed the rules")
	}
	for _, broken := range []string{"rules: [", "\t- x", "rules:\n  gap: {on: *x}", "rules: &a {gap: *a}", "- 1", "rules:\n gap:\n  on: true\n  on: false\n", strings.Repeat("a", mostRules+1)} {
		if _, faults := ReadRules("broken", []byte(broken)); len(faults) == 0 {
			t.Errorf("%.20q: no fault", broken)
		}
	}
	if _, faults := ReadRules("empty", nil); len(faults) > 0 {
		t.Errorf("an empty file changes nothing, and is no fault: %v", faults)
	}
}

// The example in the document reads.
func TestDocumentedRules(t *testing.T) {
	data, err := os.ReadFile("../../docs/checking.md")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	_, after, found := strings.Cut(text, "```yaml\n")
	example, _, closed := strings.Cut(after, "```")
	if !found || !closed {
		t.Fatal("no example")
	}
	if _, faults := ReadRules("docs/checking.md", []byte(example)); len(faults) > 0 {
		t.Error(faults)
	}
	for _, r := range Usual().List() {
		fault := "-"
		if r.Fault > 0 {
			fault = fmt.Sprint(r.Fault)
		}
		if line := fmt.Sprintf("| `%s` | %s | %s |", r.Name, fault, r.Severity); !strings.Contains(text, line) {
			t.Errorf("docs/checking.md has no line %s", line)
		}
	}
}

package check

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"plait.example/internal/practical"
)

// asker turns what a rule saw into findings, in the rule's wording.
type asker struct {
	view  *view
	rule  Rule
	found []Finding
}

// saw is what a rule saw. Its places are filled into the wording by name.
type saw struct {
	rows    []*row // the first is the one that it is about; none: the plan as a whole
	dish    string // letter; empty: that of the first row, if it has one alone
	step    string
	minutes int
	say     map[string]string
}

// limit is the value of one of the rule's limits.
func (f *asker) limit(name string) int { return f.rule.limit(name) }

// tell adds a finding.
func (f *asker) tell(s saw) {
	if s.dish == "" && len(s.rows) > 0 {
		s.dish = s.rows[0].only()
	}
	places := f.places(s)
	find := Finding{
		Rule: f.rule.Name, Fault: f.rule.Fault, Family: f.rule.Family, Severity: f.rule.Severity,
		Dish: s.dish, Step: s.step, Minutes: s.minutes,
		Evidence: fill(f.rule.Evidence, places), Question: fill(f.rule.Question, places), Answer: fill(f.rule.Answer, places),
	}
	for _, r := range s.rows {
		if !slices.Contains(find.Rows, r.Number) {
			find.Rows = append(find.Rows, r.Number)
		}
	}
	if len(find.Rows) > 0 {
		find.Row = find.Rows[0]
	}
	if find.Row > 0 && slices.ContainsFunc(f.found, func(o Finding) bool { return o.Row == find.Row && o.Dish == find.Dish && o.Step == find.Step }) {
		return // told already
	}
	f.found = append(f.found, find)
}

// at tells a finding about rows alone.
func (f *asker) at(rows ...*row) { f.tell(saw{rows: rows}) }

// places is what a wording may name.
func (f *asker) places(s saw) map[string]string {
	p := map[string]string{}
	for _, l := range f.rule.Limits { // first, so that no limit stands in the way of a row
		p[l.Name] = strconv.Itoa(l.Value)
	}
	maps.Copy(p, map[string]string{"minutes": strconv.Itoa(s.minutes), "dish": "the dish", "row": "the plan", "rows": "the plan", "other": "another row", "time": "", "other-time": ""})
	if name := f.view.dish(s.dish); name != "" {
		p["dish"] = name
	}
	if len(s.rows) > 0 {
		p["row"], p["time"] = f.view.quote(s.rows[0]), f.view.clock(s.rows[0].begin)
		var all []string
		for i, r := range s.rows {
			if i == 3 {
				all = append(all, fmt.Sprintf("and %d more", len(s.rows)-3))
				break
			}
			all = append(all, f.view.quote(r))
		}
		p["rows"] = strings.Join(all, "; ")
	}
	if len(s.rows) > 1 {
		p["other"], p["other-time"] = f.view.quote(s.rows[1]), f.view.clock(s.rows[1].begin)
	}
	maps.Copy(p, s.say)
	return p
}

// fill writes what was seen into a wording.
func fill(wording string, places map[string]string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(wording, "{")
		name, after, closed := strings.Cut(rest, "}")
		b.WriteString(before)
		if !found || !closed {
			break
		}
		b.WriteString(places[name])
		wording = after
	}
	return first(b.String())
}

// first makes the first letter of a sentence large.
func first(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return strings.ToUpper(string(r)) + s[n:]
}

// longestQuote is how many letters of a row a finding quotes.
const longestQuote = 70

// quote is a row as a finding says it: row 6, 09:40 'Blind bake at 190C'.
func (v *view) quote(r *row) string {
	text := strings.Join(strings.Fields(r.Text), " ")
	if letters := []rune(text); len(letters) > longestQuote {
		text = strings.TrimSpace(string(letters[:longestQuote])) + " ..."
	}
	when := ""
	if r.timed {
		when = ", " + v.clock(int(r.At))
	}
	return fmt.Sprintf("row %d%s '%s'", r.Number, when, text)
}

// clock writes a time on the practical's clock.
func (v *view) clock(minute int) string {
	hours := 24
	if v.Practical != nil {
		hours = v.Practical.Clock.Hours
	}
	return practical.TimeOfDay(max(0, minute)).Write(hours)
}

// list joins words for people: "a, b and c".
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

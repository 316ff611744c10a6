package practical

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// parse reads a text that must be right.
func parse(t *testing.T, text string) *Practical {
	t.Helper()
	p, faults := Parse("p.yaml", []byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return p
}

func TestParseTellsAllFaultsAtOnceInOrder(t *testing.T) {
	const text = `title: T
clock:
  start: nine
  finish: 12:00
  huors: 24
kitchen: {rings: four, ovens: [{fuel: wood}]}
cooks: 3
dishes:
  - name: Scones
    colour: red
    steps:
      - text: Rub in
        hands: {low: 9, likely: 5, high: 6}
        wait:
          place: oven
      - text: Bake
        hands: 5 min
        wait: {place: oven, celsius: [180, 200]}
        after: A7
        after: A1
      - hands: 5
`
	const want = `p.yaml:3:10: clock.start: "nine" is not a time of day; write it like 09:05
p.yaml:5:3: clock.huors: unknown field "huors"; did you mean "hours"; known here: set-up, start, finish, extra-time, rest-breaks, hours, round
p.yaml:6:18: kitchen.rings: "four" is not a whole number; write a whole number without a unit, such as 15
p.yaml:6:39: kitchen.ovens[0].fuel: "wood" is not known here; one of: electric, fan, gas
p.yaml:7:8: cooks: 3 is out of range; 1 to 2 cooks
p.yaml:10:5: dishes[0].colour: unknown field "colour"; known here: letter, name, portions, recipe, text, ingredients, allergens, steps, serve
p.yaml:13:16: dishes[0].steps[0].hands: the minutes do not rise: low 9, likely 5, high 6; low at most likely, likely at most high
p.yaml:15:11: dishes[0].steps[0].wait.celsius: the wait in the oven has no temperature; give degrees Celsius of an oven without fan, such as 180
p.yaml:17:16: dishes[0].steps[1].hands: minutes were expected here; write one whole number, such as 8, or {low: 6, likely: 8, high: 11}
p.yaml:18:38: dishes[0].steps[1].wait.celsius: one value was expected here, not a list; give one figure in degrees Celsius, of an oven without fan, such as 200; two temperatures are two steps
p.yaml:20:9: dishes[0].steps[1].after: after is given twice; keep one of the two
p.yaml:21:9: dishes[0].steps[2].text: nothing is written here; say what is to be done`
	p, faults := Parse("p.yaml", []byte(text))
	if p != nil {
		t.Error("a practical comes with the faults")
	}
	if diff := cmp.Diff(strings.Split(want, "\n"), strings.Split(faults.Error(), "\n")); diff != "" {
		t.Error(diff)
	}
}

func TestParseRefuses(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"nothing", "", `p.yaml:1: the file is empty; give title, clock and dishes`},
		{"a comment", "# only\n", `p.yaml:1: the file is empty; give title, clock and dishes`},
		{"a word", "scones\n", `p.yaml:1:1: a table of names and values was expected here, not a single value; known here: title, date, clock, rules, kitchen, cooks, dishes, pins, like`},
		{"broken YAML", "title: T\ndishes: [\n", `p.yaml:2:9: the file is not readable as YAML: sequence end token ']' not found; check the indentation, the colons and the quotes near here`},
		{"wrong indentation", "title: T\n  cooks: 1\n", `p.yaml:1:8: the file is not readable as YAML: mapping value is not allowed in this context; check the indentation, the colons and the quotes near here`},
		{"a tab", "title: T\nclock:\n\tstart: 9:00\n", `p.yaml:3:1: the file is not readable as YAML: found character '\t' that cannot start any token; check the indentation, the colons and the quotes near here`},
		{"two documents", "title: T\n---\ntitle: U\n", `p.yaml:3:1: the file holds more than one document; keep one practical in a file, without a second ---`},
		{"not UTF-8", "title: T\n# \xff\n", `p.yaml:2: the file is not UTF-8 text; save it as UTF-8 (plain text)`},
		{"too large", "title: T\n" + strings.Repeat("#\n", 1<<20), `p.yaml: the file has 2097161 bytes; a practical file has at most 2097152 bytes (2 MB)`},
		{"too deep", "title: T\nx: " + strings.Repeat("[", 2000), `p.yaml:2: lists within lists are nested too deeply; at most 100 levels`},
		{"dashes too deep", "title: T\n" + strings.Repeat("- ", 2000), `p.yaml:2: lists within lists are nested too deeply; at most 100 levels`},
		{"deep", "title: T\nx: " + strings.Repeat("[", 200) + strings.Repeat("]", 200), `p.yaml:2:104: the file holds too much; at most 200000 values and 100 levels, aliases written out`},
		{"an alias of nothing", "title: *t\n", `p.yaml:1:8: *t stands for nothing that was named before it; name it first with &t`},
		{"an alias of itself", "title: &t [*t]\n", `p.yaml:1:12: *t stands for nothing that was named before it; name it first with &t`},
		{"starting point", "title: T\nlike: three-in-tree\n", `p.yaml:2:7: like: "three-in-tree" is not a starting point; did you mean "three-in-three"; one of: three-in-three, two-in-two, three-courses`},
		{"starting point in a list", "title: T\nlike: [two-in-two]\n", `p.yaml:2:7: like: "" is not a starting point; one of: three-in-three, two-in-two, three-courses`},
		{"twice", "title: T\ntitle: U\n", `p.yaml:2:1: title: title is given twice; keep one of the two`},
		{"a number for the title's table", "title: {a: 1}\n", `p.yaml:1:8: title: one value was expected here, not a table; write plain text`},
		{"a table for a list", "title: T\ndishes: {name: D}\n", `p.yaml:2:9: dishes: a list was expected here, not a table; write each on a line of its own, after a dash`},
		{"a time in a table", "title: T\nclock: {start: {hour: 9}}\n", `p.yaml:2:16: clock.start: a time of day was expected here, not a table; write it like 09:05`},
		{"a number in quotes", "title: T\ncooks: \"1\"\n", `p.yaml:2:8: cooks: "1" is not a whole number; write a whole number without a unit, such as 15`},
		{"a huge number", "title: T\ncooks: 99999999999999999999\n", `p.yaml:2:8: cooks: "99999999999999999999" is not a whole number; write a whole number without a unit, such as 15`},
		{"yes", "title: T\nrules: {oven-in-set-up: yes}\n", `p.yaml:2:25: rules.oven-in-set-up: "yes" is not true or false; write true or false`},
		{"quantity", "title: T\ndishes: [{name: D, ingredients: [{raw: x, quantity: some}]}]\n", `p.yaml:2:53: dishes[0].ingredients[0].quantity: "some" is not a number; write a number without a unit, such as 2.5`},
	}
	for _, tt := range tests {
		p, faults := Parse("p.yaml", []byte(tt.text))
		if got := faults.Error(); p != nil || got != tt.want {
			t.Errorf("%s:\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

func TestParseTakesRulesOfDashes(t *testing.T) {
	rule := strings.Repeat("-", 300)
	if p := parse(t, "title: T\ndishes:\n  - name: D\n    text: |\n      "+rule+"\n      [ { [ :\n"); !strings.HasPrefix(p.Dishes[0].Text, rule) {
		t.Errorf("%q", p.Dishes[0].Text)
	}
}

func TestAddToAnUnreadableFile(t *testing.T) {
	r := Read("p.yaml", []byte("title: ["))
	r.Add(Faults{{Field: "dishes", Message: "m", Hint: "h"}})
	if r.Practical != nil || len(r.Faults) != 2 {
		t.Errorf("%+v", r)
	}
}

func TestParseRefusesTenThousandSteps(t *testing.T) {
	text := "title: T\ndishes:\n  - name: D\n    steps:\n" + strings.Repeat("      - {text: Stir, hands: 1}\n", 10_000)
	_, faults := Parse("p.yaml", []byte(text))
	if want := "p.yaml:3:5: dishes: there are 10000 steps; at most 200 steps in one practical; a dish has seldom more than 15"; len(faults) != 1 || !strings.Contains(faults.Error(), "there are 10000 steps; at most 200 steps in one practical") {
		t.Errorf("%d faults: %.300v, want %s", len(faults), faults, want)
	}
}

// The classic bomb: nine levels of nine aliases are 387 million values.
func TestParseRefusesAliasBombs(t *testing.T) {
	var b strings.Builder
	b.WriteString("title: T\na0: &a0 [x, x, x, x, x, x, x, x, x]\n")
	for i := range 9 {
		fmt.Fprintf(&b, "a%d: &a%d [%s*a%d]\n", i+1, i+1, strings.Repeat(fmt.Sprintf("*a%d, ", i), 8), i)
	}
	_, faults := Parse("p.yaml", []byte(b.String()))
	if len(faults) != 1 || faults[0].Message != "the file holds too much" {
		t.Errorf("%.500v", faults)
	}
}

func TestParseFillsWhatIsLeftOut(t *testing.T) {
	p := parse(t, "title: T\ndishes:\n  - name: D\n")
	want := threeInThree()
	want.Title, want.Rules.Dishes = "T", 0
	want.Dishes = []Dish{{Letter: "A", Name: "D", Serve: Serve{Heat: AsIs, Minutes: 5}}}
	if diff := cmp.Diff(want, p); diff != "" {
		t.Error(diff)
	}
	if p := parse(t, "title: T\nlike: two-in-two\n"); p.Rules.Dishes != 2 || p.Clock.Finish.String() != "11:00" || !p.Rules.OvenInSetUp {
		t.Errorf("not like two-in-two: %+v", p)
	}
	if p := parse(t, "title: T\nlike: two-in-two\nrules: {dishes: 1, set-up-verbs: []}\nkitchen: {ovens: []}\n"); p.Rules.Dishes != 1 || p.Rules.SetUpVerbs != nil || p.Kitchen.Ovens != nil || p.Kitchen.Rings != 4 {
		t.Errorf("the file does not stand above its starting point: %+v", p)
	}
	if p := parse(t, "title: T\nkitchen: {ovens: [{}]}\n"); p.Kitchen.Ovens[0] != (Oven{Name: "oven", Fuel: Electric, Shelves: 2}) {
		t.Errorf("oven %+v", p.Kitchen.Ovens[0])
	}
}

func TestParseMovesTheClockWithItsStart(t *testing.T) {
	for text, want := range map[string]string{
		"{start: 13:00}":                               "12:30 13:00 16:00",
		"{start: 13.00, finish: 14.30}":                "12:30 13:00 14:30",
		"{set-up: 12:50, start: 1 pm}":                 "12:50 13:00 16:00",
		"{finish: 11:00}":                              "08:30 09:00 11:00",
		"{start: 0915}":                                "08:45 09:15 12:15",
		"{start: 00:10}":                               "00:00 00:10 03:10",
		"{set-up: 22:00, start: 22:30, finish: 24:30}": "22:00 22:30 24:30",
	} {
		c := parse(t, "title: T\nclock: "+text+"\n").Clock
		finish, err := c.Finish.MarshalText()
		if got := fmt.Sprintf("%v %v %s", c.SetUp, c.Start, finish); got != want || err != nil {
			t.Errorf("%s: %s, want %s", text, got, want)
		}
	}
}

func TestParseShortForms(t *testing.T) {
	p := parse(t, `title: T
dishes:
  - name: D
    allergens: milk
    steps:
      - {text: One, hands: 8, uses: ring}
      - {text: Two, hands: {low: 1, likely: 2, high: 3}, why: because, after: []}
      - {text: Three, hands: 3, after: A2}
      - {text: Four, hands: 3, after: {step: A2, least: 5, most: 10}}
      - {text: Five, hands: 3, after: [A3, {step: A4, most: 0}]}
`)
	d := p.Dishes[0]
	ten, zero := 10, 0
	for i, want := range []Step{
		{ID: "A1", Text: "One", Hands: Estimate{6, 8, 11}, Uses: []Kit{Ring}},
		{ID: "A2", Text: "Two", Hands: Estimate{1, 2, 3}, Why: []string{"because"}},
		{ID: "A3", Text: "Three", Hands: Estimate{2, 3, 4}, After: []After{{Step: "A2"}}},
		{ID: "A4", Text: "Four", Hands: Estimate{2, 3, 4}, After: []After{{Step: "A2", Least: 5, Most: &ten}}},
		{ID: "A5", Text: "Five", Hands: Estimate{2, 3, 4}, After: []After{{Step: "A3"}, {Step: "A4", Most: &zero}}},
	} {
		if diff := cmp.Diff(want, d.Steps[i]); diff != "" {
			t.Error(diff)
		}
	}
	if diff := cmp.Diff([]string{"milk"}, d.Allergens); diff != "" {
		t.Error(diff)
	}
}

func TestParseGivesLettersIDsAndOrder(t *testing.T) {
	p := parse(t, `title: T
dishes:
  - name: One
    steps:
      - {text: Weigh, hands: 1, set-up: true}
      - {text: Paste, hands: 1, component: paste}
      - {text: Cream, hands: 1, component: cream}
      - {text: Bake the paste, hands: 1, component: paste}
      - {text: Whip the cream, hands: 1, component: cream}
      - {text: Wash tins, hands: 1, set-up: true}
      - {text: Fill, hands: 1}
      - {id: glaze, text: Glaze, hands: 1, after: }
      - {text: Finish, hands: 1}
  - {letter: A, name: Two, steps: [{text: Stir, hands: 1}]}
  - {name: Three}
`)
	var letters, order []string
	for _, d := range p.Dishes {
		letters = append(letters, d.Letter)
		for _, s := range d.Steps {
			line := s.ID
			for _, a := range s.After {
				line += " after " + a.Step
			}
			order = append(order, line)
		}
	}
	if got := strings.Join(letters, " "); got != "B A C" {
		t.Errorf("letters %s", got)
	}
	want := []string{"B1", "B2", "B3", "B4 after B2", "B5 after B3", "B6", "B7 after B6", "glaze after B7", "B9 after glaze", "A1"}
	if diff := cmp.Diff(want, order); diff != "" {
		t.Error(diff)
	}
}

func TestParseAnchorsAndMerges(t *testing.T) {
	p := parse(t, `title: T
dishes:
  - name: One
    serve: &cold {heat: cold, how: on ice, minutes: 2}
  - name: Two
    serve: *cold
  - name: Three
    serve:
      <<: *cold
      minutes: 4
`)
	want := Serve{Heat: Cold, How: "on ice", Minutes: 2}
	if p.Dishes[1].Serve != want {
		t.Errorf("alias: %+v", p.Dishes[1].Serve)
	}
	want.Minutes = 4
	if p.Dishes[2].Serve != want {
		t.Errorf("merge: %+v", p.Dishes[2].Serve)
	}
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"title: T\n", "title: T\ndishes:\n  - {name: D, steps: [{text: x, hands: 5, after: A1}]}\n", "a: &a [*a]\n", "<<: {title: T}\n", "? [a]\n: b\n", "!!binary x", "- - - -",
		"title: |\n  a\n b\n", "\"\\u", "title: T\n--- \n...\n", "&a : b", "clock: {rest-breaks: [{at: 9.0e9, minutes: -0}]}", "%YAML 9\n---\n", "title: T\r\ncooks: 1\r", "{", "[,", "*", "? ", ": :",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, faults := Parse("f.yaml", data)
		if (p == nil) != (len(faults) > 0) {
			t.Fatalf("practical %v with faults %v", p, faults)
		}
		for _, fault := range faults {
			if fault.Message == "" || fault.Hint == "" || fault.Code == "" {
				t.Fatalf("a fault without words: %+v", fault)
			}
		}
		if p == nil {
			return
		}
		text, err := Write(p)
		if err != nil {
			t.Fatal(err)
		}
		again, faults := Parse("g.yaml", text)
		if len(faults) > 0 || !cmp.Equal(p, again) {
			t.Fatalf("%v\n%s\n%s", faults, text, cmp.Diff(p, again))
		}
	})
}

// Texts that a reader of YAML can take minutes over: each must end at once, as
// wide tables and long rows of tags, anchors and documents do here.
func hostile(bytes int) map[string]string {
	many := func(s string) string { return strings.Repeat(s, bytes/len(s)) }
	return map[string]string{
		"names": many("a: 1\n"), "blocks": many("a: |\n"), "questions": many("? a\n"), "returns": many("a: b\r"), "a row of tables": "{" + many("a: b, ") + "}",
		"anchors": many("&a "), "tags": many("!a "), "documents": many("---\n"), "items": many("- x\n"), "a row": "[" + many("a,") + "]",
	}
}

func TestParseEndsOnHostileTexts(t *testing.T) {
	for name, text := range hostile(100_000) {
		if p, faults := Parse("p.yaml", []byte(text)); p != nil || len(faults) != 1 {
			t.Errorf("%s: %d faults", name, len(faults))
		} else if wide := name == "names" || name == "blocks" || name == "questions" || name == "returns"; wide && faults[0].Code != TooLarge {
			t.Errorf("%s: the library was asked to read it: %v", name, faults)
		}
	}
}

func BenchmarkParseHostile(b *testing.B) {
	for name, text := range hostile(maxBytes - 10) {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if p, _ := Parse("p.yaml", []byte(text)); p != nil {
					b.Fatal("taken for a practical")
				}
			}
		})
	}
}

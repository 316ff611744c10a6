package match

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plait.example/internal/practical"
	"plait.example/internal/practical/practicaltest"
	"plait.example/internal/written"
)

// planOf makes a plan of lines "dish|text".
func planOf(lines ...string) (plan written.Plan) {
	for i, l := range lines {
		dish, text, _ := strings.Cut(l, "|")
		r := written.Row{Number: i + 1, Text: text}
		if dish != "" {
			r.Dishes = strings.Split(dish, "+")
		}
		plan.Rows = append(plan.Rows, r)
	}
	return plan
}

func letters(m Matched) (list []string) {
	for _, r := range m.Rows {
		list = append(list, strings.Join(r.Letters, ""))
	}
	return list
}

// A plan names its dishes by letters of its own: C is the curry, which the
// practical calls A, and Q the quiche; E is nobody's letter.
func TestLettersOfThePlansOwn(t *testing.T) {
	p := readPractical(t, "curry-quiche-eclairs.yaml")
	m := Match(planOf("C|chop onion and ginger", "Q|blind bake", "E|pipe on to tray", "C|fry onion, add paste", "Q|make pastry", "E|melt butter and water"), p, nil)
	if got, want := letters(m), []string{"A", "B", "C", "A", "B", "C"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// The practical's own letters are believed where the rows do not speak against them.
func TestLettersOfThePractical(t *testing.T) {
	p := readPractical(t, "curry-quiche-eclairs.yaml")
	m := Match(planOf("A|get started", "B|start", "C|carry on", "A|take out", "all|wash up"), p, nil)
	if got, want := letters(m), []string{"A", "B", "C", "A", ""}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Colours without a key are found by what the rows of a colour are about.
func TestColoursWithoutAKey(t *testing.T) {
	p := readPractical(t, "curry-quiche-eclairs.yaml")
	plan := planOf("|rub butter into flour", "|melt butter in water", "|fry onion and garlic", "|chill", "|bring to boil, beat in flour", "|add chicken", "|tidy up")
	for i, ink := range []string{"FF0000", "00AA00", "0000FF", "FF0000", "00AA00", "0000FF", "000000"} {
		plan.Rows[i].Ink = ink
	}
	if got, want := letters(Match(plan, p, nil)), []string{"B", "C", "A", "B", "C", "A", ""}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// A key above the rows says which colour is which dish.
func TestColoursWithAKey(t *testing.T) {
	p := readPractical(t, "curry-quiche-eclairs.yaml")
	plan := planOf("|make the filling", "|in oven")
	plan.Dishes = []written.Named{{Name: "Quiche", Shade: "FFFF00"}, {Name: "Eclairs", Shade: "00FFFF"}}
	plan.Rows[0].Shade, plan.Rows[1].Shade = "FFFF00", "00FFFF"
	if got, want := letters(Match(plan, p, nil)), []string{"B", "C"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// What the teacher sets stands, and the other rows are matched around it.
func TestFixedMatchesStand(t *testing.T) {
	p := readPractical(t, "curry-quiche-eclairs.yaml")
	plan := planOf("B|make it", "B|chill", "B|roll and line", "C|pipe")
	m := Match(plan, p, map[int][]string{1: {"B1"}, 4: {}})
	if got := m.Rows[0]; !reflect.DeepEqual(got.Steps, []Step{{ID: "B1", Part: Whole, Sure: 1}}) || got.Sure != 1 {
		t.Errorf("%+v", got)
	}
	if got := m.Rows[3]; len(got.Steps) != 0 || got.Sure != 1 {
		t.Errorf("a row set to no step: %+v", got)
	}
	again := Match(planOf("B|rub in", "B|rub butter into flour", "B|chill"), p, map[int][]string{2: {"B3"}})
	if got := ids(again.Rows[1].Steps); !slices.Equal(got, []string{"B3"}) {
		t.Errorf("the teacher's step: %v", got)
	}
	if got := ids(again.Rows[0].Steps); !slices.Equal(got, []string{"B1"}) {
		t.Errorf("the row before the teacher's: %v", got)
	}
	if got := ids(m.Rows[1].Steps); !slices.Equal(got, []string{"B2"}) {
		t.Errorf("the row after it: %v", got)
	}
}

func TestWithoutPractical(t *testing.T) {
	plan := planOf("Quiche|make pastry", "all|wash up", "Trifle|whip cream", "Quiche|bake", "|tidy")
	if got, want := letters(Match(plan, nil, nil)), []string{"A", "", "B", "A", ""}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	plan.Dishes = []written.Named{{Name: "Trifle", Letter: "T"}, {Name: "Quiche", Letter: "Q"}}
	if got, want := letters(Match(plan, nil, nil)), []string{"Q", "", "T", "Q", ""}; !slices.Equal(got, want) {
		t.Errorf("with letters: %v, want %v", got, want)
	}
}

// Rows that are no step of a recipe have none, and surely so.
func TestChoresAreNoSteps(t *testing.T) {
	p := readPractical(t, "lasagne-pannacotta-rolls.yaml")
	plan := planOf("|Wash hands, put apron on", "|wash up", "|Oven on 180", "|set timer", "|wipe down sides and clean board", "|rest break", "|Sweep the floor")
	for _, r := range Match(plan, p, nil).Rows {
		if len(r.Steps) > 0 || r.Sure < 0.8 {
			t.Errorf("%q: %v, sure %.2f", r.Text, ids(r.Steps), r.Sure)
		}
	}
}

// Any practical and any rows can be matched, the same way twice, to steps that are there.
func TestAnythingCanBeMatched(t *testing.T) {
	texts := []string{"", "make pastry", "put in oven", "take out", "wash up", "serve everything", "fold the pastry", "onions", "sauce in pan, simmer 20", "é🥧", "rice on", "fill tin and chill", "leave to cool"}
	rapid.Check(t, func(t *rapid.T) {
		p := practicaltest.Practical(t)
		known := p.Rows()
		var lines []string
		for range rapid.IntRange(0, 8).Draw(t, "rows") {
			lines = append(lines, rapid.SampledFrom([]string{"", "A", "all", "B+C", "Soup"}).Draw(t, "dish")+"|"+rapid.SampledFrom(texts).Draw(t, "text"))
		}
		plan := planOf(lines...)
		m := Match(plan, p, nil)
		if len(m.Rows) != len(plan.Rows) {
			t.Fatalf("%d rows of %d", len(m.Rows), len(plan.Rows))
		}
		for _, r := range m.Rows {
			for _, s := range r.Steps {
				there := slices.ContainsFunc(known, func(row string) bool { return row == s.ID || strings.HasPrefix(row, s.ID+"/") })
				if !there || s.Sure < 0 || s.Sure > 1 || s.Part == "" {
					t.Fatalf("%q: step %+v", r.Text, s)
				}
			}
			if r.Sure < 0 || r.Sure > 1 {
				t.Fatalf("%q: sure %v", r.Text, r.Sure)
			}
		}
		if again := Match(plan, p, nil); !reflect.DeepEqual(m, again) {
			t.Fatal("matched differently a second time")
		}
	})
}

func ExampleMatch() {
	p := &practical.Practical{Dishes: []practical.Dish{{Letter: "A", Name: "Flapjack", Steps: []practical.Step{
		{ID: "A1", Text: "Melt the butter, sugar and syrup in a pan"},
		{ID: "A2", Text: "Stir in the oats and press into the tin"},
		{ID: "A3", Text: "Bake for 20 minutes", Wait: &practical.Wait{Least: 20, Most: 25, Place: practical.AtOven}},
	}}}}
	plan := written.Plan{Rows: []written.Row{
		{Number: 1, Text: "butter, sugar + syrup in pan till melted"},
		{Number: 2, Text: "add oats, press in tin"},
		{Number: 3, Text: "in oven 20 mins, wash up"},
		{Number: 4, Text: "take out of oven"},
	}}
	for _, r := range Match(plan, p, nil).Rows {
		fmt.Println(r.Number, r.Steps[0].ID, r.Steps[0].Part)
	}
	// Output:
	// 1 A1 whole
	// 2 A2 whole
	// 3 A3 put-in
	// 4 A3 take-out
}

// A class of 24 plans of 60 rows.
func BenchmarkMatch(b *testing.B) {
	var all []example
	for _, folder := range []string{"tuned", "second", "fresh", "last"} {
		all = append(all, readExamples(b, folder)...)
	}
	for i := range all {
		rows := all[i].plan.Rows
		for len(all[i].plan.Rows) < 60 {
			all[i].plan.Rows = append(all[i].plan.Rows, rows[len(all[i].plan.Rows)%len(rows)])
		}
	}
	for b.Loop() {
		steps := 0
		for _, e := range all[:24] {
			for _, r := range Match(e.plan, e.practical, nil).Rows {
				steps += len(r.Steps)
			}
		}
		if steps < 24*30 {
			b.Fatalf("only %d steps", steps)
		}
	}
}

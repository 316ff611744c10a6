package network

import (
	"context"
	"encoding/json"
	"os"
	"slices"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"plait.example/internal/practical"
	"plait.example/internal/practical/practicaltest"
	"plait.example/internal/timeplan"
)

const demonstrationFile = "../../examples/three-in-three.yaml"

// demonstration is the practical that plait demo opens with.
func demonstration(tb testing.TB) *practical.Practical {
	tb.Helper()
	data, err := os.ReadFile(demonstrationFile)
	if err != nil {
		tb.Fatal(err)
	}
	p, faults := practical.Parse(demonstrationFile, data)
	if len(faults) > 0 {
		tb.Fatal(faults)
	}
	return p
}

// edited is a copy with one edit made.
func edited(tb testing.TB, p *practical.Practical, edit func(*practical.Practical)) *practical.Practical {
	tb.Helper()
	q, err := p.Copy()
	if err != nil {
		tb.Fatal(err)
	}
	edit(q)
	return q
}

// longer makes the hands' part of a step longer, in minutes.
func longer(d, i, minutes int) func(*practical.Practical) {
	return func(p *practical.Practical) {
		e := &p.Dishes[d].Steps[i].Hands
		e.Low, e.Likely, e.High = e.Low+minutes, e.Likely+minutes, e.High+minutes
	}
}

// demonstrationPlan is its plan, made once.
var demonstrationPlan = sync.OnceValues(func() (*timeplan.Plan, error) {
	data, err := os.ReadFile(demonstrationFile)
	if err != nil {
		return nil, err
	}
	p, faults := practical.Parse(demonstrationFile, data)
	if len(faults) > 0 {
		return nil, faults
	}
	return Plan(context.Background(), p, Options{Seed: 1})
})

// demonstrated is the demonstration and its plan.
func demonstrated(tb testing.TB) (*practical.Practical, *timeplan.Plan) {
	tb.Helper()
	plan, err := demonstrationPlan()
	if err != nil {
		tb.Fatal(err)
	}
	return demonstration(tb), plan
}

func planAfter(tb testing.TB, p *practical.Practical, before *timeplan.Plan) *timeplan.Plan {
	tb.Helper()
	plan, err := Plan(context.Background(), p, Options{Seed: 1, Before: before})
	if err != nil {
		tb.Fatal(err)
	}
	return plan
}

// stayed counts the rows that stand at the time that they had, and those that
// stand below the row that they stood below.
func stayed(before, after *timeplan.Plan) (times, places int) {
	at, above := map[string]practical.TimeOfDay{}, map[string]string{}
	last := ""
	for _, r := range before.Rows {
		at[r.ID], above[r.ID], last = r.Clock, last, r.ID
	}
	last = ""
	for _, r := range after.Rows {
		if was, known := at[r.ID]; known && was == r.Clock {
			times++
		}
		if was, known := above[r.ID]; known && was == last {
			places++
		}
		last = r.ID
	}
	return times, places
}

// Steps of the demonstration become three minutes longer, one at a time. Of a
// plan in which the hands are hardly ever idle most rows have to move; those that need
// not stay, and nearly all keep their place.
func TestReplanKeepsWhatItCan(t *testing.T) {
	p, before := demonstrated(t)
	var warmTimes, warmPlaces, coldTimes, coldPlaces int
	for _, edit := range []func(*practical.Practical){longer(0, 4, 3), longer(2, 3, 3)} {
		q := edited(t, p, edit)
		warm, cold := planAfter(t, q, before), planAfter(t, q, nil)
		if found := timeplan.Judge(warm); len(found) > 0 {
			t.Errorf("judge: %+v", found)
		}
		if warm.Finish > cold.Finish {
			t.Errorf("finish %s, and %s afresh", warm.Finish, cold.Finish)
		}
		times, places := stayed(before, warm)
		warmTimes, warmPlaces = warmTimes+times, warmPlaces+places
		times, places = stayed(before, cold)
		coldTimes, coldPlaces = coldTimes+times, coldPlaces+places
	}
	t.Logf("of %d rows, %d kept their time and %d their place; afresh %d and %d", 2*len(before.Rows), warmTimes, warmPlaces, coldTimes, coldPlaces)
	if warmTimes < 5*coldTimes/4 || warmPlaces < 5*coldPlaces/4 || warmPlaces < 2*len(before.Rows)*9/10 {
		t.Errorf("%d rows kept their time and %d their place; afresh %d and %d", warmTimes, warmPlaces, coldTimes, coldPlaces)
	}
}

// An edit that asks for nothing else leaves every row where it is.
func TestReplanOfTheSame(t *testing.T) {
	p, before := demonstrated(t)
	for name, edit := range map[string]func(*practical.Practical){
		"nothing":       func(*practical.Practical) {},
		"another title": func(p *practical.Practical) { p.Title = "Thursday" },
		"more time":     func(p *practical.Practical) { p.Clock.Finish += 15 },
		"other words":   func(p *practical.Practical) { p.Dishes[1].Steps[2].Text = "Something else" },
		"set-up longer": longer(0, 0, 1), // there is room before the clock
	} {
		after := planAfter(t, edited(t, p, edit), before)
		if times, _ := stayed(before, after); times < len(before.Rows)-2 {
			t.Errorf("%s: %d of %d rows kept their time", name, times, len(before.Rows))
		}
	}
}

// A step put in at the top of a dish names all steps below it anew; their rows
// are found again by their words.
func TestReplanOfStepsNamedAnew(t *testing.T) {
	p := bare(
		dish("A", hands("A1", 5), hands("A2", 6, "A1"), hands("A3", 7, "A2")),
		dish("B", hands("B1", 8), hands("B2", 9, "B1")))
	for _, words := range []struct{ step, text string }{{"A1", "Chop"}, {"A2", "Fry"}, {"A3", "Stir"}} {
		for i := range p.Dishes[0].Steps {
			if p.Dishes[0].Steps[i].ID == words.step {
				p.Dishes[0].Steps[i].Text = words.text
			}
		}
	}
	before := mustPlan(t, p)
	q := bare(
		dish("A", hands("A1", 1), hands("A2", 5, "A1"), hands("A3", 6, "A2"), hands("A4", 7, "A3")),
		dish("B", hands("B1", 8), hands("B2", 9, "B1")))
	for i, text := range []string{"Wash", "Chop", "Fry", "Stir"} {
		q.Dishes[0].Steps[i].Text = text
	}
	n := translate(q)
	names := n.oldNames(readOld(before))
	if diff := cmp.Diff(map[string]string{"A2": "A1", "A3": "A2", "A4": "A3", "B1": "B1", "B2": "B2"}, names); diff != "" {
		t.Errorf("names (-want +got):\n%s", diff)
	}
	hint := n.hint(before)
	if at, was := n.at(hint.Start[n.steps["A4"].hands]), row(t, before, "A3/hands").At; at != was {
		t.Errorf("the hint for A4 is %s; as A3 it was at %s", at, was)
	}
}

// Whatever the practical and the edit: the plan holds, it is the same each time,
// and where aims are proved with and without the plan from before, they have
// the same value. (Of an aim after one that is not proved nothing follows.)
func TestReplanOfAnyPractical(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := practicaltest.Practical(t)
		before, err := Plan(context.Background(), p, modest)
		if err != nil {
			t.Fatal(err)
		}
		randomEdit(t, p)
		if faults := append(p.Validate(), p.Ready()...); len(faults) > 0 {
			t.Fatalf("the edit left a fault of form: %v", faults)
		}
		o := modest
		cold, err := Plan(context.Background(), p, o)
		if err != nil {
			t.Fatal(err)
		}
		o.Before = before
		warm, err := Plan(context.Background(), p, o)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := Plan(context.Background(), p, o)
		if a, b := asJSON(t, warm), asJSON(t, again); a != b {
			t.Errorf("two plans:\n%s\n%s", a, b)
		}
		for _, f := range timeplan.Judge(warm) {
			t.Errorf("judge: %+v\n%s", f, outline(warm))
		}
		if len(warm.Rows) > 0 && len(cold.Rows) > 0 {
			sameProofs(t, cold.Levels, warm.Levels)
		}
	})
}

// randomEdit makes one edit of one step, of the clock or of the cooks.
func randomEdit(t *rapid.T, p *practical.Practical) {
	d := &p.Dishes[rapid.IntRange(0, len(p.Dishes)-1).Draw(t, "dish")]
	i := rapid.IntRange(0, len(d.Steps)-1).Draw(t, "step")
	switch s := &d.Steps[i]; rapid.SampledFrom([]string{"longer", "wait", "words", "kit", "clock", "cooks", "window"}).Draw(t, "edit") {
	case "longer":
		by := rapid.IntRange(1, 9).Draw(t, "by")
		s.Hands.Low, s.Hands.Likely, s.Hands.High = s.Hands.Low+by, s.Hands.Likely+by, s.Hands.High+by
	case "wait":
		if s.Wait != nil {
			s.Wait.Least++
			s.Wait.Most = 0
		}
	case "words":
		s.Text += " with care"
	case "kit":
		s.Kit = "palette knife"
	case "clock":
		p.Clock.Finish += practical.TimeOfDay(rapid.IntRange(1, 30).Draw(t, "more"))
	case "cooks":
		p.Cooks = 3 - p.Cooks
	case "window":
		p.Rules.Window++
	}
}

func asJSON(t *rapid.T, p *timeplan.Plan) string {
	data, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func sameProofs(t *rapid.T, cold, warm []timeplan.Level) {
	for k := range min(len(cold), len(warm)) {
		if !cold[k].Proved || !warm[k].Proved {
			return
		}
		if cold[k] != warm[k] {
			t.Errorf("afresh %+v, from the plan before %+v", cold[k], warm[k])
		}
	}
}

// BenchmarkReplan plans the demonstration after one step has become three
// minutes longer, one of 18 in turn, from the plan before and afresh.
//
//	go test ./internal/network -run '^$' -bench Replan -benchtime 18x
func BenchmarkReplan(b *testing.B) {
	p, before := demonstrated(b)
	var warm, cold []float64
	for i := range b.N {
		q := edited(b, p, longer(i%3, 1+i/3%6, 3))
		begin := processor()
		planAfter(b, q, before)
		between := processor()
		planAfter(b, q, nil)
		warm = append(warm, (between-begin).Seconds()*1000)
		cold = append(cold, (processor()-between).Seconds()*1000)
	}
	slices.Sort(warm)
	slices.Sort(cold)
	b.ReportMetric(warm[len(warm)/2], "warm-ms")
	b.ReportMetric(warm[len(warm)-1], "warm-ms-worst")
	b.ReportMetric(cold[len(cold)/2], "afresh-ms")
	b.ReportMetric(warm[len(warm)/2]/cold[len(cold)/2], "warm/afresh")
}

package paper

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

var update = flag.Bool("update", false, "write the golden files anew")

// golden compares with a file in testdata, or writes it.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s (-want +got; -update writes it anew):\n%s", name, diff)
	}
}

// samples is the invented plans, by file name.
func samples() map[string]*timeplan.Plan {
	return map[string]*timeplan.Plan{
		"sample": timeplantest.Sample(), "toomuch": timeplantest.TooMuch(), "pair": timeplantest.Pair(),
		"noplan": {
			Title: "Nothing fits", SetUp: 540, Start: 550, Allowed: 555, Hours: 24, Round: 1, Cooks: 1, Status: timeplan.Infeasible, Bound: 600,
			Conflict: []timeplan.Demand{{Name: "finish", Text: "everything ends by 09:15"}},
		},
	}
}

func TestText(t *testing.T) {
	for name, p := range samples() {
		golden(t, name+".txt", Text(p))
	}
}

// onPaper is a plan less what paper does not carry: the minute behind a
// rounded time, names of rows that have no step, threads, and what only
// programs use of demands. Written apart from printed, to hold it.
func onPaper(p *timeplan.Plan) *timeplan.Plan {
	q := *p
	q.Rows = append([]timeplan.Row(nil), p.Rows...)
	q.Threads = nil
	q.Round = max(q.Round, 1)
	q.Cooks = max(q.Cooks, 1)
	for i := range q.Rows {
		r := &q.Rows[i]
		r.At = r.Clock
		if len(r.Steps) == 0 && r.Action != timeplan.Serve {
			r.ID = ""
		}
		if r.Until > 0 {
			r.Until -= r.Until % practical.TimeOfDay(q.Round)
		}
	}
	q.Conflict = append([]timeplan.Demand(nil), p.Conflict...)
	for i := range q.Conflict {
		q.Conflict[i].Name, q.Conflict[i].Step = "", ""
	}
	q.WaysOut = append([]timeplan.WayOut(nil), p.WaysOut...)
	for i := range q.WaysOut {
		q.WaysOut[i].Demand, q.WaysOut[i].Cost = "", 0
	}
	return &q
}

func TestReadTextGivesBack(t *testing.T) {
	for name, p := range samples() {
		got, faults := ReadText(Text(p))
		if len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
		}
		if diff := cmp.Diff(onPaper(p), got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

// anyPlan draws a plan that nobody would make: the form must carry it all the same.
func anyPlan() *rapid.Generator[*timeplan.Plan] {
	clock := rapid.Custom(func(t *rapid.T) practical.TimeOfDay {
		return practical.TimeOfDay(rapid.IntRange(0, 2879).Draw(t, "time"))
	})
	text := rapid.OneOf(
		rapid.SampledFrom([]string{
			"", "all", "-> hob", "Kit: a", "oven", `oven "x"`, "a | b", "out at 10:00", "200 °C, fan", "set to 3", "Waiting (", "Dishes", "| x", "=",
			`\`, `\\`, `a\`, strings.Repeat("long", 60), strings.Repeat(`\`, 150), "two\nlines", "x\u2028y", "Safety:", "finishes 9:05", " | finishes 9:05", "- x", "  - x",
		}),
		rapid.String(), rapid.StringN(0, 300, -1), rapid.StringOf(rapid.RuneFrom([]rune("ab 0:|\\-\n"))),
	)
	id := rapid.OneOf(rapid.SampledFrom([]string{"", "A", "B", "A1", "A2", "B1", "all", "AB"}), text)
	return rapid.Custom(func(t *rapid.T) *timeplan.Plan {
		place := rapid.OneOf(rapid.SampledFrom([]practical.Place{"", practical.AtOven, practical.AtHob, practical.AtHands, practical.Served, practical.AtWarm, "moon"}))
		number := rapid.IntRange(-5, 400)
		p := &timeplan.Plan{
			Title: text.Draw(t, "title"), Date: rapid.SampledFrom([]string{"", "2026-11-25", "tomorrow", "0001-01-01"}).Draw(t, "date"),
			SetUp: clock.Draw(t, "set-up"), Start: clock.Draw(t, "start"), Finish: clock.Draw(t, "finish"), Allowed: clock.Draw(t, "allowed"),
			Hours: rapid.SampledFrom([]int{0, 12, 24}).Draw(t, "hours"), Round: rapid.SampledFrom([]int{0, 1, 5}).Draw(t, "round"), Cooks: rapid.IntRange(0, 3).Draw(t, "cooks"),
			Status: rapid.SampledFrom([]timeplan.Status{"", timeplan.Optimal, timeplan.Feasible, timeplan.Infeasible}).Draw(t, "status"),
			Bound:  clock.Draw(t, "bound"), Over: rapid.IntRange(-1, 90).Draw(t, "over"), Seed: rapid.Int64().Draw(t, "seed"),
			Notes: rapid.SliceOfN(text, 0, 3).Draw(t, "notes"),
		}
		p.Dishes = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) timeplan.Dish {
			return timeplan.Dish{Letter: id.Draw(t, "letter"), Name: text.Draw(t, "name"), Heat: rapid.SampledFrom([]practical.Heat{"", practical.Hot, practical.Cold, practical.AsIs}).Draw(t, "heat"), Allergens: rapid.SliceOfN(text, 0, 2).Draw(t, "allergens")}
		}), 0, 3).Draw(t, "dishes")
		p.Rows = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) timeplan.Row {
			return timeplan.Row{
				ID: id.Draw(t, "id"), At: clock.Draw(t, "at"), Clock: clock.Draw(t, "clock"), Minutes: number.Draw(t, "minutes"), Dish: id.Draw(t, "dish"),
				Action: rapid.SampledFrom([]timeplan.Action{timeplan.SetUp, timeplan.Do, timeplan.PutIn, timeplan.TakeOut, timeplan.TurnTo, timeplan.WashUp, timeplan.Serve, timeplan.Rest, "dance"}).Draw(t, "action"),
				Place:  place.Draw(t, "place"), Oven: id.Draw(t, "oven"), Celsius: number.Draw(t, "celsius"), Setting: text.Draw(t, "setting"),
				Steps: rapid.SliceOfN(id, 0, 3).Draw(t, "steps"), Text: text.Draw(t, "text"), Kit: text.Draw(t, "kit"), Check: text.Draw(t, "check"), Safety: text.Draw(t, "safety"),
				Cook: rapid.IntRange(-1, 3).Draw(t, "cook"), Pinned: rapid.Bool().Draw(t, "pinned"), Outside: rapid.Bool().Draw(t, "outside"), Until: clock.Draw(t, "until"),
			}
		}), 0, 5).Draw(t, "rows")
		p.Waits = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) timeplan.Wait {
			return timeplan.Wait{
				Step: id.Draw(t, "step"), Dish: id.Draw(t, "dish"), Place: place.Draw(t, "place"), From: clock.Draw(t, "from"), Until: clock.Draw(t, "until"),
				Least: number.Draw(t, "least"), Most: number.Draw(t, "most"), Celsius: number.Draw(t, "celsius"), Oven: id.Draw(t, "oven"),
				Attention: rapid.SampledFrom([]practical.Attention{"", practical.Look, practical.Stay, practical.Leave}).Draw(t, "attention"), Every: number.Draw(t, "every"),
			}
		}), 0, 3).Draw(t, "waits")
		p.Ovens = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) timeplan.Setting {
			return timeplan.Setting{Oven: id.Draw(t, "oven"), Celsius: number.Draw(t, "celsius"), Words: text.Draw(t, "words"), Turned: clock.Draw(t, "turned"), Hot: clock.Draw(t, "hot"), Until: clock.Draw(t, "until")}
		}), 0, 2).Draw(t, "ovens")
		p.Conflict = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) timeplan.Demand { return timeplan.Demand{Text: text.Draw(t, "demand")} }), 0, 2).Draw(t, "conflict")
		p.WaysOut = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) timeplan.WayOut {
			return timeplan.WayOut{Text: text.Draw(t, "way"), Finish: clock.Draw(t, "finish")}
		}), 0, 2).Draw(t, "ways out")
		return p
	})
}

// TestTextRoundTrip: for any plan at all, what is read back is what is on
// paper, and writing that again gives the same bytes in 100 columns.
func TestTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlan().Draw(t, "plan")
		written := Text(p)
		for _, line := range strings.Split(string(written), "\n") {
			if utf8.RuneCountInString(line) > columns {
				t.Errorf("%d columns: %q", utf8.RuneCountInString(line), line)
			}
		}
		got, faults := ReadText(written)
		if len(faults) > 0 {
			t.Fatalf("%v\n%s", faults, written)
		}
		if diff := cmp.Diff(printed(p), got); diff != "" {
			t.Fatalf("-printed +read:\n%s\n%s", diff, written)
		}
		if again := Text(got); !bytes.Equal(written, again) {
			t.Fatalf("written again:\n%s", cmp.Diff(string(written), string(again)))
		}
	})
}

// FuzzReadText: no text makes the reader panic, and what it reads without a
// fault it writes and reads again as the same.
func FuzzReadText(f *testing.F) {
	for _, p := range samples() {
		f.Add(Text(p))
	}
	f.Add([]byte("x\n=\nTime Min Step Action What to do\n09:00 1"))
	f.Fuzz(func(t *testing.T, b []byte) {
		p, _ := ReadText(b)
		once := Text(p)
		again, faults := ReadText(once)
		if len(faults) > 0 {
			t.Fatalf("%v in\n%s", faults, once)
		}
		if diff := cmp.Diff(string(once), string(Text(again))); diff != "" {
			t.Fatal(diff)
		}
	})
}

// TestReadTextFaults: a fault has its line, and the rest is read all the same.
func TestReadTextFaults(t *testing.T) {
	text := string(Text(timeplantest.TooMuch()))
	for _, test := range []struct{ name, from, to, field, message string }{
		{"time", "09:09    1", "9h09     1", "clock", `"9h09" is not a time of day; write it like 09:05`},
		{"minutes", "09:10   14", "09:10  ten", "minutes", `"ten" is not a number`},
		{"action", "PUT-IN    Add", "INTO      Add", "action", `"INTO" is not an action`},
		{"place", "-> out at 09:50 | warm place", "-> out at 09:50 | attic", "rows", `"attic" is neither a time, a place nor a setting`},
		{"label", "Safety: Claw grip.", "Claw grip.", "rows", `"Claw grip." has no label`},
		{"wait", "needs 40 to 75 minutes", "needs patience", "waits", `"needs patience" is not a part of a wait`},
		{"finish", "Does not fit: finishes 10:14", "Ready about 10:14", "", `"Ready about 10:14, 14 minutes over. No plan can finish before 10:12." is not a line of the heading`},
		{"part", "Dishes", "Drinks", "", `"Drinks" is not a part of a plan`},
	} {
		t.Run(test.name, func(t *testing.T) {
			before, _, ok := strings.Cut(text, test.from)
			if !ok {
				t.Fatalf("the sample has no %q", test.from)
			}
			_, faults := ReadText([]byte(strings.Replace(text, test.from, test.to, 1)))
			if len(faults) == 0 {
				t.Fatal("no fault")
			}
			f := faults[0]
			if f.Line != 1+strings.Count(before, "\n") || f.Field != test.field || f.Message != test.message {
				t.Errorf("line %d, field %q: %s", f.Line, f.Field, f.Message)
			}
		})
	}
}

// TestSecondReading: a plan read back from its own print is judged by the
// same rules as the plan.
func TestSecondReading(t *testing.T) {
	for name, p := range samples() {
		got, _ := ReadText(Text(p))
		if found := timeplan.Judge(got); len(found) > 0 {
			t.Errorf("%s: %+v", name, found)
		}
	}
	spoiled := strings.Replace(string(Text(timeplantest.Sample())), "10:37    1  C2    TAKE-OUT", "10:52    1  C2    TAKE-OUT", 1)
	got, _ := ReadText([]byte(spoiled))
	if len(timeplan.Judge(got)) == 0 {
		t.Error("a take-out moved by a quarter of an hour goes unseen")
	}
}

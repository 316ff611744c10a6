package app

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// woven is an invented record: dish A is prepared, baked and finished; B is
// two steps that follow one another; a turn of the oven and a wash-up between.
func woven() Record {
	minutes := practical.Estimate{Low: 5, Likely: 5, High: 5}
	p := &practical.Practical{Dishes: []practical.Dish{
		{Letter: "A", Steps: []practical.Step{
			{ID: "A1", Text: "weigh", SetUp: true, Hands: minutes},
			{ID: "A2", Text: "mix", Hands: minutes, Wait: &practical.Wait{Least: 10, Place: practical.AtOven, Celsius: 180}},
			{ID: "A3", Text: "ice", Hands: minutes, After: []practical.After{{Step: "A2"}}},
		}},
		{Letter: "B", Steps: []practical.Step{
			{ID: "B1", Text: "chop", Hands: minutes},
			{ID: "B2", Text: "fry", Hands: minutes, After: []practical.After{{Step: "B1"}}},
		}},
	}}
	row := func(id string, at int, action timeplan.Action, text string) timeplan.Row {
		r := timeplan.Row{ID: id, At: practical.TimeOfDay(at), Minutes: 5, Action: action, Text: text}
		if action == timeplan.Do || action == timeplan.PutIn || action == timeplan.TakeOut {
			r.Steps = []string{stepOf(id)}
		}
		return r
	}
	return Record{Practical: p, Plan: &timeplan.Plan{Rows: []timeplan.Row{
		row("A1/hands", 530, timeplan.SetUp, "weigh"),
		row("turn-to/1", 540, timeplan.TurnTo, "turn the oven on"),
		row("A2/hands", 540, timeplan.Do, "mix"),
		row("A2/put-in", 545, timeplan.PutIn, "put in"),
		row("B1/hands", 550, timeplan.Do, "chop"),
		row("wash-up/1", 555, timeplan.WashUp, "wash up"),
		row("A2/take-out", 560, timeplan.TakeOut, "take out"),
		row("A3/hands", 565, timeplan.Do, "ice"),
		row("B2/hands", 570, timeplan.Do, "fry"),
		row("A/serve", 575, timeplan.Serve, "serve A"),
		row("B/serve", 580, timeplan.Serve, "serve B"),
	}}}
}

func TestMoveMakesPins(t *testing.T) {
	after := func(row, after string) practical.Pin { return practical.Pin{Row: row, After: after} }
	for _, tt := range []struct {
		name, row string
		where     Where
		beside    string
		want      []practical.Pin
	}{
		{"Up", "B1/hands", Up, "", []practical.Pin{after("A2/put-in", "B1/hands")}},
		{"PastItsPutIn", "A2/hands", Down, "", nil}, // its own put-in is next
		{"Down", "B1/hands", Down, "", []practical.Pin{after("B1/hands", "wash-up/1")}},
		{"WashUp", "wash-up/1", Down, "", []practical.Pin{after("wash-up/1", "A2/take-out")}},
		{"BeforeIsExact", "B2/hands", Before, "A2/take-out", []practical.Pin{after("B2/hands", "wash-up/1"), after("A2/take-out", "B2/hands")}},
		{"AfterIsExact", "B1/hands", After, "A2/take-out", []practical.Pin{after("B1/hands", "A2/take-out"), after("A3/hands", "B1/hands")}},
		{"PastItsStep", "A3/hands", Before, "A2/take-out", nil},
		{"PastWhatItFollows", "B2/hands", Before, "A2/hands", nil},
		{"PastItsServing", "A3/hands", After, "A/serve", nil},
		{"IntoSetUp", "B1/hands", Before, "A1/hands", nil},
		{"TurnOfTheOven", "turn-to/1", Down, "", nil},
		{"UpFromTheTop", "A1/hands", Up, "", nil},
		{"BesideNothing", "B1/hands", After, "Q9/hands", nil},
		{"NoSuchRow", "Q9/hands", Up, "", nil},
		{"NoSuchMove", "B1/hands", "sideways", "", nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := woven()
			m, err := newMove(r, tt.row, tt.where, tt.beside)
			if tt.want == nil {
				if err == nil {
					t.Fatalf("move was allowed, want a fault; order %v", m.order)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			m.pin(r.Practical)
			if diff := cmp.Diff(tt.want, r.Practical.Pins); diff != "" {
				t.Errorf("pins (-want +got):\n%s", diff)
			}
		})
	}
}

func TestMoveBackTakesPinsAway(t *testing.T) {
	r := woven()
	at := practical.TimeOfDay(550)
	r.Practical.Pins = []practical.Pin{
		{Row: "B1/hands", At: &at},            // its own time: gone
		{Row: "A2/put-in", After: "B1/hands"}, // says otherwise than the move: gone
		{Row: "wash-up/1", After: "B1/hands"}, // agrees: stays
		{Row: "A3/hands", After: "wash-up/1"}, // of others: stays
	}
	m, err := newMove(r, "B1/hands", After, "A2/put-in")
	if err != nil {
		t.Fatal(err)
	}
	m.pin(r.Practical)
	want := []practical.Pin{
		{Row: "wash-up/1", After: "B1/hands"},
		{Row: "A3/hands", After: "wash-up/1"},
		{Row: "B1/hands", After: "A2/put-in"},
	}
	if diff := cmp.Diff(want, r.Practical.Pins); diff != "" {
		t.Errorf("pins (-want +got):\n%s", diff)
	}
}

func TestRefusalNamesBothRows(t *testing.T) {
	_, err := newMove(woven(), "B2/hands", Before, "A2/hands")
	if err == nil || !strings.Contains(err.Error(), `"chop" has to come before "fry"`) {
		t.Errorf("error %v, want both rows named", err)
	}
}

func TestShort(t *testing.T) {
	if got := short(strings.Repeat("é", 50)); got != strings.Repeat("é", 39)+"…" {
		t.Errorf("short cut to %q", got)
	}
}

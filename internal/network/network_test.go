package network

import (
	"context"
	"slices"
	"strings"
	"testing"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver/verify"
)

// All practicals in these tests are invented, small enough to plan by hand.

// bare is a practical of one cook from 09:00 to 11:00 with ten minutes of
// set-up, one electric oven and nothing asked but its dishes.
func bare(dishes ...practical.Dish) *practical.Practical {
	return &practical.Practical{
		Title: "Test", Cooks: 1,
		Clock: practical.Clock{SetUp: 8*60 + 50, Start: 9 * 60, Finish: 11 * 60, Hours: 24, Round: 1},
		Rules: practical.Rules{
			SetUpVerbs: []string{"weigh", "grease", "line"}, OvenInSetUp: false, CleanInside: true,
			RawClean: 4, Rinse: 2, Window: 30, Looks: 2, Pace: practical.Likely,
		},
		Kitchen: practical.Kitchen{
			Ovens: []practical.Oven{{Name: "oven", Fuel: practical.Electric, Shelves: 2, Preheat: 12, Up: 4, Down: 6, DoorOpen: 3}},
			Rings: 4, Grill: practical.SeparateGrill, Processors: 1, Mixers: 1, Microwaves: 1, FridgeShelves: 2, FreezerShelves: 1,
		},
		Dishes: dishes,
	}
}

// dish is served as it is in one minute; its steps follow each other as their After says.
func dish(letter string, steps ...practical.Step) practical.Dish {
	for i := range steps {
		if steps[i].Text == "" {
			steps[i].Text = "Work on " + steps[i].ID
		}
	}
	return practical.Dish{
		Letter: letter, Name: "dish " + letter, Steps: steps,
		Serve: practical.Serve{Heat: practical.AsIs, How: "on a plate", Minutes: 1},
	}
}

func hands(id string, minutes int, after ...string) practical.Step {
	s := practical.Step{ID: id, Hands: practical.Estimate{Low: minutes, Likely: minutes, High: minutes}}
	for _, a := range after {
		s.After = append(s.After, practical.After{Step: a})
	}
	return s
}

func waits(s practical.Step, place practical.Place, least, most int) practical.Step {
	s.Wait = &practical.Wait{Place: place, Least: least, Most: most}
	return s
}

func bakes(s practical.Step, celsius, band, minutes int) practical.Step {
	s.Wait = &practical.Wait{Place: practical.AtOven, Celsius: celsius, Band: band, Least: minutes, Most: minutes + 5}
	return s
}

// mustPlan plans, and has the plan read a second time by the judge of rows.
func mustPlan(t *testing.T, p *practical.Practical) *timeplan.Plan {
	t.Helper()
	plan, err := Plan(context.Background(), p, Options{Seed: 1})
	if err != nil {
		t.Fatalf("Plan: %v", err)
	}
	for _, f := range timeplan.Judge(plan) {
		t.Errorf("judge: %+v", f)
	}
	if t.Failed() {
		t.Log("\n" + outline(plan))
	}
	return plan
}

// outline is a plan in short lines, for failures.
func outline(p *timeplan.Plan) string {
	var b strings.Builder
	for _, r := range p.Rows {
		b.WriteString(r.At.String() + " " + r.ID + " " + string(r.Action) + " " + r.Setting + "\n")
	}
	return b.String()
}

func row(t *testing.T, p *timeplan.Plan, id string) timeplan.Row {
	t.Helper()
	i := slices.IndexFunc(p.Rows, func(r timeplan.Row) bool { return r.ID == id })
	if i < 0 {
		t.Fatalf("no row %s in\n%s", id, outline(p))
	}
	return p.Rows[i]
}

func clock(t *testing.T, s string) practical.TimeOfDay {
	t.Helper()
	at, err := practical.ParseTimeOfDay(s)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

func wantFinish(t *testing.T, p *timeplan.Plan, status timeplan.Status, at string) {
	t.Helper()
	if p.Status != status || p.Finish != clock(t, at) {
		t.Errorf("got %s, finish %s; want %s, %s\n%s", p.Status, p.Finish, status, at, outline(p))
	}
	if status == timeplan.Optimal && p.Bound != p.Finish {
		t.Errorf("bound %s of an optimal finish %s", p.Bound, p.Finish)
	}
}

// Two jobs of 10 and 20 minutes and two servings of one: 9:00 + 32.
func TestHandsDoOneThing(t *testing.T) {
	plan := mustPlan(t, bare(dish("A", hands("A1", 10)), dish("B", hands("B1", 20))))
	wantFinish(t, plan, timeplan.Optimal, "09:32")
}

// A pair does both at once: the longer job, then its serving.
func TestPairDoesTwoThings(t *testing.T) {
	p := bare(dish("A", hands("A1", 10)), dish("B", hands("B1", 20)))
	p.Cooks = 2
	plan := mustPlan(t, p)
	wantFinish(t, plan, timeplan.Optimal, "09:21")
	if a, b := row(t, plan, "A1/hands").Cook, row(t, plan, "B1/hands").Cook; a == b || a*b != 2 {
		t.Errorf("cooks %d and %d share two jobs at once", a, b)
	}
}

// A's dough chills for 30 minutes, put in and out by a minute each; B's 20
// minutes of work go into that wait: 5 + 1 + 30 + 1 + serving 1 + serving 1.
func TestDovetail(t *testing.T) {
	plan := mustPlan(t, bare(
		dish("A", waits(hands("A1", 5), practical.AtFridge, 30, 60)),
		dish("B", hands("B1", 20))))
	wantFinish(t, plan, timeplan.Optimal, "09:38")
	in, out := row(t, plan, "A1/put-in"), row(t, plan, "A1/take-out")
	if in.Until != out.At || out.At-in.End() < 30 {
		t.Errorf("in at %s until %s, out at %s", in.At, in.Until, out.At)
	}
}

// The oven goes on at 9:00 at the earliest (a minute) and needs 12 to be hot:
// the load goes in by 9:13 (its put-in, a minute, runs while it heats), bakes
// 20, comes out in one, is served in one: 9:13 + 20 + 1 + 1.
func TestOvenIsHotInTime(t *testing.T) {
	plan := mustPlan(t, bare(dish("A", bakes(hands("A1", 3), 180, 10, 20))))
	wantFinish(t, plan, timeplan.Optimal, "09:35")
	turn := row(t, plan, "oven/1")
	if turn.At != clock(t, "09:00") || turn.Celsius != 180 || turn.Setting == "" {
		t.Errorf("turn-to row: %+v", turn)
	}
}

// Allowed in set-up, the oven is hot at 9:00.
func TestOvenInSetUp(t *testing.T) {
	p := bare(dish("A", bakes(hands("A1", 3), 180, 10, 20)))
	p.Rules.OvenInSetUp = true
	p.Clock.SetUp -= 20
	plan := mustPlan(t, p)
	wantFinish(t, plan, timeplan.Optimal, "09:26")
	if turn := row(t, plan, "oven/1"); turn.At != clock(t, "08:51") {
		t.Errorf("the oven goes on at %s; as late as it may is 08:51, for a load at 09:04", turn.At)
	}
}

// Bands 180 +- 10 and 200 +- 10 meet at 190 only: together they need one setting.
func TestOvenShared(t *testing.T) {
	p := bare(dish("A", bakes(hands("A1", 2), 180, 10, 40)), dish("B", bakes(hands("B1", 2), 200, 10, 40)))
	plan := mustPlan(t, p)
	turns := 0
	for _, r := range plan.Rows {
		if r.Action == timeplan.TurnTo {
			turns++
			if r.Celsius != 190 {
				t.Errorf("turned to %d", r.Celsius)
			}
		}
	}
	if turns != 1 || len(plan.Ovens) != 1 {
		t.Errorf("%d turns, settings %+v", turns, plan.Ovens)
	}
	near := 0
	for _, r := range plan.Rows { // the recipe's own words may name the other heat
		if strings.Contains(r.Text, "The oven is at 190 °C: near enough to the recipe's 180 °C.") || strings.Contains(r.Text, "The oven is at 190 °C: near enough to the recipe's 200 °C.") {
			near++
		}
	}
	if near != 2 {
		t.Errorf("%d rows say that the oven's heat will do, want 2: %+v", near, plan.Rows)
	}
}

// 180 +- 0 and 220 +- 0 never meet: one after the other, with a turn between.
func TestOvenTurnedBetween(t *testing.T) {
	plan := mustPlan(t, bare(dish("A", bakes(hands("A1", 2), 180, 0, 20)), dish("B", bakes(hands("B1", 2), 220, 0, 20))))
	if len(plan.Ovens) != 2 {
		t.Fatalf("settings %+v", plan.Ovens)
	}
	first, second := plan.Ovens[0], plan.Ovens[1]
	if first.Until != second.Turned || second.Hot <= second.Turned || first.Celsius == second.Celsius {
		t.Errorf("settings %+v", plan.Ovens)
	}
}

func TestCandidates(t *testing.T) {
	for _, c := range []struct {
		loads [][2]int
		want  []int
	}{
		{[][2]int{{180, 10}}, []int{180}},
		{[][2]int{{180, 10}, {200, 10}}, []int{180, 190, 200}},
		{[][2]int{{180, 20}, {200, 20}}, []int{180, 200}},
		{[][2]int{{180, 0}, {220, 0}, {180, 10}}, []int{180, 220}},
	} {
		var steps []practical.Step
		for _, l := range c.loads {
			steps = append(steps, bakes(hands("A1", 1), l[0], l[1], 10))
		}
		n := &network{practical: bare(dish("A", steps...))}
		if got := n.candidates(); !slices.Equal(got, c.want) {
			t.Errorf("%v: got %v, want %v", c.loads, got, c.want)
		}
	}
}

// The door stays shut for 20 minutes on the choux: the other tray goes in
// before it or with it, or not until then.
func TestDoorStaysShut(t *testing.T) {
	puff := bakes(hands("A1", 2), 200, 0, 30)
	puff.Wait.DoorShut = 20
	plan := mustPlan(t, bare(dish("A", puff), dish("B", bakes(hands("B1", 12), 200, 0, 10))))
	in := row(t, plan, "A1/put-in")
	for _, id := range []string{"B1/put-in", "B1/take-out"} {
		if at := row(t, plan, id).At; at > in.End() && at < in.End()+20 {
			t.Errorf("%s at %s, while the door is shut from %s for 20 minutes", id, at, in.End())
		}
	}
}

// Raw, then food eaten as it is: a clean-down of 4 stands between, here before
// the serving too if no other way; ready-to-eat first costs nothing.
func TestRawAndReadyToEat(t *testing.T) {
	raw, ready := hands("A1", 5), hands("B1", 5)
	raw.Food, ready.Food = practical.Raw, practical.ReadyToEat
	plan := mustPlan(t, bare(dish("A", raw), dish("B", ready)))
	// 5 + 5 + clean-down 4 + two servings: the serving is of food eaten as it is.
	wantFinish(t, plan, timeplan.Optimal, "09:16")
	clean := row(t, plan, "bench/1")
	if clean.At < row(t, plan, "A1/hands").End() || clean.End() > row(t, plan, "A/serve").At {
		t.Errorf("clean-down at %s\n%s", clean.At, outline(plan))
	}
}

// One processor for two dishes is rinsed between them: 5 + 2 + 5 + 1 + 1.
func TestProcessorRinsed(t *testing.T) {
	a, b := hands("A1", 5), hands("B1", 5)
	a.Uses, b.Uses = []practical.Kit{practical.Processor}, []practical.Kit{practical.Processor}
	wantFinish(t, mustPlan(t, bare(dish("A", a), dish("B", b))), timeplan.Optimal, "09:14")
}

// One ring, two pots of 30: one after the other.
func TestRings(t *testing.T) {
	p := bare(dish("A", waits(hands("A1", 0), practical.AtHob, 30, 40)), dish("B", waits(hands("B1", 0), practical.AtHob, 30, 40)))
	p.Kitchen.Rings = 1
	wantFinish(t, mustPlan(t, p), timeplan.Optimal, "10:05") // 1+30+1(out) then 1+30+1, 1+1; the first out is beside the second in
	p.Kitchen.Rings = 2
	wantFinish(t, mustPlan(t, p), timeplan.Optimal, "09:35")
}

// The grill in the oven's cavity: never both at once.
func TestGrillInOven(t *testing.T) {
	p := bare(dish("A", bakes(hands("A1", 0), 180, 0, 20)), dish("B", waits(hands("B1", 0), practical.AtGrill, 5, 8)))
	p.Kitchen.Grill = practical.GrillInOven
	plan := mustPlan(t, p)
	bake, grill := plan.Waits[0], plan.Waits[1]
	if bake.From < grill.Until && grill.From < bake.Until {
		t.Errorf("oven %s-%s and grill %s-%s in one cavity", bake.From, bake.Until, grill.From, grill.Until)
	}
}

// A wait that must be watched keeps the hands: 2+1+10+1, then 5, then servings.
func TestStay(t *testing.T) {
	caramel := waits(hands("A1", 2), practical.AtHob, 10, 12)
	caramel.Wait.Attention = practical.Stay
	wantFinish(t, mustPlan(t, bare(dish("A", caramel), dish("B", hands("B1", 5)))), timeplan.Optimal, "09:21")
}

// At most two pans that need a look: three of 20 minutes take two rounds.
func TestLooks(t *testing.T) {
	pan := func(id string) practical.Step {
		s := waits(hands(id, 0), practical.AtHob, 20, 30)
		s.Wait.Attention, s.Wait.Every = practical.Look, 5
		return s
	}
	plan := mustPlan(t, bare(dish("A", pan("A1"), pan("A2"), pan("A3"))))
	for _, w := range plan.Waits {
		at := 0
		for _, other := range plan.Waits {
			if other.From <= w.From && w.From < other.Until {
				at++
			}
		}
		if at > 2 {
			t.Errorf("%d pans that need a look at %s", at, w.From)
		}
	}
}

// Set-up jobs, and only they, come before the clock.
func TestSetUp(t *testing.T) {
	weigh := hands("A1", 5)
	weigh.SetUp, weigh.Text = true, "Weigh the flour"
	plan := mustPlan(t, bare(dish("A", weigh, hands("A2", 5, "A1"))))
	wantFinish(t, plan, timeplan.Optimal, "09:06")
	for _, r := range plan.Rows {
		if before := r.At < plan.Start; before != (r.Action == timeplan.SetUp) {
			t.Errorf("%s at %s is %s", r.ID, r.At, r.Action)
		}
	}
}

// A gap with least and most: cool 20 to 25 before icing.
func TestGap(t *testing.T) {
	ice, most := hands("A2", 5), 25
	ice.After = []practical.After{{Step: "A1", Least: 20, Most: &most}}
	plan := mustPlan(t, bare(dish("A", hands("A1", 5), ice), dish("B", hands("B1", 40))))
	if gap := row(t, plan, "A2/hands").At - row(t, plan, "A1/hands").End(); gap < 20 || gap > 25 {
		t.Errorf("gap %d", gap)
	}
}

// Food left on the side is taken up before its longest wait is over.
func TestSideWaitBindsTheNextStep(t *testing.T) {
	plan := mustPlan(t, bare(
		dish("A", waits(hands("A1", 5), practical.AtSide, 10, 15), hands("A2", 5, "A1")),
		dish("B", hands("B1", 30))))
	if gap := row(t, plan, "A2/hands").At - row(t, plan, "A1/hands").End(); gap < 10 || gap > 15 {
		t.Errorf("stood for %d minutes", gap)
	}
}

// A rest break: hands stop, food goes on, the clock ends later.
func TestRestBreak(t *testing.T) {
	p := bare(dish("A", waits(hands("A1", 5), practical.AtFridge, 30, 60), hands("A2", 10, "A1")))
	p.Clock.Breaks = []practical.Break{{At: 9*60 + 10, Minutes: 20}}
	plan := mustPlan(t, p)
	if plan.Allowed != clock(t, "11:20") {
		t.Errorf("allowed until %s", plan.Allowed)
	}
	for _, r := range plan.Rows {
		if r.Action != timeplan.Rest && r.At < clock(t, "09:30") && r.End() > clock(t, "09:10") {
			t.Errorf("%s at %s in the break", r.ID, r.At)
		}
	}
	wantFinish(t, plan, timeplan.Optimal, "09:48") // 5+1, chills through the break, out at 9:36, +1 +10 +1
}

// Cold first, hot last, within the window.
func TestServingOrder(t *testing.T) {
	p := bare(dish("A", hands("A1", 5)), dish("B", hands("B1", 5)), dish("C", hands("C1", 5)))
	p.Dishes[0].Serve.Heat, p.Dishes[1].Serve.Heat = practical.Hot, practical.Cold
	plan := mustPlan(t, p)
	a, b, c := row(t, plan, "A/serve"), row(t, plan, "B/serve"), row(t, plan, "C/serve")
	if b.End() > c.At || c.End() > a.At || a.End()-b.At > 30 {
		t.Errorf("served B %s, C %s, A %s", b.At, c.At, a.At)
	}
}

// Washing-up at most 20 minutes apart, and a last clean-down inside the clock.
func TestWashUps(t *testing.T) {
	p := bare(dish("A", hands("A1", 15), hands("A2", 15, "A1"), hands("A3", 15, "A2")))
	p.Rules.WashEvery, p.Rules.WashUp, p.Rules.CleanDown = 20, 5, 10
	p.Clock.Finish = p.Clock.Start + 75
	plan := mustPlan(t, p)
	last := plan.Start
	for _, r := range plan.Rows {
		if strings.HasPrefix(r.ID, "wash-up/") {
			if r.At-last > 20 {
				t.Errorf("%s: %d minutes after the last", r.ID, r.At-last)
			}
			last = r.End()
		}
	}
	wantFinish(t, plan, timeplan.Optimal, "10:06") // 45 + 2 x 5 + serving 1 + clean-down 10
}

// A pinned row stays; the rest moves round it.
func TestPins(t *testing.T) {
	at := practical.TimeOfDay(9*60 + 30)
	p := bare(dish("A", hands("A1", 10)), dish("B", hands("B1", 10)))
	p.Pins = []practical.Pin{{Row: "A1/hands", At: &at}, {Row: "B1/hands", After: "A1/hands"}}
	plan := mustPlan(t, p)
	if r := row(t, plan, "A1/hands"); r.At != at || !r.Pinned {
		t.Errorf("pinned row: %+v", r)
	}
	wantFinish(t, plan, timeplan.Optimal, "09:52")
}

// Written in steps of five: every row on a mark, or right after the one before.
func TestRounded(t *testing.T) {
	p := bare(
		dish("A", bakes(hands("A1", 7), 180, 10, 20), hands("A2", 4, "A1")),
		dish("B", waits(hands("B1", 6), practical.AtFridge, 15, 45), hands("B2", 8, "B1")))
	p.Clock.Round = 5
	plan := mustPlan(t, p)
	if len(plan.Notes) > 0 {
		t.Errorf("not rounded: %v", plan.Notes)
	}
	end := practical.TimeOfDay(0)
	for _, r := range plan.Rows {
		if r.Clock%5 != 0 || r.Clock > r.At || r.At-r.Clock >= 5 {
			t.Errorf("%s at %s is written %s", r.ID, r.At, r.Clock)
		}
		if r.At%5 != 0 && r.At != end {
			t.Errorf("%s begins at %s, on no mark and not when the row before ends (%s)", r.ID, r.At, end)
		}
		end = r.End()
	}
}

// 130 minutes of work in 120: over by 13 with three servings, and said why.
func TestOverrun(t *testing.T) {
	plan, err := Plan(context.Background(), bare(dish("A", hands("A1", 60)), dish("B", hands("B1", 60)), dish("C", hands("C1", 10))), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if plan.Status != timeplan.Infeasible || plan.Over != 13 || plan.Bound != clock(t, "11:13") {
		t.Errorf("status %s, over %d, bound %s", plan.Status, plan.Over, plan.Bound)
	}
	names := func() (names []string) {
		for _, d := range plan.Conflict {
			names = append(names, d.Name)
		}
		return names
	}()
	if !slices.Contains(names, "finish") || !slices.Contains(names, "hands") {
		t.Errorf("conflict %v", names)
	}
	texts := ""
	for _, w := range plan.WaysOut {
		texts += w.Text + "\n"
	}
	for _, want := range []string{"finish 13 minutes later", "cook as a pair", "leave out dish A"} {
		if !strings.Contains(texts, want) {
			t.Errorf("ways out lack %q:\n%s", want, texts)
		}
	}
}

// A pin against a gap: no time would help; the two are named, and unpinning offered.
func TestContradiction(t *testing.T) {
	at := practical.TimeOfDay(9 * 60)
	p := bare(dish("A", hands("A1", 5), hands("A2", 5, "A1")))
	p.Pins = []practical.Pin{{Row: "A2/hands", At: &at}}
	plan, err := Plan(context.Background(), p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if plan.Status != timeplan.Infeasible || len(plan.Rows) != 0 || len(plan.Conflict) < 2 {
		t.Errorf("status %s, %d rows, conflict %v", plan.Status, len(plan.Rows), plan.Conflict)
	}
	if len(plan.WaysOut) == 0 || !strings.HasPrefix(plan.WaysOut[0].Text, "unpin") {
		t.Errorf("ways out %+v", plan.WaysOut)
	}
	texts := ""
	for _, d := range plan.Conflict {
		texts += d.Text + "\n"
	}
	for _, want := range []string{`"Work on A2" (A2) is pinned to 09:00`, `"Work on A2" (A2) comes after "Work on A1" (A1)`} {
		if !strings.Contains(texts, want) {
			t.Errorf("the conflict lacks %s:\n%s", want, texts)
		}
	}
}

// Stopped when it is known that the plan does not fit, before it is known why:
// the late plan is kept, and finishing later is offered.
func TestStoppedBeforeTheReason(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	plan, err := Plan(ctx, bare(dish("A", hands("A1", 60)), dish("B", hands("B1", 70))), Options{Improved: func(p Progress) {
		if p.Unfit {
			stop()
		}
	}})
	if err != nil || plan.Status != timeplan.Infeasible || plan.Over != 12 || len(plan.Rows) == 0 {
		t.Fatalf("%+v, %v", plan, err)
	}
	if len(plan.Conflict) != 1 || plan.Conflict[0].Name != "finish" || len(plan.WaysOut) == 0 || plan.WaysOut[0].Demand != "finish" {
		t.Errorf("conflict %+v, ways out %+v", plan.Conflict, plan.WaysOut)
	}
}

// A wait of 6 minutes to the minute cannot lie on marks: its take-out, and the
// serving right after it, are written to the minute.
func TestRoundedButForOne(t *testing.T) {
	p := bare(dish("A", waits(hands("A1", 4), practical.AtHob, 6, 6)))
	p.Clock.Round = 5
	plan := mustPlan(t, p)
	for _, r := range plan.Rows {
		if exact := r.Clock%5 != 0; exact != (r.ID == "A1/take-out" || r.ID == "A/serve") || exact && r.Clock != r.At {
			t.Errorf("%s at %s is written %s", r.ID, r.At, r.Clock)
		}
	}
	if len(plan.Notes) != 1 {
		t.Errorf("notes %q", plan.Notes)
	}
}

// A reader meets each sentence of a conflict once, the shortest first, with
// things counted as people count them.
func TestConflictInWords(t *testing.T) {
	n := translate(bare(dish("A", waits(hands("A1", 10), practical.AtFridge, 1, 20), hands("A2", 5, "A1"))))
	n.demands["twin"] = timeplan.Demand{Name: "twin", Text: n.demands["finish"].Text}
	var texts []string
	for _, d := range n.told([]string{"wait-most/A1", "hands", "twin", "finish", "wait-least/A1"}) {
		texts = append(texts, d.Text)
	}
	want := []string{
		"everything is done by 11:00", "one pair of hands does one thing at a time",
		"dish A (A1) is in the fridge at least 1 minute", "dish A (A1) is in the fridge at most 20 minutes",
	}
	if !slices.Equal(texts, want) {
		t.Errorf("got %q, want %q", texts, want)
	}
	for number, want := range map[int]string{0: "0 oven shelves", 1: "1 oven shelf", 2: "2 oven shelves"} {
		if got := counted(number, kitWord(practical.OvenShelf)); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestSentence(t *testing.T) {
	for text, want := range map[string]string{
		"and line a tin.": "Line a tin.", "then flake, removing any bones.": "Flake, removing any bones.",
		"Beat well": "Beat well", "": "", ", and chill": "Chill", "élan": "Élan", "andouille, sliced": "Andouille, sliced",
	} {
		if got := sentence(text); got != want {
			t.Errorf("%q: got %q, want %q", text, got, want)
		}
	}
	for how, want := range map[string]string{
		"and serve.": "", "Serve hot with the sauce.": "with the sauce", "On warm plates": "On warm plates", "": "",
	} {
		if got := presentation(how); got != want {
			t.Errorf("%q: got %q, want %q", how, got, want)
		}
	}
}

// Chilled food stays in the fridge until its next job: here through B's work.
func TestTakenOutLate(t *testing.T) {
	n := translate(bare(dish("A", waits(hands("A1", 5), practical.AtFridge, 10, 0), hands("A2", 5, "A1")), dish("B", hands("B1", 20))))
	jobs := n.steps["A1"]
	a := n.aim(n.problem, nil)
	result, err := n.solve(context.Background(), a, Options{Effort: DefaultEffort})
	if err != nil || result.Solution == nil {
		t.Fatalf("solve: %v, %v", result.Status, err)
	}
	early := result.Solution
	late := n.takeOutLater(a, early)
	if gap := late.Start[n.steps["A2"].first] - late.End[jobs.takeOut]; gap < 0 || gap > early.Start[n.steps["A2"].first]-early.End[jobs.takeOut] {
		t.Errorf("out %d minutes before its next job", gap)
	}
	if faults := verify.Check(n.problem, late); len(faults) > 0 {
		t.Errorf("the judge: %v", faults)
	}
}

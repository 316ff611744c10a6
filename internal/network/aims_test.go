package network

import (
	"testing"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// level is what a plan says of an aim.
func level(t *testing.T, p *timeplan.Plan, aim timeplan.Aim) timeplan.Level {
	t.Helper()
	for _, l := range p.Levels {
		if l.Aim == aim {
			return l
		}
	}
	t.Fatalf("nothing is said of %s in %+v", aim, p.Levels)
	return timeplan.Level{}
}

func wantLevel(t *testing.T, p *timeplan.Plan, aim timeplan.Aim, value int) {
	t.Helper()
	if l := level(t, p, aim); l.Value != value || l.Bound != value || !l.Proved {
		t.Errorf("%+v; want %d, proved\n%s", l, value, outline(p))
	}
}

// switched counts how often the rows go from one dish to another.
func switched(p *timeplan.Plan) (count int) {
	last := ""
	for _, r := range p.Rows {
		if r.Dish != "" && last != "" && r.Dish != last {
			count++
		}
		if r.Dish != "" {
			last = r.Dish
		}
	}
	return count
}

// Two dishes of three jobs that may come in any order, 5 minutes each, and a
// minute each to serve: one dish, then the other. One change of dish, not five.
func TestFewChangesOfDish(t *testing.T) {
	p := mustPlan(t, bare(
		dish("A", hands("A1", 5), hands("A2", 5), hands("A3", 5)),
		dish("B", hands("B1", 5), hands("B2", 5), hands("B3", 5))))
	wantFinish(t, p, timeplan.Optimal, "09:32") // 30 of work, 2 to serve; hands are washed in set-up
	wantLevel(t, p, timeplan.AimSwitches, 1)
	if got := switched(p); got != 1 {
		t.Errorf("%d changes of dish\n%s", got, outline(p))
	}
}

// The finish comes first: B's 20 minutes go into the 20 in which A chills,
// though A then comes back into the hands. A1, its put-in; B; take-out, A2 and
// serving: 2 changes, and B served among A's rows makes no more.
func TestFinishBeforeChangesOfDish(t *testing.T) {
	p := mustPlan(t, bare(
		dish("A", waits(hands("A1", 5), practical.AtFridge, 20, 0), hands("A2", 5, "A1")),
		dish("B", hands("B1", 19))))
	wantFinish(t, p, timeplan.Optimal, "09:33") // 5, put in 1, 20, take out 1, 5, serve 1; B and its serving inside the 20
	wantLevel(t, p, timeplan.AimSwitches, 2)
}

// Six steps of 10 minutes, two wash-ups of 5, at most 40 of work between: 60 of
// work and the serving in three stretches. Even ones, of 20, 20 and 21, have no
// gap below a half of 40; any other choice leaves one that is.
func TestWashUpsApart(t *testing.T) {
	var steps []practical.Step
	for _, id := range []string{"A1", "A2", "A3", "A4", "A5", "A6"} {
		steps = append(steps, hands(id, 10))
	}
	p := bare(dish("A", steps...))
	p.Clock.SetUp = p.Clock.Start - 10
	p.Rules.WashEvery, p.Rules.WashUp = 40, 5
	p.Rules.CleanInside = true
	plan := mustPlan(t, p)
	ups := []practical.TimeOfDay{row(t, plan, "wash-up/1").At, row(t, plan, "wash-up/2").At}
	gaps := []int{int(ups[0] - plan.Start), int(ups[1]-ups[0]) - 5, int(plan.Finish-ups[1]) - 5}
	for _, gap := range gaps {
		if gap < 20 {
			t.Errorf("gaps %v\n%s", gaps, outline(plan))
			break
		}
	}
	if l := level(t, plan, timeplan.AimWashUps); !l.Proved {
		t.Errorf("%+v", l)
	}
}

// Steps that may come in any order come in that of the recipe.
func TestRecipesOrder(t *testing.T) {
	p := mustPlan(t, bare(dish("A", hands("A1", 5), hands("A2", 3), hands("A3", 4))))
	wantLevel(t, p, timeplan.AimOrder, 0)
	if a, b, c := row(t, p, "A1/hands").At, row(t, p, "A2/hands").At, row(t, p, "A3/hands").At; a > b || b > c {
		t.Errorf("not in order\n%s", outline(p))
	}
}

// Where it costs time, the recipe's order gives way: what chills for half an
// hour is begun first, and the step above it meanwhile.
func TestRecipesOrderGivesWay(t *testing.T) {
	p := mustPlan(t, bare(dish("A", hands("A1", 20), waits(hands("A2", 5), practical.AtFridge, 30, 0))))
	wantFinish(t, p, timeplan.Optimal, "09:38") // 5, put in 1, 30, take out 1, serve 1
	wantLevel(t, p, timeplan.AimOrder, 1)
}

// Two cooks, two dishes of three jobs of 5 minutes that follow each other: each
// cook keeps to a dish, and nobody changes.
func TestPairKeepsToItsDishes(t *testing.T) {
	p := bare(
		dish("A", hands("A1", 5), hands("A2", 5, "A1"), hands("A3", 5, "A2")),
		dish("B", hands("B1", 5), hands("B2", 5, "B1"), hands("B3", 5, "B2")))
	p.Cooks = 2
	plan := mustPlan(t, p)
	wantFinish(t, plan, timeplan.Optimal, "09:16") // 15, and 1 to serve
	wantLevel(t, plan, timeplan.AimSwitches, 0)
}

// Rows at given times are shared out with the fewest changes. The cook who
// had A last is free for C at 9:10, and so is the one who had B; C goes to
// the one whose dish is done, since the other's comes again.
func TestSharedOut(t *testing.T) {
	p := bare(dish("A", hands("A1", 5)), dish("B", hands("B1", 5)), dish("C", hands("C1", 5)))
	p.Cooks = 2
	n := translate(p)
	at := func(minute, length int, dish, id string) timeplan.Row {
		return timeplan.Row{ID: id, At: practical.TimeOfDay(9*60 + minute), Minutes: length, Dish: dish, Action: timeplan.Do}
	}
	rows := []timeplan.Row{
		at(0, 5, "A", "a"), at(0, 5, "B", "b"), // one each
		at(10, 10, "C", "c"),
		at(12, 5, "A", "a again"), // while C is in hand
	}
	got := n.cooks(rows, nil)
	if got["a"] == got["b"] || got["c"] != got["b"] || got["a again"] != got["a"] {
		t.Errorf("shared out %v", got)
	}
	for i := range rows {
		rows[i].Cook = got[rows[i].ID]
	}
	if l := n.pairSwitches(rows); l.Value != 1 || l.Bound != 1 || !l.Proved {
		t.Errorf("%+v; want one change, of three dishes to two cooks", l)
	}
}

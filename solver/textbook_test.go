package solver_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"plait.example/solver"
	"plait.example/solver/problem"
)

// job is a row of a textbook's table of activities, with the slack it gives.
type job struct {
	name   string
	length int
	after  string // names, one letter each
	slack  int
}

// A house (Hillier and Lieberman, Introduction to Operations Research, the
// Reliable Construction Co. project): 44 weeks by way of ABCEFJLN, with the
// slack of each activity. From memory.
var house = []job{
	{"A", 2, "", 0},
	{"B", 4, "A", 0},
	{"C", 10, "B", 0},
	{"D", 6, "C", 4},
	{"E", 4, "C", 0},
	{"F", 5, "E", 0},
	{"G", 7, "D", 4},
	{"H", 9, "EG", 4},
	{"I", 7, "C", 2},
	{"J", 8, "FI", 0},
	{"K", 4, "J", 1},
	{"L", 5, "J", 0},
	{"M", 2, "H", 4},
	{"N", 6, "KL", 0},
}

// A filter in a paper mill (Heizer and Render, Operations Management, the
// Milwaukee Paper project): 15 weeks by way of ACEGH. From memory.
var filter = []job{
	{"A", 2, "", 0},
	{"B", 3, "", 1},
	{"C", 2, "A", 0},
	{"D", 4, "AB", 1},
	{"E", 4, "C", 0},
	{"F", 3, "C", 6},
	{"G", 5, "DE", 0},
	{"H", 2, "FG", 0},
}

func project(jobs []job) *problem.Problem {
	p := &problem.Problem{}
	for i, j := range jobs {
		p.Activities = append(p.Activities, problem.Activity{Name: j.name, MinDuration: j.length, MaxDuration: j.length})
		p.Horizon += j.length
		for k, before := range jobs {
			if strings.Contains(j.after, before.name) {
				p.Lags = append(p.Lags, problem.Lag{From: problem.End(k), To: problem.Start(i)})
			}
		}
	}
	return p
}

func optimum(t *testing.T, p *problem.Problem) solver.Result {
	t.Helper()
	r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if r.Status != solver.Optimal || r.Bound != r.Levels[0].Value {
		t.Fatalf("status %v, levels %+v, bound %d", r.Status, r.Levels, r.Bound)
	}
	return r
}

// The critical path, and the slack of every activity: the difference between
// its latest and its earliest start when the project takes no longer than it must.
func TestCriticalPath(t *testing.T) {
	for _, c := range []struct {
		name string
		jobs []job
		want int
	}{{"house", house, 44}, {"filter", filter, 15}} {
		t.Run(c.name, func(t *testing.T) {
			p := project(c.jobs)
			if got := optimum(t, p).Levels[0].Value; got != c.want {
				t.Errorf("takes %d, the book says %d", got, c.want)
			}
			starts := func(weight int) []int {
				q := project(c.jobs)
				q.Objectives = []problem.Objective{{Makespan: true}, {}}
				for i := range c.jobs {
					q.Objectives[1].Terms = append(q.Objectives[1].Terms, problem.Term{Point: problem.Start(i), Weight: weight})
				}
				r := optimum(t, q)
				if !r.Levels[1].Proved {
					t.Errorf("the starts are not proved best: %+v", r.Levels)
				}
				return r.Solution.Start
			}
			earliest, latest := starts(1), starts(-1)
			for i, j := range c.jobs {
				if got := latest[i] - earliest[i]; got != j.slack {
					t.Errorf("%s: slack %d (from %d to %d), the book says %d", j.name, got, earliest[i], latest[i], j.slack)
				}
			}
		})
	}
}

// machineShop makes jobs of operations on machines: each row is machine, length,
// machine, length and so on.
func machineShop(machines int, rows [][]int) *problem.Problem {
	p := &problem.Problem{}
	for range machines {
		p.Resources = append(p.Resources, problem.Resource{Capacity: 1})
	}
	for _, row := range rows {
		for k := 0; k < len(row); k += 2 {
			i := len(p.Activities)
			p.Activities = append(p.Activities, problem.Activity{
				MinDuration: row[k+1], MaxDuration: row[k+1],
				Modes: []problem.Mode{{Uses: []problem.Use{{Resource: row[k], Amount: 1}}}},
			})
			p.Horizon += row[k+1]
			if k > 0 {
				p.Lags = append(p.Lags, problem.Lag{From: problem.End(i - 1), To: problem.Start(i)})
			}
		}
	}
	return p
}

// The job shop of six jobs on six machines of Fisher and Thompson (in Muth and
// Thompson, Industrial Scheduling, 1963), "ft06": least makespan 55. From memory.
func TestJobShop(t *testing.T) {
	p := machineShop(6, [][]int{
		{2, 1, 0, 3, 1, 6, 3, 7, 5, 3, 4, 6},
		{1, 8, 2, 5, 4, 10, 5, 10, 0, 10, 3, 4},
		{2, 5, 3, 4, 5, 8, 0, 9, 1, 1, 4, 7},
		{1, 5, 0, 5, 2, 5, 3, 3, 4, 8, 5, 9},
		{2, 9, 1, 3, 4, 5, 5, 4, 0, 3, 3, 1},
		{1, 3, 3, 3, 5, 9, 0, 10, 4, 4, 2, 1},
	})
	if got := optimum(t, p).Levels[0].Value; got != 55 {
		t.Errorf("takes %d; 55 is published", got)
	}
}

// Two machines in line, five jobs (Heizer and Render, an example of Johnson's
// rule, Naval Research Logistics Quarterly 1, 1954): B, E, D, C, A in 35 hours.
// From memory.
func TestFlowShop(t *testing.T) {
	p := machineShop(2, [][]int{{0, 5, 1, 2}, {0, 3, 1, 6}, {0, 8, 1, 4}, {0, 10, 1, 7}, {0, 7, 1, 12}})
	if got := optimum(t, p).Levels[0].Value; got != 35 {
		t.Errorf("takes %d; Johnson's rule takes 35", got)
	}
}

// Nine tasks on like processors (Graham, Bounds on multiprocessing timing
// anomalies, SIAM Journal on Applied Mathematics 17, 1969): 12 on three; the
// first task and the last in line, 3 + 9, keep it at 12 on four. From memory.
func TestProcessors(t *testing.T) {
	for _, processors := range []int{3, 4} {
		p := &problem.Problem{Horizon: 34, Resources: []problem.Resource{{Capacity: processors}}}
		for _, d := range []int{3, 2, 2, 2, 4, 4, 4, 4, 9} {
			p.Activities = append(p.Activities, problem.Activity{
				MinDuration: d, MaxDuration: d, Modes: []problem.Mode{{Uses: []problem.Use{{Amount: 1}}}},
			})
		}
		for _, pair := range [][2]int{{1, 9}, {4, 5}, {4, 6}, {4, 7}, {4, 8}} {
			p.Lags = append(p.Lags, problem.Lag{From: problem.End(pair[0] - 1), To: problem.Start(pair[1] - 1)})
		}
		if got := optimum(t, p).Levels[0].Value; got != 12 {
			t.Errorf("%d processors take %d, want 12", processors, got)
		}
	}
}

// Four cities (a usual example of the travelling salesman: 20, 42, 35, 30, 34,
// 12 between them) have a shortest tour of 97. The salesman is a state, his way
// the work of its changes, each visit takes 1, and he comes home: 97 + 4.
func TestTour(t *testing.T) {
	way := [4][4]int{{0, 20, 42, 35}, {20, 0, 30, 34}, {42, 30, 0, 12}, {35, 34, 12, 0}}
	p := &problem.Problem{Horizon: 200, States: []problem.State{{Name: "salesman", Levels: []string{"A", "B", "C", "D"}}}}
	for _, row := range way {
		var changes []problem.Change
		for _, length := range row {
			changes = append(changes, problem.Change{Work: length})
		}
		p.States[0].Change = append(p.States[0].Change, changes)
	}
	for city := range 4 {
		p.Activities = append(p.Activities, problem.Activity{
			MinDuration: 1, MaxDuration: 1, Modes: []problem.Mode{{Needs: []problem.Need{{Levels: []int{city}}}}},
		})
		if city > 0 {
			p.Lags = append(p.Lags, problem.Lag{From: problem.End(city), To: problem.Start(0)})
		}
	}
	r := optimum(t, p)
	var order []int
	for _, c := range r.Solution.Changes {
		order = append(order, c.Level)
	}
	there, back := []int{1, 2, 3, 0}, []int{3, 2, 1, 0}
	if r.Levels[0].Value != 101 || !slices.Equal(order, there) && !slices.Equal(order, back) {
		t.Errorf("takes %d by way of %v; the tour A B C D A takes 101", r.Levels[0].Value, order)
	}
}

package network

import (
	"fmt"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver/problem"
)

// network is a practical as a scheduling problem, with the way back.
// Time in the problem is minutes from the beginning of set-up.
type network struct {
	practical  *practical.Practical
	problem    *problem.Problem
	origin     practical.TimeOfDay // time 0
	start      int                 // the clock starts
	allowed    int                 // the clock ends
	jobs       []job               // what each activity is
	steps      map[string]*stepJobs
	order      []*stepJobs // the steps as the practical lists them
	serves     []int       // the serve activity of each dish
	washUps    []int       // the wash-ups on the way, in order
	finish     int         // the activity of no length that ends everything
	afterwards []job       // rows outside the clock, in order
	hands      int         // the resource of the cooks' hands
	looks      int
	kit        map[practical.Kit]int
	ovens      []ovenState
	bench      int // the hygiene state, -1 without one
	rinsed     []rinseState
	demands    map[string]timeplan.Demand
	cookOf     map[string]int // by row: who of a pair does it; nil until it is shared out
}

// part is what an activity is within its step, or beside the steps.
type part string

const (
	partReady   part = "ready" // hands washed, apron on
	partHands   part = "hands"
	partPutIn   part = "put-in"
	partWait    part = "wait"
	partTakeOut part = "take-out"
	partServe   part = "serve"
	partWashUp  part = "wash-up"
	partTasting part = "tasting"
	partClean   part = "clean-down"
	partFinish  part = "finish"
)

// job is the origin of an activity.
type job struct {
	part    part
	row     string // the row's name; empty for a wait and for the finish
	dish    int    // index, -1 for all
	step    *practical.Step
	minutes int
}

// stepJobs are the activities of one step; -1 where it has none.
type stepJobs struct {
	step                        *practical.Step
	dish                        int
	hands, putIn, wait, takeOut int
	first, last                 int
	oven                        []int // for each mode of the wait, the oven it means; nil elsewhere
}

// translate turns a practical that is Ready into a network. One function a
// kind of demand, in the order in which they lean on each other.
func translate(p *practical.Practical) *network {
	n := &network{
		practical: p,
		problem:   &problem.Problem{Name: p.Title},
		origin:    p.SetUpFrom(),
		steps:     map[string]*stepJobs{},
		kit:       map[practical.Kit]int{},
		bench:     -1,
		demands:   map[string]timeplan.Demand{},
	}
	n.start = int(p.Clock.Start - n.origin)
	n.allowed = int(p.Allowed() - n.origin)
	n.resources()
	n.ovenStates()
	n.benchState()
	n.rinseStates()
	n.readyJob()
	n.stepActivities()
	n.sequence()
	n.doors()
	n.serving()
	n.washing()
	n.ending()
	n.clock()
	n.pins()
	n.horizon()
	n.mainObjectives()
	return n
}

// at is a time of the problem as a time of day.
func (n *network) at(minute int) practical.TimeOfDay {
	return n.origin + practical.TimeOfDay(minute)
}

// minute is a time of day as a time of the problem.
func (n *network) minute(t practical.TimeOfDay) int { return int(t - n.origin) }

// add puts an activity of fixed length into the problem and remembers its origin.
func (n *network) add(j job, uses []problem.Use, needs []problem.Need) int {
	name := j.row
	if name == "" && j.step != nil {
		name = j.step.ID + "/" + string(j.part)
	}
	a := problem.Activity{Name: name, MinDuration: j.minutes, MaxDuration: j.minutes}
	if len(uses)+len(needs) > 0 {
		a.Modes = []problem.Mode{{Uses: uses, Needs: needs}}
	}
	n.problem.Activities = append(n.problem.Activities, a)
	n.jobs = append(n.jobs, j)
	return len(n.jobs) - 1
}

// inHands is one cook's hands.
func (n *network) inHands() problem.Use { return problem.Use{Resource: n.hands, Amount: 1} }

// demand records what a name means and gives the name back.
func (n *network) demand(name, step, format string, args ...any) string {
	if _, known := n.demands[name]; !known {
		n.demands[name] = timeplan.Demand{Name: name, Step: step, Text: fmt.Sprintf(format, args...)}
	}
	return name
}

// atLeast demands to >= from + min.
func (n *network) atLeast(from, to problem.Point, least int, demand string) {
	n.problem.Lags = append(n.problem.Lags, problem.Lag{From: from, To: to, Min: least, Demand: demand})
}

// atMost demands to <= from + most.
func (n *network) atMost(from, to problem.Point, most int, demand string) {
	n.atLeast(to, from, -most, demand)
}

// exactly demands to = from + gap.
func (n *network) exactly(from, to problem.Point, gap int, demand string) {
	n.atLeast(from, to, gap, demand)
	n.atMost(from, to, gap, demand)
}

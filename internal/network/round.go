package network

import (
	"slices"

	"plait.example/internal/timeplan"
	"plait.example/solver/problem"
)

// Rounding. A cook who reads "9:15" on three rows does them one after another.
// So a plan may be written in steps of five minutes, with nothing broken, when
// every row either begins on a five-minute mark or the moment the same cook's
// row before it ends: following the page then repeats the plan to the minute.
// Food that must come out to the minute is the exception, written to the minute.
// round looks for such times with the order of everything left as it is, which
// makes all demands simple lags (a simple temporal network: R. Dechter, I.
// Meiri, J. Pearl, Temporal constraint networks, 1991).

// mark is the step that times are written in, in minutes.
const mark = 5

// roundTries bounds the search for rounded times.
const roundTries = 4000

// temporal is a simple temporal network. Node 0 is the origin; an activity's
// start and end and every change have a node each.
type temporal struct {
	edges    [][]edge
	earliest []int
}

type edge struct{ to, least int }

func (t *temporal) add(from, to, least int) {
	t.edges[from] = append(t.edges[from], edge{to, least})
}

// raise makes a node no earlier than at and follows the consequences. False
// means a contradiction: the origin would have to move.
func (t *temporal) raise(node, at int) bool {
	if t.earliest[node] >= at {
		return true
	}
	t.earliest[node] = at
	queue := []int{node}
	for len(queue) > 0 {
		from := queue[0]
		queue = queue[1:]
		for _, e := range t.edges[from] {
			if next := t.earliest[from] + e.least; next > t.earliest[e.to] {
				if e.to == 0 || next > longest {
					return false
				}
				t.earliest[e.to] = next
				queue = append(queue, e.to)
			}
		}
	}
	return true
}

// item is something that a cook's hands do, as the rounding sees it.
type item struct {
	node     int
	minutes  int
	at       int  // in the solution
	fixed    bool // a rest break: it stays where it is
	tight    bool // food that must come out to the minute
	previous int  // index of the same cook's item before it, -1 for none
}

// round gives the same plan on five-minute marks, or nil where it cannot be had.
// The rows are the plan's as it stands.
func (n *network) round(s *problem.Solution, rows []timeplan.Row) *problem.Solution {
	t := n.orderKept(s)
	for node := range t.edges {
		if !t.raise(node, 0) {
			return nil
		}
	}
	items := n.handItems(s, rows)
	tries := roundTries
	if !n.place(t, items, 0, make([]int, len(items)), &tries) {
		return nil
	}
	rounded := copySolution(s)
	for a := range rounded.Start {
		rounded.Start[a], rounded.End[a] = t.earliest[startNode(a)], t.earliest[endNode(a)]
	}
	for i := range rounded.Changes {
		rounded.Changes[i].At = t.earliest[n.changeNode(i)]
	}
	slices.SortStableFunc(rounded.Changes, func(a, b problem.StateChange) int { return a.At - b.At })
	return rounded
}

func startNode(a int) int               { return 1 + 2*a }
func endNode(a int) int                 { return 2 + 2*a }
func (n *network) changeNode(i int) int { return 1 + 2*len(n.problem.Activities) + i }

// place gives item i and all after it their times; ends holds those before it.
func (n *network) place(t *temporal, items []item, i int, ends []int, tries *int) bool {
	if i == len(items) {
		return true
	}
	if *tries--; *tries < 0 {
		return false
	}
	it := items[i]
	if it.fixed {
		ends[i] = it.at + it.minutes
		return n.place(t, items, i+1, ends, tries)
	}
	earliest := t.earliest[it.node]
	var choices []int
	if it.previous >= 0 && ends[it.previous] >= earliest {
		choices = append(choices, ends[it.previous])
		earliest = ends[it.previous] + 1
	}
	onMark := earliest + (mark-(int(n.origin)+earliest)%mark)%mark
	choices = append(choices, onMark, onMark+mark, onMark+2*mark)
	if it.tight {
		choices = append(choices, t.earliest[it.node])
	}
	kept := t.earliest
	for _, at := range choices {
		t.earliest = slices.Clone(kept)
		t.edges[it.node] = append(t.edges[it.node], edge{0, -at})
		ok := t.raise(it.node, at) && t.earliest[it.node] == at
		if ok {
			ends[i] = at + it.minutes
			ok = n.place(t, items, i+1, ends, tries)
		}
		if ok {
			return true
		}
		t.edges[it.node] = t.edges[it.node][:len(t.edges[it.node])-1]
	}
	t.earliest = kept
	return false
}

// handItems are the plan's rows in the order of the clock, each with the row
// that the same cook does before it.
func (n *network) handItems(s *problem.Solution, rows []timeplan.Row) []item {
	nodes := n.rowNodes(s)
	var items []item
	last := make([]int, n.practical.Cooks+1) // the item that each cook did last, plus one
	for _, r := range rows {
		node, moves := nodes[r.ID]
		rest := r.Action == timeplan.Rest
		if !moves && !rest || r.Minutes == 0 {
			continue
		}
		cook := max(1, r.Cook)
		items = append(items, item{
			node: node, minutes: r.Minutes, at: n.minute(r.At),
			fixed: rest, tight: n.tight(r), previous: last[cook] - 1,
		})
		last[cook] = len(items)
		if rest {
			for c := range last {
				last[c] = len(items)
			}
		}
	}
	return items
}

// tight says whether a row takes out food whose longest wait is hardly longer
// than its least: it comes out when it is done, mark or no mark.
func (n *network) tight(r timeplan.Row) bool {
	if r.Action != timeplan.TakeOut {
		return false
	}
	w := n.steps[r.Steps[0]].step.Wait
	return w.Most > 0 && w.Most-w.Least < mark
}

// rowNodes are the nodes of the rows that can move, by the rows' names.
func (n *network) rowNodes(s *problem.Solution) map[string]int {
	nodes := map[string]int{}
	for a, j := range n.jobs {
		if j.row != "" {
			nodes[j.row] = startNode(a)
		}
	}
	for id, i := range n.changeNames(s) {
		nodes[id] = n.changeNode(i)
	}
	return nodes
}

package picture

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// Words is the plait in words, line by line in the order of the clock: every row, every wait with its
// place and end, what the ovens stand at, clashes, start and finish.
func Words(p *timeplan.Plan) []string {
	w := &teller{plan: p}
	clock := func(t practical.TimeOfDay) string { return t.Write(p.Hours) }
	w.say(p.Start, 0, clock(p.Start)+" the clock starts.")
	for i, r := range p.Rows {
		w.say(r.At, 2, rowTitle(p, r)+".")
		for _, t := range p.Threads {
			if t.From == i && drawable(t, len(p.Rows)) {
				w.thread(t, r)
			}
		}
	}
	w.otherWaits()
	for _, s := range p.Ovens {
		name := "oven"
		if s.Oven != "" {
			name = s.Oven
		}
		w.say(s.Turned, 3, fmt.Sprintf("%s %s is turned to %s, hot at %s, until %s.", clock(s.Turned), plain(name), plain(s.Words), clock(s.Hot), clock(s.Until)))
	}
	for _, c := range clashes(p) {
		w.say(p.Rows[c.b].At, 4, clashWords(p, c)+".")
	}
	w.say(p.Finish, 5, clock(p.Finish)+" finish. The time allowed ends at "+clock(p.Allowed)+".")
	slices.SortStableFunc(w.lines, func(a, b told) int {
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.rank, b.rank))
	})
	out := make([]string, len(w.lines))
	for i, l := range w.lines {
		out[i] = l.text
	}
	return out
}

// told is a line with where it stands.
type told struct {
	at   practical.TimeOfDay
	rank int
	text string
}

type teller struct {
	plan  *timeplan.Plan
	lines []told
}

func (w *teller) say(at practical.TimeOfDay, rank int, text string) {
	w.lines = append(w.lines, told{at, rank, text})
}

// thread says where food goes when the hands leave it.
func (w *teller) thread(t timeplan.Thread, r timeplan.Row) {
	p := w.plan
	if t.Place == practical.AtHands && t.Wait < 0 {
		return
	}
	w.say(r.End(), 1, r.End().Write(p.Hours)+" "+threadWords(p, t)+".")
}

// pieceWords is what a strand's title says.
func (f *frame) pieceWords(p *piece) string {
	return f.plan.Rows[p.thread.From].End().Write(f.plan.Hours) + " " + threadWords(f.plan, p.thread)
}

// threadWords says of a thread what goes where, and until when: "A, dough: into
// the fridge until 10:05, 27 minutes". There is no verb: food is one or many.
func threadWords(p *timeplan.Plan, t timeplan.Thread) string {
	who := plain(t.Dish)
	if t.Component != "" {
		who += ", " + plain(t.Component)
	}
	if t.To < 0 {
		return who + ": served"
	}
	if t.Place == practical.AtHands && t.Wait < 0 {
		return who + ": still in the hands"
	}
	if t.Wait < 0 || t.Wait >= len(p.Waits) {
		where, known := standing[t.Place]
		if !known {
			where = standing[practical.AtSide]
		}
		return fmt.Sprintf("%s: ready %s until %s", who, where, p.Rows[t.To].At.Write(p.Hours))
	}
	return waitWords(p, who, p.Waits[t.Wait])
}

// waitWords says what waits where, until when, and what it asks of the cook.
func waitWords(p *timeplan.Plan, who string, wait timeplan.Wait) string {
	where, known := going[wait.Place]
	if !known {
		where = going[practical.AtSide]
	}
	s := fmt.Sprintf("%s: %s until %s, %s", who, where, wait.Until.Write(p.Hours), minutes(int(wait.Until-wait.From)))
	switch {
	case wait.Attention == practical.Look && wait.Every > 0:
		s += fmt.Sprintf("; look every %s", minutes(wait.Every))
	case wait.Attention == practical.Stay:
		s += "; stay with it"
	}
	return s
}

// otherWaits tells the waits that no thread shows.
func (w *teller) otherWaits() {
	shown := map[int]bool{}
	for _, t := range w.plan.Threads {
		if drawable(t, len(w.plan.Rows)) && t.To >= 0 {
			shown[t.Wait] = true
		}
	}
	for i, wait := range w.plan.Waits {
		if !shown[i] {
			w.say(wait.From, 1, wait.From.Write(w.plan.Hours)+" "+waitWords(w.plan, plain(wait.Dish), wait)+".")
		}
	}
}

var going = map[practical.Place]string{
	practical.AtBench: "on the bench", practical.AtFreezer: "into the freezer", practical.AtFridge: "into the fridge",
	practical.AtWarm: "to a warm place", practical.AtSide: "on the side", practical.AtHands: "in the hands",
	practical.AtHob: "on the hob", practical.AtOven: "into the oven", practical.AtGrill: "under the grill",
	practical.AtMicrowave: "into the microwave", practical.Served: "to the table",
}

var standing = map[practical.Place]string{
	practical.AtBench: "on the bench", practical.AtFreezer: "in the freezer", practical.AtFridge: "in the fridge",
	practical.AtWarm: "in a warm place", practical.AtSide: "on the side", practical.AtHands: "in the hands",
	practical.AtHob: "on the hob", practical.AtOven: "in the oven", practical.AtGrill: "under the grill",
	practical.AtMicrowave: "in the microwave", practical.Served: "at the table",
}

// rowTitle is a row in words: "9:30 A, Put the peppers in (1 minute)".
func rowTitle(p *timeplan.Plan, r timeplan.Row) string {
	s := r.Clock.Write(p.Hours) + " "
	if p.Cooks > 1 && r.Cook > 0 {
		s += fmt.Sprintf("cook %d: ", r.Cook)
	}
	if r.Dish != "" {
		s += plain(r.Dish) + ", "
	}
	s += strings.TrimRight(plain(r.Text), ". ")
	if r.Minutes > 0 {
		s += " (" + minutes(r.Minutes) + ")"
	}
	if r.Pinned {
		s += ", pinned"
	}
	return s
}

// clashWords says what overlaps.
func clashWords(p *timeplan.Plan, c clash) string {
	a, b := p.Rows[c.a], p.Rows[c.b]
	name := func(r timeplan.Row) string {
		if r.Dish != "" {
			return plain(r.Dish) + ", " + strings.TrimRight(plain(r.Text), ". ")
		}
		return strings.TrimRight(plain(r.Text), ". ")
	}
	return fmt.Sprintf("Clash from %s to %s: one cook's hands are at %q and at %q",
		b.At.Write(p.Hours), min(a.End(), b.End()).Write(p.Hours), name(a), name(b))
}

// title and description name the picture.
func title(p *timeplan.Plan) string {
	if t := plain(p.Title); t != "" {
		return "Plait of " + t
	}
	return "Plait of the plan"
}

func description(p *timeplan.Plan) string {
	var dishes []string
	for _, d := range p.Dishes {
		dishes = append(dishes, plain(d.Letter)+" "+plain(d.Name))
	}
	s := fmt.Sprintf("Time runs down the page from %s to %s; places stand across it. ", p.SetUp.Write(p.Hours), p.Finish.Write(p.Hours))
	if len(dishes) > 0 {
		s += "Strands: " + strings.Join(dishes, "; ") + ". "
	}
	if n := len(clashes(p)); n > 0 {
		s += fmt.Sprintf("Clashes in the hands: %d. ", n)
	}
	return s + "The same stands in words beside it."
}

// plain is text on one line.
func plain(s string) string { return strings.Join(strings.Fields(s), " ") }

func minutes(n int) string {
	if n == 1 {
		return "1 minute"
	}
	return strconv.Itoa(n) + " minutes"
}

func shortMinutes(n int) string { return strconv.Itoa(n) + " min" }

func itoa(n int) string { return strconv.Itoa(n) }

package feedback

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/check"
	"plait.example/internal/match"
	"plait.example/internal/written"
)

// Class is what a teacher sees of all plans together.
type Class struct {
	Pupils []Pupil
	Faults []Fault // the most common first
	Again  []Topic // what to teach again, the most needed first
	Unread []Unread
	Busy   []Busy // of the room, by kind and then by the clock
}

// Pupil is one line of the table: who, and how far.
type Pupil struct {
	Who, File            string
	Rows                 int
	Begins, Ends         string // HH:MM of the first and the last row; empty: no row has a time
	Found, Steps         int    // steps of the recipes that have a row, of all; 0 of 0 without recipes
	Stops, Marks, Polish int
	Main                 string // question that matters most; empty: none
	Mended, Still, Newer int
	Second               bool // there is an earlier version
	Missed               []check.Finding
	findings             []check.Finding
}

// Fault is a rule with how many pupils it was found for.
type Fault struct {
	Rule, Family string
	Severity     check.Severity
	Number       int // of the trade's list; 0: none
	Pupils       []string
	Question     string // as one of them was asked
}

// Topic is something to teach again.
type Topic struct {
	Family string
	What   string
	Pupils int
	Rules  []string
}

// Unread is a file that could not be read.
type Unread struct{ File, Why string }

// topics are what is taught again when a family of faults is common (common
// practice, no source).
var topics = map[string]string{
	"clock":              "Reading a plan against the clock: times in order, a length for each row, nothing in two places of the clock at once, a finish with time in hand",
	"pairs":              "What goes in comes out: a row for each, the time between them, and a timer",
	"oven and kit":       "The oven as something shared: hot in time, one heat at a time, shelves and rings counted",
	"food":               "What food needs while nobody touches it: resting, proving, chilling, cooling, and how hot food stays hot",
	"method":             "From recipe to rows: every stage of the recipe has its row, in an order that can be cooked",
	"hygiene and safety": "Raw and ready to eat: cleaning between, hands, cold food kept cold, core temperature, allergens",
	"dovetailing":        "Dovetailing: begin with what takes longest by itself, and work on another dish while it does",
	"words":              "Saying it so that a stranger could cook it: temperatures, times, signs of readiness, how it is served",
}

// ClassOf makes the table of a class in a room.
func ClassOf(plans []Plan, unread []Unread, room Room) Class {
	c := Class{Unread: unread, Busy: busy(plans, room)}
	faults := map[string]*Fault{}
	var order []string
	for _, p := range plans {
		c.Pupils = append(c.Pupils, pupilOf(p))
		seen := map[string]bool{}
		for _, f := range p.Findings {
			if seen[f.Rule] {
				continue
			}
			seen[f.Rule] = true
			if faults[f.Rule] == nil {
				faults[f.Rule] = &Fault{Rule: f.Rule, Family: f.Family, Severity: f.Severity, Number: f.Fault, Question: f.Question}
				order = append(order, f.Rule)
			}
			faults[f.Rule].Pupils = append(faults[f.Rule].Pupils, p.Who())
		}
	}
	for _, rule := range order {
		c.Faults = append(c.Faults, *faults[rule])
	}
	slices.SortStableFunc(c.Faults, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(len(b.Pupils), len(a.Pupils)), cmp.Compare(rank(a.Severity), rank(b.Severity)), cmp.Compare(a.Rule, b.Rule))
	})
	c.Again = c.again(len(plans))
	return c
}

// again lists the families in which a fault that is not small was found for at
// least a third of the class, and for two.
func (c Class) again(of int) (all []Topic) {
	at := map[string]int{}
	for _, f := range c.Faults {
		if f.Severity == check.Polish || len(f.Pupils) < 2 || 3*len(f.Pupils) < of {
			continue
		}
		i, known := at[f.Family]
		if !known {
			i = len(all)
			at[f.Family] = i
			all = append(all, Topic{Family: f.Family, What: cmp.Or(topics[f.Family], f.Family), Pupils: len(f.Pupils)})
		}
		all[i].Rules = append(all[i].Rules, f.Rule)
	}
	return all
}

func pupilOf(p Plan) Pupil {
	one := Pupil{Who: p.Who(), File: p.File, Rows: len(p.Matched.Rows), findings: p.Findings}
	for _, f := range p.Findings {
		switch f.Severity {
		case check.Stops:
			one.Stops++
		case check.Marks:
			one.Marks++
		case check.Polish:
			one.Polish++
		}
	}
	if top := Top(p.Findings, 1); len(top) > 0 {
		one.Main = top[0].Question
		if top[0].Row > 0 {
			one.Main = fmt.Sprintf("Row %d: %s", top[0].Row, one.Main)
		}
	}
	one.Begins, one.Ends = ends(p.Matched.Rows)
	one.Found, one.Steps = steps(p.Matched)
	if p.Before != nil {
		m := Compare(*p.Before, p)
		one.Second, one.Mended, one.Still, one.Newer = true, len(m.Gone), len(m.Still), len(m.New)
	}
	return one
}

// ends are the times of the first and the last row that have one.
func ends(rows []match.Row) (first, last string) {
	for _, r := range rows {
		if r.Clock == written.NoClock {
			continue
		}
		if first == "" {
			first = r.At.String()
		}
		last = r.At.String()
		if r.HasUntil {
			last = r.Until.String()
		}
	}
	return first, last
}

// steps counts the recipes' steps that some row stands for.
func steps(m match.Matched) (found, all int) {
	if m.Practical == nil {
		return 0, 0
	}
	have := map[string]bool{}
	for _, r := range m.Rows {
		for _, s := range r.Steps {
			have[s.ID] = true
		}
	}
	for _, d := range m.Practical.Dishes {
		for _, s := range d.Steps {
			all++
			if have[s.ID] {
				found++
			}
		}
	}
	return found, all
}

// Text is the table of the class to read.
func (c Class) Text() []byte {
	var b strings.Builder
	b.WriteString("The class\n=========\n")
	for _, p := range c.Pupils {
		fmt.Fprintf(&b, "%s: %s\n", p.Who, p.far())
		if p.Main != "" {
			fmt.Fprintf(&b, "    %s\n", p.Main)
		}
	}
	if len(c.Unread) > 0 {
		b.WriteString("\nCould not be read\n-----------------\n")
		for _, u := range c.Unread {
			fmt.Fprintf(&b, "%s: %s\n", u.File, u.Why)
		}
	}
	if len(c.Faults) > 0 {
		fmt.Fprintf(&b, "\nFaults, the most common first (of %d plans)\n%s\n", len(c.Pupils), strings.Repeat("-", 42))
		for _, f := range c.Faults {
			fmt.Fprintf(&b, "%3d  %s (%s, %s): %s\n     %s\n", len(f.Pupils), f.Rule, f.Family, f.Severity, f.Question, strings.Join(f.Pupils, ", "))
		}
	}
	if len(c.Busy) > 0 {
		b.WriteString("\nThe room, by the plans as they were read\n----------------------------------------\n")
		for _, one := range c.Busy {
			fmt.Fprintf(&b, "%s to %s: %s: %s\n", one.From, one.Until, one.Words(), strings.Join(one.Names(), ", "))
		}
	}
	if len(c.Again) > 0 {
		b.WriteString("\nTo teach again\n--------------\n")
		for _, t := range c.Again {
			fmt.Fprintf(&b, "- %s (%s: up to %d of %d)\n", t.What, strings.Join(t.Rules, ", "), t.Pupils, len(c.Pupils))
		}
	}
	b.WriteString("\n" + strings.Join(Cautions, "\n") + "\n")
	return Marked([]byte(b.String()))
}

// far says how far a plan is.
func (p Pupil) far() string {
	parts := []string{fmt.Sprintf("%d rows", p.Rows)}
	if p.Begins != "" {
		parts = append(parts, p.Begins+" to "+p.Ends)
	}
	if p.Steps > 0 {
		parts = append(parts, fmt.Sprintf("%d of %d steps found", p.Found, p.Steps))
	}
	parts = append(parts, fmt.Sprintf("%d stop the cook, %d cost marks, %d small", p.Stops, p.Marks, p.Polish))
	if p.Second {
		parts = append(parts, fmt.Sprintf("since the last version %d mended, %d still there, %d new", p.Mended, p.Still, p.Newer))
	}
	return strings.Join(parts, "; ")
}

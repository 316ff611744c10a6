package app

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"

	"plait.example/internal/check"
	"plait.example/internal/format"
	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// PlanFile is a file with a plan that somebody wrote, or why it could not be opened.
type PlanFile struct {
	Name string
	Data []byte
	Err  error
	Own  string // why it is no plan though nothing is wrong with it: plait wrote it; empty: it may be one
}

// CheckOptions say how plans are checked. The zero value is the usual way.
type CheckOptions struct {
	Practical *practical.Practical        // nil: only what needs no recipe is checked
	Rules     check.Rules                 // zero: the usual ones
	Fixed     map[string]map[int][]string // of a file by name: steps that a teacher gave a row, by its number
	Checked   func(done, of int)          // called after each plan, one at a time
}

// Checked is a plan that was read and checked, or why it could not be.
type Checked struct {
	File      string
	Fault     *practical.Fault // nil: it was read
	Unchecked *practical.Fault // why the rows that were read were not checked; nil: they were
	Matched   match.Matched
	Findings  []check.Finding // the worst first
	Notes     []string        // what the file holds that was not read
	Word      bool            // it is a Word document, which can carry comments
}

// Stops says whether a finding stops the cook.
func (c Checked) Stops() bool {
	for _, f := range c.Findings {
		if f.Severity == check.Stops {
			return true
		}
	}
	return false
}

// Empty says whether the file was read and no plan was found in it.
func (c Checked) Empty() bool { return c.Fault == nil && len(c.Matched.Rows) == 0 }

// Check reads plans that people wrote and finds what would go wrong, on all
// processors; the answers stand in the order of the files. What breaks at one
// plan stops only that one, as a Fault. When ctx ends, the plans not yet checked have a Fault.
func (a *App) Check(ctx context.Context, files []PlanFile, o CheckOptions) []Checked {
	all := make([]Checked, len(files))
	spread(len(files), func(i int) { all[i] = a.checkSafely(ctx, files[i], o) }, o.Checked)
	return all
}

// spread does n pieces of work on all processors; told, which may be nil, is
// called after each, one at a time.
func spread(n int, do func(i int), told func(done, of int)) {
	var next atomic.Int64
	var telling sync.Mutex
	var work sync.WaitGroup
	done := 0
	for range min(runtime.GOMAXPROCS(0), n) {
		work.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
				if told != nil {
					telling.Lock()
					done++
					told(done, n)
					telling.Unlock()
				}
			}
		})
	}
	work.Wait()
}

// checkSafely checks one plan; a fault of ours in it is told as one.
func (a *App) checkSafely(ctx context.Context, f PlanFile, o CheckOptions) (c Checked) {
	defer func() {
		if r := recover(); r != nil {
			a.log().Error("a plan could not be checked", "file", f.Name, "panic", r)
			c = Checked{File: f.Name, Fault: &practical.Fault{
				File: f.Name, Code: practical.Internal, Message: "plait failed at this plan", Hint: "save it in another format and give it again; the other plans were checked",
			}}
		}
	}()
	c, err := checkOne(ctx, f, o)
	if err != nil {
		return Checked{File: f.Name, Fault: &practical.Fault{File: f.Name, Code: practical.Invalid, Message: "not checked: stopped before it was done", Hint: "check it again"}}
	}
	return c
}

// MostRows is how many rows of a plan are checked: ten times those of a long
// plan. Matching and some rules compare each row with each other, so that a
// document of thousands of rows, which is no plan of one practical, would take minutes.
const MostRows = 600

// checkOne checks one plan. The error is that of ctx, which has ended.
func checkOne(ctx context.Context, f PlanFile, o CheckOptions) (c Checked, err error) {
	c.File = f.Name
	if err := ctx.Err(); err != nil {
		return c, err
	}
	plan, fault := readPlan(ctx, f, o.Practical, &c)
	if c.Fault = fault; fault != nil {
		return c, ctx.Err()
	}
	if n := len(plan.Rows); n > MostRows {
		c.Matched = match.Matched{Plan: plan, Practical: o.Practical}
		for _, r := range plan.Rows {
			c.Matched.Rows = append(c.Matched.Rows, match.Row{Row: r})
		}
		c.Unchecked = &practical.Fault{
			File: f.Name, Code: practical.TooLarge, Message: fmt.Sprintf("%d rows were read and not checked; plans of up to %d rows are, and one practical has some 60", n, MostRows),
			Hint: "hand in each plan as a file of its own",
		}
		return c, ctx.Err()
	}
	if c.Matched, err = match.MatchWithin(ctx, plan, o.Practical, o.Fixed[f.Name]); err != nil {
		return c, err
	}
	c.Findings, err = check.RunWithin(ctx, c.Matched, check.Options{Rules: o.Rules})
	return c, err
}

// mostLines is how many lines and rows of tables of a document are looked at for
// a plan, so that one the size of a book is read in a second.
const mostLines = 3000

// readPlan reads the plan of a file, and notes in c how.
func readPlan(ctx context.Context, f PlanFile, p *practical.Practical, c *Checked) (plan written.Plan, fault *practical.Fault) {
	if f.Err != nil {
		return plan, faultOf(f.Name, f.Err)
	}
	if len(f.Data) > MostFile {
		return plan, &practical.Fault{
			File: f.Name, Code: practical.TooLarge, Message: fmt.Sprintf("the file is larger than %d bytes; nothing of it was read", MostFile),
			Hint: "take the pictures out of it",
		}
	}
	document, err := format.Read(f.Name, f.Data)
	if err != nil {
		fault := faultOf(f.Name, cmp.Or(errors.Unwrap(err), err)) // without the name, which the fault has
		fault.Message = planWords.Replace(fault.Message)
		return plan, fault
	}
	c.Notes, c.Word = document.Notes, document.Kind == format.Word
	if plan, is := written.Own(f.Name, document.Text); is && document.Kind == format.Text {
		return plan, nil
	}
	blocks, left := format.FirstLines(document.Blocks, mostLines)
	if left > 0 {
		c.Notes = append(c.Notes[:len(c.Notes):len(c.Notes)],
			fmt.Sprintf("%d lines and rows after the first %d were not looked at: a plan is shorter; the file is kept as it came", left, mostLines))
	}
	if ctx.Err() != nil {
		return plan, nil
	}
	return written.Read(f.Name, blocks, knownOf(p)), nil
}

// planWords makes advice about a file of recipes advice about a plan.
var planWords = strings.NewReplacer("recipe's", "plan's", "the recipe", "the plan")

// faultOf is what could not be read, as a fault at the file.
func faultOf(name string, err error) *practical.Fault {
	if f, is := errors.AsType[practical.Fault](err); is {
		f.File = cmp.Or(f.File, name)
		return &f
	}
	return &practical.Fault{File: name, Code: practical.Invalid, Message: err.Error()} // it says what would be right
}

// knownOf is what a practical says that helps to read a plan.
func knownOf(p *practical.Practical) (o written.Options) {
	if p == nil {
		return o
	}
	o.Clock = &p.Clock
	for _, d := range p.Dishes {
		o.Dishes = append(o.Dishes, written.Named{Letter: d.Letter, Name: d.Name})
	}
	return o
}

// RecipesCheck makes the practical that plans are checked against from recipes
// as they are: dishes A, B, C in their order, the usual kitchen and rules, and
// this clock. What was left out of the recipes comes back beside it.
func (a *App) RecipesCheck(all []FileRecipes, clock practical.Clock) (*practical.Practical, practical.Faults, error) {
	p, left, err := a.RecipesPractical(all)
	if err != nil {
		return nil, left, err
	}
	clock.Hours, clock.Round = cmp.Or(clock.Hours, p.Clock.Hours), cmp.Or(clock.Round, p.Clock.Round)
	p.Clock = clock
	return p, left, nil
}

// setUpMinutes is how long before the clock set-up begins where nobody says: one
// of 15 to 45 in use (common practice, no source).
const setUpMinutes = 30

// ClockOf reads a session such as "09:00-12:00", and when set-up begins; empty: half an
// hour before.
func ClockOf(session, setUp string) (practical.Clock, error) {
	wrong := practical.Fault{Code: practical.Invalid, Field: "clock", Message: fmt.Sprintf("%q is not when a session starts and ends", session), Hint: "such as 09:00-12:00"}
	from, to, cut := strings.Cut(session, "-")
	start, errStart := practical.ParseTimeOfDay(from)
	finish, errFinish := practical.ParseTimeOfDay(to)
	if !cut || errStart != nil || errFinish != nil {
		return practical.Clock{}, wrong
	}
	if finish <= start {
		wrong.Message = fmt.Sprintf("%s is not after %s", finish, start)
		return practical.Clock{}, wrong
	}
	clock := practical.Clock{SetUp: max(0, start-setUpMinutes), Start: start, Finish: finish}
	if setUp == "" {
		return clock, nil
	}
	begins, err := practical.ParseTimeOfDay(setUp)
	if err != nil || begins > start {
		return practical.Clock{}, practical.Fault{
			Code: practical.Invalid, Field: "set-up", Message: fmt.Sprintf("set-up cannot begin at %q", setUp), Hint: fmt.Sprintf("a time before the clock starts at %s, such as 08:30", start),
		}
	}
	clock.SetUp = begins
	return clock, nil
}

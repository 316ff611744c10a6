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
	File     string
	Fault    *practical.Fault // nil: it was read
	Matched  match.Matched
	Findings []check.Finding // the worst first
	Notes    []string        // what the file holds that was not read
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
	var next, done atomic.Int64
	var told sync.Mutex
	var work sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		work.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(files); i = int(next.Add(1)) - 1 {
				all[i] = a.checkSafely(ctx, files[i], o)
				if o.Checked != nil {
					told.Lock()
					o.Checked(int(done.Add(1)), len(files))
					told.Unlock()
				}
			}
		})
	}
	work.Wait()
	return all
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
	if err := ctx.Err(); err != nil {
		return Checked{File: f.Name, Fault: &practical.Fault{File: f.Name, Code: practical.Invalid, Message: "not checked: stopped before it was done", Hint: "check it again"}}
	}
	return checkOne(f, o)
}

func checkOne(f PlanFile, o CheckOptions) Checked {
	c := Checked{File: f.Name}
	plan, notes, fault := readPlan(f, o.Practical)
	if c.Notes = notes; fault != nil {
		c.Fault = fault
		return c
	}
	c.Matched = match.Match(plan, o.Practical, o.Fixed[f.Name])
	c.Findings = check.Run(c.Matched, check.Options{Rules: o.Rules})
	return c
}

// readPlan reads the plan of a file.
func readPlan(f PlanFile, p *practical.Practical) (written.Plan, []string, *practical.Fault) {
	if f.Err != nil {
		return written.Plan{}, nil, faultOf(f.Name, f.Err)
	}
	if len(f.Data) > MostFile {
		return written.Plan{}, nil, &practical.Fault{
			File: f.Name, Code: practical.TooLarge, Message: fmt.Sprintf("the file is larger than %d bytes; nothing of it was read", MostFile),
			Hint: "take the pictures out of it",
		}
	}
	document, err := format.Read(f.Name, f.Data)
	if err != nil {
		fault := faultOf(f.Name, cmp.Or(errors.Unwrap(err), err)) // without the name, which the fault has
		fault.Message = planWords.Replace(fault.Message)
		return written.Plan{}, nil, fault
	}
	if plan, is := written.Own(f.Name, document.Text); is && document.Kind == format.Text {
		return plan, document.Notes, nil
	}
	return written.Read(f.Name, document.Blocks, knownOf(p)), document.Notes, nil
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

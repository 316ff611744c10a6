package app

import (
	"context"
	"fmt"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"plait.example/internal/check"
	"plait.example/internal/feedback"
	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// HandedIn is a file with a learner's plan as it was handed in.
type HandedIn = timeplan.HandedIn

// Handing keeps the plans that learners wrote. A method is one transaction.
type Handing interface {
	// HandIn keeps files for a practical, all or none, and gives how many of them are
	// new: what is there already is not kept twice (NotFound: no such practical).
	HandIn(ctx context.Context, practical string, files []HandedIn, at time.Time) (int, error)
	// HandedIn is every plan of a practical, the first one first, those put away too, without the files.
	HandedIn(ctx context.Context, practical string) ([]HandedIn, error)
	// HandedData is the file of a plan as it came (NotFound: the practical has no such plan).
	HandedData(ctx context.Context, practical string, id int64) ([]byte, error)
	// Fix keeps which steps the rows of a plan stand for, by the row's number.
	Fix(ctx context.Context, practical string, id int64, fixed map[int][]string) error
	// PutAway puts a plan away, or brings it back.
	PutAway(ctx context.Context, practical string, id int64, away bool) error
}

// HandedPlan is a plan that was handed in, read and checked as it stands now.
type HandedPlan struct {
	HandedIn
	Checked
	Who    string
	Before *HandedPlan // the same learner's plan before it; nil: none
	Later  bool        // the same learner has handed in a later one
}

// Mended says what has become of what was found in the plan before; false when
// there is none.
func (h HandedPlan) Mended() (feedback.Mended, bool) {
	if h.Before == nil {
		return feedback.Mended{}, false
	}
	return feedback.Compare(h.Before.plan(), h.plan()), true
}

// Count is the number of findings of a severity.
func (h HandedPlan) Count(s check.Severity) (n int) {
	for _, f := range h.Findings {
		if f.Severity == s {
			n++
		}
	}
	return n
}

// Plait is the learner's own plan, to be drawn.
func (h HandedPlan) Plait() *timeplan.Plan { return feedback.Plait(h.Matched) }

func (h HandedPlan) plan() feedback.Plan {
	return feedback.Plan{File: h.Name, Matched: h.Matched, Findings: h.Findings}
}

// Handed says what became of files that were handed in.
type Handed struct {
	Kept   int              // plans that are new
	There  int              // plans that were there already
	Passed []PlanFile       // files that plait wrote itself, and so are no plans
	Faults practical.Faults // of files that could not be opened
}

// HandIn keeps plans for a practical; an archive is kept as the plans in it. A
// file that cannot be opened is told and the others are kept. The same files
// handed in again are not kept twice.
func (a *App) HandIn(ctx context.Context, id string, files []PlanFile) (h Handed, err error) {
	var keep []HandedIn
	for _, given := range files {
		if beside(path.Base(filepath.ToSlash(given.Name))) {
			continue // a folder brings what a system put there
		}
		for _, f := range PlansIn(given.Name, given.Data) {
			switch {
			case f.Err != nil:
				h.Faults = append(h.Faults, *faultOf(f.Name, f.Err))
			case f.Own != "":
				h.Passed = append(h.Passed, f)
			default:
				keep = append(keep, HandedIn{Name: f.Name, Data: f.Data})
			}
		}
	}
	if len(keep) == 0 {
		return h, nil
	}
	h.Kept, err = a.Store.HandIn(ctx, id, keep, a.now())
	h.There = len(keep) - h.Kept
	return h, err
}

// handing is the plans of a practical that are not put away, and what they are
// checked against.
type handing struct {
	rec   Record
	rules RulesInUse
	kept  []HandedIn
	keys  []checkKey
}

func (a *App) handing(ctx context.Context, id string) (h handing, err error) {
	if h.rec, err = a.Open(ctx, id); err != nil {
		return h, err
	}
	if h.kept, err = a.Store.HandedIn(ctx, id); err != nil {
		return h, err
	}
	if h.rules, err = a.Rules(ctx); err != nil {
		return h, err
	}
	h.kept = slices.DeleteFunc(h.kept, func(h HandedIn) bool { return h.Away })
	rules := h.rules.Own
	if len(h.rules.Faults) > 0 {
		rules = ""
	}
	h.keys, err = keysOf(h.kept, h.rec.Practical, rules)
	return h, err
}

// check is the check of the i-th plan, which is made when it is not kept.
func (a *App) checkHanded(ctx context.Context, h handing, i int) Checked {
	c := a.checks.do(ctx, h.keys[i], func() (Checked, bool) {
		f := PlanFile{Name: h.kept[i].Name}
		if f.Data, f.Err = a.Store.HandedData(ctx, h.rec.ID, h.kept[i].ID); f.Err != nil {
			return a.checkSafely(ctx, f, CheckOptions{}), false
		}
		o := CheckOptions{Practical: h.rec.Practical, Rules: h.rules.Rules, Fixed: map[string]map[int][]string{f.Name: h.kept[i].Fixed}}
		c := a.checkSafely(ctx, f, o)
		return c, ctx.Err() == nil
	})
	return c
}

// PlansToCheck says how many plans of a practical a look at them all would
// check, since nothing is kept of them, and how many there are.
func (a *App) PlansToCheck(ctx context.Context, id string) (wanting, of int, err error) {
	h, err := a.handing(ctx, id)
	if err != nil {
		return 0, 0, err
	}
	for _, key := range h.keys {
		if _, is := a.checks.get(key); !is {
			wanting++
		}
	}
	return wanting, len(h.keys), nil
}

// HandedPlans checks every plan that was handed in for a practical and is not
// put away, against the practical as it stands now, in the order they came. What
// was checked before is not checked again. told, which may be nil, is called after
// each plan, one at a time. When ctx ends the error is its own, and what was done is kept.
func (a *App) HandedPlans(ctx context.Context, id string, told func(done, of int)) (Record, []*HandedPlan, error) {
	h, err := a.handing(ctx, id)
	if err != nil {
		return h.rec, nil, err
	}
	checked := make([]Checked, len(h.kept))
	spread(len(h.kept), func(i int) { checked[i] = a.checkHanded(ctx, h, i) }, told)
	var all []*HandedPlan
	for i, c := range checked {
		one := &HandedPlan{HandedIn: h.kept[i], Checked: c}
		one.Who = one.plan().Who()
		if one.Before = before(all, one); one.Before != nil {
			one.Before.Later = true
		}
		all = append(all, one)
	}
	return h.rec, all, ctx.Err()
}

// before is the last plan that the same learner handed in before this one, at
// another time: files that came together are of different learners.
func before(all []*HandedPlan, h *HandedPlan) *HandedPlan {
	for i := len(all) - 1; i >= 0; i-- {
		if !all[i].At.Before(h.At) {
			continue
		}
		if earlier(h.plan(), []Checked{all[i].named()}) != nil {
			return all[i]
		}
	}
	return nil
}

// named is the check under the name of the file alone.
func (h *HandedPlan) named() Checked {
	c := h.Checked
	c.File = h.Name
	return c
}

// HandedPlan is one plan that was handed in, with the one before it.
func (a *App) HandedPlan(ctx context.Context, id string, plan int64) (Record, *HandedPlan, error) {
	rec, all, err := a.HandedPlans(ctx, id, nil)
	if err != nil {
		return rec, nil, err
	}
	if i := slices.IndexFunc(all, func(h *HandedPlan) bool { return h.ID == plan }); i >= 0 {
		return rec, all[i], nil
	}
	return rec, nil, practical.Fault{Code: practical.NotFound, Message: "this plan is not there, or it was put away", Hint: "go back to the list of plans"}
}

// HandedFile is the file of a plan as it came.
func (a *App) HandedFile(ctx context.Context, id string, plan int64) (Document, error) {
	kept, err := a.Store.HandedIn(ctx, id)
	if err != nil {
		return Document{}, err
	}
	data, err := a.Store.HandedData(ctx, id, plan)
	if err != nil {
		return Document{}, err
	}
	name := ""
	if i := slices.IndexFunc(kept, func(h HandedIn) bool { return h.ID == plan }); i >= 0 {
		name = path.Base(filepath.ToSlash(kept[i].Name))
	}
	return Document{Name: name, MediaType: "application/octet-stream", Data: data}, nil
}

// FixRow keeps which steps a row of a plan stands for, each once; clear leaves it
// to the matching again. A row that the plan does not have and a step that the
// practical does not have are faults, and nothing is kept then.
func (a *App) FixRow(ctx context.Context, id string, plan int64, row int, steps []string, clear bool) error {
	rec, h, err := a.HandedPlan(ctx, id, plan)
	if err != nil {
		return err
	}
	if !slices.ContainsFunc(h.Matched.Rows, func(r match.Row) bool { return r.Number == row }) {
		hint := "this plan has no rows: nothing can be corrected in it"
		if n := len(h.Matched.Rows); n > 0 {
			hint = fmt.Sprintf("a row from %d to %d", h.Matched.Rows[0].Number, h.Matched.Rows[n-1].Number)
		}
		return practical.Fault{Code: practical.Invalid, Field: "row", Message: fmt.Sprintf("the plan has no row %d", row), Hint: hint}
	}
	var fixed []string
	for _, s := range steps {
		if !slices.Contains(stepIDs(rec.Practical), s) {
			return practical.Fault{
				Code: practical.Invalid, Field: "step", Message: fmt.Sprintf("the practical has no step %.40q; it may have been changed meanwhile", s),
				Hint: "one of " + strings.Join(stepIDs(rec.Practical), ", "),
			}
		}
		if !slices.Contains(fixed, s) {
			fixed = append(fixed, s)
		}
	}
	all := maps.Clone(h.Fixed)
	if all == nil {
		all = map[int][]string{}
	}
	if all[row] = fixed; clear {
		delete(all, row)
	}
	return a.Store.Fix(ctx, id, plan, all)
}

// stepIDs are the names of all that a row can stand for.
func stepIDs(p *practical.Practical) (ids []string) {
	for _, d := range p.Dishes {
		for _, s := range d.Steps {
			ids = append(ids, s.ID)
		}
		ids = append(ids, d.Letter+ServeStep)
	}
	return ids
}

// ServeStep behind a dish's letter is the name of its serving, as of a step.
const ServeStep = "/serve"

// PutAside is every plan of a practical that was put away, the first one first.
func (a *App) PutAside(ctx context.Context, id string) ([]HandedIn, error) {
	kept, err := a.Store.HandedIn(ctx, id)
	return slices.DeleteFunc(kept, func(h HandedIn) bool { return !h.Away }), err
}

// PutPlanAway puts a plan away, or brings it back.
func (a *App) PutPlanAway(ctx context.Context, id string, plan int64, away bool) error {
	return a.Store.PutAway(ctx, id, plan, away)
}

// Class is what a teacher sees of all plans together in a room: the last one of each learner.
func (a *App) Class(plans []*HandedPlan, room Room) feedback.Class {
	last, before := lastOnes(plans)
	class, _ := classOf(last, before, room)
	return class
}

// lastOnes are the last plans of each learner, and those before them.
func lastOnes(plans []*HandedPlan) (last, before []Checked) {
	for _, h := range plans {
		if h.Later {
			before = append(before, h.named())
		} else {
			last = append(last, h.named())
		}
	}
	return last, before
}

// ClassSheet is the table of the class as a workbook.
func (a *App) ClassSheet(plans []*HandedPlan, room Room) (Document, error) {
	last, before := lastOnes(plans)
	all, err := a.Feedback(make([]PlanFile, len(last)), last, before, Assessed, room)
	if err != nil {
		return Document{}, err
	}
	return all[0], nil
}

// Stands says what steps a row of a plan stands for, in words, for a page.
func Stands(p *practical.Practical, r match.Row) (list []string) {
	for _, s := range r.Steps {
		text := s.ID
		for _, d := range p.Dishes {
			for _, step := range d.Steps {
				if step.ID == s.ID {
					text += " " + step.Text
				}
			}
		}
		list = append(list, text)
	}
	return list
}

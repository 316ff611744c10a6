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
	// HandIn keeps files for a practical, all or none (NotFound: no such practical).
	HandIn(ctx context.Context, practical string, files []HandedIn, at time.Time) error
	// HandedIn is every plan of a practical, the first one first, those put away too.
	HandedIn(ctx context.Context, practical string) ([]HandedIn, error)
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

// HandIn keeps plans for a practical; an archive is kept as the plans in it. A
// file that cannot be opened is told and the others are kept. It gives how many were kept.
func (a *App) HandIn(ctx context.Context, id string, files []PlanFile) (int, practical.Faults, error) {
	var keep []HandedIn
	var faults practical.Faults
	for _, given := range files {
		if beside(path.Base(filepath.ToSlash(given.Name))) {
			continue // a folder brings what a system put there
		}
		for _, f := range PlansIn(given.Name, given.Data) {
			if f.Err != nil {
				faults = append(faults, *faultOf(f.Name, f.Err))
				continue
			}
			keep = append(keep, HandedIn{Name: f.Name, Data: f.Data})
		}
	}
	if len(keep) == 0 {
		return 0, faults, nil
	}
	return len(keep), faults, a.Store.HandIn(ctx, id, keep, a.now())
}

// HandedPlans checks every plan that was handed in for a practical and is not
// put away, against the practical as it stands now, in the order they came.
func (a *App) HandedPlans(ctx context.Context, id string) (Record, []*HandedPlan, error) {
	rec, err := a.Open(ctx, id)
	if err != nil {
		return rec, nil, err
	}
	kept, err := a.Store.HandedIn(ctx, id)
	if err != nil {
		return rec, nil, err
	}
	rules, _, err := a.Rules(ctx)
	if err != nil {
		return rec, nil, err
	}
	kept = slices.DeleteFunc(kept, func(h HandedIn) bool { return h.Away })
	files := make([]PlanFile, len(kept))
	fixed := map[string]map[int][]string{}
	for i, h := range kept {
		files[i] = PlanFile{Name: fmt.Sprintf("%d/%s", h.ID, h.Name), Data: h.Data}
		fixed[files[i].Name] = h.Fixed
	}
	var all []*HandedPlan
	for i, c := range a.Check(ctx, files, CheckOptions{Practical: rec.Practical, Rules: rules, Fixed: fixed}) {
		c.File = kept[i].Name
		h := &HandedPlan{HandedIn: kept[i], Checked: c}
		h.Who = h.plan().Who()
		if h.Before = before(all, h); h.Before != nil {
			h.Before.Later = true
		}
		all = append(all, h)
	}
	return rec, all, ctx.Err()
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
	rec, all, err := a.HandedPlans(ctx, id)
	if err != nil {
		return rec, nil, err
	}
	if i := slices.IndexFunc(all, func(h *HandedPlan) bool { return h.ID == plan }); i >= 0 {
		return rec, all[i], nil
	}
	return rec, nil, practical.Fault{Code: practical.NotFound, Message: "this plan is not there, or it was put away", Hint: "go back to the list of plans"}
}

// FixRow keeps which steps a row of a plan stands for; clear true leaves it to the matching again.
func (a *App) FixRow(ctx context.Context, id string, plan int64, row int, steps []string, clear bool) error {
	kept, err := a.Store.HandedIn(ctx, id)
	if err != nil {
		return err
	}
	i := slices.IndexFunc(kept, func(h HandedIn) bool { return h.ID == plan })
	if i < 0 {
		return practical.Fault{Code: practical.NotFound, Message: "this plan is not there", Hint: "go back to the list of plans"}
	}
	fixed := maps.Clone(kept[i].Fixed)
	if fixed == nil {
		fixed = map[int][]string{}
	}
	if fixed[row] = steps; clear {
		delete(fixed, row)
	}
	return a.Store.Fix(ctx, id, plan, fixed)
}

// PutAside is every plan of a practical that was put away, the first one first.
func (a *App) PutAside(ctx context.Context, id string) ([]HandedIn, error) {
	kept, err := a.Store.HandedIn(ctx, id)
	return slices.DeleteFunc(kept, func(h HandedIn) bool { return !h.Away }), err
}

// PutPlanAway puts a plan away, or brings it back.
func (a *App) PutPlanAway(ctx context.Context, id string, plan int64, away bool) error {
	return a.Store.PutAway(ctx, id, plan, away)
}

// Class is what a teacher sees of all plans together: the last one of each learner.
func (a *App) Class(plans []*HandedPlan) feedback.Class {
	class, _ := classOf(lastOnes(plans))
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
func (a *App) ClassSheet(plans []*HandedPlan) (Document, error) {
	last, before := lastOnes(plans)
	all, err := a.Feedback(make([]PlanFile, len(last)), last, before, Assessed)
	if err != nil {
		return Document{}, err
	}
	return all[0], nil
}

// A learner's page in its forms.
const (
	PageHTML  = ".html"
	PagePDF   = ".pdf"
	PageWord  = ".docx"
	Commented = "-commented.docx"
)

// feedbackKind keeps what learners may be shown, by the practical's id.
const feedbackKind = "feedback-setting"

// FeedbackSetting is what learners may be shown in a practical: assessed until the teacher says otherwise.
func (a *App) FeedbackSetting(ctx context.Context, id string) (Setting, error) {
	kept, err := a.Store.Kept(ctx, a.Teacher, feedbackKind)
	if s := Setting(kept[id]); s.Shows() {
		return s, err
	}
	return Assessed, err
}

// SetFeedback keeps what learners may be shown in a practical.
func (a *App) SetFeedback(ctx context.Context, id string, s Setting) error {
	if !slices.Contains([]Setting{Assessed, Coached, Worked}, s) {
		return practical.Fault{Code: practical.Invalid, Field: "setting", Message: fmt.Sprintf("%q is no setting", s), Hint: "choose assessed, coached or worked example"}
	}
	return a.Store.Keep(ctx, a.Teacher, feedbackKind, map[string]string{id: string(s)}, nil, a.now())
}

// PupilPage is a learner's page in one of its forms; what it asks goes into the
// practical's log. With the setting assessed there is none.
func (a *App) PupilPage(ctx context.Context, id string, h *HandedPlan, form string) (Document, error) {
	s, err := a.FeedbackSetting(ctx, id)
	if err != nil {
		return Document{}, err
	}
	if !s.Shows() {
		return Document{}, practical.Fault{
			Code: practical.Invalid, Message: "this practical is assessed: nothing of the check is shown to a learner",
			Hint: "the teacher can set it to coached, where local rules of the assessment allow it",
		}
	}
	var before []Checked
	if h.Before != nil {
		before = append(before, h.Before.named())
	}
	all, err := a.Feedback([]PlanFile{{Name: h.Name, Data: h.Data}}, []Checked{h.named()}, before, s)
	if err != nil {
		return Document{}, err
	}
	for _, d := range all {
		if strings.HasPrefix(d.Name, "pupils/") && strings.HasSuffix(d.Name, form) && (form == Commented || !strings.HasSuffix(d.Name, Commented)) {
			d.Name = strings.TrimPrefix(d.Name, "pupils/")
			return d, a.logAsked(ctx, id, h, s, form)
		}
	}
	return Document{}, practical.Fault{Code: practical.NotFound, Message: "this plan has no page of that kind", Hint: "comments go into Word documents only"}
}

const askedKind = "asked/"

// logAsked writes into the practical's log what a learner was asked.
func (a *App) logAsked(ctx context.Context, id string, h *HandedPlan, s Setting, form string) error {
	at := a.now()
	var asked []string
	for _, f := range feedback.Top(h.Findings, feedback.MostPoints) {
		asked = append(asked, f.Question)
	}
	entry := fmt.Sprintf("%s  %s (%s), setting %s, as %s: %s", at.Format("2006-01-02 15:04:05"), h.Who, h.Name, s, form, strings.Join(asked, " / "))
	return a.Store.Keep(ctx, a.Teacher, askedKind+id, map[string]string{fmt.Sprintf("%s %d %s", at.UTC().Format(time.RFC3339Nano), h.ID, form): entry}, nil, at)
}

// Asked is the log of what learners were shown in a practical, the first entry first.
func (a *App) Asked(ctx context.Context, id string) ([]string, error) {
	kept, err := a.Store.Kept(ctx, a.Teacher, askedKind+id)
	var list []string
	for _, name := range slices.Sorted(maps.Keys(kept)) {
		list = append(list, kept[name])
	}
	return list, err
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

package app

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"plait.example/internal/feedback"
	"plait.example/internal/practical"
)

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
	data, err := a.Store.HandedData(ctx, id, h.ID)
	if err != nil {
		return Document{}, err
	}
	all, err := a.Feedback([]PlanFile{{Name: h.Name, Data: data}}, []Checked{h.named()}, before, s, nil)
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

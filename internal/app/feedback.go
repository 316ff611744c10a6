package app

import (
	"bytes"
	"cmp"
	"fmt"
	"regexp"
	"strings"

	"plait.example/internal/feedback"
	"plait.example/internal/paper"
)

// Setting says what a learner may be shown of a check.
type Setting = feedback.Setting

// The settings.
const (
	Assessed = feedback.Assessed
	Coached  = feedback.Coached
	Worked   = feedback.Worked
)

// Feedback is what a check gives to hand out: the table of the class for the
// teacher as .xlsx and text, and, where the setting shows anything to a learner,
// for each pupil a page (HTML, PDF, .docx), their own .docx with the questions
// as comments, and for the teacher a record of what every pupil was asked. Names
// of documents have a folder, with "/". files are those that were checked, in the
// same order; before are earlier versions, found by the pupil's name or the file's; room is what they share.
func (a *App) Feedback(files []PlanFile, checked, before []Checked, s Setting, room Room) ([]Document, error) {
	class, plans := classOf(checked, before, room)
	sheet, err := class.Sheet()
	if err != nil {
		return nil, fmt.Errorf("write the table of the class: %w", err)
	}
	all := []Document{
		{Name: "class.xlsx", MediaType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", Data: sheet},
		{Name: "class.txt", MediaType: "text/plain; charset=utf-8", Data: class.Text()},
	}
	if !s.Shows() {
		return all, nil
	}
	var shown bytes.Buffer
	fmt.Fprintf(&shown, "What each pupil was asked, with the setting %q\n", s)
	names := taken{}
	for i, p := range plans {
		if p == nil {
			continue
		}
		pages, err := pupilPages(files[i].Data, checked[i].Word, *p, s, "pupils/"+names.free(fileName(p.Who()), "-commented"))
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p.File, err)
		}
		all = append(all, pages...)
		note, _ := feedback.Note(*p, s)
		fmt.Fprintf(&shown, "\n%s (%s)\n", p.Who(), p.File)
		for _, point := range note.Points {
			fmt.Fprintf(&shown, "- %s: %s\n", strings.Join(point.Rows, "; "), point.Ask)
		}
	}
	return append(all, Document{Name: "asked.txt", MediaType: "text/plain; charset=utf-8", Data: feedback.Marked(shown.Bytes())}), nil
}

// classOf is the table of the class, and of each file its plan; nil: it was not read.
func classOf(checked, before []Checked, room Room) (feedback.Class, []*feedback.Plan) {
	var read []feedback.Plan
	var unread []feedback.Unread
	all := make([]*feedback.Plan, len(checked))
	for i, c := range checked {
		if why := cmp.Or(c.Fault, c.Unchecked); why != nil {
			f := *why
			f.File = ""
			unread = append(unread, feedback.Unread{File: c.File, Why: f.Error()})
			continue
		}
		p := feedback.Plan{File: c.File, Matched: c.Matched, Findings: c.Findings}
		p.Before = earlier(p, before)
		all[i] = &p
		read = append(read, p)
	}
	return feedback.ClassOf(read, unread, room), all
}

// earlier finds the earlier version by the same pupil; nil: there is none. Where
// both plans say who wrote them, that decides; else the folder and the file's name do.
func earlier(p feedback.Plan, before []Checked) *feedback.Plan {
	for _, c := range before {
		old := feedback.Plan{File: c.File, Matched: c.Matched, Findings: c.Findings}
		if c.Fault == nil && c.Unchecked == nil && samePupil(p, old) {
			return &old
		}
	}
	return nil
}

func samePupil(a, b feedback.Plan) bool {
	if a.Matched.Plan.Candidate != "" && b.Matched.Plan.Candidate != "" {
		return strings.EqualFold(a.Matched.Plan.Candidate, b.Matched.Plan.Candidate)
	}
	name := bareName(a.File)
	return name != "" && name == bareName(b.File) && !strings.HasPrefix(name, unnamedPlan)
}

// unnamedPlan begins the name of a plan that was pasted without one.
const unnamedPlan = "pasted plan"

var (
	notNames     = regexp.MustCompile(`[^\p{L}0-9]+`)
	versionWords = regexp.MustCompile(`\b(?:(?:v|ver|version|draft|attempt|try|copy) ?[0-9]*|final|new|old|second|first|mended|[0-9](?:st|nd|rd))\b`)
)

// anyPlan are the words of names that any pupil may give a file: the folder tells whose it is.
var anyPlan = regexp.MustCompile(`^(?:(?:my|the|time|plan|plans|planning|order|of|work|dovetail|dovetailed|food|practical|document|doc) ?)*$`)

// bareName is a file's name without its ending and what marks a version: "ash-v2",
// "ash draft 2", "ash final". Other figures tell pupils apart. A name such as "plan"
// has its folder before it.
func bareName(file string) string {
	parts := strings.FieldsFunc(strings.ToLower(file), func(r rune) bool { return r == '/' || r == '\\' })
	if len(parts) == 0 {
		return ""
	}
	last := len(parts) - 1
	if dot := strings.LastIndex(parts[last], "."); dot > 0 {
		parts[last] = parts[last][:dot]
	}
	name := withoutVersion(parts[last])
	if last > 0 && anyPlan.MatchString(name) {
		return withoutVersion(parts[last-1]) + "/" + name
	}
	return name
}

func withoutVersion(name string) string {
	name = notNames.ReplaceAllString(name, " ")
	return strings.Join(strings.Fields(versionWords.ReplaceAllString(name, " ")), " ")
}

// pupilPages writes what a pupil gets; word: their plan, data, is a Word document.
func pupilPages(data []byte, word bool, p feedback.Plan, s Setting, name string) ([]Document, error) {
	note, _ := feedback.Note(p, s)
	const wordType = "application/vnd.openxmlformats-officedocument.wordprocessingml.document"
	var all []Document
	for _, w := range []struct {
		suffix, mediaType string
		write             func() ([]byte, error)
	}{
		{".html", "text/html; charset=utf-8", func() ([]byte, error) { return paper.NoteHTML(note) }},
		{".pdf", "application/pdf", func() ([]byte, error) { return paper.NotePDF(note) }},
		{".docx", wordType, func() ([]byte, error) { return feedback.Word(note) }},
	} {
		data, err := w.write()
		if err != nil {
			return nil, err
		}
		all = append(all, Document{Name: name + w.suffix, MediaType: w.mediaType, Data: data})
	}
	if word && len(p.Findings) > 0 {
		data, err := feedback.Commented(data, p, s)
		if err != nil {
			return nil, fmt.Errorf("put comments into the plan: %w", err)
		}
		all = append(all, Document{Name: name + "-commented.docx", MediaType: wordType, Data: data})
	}
	return all, nil
}

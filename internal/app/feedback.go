package app

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"

	"plait.example/internal/feedback"
	"plait.example/internal/format"
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
// same order; before are earlier versions, found by the pupil's name or the file's.
func (a *App) Feedback(files []PlanFile, checked, before []Checked, s Setting) ([]Document, error) {
	class, plans := classOf(checked, before)
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
	taken := map[string]bool{}
	for i, p := range plans {
		if p == nil {
			continue
		}
		pages, err := pupilPages(files[i], *p, s, "pupils/"+free(fileName(p.Who()), taken))
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
	return append(all, Document{Name: "asked.txt", MediaType: "text/plain; charset=utf-8", Data: shown.Bytes()}), nil
}

// classOf is the table of the class, and of each file its plan; nil: it was not read.
func classOf(checked, before []Checked) (feedback.Class, []*feedback.Plan) {
	var read []feedback.Plan
	var unread []feedback.Unread
	all := make([]*feedback.Plan, len(checked))
	for i, c := range checked {
		if c.Fault != nil {
			f := *c.Fault
			f.File = ""
			unread = append(unread, feedback.Unread{File: c.File, Why: f.Error()})
			continue
		}
		p := feedback.Plan{File: c.File, Matched: c.Matched, Findings: c.Findings}
		p.Before = earlier(p, before)
		all[i] = &p
		read = append(read, p)
	}
	return feedback.ClassOf(read, unread), all
}

// earlier finds the earlier version by the same pupil; nil: there is none.
func earlier(p feedback.Plan, before []Checked) *feedback.Plan {
	for _, same := range []func(feedback.Plan) string{
		func(p feedback.Plan) string { return strings.ToLower(p.Matched.Plan.Candidate) },
		func(p feedback.Plan) string { return bareName(p.File) },
	} {
		for _, c := range before {
			old := feedback.Plan{File: c.File, Matched: c.Matched, Findings: c.Findings}
			if c.Fault == nil && same(p) != "" && same(old) == same(p) {
				return &old
			}
		}
	}
	return nil
}

var (
	notLetters   = regexp.MustCompile(`[^a-z]+`)
	versionWords = regexp.MustCompile(`\b(?:v|ver|version|draft|final|new|old|copy|second|first|mended|attempt|try|st|nd)\b`)
)

// bareName is a file's name without folder, ending, and what tells versions apart.
func bareName(file string) string {
	base := strings.ToLower(file[strings.LastIndexAny(file, `/\`)+1:])
	if dot := strings.LastIndex(base, "."); dot > 0 {
		base = base[:dot]
	}
	base = notLetters.ReplaceAllString(base, " ")
	return strings.Join(strings.Fields(versionWords.ReplaceAllString(base, " ")), " ")
}

// free is a name that is not taken yet, with a number after it where it must be.
func free(name string, taken map[string]bool) string {
	one := name
	for n := 2; taken[one]; n++ {
		one = fmt.Sprintf("%s-%d", name, n)
	}
	taken[one] = true
	return one
}

// pupilPages writes what a pupil gets.
func pupilPages(file PlanFile, p feedback.Plan, s Setting, name string) ([]Document, error) {
	note, _ := feedback.Note(p, s)
	const word = "application/vnd.openxmlformats-officedocument.wordprocessingml.document"
	var all []Document
	for _, w := range []struct {
		suffix, mediaType string
		write             func() ([]byte, error)
	}{
		{".html", "text/html; charset=utf-8", func() ([]byte, error) { return paper.NoteHTML(note) }},
		{".pdf", "application/pdf", func() ([]byte, error) { return paper.NotePDF(note) }},
		{".docx", word, func() ([]byte, error) { return feedback.Word(note) }},
	} {
		data, err := w.write()
		if err != nil {
			return nil, err
		}
		all = append(all, Document{Name: name + w.suffix, MediaType: w.mediaType, Data: data})
	}
	if isWord(file) && len(p.Findings) > 0 {
		data, err := feedback.Commented(file.Data, p, s)
		if err != nil {
			return nil, fmt.Errorf("put comments into the plan: %w", err)
		}
		all = append(all, Document{Name: name + "-commented.docx", MediaType: word, Data: data})
	}
	return all, nil
}

// isWord says whether the plan is a Word document, which can carry comments.
func isWord(f PlanFile) bool {
	d, err := format.Read(f.Name, f.Data)
	return err == nil && d.Kind == format.Word
}

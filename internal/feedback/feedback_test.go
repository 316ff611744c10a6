package feedback_test

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"

	"plait.example/internal/act"
	"plait.example/internal/check"
	"plait.example/internal/feedback"
	"plait.example/internal/format/docx"
	"plait.example/internal/format/sheet"
	"plait.example/internal/format/table"
	"plait.example/internal/match"
	"plait.example/internal/paper"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/written"
)

// row is a row of an invented plan.
func row(number int, at practical.TimeOfDay, letter, text string) match.Row {
	r := match.Row{Row: written.Row{Number: number, Table: 0, Line: number, Clock: written.Said, At: at, Written: at.String(), Text: text}, Acts: act.Read(text)}
	if letter != "" {
		r.Letters = []string{letter}
	}
	return r
}

// scones is an invented plan with invented findings.
func scones() feedback.Plan {
	p := feedback.Plan{File: "class/noor v1.docx"}
	p.Matched.Plan.Candidate = "Noor Haddad"
	p.Matched.Rows = []match.Row{
		row(1, 540, "", "Wash hands"),
		row(2, 545, "A", "Rub in the butter"),
		row(3, 547, "B", "Chop the onion"),
		row(4, 560, "A", "Put the scones in the oven at 200 C"),
		row(5, 575, "A", "Take the scones out of the oven"),
		row(6, 590, "A", "Serve the scones"),
	}
	p.Findings = []check.Finding{
		{Rule: "not-pre-heated", Family: "oven and kit", Severity: check.Stops, Row: 4, Rows: []int{4}, Dish: "A", Evidence: "seen 1", Question: "What must be true of the oven?", Answer: "SECRET 1", Minutes: 10},
		{Rule: "no-temperature", Family: "oven and kit", Severity: check.Stops, Row: 4, Rows: []int{4}, Dish: "A", Evidence: "seen 2", Question: "How hot?", Answer: "SECRET 2"},
		{Rule: "two-at-once", Family: "clock", Severity: check.Stops, Row: 3, Rows: []int{3, 2}, Evidence: "seen 3", Question: "Which one are you touching?", Answer: "SECRET 3", Minutes: 4},
		{Rule: "raw-left-out", Family: "hygiene and safety", Severity: check.Stops, Row: 2, Evidence: "seen 4", Question: "Where is it until then?", Answer: "SECRET 4"},
		{Rule: "raw-left-out", Family: "hygiene and safety", Severity: check.Stops, Row: 3, Evidence: "seen 5", Question: "Where is it until then?", Answer: "SECRET 5"},
		{Rule: "no-washing-up", Family: "words", Severity: check.Marks, Evidence: "seen 6", Question: "When are the pans cleared?", Answer: "SECRET 6"},
		{Rule: "cheap-reordering", Family: "dovetailing", Severity: check.Stops, Row: 3, Evidence: "for the teacher alone", Answer: "SECRET 8", Minutes: 90},
		{Rule: "plates", Family: "words", Severity: check.Polish, Evidence: "seen 7", Question: "What is on the pass?", Answer: "SECRET 7"},
	}
	return p
}

func rules(list []check.Finding) (names []string) {
	for _, f := range list {
		names = append(names, f.Rule)
	}
	return names
}

func TestTop(t *testing.T) {
	got := strings.Join(rules(feedback.Top(scones().Findings, 5)), " ")
	if want := "raw-left-out not-pre-heated two-at-once no-temperature raw-left-out"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if n := len(feedback.Top(nil, 5)); n != 0 {
		t.Errorf("%d of nothing", n)
	}
}

func TestNote(t *testing.T) {
	if _, shown := feedback.Note(scones(), feedback.Assessed); shown {
		t.Error("assessed shows the learner a page")
	}
	coached, _ := feedback.Note(scones(), feedback.Coached)
	worked, _ := feedback.Note(scones(), feedback.Worked)
	if len(coached.Points) != feedback.MostPoints || coached.Name != "Noor Haddad" {
		t.Errorf("%d points for %q", len(coached.Points), coached.Name)
	}
	if coached.Points[0].Why != "" || worked.Points[0].Why != "seen 4" {
		t.Errorf("what was seen: coached %q, worked %q", coached.Points[0].Why, worked.Points[0].Why)
	}
	if got := coached.Points[2].Rows; len(got) != 2 || got[0] != "Row 3, 09:07 “Chop the onion”" {
		t.Errorf("quoted %q", got)
	}
}

// The three forms of a page say the same questions and no answer; the printed
// one is one page; all are the same at every call.
func TestPagesSayNoAnswer(t *testing.T) {
	n, _ := feedback.Note(scones(), feedback.Worked)
	for name, write := range map[string]func(paper.Note) ([]byte, error){"html": paper.NoteHTML, "pdf": paper.NotePDF, "docx": feedback.Word} {
		data, err := write(n)
		if err != nil {
			t.Fatal(err)
		}
		again, err := write(n)
		if err != nil || !bytes.Equal(data, again) {
			t.Errorf("%s: two calls differ (%v)", name, err)
		}
		text := string(data)
		switch name {
		case "docx":
			d, err := docx.Read(data)
			if err != nil {
				t.Fatal(err)
			}
			text = d.Text()
			fallthrough
		case "html":
			for _, want := range []string{"Which one are you touching?", "Chop the onion", "Noor Haddad", "risk assessment"} {
				if !strings.Contains(text, want) {
					t.Errorf("%s does not say %q", name, want)
				}
			}
		case "pdf":
			if pages := regexp.MustCompile(`/Type /Page\b`).FindAllString(text, -1); len(pages) != 1 {
				t.Errorf("%d pages", len(pages))
			}
		}
		if strings.Contains(text, "SECRET") || strings.Contains(text, "for the teacher alone") {
			t.Errorf("%s gives an answer away", name)
		}
	}
}

func TestLongPlanIsOnePage(t *testing.T) {
	p := scones()
	for i := 7; i <= 70; i++ {
		p.Matched.Rows = append(p.Matched.Rows, row(i, practical.TimeOfDay(590+2*i), "B", strings.Repeat("Stir the pan and look at it again, ", 12)))
	}
	for i := range p.Findings {
		p.Findings[i].Rows = []int{20, 21, 22}
	}
	n, _ := feedback.Note(p, feedback.Worked)
	data, err := paper.NotePDF(n)
	if err != nil {
		t.Fatal(err)
	}
	if pages := regexp.MustCompile(`/Type /Page\b`).FindAll(data, -1); len(pages) != 1 {
		t.Errorf("%d pages", len(pages))
	}
}

// The plait is the pupil's: their times, with what clashes left as it is.
func TestPlait(t *testing.T) {
	p := feedback.Plait(scones().Matched)
	var rows []string
	for _, r := range p.Rows {
		rows = append(rows, r.At.String()+" "+r.Dish+" "+string(r.Action))
	}
	if got, want := strings.Join(rows, "; "), "09:00  do; 09:05 A do; 09:07 B do; 09:20 A put-in; 09:35 A take-out; 09:50 A serve"; got != want {
		t.Errorf("rows\n%s, want\n%s", got, want)
	}
	inOven := slices.ContainsFunc(p.Waits, func(w timeplan.Wait) bool {
		return w.Place == practical.AtOven && w.Until == 575 && w.Celsius == 200
	})
	served := slices.ContainsFunc(p.Threads, func(t timeplan.Thread) bool { return t.Place == practical.Served && t.To == -1 })
	if !inOven || !served {
		t.Errorf("waits %+v, threads %+v", p.Waits, p.Threads)
	}
}

func TestPlaitOfAnything(t *testing.T) {
	for _, rows := range [][]match.Row{nil, {row(1, 540, "", "")}, {row(1, 600, "A", "Bake"), row(2, 540, "A", "Serve")}, {{Row: written.Row{Number: 1, Text: "no time"}}}} {
		n, _ := feedback.Note(feedback.Plan{Matched: match.Matched{Rows: rows}}, feedback.Coached)
		if _, err := paper.NotePDF(n); err != nil {
			t.Error(err)
		}
		if _, err := paper.NoteHTML(n); err != nil {
			t.Error(err)
		}
	}
}

func TestCompare(t *testing.T) {
	before, after := scones(), scones()
	after.Matched.Rows = slices.Insert(after.Matched.Rows, 3, row(9, 555, "A", "Turn the oven on to 200 C"))
	for i := range after.Matched.Rows {
		after.Matched.Rows[i].Number = i + 1
	}
	after.Findings = []check.Finding{
		{Rule: "no-temperature", Family: "oven and kit", Severity: check.Stops, Row: 5, Dish: "A", Question: "How hot?"},
		{Rule: "raw-left-out", Family: "hygiene and safety", Severity: check.Stops, Row: 3, Question: "Where is it?"},
		{Rule: "no-washing-up", Family: "words", Severity: check.Marks, Question: "When?"},
		{Rule: "gap", Family: "clock", Severity: check.Marks, Row: 6, Question: "What then?"},
	}
	m := feedback.Compare(before, after)
	for _, c := range []struct{ what, got, want string }{
		{"gone", strings.Join(rules(m.Gone), " "), "not-pre-heated two-at-once raw-left-out cheap-reordering plates"},
		{"still", strings.Join(rules(m.Still), " "), "no-temperature raw-left-out no-washing-up"},
		{"new", strings.Join(rules(m.New), " "), "gap"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %s, want %s", c.what, c.got, c.want)
		}
	}
	after.Before = &before
	n, _ := feedback.Note(after, feedback.Coached)
	if want := "Since your last version: 4 of 7 questions are answered, 3 are still open. New: 1."; n.Lead[1] != want {
		t.Errorf("%q, want %q", n.Lead[1], want)
	}
}

func TestClass(t *testing.T) {
	one, two := scones(), scones()
	two.Matched.Plan.Candidate, two.File = "", "class/idris.docx"
	two.Findings = two.Findings[:1]
	two.Before = &one
	c := feedback.ClassOf([]feedback.Plan{one, two}, []feedback.Unread{{File: "bad.docx", Why: "the document is damaged"}}, nil)
	if c.Faults[0].Rule != "not-pre-heated" || strings.Join(c.Faults[0].Pupils, ", ") != "Noor Haddad, idris" {
		t.Errorf("most common %+v", c.Faults[0])
	}
	if len(c.Again) != 1 || c.Again[0].Family != "oven and kit" || c.Again[0].Pupils != 2 {
		t.Errorf("to teach again %+v", c.Again)
	}
	if p := c.Pupils[0]; p.Stops != 6 || p.Marks != 1 || p.Polish != 1 || p.Begins != "09:00" || p.Ends != "09:50" || p.Main != "Row 2: Where is it until then?" {
		t.Errorf("%+v", p)
	}
	data, err := c.Sheet()
	if err != nil {
		t.Fatal(err)
	}
	read, err := sheet.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	text := ""
	for _, page := range read.Tables {
		for _, r := range page.Rows {
			for _, cell := range r {
				text += cell.Text() + "|"
			}
			text += "\n"
		}
	}
	for _, want := range []string{"Noor Haddad|class/noor v1.docx|6|", "could not be read|bad.docx|", "SECRET 3", "not-pre-heated|", "The oven as something shared"} {
		if !strings.Contains(text, want) {
			t.Errorf("the workbook does not say %q:\n%s", want, text)
		}
	}
	if len(read.Tables) != 5 {
		t.Errorf("%d sheets", len(read.Tables))
	}
	for _, want := range []string{"bad.docx: the document is damaged", "since the last version 7 mended, 1 still there, 0 new", "risk assessment"} {
		if !strings.Contains(string(c.Text()), want) {
			t.Errorf("the text does not say %q:\n%s", want, c.Text())
		}
	}
}

// The pupil's own document comes back with its words as they were.
func TestCommented(t *testing.T) {
	cell := func(s string) table.Cell {
		return table.Cell{Span: 1, Down: 1, Clock: -1, Lines: []table.Line{{{Text: s}}}}
	}
	p := scones()
	own := &table.Table{Rows: [][]table.Cell{{cell("Time"), cell("Task")}}}
	for _, r := range p.Matched.Rows {
		own.Rows = append(own.Rows, []table.Cell{cell(r.Written), cell(r.Text)})
	}
	data, err := docx.Write(docx.Paper{Blocks: []table.Block{{Line: table.Line{{Text: "My plan"}}}, {Table: own}}})
	if err != nil {
		t.Fatal(err)
	}
	with, err := feedback.Commented(data, p, feedback.Coached)
	if err != nil {
		t.Fatal(err)
	}
	before, err := docx.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	after, err := docx.Read(with)
	if err != nil {
		t.Fatal(err)
	}
	if before.Text() != after.Text() || len(with) <= len(data) {
		t.Errorf("the document says\n%s, and said\n%s", after.Text(), before.Text())
	}
	if _, err := feedback.Commented(data, p, feedback.Assessed); err == nil {
		t.Error("assessed puts comments into the learner's document")
	}
}

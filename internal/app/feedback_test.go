package app_test

import (
	"strings"
	"testing"

	"plait.example/internal/app"
	"plait.example/internal/check/checktest"
	"plait.example/internal/format/docx"
	"plait.example/internal/format/table"
)

func namesOf(all []app.Document) string {
	var names []string
	for _, d := range all {
		names = append(names, d.Name)
	}
	return strings.Join(names, " ")
}

// Invented plans; the second version of one pupil has the timer and the take-out.
func TestFeedback(t *testing.T) {
	a := new(app.App)
	files := []app.PlanFile{
		{Name: "dilys.txt", Data: []byte(pupilsPlan)},
		{Name: "broken.docx", Data: []byte("PK\x03\x04")},
		{Name: "Dilys again.txt", Data: []byte(strings.Replace(pupilsPlan, "9.40 Wash up\n", "9.27 Take the scones out of the oven\n9.40 Wash up\n", 1))},
	}
	checked := a.Check(t.Context(), files, app.CheckOptions{})
	for _, c := range []struct {
		setting app.Setting
		want    string
	}{
		{app.Assessed, "class.xlsx class.txt"},
		{app.Coached, "class.xlsx class.txt pupils/dilys-marsh.html pupils/dilys-marsh.pdf pupils/dilys-marsh.docx pupils/dilys-marsh-2.html pupils/dilys-marsh-2.pdf pupils/dilys-marsh-2.docx asked.txt"},
	} {
		all, err := a.Feedback(files, checked, checked[:1], c.setting, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := namesOf(all); got != c.want {
			t.Errorf("%s: %s, want %s", c.setting, got, c.want)
		}
		if text := string(all[1].Data); !strings.Contains(text, "mended") || !strings.Contains(text, "broken.docx") {
			t.Errorf("the table does not say what was mended, or what could not be read:\n%s", text)
		}
	}
	all, err := a.Feedback(files, checked, nil, app.Coached, nil)
	if err != nil {
		t.Fatal(err)
	}
	asked := string(all[len(all)-1].Data)
	if !strings.Contains(asked, "When does it come out") || strings.Contains(asked, "No row takes it out") {
		t.Errorf("the record of what was asked:\n%s", asked)
	}
}

func TestFeedbackInTheirOwnDocument(t *testing.T) {
	documents, err := checktest.Documents(checktest.LookedAt)
	if err != nil {
		t.Fatal(err)
	}
	if testing.Short() {
		documents = checktest.Few(documents)
	}
	a := new(app.App)
	for _, d := range documents {
		if !strings.HasSuffix(d.Name, ".docx") || d.Plan.Sound {
			continue
		}
		files := []app.PlanFile{{Name: d.Name, Data: d.Data}}
		checked := a.Check(t.Context(), files, app.CheckOptions{})
		if len(checked[0].Findings) == 0 {
			continue // its faults show only beside its recipes
		}
		all, err := a.Feedback(files, checked, nil, app.Worked, nil)
		if err != nil {
			t.Fatalf("%s: %v", d.Name, err)
		}
		if !strings.Contains(namesOf(all), "-commented.docx") {
			t.Errorf("%s comes back without comments: %s", d.Name, namesOf(all))
		}
	}
}

// A plan in paragraphs, with two rows in one of them, gets its comments at the
// paragraphs that it is about.
func TestCommentsAtParagraphs(t *testing.T) {
	var blocks []table.Block
	for _, text := range []string{"My plan", "9.00 Wash hands", "9.10 Make the scones. 9.20 Bake the scones at 220C.", "10.00 Serve the scones with butter"} {
		blocks = append(blocks, table.Block{Line: table.Line{{Text: text}}})
	}
	data, err := docx.Write(docx.Paper{Blocks: blocks})
	if err != nil {
		t.Fatal(err)
	}
	a := new(app.App)
	files := []app.PlanFile{{Name: "p.docx", Data: data}}
	checked := a.Check(t.Context(), files, app.CheckOptions{})
	if n := len(checked[0].Matched.Rows); n != 4 {
		t.Fatalf("%d rows", n)
	}
	for i, want := range []int{1, 2, 2, 3} {
		if r := checked[0].Matched.Rows[i]; r.Table != -1 || r.Line != want {
			t.Errorf("row %d is of table %d, line %d, want line %d", i+1, r.Table, r.Line, want)
		}
	}
	all, err := a.Feedback(files, checked, nil, app.Coached, nil)
	if err != nil || !strings.Contains(namesOf(all), "p-commented.docx") {
		t.Errorf("%s (%v)", namesOf(all), err)
	}
}

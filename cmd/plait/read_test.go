package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

const recipes = "testdata/read/"

// readRecipe is what these tests look at of a recipe as JSON.
type readRecipe struct {
	File, Title string
	Serves      *int
	Ingredients []struct {
		Raw      string
		Quantity *struct{ Low, High float64 }
		Grams    *float64
	}
	Steps []struct {
		ID, Text, Place string
		Source          struct{ Start, End int }
		Wait            *struct{ Least, Most *int }
		Celsius         *int
		After           []struct{ Step string }
	}
	Unread     []string
	SourceText string `json:"source_text"`
}

// readJSON is the recipes that a run printed, held against the schema that the program prints.
func readJSON(t *testing.T, got said) (all []readRecipe) {
	t.Helper()
	schema, err := jsonschema.UnmarshalJSON(strings.NewReader(run(t, "schema", "recipes").out))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("recipes.json", schema); err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile("recipes.json")
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(strings.NewReader(got.out))
	if err != nil {
		t.Fatalf("%v in\n%s\n%s", err, got.out, got.err)
	}
	if err := compiled.Validate(value); err != nil {
		t.Error(err)
	}
	if err := json.Unmarshal([]byte(got.out), &all); err != nil {
		t.Fatal(err)
	}
	for _, r := range all {
		for _, s := range r.Steps {
			if r.SourceText[s.Source.Start:s.Source.End] != s.Text {
				t.Errorf("%s: step %s is not where it says", r.File, s.ID)
			}
		}
	}
	return all
}

func TestReadAsJSON(t *testing.T) {
	got := run(t, "read", "--format", "json", recipes+"leek-soup.txt", recipes+"flapjacks.docx", recipes+"toast.html")
	if got.code != exitFits || got.err != "" {
		t.Fatalf("exit %d, %s", got.code, got.err)
	}
	all := readJSON(t, got)
	if len(all) != 3 {
		t.Fatalf("%d recipes", len(all))
	}
	soup, flapjacks, toast := all[0], all[1], all[2]
	if soup.File != recipes+"leek-soup.txt" || soup.Title != "Leek soup" || *soup.Serves != 4 || soup.SourceText != mustRead(t, recipes+"leek-soup.txt") {
		t.Errorf("soup %+v", soup)
	}
	var texts []string
	for _, s := range soup.Steps {
		texts = append(texts, s.Text)
	}
	if want := "Soften the leeks in the butter for 10 minutes, stirring now and then.|Add the stock,|bring to the boil and simmer for 20 minutes,|then blend.|Serve hot."; strings.Join(texts, "|") != want {
		t.Errorf("steps of the soup\n%s\nwant\n%s", strings.Join(texts, "|"), want)
	}
	if simmer := soup.Steps[2]; simmer.Wait == nil || *simmer.Wait.Least != 20 || simmer.Place != "hob" || len(simmer.After) != 1 || simmer.After[0].Step != soup.Steps[1].ID {
		t.Errorf("simmer %+v", simmer)
	}
	if q := soup.Ingredients[2].Quantity; q == nil || q.Low != 0.5 || q.High != 0.5 || soup.Ingredients[3].Grams != nil || *soup.Ingredients[1].Grams != 25 {
		t.Errorf("ingredients %+v", soup.Ingredients)
	}
	if flapjacks.Title != "Flapjacks" || *flapjacks.Serves != 12 || len(flapjacks.Ingredients) != 3 || flapjacks.Steps[0].ID != "oven" || *flapjacks.Steps[0].Celsius != 180 {
		t.Errorf("flapjacks %+v", flapjacks)
	}
	if toast.Title != "Cheese on toast" || *toast.Serves != 2 || len(toast.Ingredients) != 2 || len(toast.Steps) < 2 || toast.Steps[0].Place != "grill" {
		t.Errorf("toast %+v", toast)
	}
}

// A text and the Word document made of it are the same recipe.
func TestReadWordAndTextAlike(t *testing.T) {
	all := readJSON(t, run(t, "read", "--format", "json", recipes+"flapjacks.txt", recipes+"flapjacks.docx"))
	var of [2]string
	for i, r := range all {
		r.File, r.SourceText = "", ""
		for k := range r.Steps {
			r.Steps[k].Source.Start, r.Steps[k].Source.End = 0, 0
		}
		text, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		of[i] = string(text)
	}
	if of[0] != of[1] {
		t.Errorf("the text\n%s\nthe document\n%s", of[0], of[1])
	}
}

// A file that cannot be read is told; the others are read, and the exit code says so.
func TestReadGoesOn(t *testing.T) {
	got := run(t, "read", "--format", "json", "testdata/none.txt", recipes+"photo.png", recipes+"toast.html")
	if all := readJSON(t, got); got.code != exitFailure || len(all) != 1 || all[0].Title != "Cheese on toast" {
		t.Errorf("exit %d, %+v", got.code, all)
	}
	lines := strings.Split(strings.TrimSpace(got.err), "\n")
	if len(lines) != 2 || !strings.Contains(lines[0], "none.txt: there is no such file") || !strings.Contains(lines[1], "photo.png: ") || !strings.Contains(lines[1], "a picture") {
		t.Errorf("errors %q", lines)
	}
	if got := run(t, "read", "--format", "json", "testdata/none.txt"); got.code != exitFailure || got.out != "[]\n" {
		t.Errorf("nothing read: exit %d, %q", got.code, got.out)
	}
	if got := run(t, "read", "testdata/none.txt"); got.code != exitFailure || got.out != "" || strings.Count(got.err, "\n") != 1 {
		t.Errorf("nothing read: exit %d, %q, %q", got.code, got.out, got.err)
	}
}

// A folder is read whole, in the order of its names, below too, hidden files left out.
func TestReadFolder(t *testing.T) {
	dir := t.TempDir()
	soup := mustRead(t, recipes+"leek-soup.txt")
	for _, name := range []string{"b.txt", "a.txt", ".hidden.txt", "c/d.txt", ".git/e.txt"} {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(soup), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	first := run(t, "read", "--format", "json", dir)
	var names []string
	for _, r := range readJSON(t, first) {
		rel, err := filepath.Rel(dir, r.File)
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, filepath.ToSlash(rel))
	}
	if strings.Join(names, " ") != "a.txt b.txt c/d.txt" {
		t.Errorf("read %q", names)
	}
	if second := run(t, "read", "--format", "json", dir); second != first {
		t.Error("two runs differ")
	}
}

// What plait read writes, plait plan plans.
func TestReadThenPlan(t *testing.T) {
	file := filepath.Join(t.TempDir(), "read.yaml")
	got := run(t, "read", "-o", file, recipes+"leek-soup.txt", recipes+"toast.html")
	if got.code != exitFits || got.err != "" || got.out != "" {
		t.Fatalf("exit %d, %q", got.code, got.err)
	}
	if plan := run(t, "plan", file); plan.code != exitFits || plan.err != "" || !strings.Contains(plan.out, "Leek soup") || !strings.Contains(plan.out, "Cheese on toast") {
		t.Errorf("exit %d, %q\n%s", plan.code, plan.err, plan.out)
	}
}

func TestReadSaysWhatIsToPutRight(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{"note.txt": "Dear all, the bus leaves at nine.", "dough.txt": "Loaf\n\n500 g flour\n1 tsp yeast\n\nMethod\n1. Knead for 8 minutes.\n2. Prove for 9 hours.\n3. Bake at 220C for 30 minutes.\n"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	got := run(t, "read", dir)
	if got.code != exitFits || !strings.Contains(got.out, "name: Loaf") || !strings.Contains(got.err, "to put right: "+filepath.Join(dir, "note.txt")+": no method") || !strings.Contains(got.err, "to put right: dishes[0].steps") {
		t.Errorf("exit %d, %s\n%s", got.code, got.err, got.out)
	}
}

func TestReadStandardInput(t *testing.T) {
	var out, err bytes.Buffer
	p := program{args: []string{"read", "--format", "json", "-"}, stdin: strings.NewReader(mustRead(t, recipes+"flapjacks.txt")), stdout: &out, stderr: &err}
	code := p.run(t.Context())
	if all := readJSON(t, said{out.String(), err.String(), code}); code != exitFits || len(all) != 1 || all[0].Title != "Flapjacks" || all[0].File != "-" {
		t.Errorf("exit %d, %s, %+v", code, err.String(), all)
	}
}

func TestProgressOfReading(t *testing.T) {
	lines, ticks := make(told, 1), make(chan time.Time)
	shown := show(lines, ticks)
	shown.reading(2, 60, "soup.txt")
	ticks <- time.Time{}
	if got, want := <-lines, "\r\x1b[Kreading 3 of 60: soup.txt"; got != want {
		t.Errorf("wrote %q, want %q", got, want)
	}
	hidden := make(chan bool)
	go func() { shown.hide(func() {}); close(hidden) }()
	if got := <-lines; got != "\r\x1b[K" {
		t.Errorf("before a message wrote %q, want the line taken away", got)
	}
	<-hidden
	shown.end() // nothing stands there any more
}

// The fields that docs/file.md tells of are in the schema.
func TestReadDocumentedFields(t *testing.T) {
	schema := run(t, "schema", "recipes").out
	_, table, found := strings.Cut(mustRead(t, "../../docs/file.md"), "| field | means |")
	if !found {
		t.Fatal("docs/file.md has no table of fields")
	}
	fields := 0
	for row := range strings.SplitSeq(table, "\n") {
		cells := strings.Split(row, "|")
		if len(cells) < 3 {
			continue
		}
		for _, name := range regexp.MustCompile("`([a-z_\\[\\].]+)`").FindAllStringSubmatch(cells[1], -1) {
			fields++
			last := name[1][strings.LastIndex(name[1], ".")+1:]
			if !strings.Contains(schema, `"`+last+`": {`) {
				t.Errorf("%s is in no object of the schema", name[1])
			}
		}
	}
	if fields < 10 {
		t.Errorf("only %d fields found", fields)
	}
}

// A file that is read may be the one that is written; one that is there stays
// as it was when nothing could be read.
func TestReadOntoAFile(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "mine.txt")
	if err := os.WriteFile(file, []byte("Peas\n\n300 g peas\n\nBoil the peas for 3 minutes. Serve.\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := run(t, "read", filepath.Join(folder, "nothere.txt"), "-o", file); got.code != exitFailure || !strings.HasPrefix(mustRead(t, file), "Peas") {
		t.Errorf("exit %d, the file holds %q", got.code, mustRead(t, file))
	}
	if got := run(t, "read", file, "-o", file); got.code != exitFits || !strings.Contains(mustRead(t, file), "Boil the peas") {
		t.Errorf("exit %d, %s, the file holds %q", got.code, got.err, mustRead(t, file))
	}
}

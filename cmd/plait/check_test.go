package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Invented plans and a recipe.
const (
	sconeRecipe = `Scones

Makes 6

Ingredients
225 g self-raising flour
50 g butter
150 ml milk

Method
1. Rub the butter into the flour.
2. Stir in the milk, knead and cut out.
3. Bake at 220 C for 12 minutes until golden.
4. Serve with butter.
`
	burning = "Name: Kit Hale\n9.00 Wash hands\n9.02 Turn the oven on to 220 fan\n9.15 Rub in, cut out\n9.25 Bake at 220 fan\n10.00 Wash up\n"
)

func files(t *testing.T, texts map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range texts {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func TestCheckAgainstARecipe(t *testing.T) {
	dir := files(t, map[string]string{"scones.txt": sconeRecipe, "kit.txt": burning})
	got := run(t, "check", "--recipe", filepath.Join(dir, "scones.txt"), "--clock", "09:00-11:00", "--set-up", "08:45", filepath.Join(dir, "kit.txt"))
	if got.code != exitUnfit {
		t.Errorf("exit %d, errors %q", got.code, got.err)
	}
	for _, want := range []string{"kit.txt: Kit Hale", "When does it come out", "Answer: ", "the school's risk assessment"} {
		if !strings.Contains(got.out, want) {
			t.Errorf("%q is not said:\n%s", want, got.out)
		}
	}
}

func TestCheckCodes(t *testing.T) {
	dir := files(t, map[string]string{"kit.txt": burning, "no.docx": "PK\x03\x04 cut short", "letter.txt": "Dear all, there is no plan here.", "practical.yaml": "like: two-in-two\ntitle: Salad\ndishes:\n  - name: Salad\n    steps:\n      - {text: Slice the cucumber, hands: 5}\n"})
	at := func(name string) string { return filepath.Join(dir, name) }
	for _, c := range []struct {
		name string
		args []string
		code int
		said string // on standard error
	}{
		{"something stops the cook", []string{at("kit.txt")}, exitUnfit, ""},
		{"one cannot be read, the other is checked", []string{at("no.docx"), at("kit.txt")}, exitFailure, "no.docx"},
		{"a file without a plan", []string{at("letter.txt"), at("kit.txt")}, exitFailure, "no plan was found in it"},
		{"no such plan", []string{at("none.txt")}, exitFailure, "there is no such file"},
		{"no such practical", []string{"--practical", at("none.yaml"), at("kit.txt")}, exitFailure, "there is no such file"},
		{"against a practical", []string{"--practical", at("practical.yaml"), at("kit.txt")}, exitUnfit, ""},
		{"recipe without clock", []string{"--recipe", at("kit.txt"), at("kit.txt")}, exitFailure, "such as 09:00-12:00"},
		{"clock without recipe", []string{"--clock", "09:00-12:00", at("kit.txt")}, exitFailure, "go with --recipe"},
		{"clock that runs back", []string{"--recipe", at("kit.txt"), "--clock", "12:00-09:00", at("kit.txt")}, exitFailure, "is not after"},
		{"both", []string{"--recipe", at("kit.txt"), "--practical", at("practical.yaml"), at("kit.txt")}, exitFailure, "can't be used together"},
		{"nothing to check", nil, exitFailure, "expected"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := run(t, append([]string{"check"}, c.args...)...)
			if got.code != c.code || !strings.Contains(got.err, c.said) || c.said == "" && got.err != "" {
				t.Errorf("exit %d, want %d; errors %q", got.code, c.code, got.err)
			}
		})
	}
}

func TestCheckJSON(t *testing.T) {
	dir := files(t, map[string]string{"a.txt": burning, "b.txt": burning})
	out := filepath.Join(dir, "found.json")
	if got := run(t, "check", "--format", "json", "--out", out, filepath.Join(dir, "a.txt"), filepath.Join(dir, "b.txt")); got.code != exitUnfit || got.out != "" {
		t.Fatalf("exit %d, output %q, errors %q", got.code, got.out, got.err)
	}
	var plans []struct {
		File string
		Rows []struct{ Clock, Text string }
	}
	if err := json.Unmarshal([]byte(mustRead(t, out)), &plans); err != nil {
		t.Fatal(err)
	}
	if len(plans) != 2 || filepath.Base(plans[1].File) != "b.txt" || len(plans[0].Rows) != 5 || plans[0].Rows[1].Clock != "09:02" {
		t.Errorf("%+v", plans)
	}
}

func TestCheckFeedback(t *testing.T) {
	dir := files(t, map[string]string{"old.txt": burning, "kit.txt": burning})
	to := filepath.Join(dir, "out")
	got := run(t, "check", "--feedback", to, "--setting", "coached", "--before", filepath.Join(dir, "old.txt"), filepath.Join(dir, "kit.txt"))
	if got.code != exitUnfit || got.err != "" {
		t.Fatalf("exit %d, errors %q", got.code, got.err)
	}
	for _, name := range []string{"class.xlsx", "class.txt", "asked.txt", "pupils/kit-hale.pdf", "pupils/kit-hale.html", "pupils/kit-hale.docx"} {
		if len(mustRead(t, filepath.Join(to, name))) == 0 {
			t.Errorf("%s is empty", name)
		}
	}
	if !strings.Contains(mustRead(t, filepath.Join(to, "class.txt")), "since the last version 0 mended") {
		t.Error("the earlier version was not compared")
	}
	if got := run(t, "check", "--setting", "coached", filepath.Join(dir, "kit.txt")); got.code != exitFailure || !strings.Contains(got.err, "--feedback") {
		t.Errorf("a setting without feedback: exit %d, errors %q", got.code, got.err)
	}
}

// Feedback in the folder of the plans is passed over with a word the next time,
// and the room of the class is in its table.
func TestCheckFeedbackBesideThePlans(t *testing.T) {
	dir := files(t, map[string]string{"kit.txt": burning, "lee.txt": strings.Replace(burning, "Kit", "Lee", 1)})
	check := func() said {
		return run(t, "check", "--feedback", filepath.Join(dir, "out"), "--setting", "coached", "--room", "ovens=1", dir)
	}
	first, second := check(), check()
	if first.err != "" || first.code != second.code || first.out != second.out {
		t.Errorf("exit %d and %d, first errors %q", first.code, second.code, first.err)
	}
	if strings.Count(second.err, "passed over") != 9 || !strings.Contains(second.err, "class.xlsx: plait wrote it about a plan") {
		t.Errorf("errors %q", second.err)
	}
	if text := mustRead(t, filepath.Join(dir, "out", "class.txt")); !strings.Contains(text, "2 ovens wanted, 1 there") {
		t.Errorf("the room is not told:\n%s", text)
	}
	if got := run(t, "check", "--feedback", dir, "--room", "ovens=many", dir); got.code != exitFailure || !strings.Contains(got.err, "no number of ovens") {
		t.Errorf("exit %d, errors %q", got.code, got.err)
	}
}

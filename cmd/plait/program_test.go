package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// said is what one run of the program said.
type said struct {
	out, err string
	code     int
}

func run(t *testing.T, args ...string) said {
	t.Helper()
	var out, err bytes.Buffer
	p := program{args: args, stdout: &out, stderr: &err}
	code := p.run(t.Context())
	return said{out.String(), err.String(), code}
}

func mustRead(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// documented is the example file in docs/file.md, written to a folder.
func documented(t *testing.T) string {
	t.Helper()
	block := regexp.MustCompile("(?s)```yaml\n(.*?)```").FindStringSubmatch(mustRead(t, "../../docs/file.md"))
	if block == nil {
		t.Fatal("docs/file.md has no example")
	}
	return written(t, block[1])
}

func written(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "practical.yaml")
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

func TestPlanDocumentedExample(t *testing.T) {
	got := run(t, "plan", documented(t))
	if got.code != exitFits || got.err != "" || !strings.Contains(got.out, "Flatbreads and a dip") {
		t.Errorf("got exit %d, errors %q, output:\n%s", got.code, got.err, got.out)
	}
}

func TestPlanIsTheSameTwice(t *testing.T) {
	file := documented(t)
	first, second := run(t, "plan", "--format", "json", "--seed", "3", file), run(t, "plan", "--format", "json", "--seed", "3", file)
	if first != second || first.code != exitFits {
		t.Errorf("two runs differ, or failed: %+v", second)
	}
	var plan struct {
		Status string
		Seed   int
		Rows   []struct{ Clock, Action string }
	}
	if err := json.Unmarshal([]byte(first.out), &plan); err != nil {
		t.Fatal(err)
	}
	if plan.Seed != 3 || len(plan.Rows) < 8 || plan.Status == "infeasible" {
		t.Errorf("plan %+v", plan)
	}
}

// An invented practical of two bakes at different heats in one oven.
const unfit = `title: Two heats
rules: {dishes: 2}
clock: {start: 09:00, finish: 10:00}
dishes:
  - name: Pie
    steps:
      - {text: Fill the pie, hands: 10, wait: {least: 30, most: 35, place: oven, celsius: 220}}
  - name: Custard
    steps:
      - {text: Mix the custard, hands: 10, wait: {least: 30, most: 35, place: oven, celsius: 150}}
`

func TestPlanThatCannotFit(t *testing.T) {
	got := run(t, "plan", written(t, unfit))
	if got.code != exitUnfit || !strings.Contains(got.out, "Two heats") {
		t.Errorf("got exit %d, errors %q, output:\n%s", got.code, got.err, got.out)
	}
}

func TestPlanSaysEveryFault(t *testing.T) {
	file := written(t, "title: x\nclock: {start: noonish}\nsalt: much\ndishes: []\n")
	got := run(t, "plan", file)
	lines := strings.Split(strings.TrimSpace(got.err), "\n")
	if got.code != exitFailure || got.out != "" || len(lines) < 2 {
		t.Fatalf("got exit %d, %d lines of errors:\n%s", got.code, len(lines), got.err)
	}
	for _, line := range lines {
		if !regexp.MustCompile(`^plait: ` + regexp.QuoteMeta(file) + `:\d+:\d+: [a-z.\[\]0-9-]+: .+; .+`).MatchString(line) {
			t.Errorf("line %q does not say file, line, column, field, what was wrong and what would be right", line)
		}
	}
}

// What planning needs beyond the form of the file is said with the file's name.
func TestPlanWithoutDishes(t *testing.T) {
	file := written(t, "title: x\ndishes: []\n")
	got := run(t, "plan", file)
	if got.code != exitFailure || !strings.HasPrefix(got.err, "plait: "+file+": ") && !strings.HasPrefix(got.err, "plait: "+file+":") {
		t.Errorf("got exit %d, errors %q", got.code, got.err)
	}
}

func TestPlanOut(t *testing.T) {
	out := filepath.Join(t.TempDir(), "plan.txt")
	got := run(t, "plan", "--out", out, documented(t))
	if got.code != exitFits || got.out != "" || !strings.Contains(mustRead(t, out), "Flatbreads") {
		t.Errorf("got %+v", got)
	}
	if got := run(t, "plan", "--out", filepath.Join(out, "under-a-file"), documented(t)); got.code != exitFailure {
		t.Errorf("to a place that cannot be: %+v", got)
	}
}

func TestPlanFormats(t *testing.T) {
	for format, begins := range map[string]string{"html": "<!doctype html>", "pdf": "%PDF-", "json": "{"} {
		got := run(t, "plan", "--format", format, "--landscape", "--large-type", "--name", "Amara B", documented(t))
		if got.code != exitFits || !strings.HasPrefix(strings.ToLower(got.out), strings.ToLower(begins)) || format == "html" && !strings.Contains(got.out, "Amara B") {
			t.Errorf("%s: exit %d, errors %q, output begins %q", format, got.code, got.err, got.out[:min(len(got.out), 40)])
		}
	}
}

// What is proved is said beside the plan, not in it.
func TestPlanSaysWhatIsProved(t *testing.T) {
	got := run(t, "plan", "--proved", documented(t))
	if got.code != exitFits || !strings.HasPrefix(got.err, "It cannot finish sooner: proved.\n") || got.out != run(t, "plan", documented(t)).out {
		t.Errorf("exit %d, errors %q, output:\n%s", got.code, got.err, got.out)
	}
}

func TestPDFNotToATerminal(t *testing.T) {
	var out, err bytes.Buffer
	p := program{args: []string{"plan", "--format", "pdf", "x.yaml"}, stdout: &out, stderr: &err, outTerminal: true}
	if code := p.run(t.Context()); code != exitFailure || !strings.Contains(err.String(), "--out") {
		t.Errorf("exit %d, errors %q", code, err.String())
	}
}

func TestPlanStopped(t *testing.T) {
	var out, err bytes.Buffer
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	p := program{args: []string{"plan", documented(t)}, stdout: &out, stderr: &err}
	if code := p.run(ctx); code != exitFailure || !strings.Contains(err.String(), "stopped before it was done") {
		t.Errorf("exit %d, output %q, errors %q", code, out.String(), err.String())
	}
}

func TestSchemas(t *testing.T) {
	for _, of := range []string{"practical", "plan"} {
		var schema struct {
			Schema string `json:"$schema"`
		}
		got := run(t, "schema", of)
		if err := json.Unmarshal([]byte(got.out), &schema); err != nil || schema.Schema != "https://json-schema.org/draft/2020-12/schema" || got.code != 0 {
			t.Errorf("schema %s: %v, %+v", of, err, schema)
		}
	}
	if got := run(t, "schema"); got.out != run(t, "schema", "practical").out {
		t.Error("plait schema is not the schema of practical files")
	}
}

func TestUsage(t *testing.T) {
	for _, tt := range []struct {
		args []string
		code int
		want string
	}{
		{[]string{"--help"}, 0, "demo"},
		{[]string{"plan", "--help"}, 0, "--large-type"},
		{[]string{"version"}, 0, "plait "},
		{[]string{}, exitFailure, "plait --help"},
		{[]string{"bake"}, exitFailure, "bake"},
		{[]string{"plan"}, exitFailure, "<file>"},
		{[]string{"plan", "x.yaml", "--format", "stone"}, exitFailure, "text"},
		{[]string{"plan", "no-such-file.yaml"}, exitFailure, "there is no such file"},
		{[]string{"schema", "pie"}, exitFailure, "practical"},
	} {
		got := run(t, tt.args...)
		if got.code != tt.code || !strings.Contains(got.out+got.err, tt.want) {
			t.Errorf("plait %s: exit %d, said %q; want exit %d and %q", strings.Join(tt.args, " "), got.code, got.out+got.err, tt.code, tt.want)
		}
	}
}

package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"plait.example/solver"
)

const data = "../../psplib/testdata/"

// folder makes a set of some of the published instances.
func folder(t *testing.T, files ...string) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "some")
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := os.ReadFile(data + f)
		if err != nil {
			t.Fatal(err)
		}
		write(t, filepath.Join(dir, f), string(text))
	}
	return dir
}

func write(t *testing.T, file, text string) string {
	t.Helper()
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

func runs(args ...string) (table, complaints string, code int) {
	var out, bad bytes.Buffer
	code = run(context.Background(), args, &out, &bad)
	return out.String(), bad.String(), code
}

// The optima 26 and 43 of psp1 of J10 and of j301_1, and that psp2 of J10 has
// no schedule, are published; see the README of the test data.
func TestTable(t *testing.T) {
	dir := folder(t, "j10_psp1.sch", "j10_psp2.sch", "j301_1.sm")
	bounds := write(t, filepath.Join(t.TempDir(), "bounds.csv"),
		"set,instance,status,lower,upper\nsome,j10_psp1.sch,optimal,26,26\nsome,j10_psp2.sch,infeasible,,\nsome,j301_1,optimal,43,43\n")
	baseline := write(t, filepath.Join(t.TempDir(), "baseline.csv"),
		"set,instance,status,makespan,solver_seconds\nsome,j10_psp1,optimal,26,0.003\nsome,j301_1.sm,feasible,44,30\n")
	rows := filepath.Join(t.TempDir(), "rows.csv")
	table, complaints, code := runs("-limit", "0", "-effort", "100000", "-parallel", "2", "-bounds", bounds, "-baseline", baseline, "-csv", rows, dir)
	if code != ok || complaints != "" {
		t.Fatalf("code %d, %q", code, complaints)
	}
	lines := strings.Split(strings.TrimSpace(table), "\n")
	cells := strings.Split(lines[len(lines)-1], " | ")
	if want := []string{"| some", "3", "2", "2", "3", "3", "0", "0.000 %"}; !slices.Equal(cells[:8], want) {
		t.Errorf("%q, want to begin with %q", cells, want)
	}
	if cells[12] != "2 to 1" {
		t.Errorf("beside the baseline: %q, want 2 to 1", cells[12])
	}
	f, err := os.Open(rows)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	got, err := csv.NewReader(f).ReadAll()
	if err != nil || len(got) != 4 {
		t.Fatalf("%v, %d rows, want 4", err, len(got))
	}
	if want := []string{"some", "j10_psp1.sch", "optimal", "26", "26"}; !slices.Equal(got[1][:5], want) {
		t.Errorf("first row %q, want to begin with %q", got[1], want)
	}
	if got[2][2] != "infeasible" || got[2][3] != "" {
		t.Errorf("second row %q, want infeasible", got[2])
	}
}

// A published bound that is wrong on purpose is told as a contradiction.
func TestContradiction(t *testing.T) {
	dir := folder(t, "j301_1.sm")
	bounds := write(t, filepath.Join(t.TempDir(), "bounds.csv"), "set,instance,lower,upper\nsome,j301_1,44,44\n")
	if table, _, code := runs("-limit", "0", "-bounds", bounds, dir); code != against {
		t.Errorf("code %d for\n%s", code, table)
	}
}

func TestContradicts(t *testing.T) {
	found := outcome{status: solver.Feasible, value: 50, bound: 40}
	none := outcome{status: solver.Infeasible, value: -1}
	for _, c := range []struct {
		name string
		r    outcome
		k    published
		want bool
	}{
		{"between", found, published{lower: 45, upper: 50}, false},
		{"better than known", found, published{lower: 45, upper: 52}, false},
		{"nothing known", found, unknown, false},
		{"below the bound", found, published{lower: 51, upper: 60}, true},
		{"bound above a schedule", found, published{lower: 30, upper: 39}, true},
		{"none and none", none, published{infeasible: true, lower: -1, upper: -1}, false},
		{"none where one is", none, published{lower: 30, upper: 39}, true},
		{"one where none is", found, published{infeasible: true, lower: -1, upper: -1}, true},
	} {
		if got := contradicts(c.r, c.k); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestSample(t *testing.T) {
	dir := folder(t, "j301_1.sm", "j304_2.sm", "j307_3.sm", "j3010_4.sm", "j3013_5.sm", "j3016_6.sm")
	s, err := open(dir, 3)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, f := range s.files {
		got = append(got, filepath.Base(f))
	}
	if want := []string{"j304_2.sm", "j3010_4.sm", "j3016_6.sm"}; !slices.Equal(got, want) {
		t.Errorf("sample %q, want %q", got, want)
	}
}

func TestShare(t *testing.T) {
	list := []float64{5, 1, 4, 2, 3}
	for per, want := range map[int]float64{50: 3, 90: 5, 100: 5, 20: 1} {
		if got := share(list, per); got != want {
			t.Errorf("%d %%: %v, want %v", per, got, want)
		}
	}
}

func TestUsage(t *testing.T) {
	bad := write(t, filepath.Join(t.TempDir(), "bounds.csv"), "a,b\n1,2\n")
	empty := t.TempDir()
	for _, args := range [][]string{
		{},
		{"-limit", "soon", empty},
		{"-sample", "-1", empty},
		{"-parallel", "0", empty},
		{empty},
		{"no-such-folder"},
		{"-bounds", bad, folder(t, "j301_1.sm")},
		{"-baseline", "no-such-file", folder(t, "j301_1.sm")},
	} {
		if _, complaints, code := runs(args...); code != misread || complaints == "" {
			t.Errorf("%q: code %d, %q", args, code, complaints)
		}
	}
	if _, complaints, code := runs("-h"); code != ok || !strings.Contains(complaints, "-sample") {
		t.Errorf("-h: code %d, %q", code, complaints)
	}
}

package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const data = "../../psplib/testdata/"

func runs(t *testing.T, args ...string) (rows [][]string, complaints string, code int) {
	t.Helper()
	var out, bad bytes.Buffer
	code = run(context.Background(), args, &out, &bad)
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows, bad.String(), code
}

// The optimum of PSP1 of J10 is published as 26; PSP2 has no schedule.
func TestRows(t *testing.T) {
	rows, complaints, code := runs(t, "-limit", "0", "-effort", "100000", "-start-times", data+"j10_psp1.sch", data+"j10_psp2.sch")
	if code != ok || complaints != "" || len(rows) != 3 {
		t.Fatalf("code %d, %q, rows %q", code, complaints, rows)
	}
	if got := strings.Join(rows[0], " "); got != "file status makespan lower_bound seconds conflicts starts" {
		t.Errorf("header %s", got)
	}
	if got := strings.Join(rows[1][1:4], " "); got != "optimal 26 26" {
		t.Errorf("first row %q", rows[1])
	}
	if n := len(strings.Fields(rows[1][6])); n != 12 {
		t.Errorf("%d starts for 12 activities: %q", n, rows[1][6])
	}
	if got := strings.Join(rows[2][1:4], " "); got != "infeasible  " || rows[2][6] != "" {
		t.Errorf("second row %q", rows[2])
	}
}

// A file that cannot be read is told, and does not keep the others from it.
func TestUnreadable(t *testing.T) {
	torn := filepath.Join(t.TempDir(), "torn.sch")
	if err := os.WriteFile(torn, []byte("3 1\n0 1 2\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	rows, complaints, code := runs(t, torn, "no-such-file.sm", data+"j10_psp1.sch")
	if code != misread || len(rows) != 2 || !strings.Contains(complaints, "torn.sch:2: ") || !strings.Contains(complaints, "no-such-file.sm") {
		t.Errorf("code %d, rows %q, complaints %q", code, rows, complaints)
	}
}

func TestUsage(t *testing.T) {
	for _, args := range [][]string{{}, {"-limit", "soon", "x"}, {"-effort", "0", "x"}, {"-limit", "-1s", "x"}, {"-nonsense"}} {
		if _, complaints, code := runs(t, args...); code != misread || complaints == "" {
			t.Errorf("%q: code %d, %q", args, code, complaints)
		}
	}
	if _, complaints, code := runs(t, "-h"); code != ok || !strings.Contains(complaints, "-start-times") {
		t.Errorf("-h: code %d, %q", code, complaints)
	}
}

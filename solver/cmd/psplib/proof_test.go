package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The log is written, and its replay stands in a column of its own.
func TestProof(t *testing.T) {
	log := filepath.Join(t.TempDir(), "log")
	rows, complaints, code := runs(t, "-limit", "0", "-effort", "100000", "-proof", log, "-check", data+"j10_psp2.sch")
	if code != ok || complaints != "" || len(rows) != 2 || rows[0][6] != "check" || !strings.HasPrefix(rows[1][6], "proved: ") {
		t.Fatalf("code %d, %q, rows %q", code, complaints, rows)
	}
	text, err := os.ReadFile(log)
	if err != nil || !strings.HasPrefix(string(text), "proof 1 activities 12 ") || !strings.HasSuffix(string(text), "\nend infeasible\n") {
		t.Errorf("error %v, log %.100q", err, text)
	}
	rows, complaints, code = runs(t, "-limit", "0", "-effort", "100000", "-check", data+"j10_psp1.sch", data+"j301_1.sm")
	if code != ok || complaints != "" || len(rows) != 3 || !strings.HasSuffix(rows[1][6], " 0 unchecked") || !strings.HasPrefix(rows[2][6], "proved: ") {
		t.Errorf("code %d, %q, rows %q", code, complaints, rows)
	}
}

// Two instances that were published as open: the values are proved, and every
// step of the proofs by propagation alone.
func TestProofOfWhatWasOpen(t *testing.T) {
	rows, complaints, code := runs(t, "-limit", "0", "-effort", "1000", "-check", "-check-nodes", "0", data+"j30_psp64.sch", data+"j30_psp155.sch")
	if code != ok || complaints != "" || len(rows) != 3 {
		t.Fatalf("code %d, %q, rows %q", code, complaints, rows)
	}
	for n, best := range []string{"169", "154"} {
		row := rows[n+1]
		if row[1] != "optimal" || row[2] != best || row[3] != best || !strings.HasPrefix(row[6], "proved: ") || !strings.HasSuffix(row[6], " 0 by search, 0 unchecked") {
			t.Errorf("%q; must be optimal, %s, proved without a search", row, best)
		}
	}
	if _, complaints, code := runs(t, "-check-nodes", "-1", data+"j30_psp64.sch"); code != misread || !strings.Contains(complaints, "-check-nodes must be") {
		t.Errorf("code %d, %q", code, complaints)
	}
}

// One log for two instances, or one that cannot be written, is told.
func TestProofNotWritten(t *testing.T) {
	if _, complaints, code := runs(t, "-proof", "log", data+"j10_psp1.sch", data+"j10_psp2.sch"); code != misread || !strings.Contains(complaints, "one FILE") {
		t.Errorf("two files: code %d, %q", code, complaints)
	}
	nowhere := filepath.Join(t.TempDir(), "no", "log")
	if _, complaints, code := runs(t, "-proof", nowhere, data+"j10_psp1.sch"); code != misread || !strings.Contains(complaints, nowhere) {
		t.Errorf("nowhere: code %d, %q", code, complaints)
	}
}

package verify_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// Whatever the problem and the schedule, the judge answers and does not panic;
// so do Validate, Without and, on what was accepted, Value. What is accepted
// by the judge is accepted by its twin.
func FuzzCheck(f *testing.F) {
	shop, err := os.ReadFile("testdata/workshop.json")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files(f, "good/*.json", 4) {
		s, err := os.ReadFile(filepath.Join("testdata", file))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(shop, s)
	}
	f.Fuzz(func(t *testing.T, asProblem, asSchedule []byte) {
		var p problem.Problem
		var s problem.Solution
		if json.Unmarshal(asProblem, &p) != nil || json.Unmarshal(asSchedule, &s) != nil {
			return
		}
		if len(verify.Check(&p, &s)) > 0 {
			return
		}
		gone := map[string]bool{}
		for i, name := range p.Demands() {
			gone[name] = i%2 == 0
		}
		if b := verify.Check(problem.Without(&p, gone), &s); b != nil {
			t.Errorf("with less asked it is refused: %v", b)
		}
		for _, o := range p.Objectives {
			verify.Value(&p, o, &s)
		}
		if p.Horizon <= 1000 && !holds(&p, &s) {
			t.Errorf("the twin refuses it:\n%s\n%s", asProblem, asSchedule)
		}
	})
}

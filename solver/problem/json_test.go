package problem_test

import (
	"encoding/json"
	"os"
	"reflect"
	"testing"

	"plait.example/solver/problem"
)

// A problem survives JSON, and reads from the form on disk that other tools
// may write: the file names every field.
func TestProblemJSON(t *testing.T) {
	data, err := os.ReadFile("testdata/press.json")
	if err != nil {
		t.Fatal(err)
	}
	var fromFile, back problem.Problem
	if err := json.Unmarshal(data, &fromFile); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(&fromFile, press()) {
		t.Errorf("the file reads as %s\nwant %s", asJSON(t, fromFile), asJSON(t, press()))
	}
	if err := json.Unmarshal([]byte(asJSON(t, press())), &back); err != nil || !reflect.DeepEqual(&back, press()) {
		t.Errorf("written and read back, error %v: %s", err, asJSON(t, back))
	}
}

func TestSolutionJSON(t *testing.T) {
	const text = `{"start":[0,3,7],"end":[2,7,7],"mode":[1,0,0],"changes":[{"state":0,"level":1,"at":2}]}`
	want := problem.Solution{
		Start: []int{0, 3, 7}, End: []int{2, 7, 7}, Mode: []int{1, 0, 0},
		Changes: []problem.StateChange{{State: 0, Level: 1, At: 2}},
	}
	var s problem.Solution
	if err := json.Unmarshal([]byte(text), &s); err != nil || !reflect.DeepEqual(s, want) {
		t.Errorf("read %+v, error %v", s, err)
	}
	if got := asJSON(t, want); got != text {
		t.Errorf("written %s", got)
	}
	for _, c := range []struct {
		pt   problem.Point
		want int
	}{{problem.Zero(), 0}, {problem.Start(1), 3}, {problem.End(1), 7}} {
		if got := s.Time(c.pt); got != c.want {
			t.Errorf("time of %+v is %d, want %d", c.pt, got, c.want)
		}
	}
}

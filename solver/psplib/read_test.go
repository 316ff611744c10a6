package psplib_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"plait.example/solver/problem"
	"plait.example/solver/psplib"
)

func read(t *testing.T, file string) (*problem.Problem, []byte) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", file))
	if err != nil {
		t.Fatal(err)
	}
	p, err := psplib.Read(file, bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return p, data
}

// published lists the files of testdata/published.csv.
func published(t testing.TB) [][]string {
	t.Helper()
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// longest is the length of the longest path from time 0 to the end of the last
// activity, resources ignored; -1 if the lags contradict one another.
func longest(p *problem.Problem) int {
	start := make([]int, len(p.Activities))
	for range len(start) + 1 {
		moved := false
		for _, l := range p.Lags {
			if l.To.Activity == problem.Origin {
				continue // that the project starts at 0
			}
			at := start[l.From.Activity] + l.Min
			if l.From.End {
				at += p.Activities[l.From.Activity].MinDuration
			}
			if at > start[l.To.Activity] {
				start[l.To.Activity], moved = at, true
			}
		}
		if !moved {
			return start[len(start)-1]
		}
	}
	return -1
}

// Every .sm file states its own critical path, as "MPM-Time", the sum of all
// durations, as "horizon", and how many activities and resources it has.
func TestReadSMAgainstItsHeader(t *testing.T) {
	info := regexp.MustCompile(`MPM-Time\s+\d+\s+\d+\s+\d+\s+\d+\s+\d+\s+(\d+)`)
	horizon := regexp.MustCompile(`horizon\s*:\s*(\d+)`)
	jobs := regexp.MustCompile(`jobs \(incl. supersource/sink \)\s*:\s*(\d+)`)
	for _, row := range published(t) {
		if !strings.HasSuffix(row[0], ".sm") {
			continue
		}
		p, data := read(t, row[0])
		if want := string(info.FindSubmatch(data)[1]); strconv.Itoa(longest(p)) != want {
			t.Errorf("%s: critical path %d, the file says %s", row[0], longest(p), want)
		}
		if want := string(horizon.FindSubmatch(data)[1]); strconv.Itoa(p.Horizon) != want {
			t.Errorf("%s: horizon %d, the file says %s", row[0], p.Horizon, want)
		}
		if want := string(jobs.FindSubmatch(data)[1]); strconv.Itoa(len(p.Activities)) != want || len(p.Resources) != 4 {
			t.Errorf("%s: %d activities, %d resources; want %s, 4", row[0], len(p.Activities), len(p.Resources), want)
		}
	}
}

// j301_1 by eye: job 4 lasts 6 and uses 3 of R4; job 2 is before 6, 11 and 15.
func TestReadSM(t *testing.T) {
	p, _ := read(t, "j301_1.sm")
	job4 := p.Activities[3]
	if job4.Name != "4" || job4.MinDuration != 6 || job4.MaxDuration != 6 || len(job4.Modes) != 1 ||
		len(job4.Modes[0].Uses) != 1 || job4.Modes[0].Uses[0] != (problem.Use{Resource: 3, Amount: 3}) {
		t.Errorf("job 4 is %+v", job4)
	}
	if source := p.Activities[0]; source.MaxDuration != 0 || source.Modes != nil {
		t.Errorf("the source is %+v", source)
	}
	if want := (problem.Lag{From: problem.End(1), To: problem.Start(14)}); p.Lags[5] != want {
		t.Errorf("sixth lag is %+v; want %+v, job 2 before job 15", p.Lags[5], want)
	}
	var capacities []int
	for _, r := range p.Resources {
		capacities = append(capacities, r.Capacity)
	}
	if len(capacities) != 4 || capacities[0] != 12 || capacities[1] != 13 || capacities[2] != 4 || capacities[3] != 12 {
		t.Errorf("capacities %v; want 12, 13, 4, 12", capacities)
	}
}

// PSP1 of J10 by eye: activity 8 has successors 1, 2, 11 at lags -22, -34, 2.
func TestReadSCH(t *testing.T) {
	p, _ := read(t, "j10_psp1.sch")
	want := []problem.Lag{
		{From: problem.Start(8), To: problem.Start(1), Min: -22},
		{From: problem.Start(8), To: problem.Start(2), Min: -34},
		{From: problem.Start(8), To: problem.Start(11), Min: 2},
	}
	var got []problem.Lag
	for _, l := range p.Lags {
		if l.From == problem.Start(8) {
			got = append(got, l)
		}
	}
	if len(got) != 3 || got[0] != want[0] || got[1] != want[1] || got[2] != want[2] {
		t.Errorf("lags of activity 8 are %+v; want %+v", got, want)
	}
	if len(p.Activities) != 12 || p.Activities[7].MinDuration != 10 || len(p.Activities[7].Modes[0].Uses) != 3 {
		t.Errorf("activity 7 of %d is %+v; want duration 10, three uses", len(p.Activities), p.Activities[7])
	}
}

// No published makespan can beat the longest path, nor exceed the horizon.
func TestPublishedWithinBounds(t *testing.T) {
	for _, row := range published(t) {
		p, _ := read(t, row[0])
		if row[1] == "infeasible" {
			continue
		}
		best, err := strconv.Atoi(row[2])
		if err != nil {
			t.Fatal(err)
		}
		if lower := longest(p); lower < 0 || best < lower || best > p.Horizon {
			t.Errorf("%s: published %d, longest path %d, horizon %d", row[0], best, lower, p.Horizon)
		}
	}
}

// The format is told by suffix, else by content; the name is without either.
func TestReadByContent(t *testing.T) {
	for _, file := range []string{"j301_1.sm", "j10_psp1.sch"} {
		want, data := read(t, file)
		got, err := psplib.Read("standard input", bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Lags) != len(want.Lags) || got.Horizon != want.Horizon {
			t.Errorf("%s without its suffix reads differently", file)
		}
	}
	if p, _ := read(t, "j301_1.sm"); p.Name != "j301_1" {
		t.Errorf("name %q", p.Name)
	}
}

const small = "2 1 0 0\n0 1 1 1 [0]\n1 1 1 2 [3]\n2 1 1 3 [2]\n3 1 0\n0 1 0 0\n1 1 3 1\n2 1 2 1\n3 1 0 0\n1\n"

const smallSM = `jobs (incl. supersource/sink ):  3
  - renewable                 :  1   R
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          1           2
   2        1          1           3
   3        1          0
****
REQUESTS/DURATIONS:
jobnr. mode duration  R 1
----
  1      1     0       0
  2      1     4       1
  3      1     0       0
****
RESOURCEAVAILABILITIES:
  R 1
   2
`

// Faults in otherwise right files: each must be told with its line.
func TestReadFaults(t *testing.T) {
	for _, c := range []struct {
		name, from, to string // replaced in the small file of that suffix
		want           []string
	}{
		{"x.sch", "1 1 1 2 [3]", "1 1 1 2", []string{"x.sch:3: activity 1 has 1 successors, but 0 lags in square brackets"}},
		{"x.sch", "1 1 1 2 [3]", "1 1 2 2 [3]", []string{"x.sch:3: activity 1 names 2 successors, but lists 1"}},
		{"x.sch", "1 1 1 2 [3]", "1 1 1 9 [3]", []string{"x.sch:3: successor 9 of activity 1; must be another from 0 to 3"}},
		{"x.sch", "1 1 1 2 [3]", "1 1 1 1 [3]", []string{"x.sch:3: successor 1 of activity 1"}},
		{"x.sch", "1 1 1 2 [3]", "1 2 1 2 [3]", []string{"x.sch:3: activity 1 has 2 modes"}},
		{"x.sch", "1 1 1 2 [3]", "1 1 1 2 [three]", []string{`x.sch:3: "three" is not a whole number`}},
		{"x.sch", "1 1 1 2 [3]", "1 1 1 2 [99999999]", []string{`x.sch:3: 99999999 is out of range`}},
		{"x.sch", "2 1 2 1\n", "2 1 2\n", []string{"x.sch:8: must be the row of activity 2"}},
		{"x.sch", "2 1 2 1\n", "2 3 2 1\n", []string{"x.sch:8: activity 2 is in mode 3"}},
		{"x.sch", "2 1 2 1\n", "2 1 -2 1\n", []string{"x.sch:8: duration -2"}},
		{"x.sch", "2 1 2 1\n", "2 1 2 -1\n", []string{"x.sch:8: uses -1 of resource 1"}},
		{"x.sch", "\n1\n", "\n1 1\n", []string{"x.sch:10: 2 capacities for 1 resources"}},
		{"x.sch", "\n1\n", "\n-1\n", []string{"x.sch:10: capacity -1 of resource 1"}},
		{"x.sch", "\n1\n", "\n1\n7\n", []string{`x.sch:11: "7" stands after the capacities`}},
		{"x.sch", "\n1\n", "\n", []string{"ends before the capacities"}},
		{"x.sch", "3 1 0 0\n1\n", "", []string{"ends before the duration of activity 3"}},
		{"x.sch", "2 1 0 0", "many", []string{`x.sch:1: "many" is not a whole number`}},
		{"x.sch", "2 1 0 0", "2", []string{"x.sch:1: must begin with the numbers"}},
		{"x.sch", small, "", []string{"is empty"}},
		{"x.sm", "jobs", "works", []string{`x.sm:2: the header must give "jobs"`}},
		{"x.sm", ":  3", ":  three", []string{`x.sm:1: "three" must be a whole number`}},
		{"x.sm", "  - renewable                 :  1   R", "  - renewable                 :  1   R\n  - nonrenewable : 2 N", []string{"x.sm:3: nonrenewable resources are not supported"}},
		{"x.sm", "   2        1          1           3", "   2        3          1           3", []string{"x.sm:6: job 2 has 3 modes"}},
		{"x.sm", "   2        1          1           3", "   2        1          1           4", []string{"x.sm:6: successor 4 of job 2"}},
		{"x.sm", "   2        1          1           3", "   2        1          2           3", []string{"x.sm:6: job 2 names 2 successors, but lists 1"}},
		{"x.sm", "   3        1          0\n", "", []string{"x.sm:6: the section ends before its last job"}},
		{"x.sm", "  2      1     4       1", "  2      1     4", []string{"x.sm:13: job 2 has 0 amounts for 1 resources"}},
		{"x.sm", "  2      1     4       1", "  5      1     4       1", []string{"x.sm:13: must be the row of job 2"}},
		{"x.sm", "RESOURCEAVAILABILITIES", "RESOURCES", []string{"has no section RESOURCEAVAILABILITIES"}},
		{"x.sm", "\n   2\n", "\n", []string{"ends before the capacities"}},
	} {
		text := small
		if strings.HasSuffix(c.name, ".sm") {
			text = smallSM
		}
		text = strings.Replace(text, c.from, c.to, 1)
		p, err := psplib.Read(c.name, strings.NewReader(text))
		if err == nil || p != nil {
			t.Errorf("%q for %q: not refused", c.to, c.from)
			continue
		}
		for _, want := range c.want {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%q for %q: %v\nwant %s", c.to, c.from, err, want)
			}
		}
	}
}

func TestReadTellsAllFaults(t *testing.T) {
	text := strings.NewReplacer("[3]", "[x]", "2 1 2 1\n", "2 1 -2 1\n", "\n1\n", "\n-1\n").Replace(small)
	_, err := psplib.Read("x.sch", strings.NewReader(text))
	for _, line := range []string{"x.sch:3: ", "x.sch:8: ", "x.sch:10: "} {
		if err == nil || !strings.Contains(err.Error(), line) {
			t.Errorf("no fault at %s in: %v", line, err)
		}
	}
}

func TestReadSmall(t *testing.T) {
	for name, text := range map[string]string{"x.sch": small, "x.sm": smallSM} {
		if _, err := psplib.Read(name, strings.NewReader(text)); err != nil {
			t.Error(err)
		}
	}
}

// What is read is valid or refused, and never a panic.
func FuzzRead(f *testing.F) {
	for _, row := range published(f)[14:20] {
		data, err := os.ReadFile(filepath.Join("testdata", row[0]))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(row[0], data)
	}
	f.Add("x.sch", []byte(small))
	f.Add("x.sm", []byte(smallSM))
	f.Add("", []byte("0 0\n0 1 0\n1 1 0\n0 1 0\n1 1 0\n"))
	f.Fuzz(func(t *testing.T, name string, data []byte) {
		p, err := psplib.Read(name, bytes.NewReader(data))
		if (p == nil) == (err == nil) {
			t.Fatalf("problem %v, error %v", p, err)
		}
		if err == nil && p.Validate() != nil {
			t.Fatal(p.Validate())
		}
	})
}

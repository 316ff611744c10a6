package recipe

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"plait.example/internal/practical"
)

var (
	heatWithGas = regexp.MustCompile(`(\d{2,3})(?:-(\d{2,3}))?C / gas (\S+)`)
	coreHeat    = regexp.MustCompile(`core (\d{2})C( for 2 min)?`)
)

// Gas marks beside temperatures agree with the handbook's table of gas marks to
// 10 °C, which is what real cookers differ by.
func TestGasMarksOfTheTable(t *testing.T) {
	seen := 0
	for _, q := range DefaultTable().Techniques {
		for _, m := range heatWithGas.FindAllStringSubmatch(q.Heat, -1) {
			low, _ := strconv.Atoi(m[1])
			high := low
			if m[2] != "" {
				high, _ = strconv.Atoi(m[2])
			}
			for mark := range strings.SplitSeq(strings.Trim(m[3], ";,"), "-") {
				celsius, known := practical.CelsiusOfGas(mark)
				seen++
				if !known || celsius < low-10 || celsius > high+10 {
					t.Errorf("%s: %q, and gas %s is %d °C", q.ID, m[0], mark, celsius)
				}
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d gas marks were found", seen)
	}
}

// Core temperatures are 75 °C, or 70 °C held for 2 minutes, which is the same by
// the national food agency's list of equivalents (from memory); bread is told by
// its own core of 90 °C and more.
func TestCoreTemperaturesOfTheTable(t *testing.T) {
	seen := 0
	for _, q := range DefaultTable().Techniques {
		for _, text := range []string{q.Heat, q.Control} {
			for _, m := range coreHeat.FindAllStringSubmatch(text, -1) {
				seen++
				celsius, _ := strconv.Atoi(m[1])
				if celsius < 75 && (celsius != 70 || m[2] == "") {
					t.Errorf("%s: %q", q.ID, text)
				}
			}
		}
	}
	if seen < 12 {
		t.Errorf("only %d core temperatures were found", seen)
	}
	for _, id := range []string{"shape-patties", "simmer-ragu", "ballotine", "roast-meat", "grill"} { // mince, rolled joints, poultry
		if q := DefaultTable().Find(id); !strings.Contains(q.Heat, "core 75C") {
			t.Errorf("%s: %q does not say its core", id, q.Heat)
		}
	}
}

// A skilled cook is to a learner as the usual ratios have it (common practice, no
// source): two to three times as fast at knife work, and never slower.
func TestSkilledMinutes(t *testing.T) {
	learner, skilled := 0, 0
	for _, q := range DefaultTable().Techniques {
		if q.Skilled.Low > q.Learner.Low || q.Skilled.Likely > q.Learner.Likely || q.Skilled.High > q.Learner.High {
			t.Errorf("%s: learner %+v, skilled %+v", q.ID, q.Learner, q.Skilled)
		}
		if q.Group == 2 {
			learner, skilled = learner+q.Learner.Likely, skilled+q.Skilled.Likely
		}
	}
	if ratio := float64(learner) / float64(skilled); ratio < 2 || ratio > 3 {
		t.Errorf("knife work: a learner takes %.1f times as long", ratio)
	}
}

package picture

import (
	"slices"
	"strings"
	"testing"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

func TestWordsTellEverything(t *testing.T) {
	for _, p := range []*timeplan.Plan{supper(), timeplantest.Sample(), timeplantest.Pair(), timeplantest.TooMuch()} {
		words := Words(p)
		has := func(parts ...string) bool {
			return slices.ContainsFunc(words, func(line string) bool {
				for _, part := range parts {
					if !strings.Contains(line, part) {
						return false
					}
				}
				return true
			})
		}
		for _, w := range p.Waits {
			if !has(w.From.Write(p.Hours)+" "+w.Dish, going[w.Place], "until "+w.Until.Write(p.Hours), minutes(int(w.Until-w.From))) {
				t.Errorf("%s: nothing tells of the wait of %s from %s", p.Title, w.Step, w.From)
			}
		}
		for _, r := range p.Rows {
			if !has(r.Clock.Write(p.Hours), strings.TrimRight(r.Text, ".")) {
				t.Errorf("%s: nothing tells of row %s", p.Title, r.ID)
			}
		}
		for _, s := range p.Ovens {
			if !has(s.Words, "hot at "+s.Hot.Write(p.Hours)) {
				t.Errorf("%s: nothing tells of the oven at %s", p.Title, s.Words)
			}
		}
	}
}

func TestWordsStandInOrderOfTheClock(t *testing.T) {
	last := practical.TimeOfDay(0)
	for _, line := range Words(supper()) {
		first, _, _ := strings.Cut(strings.TrimPrefix(line, "Clash from "), " ")
		at, err := practical.ParseTimeOfDay(first)
		if err != nil || at < last {
			t.Errorf("%q stands after %s: %v", line, last, err)
		}
		last = at
	}
}

func TestWordsTellOfAClash(t *testing.T) {
	told := 0
	for _, line := range Words(clashing()) {
		if strings.HasPrefix(line, "Clash from ") {
			told++
		}
	}
	if told != 2 {
		t.Errorf("%d clashes told, want 2", told)
	}
}

func TestWordsOfAnyPlan(t *testing.T) {
	for seed := range uint64(200) {
		p := randomPlan(seed)
		if n := len(Words(p)); n < len(p.Rows)+len(p.Waits) {
			t.Errorf("plan %d: %d lines for %d rows and %d waits", seed, n, len(p.Rows), len(p.Waits))
		}
	}
}

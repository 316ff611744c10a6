package check

import (
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// Faults are known in other words than those that the rules' own cases use, and
// words that only sound like a fault are none.
func TestSaidOtherwise(t *testing.T) {
	data, err := os.ReadFile("testdata/said-otherwise.txt")
	if err != nil {
		t.Fatal(err)
	}
	fault, n := 0, 0
	var lines []string
	judge := func() {
		if len(lines) == 0 {
			return
		}
		n++
		plan := strings.Join(lines, "\n")
		m := planOf(t, kitchenOnly(), plan)
		clock := &m.Practical.Clock
		clock.Start = m.Plan.Rows[0].At
		clock.SetUp, clock.Finish = clock.Start, m.Plan.Rows[len(lines)-1].At+20
		if clock.Finish < clock.Start { // past noon on a clock of twelve hours, as the reader of documents mends it
			for i := range m.Rows {
				if m.Rows[i].At < clock.Start {
					m.Rows[i].At, m.Rows[i].Clock = m.Rows[i].At+practical.TimeOfDay(12*60), written.Restored
				}
			}
			clock.Finish += 12 * 60
		}
		found := Run(m, Options{})
		if slices.ContainsFunc(found, func(f Finding) bool { return f.Fault == max(fault, -fault) }) != (fault > 0) {
			t.Errorf("fault %d in:\n%s\nfound:\n%s", fault, plan, shown(found))
		}
	}
	for line := range strings.Lines(string(data)) {
		line = strings.TrimSpace(line)
		switch number, err := strconv.Atoi(line); {
		case err == nil:
			judge()
			fault, lines = number, nil
		case line != "" && !strings.HasPrefix(line, "#"):
			lines = append(lines, line)
		}
	}
	judge()
	if n < 90 {
		t.Errorf("only %d plans", n)
	}
}

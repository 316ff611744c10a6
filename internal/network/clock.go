package network

import (
	"fmt"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// writeClock writes the rows' times as the practical asks. A row is written to
// five minutes only where that breaks nothing: it begins on the mark, or the
// moment the same cook's row before it ends. Any other is written to the minute,
// and so is one that would else be written earlier than the row above it.
func writeClock(plan *timeplan.Plan) {
	ends := map[int]practical.TimeOfDay{} // of each cook's last row
	exact, above := 0, practical.TimeOfDay(0)
	for i := range plan.Rows {
		r := &plan.Rows[i]
		r.Clock = r.At
		if down := r.At % practical.TimeOfDay(plan.Round); down != 0 {
			if (ends[r.Cook] == r.At || r.Outside) && r.At-down >= above {
				r.Clock -= down
			} else {
				exact++
			}
		}
		above = r.Clock
		ends[r.Cook] = r.End()
		if r.Action == timeplan.Rest {
			ends[1], ends[2] = r.End(), r.End()
		}
	}
	untilAsWritten(plan.Rows)
	if exact > 0 {
		plan.Notes = append(plan.Notes, fmt.Sprintf(
			"Times are in steps of %d minutes, but for those that this would break (%d): they are to the minute.", plan.Round, exact))
	}
}

// untilAsWritten has a put-in say when it is due out as its take-out is written.
func untilAsWritten(rows []timeplan.Row) {
	out := map[string]practical.TimeOfDay{}
	for _, r := range rows {
		if r.Action == timeplan.TakeOut {
			out[r.Steps[0]] = r.Clock
		}
	}
	for i := range rows {
		if at, is := out[firstOf(rows[i].Steps)]; is && rows[i].Action == timeplan.PutIn {
			rows[i].Until = at
		}
	}
}

func firstOf(steps []string) string {
	if len(steps) == 0 {
		return ""
	}
	return steps[0]
}

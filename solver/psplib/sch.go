package psplib

import (
	"strings"

	"plait.example/solver/problem"
)

// readSCH reads a .sch file: the numbers of activities (without source and
// sink) and of resources; a row of successors and start-to-start lags for each
// activity; a row of mode, duration and use for each; and the capacities.
func readSCH(f *reader) *problem.Problem {
	p := &problem.Problem{}
	line, ok := f.next()
	if !ok {
		f.fault("is empty; must begin with the numbers of activities and resources")
		return p
	}
	size, ok := f.numbers(strings.Fields(line))
	if !ok {
		return p
	}
	if len(size) < 2 || size[0] < 0 || size[0]+2 > problem.MaxActivities || size[1] < 0 || size[1] > 1000 {
		f.fault("must begin with the numbers of activities (0 to %d) and of resources (0 to 1000)", problem.MaxActivities-2)
		return p
	}
	n, resources := size[0]+2, size[1]
	longest := make([]int, n) // the greatest lag out of each activity
	for i := range n {
		if !f.successors(p, i, n, longest) {
			return p
		}
	}
	for i := range n {
		if !f.use(p, i, resources) {
			return p
		}
	}
	if line, ok := f.next(); ok {
		p.Resources = f.capacities(strings.Fields(line), resources)
	} else {
		f.fault("ends before the capacities")
	}
	if line, ok := f.next(); ok {
		f.fault("%q stands after the capacities, where the file must end", line)
	}
	// If there is a schedule, there is one no longer than the sum of each
	// activity's duration or greatest lag: the usual bound for these networks,
	// as in Bartusch, Moehring and Radermacher, Annals of Operations Research
	// 16 (1988), 201-240 (cited from memory).
	for i, a := range p.Activities {
		p.Horizon += max(a.MinDuration, longest[i])
	}
	p.Horizon = max(1, p.Horizon)
	return p
}

// successors reads the row of lags out of activity i. It is false at the end
// of the file.
func (f *reader) successors(p *problem.Problem, i, n int, longest []int) bool {
	line, ok := f.next()
	if !ok {
		f.fault("ends before the successors of activity %d", i)
		return false
	}
	var plain, bracketed []string
	for _, field := range strings.Fields(line) {
		if strings.HasPrefix(field, "[") || len(bracketed) > 0 {
			bracketed = append(bracketed, strings.TrimSuffix(strings.TrimPrefix(field, "["), "]"))
		} else {
			plain = append(plain, field)
		}
	}
	row, ok := f.numbers(plain)
	lags, fine := f.numbers(bracketed)
	switch {
	case !ok || !fine:
	case len(row) < 3 || row[0] != i:
		f.fault("must be the row of activity %d: number, mode, number of successors, successors, lags", i)
	case row[1] != 1:
		f.fault("activity %d has %d modes; only files of a single mode are supported", i, row[1])
	case row[2] != len(row)-3:
		f.fault("activity %d names %d successors, but lists %d", i, row[2], len(row)-3)
	case len(lags) != row[2]:
		f.fault("activity %d has %d successors, but %d lags in square brackets", i, row[2], len(lags))
	default:
		for k, to := range row[3:] {
			if to < 0 || to >= n || to == i {
				f.fault("successor %d of activity %d; must be another from 0 to %d", to, i, n-1)
				continue
			}
			p.Lags = append(p.Lags, problem.Lag{From: problem.Start(i), To: problem.Start(to), Min: lags[k]})
			longest[i] = max(longest[i], lags[k])
		}
	}
	return true
}

// use reads the row of duration and amounts of activity i. It is false at the
// end of the file.
func (f *reader) use(p *problem.Problem, i, resources int) bool {
	line, ok := f.next()
	if !ok {
		f.fault("ends before the duration of activity %d", i)
		return false
	}
	row, ok := f.numbers(strings.Fields(line))
	switch {
	case !ok:
	case len(row) != 3+resources || row[0] != i:
		f.fault("must be the row of activity %d: number, mode, duration, %d amounts", i, resources)
	case row[1] != 1:
		f.fault("activity %d is in mode %d; only mode 1 is supported", i, row[1])
	default:
		p.Activities = append(p.Activities, f.activity(i, row[2], row[3:]))
	}
	return true
}

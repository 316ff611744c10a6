package psplib

import (
	"strconv"
	"strings"

	"plait.example/solver/problem"
)

// readSM reads a single-mode .sm file: a header, then the sections PRECEDENCE
// RELATIONS, REQUESTS/DURATIONS and RESOURCEAVAILABILITIES.
func readSM(f *reader) *problem.Problem {
	p := &problem.Problem{}
	jobs, resources := f.header()
	if jobs < 0 {
		return p
	}
	f.precedences(p, jobs)
	f.requests(p, jobs, resources)
	if f.section("RESOURCEAVAILABILITIES", 1) {
		if line, ok := f.next(); ok {
			p.Resources = f.capacities(strings.Fields(line), resources)
		} else {
			f.fault("ends before the capacities")
		}
	}
	for _, a := range p.Activities {
		p.Horizon += a.MinDuration
	}
	p.Horizon = max(1, p.Horizon)
	return p
}

// header reads the numbers of jobs and renewable resources; jobs is -1 if
// there is no way to go on.
func (f *reader) header() (jobs, resources int) {
	jobs, resources = -1, -1
	for {
		line, ok := f.peek()
		if !ok || strings.HasPrefix(line, "PRECEDENCE") {
			break
		}
		f.next()
		label, value, found := strings.Cut(line, ":")
		if !found {
			continue
		}
		label = strings.ToLower(strings.TrimSpace(label))
		switch {
		case strings.HasPrefix(label, "jobs"):
			jobs = f.count(value, problem.MaxActivities)
		case strings.HasPrefix(label, "- renewable"):
			resources = f.count(value, 1000)
		case strings.HasPrefix(label, "- nonrenewable"), strings.HasPrefix(label, "- doubly"):
			if f.count(value, problem.MaxHorizon) > 0 {
				f.fault("%s resources are not supported; only renewable ones are", strings.Fields(label)[1])
			}
		}
	}
	if jobs < 1 || resources < 0 {
		f.fault("the header must give \"jobs\" (at least 1) and \"- renewable\" before PRECEDENCE RELATIONS")
		return -1, -1
	}
	return jobs, resources
}

// count reads the first field of a header value; -1 and a fault if it is not
// a number from 0 to most.
func (f *reader) count(value string, most int) int {
	fields := strings.Fields(value)
	if len(fields) == 0 {
		f.fault("a number is missing after the colon")
		return -1
	}
	n, err := strconv.Atoi(fields[0])
	if err != nil || n < 0 || n > most {
		f.fault("%q must be a whole number from 0 to %d", fields[0], most)
		return -1
	}
	return n
}

// section goes past the heading and the lines of column names under it.
func (f *reader) section(heading string, columns int) bool {
	for {
		line, ok := f.next()
		if !ok {
			f.fault("has no section %s", heading)
			return false
		}
		if strings.HasPrefix(line, heading) {
			break
		}
	}
	for range columns {
		f.next()
	}
	return true
}

// row reads the row of job number, which starts with that number; nil with a
// fault if it is not a row of at least three numbers.
func (f *reader) row(number int) []int {
	line, _ := f.next()
	list, ok := f.numbers(strings.Fields(line))
	if !ok {
		return nil
	}
	if len(list) < 3 || list[0] != number {
		f.fault("must be the row of job %d, with at least 3 numbers", number)
		return nil
	}
	return list
}

func (f *reader) precedences(p *problem.Problem, jobs int) {
	if !f.section("PRECEDENCE RELATIONS", 1) {
		return
	}
	for number := 1; number <= jobs && !f.ended(); number++ {
		row := f.row(number)
		if row == nil {
			continue
		}
		if row[1] != 1 {
			f.fault("job %d has %d modes; only files of a single mode are supported", number, row[1])
		}
		if successors := row[3:]; len(successors) != row[2] {
			f.fault("job %d names %d successors, but lists %d", number, row[2], len(successors))
		}
		for _, to := range row[3:] {
			if to < 1 || to > jobs || to == number {
				f.fault("successor %d of job %d; must be another job from 1 to %d", to, number, jobs)
				continue
			}
			p.Lags = append(p.Lags, problem.Lag{From: problem.End(number - 1), To: problem.Start(to - 1)})
		}
	}
}

func (f *reader) requests(p *problem.Problem, jobs, resources int) {
	if !f.section("REQUESTS/DURATIONS", 1) {
		return
	}
	if line, ok := f.peek(); ok && line[0] == '-' {
		f.next()
	}
	for number := 1; number <= jobs && !f.ended(); number++ {
		row := f.row(number)
		if row == nil {
			continue
		}
		if row[1] != 1 {
			f.fault("job %d is in mode %d; only mode 1 is supported", number, row[1])
		}
		if len(row) != 3+resources {
			f.fault("job %d has %d amounts for %d resources", number, len(row)-3, resources)
			continue
		}
		p.Activities = append(p.Activities, f.activity(number, row[2], row[3:]))
	}
}

// ended says that the section is over; one fault about it is enough.
func (f *reader) ended() bool {
	line, ok := f.peek()
	if ok && line[0] != '*' {
		return false
	}
	f.fault("the section ends before its last job")
	return true
}

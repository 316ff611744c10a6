// Package psplib reads published instances of project scheduling problems:
// single-mode .sm files of PSPLIB (Kolisch and Sprecher, European Journal of
// Operational Research 96, 1997, 205-216) and .sch files with minimal and
// maximal time lags as ProGen/max writes them (Kolisch, Schwindt and Sprecher,
// 1999). It owns the two formats and nothing else; it must know nothing of how
// problems are solved.
package psplib

import (
	"errors"
	"fmt"
	"io"
	"path"
	"strconv"
	"strings"

	"plait.example/solver/problem"
)

// Fault is one thing wrong in a file.
type Fault struct {
	File string
	Line int    // from 1; 0 if the file as a whole is meant
	Text string // what was found and what would be right
}

func (f Fault) Error() string {
	if f.Line == 0 {
		return f.File + ": " + f.Text
	}
	return fmt.Sprintf("%s:%d: %s", f.File, f.Line, f.Text)
}

// MaxSize is the greatest file that Read takes, in bytes.
const MaxSize = 16 << 20

// Read reads an instance in .sm or .sch format, told apart by the suffix of
// name, or by content if it has neither. Activities stand in the order of the
// file, source and sink included as activities of length zero, and are named
// by their numbers there. The project starts at 0, the makespan is the one
// objective, and the horizon is long enough for a best schedule if there is
// one. The error joins every Fault of the file.
func Read(name string, r io.Reader) (*problem.Problem, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxSize+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(data) > MaxSize {
		return nil, Fault{File: name, Text: fmt.Sprintf("is larger than %d bytes", MaxSize)}
	}
	f := &reader{file: name, lines: strings.Split(string(data), "\n")}
	var p *problem.Problem
	if f.starred() {
		p = readSM(f)
	} else {
		p = readSCH(f)
	}
	if len(f.faults) > 0 {
		return nil, errors.Join(f.faults...)
	}
	p.Name = strings.TrimSuffix(path.Base(strings.ReplaceAll(name, `\`, "/")), path.Ext(name))
	p.Objectives = []problem.Objective{{Name: "makespan", Makespan: true}}
	p.Lags = append(p.Lags, problem.Lag{From: problem.Start(0), To: problem.Zero()})
	if err := p.Validate(); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return p, nil
}

// reader walks the lines of a file that are not blank and collects faults.
type reader struct {
	file   string
	lines  []string
	at     int // the line in hand, from 1
	faults []error
}

func (f *reader) fault(format string, args ...any) {
	f.faults = append(f.faults, Fault{f.file, f.at, fmt.Sprintf(format, args...)})
}

// next goes to the next line that is not blank.
func (f *reader) next() (line string, ok bool) {
	for f.at < len(f.lines) {
		f.at++
		if line = strings.TrimSpace(f.lines[f.at-1]); line != "" {
			return line, true
		}
	}
	return "", false
}

// peek is the next line that is not blank, without going there.
func (f *reader) peek() (line string, ok bool) {
	at := f.at
	line, ok = f.next()
	f.at = at
	return line, ok
}

// starred says that this is an .sm file: by suffix, or by its first line.
func (f *reader) starred() bool {
	switch strings.ToLower(path.Ext(f.file)) {
	case ".sm":
		return true
	case ".sch":
		return false
	}
	line, _ := f.peek()
	return line == "" || line[0] < '0' || line[0] > '9'
}

// numbers reads the fields of a line as whole numbers within the size that a
// problem allows. Faults are noted, and ok is false.
func (f *reader) numbers(fields []string) (list []int, ok bool) {
	ok = true
	for _, field := range fields {
		n, err := strconv.Atoi(field)
		switch {
		case err != nil:
			f.fault("%q is not a whole number", field)
			ok = false
		case n < -problem.MaxHorizon || n > problem.MaxHorizon:
			f.fault("%d is out of range; must be %d to %d", n, -problem.MaxHorizon, problem.MaxHorizon)
			ok = false
		}
		list = append(list, n)
	}
	return list, ok
}

// activity makes activity i of a length and its use of each resource.
func (f *reader) activity(number, duration int, amounts []int) problem.Activity {
	a := problem.Activity{Name: strconv.Itoa(number), MinDuration: duration, MaxDuration: duration}
	if duration < 0 {
		f.fault("duration %d; must be 0 or more", duration)
	}
	var mode problem.Mode
	for r, amount := range amounts {
		if amount < 0 {
			f.fault("uses %d of resource %d; must be 0 or more", amount, r+1)
		}
		if amount > 0 {
			mode.Uses = append(mode.Uses, problem.Use{Resource: r, Amount: amount})
		}
	}
	if mode.Uses != nil {
		a.Modes = []problem.Mode{mode}
	}
	return a
}

// capacities reads the last row of either format.
func (f *reader) capacities(fields []string, want int) []problem.Resource {
	list, ok := f.numbers(fields)
	if !ok {
		return nil
	}
	if len(list) != want {
		f.fault("%d capacities for %d resources", len(list), want)
	}
	var resources []problem.Resource
	for r, c := range list {
		if c < 0 {
			f.fault("capacity %d of resource %d; must be 0 or more", c, r+1)
		}
		resources = append(resources, problem.Resource{Name: "R" + strconv.Itoa(r+1), Capacity: c})
	}
	return resources
}

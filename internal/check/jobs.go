package check

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// jobsTable is how long the hands are at a job, in minutes: low for a practised
// learner of fifteen, two to four portions. Common practice, no source: not
// measured. The first line that fits a job is the one that holds.
//
//go:embed jobs.csv
var jobsTable string

// job is a line of the table.
type job struct {
	words []*lexicon // each must be there; none: any
	practical.Estimate
	watch bool // it cannot be left while it is done
}

// jobs are the lines by kind of act, in the order of the table.
var jobs = mustJobs(jobsTable)

func mustJobs(table string) map[act.Kind][]job {
	lines, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("jobs.csv: %v", err)) // it is built in, and a test reads it
	}
	m := map[act.Kind][]job{}
	for _, l := range lines[1:] {
		j := job{watch: l[5] == "watch"}
		if l[1] != "" {
			for _, each := range strings.Split(l[1], "+") {
				j.words = append(j.words, lex(strings.ReplaceAll(each, ";", ",")))
			}
		}
		for i, to := range []*int{&j.Low, &j.Likely, &j.High} {
			if *to, err = strconv.Atoi(l[2+i]); err != nil {
				panic(fmt.Sprintf("jobs.csv: %v", err))
			}
		}
		m[act.Kind(l[0])] = append(m[act.Kind(l[0])], j)
	}
	return m
}

// jobOf is how long an act keeps the hands, by its kind and the words that say it.
func jobOf(a *act.Act, words []string) job {
	if a.Kind == act.Cut {
		return cutting(a, words)
	}
	return saidMinutes(jobFor(a.Kind, words), a, words)
}

func jobFor(kind act.Kind, words []string) job {
	for _, j := range jobs[kind] {
		if !slices.ContainsFunc(j.words, func(l *lexicon) bool { return !l.in(words) }) {
			return j
		}
	}
	return job{}
}

// lightCut are words of cutting that is quick, or of meat that is cooked.
var lightCut = lex("flake*, shred*, slice chicken, slice the chicken, carve*, steak, snip, halve")

// cutting adds up what is cut: each food takes its own time.
func cutting(a *act.Act, words []string) (sum job) {
	rest := words
	if rawMeat.in(words) && !lightCut.in(words) {
		sum.add(jobFor(act.Cut, []string{"meat"}))
		rest = nil
		for i := range words {
			if rawMeat.find(words[i:i+1]) < 0 {
				rest = append(rest, words[i])
			}
		}
	}
	others := 0
	for _, o := range a.Objects {
		if w := []string{o}; !rawMeat.in(w) && others < 3 {
			sum.add(jobFor(act.Cut, w))
			others++
		}
	}
	if sum.High == 0 {
		sum.add(jobFor(act.Cut, rest))
	}
	return saidMinutes(sum, a, words)
}

func (j *job) add(o job) {
	j.Low, j.Likely, j.High, j.watch = j.Low+o.Low, j.Likely+o.Likely, j.High+o.High, j.watch || o.watch
}

// saidMinutes puts minutes that are said of the hands' own work in the place of the
// table's: "knead for 10 minutes".
func saidMinutes(j job, a *act.Act, words []string) job {
	if a.Least == 0 {
		return j
	}
	if bothSides.in(words) {
		twice := *a
		twice.Least, twice.Most = 2*a.Least, 2*a.Most
		a = &twice
	}
	switch a.Kind {
	case act.Grill: // turned and looked at
		j.Low, j.Likely, j.High = max(2, a.Least/3), max(2, a.Least/2), max(a.Most, a.Least)
	case act.Mix, act.Cut, act.Shape:
		j.Low, j.Likely, j.High = a.Least, (a.Least+a.Most)/2, max(a.Most, a.Least)
	case act.Hob:
		if !unattended(a) && a.Verb != "melt" && (!hotFat.in(words) || a.Least > j.Low) {
			j.Low, j.Likely, j.High = a.Least, (a.Least+a.Most)/2, max(a.Most, a.Least)
		}
	}
	return j
}

var bothSides = lex("at a time, in batches, in two batches, each side, per side, a side, both sides, on each side")

// leftOnHob are verbs of the hob that leave the hands free, by their beginnings.
var leftOnHob = lex("simmer*, boil*, poach*, steam*, stew*, brais*, reduc*, cook*, blanch*, infus*, sweat*, soften*")

// unattended says that an act of the hob or grill leaves the hands free.
func unattended(a *act.Act) bool {
	return a.Kind == act.Hob && (a.Verb == "" && a.Least > 0 || leftOnHob.in([]string{a.Verb}))
}

package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// key names an instance.
type key struct{ set, instance string }

// bare is the name of an instance without its suffix.
func bare(file string) string { return strings.TrimSuffix(file, filepath.Ext(file)) }

// published is what was known of an instance; -1 stands for what was not.
type published struct {
	infeasible   bool
	lower, upper int
	decided      string  // by the baseline
	seconds      float64 // that the baseline took
}

var unknown = published{lower: -1, upper: -1, seconds: -1}

// readKnown reads bounds, files with commas between, and a baseline.
func readKnown(bounds, baseline string) (catalogue, error) {
	known := catalogue{}
	take := func(file string, use func(p *published, field func(string) string)) error {
		return eachRow(file, func(field func(string) string) {
			k := key{field("set"), bare(field("instance"))}
			p, there := known[k]
			if !there {
				p = unknown
			}
			use(&p, field)
			known[k] = p
		})
	}
	for file := range strings.SplitSeq(bounds, ",") {
		if file == "" {
			continue
		}
		err := take(file, func(p *published, field func(string) string) {
			p.infeasible = field("status") == "infeasible"
			p.lower, p.upper = whole(field("lower")), whole(field("upper"))
		})
		if err != nil {
			return nil, err
		}
	}
	if baseline == "" {
		return known, nil
	}
	return known, take(baseline, func(p *published, field func(string) string) {
		p.decided = field("status")
		if s, err := strconv.ParseFloat(field("solver_seconds"), 64); err == nil {
			p.seconds = s
		}
	})
}

func whole(s string) int {
	if n, err := strconv.Atoi(s); err == nil {
		return n
	}
	return -1
}

// eachRow reads a CSV file with a header; field gives a row's cell by the name
// of its column, or nothing.
func eachRow(file string, use func(field func(string) string)) error {
	f, err := os.Open(file)
	if err != nil {
		return err
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	column := map[string]int{}
	for i, row := range rows {
		if i == 0 {
			for j, name := range row {
				column[name] = j
			}
			if _, there := column["instance"]; !there {
				return fmt.Errorf("%s: the first row names no column instance", file)
			}
			continue
		}
		use(func(name string) string {
			if j, there := column[name]; there {
				return row[j]
			}
			return ""
		})
	}
	return nil
}

// catalogue is what was published, by instance.
type catalogue map[key]published

// of is what is known of an instance.
func (c catalogue) of(set, file string) published {
	if p, there := c[key{set, bare(file)}]; there {
		return p
	}
	return unknown
}

// Package checktest holds invented plans for trying the checks: sound ones for
// five menus, the same with faults planted in them, written in the layouts that
// people use, and a cook who follows a plan minute by minute. The cook goes by
// marks of its own beside each row and never by the words, so it shares nothing with
// the checks.
package checktest

import (
	"embed"
	"fmt"
	"strconv"
	"strings"

	"plait.example/internal/practical"
)

// Menus holds folders of menus. Each menu has its practical.yaml, the recipes it
// names, and its sound plans.
//
//go:embed menus second third fourth fifth fresh
var Menus embed.FS

// The folders of Menus.
const (
	LookedAt = "menus"  // plans that were looked at while the rules were written
	Second   = "second" // plans that were looked at only after their first score
	Fourth   = "fourth" // plans of which only the score was looked at
	Fifth    = "fifth"  // plans by somebody who had read the list of the rules and none of their code
	Third    = "third"  // plans by another hand, set out otherwise, that were not looked at
)

// Fresh are the folders of further rounds: of each, the first score was noted and
// only then were causes mended. Their rows say which steps they stand for.
var Fresh = []string{"fresh/1", "fresh/2", "fresh/3"}

// Plan is a plan with what is known of it.
type Plan struct {
	Name     string
	Folder   string // LookedAt, Second, Third, Fourth, Fifth or of Fresh
	Menu     string // folder in it
	Sound    bool
	Rows     []Row
	Planted  []Planted
	Finish   string // of the practical, in place of its own; empty: its own
	Extra    int    // percent of extra time
	Rings    int    // 0: the menu's own
	Shelves  int
	OneGrill bool // the grill is in the oven
}

// Row is a row of a plan.
type Row struct {
	Mark   string // its number in the sound plan, or "n+"
	Clock  practical.TimeOfDay
	Dish   string // letter, or "all"
	Text   string
	Points string
	Acts   []string // for the cook
	Steps  []string // ids of the steps that it stands for, in brackets those that it may; only in Fresh
}

// Planted is a fault that must be found.
type Planted struct {
	Faults []int // either will do
	Rows   []int // from 1: one of them is among the rows of the finding; empty: the plan as a whole
}

// Sound gives the sound plans of a folder.
func Sound(folder string) ([]Plan, error) {
	folders, err := Menus.ReadDir(folder)
	if err != nil {
		return nil, err
	}
	var all []Plan
	for _, f := range folders {
		if !f.IsDir() {
			continue
		}
		data, err := Menus.ReadFile(folder + "/" + f.Name() + "/plans.txt")
		if err != nil {
			return nil, err
		}
		plans, err := readPlans(folder, f.Name(), string(data))
		if err != nil {
			return nil, err
		}
		all = append(all, plans...)
	}
	return all, nil
}

func readPlans(folder, menu, text string) ([]Plan, error) {
	var all []Plan
	for n, line := range strings.Split(text, "\n") {
		switch {
		case strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "" || line == "end":
		case strings.HasPrefix(line, "plan "):
			all = append(all, Plan{Name: line[len("plan "):], Folder: folder, Menu: menu, Sound: true})
		default:
			row, err := readRow(line)
			if err != nil {
				return nil, fmt.Errorf("%s/%s/plans.txt, line %d: %w", folder, menu, n+1, err)
			}
			last := &all[len(all)-1]
			last.Rows = append(last.Rows, row)
		}
	}
	return all, nil
}

func readRow(line string) (Row, error) {
	part := strings.Split(line, "|")
	if len(part) != 6 && len(part) != 7 {
		return Row{}, fmt.Errorf("%d parts in a row, 6 are wanted, or 7 with its steps: %s", len(part), line)
	}
	for i := range part {
		part[i] = strings.TrimSpace(part[i])
	}
	at, err := clock(part[1])
	row := Row{Mark: part[0], Clock: at, Dish: part[2], Text: part[3], Points: part[4], Acts: strings.Fields(part[5])}
	if len(part) == 7 {
		row.Steps = strings.Fields(part[6])
	}
	return row, err
}

func clock(s string) (practical.TimeOfDay, error) {
	h, m, _ := strings.Cut(s, ":")
	hours, err := strconv.Atoi(h)
	if err != nil {
		return 0, fmt.Errorf("%q is no clock time", s)
	}
	minutes, err := strconv.Atoi(m)
	if err != nil {
		return 0, fmt.Errorf("%q is no clock time", s)
	}
	return practical.TimeOfDay(60*hours + minutes), nil
}

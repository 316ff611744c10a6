package plait_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"maps"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "plait.example/"

// arrows is who may import whom, for code that ships: imports go down only. A
// room that is not here may not exist, and one that is here must.
var arrows = map[string]string{
	"cmd/plait": "internal/web internal/app internal/store examples",

	"internal/web":       "internal/app internal/practical internal/timeplan internal/picture internal/colour internal/fonts",
	"internal/app":       "internal/recipe internal/network internal/paper internal/practical internal/timeplan",
	"internal/store":     "internal/practical internal/timeplan",
	"internal/paper":     "internal/practical internal/timeplan internal/picture internal/colour internal/fonts",
	"internal/network":   "internal/practical internal/timeplan solver solver/problem solver/verify",
	"internal/picture":   "internal/practical internal/timeplan internal/colour internal/fonts",
	"internal/recipe":    "internal/practical",
	"internal/timeplan":  "internal/practical",
	"internal/practical": "",
	"internal/colour":    "",
	"internal/fonts":     "",
	"examples":           "",

	"solver/cmd/psplib":   "solver solver/problem solver/psplib",
	"solver":              "solver/problem solver/verify solver/internal/lcg",
	"solver/verify":       "solver/problem",
	"solver/psplib":       "solver/problem",
	"solver/internal/lcg": "",
	"solver/problem":      "",
}

// support is what tests may import and code that ships may not.
var support = map[string]string{
	"internal/practical/practicaltest": "internal/practical",                   // invented practicals
	"internal/timeplan/timeplantest":   "internal/practical internal/timeplan", // invented plans
	"solver/internal/brute":            "solver/problem solver/verify",         // every schedule tried
}

// besides is what the tests of a room may import on top of that.
var besides = map[string]string{
	"solver":       "solver/psplib",
	"internal/app": "internal/store", // verbs tested on a real database
}

type listed struct {
	ImportPath   string
	Imports      []string // of the code itself
	TestImports  []string // of its tests
	XTestImports []string
	Deps         []string // all that the code reaches
	GoFiles      []string
}

// rooms lists the packages of the module, by path under it.
func rooms(t *testing.T) map[string]listed {
	t.Helper()
	out, err := exec.CommandContext(t.Context(), "go", "list", "-e", "-json", "./...").Output()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]listed{}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		if room, under := strings.CutPrefix(p.ImportPath, module); under {
			all[room] = p
		}
	}
	return all
}

func TestArrows(t *testing.T) {
	all := rooms(t)
	table := maps.Clone(arrows)
	maps.Copy(table, support)
	for room := range table {
		if _, there := all[room]; !there {
			t.Errorf("the table names room %s, which is not there", room)
		}
	}
	for room, p := range all {
		allowed, known := table[room]
		if !known {
			t.Errorf("room %s is not in the table of arrows", room)
			continue
		}
		for _, path := range p.Imports {
			if to, ours := strings.CutPrefix(path, module); ours && !slices.Contains(strings.Fields(allowed), to) {
				t.Errorf("%s imports %s, which the table of arrows does not allow", room, to)
			}
		}
	}
}

// A test may look at what its room may import, at support, at what besides
// allows, and at what these may import in turn: never up. The command's tests
// may look at everything.
func TestArrowsOfTests(t *testing.T) {
	below := func(room string) map[string]bool {
		seen := map[string]bool{}
		next := append(slices.Collect(maps.Keys(support)), room)
		next = append(next, strings.Fields(besides[room])...)
		for len(next) > 0 {
			at := next[0]
			next = next[1:]
			if !seen[at] {
				seen[at] = true
				next = append(next, strings.Fields(arrows[at]+" "+support[at])...)
			}
		}
		return seen
	}
	for room, p := range rooms(t) {
		if room == "cmd/plait" {
			continue
		}
		reach := below(room)
		for _, path := range slices.Concat(p.TestImports, p.XTestImports) {
			if to, ours := strings.CutPrefix(path, module); ours && !reach[to] {
				t.Errorf("a test of %s imports %s, which stands above or beside it", room, to)
			}
		}
	}
}

// The engine can be taken out and used alone: it reaches the standard library
// and its own packages, in code and in tests.
func TestEngineStandsAlone(t *testing.T) {
	for room, p := range rooms(t) {
		if room != "solver" && !strings.HasPrefix(room, "solver/") {
			continue
		}
		for _, path := range slices.Concat(p.Deps, p.TestImports, p.XTestImports) {
			inside := path == module+"solver" || strings.HasPrefix(path, module+"solver/")
			first, _, _ := strings.Cut(path, "/")
			if !inside && (strings.Contains(first, ".") || path == strings.TrimSuffix(module, "/")) {
				t.Errorf("%s reaches %s", room, path)
			}
		}
	}
}

// What makes the judge a judge: no path of imports leads from it to the search.
func TestJudgeCannotReachTheSearch(t *testing.T) {
	p, there := rooms(t)["solver/verify"]
	if !there || len(p.GoFiles) == 0 || !slices.Contains(p.Deps, module+"solver/problem") {
		t.Fatalf("the judge is not where it should be: %+v", p)
	}
	for _, path := range p.Deps {
		if to, ours := strings.CutPrefix(path, module); ours && to != "solver/problem" {
			t.Errorf("the judge reaches %s", to)
		}
	}
}

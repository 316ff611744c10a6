package plait_test

import (
	"errors"
	"fmt"
	"go/build"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const module = "plait.example/"

// arrows is who may import whom, for code that ships: imports go down only. A
// room that is not here may not exist, and one that is here must.
var arrows = map[string]string{
	"cmd/plait": "internal/web internal/app internal/store examples",

	"internal/web":        "internal/app internal/practical internal/timeplan internal/picture internal/colour internal/fonts",
	"internal/app":        "internal/recipe internal/format internal/network internal/paper internal/practical internal/timeplan internal/written internal/match internal/check internal/feedback",
	"internal/store":      "internal/practical internal/timeplan",
	"internal/paper":      "internal/practical internal/timeplan internal/picture internal/colour internal/fonts",
	"internal/network":    "internal/practical internal/timeplan solver solver/problem solver/verify",
	"internal/picture":    "internal/practical internal/timeplan internal/colour internal/fonts",
	"internal/recipe":     "internal/practical internal/ingredient internal/format internal/format/webpage internal/format/table",
	"internal/timeplan":   "internal/practical",
	"internal/feedback":   "internal/practical internal/timeplan internal/written internal/act internal/match internal/check internal/paper internal/picture internal/format/docx internal/format/sheet internal/format/table",
	"internal/check":      "internal/practical internal/timeplan internal/written internal/act internal/match",
	"internal/match":      "internal/practical internal/written internal/act",
	"internal/act":        "internal/practical",
	"internal/written":    "internal/practical internal/act internal/format/table",
	"internal/practical":  "",
	"internal/ingredient": "",

	"internal/format": "internal/format/docx internal/format/opendoc internal/format/packed internal/format/pdf internal/format/plain " +
		"internal/format/sheet internal/format/table internal/format/webpage",
	"internal/format/docx":    "internal/format/packed internal/format/table",
	"internal/format/opendoc": "internal/format/packed internal/format/table",
	"internal/format/sheet":   "internal/format/packed internal/format/table",
	"internal/format/webpage": "internal/format/table",
	"internal/format/pdf":     "internal/format/table",
	"internal/format/plain":   "internal/format/table",
	"internal/format/packed":  "",
	"internal/format/table":   "",

	"internal/colour": "",
	"internal/fonts":  "",
	"examples":        "",

	"solver/cmd/psplib":       "solver solver/problem solver/psplib solver/internal/recheck",
	"solver/cmd/solverbench":  "solver solver/problem solver/psplib solver/verify",
	"solver":                  "solver/problem solver/verify solver/internal/lcg solver/internal/sgs",
	"solver/verify":           "solver/problem",
	"solver/psplib":           "solver/problem",
	"solver/internal/sgs":     "solver/problem",
	"solver/internal/lcg":     "",
	"solver/internal/recheck": "solver/problem",
	"solver/problem":          "",
}

// support is what tests may import and code that ships may not.
var support = map[string]string{
	"internal/practical/practicaltest": "internal/practical",                                            // invented practicals
	"internal/timeplan/timeplantest":   "internal/practical internal/timeplan",                          // invented plans
	"internal/check/checktest":         "internal/practical internal/format/docx internal/format/table", // invented plans with planted faults
	"solver/internal/brute":            "solver/problem solver/verify",                                  // every schedule tried
}

// besides is what the tests of a room may import on top of that.
var besides = map[string]string{
	"solver":           "solver/psplib solver/internal/recheck",
	"internal/paper":   "internal/network",        // documents of plans as they come
	"internal/written": "internal/format",         // plans in files of every kind
	"internal/app":     "internal/store examples", // verbs tested on a real database and the shipped files
	"internal/web":     "internal/store",          // pages likewise
}

// room is a package of the module: what its code and its tests import.
type room struct{ imports, tests []string }

// rooms reads every package under the module's root, by path. It reads files
// itself, so that a kept test result is dropped when an import changes.
func rooms(t *testing.T) map[string]room {
	t.Helper()
	all := map[string]room{}
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() || path == "." {
			return err
		}
		_, nested := os.Stat(filepath.Join(path, "go.mod"))
		if d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") || nested == nil {
			return filepath.SkipDir
		}
		p, err := build.ImportDir(path, 0)
		if _, none := errors.AsType[*build.NoGoError](err); none && len(p.TestGoFiles)+len(p.XTestGoFiles) == 0 {
			return nil
		} else if err != nil && !none {
			return err
		}
		all[filepath.ToSlash(path)] = room{p.Imports, slices.Concat(p.TestImports, p.XTestImports)}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 15 {
		t.Fatalf("only %d rooms found", len(all))
	}
	return all
}

// ours lists those of the imports that are rooms of this module.
func ours(imports []string) (list []string) {
	for _, path := range imports {
		if to, is := strings.CutPrefix(path, module); is {
			list = append(list, to)
		}
	}
	return list
}

// reach is every room that the code of the given ones imports, however far.
func reach(from []string, next func(string) []string) map[string]bool {
	seen := map[string]bool{}
	for list := slices.Clone(from); len(list) > 0; {
		at := list[len(list)-1]
		list = list[:len(list)-1]
		if !seen[at] {
			seen[at] = true
			list = append(list, next(at)...)
		}
	}
	return seen
}

func faultsOfArrows(all map[string]room) (faults []string) {
	table := maps.Clone(arrows)
	maps.Copy(table, support)
	for name := range table {
		if _, there := all[name]; !there {
			faults = append(faults, fmt.Sprintf("the table names room %s, which is not there", name))
		}
	}
	for name, r := range all {
		allowed, known := table[name]
		if !known {
			faults = append(faults, fmt.Sprintf("room %s is not in the table of arrows", name))
			continue
		}
		for _, to := range ours(r.imports) {
			if !slices.Contains(strings.Fields(allowed), to) {
				faults = append(faults, fmt.Sprintf("%s imports %s, which the table of arrows does not allow", name, to))
			}
		}
	}
	return faults
}

// A test may look at what its room may import, at support, at what besides
// allows, and at what these may import in turn: never up. The command's tests
// may look at everything.
func faultsOfTests(all map[string]room) (faults []string) {
	for name, r := range all {
		if name == "cmd/plait" {
			continue
		}
		below := reach(append(strings.Fields(besides[name]+" "+name), slices.Collect(maps.Keys(support))...),
			func(at string) []string { return strings.Fields(arrows[at] + " " + support[at]) })
		for _, to := range ours(r.tests) {
			if !below[to] {
				faults = append(faults, fmt.Sprintf("a test of %s imports %s, which stands above or beside it", name, to))
			}
		}
	}
	return faults
}

// The engine can be taken out and used alone: code and tests import the
// standard library and its own packages.
func faultsOfEngine(all map[string]room) (faults []string) {
	for name, r := range all {
		if name != "solver" && !strings.HasPrefix(name, "solver/") {
			continue
		}
		for _, path := range slices.Concat(r.imports, r.tests) {
			first, _, _ := strings.Cut(path, "/")
			inside := path == module+"solver" || strings.HasPrefix(path, module+"solver/")
			if !inside && (strings.Contains(first, ".") || path == "C") {
				faults = append(faults, fmt.Sprintf("%s imports %s, which is neither the engine's nor the standard library's", name, path))
			}
		}
	}
	return faults
}

// What makes the judge a judge: no path of imports leads from it to the search.
func faultsOfJudge(all map[string]room) (faults []string) {
	reached := reach([]string{"solver/verify"}, func(at string) []string { return ours(all[at].imports) })
	if !reached["solver/problem"] {
		faults = append(faults, "the judge is not where it should be")
	}
	for to := range reached {
		if to != "solver/verify" && to != "solver/problem" {
			faults = append(faults, "the judge reaches "+to)
		}
	}
	return faults
}

func TestArrows(t *testing.T) {
	all := rooms(t)
	for _, faults := range [][]string{faultsOfArrows(all), faultsOfTests(all), faultsOfEngine(all), faultsOfJudge(all)} {
		slices.Sort(faults)
		for _, f := range faults {
			t.Error(f)
		}
	}
}

// Each wrong arrow, drawn into the house as it is, is told.
func TestWrongArrowsAreTold(t *testing.T) {
	for _, c := range []struct {
		check       func(map[string]room) []string
		from, to    string
		inTests     bool
		wantMention string
	}{
		{faultsOfArrows, "internal/practical", "internal/timeplan", false, "internal/practical imports internal/timeplan"},
		{faultsOfArrows, "solver", "solver/internal/brute", false, "solver imports solver/internal/brute"},
		{faultsOfArrows, "internal/other", "internal/practical", false, "room internal/other is not in the table"},
		{faultsOfTests, "internal/timeplan", "internal/app", true, "a test of internal/timeplan imports internal/app"},
		{faultsOfEngine, "solver/psplib", "internal/practical", true, "solver/psplib imports plait.example/internal/practical"},
		{faultsOfJudge, "solver/problem", "solver/internal/lcg", false, "the judge reaches solver/internal/lcg"},
	} {
		all := rooms(t)
		r := all[c.from]
		if c.inTests {
			r.tests = append(slices.Clone(r.tests), module+c.to)
		} else {
			r.imports = append(slices.Clone(r.imports), module+c.to)
		}
		all[c.from] = r
		if faults := c.check(all); !slices.ContainsFunc(faults, func(f string) bool { return strings.Contains(f, c.wantMention) }) {
			t.Errorf("%s to %s: not told, only %q", c.from, c.to, faults)
		}
	}
	all := rooms(t)
	delete(all, "internal/colour")
	if faults := faultsOfArrows(all); len(faults) == 0 {
		t.Error("a room that has gone is not told")
	}
}

package plait_test

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "plait.example/"

// arrows is who may import whom, for code that ships. Tests may look further.
// A room that is not here may not exist.
var arrows = map[string]string{
	"cmd/plait":                        "internal/web internal/app internal/store examples",
	"internal/web":                     "internal/app internal/practical internal/timeplan internal/picture internal/colour internal/fonts",
	"internal/app":                     "internal/recipe internal/network internal/paper internal/practical internal/timeplan",
	"internal/paper":                   "internal/practical internal/timeplan internal/picture internal/colour internal/fonts",
	"internal/store":                   "internal/practical internal/timeplan",
	"internal/network":                 "internal/practical internal/timeplan solver solver/problem solver/verify",
	"internal/picture":                 "internal/practical internal/timeplan internal/colour internal/fonts",
	"internal/recipe":                  "internal/practical",
	"internal/timeplan":                "internal/practical",
	"solver":                           "solver/problem solver/verify solver/internal/lcg",
	"solver/verify":                    "solver/problem",
	"internal/timeplan/timeplantest":   "internal/practical internal/timeplan", // invented plans, for tests
	"internal/practical/practicaltest": "internal/practical",                   // random practicals, for tests
	"solver/internal/brute":            "solver/problem solver/verify",         // every schedule tried, for tests
	"solver/psplib":                    "solver/problem",
	"examples":                         "",
	"internal/practical":               "",
	"internal/colour":                  "",
	"internal/fonts":                   "",
	"solver/problem":                   "",
	"solver/internal/lcg":              "",
}

func TestArrows(t *testing.T) {
	listed, err := exec.CommandContext(t.Context(), "go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "./...").Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(listed)), "\n")
	seen := 0
	for _, line := range lines {
		room, imports, _ := strings.Cut(line, " ")
		room = strings.TrimPrefix(room, module)
		allowed, known := arrows[room]
		if !known {
			if imports != "" {
				t.Errorf("room %s is not in the table of arrows", room)
			}
			continue
		}
		seen++
		for _, path := range strings.Fields(imports) {
			if to, ours := strings.CutPrefix(path, module); ours && !slices.Contains(strings.Fields(allowed), to) {
				t.Errorf("%s imports %s, which the table of arrows does not allow", room, to)
			}
		}
	}
	if seen != len(arrows) {
		t.Errorf("the table of arrows names %d rooms, %d of them are there", len(arrows), seen)
	}
}

// The engine can be taken out and used alone: nothing but the standard library.
func TestEngineStandsAlone(t *testing.T) {
	listed, err := exec.CommandContext(t.Context(), "go", "list", "-deps", "-f", `{{if not .Standard}}{{.ImportPath}}{{end}}`, "./solver/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range strings.Fields(string(listed)) {
		if !strings.HasPrefix(path, module+"solver") {
			t.Errorf("the engine reaches %s", path)
		}
	}
}

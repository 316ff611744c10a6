package plait_test

import (
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
)

func mustRead(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// Every module that the program or a test reaches is named in docs/dependencies.md.
func TestDependencies(t *testing.T) {
	document := mustRead(t, "docs/dependencies.md")
	listed, err := exec.CommandContext(t.Context(), "go", "list", "-deps", "-test", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}{{end}}{{end}}", "./...").Output()
	if err != nil {
		t.Fatal(err)
	}
	modules := strings.Fields(string(listed))
	slices.Sort(modules)
	modules = slices.Compact(modules)
	if len(modules) < 5 {
		t.Errorf("only %d modules found", len(modules))
	}
	for _, module := range modules {
		if !strings.Contains(document, "`"+module+"`") {
			t.Errorf("%s is used and not named in docs/dependencies.md", module)
		}
	}
}

// What the documents link to or show is there.
func TestLinks(t *testing.T) {
	link := regexp.MustCompile(`\]\(([^)#:]+)\)`)
	for _, name := range []string{"README.md", "ARCHITECTURE.md", "CONTRIBUTING.md", "docs/file.md", "docs/dependencies.md"} {
		for _, to := range link.FindAllStringSubmatch(mustRead(t, name), -1) {
			path := to[1]
			if strings.HasPrefix(name, "docs/") {
				path = "docs/" + path
			}
			if _, err := os.Stat(path); err != nil {
				t.Errorf("%s points to %s: %v", name, to[1], err)
			}
		}
	}
}

// Every room of the table of arrows stands in ARCHITECTURE.md, and the other way round.
func TestArchitectureNamesEveryRoom(t *testing.T) {
	document := mustRead(t, "ARCHITECTURE.md")
	for room := range arrows {
		if !strings.Contains(document, "`"+room+"`") {
			t.Errorf("ARCHITECTURE.md does not name %s", room)
		}
	}
	for _, named := range regexp.MustCompile("`((?:internal|solver|cmd)/[a-z/]+)`").FindAllStringSubmatch(document, -1) {
		if _, known := arrows[named[1]]; !known && support[named[1]] == "" {
			t.Errorf("ARCHITECTURE.md names %s, which is not in the table of arrows", named[1])
		}
	}
}

// A target that a document tells people to run is in the Makefile.
func TestMakeTargets(t *testing.T) {
	makefile := mustRead(t, "Makefile")
	for _, name := range []string{"README.md", "CONTRIBUTING.md", ".ci/run"} {
		for _, target := range regexp.MustCompile("(?m)(?:^|[`!] ?)make ([a-z]+)").FindAllStringSubmatch(mustRead(t, name), -1) {
			if !strings.Contains(makefile, "\n"+target[1]+":") {
				t.Errorf("%s names make %s, which the Makefile has not", name, target[1])
			}
		}
	}
}

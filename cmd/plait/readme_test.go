package main

import (
	"regexp"
	"strings"
	"testing"
)

// Every command of the README is run as it is written there, or known here to
// be run elsewhere.
func TestREADMECommands(t *testing.T) {
	elsewhere := map[string]string{
		"make test":               "it runs this test",
		"go run ./cmd/plait demo": "TestDemoShowsAFinishedPlan",
	}
	t.Chdir("../..")
	ran := 0
	for _, block := range regexp.MustCompile("(?s)```sh\n(.*?)```").FindAllStringSubmatch(mustRead(t, "README.md"), -1) {
		for _, line := range strings.Split(strings.TrimSpace(block[1]), "\n") {
			line = strings.TrimSpace(line)
			args, ours := strings.CutPrefix(line, "go run ./cmd/plait ")
			switch {
			case elsewhere[line] != "":
			case line == "":
			case !ours:
				t.Errorf("nothing runs the command %q", line)
			default:
				ran++
				most := exitFits
				if strings.HasPrefix(args, "check ") {
					most = exitUnfit // it finds what stops the cook
				}
				if got := run(t, strings.Fields(args)...); got.code > most || got.out == "" {
					t.Errorf("%s: exit %d, errors %q", line, got.code, got.err)
				}
			}
		}
	}
	if ran < 3 {
		t.Errorf("%d commands were run, want those that the README gives", ran)
	}
}

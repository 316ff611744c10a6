package main

import (
	"strings"
	"testing"
	"time"

	"plait.example/internal/app"
)

func TestProgressOnATerminal(t *testing.T) {
	var out strings.Builder
	ticks := make(chan time.Time)
	shown := show(&out, ticks)
	ticks <- time.Time{}
	for _, p := range []app.Progress{{Bound: 11 * 60}, {Bound: 11 * 60, Finish: 12 * 60, Found: true}} {
		shown.improved(p)
		ticks <- time.Time{}
	}
	shown.end()
	lines := strings.Split(out.String(), "\r\x1b[K")
	want := []string{"", "planning", "planning: none can finish before 11:00", "planning: a plan that finishes at 12:00; none can finish before 11:00", ""}
	if strings.Join(lines, "|") != strings.Join(want, "|") {
		t.Errorf("wrote %q, want %q", lines, want)
	}
}

func TestProgressOnlyOnATerminal(t *testing.T) {
	shown := (&program{}).progress()
	shown.improved(app.Progress{Found: true})
	shown.end() // writes nowhere, waits for nothing
}

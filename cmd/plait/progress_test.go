package main

import (
	"strings"
	"testing"
	"time"

	"plait.example/internal/app"
)

// told hands over what is written, one write at a time.
type told chan string

func (c told) Write(b []byte) (int, error) {
	c <- string(b)
	return len(b), nil
}

func TestProgressOnATerminal(t *testing.T) {
	lines, ticks := make(told, 1), make(chan time.Time)
	shown := show(lines, ticks)
	for _, tt := range []struct {
		p    app.Progress
		want string
	}{
		{app.Progress{}, "planning"},
		{app.Progress{Bound: 11 * 60}, "planning: none can finish before 11:00"},
		{app.Progress{Bound: 11 * 60, Finish: 12 * 60, Found: true}, "planning: a plan that finishes at 12:00; none can finish before 11:00"},
	} {
		shown.improved(tt.p)
		ticks <- time.Time{}
		if got := <-lines; got != "\r\x1b[K"+tt.want {
			t.Errorf("wrote %q, want %q on a line of its own", got, tt.want)
		}
	}
	shown.end()
	if got := <-lines; got != "\r\x1b[K" {
		t.Errorf("at the end wrote %q, want the line taken away", got)
	}
}

func TestProgressOnlyOnATerminal(t *testing.T) {
	var errors strings.Builder
	shown := (&program{stderr: &errors}).progress()
	shown.improved(app.Progress{Found: true})
	shown.end() // waits for nothing
	if errors.Len() > 0 {
		t.Errorf("wrote %q, want nothing where there is no terminal", errors.String())
	}
}

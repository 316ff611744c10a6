package main

import (
	"fmt"
	"io"
	"sync"
	"time"

	"plait.example/internal/app"
)

// patience is how long a person waits without being told.
const patience = 500 * time.Millisecond

// progress shows on a terminal how far a search or a reading is, a line that is written anew at
// each tick and taken away at the end. Its zero value, for other outputs, shows
// nothing.
type progress struct {
	out  io.Writer
	stop chan struct{}
	done sync.WaitGroup

	mu    sync.Mutex
	last  string // what to say
	shown bool   // a line stands on the terminal
}

func (p *program) progress() *progress {
	if !p.terminal {
		return &progress{}
	}
	ticker := time.NewTicker(patience)
	return show(p.stderr, ticker.C)
}

func show(out io.Writer, ticks <-chan time.Time) *progress {
	s := &progress{out: out, stop: make(chan struct{})}
	s.last = "planning"
	s.done.Go(func() { s.write(ticks) })
	return s
}

// improved is called by the search.
func (s *progress) improved(now app.Progress) {
	switch {
	case now.Unfit:
		s.say("planning: it does not fit; looking for the reason and for ways out")
	case now.Found:
		s.say(fmt.Sprintf("planning: a plan that finishes at %s; none can finish before %s", now.Finish, now.Bound))
	case now.Bound > 0:
		s.say(fmt.Sprintf("planning: none can finish before %s", now.Bound))
	}
}

// reading says which file of how many is read, counted from nought.
func (s *progress) reading(i, of int, name string) {
	s.say(fmt.Sprintf("reading %d of %d: %s", i+1, of, name))
}

func (s *progress) say(words string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.last = words
}

// hide takes the line away while something else is written.
func (s *progress) hide(write func()) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.clear()
	write()
}

func (s *progress) clear() {
	if s.shown {
		fmt.Fprint(s.out, "\r\x1b[K")
		s.shown = false
	}
}

// end takes the line away.
func (s *progress) end() {
	if s.out != nil {
		close(s.stop)
		s.done.Wait()
	}
}

func (s *progress) write(ticks <-chan time.Time) {
	for {
		select {
		case <-ticks:
			s.mu.Lock()
			fmt.Fprintf(s.out, "\r\x1b[K%s", s.last)
			s.shown = true
			s.mu.Unlock()
		case <-s.stop:
			s.mu.Lock()
			s.clear()
			s.mu.Unlock()
			return
		}
	}
}

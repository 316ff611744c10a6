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

// progress shows a running search on a terminal, a line that is written anew at
// each tick and taken away at the end. Its zero value, for other outputs, shows
// nothing.
type progress struct {
	out  io.Writer
	stop chan struct{}
	done sync.WaitGroup

	mu   sync.Mutex
	last app.Progress
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
	s.done.Go(func() { s.write(ticks) })
	return s
}

// improved is called by the search.
func (s *progress) improved(now app.Progress) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.last = now
}

// end takes the line away.
func (s *progress) end() {
	if s.out != nil {
		close(s.stop)
		s.done.Wait()
	}
}

func (s *progress) write(ticks <-chan time.Time) {
	written := false
	for {
		select {
		case <-ticks:
			fmt.Fprintf(s.out, "\r\x1b[K%s", s.words())
			written = true
		case <-s.stop:
			if written {
				fmt.Fprint(s.out, "\r\x1b[K")
			}
			return
		}
	}
}

func (s *progress) words() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	switch {
	case s.last.Found:
		return fmt.Sprintf("planning: a plan that finishes at %s; none can finish before %s", s.last.Finish, s.last.Bound)
	case s.last.Bound > 0:
		return fmt.Sprintf("planning: none can finish before %s", s.last.Bound)
	}
	return "planning"
}

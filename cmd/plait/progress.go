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

// progress shows a running search on a terminal, from patience on. Its zero
// value, for other outputs, shows nothing.
type progress struct {
	out  io.Writer
	stop chan struct{}
	done sync.WaitGroup

	mu   sync.Mutex
	last app.Progress
}

func (p *program) progress() *progress {
	shown := &progress{}
	if !p.terminal {
		return shown
	}
	shown.out, shown.stop = p.stderr, make(chan struct{})
	shown.done.Go(shown.tick)
	return shown
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

func (s *progress) tick() {
	ticker := time.NewTicker(patience)
	defer ticker.Stop()
	written := false
	for {
		select {
		case <-ticker.C:
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

package web

import (
	"context"
	"fmt"
	"runtime/debug"
	"sync"

	"plait.example/internal/app"
)

// runs is the searches that go on behind the pages: at most one a practical.
type runs struct {
	ctx    context.Context
	cancel context.CancelFunc
	wait   sync.WaitGroup

	mu   sync.Mutex
	live map[string]*run
}

func newRuns() *runs {
	r := &runs{live: map[string]*run{}}
	r.ctx, r.cancel = context.WithCancel(context.Background())
	return r
}

func (r *runs) close() {
	r.cancel()
	r.wait.Wait()
}

// run is one search.
type run struct {
	cancel context.CancelFunc
	done   chan struct{} // closed at the end

	mu      sync.Mutex
	last    app.Progress
	seen    int           // how many reports came
	changed chan struct{} // closed at the next report
	rec     app.Record
	err     error
}

// start begins a search for a practical, in place of one that still runs for it.
func (r *runs) start(id string, work func(ctx context.Context, improved func(app.Progress)) (app.Record, error)) *run {
	r.mu.Lock()
	defer r.mu.Unlock()
	old := r.live[id]
	if old != nil {
		old.cancel()
	}
	ctx, cancel := context.WithCancel(r.ctx)
	now := &run{cancel: cancel, done: make(chan struct{}), changed: make(chan struct{})}
	r.live[id] = now
	r.wait.Go(func() {
		defer cancel()
		defer close(now.done)
		if old != nil {
			<-old.done
		}
		now.finish(now.work(ctx, work))
	})
	return now
}

// work runs the search; a panic in it becomes its error.
func (u *run) work(ctx context.Context, work func(context.Context, func(app.Progress)) (app.Record, error)) (rec app.Record, err error) {
	defer func() {
		if broken := recover(); broken != nil {
			err = fmt.Errorf("search broke: %v\n%s", broken, debug.Stack())
		}
	}()
	return work(ctx, u.report)
}

func (u *run) report(p app.Progress) {
	u.mu.Lock()
	defer u.mu.Unlock()
	u.last, u.seen = p, u.seen+1
	close(u.changed)
	u.changed = make(chan struct{})
}

func (u *run) finish(rec app.Record, err error) {
	u.mu.Lock()
	defer u.mu.Unlock()
	u.rec, u.err = rec, err
}

// now is the last report, how many there were, and what is closed at the next.
func (u *run) now() (app.Progress, int, <-chan struct{}) {
	u.mu.Lock()
	defer u.mu.Unlock()
	return u.last, u.seen, u.changed
}

// of is the search of a practical that still runs, or nil.
func (r *runs) of(id string) *run {
	r.mu.Lock()
	defer r.mu.Unlock()
	u := r.live[id]
	if u == nil {
		return nil
	}
	select {
	case <-u.done:
		return nil
	default:
		return u
	}
}

// ended takes the error of a search that has ended, once; nil when there is none.
func (r *runs) ended(id string) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	u := r.live[id]
	if u == nil {
		return nil
	}
	select {
	case <-u.done:
		delete(r.live, id)
		return u.err
	default:
		return nil
	}
}

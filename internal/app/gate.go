package app

import (
	"context"
	"runtime"
	"sync"
)

// gate lets as many searches run at once as there are processors, so that a
// class pressing the button together does not slow everybody's pages. Its zero
// value is ready.
type gate struct {
	once  sync.Once
	slots chan struct{}
}

// enter waits for a slot, or for the end of ctx.
func (g *gate) enter(ctx context.Context) error {
	g.once.Do(func() { g.slots = make(chan struct{}, runtime.GOMAXPROCS(0)) })
	select {
	case g.slots <- struct{}{}:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

func (g *gate) leave() { <-g.slots }

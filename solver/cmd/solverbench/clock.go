package main

import (
	"context"
	"time"
)

// clock measures one instance: by the processor time of the thread where the
// system tells it, else by the wall.
type clock struct {
	byThread bool
	begin    time.Duration
	wall     time.Time
}

func startClock() *clock {
	t, ok := threadTime()
	return &clock{byThread: ok, begin: t, wall: time.Now()}
}

func (c *clock) seconds() float64 { return c.passed().Seconds() }

func (c *clock) passed() time.Duration {
	if !c.byThread {
		return time.Since(c.wall)
	}
	t, _ := threadTime()
	return t - c.begin
}

// within is a context that ends when the clock passes the limit.
func (c *clock) within(ctx context.Context, limit time.Duration) context.Context {
	if limit == 0 {
		return ctx
	}
	return &limited{ctx, c, limit}
}

// limited ends by the clock of the thread that asks for its error, as the
// solver does.
type limited struct {
	context.Context
	clock *clock
	limit time.Duration
}

func (l *limited) Err() error {
	if err := l.Context.Err(); err != nil {
		return err
	}
	if l.clock.passed() > l.limit {
		return context.DeadlineExceeded
	}
	return nil
}

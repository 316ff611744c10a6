package main

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"

	"plait.example/solver"
	"plait.example/solver/problem"
	"plait.example/solver/psplib"
	"plait.example/solver/verify"
)

// set is a folder of instances.
type set struct {
	name  string
	files []string
}

// open lists the instances of a folder in natural order, or a sample of them.
func open(dir string, sample int) (set, error) {
	s := set{name: filepath.Base(filepath.Clean(dir))}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return s, err
	}
	for _, e := range entries {
		switch strings.ToLower(filepath.Ext(e.Name())) {
		case ".sm", ".sch", ".json":
			s.files = append(s.files, filepath.Join(dir, e.Name()))
		}
	}
	if len(s.files) == 0 {
		return s, fmt.Errorf("%s holds no .sm, .sch or .json file", dir)
	}
	slices.SortFunc(s.files, natural)
	if n := len(s.files); sample > 0 && sample < n {
		var some []string
		for i := range sample {
			some = append(some, s.files[(2*i+1)*n/(2*sample)])
		}
		s.files = some
	}
	return s, nil
}

// natural compares names with the numbers in them as numbers.
func natural(a, b string) int {
	for a != "" && b != "" {
		x, y := digits(a), digits(b)
		if x > 0 && y > 0 {
			m, _ := strconv.Atoi(a[:x])
			n, _ := strconv.Atoi(b[:y])
			if m != n {
				return cmp.Compare(m, n)
			}
			a, b = a[x:], b[y:]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

// digits is how many digits a string begins with.
func digits(s string) int {
	n := 0
	for n < len(s) && n < 9 && '0' <= s[n] && s[n] <= '9' {
		n++
	}
	return n
}

// outcome is what came of one instance.
type outcome struct {
	instance  string
	status    solver.Status
	value     int // -1 if there is no schedule
	bound     int
	seconds   float64
	first     float64 // seconds to the first schedule; -1 if there is none
	conflicts int64
	levels    int // objectives
	all       int // of these proved
	values    []string
	err       error
}

// each solves the instances, several at a time, and tells outcomes in order.
func (s *set) each(ctx context.Context, o options, tell func(outcome) error) error {
	results := make([]chan outcome, len(s.files))
	for i := range results {
		results[i] = make(chan outcome, 1)
	}
	next := make(chan int)
	ctx, cancel := context.WithCancel(ctx)
	var workers sync.WaitGroup
	for range o.parallel {
		workers.Go(func() {
			runtime.LockOSThread() // so that the processor time of the thread is the instance's
			defer runtime.UnlockOSThread()
			for i := range next {
				results[i] <- solve(ctx, s.files[i], o)
			}
		})
	}
	workers.Go(func() {
		defer close(next)
		for i := range s.files {
			select {
			case next <- i:
			case <-ctx.Done():
				return
			}
		}
	})
	defer workers.Wait()
	defer cancel()
	for i := range results {
		select {
		case r := <-results[i]:
			if r.err != nil {
				return r.err
			}
			if err := tell(r); err != nil {
				return err
			}
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return nil
}

// solve reads and solves one instance. Its schedule is judged once more.
func solve(ctx context.Context, file string, o options) outcome {
	r := outcome{instance: filepath.Base(file), value: -1, first: -1}
	p, err := read(file)
	if err != nil {
		r.err = err
		return r
	}
	clock := startClock()
	so := solver.Options{Seed: o.seed, Effort: o.effort, Improved: func(p solver.Progress) {
		if r.first < 0 && p.Solution != nil {
			r.first = clock.seconds()
		}
	}}
	got, err := solver.Solve(clock.within(ctx, o.limit), p, so)
	r.seconds = clock.seconds()
	if err != nil && ctx.Err() != nil || err != nil && got.Solution == nil && got.Status != solver.Unknown {
		r.err = fmt.Errorf("%s: %w", file, err)
		return r
	}
	r.status, r.bound, r.conflicts = got.Status, got.Bound, got.Stats.Conflicts
	if got.Solution != nil {
		if breaches := verify.Check(p, got.Solution); len(breaches) > 0 {
			r.err = fmt.Errorf("%s: the schedule is refused: %v", file, breaches[0])
			return r
		}
		r.value = got.Levels[0].Value
	}
	for _, l := range got.Levels {
		r.levels++
		r.values = append(r.values, strconv.Itoa(l.Value))
		if l.Proved {
			r.all++
		}
	}
	return r
}

// read reads an instance, or a problem as its own JSON.
func read(file string) (*problem.Problem, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if !strings.EqualFold(filepath.Ext(file), ".json") {
		return psplib.Read(file, f)
	}
	p := &problem.Problem{}
	if err := json.NewDecoder(f).Decode(p); err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	if err := p.Validate(); err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	return p, nil
}

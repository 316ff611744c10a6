package app

import (
	"container/list"
	"context"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"sync"

	"plait.example/internal/practical"
)

// checkKey is all that the check of a plan that was handed in depends on. A
// plan that was handed in never changes itself.
type checkKey struct {
	plan             int64
	practical, rules [sha256.Size]byte // digests: a version that was taken back and changed has the same number
	fixed            [sha256.Size]byte // what the teacher says of its rows
}

// Limits of what is kept of checks, the least recently used going first. A row
// with what was found takes some 4 kB (BenchmarkSecondView).
const (
	mostKeptRows   = 30_000
	mostKeptChecks = 2000
)

// keptChecks is the last checks of plans that were handed in, so that looking
// at a page again checks nothing. Its zero value is ready.
type keptChecks struct {
	mu     sync.Mutex
	rows   int
	byKey  map[checkKey]*list.Element // of keptCheck
	recent list.List                  // the most recently used first
	busy   map[checkKey]chan struct{} // closed when the check of it ends, done or not
}

type keptCheck struct {
	key     checkKey
	checked Checked
}

// get is a kept check.
func (k *keptChecks) get(key checkKey) (Checked, bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.look(key)
}

func (k *keptChecks) look(key checkKey) (Checked, bool) {
	e := k.byKey[key]
	if e == nil {
		return Checked{}, false
	}
	k.recent.MoveToFront(e)
	return e.Value.(keptCheck).checked, true
}

// do gives a kept check, or makes one; two who ask for the same wait for one
// check. What check does not finish (false) is not kept.
func (k *keptChecks) do(ctx context.Context, key checkKey, check func() (Checked, bool)) Checked {
	for {
		k.mu.Lock()
		if c, is := k.look(key); is {
			k.mu.Unlock()
			return c
		}
		other := k.busy[key]
		if other == nil {
			break
		}
		k.mu.Unlock()
		select {
		case <-other:
		case <-ctx.Done():
			c, _ := check() // it says that it was stopped
			return c
		}
	}
	if k.busy == nil {
		k.busy, k.byKey = map[checkKey]chan struct{}{}, map[checkKey]*list.Element{}
	}
	mine := make(chan struct{})
	k.busy[key] = mine
	k.mu.Unlock()

	var c Checked
	whole := false
	defer func() { // also when check panics
		k.mu.Lock()
		defer k.mu.Unlock()
		delete(k.busy, key)
		close(mine)
		if whole {
			k.put(keptCheck{key, c})
		}
	}()
	c, whole = check()
	return c
}

func (k *keptChecks) put(c keptCheck) {
	k.byKey[c.key] = k.recent.PushFront(c)
	k.rows += len(c.checked.Matched.Rows)
	for k.recent.Len() > 1 && (k.rows > mostKeptRows || k.recent.Len() > mostKeptChecks) {
		last := k.recent.Back()
		old := k.recent.Remove(last).(keptCheck)
		delete(k.byKey, old.key)
		k.rows -= len(old.checked.Matched.Rows)
	}
}

// keysOf are the keys of plans against a practical and rules, in their order.
func keysOf(kept []HandedIn, p *practical.Practical, rules string) ([]checkKey, error) {
	digest := func(v any) ([sha256.Size]byte, error) {
		text, err := json.Marshal(v) // maps in the order of their keys
		return sha256.Sum256(text), err
	}
	against, err := digest(p)
	if err != nil {
		return nil, fmt.Errorf("digest of the practical: %w", err)
	}
	keys := make([]checkKey, len(kept))
	for i, h := range kept {
		fixed, err := digest(h.Fixed)
		if err != nil {
			return nil, fmt.Errorf("digest of corrections: %w", err)
		}
		keys[i] = checkKey{plan: h.ID, practical: against, rules: sha256.Sum256([]byte(rules)), fixed: fixed}
	}
	return keys, nil
}

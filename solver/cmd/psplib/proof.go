package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"plait.example/solver/internal/recheck"
	"plait.example/solver/problem"
)

// proofFile is where the log of one instance goes; nil if none is wanted.
type proofFile struct {
	*os.File
	kept bool
}

// openProof makes the file that the options ask for, for a while only if the
// log is to be checked and not kept.
func openProof(o options) (*proofFile, error) {
	switch {
	case o.proof != "":
		f, err := os.Create(o.proof)
		return &proofFile{f, true}, err
	case o.check:
		f, err := os.CreateTemp("", "proof")
		return &proofFile{f, false}, err
	}
	return nil, nil
}

// writer is what the solver writes to.
func (f *proofFile) writer() io.Writer {
	if f == nil {
		return nil
	}
	return f.File
}

// check replays the log, with so many nodes of search a step, and says in a few
// words what came of it. The error says that the proof is wrong.
func (f *proofFile) check(p *problem.Problem, nodes int) (string, error) {
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return "", err
	}
	r, err := recheck.Replay(p, f, nodes)
	if err != nil {
		return "", err
	}
	if !r.Sound() {
		return "", fmt.Errorf("the proof is wrong: %v", r)
	}
	word := "open"
	if r.Proved {
		word = "proved"
	}
	return fmt.Sprintf("%s: %d by propagation, %d by search, %d unchecked", word, r.Propagated, r.Searched, r.Unchecked), nil
}

// end closes the file, and removes it if nobody asked for it.
func (f *proofFile) end() error {
	if f == nil {
		return nil
	}
	err := f.Close()
	if !f.kept {
		err = errors.Join(err, os.Remove(f.Name()))
	}
	return err
}

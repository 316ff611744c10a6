// Package store keeps practicals, their versions and plans, and classes in one
// SQLite file in a folder. A method is a transaction, and what it reports as
// done is on the disk. It owns SQL and migrations; it must not know HTML, the
// verbs of the application, or how plans are found.
package store

import (
	"context"
	"crypto/rand"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// The files in the folder.
const (
	dataFile = "plait.db"
	lockFile = "plait.lock"
)

// readers is how many pages can read at once beside the one writer.
const readers = 4

// Store is an open folder. Its methods may be called from many goroutines.
type Store struct {
	path  string // of the data file
	lock  *folderLock
	write *sql.DB // one connection
	read  *sql.DB // cannot write
}

// Open opens the data in a folder, making the folder and the tables when they
// are not there. It fails with a practical.Fault that says what to do when
// another process has the folder, the file is damaged or is no database, or a
// newer program wrote it; the file is then left as it was.
func Open(ctx context.Context, dir string) (_ *Store, err error) {
	dir, err = filepath.Abs(dir)
	if err != nil {
		return nil, fmt.Errorf("open store: %w", err)
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, noFolder(dir, err)
	}
	s := &Store{path: filepath.Join(dir, dataFile)}
	defer func() {
		if err != nil {
			err = errors.Join(explain(s.path, err), s.Close())
		}
	}()
	if s.lock, err = lock(ctx, filepath.Join(dir, lockFile)); err != nil {
		return nil, err
	}
	if err := s.connect(ctx); err != nil {
		return nil, err
	}
	return s, nil
}

func (s *Store) connect(ctx context.Context) (err error) {
	if s.write, err = open(s.path, writer); err != nil {
		return err
	}
	s.write.SetMaxOpenConns(1)
	if err := quickCheck(ctx, s.write, s.path); err != nil {
		return err
	}
	if err := migrate(ctx, s.write, s.path); err != nil {
		return err
	}
	if s.read, err = open(s.path, reader); err != nil {
		return err
	}
	s.read.SetMaxOpenConns(readers)
	return s.read.PingContext(ctx)
}

// Close ends the use of the folder.
func (s *Store) Close() error {
	var faults []error
	for _, db := range []*sql.DB{s.read, s.write} {
		if db != nil {
			faults = append(faults, db.Close())
		}
	}
	return errors.Join(append(faults, s.lock.Close())...)
}

// within runs do in a transaction of the writer.
func (s *Store) within(ctx context.Context, do func(*sql.Tx) error) error {
	tx, err := s.write.BeginTx(ctx, nil)
	if err != nil {
		return explain(s.path, err)
	}
	if err := do(tx); err != nil {
		return errors.Join(explain(s.path, err), tx.Rollback())
	}
	return explain(s.path, tx.Commit())
}

// newID is 10 letters and digits, 50 bits of chance.
func newID() string { return strings.ToLower(rand.Text()[:10]) }

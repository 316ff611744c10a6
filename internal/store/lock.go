package store

import (
	"context"
	"database/sql"
	"errors"
	"net/url"
)

// folderLock holds a folder for this process: an exclusive transaction in a
// file of its own beside the data. The operating system ends it with the
// process, however that ends, and it works the same on every system.
type folderLock struct {
	db *sql.DB
	tx *sql.Tx
}

var locker = url.Values{
	"_txlock": {"exclusive"},
	"_pragma": {"busy_timeout(0)", "journal_mode(MEMORY)"},
}

// lock fails with Conflict when another process (or this one) has the folder.
func lock(ctx context.Context, path string) (*folderLock, error) {
	db, err := open(path, locker)
	if err != nil {
		return nil, err
	}
	tx, err := db.BeginTx(context.WithoutCancel(ctx), nil) // the end of ctx must not let go of it
	if err == nil {
		return &folderLock{db, tx}, nil
	}
	if code(err) == busy {
		err = inUse(path)
	}
	return nil, errors.Join(err, db.Close())
}

// Close lets go of the folder. A nil lock holds nothing.
func (l *folderLock) Close() error {
	if l == nil {
		return nil
	}
	return errors.Join(l.tx.Rollback(), l.db.Close())
}

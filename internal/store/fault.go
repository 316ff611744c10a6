package store

import (
	"errors"
	"fmt"
	"path/filepath"

	"modernc.org/sqlite"

	"plait.example/internal/practical"
)

// SQLite's primary result codes that a user can do something about
// (https://www.sqlite.org/rescode.html).
const (
	busy        = 5
	readOnly    = 8
	ioError     = 10
	corrupt     = 11
	full        = 13
	cantOpen    = 14
	notDatabase = 26
)

// code is the primary result code of a database error, 0 of any other.
func code(err error) int {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return 0
	}
	return e.Code() & 0xff
}

// explain turns a database error that a user can do something about into a
// fault with what to do; all others it wraps with the file's name.
func explain(path string, err error) error {
	var f practical.Fault
	if err == nil || errors.As(err, &f) {
		return err
	}
	switch code(err) {
	case 0:
		return fmt.Errorf("store %s: %w", path, err)
	case corrupt:
		return damaged(path, err.Error())
	case notDatabase:
		return fault(path, "this file is not a database of plait",
			"move it out of the folder, or choose another folder")
	case full:
		return fault(path, "the disk is full; the last change was not kept",
			"make some room on the disk, then make the change again")
	case readOnly, cantOpen:
		return fault(path, "this file cannot be opened for writing",
			"check that you may write in the folder "+filepath.Dir(path))
	case ioError:
		return fault(path, "the disk did not answer ("+err.Error()+"); the last change was not kept",
			"check the disk, and copy the folder to another one")
	}
	return fmt.Errorf("store %s: %w", path, err)
}

func fault(path, message, hint string) practical.Fault {
	return practical.Fault{File: path, Code: practical.Invalid, Message: message, Hint: hint}
}

func damaged(path, found string) error {
	return fault(path, "this file is damaged ("+found+"); nothing in it was changed",
		"keep a copy of the whole folder, then put back a saved copy of the file, or begin in an empty folder")
}

func newer(path string, has, knows int64) error {
	return fault(path, fmt.Sprintf("a newer plait wrote this file (its tables are number %d, this program knows %d); nothing in it was changed", has, knows),
		"use the newer plait, or choose another folder")
}

func inUse(path string) error {
	return practical.Fault{
		File: filepath.Dir(path), Code: practical.Conflict,
		Message: "another plait is using this folder", Hint: "stop the other one, or choose another folder",
	}
}

func noFolder(dir string, err error) error {
	return fault(dir, "this folder cannot be made or used ("+err.Error()+")", "choose a folder that you may write in")
}

func notThere(what, id string) error {
	return practical.Fault{Code: practical.NotFound, Message: fmt.Sprintf("there is no %s %q", what, id), Hint: "choose one from the list"}
}

package app

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"plait.example/internal/check"
	"plait.example/internal/format"
	"plait.example/internal/practical"
)

// PlanFiles opens the files of plans: single ones, all in a folder and below, in
// the order of their names, and all in a zip archive. Hidden files, and those that
// systems and offices put beside others, are left out. What cannot be opened is
// a PlanFile with its Err. When ctx ends, no more are opened.
func (a *App) PlanFiles(ctx context.Context, names []string) (all []PlanFile) {
	for _, name := range names {
		err := filepath.WalkDir(name, func(path string, d fs.DirEntry, err error) error {
			switch {
			case ctx.Err() != nil:
				return fs.SkipAll
			case err != nil && path == name:
				return err
			case err != nil:
				all = append(all, PlanFile{Name: path, Err: cannotRead(path, err)})
			case path != name && beside(filepath.Base(path)):
				if d.IsDir() {
					return fs.SkipDir
				}
			case !d.IsDir():
				all = append(all, openPlan(path)...)
			}
			return nil
		})
		if err != nil {
			all = append(all, PlanFile{Name: name, Err: noPlan(name, err)})
		}
	}
	return all
}

// beside says whether a file of a folder is none that somebody put there as a plan.
func beside(base string) bool {
	return strings.HasPrefix(base, ".") || strings.HasPrefix(base, "~$") || base == "Thumbs.db" || base == "desktop.ini" || base == "__MACOSX"
}

func noPlan(name string, err error) practical.Fault {
	f := cannotRead(name, err)
	if errors.Is(err, fs.ErrNotExist) {
		f.Hint = "check the name"
	}
	return f
}

// openPlan reads a file, or the files of an archive.
func openPlan(name string) []PlanFile {
	file, err := os.Open(name)
	if err != nil {
		return []PlanFile{{Name: name, Err: noPlan(name, err)}}
	}
	data, err := io.ReadAll(io.LimitReader(file, format.MaxArchive+1))
	if err = errors.Join(err, file.Close()); err != nil {
		return []PlanFile{{Name: name, Err: noPlan(name, err)}}
	}
	return PlansIn(name, data)
}

// PlansIn is a file as plans: itself, or all that a zip archive holds. What of it
// could not be opened has its Err, and what plait wrote itself says so in Own.
func PlansIn(name string, data []byte) []PlanFile {
	if !strings.EqualFold(filepath.Ext(name), ".zip") {
		return []PlanFile{{Name: name, Data: data, Own: ownWork(data)}}
	}
	files, err := format.Unpack(name, data)
	if err != nil {
		message, hint := advice(strings.TrimPrefix(err.Error(), name+": "))
		return []PlanFile{{Name: name, Err: practical.Fault{File: name, Code: practical.Invalid, Message: message, Hint: hint + ", or give the plans themselves"}}}
	}
	var all []PlanFile
	for _, f := range files {
		one := PlanFile{Name: filepath.ToSlash(name) + "/" + f.Name, Data: f.Data, Own: ownWork(f.Data)}
		if f.Err != nil {
			message, hint := advice(f.Err.Error())
			one.Err = practical.Fault{File: one.Name, Code: practical.Invalid, Message: message, Hint: hint}
		}
		all = append(all, one)
	}
	return all
}

// advice parts an error from what would be right, which stands behind its last semicolon.
func advice(text string) (message, hint string) {
	if at := strings.LastIndex(text, "; "); at > 0 {
		return text[:at], text[at+2:]
	}
	return text, ""
}

// ReadRules reads a teacher's file of rules: which are on, and their wording.
func (a *App) ReadRules(name string) (check.Rules, error) {
	data, err := os.ReadFile(name)
	if err != nil {
		return check.Rules{}, noPlan(name, err)
	}
	rules, faults := check.ReadRules(name, data)
	return rules, faults.OrNil()
}

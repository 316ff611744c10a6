package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync/atomic"

	"plait.example/internal/app"
)

type readCommand struct {
	Files  []string `arg:"" name:"file" help:"Files of recipes: text, Word, OpenDocument, saved web page, PDF. A folder means every file in it and below; - is standard input."`
	Format string   `enum:"yaml,json" default:"yaml" help:"yaml: a practical file with the recipes as dishes; json: all that was read, each figure with its reason."`
	Out    string   `short:"o" help:"Write to this file instead of standard output." placeholder:"FILE"`
}

// standardInput is the name that stands for it, as an argument and in messages.
const standardInput = "-"

func (c *readCommand) run(ctx context.Context, p *program, a *app.App) (int, error) {
	files, failed := c.list()
	for _, err := range failed {
		p.fail(err)
	}
	out, done, err := p.output(c.Out)
	if err != nil {
		return 0, err
	}
	r := reading{program: p, app: a, files: files, unread: len(failed)}
	write := r.yaml
	if c.Format == "json" {
		write = r.json
	}
	err = write(ctx, out)
	if err = errors.Join(err, done(err == nil && r.unread < len(files)+len(failed))); err != nil {
		return 0, err
	}
	if r.unread > 0 {
		return exitFailure, nil
	}
	return exitFits, nil
}

// output is where the result is written: standard output, or a file. done ends
// it; a file that was there before stays as it was unless the result is to be kept.
func (p *program) output(name string) (out io.Writer, done func(keep bool) error, err error) {
	if name == "" {
		b := bufio.NewWriter(p.stdout)
		return b, func(bool) error { return b.Flush() }, nil
	}
	// The file is only replaced when all has been written: it may be one of those that are read.
	file, err := os.CreateTemp(filepath.Dir(name), ".plait-*")
	if err != nil {
		return nil, nil, fmt.Errorf("write what was read: %w", err)
	}
	b := bufio.NewWriter(file)
	return b, func(keep bool) error {
		err := errors.Join(b.Flush(), file.Chmod(0o644), file.Close())
		if err == nil && keep {
			return os.Rename(file.Name(), name)
		}
		return errors.Join(err, os.Remove(file.Name()))
	}, nil
}

// list names the files to read, those of a folder in the order of their names.
// Hidden files of a folder are left out.
func (c *readCommand) list() (files []string, failed []error) {
	for _, name := range c.Files {
		if name == standardInput {
			files = append(files, name)
			continue
		}
		err := filepath.WalkDir(name, func(path string, d fs.DirEntry, err error) error {
			hidden := path != name && strings.HasPrefix(filepath.Base(path), ".")
			switch {
			case err != nil && path == name:
				return err
			case err != nil:
				failed = append(failed, err)
			case hidden && d.IsDir():
				return fs.SkipDir
			case !hidden && !d.IsDir():
				files = append(files, path)
			}
			return nil
		})
		if err != nil {
			files = append(files, name) // reading it says what is wrong
		}
	}
	return files, failed
}

// reading reads files side by side and gives what they hold in their order.
type reading struct {
	*program
	app    *app.App
	files  []string
	unread int // files that could not be read
}

// result is what became of one file.
type result struct {
	recipes app.Recipes
	objects [][]byte // as JSON, when that is wanted
	err     error
}

// each reads all files on all processors and hands what they hold to take, in
// the order of the files. A file that cannot be read is told on standard error,
// and the others are read all the same.
func (r *reading) each(ctx context.Context, asJSON bool, take func(name string, found result) error) error {
	shown := r.progress()
	defer shown.end()
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	results := r.start(ctx, asJSON)
	for i, name := range r.files {
		shown.reading(i, len(r.files), name)
		var found result
		select {
		case found = <-results[i]:
		case <-ctx.Done():
			return ctx.Err()
		}
		if found.err != nil {
			shown.hide(func() { r.fail(found.err) })
			r.unread++
			continue
		}
		if err := take(name, found); err != nil {
			return err
		}
	}
	return nil
}

// start begins to read the files, as many at once as there are processors.
func (r *reading) start(ctx context.Context, asJSON bool) []chan result {
	results := make([]chan result, len(r.files))
	for i := range results {
		results[i] = make(chan result, 1)
	}
	var next atomic.Int64
	for range min(runtime.GOMAXPROCS(0), len(r.files)) {
		go func() {
			for i := int(next.Add(1)) - 1; i < len(r.files) && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				results[i] <- r.read(r.files[i], asJSON)
			}
		}()
	}
	return results
}

func (r *reading) read(name string, asJSON bool) (found result) {
	if name == standardInput {
		data, err := io.ReadAll(io.LimitReader(r.stdin, app.MostFile+1))
		if err != nil {
			return result{err: fmt.Errorf("read standard input: %w", err)}
		}
		found.recipes, found.err = r.app.ReadRecipes(name, data)
	} else {
		found.recipes, found.err = r.app.ReadRecipesFile(name)
	}
	if found.err == nil && asJSON {
		found.objects, found.err = r.app.RecipesJSON(name, found.recipes)
	}
	return found
}

// json writes one array with an object for each recipe, as they are read.
func (r *reading) json(ctx context.Context, out io.Writer) error {
	between := "[\n  "
	err := r.each(ctx, true, func(_ string, found result) error {
		for _, object := range found.objects {
			if _, err := fmt.Fprintf(out, "%s%s", between, object); err != nil {
				return err
			}
			between = ",\n  "
		}
		return nil
	})
	end := "\n]\n"
	if between == "[\n  " {
		end = "[]\n"
	}
	_, failed := io.WriteString(out, end)
	return errors.Join(err, failed)
}

// yaml writes a practical file with a dish for each recipe, and tells on standard
// error what the file lacks before it can be planned.
func (r *reading) yaml(ctx context.Context, out io.Writer) error {
	var all []app.FileRecipes
	err := r.each(ctx, false, func(name string, found result) error {
		all = append(all, app.FileRecipes{File: name, Recipes: found.recipes})
		return nil
	})
	if err != nil || len(all) == 0 && r.unread > 0 {
		return err // each unread file has been told of
	}
	data, left, err := r.app.RecipesFile(all)
	for _, f := range left {
		fmt.Fprintln(r.stderr, "plait: to put right:", f)
	}
	if err != nil {
		return err
	}
	_, err = out.Write(data)
	return err
}

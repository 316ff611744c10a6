package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"strings"

	"github.com/alecthomas/kong"

	"plait.example/internal/app"
)

// The exit codes.
const (
	exitFits    = 0 // or simply: done
	exitUnfit   = 1 // the plan does not fit its time
	exitFailure = 2 // what was given could not be read or done
)

// program is plait as one run of it: tests start the real thing.
type program struct {
	args           []string
	stdin          io.Reader
	stdout, stderr io.Writer
	terminal       bool // stderr is a terminal: show progress
	outTerminal    bool // stdout is one: write no PDF to it
}

// grammar is the command line.
type grammar struct {
	Verbose bool `short:"v" help:"Log what is done, in detail, to standard error."`

	Demo    demoCommand    `cmd:"" help:"Start the web application with an invented class and menu; nothing is kept."`
	Serve   serveCommand   `cmd:"" help:"Start the web application on a folder of kept data."`
	Read    readCommand    `cmd:"" help:"Read recipes into a practical file or JSON. Exit 0: all were read; 2: some file could not be."`
	Plan    planCommand    `cmd:"" help:"Plan a practical file. Exit 0: it fits; 1: it does not; 2: it could not be read."`
	Check   checkCommand   `cmd:"" help:"Check plans that people wrote. Exit 0: nothing stops the cook; 1: something does; 2: a file could not be read."`
	Schema  schemaCommand  `cmd:"" help:"Print the JSON Schema of practical files, of plans or of recipes that were read."`
	Version versionCommand `cmd:"" help:"Print the version."`
}

// command is one verb of the command line; it gives the exit code.
type command interface {
	run(ctx context.Context, p *program, a *app.App) (int, error)
}

func (p *program) run(ctx context.Context) int {
	var g grammar
	verb, code, err := p.parse(&g)
	if err != nil {
		return p.fail(err)
	}
	if verb == nil {
		return code
	}
	code, err = verb.run(ctx, p, &app.App{Log: p.logger(g.Verbose)})
	if err != nil {
		return p.fail(err)
	}
	return code
}

// parse gives the command, or nil and an exit code when help was asked for.
func (p *program) parse(g *grammar) (verb command, code int, err error) {
	exited := false
	parser, err := kong.New(g,
		kong.Name("plait"),
		kong.Description("Plans timed cooking sessions: several dishes, one pair of hands, one clock."),
		kong.Writers(p.stdout, p.stderr),
		kong.Exit(func(c int) { exited, code = true, c }),
		kong.UsageOnError(),
	)
	if err != nil {
		return nil, exitFailure, err
	}
	parsed, err := parser.Parse(p.args)
	switch {
	case exited:
		return nil, code, nil
	case err != nil:
		return nil, exitFailure, fmt.Errorf("%w; try plait --help", err)
	}
	name, _, _ := strings.Cut(parsed.Command(), " ")
	return map[string]command{"demo": &g.Demo, "serve": &g.Serve, "plan": &g.Plan, "check": &g.Check, "read": &g.Read, "schema": &g.Schema, "version": &g.Version}[name], 0, nil
}

// fail says what went wrong, one fault a line.
func (p *program) fail(err error) int {
	if errors.Is(err, context.Canceled) {
		err = errors.New("stopped before it was done")
	}
	for _, line := range strings.Split(strings.TrimSpace(err.Error()), "\n") {
		fmt.Fprintln(p.stderr, "plait:", line)
	}
	return exitFailure
}

// logger writes warnings, or with verbose everything, as structured lines.
func (p *program) logger(verbose bool) *slog.Logger {
	level := slog.LevelWarn
	if verbose {
		level = slog.LevelDebug
	}
	return slog.New(slog.NewTextHandler(p.stderr, &slog.HandlerOptions{Level: level}))
}

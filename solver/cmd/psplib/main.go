// Command psplib solves published instances of project scheduling problems
// and prints a row of CSV for each: file, status (optimal, feasible,
// infeasible, unknown), makespan, lower bound, seconds, conflicts.
//
//	go run ./solver/cmd/psplib -limit 10s FILE...
//
// It exits with 2 if a file cannot be read or an option is wrong, after it has
// done the other files, and with 1 if the solver itself fails. It owns options
// and rows; it must know nothing of formats and of search.
package main

import (
	"context"
	"encoding/csv"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strconv"
	"strings"
	"time"

	"plait.example/solver"
	"plait.example/solver/problem"
	"plait.example/solver/psplib"
)

// Exit codes.
const (
	ok      = 0
	failed  = 1 // the solver's own fault
	misread = 2 // an option or a file
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

type options struct {
	limit  time.Duration
	effort int64
	memory int64
	seed   int64
	starts bool
	proof  string
	check  bool
	nodes  int
}

func run(ctx context.Context, args []string, out, complaints io.Writer) int {
	var o options
	flags := flag.NewFlagSet("psplib", flag.ContinueOnError)
	flags.SetOutput(complaints)
	flags.DurationVar(&o.limit, "limit", 10*time.Second, "greatest time for one file; 0 for none")
	flags.Int64Var(&o.effort, "effort", 1<<40, "greatest effort for one file, about its conflicts; with -limit 0, a result repeats")
	flags.Int64Var(&o.memory, "memory", 0, "about how many bytes the search may remember; 0 for no limit")
	flags.Int64Var(&o.seed, "seed", 1, "steers ties and restarts")
	flags.BoolVar(&o.starts, "start-times", false, "add a column with the start of every activity")
	flags.StringVar(&o.proof, "proof", "", "write a log of the proof to this file; for one FILE only")
	flags.BoolVar(&o.check, "check", false, "replay the proof by a checker of its own, and add a column that says what came of it")
	flags.IntVar(&o.nodes, "check-nodes", 2000, "how many nodes of search the checker may take for a step that its propagation does not show")
	flags.Usage = func() {
		fmt.Fprintln(complaints, "usage: psplib [options] FILE...   (.sm or .sch; - reads standard input)")
		flags.PrintDefaults()
	}
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return ok
	case err != nil:
		return misread
	case o.limit < 0 || o.memory < 0 || o.effort < 1:
		fmt.Fprintln(complaints, "psplib: -limit and -memory must be 0 or more, -effort 1 or more")
		return misread
	case o.nodes < 0:
		fmt.Fprintln(complaints, "psplib: -check-nodes must be 0 or more")
		return misread
	case o.proof != "" && flags.NArg() > 1:
		fmt.Fprintln(complaints, "psplib: -proof goes with one FILE only")
		return misread
	case flags.NArg() == 0:
		flags.Usage()
		return misread
	}
	rows := csv.NewWriter(out)
	header := []string{"file", "status", "makespan", "lower_bound", "seconds", "conflicts"}
	if o.starts {
		header = append(header, "starts")
	}
	if o.check {
		header = append(header, "check")
	}
	code := ok
	write := func(row []string) {
		if err := rows.Write(row); err == nil {
			rows.Flush()
		}
	}
	write(header)
	for _, file := range flags.Args() {
		row, fault, err := solve(ctx, file, o)
		if err != nil {
			fmt.Fprintln(complaints, err)
			code = max(code, fault)
			continue
		}
		write(row)
	}
	if rows.Error() != nil {
		fmt.Fprintln(complaints, "psplib:", rows.Error())
		return failed
	}
	return code
}

// solve is the row of one file, or the exit code that its error asks for.
func solve(ctx context.Context, file string, o options) (row []string, code int, err error) {
	p, err := read(file)
	if err != nil {
		return nil, misread, err
	}
	log, err := openProof(o)
	if err != nil {
		return nil, misread, err
	}
	defer func() {
		if closed := log.end(); closed != nil && err == nil {
			row, code, err = nil, failed, closed
		}
	}()
	begin := time.Now()
	r, err := solver.Solve(ctx, p, solver.Options{Seed: o.seed, Effort: o.effort, Memory: o.memory, Time: o.limit, Proof: log.writer()})
	if err != nil {
		return nil, failed, fmt.Errorf("%s: %w", file, err)
	}
	row = []string{
		file, r.Status.String(), "", "",
		strconv.FormatFloat(time.Since(begin).Seconds(), 'f', 2, 64), strconv.FormatInt(r.Stats.Conflicts, 10),
	}
	if r.Solution != nil {
		row[2] = strconv.Itoa(r.Levels[0].Value)
	}
	if r.Status != solver.Infeasible {
		row[3] = strconv.Itoa(r.Bound)
	}
	if o.starts {
		row = append(row, starts(r.Solution))
	}
	if o.check {
		word, err := log.check(p, o.nodes)
		if err != nil {
			return nil, failed, fmt.Errorf("%s: %w", file, err)
		}
		row = append(row, word)
	}
	return row, ok, nil
}

func read(file string) (*problem.Problem, error) {
	if file == "-" {
		return psplib.Read("standard input", os.Stdin)
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return psplib.Read(file, f)
}

// starts lists the starts of a schedule in the order of the file.
func starts(s *problem.Solution) string {
	if s == nil {
		return ""
	}
	list := make([]string, len(s.Start))
	for i, t := range s.Start {
		list[i] = strconv.Itoa(t)
	}
	return strings.Join(list, " ")
}

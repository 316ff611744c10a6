// Command solverbench solves whole sets of published instances, or a sample
// of each, and writes what came out as a table in Markdown and, if asked, as
// CSV with one row an instance.
//
//	go run ./solver/cmd/solverbench -limit 10s -bounds bounds.csv -csv rows.csv DIR...
//
// A set is a folder of .sm and .sch files, or of problems as .json, and is named as the folder is. It
// exits with 2 if an option or a file is wrong, and with 1 if a result
// contradicts what was published. It owns the choice of instances and the
// sums; it must know nothing of how problems are solved.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"time"
)

// Exit codes.
const (
	ok      = 0
	against = 1 // a result contradicts what was published
	misread = 2 // an option or a file
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

type options struct {
	limit    time.Duration
	effort   int64
	seed     int64
	sample   int
	parallel int
	bounds   string
	baseline string
	rows     string
}

func run(ctx context.Context, args []string, out, complaints io.Writer) int {
	var o options
	flags := flag.NewFlagSet("solverbench", flag.ContinueOnError)
	flags.SetOutput(complaints)
	flags.DurationVar(&o.limit, "limit", 10*time.Second, "greatest time for one instance: of the processor where the system tells it, else of the clock; 0 for none")
	flags.Int64Var(&o.effort, "effort", 1<<40, "greatest effort for one instance; with -limit 0, results repeat")
	flags.Int64Var(&o.seed, "seed", 1, "steers ties and restarts")
	flags.IntVar(&o.sample, "sample", 0, "take so many instances of each set, evenly spread; 0 for all")
	flags.IntVar(&o.parallel, "parallel", 1, "instances solved at the same time")
	flags.StringVar(&o.bounds, "bounds", "", "CSV files of published bounds, with commas between: columns set, instance, lower, upper and perhaps status")
	flags.StringVar(&o.baseline, "baseline", "", "CSV file of another solver's results: columns set, instance, status, solver_seconds")
	flags.StringVar(&o.rows, "csv", "", "file to write one row an instance to")
	flags.Usage = func() {
		fmt.Fprintln(complaints, "usage: solverbench [options] DIR...   (folders of .sm, .sch and .json files)")
		flags.PrintDefaults()
	}
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return ok
	case err != nil:
		return misread
	case o.limit < 0 || o.effort < 1 || o.sample < 0 || o.parallel < 1:
		fmt.Fprintln(complaints, "solverbench: -limit and -sample must be 0 or more, -effort and -parallel 1 or more")
		return misread
	case flags.NArg() == 0:
		flags.Usage()
		return misread
	}
	code, err := bench(ctx, flags.Args(), o, out)
	if err != nil {
		fmt.Fprintln(complaints, err)
		return misread
	}
	return code
}

// bench does all sets and writes the table.
func bench(ctx context.Context, dirs []string, o options, out io.Writer) (int, error) {
	known, err := readKnown(o.bounds, o.baseline)
	if err != nil {
		return 0, err
	}
	var sets []set
	for _, d := range dirs {
		s, err := open(d, o.sample)
		if err != nil {
			return 0, err
		}
		sets = append(sets, s)
	}
	rows := io.Discard
	if o.rows != "" {
		f, err := os.Create(o.rows)
		if err != nil {
			return 0, err
		}
		defer f.Close()
		rows = f
	}
	if err := header(rows, out, o); err != nil {
		return 0, err
	}
	code := ok
	for _, s := range sets {
		sum := summary{set: s.name}
		err := s.each(ctx, o, func(r outcome) error {
			k := known.of(s.name, r.instance)
			sum.add(r, k)
			return writeRow(rows, s.name, r, k)
		})
		if err != nil {
			return 0, err
		}
		if err := sum.write(out); err != nil {
			return 0, err
		}
		if sum.contradict > 0 {
			code = against
		}
	}
	return code, nil
}

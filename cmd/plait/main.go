// Command plait plans practicals: several dishes woven by one pair of hands
// into one timed plan. It joins the rooms of the project and owns nothing else
// but the command line: what is said, where it is written, and the exit code.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	"github.com/mattn/go-isatty"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second signal ends the program at once
	p := program{
		args: os.Args[1:], stdin: os.Stdin, stdout: os.Stdout, stderr: os.Stderr,
		terminal:    isatty.IsTerminal(os.Stderr.Fd()),
		outTerminal: isatty.IsTerminal(os.Stdout.Fd()),
	}
	os.Exit(p.run(ctx))
}

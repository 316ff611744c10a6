package main

import (
	"context"
	"fmt"
	"runtime"
	"runtime/debug"

	"plait.example/internal/app"
)

type schemaCommand struct {
	Of string `arg:"" optional:"" enum:"practical,plan,recipes,checks" default:"practical" help:"practical (the file that plait plan reads), plan (what plait plan --format json writes), recipes (what plait read does) or checks (what plait check does)."`
}

func (c *schemaCommand) run(_ context.Context, p *program, a *app.App) (int, error) {
	schema, err := a.Schema(c.Of)
	if err != nil {
		return 0, err
	}
	_, err = p.stdout.Write(schema)
	return exitFits, err
}

type versionCommand struct{}

func (versionCommand) run(_ context.Context, p *program, _ *app.App) (int, error) {
	version := "unknown"
	if info, ok := debug.ReadBuildInfo(); ok {
		version = info.Main.Version
	}
	_, err := fmt.Fprintf(p.stdout, "plait %s, %s, %s/%s\n", version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
	return exitFits, err
}

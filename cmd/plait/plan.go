package main

import (
	"context"
	"errors"
	"fmt"
	"os"

	"plait.example/internal/app"
)

type planCommand struct {
	File      string `arg:"" help:"Practical file (YAML). It may name files of recipes beside it."`
	Format    string `enum:"text,json,html,pdf" default:"text" help:"How the plan is written: text, json, html or pdf."`
	Out       string `short:"o" help:"Write to this file instead of standard output." placeholder:"FILE"`
	Seed      int64  `default:"1" help:"Steers ties of the search; the same seed gives the same plan."`
	Effort    int64  `help:"Greatest number of conflicts of the search; 0 is the usual effort."`
	Proved    bool   `help:"Say on standard error how good the plan is in each aim, and what of that is proved: each line among plans that are as good in the lines above it. A terminal is told without it."`
	Landscape bool   `help:"Paper on its side (html, pdf)."`
	LargeType bool   `help:"Large type (html, pdf)."`
	Name      string `help:"Name of the candidate, printed at the top." placeholder:"NAME"`
}

func (c *planCommand) run(ctx context.Context, p *program, a *app.App) (int, error) {
	if c.Format == string(app.PDF) && c.Out == "" && p.outTerminal {
		return 0, errors.New("a PDF is not for a terminal; name a file with --out")
	}
	practical, err := a.ReadFile(c.File)
	if err != nil {
		return 0, err
	}
	shown := p.progress()
	plan, err := a.PlanPractical(ctx, practical, app.PlanOptions{Seed: c.Seed, Effort: c.Effort, Improved: shown.improved})
	shown.end()
	if err != nil {
		return 0, app.InFile(c.File, err)
	}
	document, err := a.Paper(plan, app.Format(c.Format), app.Sheet{Landscape: c.Landscape, LargeType: c.LargeType, Name: c.Name})
	if err != nil {
		return 0, err
	}
	if err := c.write(p, document.Data); err != nil {
		return 0, err
	}
	if c.Proved || p.terminal {
		for _, said := range plan.Aims() {
			fmt.Fprintln(p.stderr, said)
		}
	}
	if !plan.Fits() {
		return exitUnfit, nil
	}
	return exitFits, nil
}

func (c *planCommand) write(p *program, data []byte) error {
	if c.Out == "" {
		_, err := p.stdout.Write(data)
		return err
	}
	if err := os.WriteFile(c.Out, data, 0o644); err != nil {
		return fmt.Errorf("write the plan: %w", err)
	}
	return nil
}

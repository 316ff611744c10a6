package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

type checkCommand struct {
	Plans     []string `arg:"" name:"plan" help:"Plans that people wrote: Word, OpenDocument, spreadsheet, web page, text. A folder or a zip means every file in it."`
	Practical string   `help:"Practical file (YAML) to check them against." placeholder:"FILE" xor:"against"`
	Recipe    []string `help:"Recipe to check them against, in place of a practical file; give it again for each dish." placeholder:"FILE" xor:"against" sep:"none"`
	Clock     string   `help:"With --recipe: when the clock starts and ends." placeholder:"09:00-12:00"`
	SetUp     string   `help:"With --recipe: when set-up begins." placeholder:"08:30"`
	Rules     string   `help:"File of rules: which are on, and how they are worded." placeholder:"FILE"`
	Format    string   `enum:"text,json" default:"text" help:"text, or json: rows as read, and findings."`
	Out       string   `short:"o" help:"Write to this file instead of standard output." placeholder:"FILE"`
}

func (c *checkCommand) run(ctx context.Context, p *program, a *app.App) (int, error) {
	against, err := c.against(p, a)
	if err != nil {
		return 0, err
	}
	o := app.CheckOptions{Practical: against}
	if c.Rules != "" {
		if o.Rules, err = a.ReadRules(c.Rules); err != nil {
			return 0, err
		}
	}
	files := a.PlanFiles(c.Plans)
	if len(files) == 0 {
		return 0, errors.New("no plans were found; name files, folders or zip archives that hold some")
	}
	shown := p.progress()
	o.Checked = func(done, of int) { shown.say(fmt.Sprintf("checking: %d of %d plans", done, of)) }
	checked := a.Check(ctx, files, o)
	shown.end()
	if err := ctx.Err(); err != nil {
		return 0, err
	}
	if err := c.write(p, a, checked); err != nil {
		return 0, err
	}
	return p.told(checked), nil
}

// told says on standard error which files could not be read, and gives the exit code.
func (p *program) told(checked []app.Checked) int {
	code := exitFits
	for _, one := range checked {
		switch {
		case one.Fault != nil:
			p.fail(*one.Fault)
			code = exitFailure
		case one.Stops() && code == exitFits:
			code = exitUnfit
		}
	}
	return code
}

func (c *checkCommand) write(p *program, a *app.App, checked []app.Checked) error {
	data, err := a.CheckedText(checked), error(nil)
	if c.Format == "json" {
		data, err = a.CheckedJSON(checked)
	}
	if err != nil {
		return err
	}
	if c.Out == "" {
		_, err = p.stdout.Write(data)
		return err
	}
	if err := os.WriteFile(c.Out, data, 0o644); err != nil {
		return fmt.Errorf("write the findings: %w", err)
	}
	return nil
}

// against is the practical that the plans are checked against; nil: none.
func (c *checkCommand) against(p *program, a *app.App) (*practical.Practical, error) {
	if len(c.Recipe) == 0 && (c.Clock != "" || c.SetUp != "") {
		return nil, errors.New("--clock and --set-up go with --recipe; a practical file has its own")
	}
	if c.Practical != "" {
		return a.ReadFile(c.Practical)
	}
	if len(c.Recipe) == 0 {
		return nil, nil
	}
	clock, err := c.clock()
	if err != nil {
		return nil, err
	}
	var recipes []app.FileRecipes
	for _, name := range c.Recipe {
		read, err := a.ReadRecipesFile(name)
		if err != nil {
			return nil, err
		}
		recipes = append(recipes, app.FileRecipes{File: name, Recipes: read})
	}
	made, left, err := a.RecipesCheck(recipes, clock)
	for _, f := range left {
		fmt.Fprintln(p.stderr, "plait: of the recipes:", f)
	}
	return made, err
}

// setUpMinutes is how long before the clock set-up begins, where --set-up does
// not say: one of 15 to 45 in use (common practice, no source).
const setUpMinutes = 30

// clock reads --clock and --set-up.
func (c *checkCommand) clock() (practical.Clock, error) {
	wrong := errors.New("with --recipe, say when the clock starts and ends: --clock 09:00-12:00")
	from, to, cut := strings.Cut(c.Clock, "-")
	if !cut {
		return practical.Clock{}, wrong
	}
	start, errStart := practical.ParseTimeOfDay(from)
	finish, errFinish := practical.ParseTimeOfDay(to)
	if err := errors.Join(errStart, errFinish); err != nil {
		return practical.Clock{}, fmt.Errorf("--clock: %w", err)
	}
	if finish <= start {
		return practical.Clock{}, fmt.Errorf("--clock: %s is not after %s; %w", finish, start, wrong)
	}
	clock := practical.Clock{SetUp: max(0, start-setUpMinutes), Start: start, Finish: finish}
	if c.SetUp != "" {
		setUp, err := practical.ParseTimeOfDay(c.SetUp)
		if err != nil {
			return practical.Clock{}, fmt.Errorf("--set-up: %w", err)
		}
		if setUp > start {
			return practical.Clock{}, fmt.Errorf("--set-up: %s is after the clock starts at %s; give a time before", setUp, start)
		}
		clock.SetUp = setUp
	}
	return clock, nil
}

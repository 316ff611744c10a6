package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"plait.example/internal/app"
)

type checkCommand struct {
	Plans     []string `arg:"" name:"plan" help:"Plans that people wrote: Word, OpenDocument, spreadsheet, web page, text. A folder or a zip means every file in it."`
	Practical string   `help:"Practical file (YAML) to check them against." placeholder:"FILE" xor:"against"`
	Recipe    []string `help:"Recipe to check them against, in place of a practical file; give it again for each dish." placeholder:"FILE" xor:"against" sep:"none"`
	Clock     string   `help:"With --recipe: when the clock starts and ends." placeholder:"09:00-12:00"`
	SetUp     string   `help:"With --recipe: when set-up begins." placeholder:"08:30"`
	Feedback  string   `help:"Write feedback to this folder: the table of the class and, unless the setting is assessed, a page for each pupil." placeholder:"FOLDER"`
	Setting   string   `enum:"assessed,coached,worked" default:"assessed" help:"With --feedback, what learners are shown: nothing (assessed), questions (coached), or questions with what was seen (worked)."`
	Before    []string `help:"With --feedback, earlier versions of the plans (file, folder or zip): what was mended since." placeholder:"PLANS" sep:"none"`
	Room      string   `help:"With --feedback, what the room has for all: when the plans together want more, the table of the class says so." placeholder:"ovens=12,mixers=4"`
	Rules     string   `help:"File of rules: which are on, and how they are worded." placeholder:"FILE"`
	Format    string   `enum:"text,json" default:"text" help:"text, or json: rows as read, and findings."`
	Out       string   `short:"o" help:"Write to this file instead of standard output." placeholder:"FILE"`
}

func (c *checkCommand) run(ctx context.Context, p *program, a *app.App) (int, error) {
	o, err := c.options(p, a)
	if err != nil {
		return 0, err
	}
	files, own := app.Plans(a.PlanFiles(ctx, c.Plans))
	p.passed(own)
	if err := ctx.Err(); err != nil {
		return 0, err
	}
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
	if err := c.feedback(ctx, p, a, files, checked, o); err != nil {
		return 0, err
	}
	return p.told(checked), nil
}

// feedback writes what is handed out to a folder.
func (c *checkCommand) feedback(ctx context.Context, p *program, a *app.App, files []app.PlanFile, checked []app.Checked, o app.CheckOptions) error {
	if c.Feedback == "" {
		if len(c.Before) > 0 || app.Setting(c.Setting) != app.Assessed || c.Room != "" {
			return errors.New("--before, --setting and --room go with --feedback; name a folder for it")
		}
		return nil
	}
	room, err := app.ReadRoom(c.Room)
	if err != nil {
		return fmt.Errorf("--room: %w", err)
	}
	o.Checked = nil
	earlier, own := app.Plans(a.PlanFiles(ctx, c.Before))
	p.passed(own)
	before := a.Check(ctx, earlier, o)
	if err := ctx.Err(); err != nil {
		return err
	}
	for _, b := range before {
		if b.Fault != nil {
			return *b.Fault
		}
	}
	documents, err := a.Feedback(files, checked, before, app.Setting(c.Setting), room)
	if err != nil {
		return err
	}
	for _, d := range documents {
		name := filepath.Join(c.Feedback, filepath.FromSlash(d.Name))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return fmt.Errorf("write the feedback: %w", err)
		}
		if err := os.WriteFile(name, d.Data, 0o644); err != nil {
			return fmt.Errorf("write the feedback: %w", err)
		}
	}
	return nil
}

// passed says on standard error which files are no plans because plait wrote them.
func (p *program) passed(own []app.PlanFile) {
	for _, f := range own {
		fmt.Fprintf(p.stderr, "plait: passed over %s: %s\n", f.Name, f.Own)
	}
}

// told says on standard error which files could not be read, and gives the exit code.
func (p *program) told(checked []app.Checked) int {
	code := exitFits
	for _, one := range checked {
		switch {
		case one.Fault != nil:
			p.fail(*one.Fault)
			code = exitFailure
		case one.Unchecked != nil:
			p.fail(*one.Unchecked)
			code = exitFailure
		case one.Empty():
			p.fail(fmt.Errorf("%s: no plan was found in it; a plan has rows with times and what is done", one.File))
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
	} else if c.Out != "" {
		data = app.Marked(data)
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

// options say what the plans are checked against, and by which rules.
func (c *checkCommand) options(p *program, a *app.App) (o app.CheckOptions, err error) {
	if len(c.Recipe) == 0 && (c.Clock != "" || c.SetUp != "") {
		return o, errors.New("--clock and --set-up go with --recipe; a practical file has its own")
	}
	if c.Rules != "" {
		if o.Rules, err = a.ReadRules(c.Rules); err != nil {
			return o, err
		}
	}
	if c.Practical != "" {
		o.Practical, err = a.ReadFile(c.Practical)
	} else if len(c.Recipe) > 0 {
		err = c.recipes(p, a, &o)
	}
	return o, err
}

// recipes makes a practical of the recipes as they are.
func (c *checkCommand) recipes(p *program, a *app.App, o *app.CheckOptions) error {
	clock, err := app.ClockOf(c.Clock, c.SetUp)
	if err != nil {
		return fmt.Errorf("--clock and --set-up: %w", err)
	}
	var recipes []app.FileRecipes
	for _, name := range c.Recipe {
		read, err := a.ReadRecipesFile(name)
		if err != nil {
			return err
		}
		recipes = append(recipes, app.FileRecipes{File: name, Recipes: read})
	}
	made, left, err := a.RecipesCheck(recipes, clock)
	for _, f := range left {
		fmt.Fprintln(p.stderr, "plait: of the recipes:", f)
	}
	o.Practical = made
	return err
}

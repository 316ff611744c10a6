package app

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"plait.example/internal/practical"
)

// FileRecipes is what was read of a file, with its name.
type FileRecipes struct {
	File string
	Recipes
}

// RecipesPractical makes a practical of recipes: each with a method is a dish, in
// the clock, rules and kitchen of a starting point, which a teacher then changes.
// What was left out comes back beside it: files without a method, and everything
// that Validate would not take yet, such as a dough that proves overnight. More
// recipes than there are letters, and none at all, are a practical.Fault.
func (a *App) RecipesPractical(all []FileRecipes) (*practical.Practical, practical.Faults, error) {
	var left practical.Faults
	p := startFor(all)
	for _, f := range all {
		for _, r := range f.Recipes.Recipes {
			if len(r.Steps) == 0 {
				left = append(left, withoutMethod(f.File))
				continue
			}
			letter := freeLetter(p.Dishes)
			if letter == "" {
				return nil, nil, practical.Fault{
					Code: practical.TooLarge, Message: "a practical holds at most 26 dishes, and there are more recipes",
					Hint: "give fewer files, or write them as JSON",
				}
			}
			d := dishFrom(r, letter, p.Rules)
			if d.Name == "" {
				d.Name = strings.TrimSuffix(filepath.Base(f.File), filepath.Ext(f.File))
			}
			p.Dishes = append(p.Dishes, d)
		}
	}
	if len(p.Dishes) == 0 {
		return nil, left, practical.Fault{
			Code: practical.Invalid, Message: "no recipe with a method was found", Hint: "a recipe has a list of ingredients and a method in sentences",
		}
	}
	p.Rules.Dishes = len(p.Dishes)
	p.Title = titleOf(p.Dishes)
	return p, append(left, p.Validate()...), nil
}

// startFor is the starting point for so many dishes, with the longer clock also
// where a step would not fit the shorter one.
func startFor(all []FileRecipes) *practical.Practical {
	dishes, longest := 0, 0
	for _, f := range all {
		for _, r := range f.Recipes.Recipes {
			dishes += min(len(r.Steps), 1)
			for _, s := range r.Steps {
				if s.Wait != nil {
					longest = max(longest, s.Wait.Least)
				}
			}
		}
	}
	like := "two-in-two"
	if dishes > 2 || longest > longWait {
		like = "three-in-three"
	}
	var p *practical.Practical
	for _, s := range practical.StartingPoints() {
		if p == nil || s.ID == like {
			p = s.New()
		}
	}
	return p
}

// longWait is the minutes that food may wait at most in a practical of two hours
// that has other work besides. Judgement.
const longWait = 90

func withoutMethod(file string) practical.Fault {
	return practical.Fault{
		File: file, Code: practical.Invalid, Message: "no method was found here, and so no dish was made of it",
		Hint: "a recipe has a list of ingredients and a method in sentences",
	}
}

func titleOf(dishes []practical.Dish) string {
	names := make([]string, len(dishes))
	for i, d := range dishes {
		names[i] = d.Name
	}
	switch len(names) {
	case 1:
		return names[0]
	case 2, 3:
		return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
	}
	return fmt.Sprintf("%d dishes", len(names))
}

// RecipesFile is the practical of RecipesPractical as a practical file. Comments
// at its head say what was not understood, and which steps are the most doubtful.
func (a *App) RecipesFile(all []FileRecipes) ([]byte, practical.Faults, error) {
	p, left, err := a.RecipesPractical(all)
	if err != nil {
		return nil, left, err
	}
	data, err := practical.Write(p)
	if err != nil {
		return nil, left, fmt.Errorf("write the practical file: %w", err)
	}
	return append([]byte(headOf(all, p)), data...), left, nil
}

// mostDoubtful is how many doubtful steps the head of a file names, and doubtful from where on they are.
const (
	mostDoubtful = 10
	doubtful     = 0.3
)

// headOf is the comments at the head of a file of read recipes.
func headOf(all []FileRecipes, p *practical.Practical) string {
	var b strings.Builder
	b.WriteString("# Read from recipes: look it through, put it right, then plan it with plait plan.\n")
	if steps := mostDoubtfulOf(p); len(steps) > 0 {
		b.WriteString("# Look first at these steps:\n")
		for _, s := range steps {
			fmt.Fprintf(&b, "#   %s %s (%s)\n", s.ID, comment(s.Text), comment(strings.Join(s.Why, "; ")))
		}
	}
	heading := "# Not understood, and in no step:\n"
	for _, f := range all {
		for _, r := range f.Recipes.Recipes {
			for _, u := range r.Unread {
				fmt.Fprintf(&b, "%s#   %s: %s\n", heading, comment(f.File), comment(u))
				heading = ""
			}
		}
	}
	return b.String()
}

func mostDoubtfulOf(p *practical.Practical) (steps []practical.Step) {
	for _, d := range p.Dishes {
		for _, s := range d.Steps {
			if s.Doubt >= doubtful {
				steps = append(steps, s)
			}
		}
	}
	slices.SortStableFunc(steps, func(a, b practical.Step) int { return cmp.Compare(b.Doubt, a.Doubt) })
	return steps[:min(len(steps), mostDoubtful)]
}

// longestComment is the letters of a text that a comment shows.
const longestComment = 160

// comment is a text as part of a comment line: on one line, printable, not too long.
func comment(s string) string {
	s = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) || r == '\uFFFD' {
			return ' '
		}
		return r
	}, s)
	letters := []rune(strings.Join(strings.Fields(s), " "))
	if len(letters) > longestComment {
		return string(letters[:longestComment-3]) + "..."
	}
	return string(letters)
}

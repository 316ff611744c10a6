package app

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// ReadFile reads a practical file and the recipe files it names (beside it or
// below; never outside its folder). Every fault of all of them comes back
// together as practical.Faults, each with its file and line.
func (a *App) ReadFile(name string) (*practical.Practical, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, practical.Faults{cannotRead(name, err)}
	}
	data, err := readLimited(file)
	if err != nil {
		return nil, practical.Faults{cannotRead(name, err)}
	}
	folder, err := os.OpenRoot(filepath.Dir(name))
	if err != nil {
		return nil, practical.Faults{cannotRead(name, err)}
	}
	p, faults := a.read(folder.FS(), filepath.Base(name), data)
	for i := range faults {
		faults[i].File = filepath.Join(filepath.Dir(name), filepath.FromSlash(faults[i].File))
	}
	return p, errors.Join(faults.OrNil(), folder.Close())
}

// ReadFS is ReadFile within a file system, whose root is the folder that recipe
// files cannot be outside of.
func (a *App) ReadFS(fsys fs.FS, name string) (*practical.Practical, error) {
	data, err := readIn(fsys, name)
	if err != nil {
		return nil, practical.Faults{cannotRead(name, err)}
	}
	p, faults := a.read(fsys, name, data)
	return p, faults.OrNil()
}

// read reads a practical file's text; name is from the root of fsys.
func (a *App) read(fsys fs.FS, name string, data []byte) (*practical.Practical, practical.Faults) {
	read := practical.Read(name, data)
	if read.Practical == nil {
		return nil, read.Faults
	}
	var others practical.Faults // of the recipe files, at their own lines
	for i := range read.Practical.Dishes {
		inThis, inRecipe := a.readRecipe(fsys, name, read, i)
		read.Add(inThis)
		others = append(others, inRecipe...)
	}
	if len(read.Faults)+len(others) == 0 {
		read.Add(read.Practical.Validate()) // what the recipes brought in
	}
	if faults := append(read.Faults, others...); len(faults) > 0 {
		return nil, faults
	}
	return read.Practical, nil
}

// readRecipe reads the recipe file that a dish names, if it names one. What the
// practical file says of the dish stands above what the recipe says. Faults are
// either in the practical file or in the recipe's.
func (a *App) readRecipe(fsys fs.FS, name string, in *practical.Reading, i int) (inThis, inRecipe practical.Faults) {
	dish := &in.Practical.Dishes[i]
	field := fmt.Sprintf("dishes[%d].recipe", i)
	faulty := slices.ContainsFunc(in.Faults, func(f practical.Fault) bool { return f.Field == field })
	if dish.Recipe == "" || faulty {
		return nil, nil
	}
	file := path.Join(path.Dir(name), filepath.ToSlash(dish.Recipe))
	data, err := readIn(fsys, file)
	if err != nil {
		f := cannotRead("", err)
		f.Field, f.Message = field, fmt.Sprintf("%q: %s", dish.Recipe, f.Message)
		return practical.Faults{f}, nil
	}
	read, fault := pick(recipe.Read(string(data)), dish.Name)
	if fault != nil {
		fault.File, fault.Field = file, field
		return nil, practical.Faults{*fault}
	}
	for _, text := range read.Unread {
		a.log().Warn("not understood", "file", file, "text", text)
	}
	fill(dish, read)
	dish.Recipe, dish.Text = "", string(data)
	return nil, nil
}

// pick is the recipe that a dish means: the only one, or the one of its name.
func pick(found []recipe.Recipe, name string) (recipe.Recipe, *practical.Fault) {
	var titles []string
	for _, r := range found {
		if len(found) == 1 || strings.EqualFold(strings.TrimSpace(r.Title), strings.TrimSpace(name)) {
			return r, unusable(r)
		}
		titles = append(titles, r.Title)
	}
	return recipe.Recipe{}, &practical.Fault{
		Code: practical.Invalid, Message: fmt.Sprintf("the file holds %d recipes, and none is called %q", len(found), name),
		Hint: "name the dish as one of them: " + strings.Join(titles, ", "),
	}
}

func unusable(r recipe.Recipe) *practical.Fault {
	if len(r.Steps) > 0 {
		return nil
	}
	message := "no method was found in this recipe"
	if len(r.Unread) > 0 {
		message = r.Unread[0]
	}
	return &practical.Fault{Code: practical.Invalid, Line: 1, Message: message, Hint: "write the method in sentences after the ingredients"}
}

// fill takes from the recipe what the practical file left out.
func fill(dish *practical.Dish, r recipe.Recipe) {
	read := r.Dish(dish.Letter)
	if dish.Name == "" {
		dish.Name = read.Name
	}
	if dish.Portions == 0 {
		dish.Portions = read.Portions
	}
	if len(dish.Ingredients) == 0 {
		dish.Ingredients = read.Ingredients
	}
	if len(dish.Steps) == 0 {
		dish.Steps = read.Steps
	}
	if dish.Serve == (practical.Serve{Heat: practical.AsIs, Minutes: 5}) || dish.Serve == (practical.Serve{}) {
		dish.Serve = read.Serve
	}
	dish.Allergens = union(dish.Allergens, read.Allergens)
}

// Import keeps the practical of a practical file's text as a new practical.
// Every fault comes back as practical.Faults, and nothing is kept then. Recipe
// files cannot be read from here and are faults.
func (a *App) Import(ctx context.Context, name string, data []byte) (Record, error) {
	p, faults := practical.Parse(name, data)
	if len(faults) > 0 {
		return Record{}, faults
	}
	for i, d := range p.Dishes {
		if d.Recipe != "" {
			faults = append(faults, practical.Fault{
				File: name, Code: practical.Invalid, Field: fmt.Sprintf("dishes[%d].recipe", i),
				Message: fmt.Sprintf("the recipe file %q did not come with this file", d.Recipe),
				Hint:    "take this line out, and paste the recipe's text into the dish instead",
			})
		}
	}
	if len(faults) > 0 {
		return Record{}, faults
	}
	return a.Store.Create(ctx, p, "bring in "+name, a.now())
}

// Export is the practical as a practical file.
func (a *App) Export(ctx context.Context, id string) (Document, error) {
	r, err := a.Store.Load(ctx, id)
	if err != nil {
		return Document{}, err
	}
	data, err := practical.Write(r.Practical)
	if err != nil {
		return Document{}, err
	}
	return Document{Name: fileName(r.Practical.Title) + ".yaml", MediaType: "application/yaml", Data: data}, nil
}

func readIn(fsys fs.FS, name string) ([]byte, error) {
	f, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	return readLimited(f)
}

// readLimited reads and closes a file.
func readLimited(f io.ReadCloser) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(f, mostText+1))
	if err = errors.Join(err, f.Close()); err != nil {
		return nil, err
	}
	if len(data) > mostText {
		return nil, errTooLarge
	}
	return data, nil
}

var errTooLarge = fmt.Errorf("it is larger than %d bytes", mostText)

func cannotRead(name string, err error) practical.Fault {
	f := practical.Fault{File: name, Code: practical.Invalid, Message: "this file cannot be read: " + err.Error(), Hint: "check the file"}
	var at *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		f.Code, f.Message, f.Hint = practical.NotFound, "there is no such file", "check the name; it is looked for beside the practical file"
	case errors.Is(err, errTooLarge):
		f.Code, f.Hint = practical.TooLarge, "a recipe is some pages of text; give the text alone"
	case errors.Is(err, fs.ErrInvalid), strings.Contains(err.Error(), "escapes"):
		f.Message, f.Hint = "this file is outside the folder of the practical file", "copy it beside the practical file"
	case errors.As(err, &at):
		f.Message = "this file cannot be read: " + at.Err.Error()
	}
	return f
}

func inFile(name string, faults practical.Faults) practical.Faults {
	for i := range faults {
		if faults[i].File == "" {
			faults[i].File = name
		}
	}
	return faults
}

// fileName is a title as a file's name: letters and digits, with hyphens between.
func fileName(title string) string {
	words := strings.FieldsFunc(strings.ToLower(title), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	})
	name := strings.Join(words, "-")
	if name == "" {
		return "plan"
	}
	return name[:min(len(name), 60)]
}

// InFile names the file in faults that name none, for the command line.
func InFile(name string, err error) error {
	var faults practical.Faults
	if errors.As(err, &faults) {
		return inFile(name, faults)
	}
	return err
}

package app

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"plait.example/internal/practical"
)

// ReadFile reads a practical file and the recipe files it names (beside it or
// below; never outside its folder). Every fault of all of them comes back
// together as practical.Faults, each with its file and line.
func (a *App) ReadFile(name string) (*practical.Practical, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, practical.Faults{cannotRead(name, err)}
	}
	data, err := readLimited(file, mostText)
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
	data, err := readIn(fsys, name, mostText)
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
	named := map[int]*recipeFile{} // by the dish's index
	var others practical.Faults    // at lines of the recipe files
	for i := range read.Practical.Dishes {
		file, inThis, inRecipe := a.readRecipe(fsys, name, read, i)
		named[i] = file
		read.Add(inThis)
		others = append(others, inRecipe...)
	}
	if len(read.Faults)+len(others) == 0 {
		for _, f := range read.Practical.Validate() { // what the recipes brought in
			if at, found := recipeFault(f, read.Practical, named); found {
				others = append(others, at)
			} else {
				read.Add(practical.Faults{f})
			}
		}
	}
	if faults := append(read.Faults, others...); len(faults) > 0 {
		return nil, faults
	}
	return read.Practical, nil
}

// ReadRecipesFile reads the recipes of a file on disk, as ReadRecipes does. A file
// that cannot be opened is a practical.Fault too.
func (a *App) ReadRecipesFile(name string) (Recipes, error) {
	file, err := os.Open(name)
	if err != nil {
		return Recipes{}, cannotOpen(name, err)
	}
	data, err := readLimited(file, MostFile)
	if err != nil {
		return Recipes{}, cannotOpen(name, err)
	}
	return a.ReadRecipes(name, data)
}

func cannotOpen(name string, err error) practical.Fault {
	f := cannotRead(name, err)
	if f.Code == practical.NotFound {
		f.Hint = "check the name"
	}
	return f
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

func readIn(fsys fs.FS, name string, most int) ([]byte, error) {
	f, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	return readLimited(f, most)
}

// readLimited reads and closes a file of at most so many bytes.
func readLimited(f io.ReadCloser, most int) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(f, int64(most)+1))
	if err = errors.Join(err, f.Close()); err != nil {
		return nil, err
	}
	if len(data) > most {
		return nil, fmt.Errorf("%w than %d bytes", errTooLarge, most)
	}
	return data, nil
}

var errTooLarge = errors.New("it is larger")

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

// InFile names the file in faults that name none, for the command line.
func InFile(name string, err error) error {
	var faults practical.Faults
	if errors.As(err, &faults) {
		return inFile(name, faults)
	}
	return err
}

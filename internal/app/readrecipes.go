package app

import (
	"context"
	"errors"
	"fmt"

	"plait.example/internal/format"
	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// MostFile is the largest file of recipes that is read, in bytes. Most of a
// document that is so large are its pictures.
const MostFile = 20 << 20

// Recipes is what was read of a file: its text, and the recipes in it, whose
// sources are bytes of that text.
type Recipes = recipe.Reading

// ReadRecipes reads the recipes of a file of any kind that people bring: plain
// text, Word, a saved web page, PDF. It goes by what is in the file; name is for
// messages only. A file that cannot be read is a practical.Fault with Code
// Invalid or TooLarge. A file that can be read always has at least one recipe:
// where none was found, it has no steps and its Unread says so.
func (a *App) ReadRecipes(name string, data []byte) (Recipes, error) {
	document, err := document(name, data)
	if err != nil {
		return Recipes{}, err
	}
	return recipe.ReadDocument(document), nil
}

// document reads a file of any kind as text, with what a web page says of its recipes.
func document(name string, data []byte) (format.Document, error) {
	if len(data) > MostFile {
		return format.Document{}, practical.Fault{
			File: name, Code: practical.TooLarge, Message: fmt.Sprintf("the file is larger than %d bytes; nothing of it was read", MostFile),
			Hint: "copy the recipe's text into a text file",
		}
	}
	read, err := format.Read(name, data)
	if err != nil {
		if inner := errors.Unwrap(err); inner != nil {
			err = inner // without the name, which the fault has
		}
		return format.Document{}, practical.Fault{File: name, Code: practical.Invalid, Message: err.Error()} // it says what would be right
	}
	return read, nil
}

// AddFile adds the dishes of a file of recipes, as AddDish does of a pasted
// text. A file that cannot be read is a practical.Fault, and nothing is changed.
func (a *App) AddFile(ctx context.Context, id string, version int, name string, data []byte) (Record, practical.Faults, error) {
	read, err := a.ReadOwn(ctx, name, data)
	if err == nil {
		err = tooLong(read.Text)
	}
	if err != nil {
		return Record{}, nil, err
	}
	return a.Change(ctx, id, version, "add the recipe of "+name, func(p *practical.Practical) practical.Faults {
		return addDishes(p, read)
	})
}

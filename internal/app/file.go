package app

import (
	"context"
	"io/fs"

	"plait.example/internal/practical"
)

// ReadFile reads a practical file and the recipe files it names (beside it or
// below; never outside its folder). Every fault of all of them comes back
// together as practical.Faults, each with its file and line.
func (a *App) ReadFile(path string) (*practical.Practical, error) { return nil, nil }

// ReadFS is ReadFile within a file system.
func (a *App) ReadFS(fsys fs.FS, name string) (*practical.Practical, error) { return nil, nil }

// Import keeps the practical of a practical file's text as a new practical.
// Every fault comes back as practical.Faults, and nothing is kept then. Recipe
// files cannot be read from here and are faults.
func (a *App) Import(ctx context.Context, name string, data []byte) (Record, error) {
	return Record{}, nil
}

// Export is the practical as a practical file.
func (a *App) Export(ctx context.Context, id string) (Document, error) { return Document{}, nil }

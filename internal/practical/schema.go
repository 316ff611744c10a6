package practical

import (
	_ "embed"
	"slices"
)

//go:embed practical.schema.json
var schema []byte

// Schema is the JSON Schema (draft 2020-12) of the practical file.
func Schema() []byte { return slices.Clone(schema) }

// Package examples carries the example practical files, for the demonstration
// and for tests. It owns no behaviour and knows none of the rooms.
package examples

import "embed"

// Files are the practical files, by name, and the folder of recipes that they name.
//
//go:embed *.yaml recipes
var Files embed.FS

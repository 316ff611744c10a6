package colour_test

import (
	"fmt"

	"plait.example/internal/colour"
)

func ExampleInk() {
	for i := range 4 {
		ink := colour.Ink(i)
		fmt.Println(ink.Name, ink.Shape, ink.Pattern.Name, ink.Line)
	}
	// Output:
	// navy circle plain #003382
	// amber square line #BD7A01
	// teal triangle dots #257D71
	// crimson diamond bars #A9003F
}

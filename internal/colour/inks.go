package colour

// DishInk is how a dish looks, wherever it is drawn. Colour never stands alone: the shape and the
// pattern of the line tell the dishes apart without it.
type DishInk struct {
	Name    string // a plain word, such as "navy"
	Line    string // strands and filled shapes; at least 3:1 on Ground and on white
	On      string // a letter on Line; at least 4.5:1
	Text    string // words; at least 4.5:1 on Tint, on Ground and on white
	Tint    string // a pale ground of the same hue
	Shape   Shape
	Pattern Pattern
}

// Shape is the outline of a dish's mark.
type Shape string

// The shapes.
const (
	Circle   Shape = "circle"
	Square   Shape = "square"
	Triangle Shape = "triangle"
	Diamond  Shape = "diamond"
	Hexagon  Shape = "hexagon"
	Shield   Shape = "shield" // flat on top, a point below
	Cross    Shape = "cross"
	Dome     Shape = "dome" // round on top, flat below
)

// Pattern is the mark along a strand: a whole line of the dish's ink with a
// pale core, so that a strand stays whole where strands cross.
type Pattern struct {
	Name  string
	Width float64   // of the core, as a share of the line's width; 0: no core
	Dash  []float64 // of the core, stroke and gap by turns, in widths of the line; empty: unbroken
	Round bool      // strokes of the core end round
}

// Grounds and neutral inks. Ground is the darkest ground that a strand crosses.
const (
	Paper   = "#FFFFFF"
	Ground  = "#F4EEE1"
	Dark    = "#1F1D1A" // words that belong to no dish
	Soft    = "#5E5A52" // words of less weight, and wash-ups; at least 4.5:1 on Ground
	Hair    = "#D9D2C3" // guide lines; decoration only
	Warning = "#8F0000" // a clash; it never stands without a sign and words
)

// inks were chosen by choose.go and are held to their goals by inks_test.go.
// The first four differ most.
var inks = [...]DishInk{
	{"navy", "#003382", Paper, "#003382", "#F1F1FF", Circle, Pattern{Name: "plain"}},
	{"amber", "#BD7A01", Dark, "#965F00", "#FEF0E2", Square, Pattern{Name: "line", Width: 0.22}},
	{"teal", "#257D71", Paper, "#1D776B", "#E6F5F2", Triangle, Pattern{Name: "dots", Width: 0.42, Dash: []float64{0, 1.7}, Round: true}},
	{"crimson", "#A9003F", Paper, "#A9003F", "#FFECEE", Diamond, Pattern{Name: "bars", Width: 1, Dash: []float64{0.3, 2.6}}},
	{"plum", "#451D44", Paper, "#451D44", "#FAEFF9", Hexagon, Pattern{Name: "dashes", Width: 0.36, Dash: []float64{1.6, 1.2}}},
	{"olive", "#646800", Paper, "#646800", "#F5F3E1", Shield, Pattern{Name: "rungs", Width: 1, Dash: []float64{0.2, 0.8}}},
	{"brown", "#6F3313", Paper, "#6F3313", "#FFEFE6", Cross, Pattern{Name: "dash and dot", Width: 0.42, Dash: []float64{2, 1.2, 0, 1.2}, Round: true}},
	{"sky", "#1A86B6", "#000000", "#08729C", "#E7F4FF", Dome, Pattern{Name: "long dashes", Width: 0.3, Dash: []float64{3.6, 1.4}}},
}

// Inks is how many inks there are.
const Inks = len(inks)

// Ink is the ink of dish i, counted from 0; a negative i counts as 0. From the ninth dish on the
// colours come again with other shapes, so that colour and shape together stay
// unlike up to the 64th.
func Ink(i int) DishInk {
	i = max(i, 0)
	ink := inks[i%Inks]
	ink.Shape = inks[(i+i/Inks)%Inks].Shape
	return ink
}

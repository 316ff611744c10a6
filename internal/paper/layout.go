package paper

// part is what a column of the table shows.
type part int

// The parts, in the order of the columns.
const (
	partTime part = iota
	partDish
	partWhat
	partMinutes
	partKit    // setting and small kit
	partPoints // check and safety together
	partCheck
	partSafety
)

// column is one column of the table.
type column struct {
	part  part
	head  string
	width float64 // millimetres of A4
}

// layout is how a sheet is set: the columns, and type sizes in points.
type layout struct {
	landscape bool
	columns   []column
	time      float64 // clock times
	text      float64 // what to do
	small     float64 // everything beside it
}

// The layouts. Widths add up to what A4 leaves between margins of 10 mm: 190
// upright, 277 across.
var layouts = map[Sheet]layout{
	{}: {
		time: 17, text: 12.5, small: 10.5,
		columns: []column{
			{partTime, "Time", 20},
			{partDish, "Dish", 20},
			{partWhat, "What to do", 69},
			{partMinutes, "Min", 11},
			{partKit, "Setting and kit", 30},
			{partPoints, "Check and safety", 40},
		},
	},
	{Landscape: true}: {
		landscape: true, time: 18, text: 13, small: 11,
		columns: []column{
			{partTime, "Time", 20},
			{partDish, "Dish", 17},
			{partWhat, "What to do", 92},
			{partMinutes, "Min", 12},
			{partKit, "Setting and kit", 44},
			{partCheck, "Check", 44},
			{partSafety, "Safety", 48},
		},
	},
	{LargeType: true}: {
		time: 24, text: 18, small: 15.5,
		columns: []column{
			{partTime, "Time", 26},
			{partDish, "Dish", 23},
			{partWhat, "What to do", 125},
			{partMinutes, "Min", 16},
		},
	},
	{Landscape: true, LargeType: true}: {
		landscape: true, time: 24, text: 18, small: 15.5,
		columns: []column{
			{partTime, "Time", 26},
			{partDish, "Dish", 23},
			{partWhat, "What to do", 132},
			{partMinutes, "Min", 16},
			{partPoints, "Check and safety", 80},
		},
	},
}

// layoutOf is the layout of a sheet.
func layoutOf(s Sheet) layout {
	return layouts[Sheet{Landscape: s.Landscape, LargeType: s.LargeType}]
}

// has says whether the layout has a column for that part.
func (l layout) has(p part) bool {
	for _, c := range l.columns {
		if c.part == p {
			return true
		}
	}
	return false
}

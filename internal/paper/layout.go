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
	strip     float64 // millimetres to the left of the table for the plait; 0: it has pages of its own
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
			{partDish, "Dish", 23},
			{partWhat, "What to do", 67},
			{partMinutes, "Min", 11},
			{partKit, "Setting and kit", 30},
			{partPoints, "Check and safety", 39},
		},
	},
	{Landscape: true}: {
		landscape: true, strip: 80, time: 17, text: 12.5, small: 10.5,
		columns: []column{
			{partTime, "Time", 20},
			{partDish, "Dish", 23},
			{partWhat, "What to do", 70},
			{partMinutes, "Min", 11},
			{partKit, "Setting and kit", 31},
			{partPoints, "Check and safety", 42},
		},
	},
	{LargeType: true}: {
		time: 24, text: 18, small: 15.5,
		columns: []column{
			{partTime, "Time", 26},
			{partDish, "Dish", 31},
			{partWhat, "What to do", 117},
			{partMinutes, "Min", 16},
		},
	},
	{Landscape: true, LargeType: true}: {
		landscape: true, time: 24, text: 18, small: 15.5,
		columns: []column{
			{partTime, "Time", 26},
			{partDish, "Dish", 31},
			{partWhat, "What to do", 126},
			{partMinutes, "Min", 16},
			{partPoints, "Check and safety", 78},
		},
	},
}

// withoutStrip gives the strip's room to the columns of words, check and
// safety apart.
func (l layout) withoutStrip() layout {
	if l.strip == 0 {
		return l
	}
	l.strip = 0
	l.columns = []column{
		{partTime, "Time", 20},
		{partDish, "Dish", 23},
		{partWhat, "What to do", 85},
		{partMinutes, "Min", 11},
		{partKit, "Setting and kit", 42},
		{partCheck, "Check", 46},
		{partSafety, "Safety", 50},
	}
	return l
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

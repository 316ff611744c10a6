package pdf

import (
	"fmt"
	"math"
	"slices"
)

// matrix is [a b 0; c d 0; e f 1] (8.3.4).
type matrix [6]float64

var identity = matrix{1, 0, 0, 1, 0, 0}

// times is what comes of doing m and then n.
func (m matrix) times(n matrix) matrix {
	return matrix{
		m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3],
		m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3],
		m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5],
	}
}

// state is the part of the graphics state that places text (8.4, 9.3).
type state struct {
	ctm                       matrix
	font                      *font
	size, chars, words, scale float64
	leading, rise             float64
	ink                       string // RRGGBB of fills and letters
}

// piece is a string as it was drawn.
type piece struct {
	text, ink               string
	left, right, base, size float64
}

// interpreter runs page descriptions for the text that they draw.
type interpreter struct {
	file     *file
	fonts    map[any]*font
	state    state
	stack    []state
	text     matrix // of the next glyph
	start    matrix // of the line
	pieces   []piece
	painter  painter
	steps    int
	glyphs   int
	unknown  int
	pictures int
	drawing  map[*stream]bool // the forms that are being drawn: none draws itself
	err      error
	box      [4]float64 // left, bottom, right, top of the page as it is turned
}

// maxForms is how deep forms draw forms.
const maxForms = 12

func (in *interpreter) page(p page) Page {
	in.pieces = nil
	in.painter = painter{}
	in.stack = nil
	in.state = state{ctm: turned(int(in.file.number(p.dict["Rotate"]))), scale: 1}
	in.box = in.turnedBox(p.box, in.state.ctm)
	var data []byte
	contents := in.file.resolve(p.dict["Contents"])
	if s, is := contents.(*stream); is {
		data = in.file.unpack(s)
	}
	for _, o := range in.file.array(contents) {
		if s, is := in.file.resolve(o).(*stream); is && len(data) <= MaxUnpacked {
			data = append(append(data, '\n'), in.file.unpack(s)...)
		}
	}
	in.run(data, p.resources, 0)
	tables, rest := in.painter.tables(slices.Clone(in.pieces))
	if len(tables) == 0 {
		tables, rest = levelTables(rest, in.painter.bands(rest))
	}
	page := Page{Lines: layout(in.pieces), tables: tables}
	if page.between = page.Lines; len(tables) > 0 {
		page.between = layout(rest)
	}
	return page
}

// turnedBox is where the page shows what is drawn; without a box, everywhere.
func (in *interpreter) turnedBox(box array, turn matrix) [4]float64 {
	if len(box) != 4 {
		return [4]float64{-1e6, -1e6, 1e6, 1e6}
	}
	at := func(x, y any) (float64, float64) {
		m := matrix{1, 0, 0, 1, in.file.number(x), in.file.number(y)}.times(turn)
		return m[4], m[5]
	}
	x1, y1 := at(box[0], box[1])
	x2, y2 := at(box[2], box[3])
	return [4]float64{min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)}
}

// shows says whether a letter at a point is on the page.
func (in *interpreter) shows(x, y float64) bool {
	return x >= in.box[0]-1 && y >= in.box[1]-1 && x <= in.box[2]+1 && y <= in.box[3]+1
}

// turned is the page's rotation, clockwise by quarters.
func turned(degrees int) matrix {
	switch ((degrees % 360) + 360) % 360 {
	case 90:
		return matrix{0, -1, 1, 0, 0, 0}
	case 180:
		return matrix{-1, 0, 0, -1, 0, 0}
	case 270:
		return matrix{0, 1, -1, 0, 0, 0}
	}
	return identity
}

func (in *interpreter) run(data []byte, resources dict, depth int) {
	l := &lexer{data: data}
	var args []any
	for in.err == nil {
		before := l.steps
		o, ok := l.next()
		if !ok {
			return
		}
		if in.steps += l.steps - before; in.steps > maxSteps || in.glyphs > MaxGlyphs || in.file.unpacked > MaxUnpacked {
			in.err = fmt.Errorf("%w: its pages are drawn in more than %d steps, characters or bytes; print the pages that matter alone to a new PDF", ErrTooLarge, MaxGlyphs)
			return
		}
		op, is := o.(keyword)
		if !is {
			if len(args) < 64 {
				args = append(args, o)
			}
			continue
		}
		switch op {
		case "BI":
			in.pictures++
			inline(l)
		case "Do":
			in.draw(args, resources, depth)
		case "Tf":
			in.setFont(args, resources)
		default:
			in.operate(op, args)
		}
		args = args[:0]
	}
}

// inline passes over a picture in the page's description: up to EI between white space.
func inline(l *lexer) {
	for i := l.at; i+3 < len(l.data); i++ {
		if space(l.data[i]) && l.data[i+1] == 'E' && l.data[i+2] == 'I' && space(l.data[i+3]) {
			l.at = i + 3
			return
		}
	}
	l.at = len(l.data)
}

// draw runs a form, or counts a picture.
func (in *interpreter) draw(args []any, resources dict, depth int) {
	if len(args) == 0 {
		return
	}
	key, _ := args[0].(name)
	s, is := in.file.resolve(in.file.dict(resources["XObject"])[key]).(*stream)
	if !is {
		return
	}
	if in.file.name(s.dict["Subtype"]) == "Image" {
		in.pictures++
		return
	}
	if depth >= maxForms || in.drawing[s] {
		return
	}
	in.drawing[s] = true
	defer delete(in.drawing, s)
	saved, stack := in.state, in.stack
	in.stack = nil
	if m, ok := in.matrix(in.file.array(s.dict["Matrix"])); ok {
		in.state.ctm = m.times(in.state.ctm)
	}
	if own := in.file.dict(s.dict["Resources"]); own != nil {
		resources = own
	}
	in.run(in.file.unpack(s), resources, depth+1)
	in.state, in.stack = saved, stack
}

func (in *interpreter) matrix(list []any) (m matrix, ok bool) {
	if len(list) < 6 {
		return m, false
	}
	for i := range m {
		m[i] = in.file.number(list[i])
	}
	return m, true
}

func (in *interpreter) setFont(args []any, resources dict) {
	if len(args) < 2 {
		return
	}
	key, _ := args[0].(name)
	in.state.size = in.file.number(args[1])
	o := in.file.dict(resources["Font"])[key]
	var id any = key
	if r, is := o.(ref); is {
		id = r
	} else if o == nil {
		in.state.font = nil
		return
	} else { // a font written into the resources is read anew: rare
		in.state.font = in.file.font(o)
		return
	}
	if in.fonts[id] == nil {
		in.fonts[id] = in.file.font(o)
	}
	in.state.font = in.fonts[id]
}

// number is the i-th operand counted from the last, 0 when it is not there.
func (in *interpreter) number(args []any, fromLast int) float64 {
	if i := len(args) - 1 - fromLast; i >= 0 {
		return in.file.number(args[i])
	}
	return 0
}

// operate runs an operator of Annex A that places or shows text.
func (in *interpreter) operate(op keyword, args []any) {
	s := &in.state
	switch op {
	case "q":
		if len(in.stack) < 500 {
			in.stack = append(in.stack, *s)
		}
	case "Q":
		if n := len(in.stack); n > 0 {
			*s, in.stack = in.stack[n-1], in.stack[:n-1]
		}
	case "cm":
		if m, ok := in.matrix(args); ok {
			s.ctm = m.times(s.ctm)
		}
	case "BT":
		in.text, in.start = identity, identity
	case "Tm":
		if m, ok := in.matrix(args); ok {
			in.text, in.start = m, m
		}
	case "Td":
		in.move(in.number(args, 1), in.number(args, 0))
	case "TD":
		s.leading = -in.number(args, 0)
		in.move(in.number(args, 1), in.number(args, 0))
	case "T*":
		in.move(0, -s.leading)
	case "Tc":
		s.chars = in.number(args, 0)
	case "Tw":
		s.words = in.number(args, 0)
	case "Tz":
		s.scale = in.number(args, 0) / 100
	case "TL":
		s.leading = in.number(args, 0)
	case "Ts":
		s.rise = in.number(args, 0)
	case "Tj", "TJ", "'", "\"":
		in.showLine(op, args)
	default:
		in.paint(op, args)
	}
}

func (in *interpreter) move(x, y float64) {
	in.start = matrix{1, 0, 0, 1, x, y}.times(in.start)
	in.text = in.start
}

// showLine shows a string or, for TJ, strings with shifts between them.
func (in *interpreter) showLine(op keyword, args []any) {
	if op == "\"" {
		in.state.words, in.state.chars = in.number(args, 2), in.number(args, 1)
	}
	if op == "'" || op == "\"" {
		in.move(0, -in.state.leading)
	}
	if len(args) == 0 {
		return
	}
	switch o := args[len(args)-1].(type) {
	case string:
		in.show(o)
	case array:
		for _, e := range o {
			switch e := e.(type) {
			case string:
				in.show(e)
			case float64:
				in.advance(-e / 1000 * in.state.size * in.state.scale)
			}
		}
	}
}

func (in *interpreter) advance(x float64) { in.text = matrix{1, 0, 0, 1, x, 0}.times(in.text) }

// show draws a string. Its letters become pieces, each as long as no space stands in it.
func (in *interpreter) show(s string) {
	if in.state.font == nil {
		return
	}
	g := &in.state
	for _, c := range g.font.glyphs(s) {
		in.glyphs++
		if c.text == unknown {
			in.unknown++
		}
		m := matrix{g.size * g.scale, 0, 0, g.size, 0, g.rise}.times(in.text).times(g.ctm)
		wide := c.width*g.size*g.scale + g.chars*g.scale
		if c.space {
			wide += g.words * g.scale
		}
		drawn := c.width * m[0]
		if size := math.Hypot(m[2], m[3]); c.text != "" && sane(m, size) && in.shows(m[4], m[5]) && math.Abs(m[1]) <= math.Abs(m[0])+1e-9 {
			in.pieces = append(in.pieces, piece{c.text, g.ink, math.Min(m[4], m[4]+drawn), math.Max(m[4], m[4]+drawn), m[5], size})
		}
		in.advance(wide)
	}
}

// sane keeps numbers from beyond any page out of the layout.
func sane(m matrix, size float64) bool {
	for _, v := range m {
		if math.IsNaN(v) || math.Abs(v) > 1e6 {
			return false
		}
	}
	return size > 0.1
}

// verdict says why a document without text has none.
func (in *interpreter) verdict() error {
	switch known := in.glyphs - in.unknown; {
	case in.glyphs == 0 && in.pictures > 0:
		return fmt.Errorf("%w: it holds only pictures, as scans and photos do; type the text, or read it with text recognition first", ErrNoText)
	case in.glyphs == 0:
		return fmt.Errorf("%w: its pages are empty or drawn as shapes; copy the text into a text file", ErrNoText)
	case known < in.unknown:
		return fmt.Errorf("%w: its fonts do not say which letters they draw; copy the text into a text file", ErrNoText)
	}
	return nil
}

// Package picture draws a plan as a plait: time runs down the page, places
// stand across it, each dish is a strand that is in the hands' lane while someone works on it and
// in another lane while it waits. It owns the drawing for screen, paper and
// wall, and the words that say the same. It must not know how plans are found,
// kept or served, and it reads nothing but the plan.
package picture

import "plait.example/internal/timeplan"

// Options says how a plait is drawn. Lengths are CSS pixels.
type Options struct {
	Width   int       // 0 means 760; held to 280 to 4000
	Rows    bool      // the rows' words stand beside the strands, where Width leaves room (from 560)
	Grey    bool      // no colour: what a grey photocopier makes of it
	Large   bool      // letters and marks a third larger
	Print   bool      // white paper, and no tint where toner would be wasted
	Bare    bool      // no title and no keys: the page around it has them
	Ground  string    // #RRGGBB of the page; empty, or darker than colour.Ground: white
	Heights []float64 // least height of each row of the plan, so that a page's table can set the clock; may be shorter than the plan
	Breaks  []int     // rows before which a page begins: no tag stands across their tops where there is another place
	ID      string    // told apart when a page holds several; letters, digits and hyphens count
}

// Plait is the plan as one standalone SVG: no script, no style sheet, nothing from
// elsewhere, all text escaped, the same bytes for the same plan and options.
// It draws what can be drawn of any plan, however wrong, and never fails.
func Plait(p *timeplan.Plan, o Options) []byte { return Draw(p, o).SVG(o) }

// Draw is the plan as marks on a sheet, for writers of formats other than SVG.
func Draw(p *timeplan.Plan, o Options) *Drawing {
	f := newFrame(p, o)
	d := &Drawing{Width: f.width, Height: f.height, Title: title(p), Desc: description(p)}
	f.drawGround(d)
	f.drawOvens(d)
	f.drawHands(d)
	f.drawWatches(d)
	f.drawHeads(d)
	f.drawLines(d)
	f.drawStrands(d)
	f.drawLineWords(d)
	f.drawNodes(d)
	f.drawTags(d)
	f.drawClashes(d)
	f.drawRows(d)
	if !o.Bare {
		f.drawKey(d)
		f.drawSigns(d)
	}
	return d
}

// RowBox is where a row stands on the drawing's clock.
type RowBox struct {
	Top    float64 // the row begins
	Middle float64 // its mark, its clock time and the first line of its words
	Bottom float64 // the next row begins
}

// LaneBox is where a place's lane stands.
type LaneBox struct {
	Name        string
	Left, Right float64
}

// Geometry is where everything stands, so that a page can align with the plait.
type Geometry struct {
	Width, Height float64
	Rows          []RowBox // as Plan.Rows
	Lanes         []LaneBox
}

// Layout is the geometry that Plait draws with.
func Layout(p *timeplan.Plan, o Options) Geometry {
	f := newFrame(p, o)
	g := Geometry{Width: f.width, Height: f.height, Rows: f.rows}
	for _, l := range f.lanes {
		g.Lanes = append(g.Lanes, LaneBox{l.name, l.left, l.right})
	}
	return g
}

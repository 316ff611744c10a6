package picture

import (
	"math"
	"strings"
	"testing"

	"plait.example/internal/fonts"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

func TestSubLanesNeverOverlap(t *testing.T) {
	plans := []*timeplan.Plan{supper(), timeplantest.Sample(), timeplantest.Pair()}
	for seed := range uint64(200) {
		plans = append(plans, randomPlan(seed))
	}
	compared := 0
	for n, p := range plans {
		f := newFrame(p, Options{Width: 900})
		for _, l := range f.lanes {
			for i, a := range l.pieces {
				if a.x < l.left || a.x > l.right {
					t.Errorf("plan %d: a strand of the %s at %.1f is outside %.1f to %.1f", n, l.name, a.x, l.left, l.right)
				}
				for _, b := range l.pieces[:i] {
					if a.sub != b.sub {
						if math.Abs(a.x-b.x) < 0.05 {
							t.Errorf("plan %d: two sub-lanes of the %s at the same place", n, l.name)
						}
						continue
					}
					compared++
					if a.from <= b.to && b.from <= a.to {
						t.Errorf("plan %d: %s sub-lane %d holds %d to %d and %d to %d", n, l.name, a.sub, a.from, a.to, b.from, b.to)
					}
				}
			}
		}
	}
	if compared < 50 {
		t.Errorf("only %d pairs compared", compared)
	}
}

func TestLayoutClockNeverFalls(t *testing.T) {
	for seed := range uint64(200) {
		p := randomPlan(seed)
		g := Layout(p, Options{Width: 800, Rows: true})
		if len(g.Rows) != len(p.Rows) {
			t.Fatalf("plan %d: %d rows, want %d", seed, len(g.Rows), len(p.Rows))
		}
		last := 0.0
		for i, r := range g.Rows {
			if r.Top < last || r.Bottom < r.Top+rowHeight || r.Middle <= r.Top || r.Middle >= r.Bottom || r.Bottom > g.Height {
				t.Errorf("plan %d row %d: %+v after %.1f in %.1f", seed, i, r, last, g.Height)
			}
			last = r.Bottom
		}
		f := newFrame(p, Options{Width: 800, Rows: true})
		before := math.Inf(-1)
		for m := 0; m < 1600; m += 7 {
			y := f.yOf(m)
			if y < before {
				t.Fatalf("plan %d: %d is drawn above what is earlier", seed, m)
			}
			before = y
		}
	}
}

// A longer job is taller, yet ten times as long is not ten times as tall.
func TestRowHeightGrowsSlowly(t *testing.T) {
	height := func(minutes int) float64 {
		p := &timeplan.Plan{Rows: []timeplan.Row{{At: 600, Minutes: minutes}, {At: practical.TimeOfDay(600 + minutes), Minutes: 1}}}
		r := Layout(p, Options{}).Rows[0]
		return r.Bottom - r.Top
	}
	if height(1) < rowHeight || height(10) <= height(2) || height(40) <= height(10) || height(40) > 4*height(4) {
		t.Errorf("heights of 1, 2, 4, 10, 40 minutes: %.1f %.1f %.1f %.1f %.1f", height(1), height(2), height(4), height(10), height(40))
	}
}

func TestHeightsOfThePageAreObeyed(t *testing.T) {
	p := supper()
	want := []float64{90, 0, 61.5, math.Inf(1), math.NaN()}
	g := Layout(p, Options{Heights: want})
	for i, least := range []float64{90, 30, 61.5, 30, 30} {
		if got := g.Rows[i].Bottom - g.Rows[i].Top; got < least || got > 200 {
			t.Errorf("row %d is %.1f tall, want at least %.1f", i, got, least)
		}
	}
}

func TestNothingLeavesThePage(t *testing.T) {
	for name, o := range sheets {
		for _, p := range []*timeplan.Plan{supper(), timeplantest.Sample(), timeplantest.Pair(), timeplantest.TooMuch()} {
			d := Draw(p, o)
			for _, m := range d.Marks {
				if m.Kind == Figure {
					f := flatten(m.Path)
					if f.left < -0.1 || f.right > d.Width+0.1 || f.top < -0.1 || f.bottom > d.Height+0.1 {
						t.Errorf("%s, %s: a shape reaches %.1f,%.1f to %.1f,%.1f on %.0f by %.0f", name, p.Title, f.left, f.top, f.right, f.bottom, d.Width, d.Height)
					}
				}
				if m.Kind == Text && m.Turn == 0 {
					wide := textWidth(m.Text, m.Size, m.Bold)
					left := m.X
					switch m.Anchor {
					case Middle:
						left -= wide / 2
					case End:
						left -= wide
					}
					if left < -1 || left+wide > d.Width+1 {
						t.Errorf("%s, %s: %q reaches %.1f to %.1f of %.0f", name, p.Title, m.Text, left, left+wide, d.Width)
					}
				}
			}
		}
	}
}

// Tags hide strands if they must, never one another.
func TestTagsStandApart(t *testing.T) {
	for name, o := range sheets {
		for _, p := range []*timeplan.Plan{supper(), timeplantest.Sample(), timeplantest.Pair(), timeplantest.TooMuch()} {
			var tags []box4
			d := Draw(p, o)
			for i, m := range d.Marks {
				if m.Kind == Open && m.Class == "wait" {
					f := flatten(d.Marks[i+1].Path)
					tags = append(tags, box4{f.left, f.top, f.right, f.bottom})
				}
			}
			if len(tags) == 0 {
				t.Errorf("%s, %s: no tags", name, p.Title)
			}
			for i, a := range tags {
				for _, b := range tags[:i] {
					if a.overlap(b) > 0 {
						t.Errorf("%s, %s: tags at %+v and %+v overlap", name, p.Title, a, b)
					}
				}
			}
		}
	}
}

func TestTagsKeepClearOfPageBreaks(t *testing.T) {
	p := supper()
	for row := 1; row < len(p.Rows); row++ {
		o := Options{Width: 800, Breaks: []int{row, -1, 999}}
		cut := Layout(p, o).Rows[row].Top
		d := Draw(p, o)
		for i, m := range d.Marks {
			if m.Kind != Open || m.Class != "wait" {
				continue
			}
			f := flatten(d.Marks[i+1].Path)
			short := strings.Contains(m.Text, "caramel") // six minutes: there is no other place
			if f.top < cut && f.bottom > cut && !short {
				t.Errorf("a page that begins with row %d cuts the tag %q", row, m.Text)
			}
		}
	}
}

func TestLanesOnlyWhereUsed(t *testing.T) {
	var names []string
	for _, l := range Layout(supper(), Options{}).Lanes {
		names = append(names, l.Name)
	}
	if got, want := strings.Join(names, " "), "bench freezer fridge side hands hob oven served"; got != want {
		t.Errorf("lanes %q, want %q", got, want)
	}
	p := supper()
	p.Ovens[1].Oven, p.Waits[4].Oven = "top oven", "top oven"
	names = nil
	for _, l := range Layout(p, Options{}).Lanes {
		names = append(names, l.Name)
	}
	if got, want := strings.Join(names, " "), "bench freezer fridge side hands hob oven top oven served"; got != want {
		t.Errorf("lanes with two ovens %q, want %q", got, want)
	}
}

// The table of widths against the font's own advance widths.
func TestWidthsAreTheFonts(t *testing.T) {
	for r := firstLetter; r <= '~'; r++ {
		if got, want := regularWidths[r-firstLetter], fonts.Regular.Advance(r); got != want {
			t.Errorf("regular %q: %d, font %d", r, got, want)
		}
		if got, want := boldWidths[r-firstLetter], fonts.Bold.Advance(r); got != want {
			t.Errorf("bold %q: %d, font %d", r, got, want)
		}
	}
}

func TestOtherWidthsAreTheFonts(t *testing.T) {
	for r, w := range otherWidths {
		if regular, bold := fonts.Regular.Advance(r), fonts.Bold.Advance(r); w != [2]int{regular, bold} {
			t.Errorf("%q: %v, font %d and %d", r, w, regular, bold)
		}
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		in    string
		width float64
		most  int
		want  string
	}{
		{"", 100, 3, ""},
		{"one two", 1000, 3, "one two"},
		{"one two three", 36, 9, "one|two|three"},
		{"bake at 200 °C now", 58, 9, "bake at|200\u00a0°C|now"},
		{"fan 180 °C, gas 6.", 62, 9, "fan|180\u00a0°C,|gas\u00a06."},
		{"alpha beta gamma delta", 60, 2, "alpha|beta…"},
	} {
		if got := strings.Join(wrap(c.in, 14, false, c.width, c.most), "|"); got != c.want {
			t.Errorf("wrap(%q, %.0f, %d) = %q, want %q", c.in, c.width, c.most, got, c.want)
		}
	}
	for _, width := range []float64{0, 5, 20} {
		if got := strings.Join(wrap("extraordinary", 14, false, width, 100), ""); got != "extraordinary" {
			t.Errorf("a long word broken at %.0f becomes %q", width, got)
		}
	}
}

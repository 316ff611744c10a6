package picture

import (
	"math"
	"testing"
)

func line(points ...float64) *piece {
	var path []Move
	for i := 0; i+1 < len(points); i += 2 {
		path = append(path, lineTo(points[i], points[i+1]))
	}
	path[0].Op = 'M'
	return &piece{route: route{path: path, flat: flatten(path)}}
}

func TestCrossings(t *testing.T) {
	for _, c := range []struct {
		name string
		a, b *piece
		want int
	}{
		{"a plus sign", line(0, 50, 100, 50), line(50, 0, 50, 100), 1},
		{"side by side", line(0, 0, 0, 100), line(10, 0, 10, 100), 0},
		{"one along the other", line(0, 0, 0, 100), line(0, 0, 0, 100), 0},
		{"nested hooks", line(0, 0, 60, 0, 60, 90, 0, 90), line(0, 20, 30, 20, 30, 70, 0, 70), 0},
		{"a hook over a line, twice", line(0, 20, 60, 20, 60, 70, 0, 70), line(30, 0, 30, 90), 2},
		{"only near its end", line(0, 50, 50, 50), line(46, 0, 46, 100), 0},
	} {
		if got := crossings([]*piece{c.a, c.b}, 9); len(got) != c.want {
			t.Errorf("%s: %d crossings, want %d", c.name, len(got), c.want)
		}
	}
}

// Along a line that three others cross, it goes over and under by turns.
func TestCrossingsAlternate(t *testing.T) {
	pieces := []*piece{line(50, 0, 50, 400), line(0, 100, 100, 100), line(0, 200, 100, 200), line(0, 300, 100, 300)}
	got := crossings(pieces, 9)
	if len(got) != 3 {
		t.Fatalf("%d crossings, want 3", len(got))
	}
	if got[0].aOver == got[1].aOver || got[1].aOver == got[2].aOver {
		t.Errorf("over %t, %t, %t: want turns", got[0].aOver, got[1].aOver, got[2].aOver)
	}
	for i, c := range got {
		if want := 100 * float64(i+1); math.Abs(c.wayA-want) > 1e-6 || math.Abs(c.wayB-50) > 1e-6 {
			t.Errorf("crossing %d at %.1f and %.1f along, want %.1f and 50", i, c.wayA, c.wayB, want)
		}
	}
}

func TestPart(t *testing.T) {
	f := flatten([]Move{moveTo(0, 0), lineTo(10, 0), lineTo(10, 10)})
	part := f.part(5, 15)
	want := []Point{{5, 0}, {10, 0}, {10, 5}}
	if len(part) != len(want) {
		t.Fatalf("part has %d points, want %d", len(part), len(want))
	}
	for i, m := range part {
		if m.To != want[i] {
			t.Errorf("point %d is %v, want %v", i, m.To, want[i])
		}
	}
}

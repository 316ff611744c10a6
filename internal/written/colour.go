package written

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/format/table"
)

// goodPart is which part of a row's letters must be in a colour to say a dish
// beside another.
const goodPart = 0.25

// inksOf finds the ink of most letters, and all inks that a good part of them has.
func inksOf(lines []table.Line) (most string, all []string) {
	return coloursOf(lines, func(p table.Piece) string { return p.Ink })
}

// shadeOf finds the shade behind most letters.
func shadeOf(lines []table.Line) string {
	most, _ := coloursOf(lines, func(p table.Piece) string { return p.Shade })
	return most
}

func coloursOf(lines []table.Line, of func(table.Piece) string) (most string, all []string) {
	letters, total := map[string]int{}, 0
	var names []string // in the order of the text
	for _, l := range lines {
		for _, p := range l {
			n := len(strings.Join(strings.Fields(p.Text), ""))
			if p.Struck || n == 0 {
				continue
			}
			c := dishColour(of(p))
			if letters[c] == 0 {
				names = append(names, c)
			}
			letters[c] += n
			total += n
		}
	}
	best := 0
	for _, c := range names {
		if letters[c] > best {
			most, best = c, letters[c]
		}
		if c != "" && float64(letters[c]) >= goodPart*float64(total) {
			all = append(all, c)
		}
	}
	return most, all
}

// dishColour is the colour, or "" for one too near to black, white or grey to
// stand for a dish.
func dishColour(c string) string {
	_, s, l, ok := hsl(c)
	if !ok || l < 0.06 || l > 0.985 || s < 0.08 {
		return ""
	}
	return c
}

// hsl is hue in degrees, saturation and lightness 0 to 1 (Smith 1978, in the
// double hexcone form of CSS Color 4).
func hsl(c string) (h, s, l float64, ok bool) {
	n, err := strconv.ParseUint(c, 16, 32)
	if err != nil || len(c) != 6 {
		return 0, 0, 0, false
	}
	r, g, b := float64(n>>16)/255, float64(n>>8&255)/255, float64(n&255)/255
	top, low := max(r, g, b), min(r, g, b)
	l = (top + low) / 2
	d := top - low
	if d == 0 {
		return 0, 0, l, true
	}
	s = d / (1 - math.Abs(2*l-1))
	switch top {
	case r:
		h = math.Mod((g-b)/d+6, 6)
	case g:
		h = (b-r)/d + 2
	default:
		h = (r-g)/d + 4
	}
	return h * 60, s, l, true
}

// apart says how different two colours are to a pupil who calls both "red": 0 for
// the same; from 0.5 on they are two colours.
func apart(a, b string) float64 {
	if a == b {
		return 0
	}
	h1, s1, l1, ok1 := hsl(a)
	h2, s2, l2, ok2 := hsl(b)
	if !ok1 || !ok2 {
		return 2
	}
	hue := math.Abs(h1 - h2)
	hue = min(hue, 360-hue)
	return hue/60 + math.Abs(l1-l2)*0.6 + math.Abs(s1-s2)*0.2
}

// colourWords are colours by name, as word processors offer them.
var colourWords = map[string]string{
	"red": "FF0000", "dark red": "C00000", "blue": "0070C0", "light blue": "00B0F0", "dark blue": "002060", "navy": "002060",
	"green": "00B050", "light green": "92D050", "dark green": "006400", "yellow": "FFFF00", "orange": "FFA500", "purple": "7030A0",
	"violet": "7030A0", "pink": "FF66CC", "brown": "8B4513", "turquoise": "40E0D0", "teal": "008080", "gold": "FFC000", "lilac": "C8A2C8",
}

// nearest is the dish of a colour by the key; false when none is near.
func nearest(names []Named, colour string, of func(Named) string) (Named, bool) {
	best, found := Named{}, false
	least := 0.5
	for _, n := range names {
		if c := of(n); c != "" && colour != "" {
			if d := apart(c, colour); d < least {
				best, least, found = n, d, true
			}
		}
	}
	return best, found
}

func inkOf(n Named) string        { return n.Ink }
func shadeOfNamed(n Named) string { return n.Shade }

// colourDishes gives rows that say no dish the one of their colour: by the key,
// else by rows in the same colour that do say it.
func (r *reader) colourDishes() {
	if r.banded() {
		for i := range r.entries {
			r.entries[i].shade = ""
		}
	}
	r.learnPrefixes()
	for i := range r.entries {
		if e := &r.entries[i]; len(e.dishes) == 0 || e.section {
			if said := r.prefix(e.text()); said != nil {
				e.dishes, e.section = said, false
			}
		}
	}
	r.learnFromRows()
	for i := range r.entries {
		e := &r.entries[i]
		e.ink, e.shade = dishColour(e.ink), dishColour(e.shade)
		if len(e.dishes) > 0 && !e.section {
			continue
		}
		if said := r.byColour(e); len(said) > 0 {
			e.dishes = said
		}
	}
	r.nameColours()
}

// byColour is the dishes that an entry's colours say.
func (r *reader) byColour(e *entry) (said []string) {
	add := func(n Named, ok bool) {
		if ok && n.Name != "" && !slices.Contains(said, n.Name) {
			said = append(said, n.Name)
		}
	}
	for _, ink := range e.inks {
		add(nearest(r.names, ink, inkOf))
	}
	if len(said) == 0 {
		add(nearest(r.names, e.shade, shadeOfNamed))
	}
	if len(said) == 0 { // a key in coloured words, rows that are shaded, or the other way
		add(nearest(r.names, e.shade, inkOf))
	}
	if len(said) == 0 && e.ink != "" {
		add(nearest(r.names, e.ink, shadeOfNamed))
	}
	return said
}

// banded says whether the shades only mark every other row.
func (r *reader) banded() bool {
	changes, rows, shades := 0, 0, map[string]bool{}
	for i := 1; i < len(r.entries); i++ {
		a, b := r.entries[i-1], r.entries[i]
		if a.table != b.table || a.line == b.line {
			continue
		}
		rows++
		shades[a.shade], shades[b.shade] = true, true
		if a.shade != b.shade {
			changes++
		}
	}
	return len(shades) == 2 && rows >= 4 && changes >= rows-1
}

// learnFromRows takes the colour of rows that name their dish for a key, where
// every row of that colour names the same.
func (r *reader) learnFromRows() {
	for _, n := range r.names {
		if n.Ink != "" || n.Shade != "" {
			return
		}
	}
	for _, of := range []func(entry) string{func(e entry) string { return dishColour(e.ink) }, func(e entry) string { return dishColour(e.shade) }} {
		dish, order, mixed := map[string]string{}, []string(nil), map[string]bool{}
		for _, e := range r.entries {
			c := of(e)
			if c == "" || len(e.dishes) != 1 {
				continue
			}
			if was, seen := dish[c]; !seen {
				order = append(order, c)
				dish[c] = e.dishes[0]
			} else if was != e.dishes[0] {
				mixed[c] = true
			}
		}
		if len(order) < 2 {
			continue
		}
		for _, c := range order {
			if !mixed[c] {
				n := Named{Name: dish[c], Ink: c}
				if c != "" && of(entry{shade: c}) == c {
					n = Named{Name: dish[c], Shade: c}
				}
				r.names = append(r.names, n)
			}
		}
	}
}

// nameColours lists colours without a key as dishes, when several are in use.
func (r *reader) nameColours() {
	for _, of := range []struct {
		of   func(entry) string
		make func(string) Named
	}{
		{func(e entry) string { return e.ink }, func(c string) Named { return Named{Ink: c} }},
		{func(e entry) string { return e.shade }, func(c string) Named { return Named{Shade: c} }},
	} {
		var order []string
		for _, e := range r.entries {
			if c := of.of(e); c != "" && len(e.dishes) == 0 && !slices.Contains(order, c) {
				order = append(order, c)
			}
		}
		if len(order) < 2 {
			continue
		}
		for _, c := range order {
			r.plan.Dishes = append(r.plan.Dishes, of.make(c))
		}
	}
}

package fonts

import (
	"encoding/binary"
	"sync"
)

// table holds what is asked of a TrueType file: which sign stands for a
// character (cmap, formats 4 and 12) and how wide it is (head, hhea, hmtx).
// Source: OpenType specification 1.9, chapters cmap and hmtx. The files are our own, embedded,
// so the readers trust their offsets.
type table struct {
	once    sync.Once
	glyphs  map[rune]uint16
	widths  []uint16
	perUnit int
}

func (t *table) get(ttf func() []byte) *table {
	t.once.Do(func() { t.read(ttf()) })
	return t
}

func (t *table) glyph(r rune) uint16 { return t.glyphs[r] }

func (t *table) advance(r rune) int {
	g := int(t.glyphs[r])
	if g == 0 || len(t.widths) == 0 {
		return 0
	}
	w := int(t.widths[min(g, len(t.widths)-1)])
	return (w*1000 + t.perUnit/2) / t.perUnit
}

func (t *table) read(b []byte) {
	tables := map[string][]byte{}
	for i := range int(u16(b, 4)) {
		record := b[12+16*i:]
		offset, length := u32(record, 8), u32(record, 12)
		tables[string(record[:4])] = b[offset : offset+length]
	}
	t.perUnit = int(u16(tables["head"], 18))
	t.widths = make([]uint16, u16(tables["hhea"], 34))
	for i := range t.widths {
		t.widths[i] = u16(tables["hmtx"], 4*i)
	}
	t.glyphs = map[rune]uint16{}
	cmap := tables["cmap"]
	for i := range int(u16(cmap, 2)) {
		sub := cmap[u32(cmap, 4+8*i+4):]
		switch u16(sub, 0) {
		case 4:
			t.segments(sub)
		case 12:
			t.groups(sub)
		}
	}
}

// segments reads cmap format 4.
func (t *table) segments(b []byte) {
	n := int(u16(b, 6)) / 2
	ends, starts := 14, 16+2*n
	deltas, ranges := starts+2*n, starts+4*n
	for i := range n {
		start, end := int(u16(b, starts+2*i)), int(u16(b, ends+2*i))
		delta, offset := u16(b, deltas+2*i), int(u16(b, ranges+2*i))
		for c := start; c <= end && c != 0xFFFF; c++ {
			g := uint16(c) + delta
			if offset != 0 {
				g = u16(b, ranges+2*i+offset+2*(c-start))
				if g != 0 {
					g += delta
				}
			}
			if g != 0 {
				t.glyphs[rune(c)] = g
			}
		}
	}
}

// groups reads cmap format 12.
func (t *table) groups(b []byte) {
	for i := range int(u32(b, 12)) {
		start, end, first := u32(b, 16+12*i), u32(b, 20+12*i), u32(b, 24+12*i)
		for c := start; c <= end; c++ {
			t.glyphs[rune(c)] = uint16(first + c - start)
		}
	}
}

func u16(b []byte, at int) uint16 { return binary.BigEndian.Uint16(b[at:]) }
func u32(b []byte, at int) uint32 { return binary.BigEndian.Uint32(b[at:]) }

package pdf

import (
	"bytes"
	"testing"
)

// Sources: the LZW data are the example of ISO 32000-1, 7.4.4.2, whose codes are
// 256 45 258 258 65 259 66 257; the ASCII85 string is a widely published one.
func TestPublishedFilterData(t *testing.T) {
	if got := lzw([]byte{0x80, 0x0B, 0x60, 0x50, 0x22, 0x0C, 0x0C, 0x85, 0x01}, 1, 100); string(got) != "-----A---B" {
		t.Errorf("LZW: %q", got)
	}
	if got := un85([]byte(`<~87cURD]i,"Ebo80~>`)); string(got) != "Hello World!" {
		t.Errorf("ASCII85: %q", got)
	}
}

// packBits writes the codes of single bytes as LZW, whose width grows as the
// table of both sides fills; early is when.
func packBits(data []byte, early int) (out []byte) {
	bits, have, width, entries := 0, 0, 9, 0
	put := func(code int) {
		bits, have = bits<<width|code, have+width
		for ; have >= 8; have -= 8 {
			out = append(out, byte(bits>>(have-8)))
			bits &= 1<<(have-8) - 1
		}
	}
	put(256)
	for i, b := range data {
		if entries == 4096-258-2 {
			put(256)
			width, entries = 9, 0
		} else if i > 0 {
			entries++
		}
		put(int(b))
		if entries+258+early >= 1<<width && width < 12 {
			width++
		}
	}
	put(257)
	return append(out, byte(bits<<(8-have)))
}

func TestLZWWidths(t *testing.T) {
	var data []byte
	for i := range 6000 {
		data = append(data, byte(i*i>>3))
	}
	for early := range 2 {
		for _, n := range []int{1, 253, 254, 255, 256, 700, 1800, 3700} {
			if got := lzw(packBits(data[:n], early), early, 1<<20); !bytes.Equal(got, data[:n]) {
				t.Errorf("early %d, %d bytes: %d back", early, n, len(got))
			}
		}
	}
}

// Filters of PNG: rows worked out by hand from ISO/IEC 15948, 9.2.
func TestPredictors(t *testing.T) {
	f := &file{}
	p := dict{"Predictor": 15.0, "Columns": 3.0}
	in := []byte{0, 1, 2, 3, 1, 5, 1, 1, 2, 1, 1, 1, 3, 1, 1, 1, 4, 1, 1, 1}
	want := []byte{1, 2, 3, 5, 6, 7, 6, 7, 8, 4, 6, 8, 5, 7, 9}
	if got := f.predicted(in, p); !bytes.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

package pdf

import (
	"bytes"
	"compress/flate"
	"compress/zlib"
	"encoding/ascii85"
	"io"
)

// unpack is a stream's data with its filters undone. Data that break off are
// read as far as they go; pictures' filters give nothing.
func (f *file) unpack(s *stream) []byte {
	data := s.raw
	filters, params := f.list(s.dict["Filter"], s.dict["F"]), f.list(s.dict["DecodeParms"], s.dict["DP"])
	for i, filter := range filters[:min(len(filters), 8)] {
		var p dict
		if i < len(params) {
			p = f.dict(params[i])
		}
		left := MaxUnpacked + 1 - f.unpacked
		if left <= 0 {
			return nil
		}
		switch f.name(filter) {
		case "FlateDecode", "Fl":
			data = f.predicted(inflate(data, left), p)
		case "LZWDecode", "LZW":
			early := 1
			if v, is := f.resolve(p["EarlyChange"]).(float64); is {
				early = int(v)
			}
			data = f.predicted(lzw(data, early, left), p)
		case "ASCIIHexDecode", "AHx":
			data = unhex(data)
		case "ASCII85Decode", "A85":
			data = un85(data)
		case "RunLengthDecode", "RL":
			data = runLength(data, left)
		case "Crypt":
		default:
			return nil
		}
		f.unpacked += len(data)
	}
	return data
}

// list is one object or an array of them, under its long or short key.
func (f *file) list(long, short any) array {
	o := f.resolve(long)
	if o == nil {
		o = f.resolve(short)
	}
	if a, is := o.(array); is {
		return a
	}
	if o == nil {
		return nil
	}
	return array{o}
}

func inflate(data []byte, most int) []byte {
	var out bytes.Buffer
	if z, err := zlib.NewReader(bytes.NewReader(data)); err == nil {
		_, _ = io.CopyN(&out, z, int64(most)) // what could be read counts
	}
	if out.Len() == 0 && len(data) > 2 { // a broken head or check sum
		_, _ = io.CopyN(&out, flate.NewReader(bytes.NewReader(data[2:])), int64(most))
	}
	return out.Bytes()
}

func unhex(data []byte) []byte {
	l := lexer{data: data}
	return []byte(l.hex())
}

func un85(data []byte) []byte {
	data = bytes.TrimPrefix(bytes.TrimSpace(data), []byte("<~"))
	if i := bytes.IndexByte(data, '~'); i >= 0 {
		data = data[:i]
	}
	out := make([]byte, len(data)*4+4) // a z stands for four bytes
	n, _, _ := ascii85.Decode(out, data, true)
	return out[:n]
}

func runLength(data []byte, most int) (out []byte) {
	for i := 0; i < len(data) && len(out) < most; {
		n := int(data[i])
		i++
		switch {
		case n == 128:
			return out
		case n < 128:
			to := min(i+n+1, len(data))
			out = append(out, data[i:to]...)
			i = to
		case i < len(data):
			out = append(out, bytes.Repeat(data[i:i+1], 257-n)...)
			i++
		}
	}
	return out
}

// lzw undoes LZW with codes of 9 to 12 bits (7.4.4.2). The codes grow early by one when early is 1.
func lzw(data []byte, early, most int) (out []byte) {
	const clearTable, end = 256, 257
	type entry struct{ from, to int } // of out
	var table []entry
	var last entry
	width, bits, have := 9, 0, 0
	for _, b := range data {
		bits, have = bits<<8|int(b), have+8
		if have < width {
			continue
		}
		code := bits >> (have - width)
		have -= width
		bits &= 1<<have - 1
		if code == end || len(out) > most {
			return out[:min(len(out), most)]
		}
		if code == clearTable {
			table, width, last = table[:0], 9, entry{}
			continue
		}
		if last.to > last.from && len(table) < 4096-258 {
			table = append(table, entry{last.from, last.to + 1}) // the last string and the byte that comes now
		}
		from := len(out)
		if code < 256 {
			out = append(out, byte(code))
		} else if code-258 < len(table) {
			for e := table[code-258]; e.from < e.to; e.from++ {
				out = append(out, out[e.from])
			}
		} else {
			return out
		}
		last = entry{from, len(out)}
		if len(table)+258+early >= 1<<width && width < 12 {
			width++
		}
	}
	return out
}

// predicted undoes the predictors of rows (7.4.4.4).
func (f *file) predicted(data []byte, p dict) []byte {
	kind := int(f.number(p["Predictor"]))
	if kind < 10 { // that of TIFF is used for pictures
		return data
	}
	value := func(key name, usual int) int {
		if v := int(f.number(p[key])); v > 0 && v < 1<<16 {
			return v
		}
		return usual
	}
	depth := value("Colors", 1) * value("BitsPerComponent", 8)
	step, width := (depth+7)/8, (depth*value("Columns", 1)+7)/8
	above := make([]byte, width)
	out := make([]byte, 0, len(data))
	for len(data) > 1 {
		how, row := data[0], data[1:min(len(data), width+1)]
		data = data[1+len(row):]
		line := make([]byte, width)
		copy(line, row)
		unfilter(how, line, above, step)
		out = append(out, line[:len(row)]...)
		above = line
	}
	return out
}

// unfilter undoes a filter of PNG (ISO/IEC 15948, 9.2).
func unfilter(how byte, line, above []byte, step int) {
	for i := range line {
		var left, corner byte
		if i >= step {
			left, corner = line[i-step], above[i-step]
		}
		switch how {
		case 1:
			line[i] += left
		case 2:
			line[i] += above[i]
		case 3:
			line[i] += byte((int(left) + int(above[i])) / 2)
		case 4:
			line[i] += paeth(left, above[i], corner)
		}
	}
}

func paeth(a, b, c byte) byte {
	p := int(a) + int(b) - int(c)
	da, db, dc := abs(p-int(a)), abs(p-int(b)), abs(p-int(c))
	switch {
	case da <= db && da <= dc:
		return a
	case db <= dc:
		return b
	}
	return c
}

func abs(n int) int { return max(n, -n) }

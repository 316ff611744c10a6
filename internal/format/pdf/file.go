package pdf

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
)

// file is the objects of a file by number; of several with one number the last
// in the file, as later changes are appended.
type file struct {
	objects  map[ref]any
	root     any
	unpacked int // bytes unpacked so far
}

var objectStart = regexp.MustCompile(`(?:^|[^0-9])([0-9]{1,8})[\x00\t\n\f\r ]+[0-9]{1,5}[\x00\t\n\f\r ]+obj|trailer`)

// load finds the objects by their beginnings, which needs no table of them to be right.
func load(data []byte) (*file, error) {
	f := &file{objects: map[ref]any{}}
	locked := false
	meet := func(d dict) {
		if d["Root"] != nil {
			f.root = d["Root"]
		}
		locked = locked || d["Encrypt"] != nil
	}
	for at := 0; at < len(data); {
		m := objectStart.FindSubmatchIndex(data[at:])
		if m == nil {
			break
		}
		l := &lexer{data: data, at: at + m[1], refs: true}
		o, _ := l.next()
		if m[2] < 0 {
			if d, is := o.(dict); is {
				meet(d)
			}
			at = max(l.at, at+m[1])
			continue
		}
		n, err := strconv.Atoi(string(data[at+m[2] : at+m[3]]))
		if err != nil {
			at += m[1]
			continue
		}
		o, at = f.body(o, l)
		f.objects[ref(n)] = o
		if s, is := o.(*stream); is {
			if kind := s.dict["Type"]; kind == any(name("XRef")) {
				meet(s.dict)
			} else if kind == any(name("ObjStm")) {
				f.unpackObjects(s)
			}
		}
		if len(f.objects) > MaxObjects || f.unpacked > MaxUnpacked {
			return nil, fmt.Errorf("%w: more than %d objects or %d bytes unpacked; print the pages that matter alone to a new PDF", ErrTooLarge, MaxObjects, MaxUnpacked)
		}
	}
	if locked {
		return nil, fmt.Errorf("%w; open it with its password and print it to a new PDF", ErrLocked)
	}
	if len(f.objects) == 0 {
		return nil, fmt.Errorf("%w: it has no objects; open it and print it to a new PDF", ErrDamaged)
	}
	return f, nil
}

// body is an object and where it ends; a dictionary may be a stream's.
func (f *file) body(o any, l *lexer) (any, int) {
	d, is := o.(dict)
	l.skip()
	if !is || !bytes.HasPrefix(l.data[l.at:], []byte("stream")) {
		return o, l.at
	}
	from := l.at + len("stream")
	if bytes.HasPrefix(l.data[from:], []byte("\r\n")) {
		from += 2
	} else if from < len(l.data) && (l.data[from] == '\n' || l.data[from] == '\r') {
		from++
	}
	to := -1
	if n := int(f.number(d["Length"])); n > 0 && from+n <= len(l.data) {
		if rest := bytes.TrimLeft(l.data[from+n:min(from+n+16, len(l.data))], "\r\n \x00"); bytes.HasPrefix(rest, []byte("endst")) {
			to = from + n
		}
	}
	if to < 0 { // the length is wrong or not known yet
		to = len(l.data)
		if i := bytes.Index(l.data[from:], []byte("endstream")); i >= 0 {
			to = from + i
		}
	}
	return &stream{d, l.data[from:to]}, to
}

// unpackObjects reads the objects of an object stream (7.5.7).
func (f *file) unpackObjects(s *stream) {
	data := f.unpack(s)
	first, count := int(f.number(s.dict["First"])), int(f.number(s.dict["N"]))
	if first < 0 || first > len(data) {
		return
	}
	index := &lexer{data: data[:first]}
	for range min(count, MaxObjects) {
		n, ok := index.next()
		offset, ok2 := index.next()
		num, is := n.(float64)
		off, is2 := offset.(float64)
		if !ok || !ok2 || len(f.objects) > MaxObjects {
			return
		}
		if is && is2 && off >= 0 && first+int(off) < len(data) && num >= 0 && num < 1e8 {
			l := &lexer{data: data, at: first + int(off), refs: true}
			f.objects[ref(num)], _ = l.next()
		}
	}
}

// page is a page's dictionary, and what it has or inherits: resources, and the
// box beyond which nothing shows (nil when none is given).
type page struct {
	dict      dict
	resources dict
	box       array
}

// pages is the pages in their order, one more than MaxPages at most.
func (f *file) pages() (list []page) {
	root := f.dict(f.root)
	if root["Pages"] == nil {
		root = f.anyOf("Catalog")
	}
	seen := map[ref]bool{}
	var walk func(o any, resources dict, box array, depth int)
	walk = func(o any, resources dict, box array, depth int) {
		if r, is := o.(ref); is {
			if seen[r] {
				return
			}
			seen[r] = true
		}
		d := f.dict(o)
		if own := f.dict(d["Resources"]); own != nil {
			resources = own
		}
		for _, key := range []name{"MediaBox", "CropBox"} {
			if own := f.array(d[key]); len(own) == 4 {
				box = own
			}
		}
		if d == nil || depth > 50 || len(list) > MaxPages {
			return
		}
		if kids := f.array(d["Kids"]); kids != nil {
			for _, k := range kids {
				walk(k, resources, box, depth+1)
			}
		} else if d["Contents"] != nil || f.name(d["Type"]) == "Page" {
			list = append(list, page{d, resources, box})
		}
	}
	walk(root["Pages"], nil, nil, 0)
	return list
}

// anyOf is the dictionary of a type with the highest number, for files whose trailer is lost.
func (f *file) anyOf(kind name) (found dict) {
	best := ref(-1)
	for r, o := range f.objects {
		if d, is := o.(dict); is && r > best && f.name(d["Type"]) == kind {
			best, found = r, d
		}
	}
	return found
}

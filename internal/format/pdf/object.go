package pdf

// An object is nil, bool, float64, string, name, keyword, array, dict, ref or *stream.
type (
	name    string
	keyword string
	array   []any
	dict    map[name]any
	ref     int // number of an indirect object; generations are told apart by place in the file
	stream  struct {
		dict dict
		raw  []byte
	}
)

// get is an entry of a dictionary or of a stream's, with references followed.
func (f *file) get(o any, key name) any {
	switch o := f.resolve(o).(type) {
	case dict:
		return f.resolve(o[key])
	case *stream:
		return f.resolve(o.dict[key])
	}
	return nil
}

// resolve follows references; one that leads in a ring is nil.
func (f *file) resolve(o any) any {
	for range 32 {
		r, is := o.(ref)
		if !is {
			return o
		}
		o = f.objects[r]
	}
	return nil
}

func (f *file) array(o any) array {
	a, _ := f.resolve(o).(array)
	return a
}

func (f *file) dict(o any) dict {
	switch o := f.resolve(o).(type) {
	case dict:
		return o
	case *stream:
		return o.dict
	}
	return nil
}

func (f *file) number(o any) float64 {
	n, _ := f.resolve(o).(float64)
	return n
}

func (f *file) name(o any) name {
	n, _ := f.resolve(o).(name)
	return n
}

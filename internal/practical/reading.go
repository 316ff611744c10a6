package practical

// Reading is a practical file read as far as it can be, for those who have more
// to say of it, such as of the files that it names.
type Reading struct {
	Practical *Practical // nil when nothing could be read
	Faults    Faults     // in the order of the text

	name    string
	decoder *decoder
}

// Read is Parse that gives back what could be read beside the faults. It never panics.
func Read(name string, data []byte) *Reading {
	root, faults := readTree(data)
	if len(faults) > 0 {
		return &Reading{Faults: inFile(name, faults)}
	}
	if root == nil || root.kind == nothing {
		return &Reading{Faults: inFile(name, Faults{{Line: 1, Message: "the file is empty", Hint: "give title, clock and dishes", Code: Invalid}})}
	}
	d := &decoder{at: map[string]*node{}, broken: map[string]bool{}}
	r := &Reading{Practical: d.practical(root), name: name, decoder: d}
	r.Faults = d.faults
	r.Add(r.Practical.Validate())
	return r
}

// Add puts more faults at the lines where their fields stand, or what holds
// them, and among the others in the order of the text. A field that could not be
// read has its fault already and gets no second one.
func (r *Reading) Add(faults Faults) {
	for _, f := range faults {
		if r.decoder == nil { // nothing could be read, so nothing has a place
			r.Faults = append(r.Faults, f)
			continue
		}
		if !r.decoder.known(f.Field) {
			n := r.decoder.place(f.Field)
			f.Line, f.Column = n.line, n.column
			r.Faults = append(r.Faults, f)
		}
	}
	r.Faults = inFile(r.name, r.Faults)
}

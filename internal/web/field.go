package web

import (
	"net/url"
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// Field is one question of a form with its answer and what is wrong with it.
type Field struct {
	Path, ID          string
	Label, Unit, Hint string
	Kind              string
	Value             string
	Options           []Option
	Rows              int // of an area
	Faults            []practical.Fault
	Form              string // id of its form, when it stands outside
	Focus             bool   // the page opens here
	Wide              bool   // a whole line
	Apart             bool   // its faults stand elsewhere
	Context           string // for ears only: “step A3”
}

// DescribedBy lists the ids of what explains the field.
func (f Field) DescribedBy() string {
	ids := f.ID + "-fault"
	if f.Hint != "" {
		ids = f.ID + "-hint " + ids
	}
	return ids
}

// Group is a fieldset: fields, or entries of a list that can grow.
type Group struct {
	Legend, About string
	Fields        []Field
	Entries       []Entry
	Add           *Press // adds an entry
}

// Entry is one of a list, such as an oven.
type Entry struct {
	Legend string
	Fields []Field
	Remove Press
}

// Press is a button that does something with the whole form.
type Press struct{ Value, Words string }

// form is what a page knows while it builds its fields.
type form struct {
	practical *practical.Practical
	faults    practical.Faults // every fault of the practical and of what was typed
	typed     url.Values       // what could not be read, by path, as it was typed
	focus     string           // id to open at
	used      map[string]bool  // paths that stand on this page
}

func newForm(p *practical.Practical, typed url.Values, unread practical.Faults, focus string) *form {
	f := &form{practical: p, typed: url.Values{}, focus: focus, used: map[string]bool{}}
	for _, fault := range unread {
		f.typed[fault.Field] = typed[fault.Field]
	}
	for _, fault := range p.Validate() {
		if _, again := f.typed[fault.Field]; !again {
			f.faults = append(f.faults, fault)
		}
	}
	f.faults = append(slices.Clone(unread), f.faults...)
	return f
}

// field makes the question for a path.
func (f *form) field(path string) Field {
	w := words[pattern(path)]
	f.used[path] = true
	made := Field{
		Path: path, ID: identifier(path), Label: w.label, Unit: w.unit, Hint: w.hint,
		Kind: string(w.kind), Value: read(f.practical, path), Rows: 2, Wide: w.wide,
	}
	if typed, bad := f.typed[path]; bad && len(typed) > 0 {
		made.Value = typed[len(typed)-1]
	}
	made.Focus = f.focus == made.ID
	for _, fault := range f.faults {
		if anchored(fault.Field) == path || within(fault.Field, path) && (w.kind == area || w.kind == ticks) {
			made.Faults = append(made.Faults, fault)
		}
	}
	made.choose(w.options)
	return made
}

// first is the field at which a fault of a whole entry is shown, by the entry's pattern.
var first = map[string]string{
	"dishes.steps": "text", "dishes.steps.hands": "low", "dishes.steps.wait": "place", "dishes.steps.after": "step",
	"clock.rest-breaks": "at", "kitchen.ovens": "name", "kitchen.taken": "kit", "kitchen.gas-table": "mark",
}

// anchored is the path of the field at which a fault is shown.
func anchored(path string) string {
	leaf, known := first[pattern(path)]
	_, last, _ := cutLast(path)
	if known && (strings.HasSuffix(path, "]") || last == "hands" || last == "wait") {
		return path + "." + leaf
	}
	return path
}

// choose marks the options that hold, and keeps an answer that is none of them.
func (f *Field) choose(options []Option) {
	if options == nil {
		return
	}
	values := []string{f.Value}
	if f.Kind == string(ticks) {
		values = strings.Split(f.Value, ", ")
	}
	f.Options = slices.Clone(options)
	known := false
	for i := range f.Options {
		f.Options[i].Chosen = slices.Contains(values, f.Options[i].Value)
		known = known || f.Options[i].Chosen
	}
	if f.Kind == string(choice) && !known && f.Value != "" {
		f.Options = append([]Option{{Value: f.Value, Text: f.Value, Chosen: true}}, f.Options...)
	}
}

// fields makes several, under a common prefix.
func (f *form) fields(prefix string, names ...string) []Field {
	made := make([]Field, len(names))
	for i, name := range names {
		made[i] = f.field(prefix + name)
	}
	return made
}

// Trouble is a fault in the summary at the head of a page, with the way to its field.
type Trouble struct {
	Where, Text, Link string
}

// troubles lists the faults whose fields stand on this page, and those below
// the prefixes whose field is nowhere.
func (f *form) troubles(prefixes ...string) []Trouble {
	var list []Trouble
	for _, fault := range f.faults {
		if !slices.ContainsFunc(prefixes, func(p string) bool { return within(fault.Field, p) }) {
			continue
		}
		text := fault.Message
		if fault.Hint != "" {
			text += "; " + fault.Hint
		}
		list = append(list, Trouble{Where: say(f.practical, fault.Field), Text: text, Link: "#" + f.nearest(fault.Field)})
	}
	return list
}

// nearest is the id of the field at the path, of the closest one above or
// below it, or of the page.
func (f *form) nearest(path string) string {
	path = anchored(path)
	for at := path; at != ""; {
		if f.used[at] {
			return identifier(at)
		}
		cut := strings.LastIndexAny(at, ".[")
		if cut < 0 {
			break
		}
		at = at[:cut]
	}
	best := ""
	for used := range f.used {
		if within(used, path) && (best == "" || used < best) {
			best = used
		}
	}
	if best != "" {
		return identifier(best)
	}
	return "main"
}

// mirror lists what a page takes over from the answer after a change has saved
// itself: the state, the faults, never a field that somebody may be typing in.
func mirror(groups []Group) string {
	var b strings.Builder
	b.WriteString("#said:innerHTML,#keep,#troubles")
	for _, g := range groups {
		for _, f := range g.Fields {
			b.WriteString(",#" + f.ID + "-fault")
		}
		for _, e := range g.Entries {
			for _, f := range e.Fields {
				b.WriteString(",#" + f.ID + "-fault")
			}
		}
	}
	return b.String()
}

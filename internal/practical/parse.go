package practical

import (
	"fmt"
	"reflect"
	"sort"
	"strings"
)

// usualLike is the starting point of a file that names none. Such a file may
// hold any number of dishes.
const usualLike = "three-in-three"

// Parse reads a practical file (YAML). It gives back all faults at once, in the
// order of the text, each with its line and column; the practical is nil when
// there is any. It never panics.
//
// What a file may leave out:
//   - like names a starting point whose clock, rules, kitchen and cooks stand for
//     what is absent (three-in-three when there is no like, then with any number
//     of dishes). A start alone moves the whole clock; set-up and finish keep
//     the starting point's lengths.
//   - letter: A, B, C in the order of the dishes. A step's id: the letter and the
//     step's number, such as A3.
//   - after: a step follows the step before it in its dish; if it names a
//     component, the step before it of that component, and the first of a
//     component follows nothing. A set-up step follows nothing. An empty list
//     ([]) is nothing as well.
//   - hands: none. One figure stands for an Estimate (see Around).
//   - serve: as it is, in 5 minutes. An oven: electric, two shelves.
//   - all else: zero, empty or false, with the meaning its field gives that.
func Parse(name string, data []byte) (*Practical, Faults) {
	r := Read(name, data)
	if len(r.Faults) > 0 {
		return nil, r.Faults
	}
	return r.Practical, nil
}

// inFile names the file in every fault and puts them in the order of the text.
func inFile(name string, faults Faults) Faults {
	for i := range faults {
		faults[i].File = name
	}
	sort.SliceStable(faults, func(i, j int) bool {
		a, b := faults[i], faults[j]
		return a.Line < b.Line || a.Line == b.Line && a.Column < b.Column
	})
	return faults
}

// known says that the field, a part of it or what holds it was at fault when it was read.
func (d *decoder) known(path string) bool {
	for b := range d.broken {
		if b == "" || b == path || strings.HasPrefix(b, path+".") || strings.HasPrefix(b, path+"[") || strings.HasPrefix(path, b+".") || strings.HasPrefix(path, b+"[") {
			return true
		}
	}
	return false
}

// place is where a field stands in the file, or what holds it.
func (d *decoder) place(path string) *node {
	for {
		if n := d.at[path]; n != nil {
			return n
		}
		cut := strings.LastIndexAny(path, ".[")
		if cut < 0 {
			return d.at[""]
		}
		path = path[:cut]
	}
}

// practical reads the whole file over the starting point it names.
func (d *decoder) practical(root *node) *Practical {
	d.at[""] = root
	like := root.field("like")
	p := d.startingPoint(like)
	clock := p.Clock
	p.Title = ""
	d.decode(root, reflect.ValueOf(p).Elem(), "")
	d.fillClock(&p.Clock, clock)
	if like == nil && d.at["rules.dishes"] == nil {
		p.Rules.Dishes = 0
	}
	d.fillLetters(p.Dishes)
	for i := range p.Dishes {
		d.fillSteps(&p.Dishes[i], fmt.Sprintf("dishes[%d]", i))
	}
	return p
}

// startingPoint is a new practical of the starting point that like names.
func (d *decoder) startingPoint(like *node) *Practical {
	id := usualLike
	if like != nil {
		id = like.text
	}
	s := startingPoint(id)
	if s == nil {
		var ids []string
		for _, known := range StartingPoints() {
			ids = append(ids, known.ID)
		}
		d.fault(like, "like", fmt.Sprintf("%q is not a starting point", clip(id)), oneOf(id, ids))
		s = startingPoint(usualLike)
	}
	return s.New()
}

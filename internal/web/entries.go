package web

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/practical"
)

// A button that adds an entry to a list sends add:PATH; one that takes an
// entry away sends remove:PATH[n].

// fresh is the entry that a press of Add makes.
var fresh = map[string]struct {
	noun string
	make func(p *practical.Practical) any
}{
	"kitchen.ovens": {"oven", func(p *practical.Practical) any {
		return practical.Oven{Name: fmt.Sprintf("oven %d", len(p.Kitchen.Ovens)+1), Fuel: practical.Fan, Shelves: 2}
	}},
	"kitchen.taken": {"kit that is taken", func(p *practical.Practical) any {
		return practical.Taken{Kit: practical.Ring, Number: 1, From: p.Clock.Start, Until: p.Clock.Finish}
	}},
	"kitchen.gas-table": {"row of the gas table", func(*practical.Practical) any { return practical.GasMark{} }},
	"clock.rest-breaks": {"rest break", func(p *practical.Practical) any {
		return practical.Break{At: (p.Clock.Start + p.Clock.Finish) / 2, Minutes: 10}
	}},
}

// lists does what a button of a list says, under the prefixes. It gives the
// change's label and the id of the field to open at.
func lists(prefixes ...string) func(*practical.Practical, string) (string, string, error) {
	return func(p *practical.Practical, do string) (string, string, error) {
		verb, path, _ := strings.Cut(do, ":")
		entry, known := fresh[pattern(path)]
		if !known || !slices.ContainsFunc(prefixes, func(prefix string) bool { return within(path, prefix) }) {
			return "", "", nil
		}
		list := strings.TrimSuffix(path, "]")
		list, digits, indexed := strings.Cut(list, "[")
		at, err := find(p, list, false)
		if err != nil || at.Kind() != reflect.Slice {
			return "", "", nil
		}
		switch {
		case verb == "add" && !indexed:
			at.Set(reflect.Append(at, reflect.ValueOf(entry.make(p))))
			return "add " + article(entry.noun), identifier(fmt.Sprintf("%s[%d]", list, at.Len()-1)) + "-", nil
		case verb == "remove" && indexed:
			n := 0
			if _, err := fmt.Sscanf(digits, "%d", &n); err != nil || n < 0 || n >= at.Len() {
				return "", "", nil
			}
			at.Set(reflect.AppendSlice(at.Slice3(0, n, n), at.Slice(n+1, at.Len())))
			return "remove " + article(entry.noun), "", nil
		}
		return "", "", nil
	}
}

// entries makes the fields of a list's entries.
func (f *form) entries(list, noun string, names ...string) ([]Entry, *Press) {
	at, err := find(f.practical, list, false)
	if err != nil {
		return nil, nil
	}
	made := make([]Entry, at.Len())
	for i := range made {
		path := fmt.Sprintf("%s[%d]", list, i)
		made[i] = Entry{
			Legend: fmt.Sprintf("%s %d", capital(noun), i+1),
			Fields: f.fields(path+".", names...),
			Remove: Press{Value: "remove:" + path, Words: fmt.Sprintf("Remove %s %d", noun, i+1)},
		}
		if f.focus == identifier(path)+"-" {
			made[i].Fields[0].Focus = true
		}
	}
	return made, &Press{Value: "add:" + list, Words: "Add " + noun}
}

// capital gives a word its capital letter.
func capital(noun string) string {
	first, size := utf8.DecodeRuneInString(noun)
	return string(unicode.ToUpper(first)) + noun[size:]
}

// article puts a or an before a noun that needs one.
func article(noun string) string {
	switch {
	case strings.HasPrefix(noun, "kit"):
		return noun
	case strings.ContainsRune("aeiou", rune(noun[0])):
		return "an " + noun
	default:
		return "a " + noun
	}
}

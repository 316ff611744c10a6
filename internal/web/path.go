package web

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"plait.example/internal/practical"
)

// A field of a form is named by the path of its value in the practical file,
// such as dishes[0].steps[2].wait.celsius, so that a fault finds its field.

// part is one name of a path with its index, -1 when it has none.
type part struct {
	name  string
	index int
}

// parts takes a path to pieces. It fails on anything that is not a path.
func parts(path string) ([]part, error) {
	var found []part
	for name := range strings.SplitSeq(path, ".") {
		p := part{name: name, index: -1}
		if head, rest, ok := strings.Cut(name, "["); ok {
			digits, tail, closed := strings.Cut(rest, "]")
			n, err := strconv.Atoi(digits)
			if err != nil || !closed || tail != "" || n < 0 {
				return nil, fmt.Errorf("%q is not the path of a field", path)
			}
			p = part{name: head, index: n}
		}
		if p.name == "" {
			return nil, fmt.Errorf("%q is not the path of a field", path)
		}
		found = append(found, p)
	}
	return found, nil
}

// find gives the value that a path names. When grow is set it makes what is
// missing on the way: a wait, or one more entry at the end of a list.
// It fails when there is no such field or the list is too short.
func find(p *practical.Practical, path string, grow bool) (reflect.Value, error) {
	names, err := parts(path)
	if err != nil {
		return reflect.Value{}, err
	}
	at := reflect.ValueOf(p).Elem()
	for _, n := range names {
		if at, err = enter(at, n, grow); err != nil {
			return reflect.Value{}, fmt.Errorf("%s: %w", path, err)
		}
	}
	return at, nil
}

// enter goes one name down from a struct.
func enter(at reflect.Value, n part, grow bool) (reflect.Value, error) {
	if at.Kind() == reflect.Pointer && at.Type().Elem().Kind() == reflect.Struct {
		if at.IsNil() && !grow {
			at = reflect.New(at.Type().Elem())
		} else if at.IsNil() {
			at.Set(reflect.New(at.Type().Elem()))
		}
		at = at.Elem()
	}
	if at.Kind() != reflect.Struct {
		return at, fmt.Errorf("no field %q here", n.name)
	}
	index := -1
	for i := range at.NumField() {
		tag, _, _ := strings.Cut(at.Type().Field(i).Tag.Get("yaml"), ",")
		if tag == n.name && tag != "" {
			index = i
		}
	}
	if index < 0 {
		return at, fmt.Errorf("no field %q here", n.name)
	}
	at = at.Field(index)
	if n.index < 0 {
		return at, nil
	}
	if at.Kind() != reflect.Slice || n.index > at.Len() || (n.index == at.Len() && !grow) {
		return at, fmt.Errorf("no entry %d in %s", n.index, n.name)
	}
	if n.index == at.Len() {
		at.Set(reflect.Append(at, reflect.Zero(at.Type().Elem())))
	}
	return at.Index(n.index), nil
}

// read writes the value that a path names as a person would type it; empty
// when there is none.
func read(p *practical.Practical, path string) string {
	at, err := find(p, path, false)
	if err != nil {
		return ""
	}
	return spell(at)
}

// spell writes one value as text.
func spell(at reflect.Value) string {
	if at.Kind() == reflect.Pointer {
		if at.IsNil() {
			return ""
		}
		at = at.Elem()
	}
	switch value := at.Interface().(type) {
	case practical.TimeOfDay:
		text, _ := value.MarshalText() // fails before midnight only, which no field can say
		return string(text)
	case bool:
		if value {
			return on
		}
		return off
	}
	switch at.Kind() {
	case reflect.Slice:
		words := make([]string, at.Len())
		for i := range words {
			words[i] = at.Index(i).String()
		}
		return strings.Join(words, ", ")
	case reflect.String:
		return at.String()
	default:
		return fmt.Sprint(at.Interface())
	}
}

// identifier turns a path into an id for HTML: letters, digits and hyphens.
func identifier(path string) string {
	return "f-" + strings.NewReplacer("[", "-", "].", "-", "]", "", ".", "-").Replace(path)
}

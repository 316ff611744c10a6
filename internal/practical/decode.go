package practical

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// decoder fills the nouns from the file's nodes. It collects faults and
// carries on; it remembers where each field stands, so that what Validate
// finds later can be shown at its line.
type decoder struct {
	at     map[string]*node // by field path
	faults Faults
	broken map[string]bool // paths already at fault, so that they are not judged twice
}

func (d *decoder) fault(n *node, path, message, hint string) {
	d.faults = append(d.faults, Fault{Line: n.line, Column: n.column, Field: path, Message: message, Hint: hint, Code: Invalid})
	d.broken[path] = true
}

// short are the types that have short forms, with how each is read.
var short = map[reflect.Type]func(d *decoder, n *node, v reflect.Value, path string) bool{
	reflect.TypeFor[TimeOfDay](): (*decoder).timeOfDay,
	reflect.TypeFor[Estimate]():  (*decoder).estimate,
	reflect.TypeFor[After]():     (*decoder).after,
}

// decode reads n into v. An empty value leaves v as it is.
func (d *decoder) decode(n *node, v reflect.Value, path string) {
	if n == nil || n.kind == nothing {
		return
	}
	d.at[path] = n
	if read := short[v.Type()]; read != nil && read(d, n, v, path) {
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.decode(n, v.Elem(), path)
	case reflect.Struct:
		d.table(n, v, path)
	case reflect.Slice:
		d.list(n, v, path)
	default:
		d.scalar(n, v, path)
	}
}

func (d *decoder) scalar(n *node, v reflect.Value, path string) {
	if n.kind != scalar {
		d.fault(n, path, "one value was expected here, not "+n.kind.String(), want(v.Type(), path))
		return
	}
	ok := true
	switch v.Kind() {
	case reflect.String:
		allowed := words[v.Type()]
		if ok = allowed == nil || slices.Contains(allowed, n.text); !ok {
			d.fault(n, path, fmt.Sprintf("%q is not known here", clip(n.text)), oneOf(n.text, allowed))
			return
		}
		v.SetString(n.text)
	case reflect.Int:
		i, err := strconv.Atoi(n.text)
		if ok = err == nil && n.plain; ok {
			v.SetInt(int64(i))
		}
	case reflect.Float64:
		f, err := strconv.ParseFloat(n.text, 64)
		if ok = err == nil && n.plain; ok {
			v.SetFloat(f)
		}
	case reflect.Bool:
		if ok = n.plain && (n.text == "true" || n.text == "false"); ok {
			v.SetBool(n.text == "true")
		}
	}
	if !ok {
		d.fault(n, path, fmt.Sprintf("%q is not %s", clip(n.text), noun(v.Kind())), want(v.Type(), path))
	}
}

func (d *decoder) list(n *node, v reflect.Value, path string) {
	items, element := n.items, v.Type().Elem()
	switch {
	case n.kind == list:
	case element == reflect.TypeFor[After](), n.kind == scalar && element.Kind() == reflect.String:
		items = []*node{n} // one value is a list of one
	default:
		d.fault(n, path, "a list was expected here, not "+n.kind.String(), "write each on a line of its own, after a dash")
		return
	}
	v.Set(reflect.Zero(v.Type()))
	if len(items) == 0 {
		return
	}
	out := reflect.MakeSlice(v.Type(), len(items), len(items))
	for i, item := range items {
		if usual, ok := usualOf(element); ok {
			out.Index(i).Set(usual)
		}
		d.decode(item, out.Index(i), fmt.Sprintf("%s[%d]", path, i))
	}
	v.Set(out)
}

func (d *decoder) table(n *node, v reflect.Value, path string) {
	names := fieldNames(v.Type())
	if path == "" {
		names = append(names, "like") // the file's alone: see startingPoint
	}
	if n.kind != table {
		d.fault(n, path, "a table of names and values was expected here, not "+n.kind.String(), "known here: "+strings.Join(names, ", "))
		return
	}
	seen := map[string]bool{}
	for _, f := range n.fields {
		i := slices.Index(names, f.key)
		sub := join(path, f.key)
		switch {
		case i < 0:
			d.unknown(f, sub, names)
		case seen[f.key]:
			d.fault(f.at, sub, f.key+" is given twice", "keep one of the two")
		case i == v.NumField(): // like
		default:
			d.decode(f.value, v.Field(i), sub)
		}
		seen[f.key] = true
	}
}

func (d *decoder) unknown(f field, path string, names []string) {
	hint := "known here: " + strings.Join(names, ", ")
	if near := nearest(f.key, names); near != "" {
		hint = fmt.Sprintf("did you mean %q; %s", near, hint)
	}
	d.fault(f.at, path, fmt.Sprintf("unknown field %q", clip(f.key)), hint)
}

// fieldNames are the file's names of a struct's fields, in order.
func fieldNames(t reflect.Type) []string {
	names := make([]string, t.NumField())
	for i := range names {
		names[i] = t.Field(i).Tag.Get("yaml")
	}
	return names
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// clip shortens what a message quotes.
func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

func (k kind) String() string {
	return [...]string{"nothing", "a single value", "a list", "a table"}[k]
}

func noun(k reflect.Kind) string {
	switch k {
	case reflect.Int:
		return "a whole number"
	case reflect.Float64:
		return "a number"
	case reflect.Bool:
		return "true or false"
	default:
		return "text"
	}
}

// want says what would be right for a single value.
func want(t reflect.Type, path string) string {
	if allowed := words[t]; allowed != nil {
		return oneOf("", allowed)
	}
	switch t.Kind() {
	case reflect.Int:
		if strings.HasSuffix(path, "celsius") {
			return "give one figure in degrees Celsius, of an oven without fan, such as 200; two temperatures are two steps"
		}
		return "write a whole number without a unit, such as 15"
	case reflect.Float64:
		return "write a number without a unit, such as 2.5"
	case reflect.Bool:
		return "write true or false"
	default:
		return "write plain text"
	}
}

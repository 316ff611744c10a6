package practical

import (
	"bytes"
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Write is the practical as a file. Parse reads back an equal practical (an
// empty list and no list are the same). Clock, rules, kitchen and what each
// step comes after are written in full, so that the file means the same
// whatever starting points become; what is left out elsewhere is what Parse
// fills in. It fails on text that is not UTF-8 and on a time that is no time of day.
func Write(p *Practical) ([]byte, error) {
	w := &writer{}
	w.table(reflect.ValueOf(p).Elem(), 0)
	return w.Bytes(), w.err
}

// writer writes YAML in block style; the first error stays.
type writer struct {
	bytes.Buffer
	err error
}

// inFull are the types that are written with all their fields.
var inFull = map[reflect.Type]bool{
	reflect.TypeFor[Clock]():    true,
	reflect.TypeFor[Rules]():    true,
	reflect.TypeFor[Kitchen]():  true,
	reflect.TypeFor[Extra]():    true,
	reflect.TypeFor[Estimate](): true,
	reflect.TypeFor[Break]():    true,
	reflect.TypeFor[GasMark]():  true,
}

// written says whether a field has to be in the file: not if Parse fills in the same.
func written(of reflect.Type, name string, v reflect.Value) bool {
	switch {
	case inFull[of], of == reflect.TypeFor[Step]() && name == "after":
		return true
	case of == reflect.TypeFor[Practical]():
		return name == "title" || name == "cooks" || !v.IsZero() && (v.Kind() != reflect.Slice || v.Len() > 0)
	case v.Kind() == reflect.Slice:
		return v.Len() > 0
	}
	usual, _ := usualOf(of)
	for i, known := range fieldNames(of) {
		if known == name {
			return !reflect.DeepEqual(usual.Field(i).Interface(), v.Interface())
		}
	}
	return true
}

// table writes a struct's fields, each on a line of its own at the indentation,
// and says whether there was any to write.
func (w *writer) table(v reflect.Value, indent int) (any bool) {
	for i, name := range fieldNames(v.Type()) {
		f := v.Field(i)
		if !written(v.Type(), name, f) {
			continue
		}
		w.margin(indent)
		w.WriteString(name + ":")
		w.value(f, indent)
		any = true
	}
	return any
}

func (w *writer) margin(indent int) {
	if b := w.Bytes(); len(b) > 0 && b[len(b)-1] == '\n' {
		w.WriteString(strings.Repeat(" ", indent))
	}
}

// value writes what stands after a colon, to the end of the line or below it.
func (w *writer) value(v reflect.Value, indent int) {
	if v.Kind() == reflect.Pointer && !v.IsNil() {
		v = v.Elem()
	}
	switch {
	case v.Kind() == reflect.Slice && v.Len() == 0:
		w.WriteString(" []\n")
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		w.WriteString("\n")
		for i := range v.Len() {
			w.WriteString(strings.Repeat(" ", indent+2) + "- ")
			if before := w.Len(); !w.table(v.Index(i), indent+4) {
				w.Truncate(before)
				w.WriteString("{}\n")
			}
		}
	case v.Kind() == reflect.Slice:
		items := make([]string, v.Len())
		for i := range items {
			items[i] = w.flow(v.Index(i))
		}
		w.WriteString(" [" + strings.Join(items, ", ") + "]\n")
	case v.Kind() == reflect.Struct && v.Type() == reflect.TypeFor[Estimate](), v.Kind() == reflect.Struct && v.Type() == reflect.TypeFor[Extra]():
		var items []string
		for i, name := range fieldNames(v.Type()) {
			items = append(items, name+": "+w.flow(v.Field(i)))
		}
		w.WriteString(" {" + strings.Join(items, ", ") + "}\n")
	case v.Kind() == reflect.Struct:
		before := w.Len()
		w.WriteString("\n")
		if !w.table(v, indent+2) {
			w.Truncate(before)
			w.WriteString(" {}\n")
		}
	case v.Kind() == reflect.String && block(v.String()):
		w.block(v.String(), indent+2)
	case v.Kind() == reflect.String && plainLine.MatchString(v.String()):
		w.WriteString(" " + v.String() + "\n")
	default:
		w.WriteString(" " + w.flow(v) + "\n")
	}
}

// flow writes a single value so that it can stand anywhere on a line.
func (w *writer) flow(v reflect.Value) string {
	if t, ok := v.Interface().(TimeOfDay); ok {
		text, err := t.MarshalText()
		if t > lastMinute {
			err = fmt.Errorf("%d minutes after midnight is not a time of day", int(t))
		}
		w.fail(err)
		return string(text)
	}
	switch v.Kind() {
	case reflect.String:
		if !utf8.ValidString(v.String()) {
			w.fail(fmt.Errorf("%q is not UTF-8 text", v.String()))
		}
		return scalarText(v.String())
	case reflect.Float64:
		return strconv.FormatFloat(v.Float(), 'f', -1, 64)
	case reflect.Bool:
		return strconv.FormatBool(v.Bool())
	default:
		return strconv.FormatInt(v.Int(), 10)
	}
}

func (w *writer) fail(err error) {
	if w.err == nil {
		w.err = err
	}
}

// plainText is text that means itself without quotes, anywhere in YAML.
var plainText = regexp.MustCompile(`^\pL[\pL\pN/.'()°½¼¾%-]*( [\pL\pN(°½¼¾][\pL\pN/.'()°½¼¾%-]*)*$`)

// plainLine is text of several words that means itself without quotes after a
// colon, to the end of the line.
var plainLine = regexp.MustCompile(`^\pL[\pL\pN/.'()°½¼¾%;,-]*( [\pL\pN(°½¼¾][\pL\pN/.'()°½¼¾%;,-]*)+$`)

// scalarText is a text as one value: plain where it is safe, else in double quotes.
func scalarText(s string) string {
	switch strings.ToLower(s) {
	case "true", "false", "null", "yes", "no", "on", "off", "y", "n":
		return quote(s)
	}
	if plainText.MatchString(s) {
		return s
	}
	return quote(s)
}

// quote is a double-quoted YAML text on one line.
func quote(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteRune('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\r':
			b.WriteString(`\r`)
		case r == '\t':
			b.WriteString(`\t`)
		case r > 0xffff && !unicode.IsPrint(r):
			fmt.Fprintf(&b, `\U%08x`, r)
		case r != ' ' && !unicode.IsPrint(r):
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// blockLine is a line that stands in a block as it is.
var blockLine = regexp.MustCompile(`^([\pL\pN\pP\pS]([ \pL\pN\pP\pS]*[\pL\pN\pP\pS])?)?$`)

// block says that a text is best written as a block: several lines without
// leading or trailing space.
func block(s string) bool {
	lines := strings.Split(strings.TrimSuffix(s, "\n"), "\n")
	if len(lines) < 2 || lines[0] == "" || lines[len(lines)-1] == "" {
		return false
	}
	for _, line := range lines {
		if !blockLine.MatchString(line) {
			return false
		}
	}
	return utf8.ValidString(s)
}

func (w *writer) block(s string, indent int) {
	if strings.HasSuffix(s, "\n") {
		w.WriteString(" |\n")
	} else {
		w.WriteString(" |-\n")
	}
	for line := range strings.SplitSeq(strings.TrimSuffix(s, "\n"), "\n") {
		if line != "" {
			w.WriteString(strings.Repeat(" ", indent) + line)
		}
		w.WriteString("\n")
	}
}

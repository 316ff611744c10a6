package web

import (
	"errors"
	"maps"
	"net/url"
	"reflect"
	"slices"
	"sort"
	"strconv"
	"strings"

	"plait.example/internal/practical"
)

// What a check box sends. A hidden field before it sends off, so that an
// unticked box is told from one that was not on the page.
const (
	on  = "on"
	off = "off"
)

// apply puts what was typed into the practical, path by path, under the
// prefixes that the page may change. What cannot be read stays as it was and
// becomes a fault at its path. Names that are no paths (the version, buttons)
// are passed over.
func apply(p *practical.Practical, form url.Values, prefixes ...string) practical.Faults {
	var faults practical.Faults
	var changed, dropped []string
	for _, name := range ordered(form) {
		if !slices.ContainsFunc(prefixes, func(p string) bool { return within(name, p) }) {
			continue
		}
		if form.Get(name) == shown(p, name) && len(form[name]) == 1 {
			continue // untouched
		}
		if emptied(name) && strings.TrimSpace(form.Get(name)) == "" {
			dropped = append(dropped, name)
			continue
		}
		at, err := find(p, name, true)
		if err != nil {
			continue
		}
		if fault := set(at, form[name]); fault != nil {
			fault.Field, fault.Code = name, practical.Invalid
			faults = append(faults, *fault)
			continue
		}
		changed = append(changed, name)
	}
	for _, name := range changed {
		follow(p, name)
		widen(p, name, changed)
	}
	for _, name := range slices.Backward(dropped) {
		drop(p, name)
	}
	return faults
}

// follow takes away what a changed place or attention leaves without a meaning:
// a temperature outside an oven, shelves where there are none, the minutes
// between looks that nobody takes.
func follow(p *practical.Practical, path string) {
	of, last, _ := cutLast(path)
	at, err := find(p, of, false)
	if err != nil {
		return
	}
	w, ok := at.Interface().(*practical.Wait)
	if !ok || w == nil {
		return
	}
	switch last {
	case "place":
		if w.Place != practical.AtOven {
			w.Celsius, w.Band, w.DoorShut = 0, 0, 0
		}
		if w.Place != practical.AtOven && w.Place != practical.AtFridge && w.Place != practical.AtFreezer {
			w.Shelves = 0
		}
	case "attention":
		if w.Attention != practical.Look {
			w.Every = 0
		}
	}
}

// widen takes the low and the high minutes of hands along with likely ones that
// were typed alone and lie outside them.
func widen(p *practical.Practical, path string, changed []string) {
	of, is := strings.CutSuffix(path, ".hands.likely")
	if !is || slices.Contains(changed, of+".hands.low") || slices.Contains(changed, of+".hands.high") {
		return
	}
	at, err := find(p, of+".hands", false)
	if err != nil || !at.CanAddr() {
		return
	}
	if e, ok := at.Addr().Interface().(*practical.Estimate); ok && (e.Likely < e.Low || e.Likely > e.High) {
		around := practical.Around(e.Likely)
		if e.Likely < e.Low {
			e.Low = around.Low
		} else {
			e.High = around.High
		}
	}
}

// cutLast cuts a path before its last name.
func cutLast(path string) (of, last string, found bool) {
	i := strings.LastIndex(path, ".")
	if i < 0 {
		return "", path, false
	}
	return path[:i], path[i+1:], true
}

// emptied says whether emptying this value takes away what it belongs to: a
// wait without a place, an order without a step.
func emptied(path string) bool {
	return strings.HasSuffix(path, ".wait.place") || strings.HasSuffix(path, "].step")
}

// drop takes away the wait or the order whose first value is at the path.
func drop(p *practical.Practical, path string) {
	path = path[:strings.LastIndex(path, ".")]
	if list, digits, indexed := strings.Cut(strings.TrimSuffix(path, "]"), "after["); indexed {
		at, err := find(p, list+"after", false)
		n, bad := strconv.Atoi(digits)
		if err == nil && bad == nil && n < at.Len() {
			at.Set(reflect.AppendSlice(at.Slice3(0, n, n), at.Slice(n+1, at.Len())))
		}
		return
	}
	if at, err := find(p, path, false); err == nil && at.CanSet() {
		at.SetZero()
	}
}

// ordered is the names of a form, entry 10 of a list after entry 9.
func ordered(form url.Values) []string {
	names := slices.Collect(maps.Keys(form))
	sort.Slice(names, func(i, j int) bool { return natural(names[i]) < natural(names[j]) })
	return names
}

// shown is what a page shows of the value at a path: an empty choice shows as
// its first answer.
func shown(p *practical.Practical, path string) string {
	text := read(p, path)
	if w := words[pattern(path)]; text == "" && w.kind == choice && len(w.options) > 0 {
		return w.options[0].Value
	}
	return text
}

// within says whether a path is a prefix itself or lies below it.
func within(path, prefix string) bool {
	rest, ok := strings.CutPrefix(path, prefix)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

// natural pads the numbers of a path, so that entry 10 sorts after entry 9.
func natural(path string) string {
	var b strings.Builder
	for run := range strings.SplitSeq(path, "[") {
		if digits, tail, ok := strings.Cut(run, "]"); ok {
			b.WriteString(strings.Repeat("0", max(0, 8-len(digits))) + digits + tail)
			continue
		}
		b.WriteString(run)
	}
	return b.String()
}

// set reads the text typed for one value. The fault it gives has no path yet.
func set(at reflect.Value, typed []string) *practical.Fault {
	last := ""
	if len(typed) > 0 {
		last = strings.ReplaceAll(typed[len(typed)-1], "\r\n", "\n")
	}
	if at.Type() == reflect.TypeFor[practical.TimeOfDay]() {
		return setTime(at, last)
	}
	switch at.Kind() {
	case reflect.String:
		at.SetString(strings.TrimSpace(last))
	case reflect.Bool:
		at.SetBool(last == on)
	case reflect.Int:
		return setInt(at, last)
	case reflect.Slice:
		setList(at, typed)
	case reflect.Pointer:
		if strings.TrimSpace(last) == "" {
			at.SetZero()
			return nil
		}
		value := reflect.New(at.Type().Elem())
		if fault := set(value.Elem(), typed); fault != nil {
			return fault
		}
		at.Set(value)
	}
	return nil
}

func setTime(at reflect.Value, text string) *practical.Fault {
	if strings.TrimSpace(text) == "" {
		return &practical.Fault{Message: "no time is given", Hint: "write it like 09:05"}
	}
	t, err := practical.ParseTimeOfDay(text)
	if err != nil {
		return &practical.Fault{Message: quote(text) + " is not a time of day", Hint: "write it like 09:05"}
	}
	at.SetInt(int64(t))
	return nil
}

// units are what people write after a number and mean nothing more by.
var units = []string{"minutes", "minute", "mins", "min", "°c", "°", "c", "%", "per cent"}

func setInt(at reflect.Value, text string) *practical.Fault {
	digits := strings.ToLower(strings.TrimSpace(text))
	for _, unit := range units {
		if rest, ok := strings.CutSuffix(digits, unit); ok {
			digits = strings.TrimSpace(rest)
			break
		}
	}
	if digits == "" {
		at.SetInt(0)
		return nil
	}
	n, err := strconv.Atoi(digits)
	if errors.Is(err, strconv.ErrRange) || err == nil && (n > most || n < -most) {
		return &practical.Fault{Message: quote(text) + " is too large", Hint: "write a smaller whole number"}
	}
	if err != nil {
		return &practical.Fault{Message: quote(text) + " is not a whole number", Hint: "write digits, such as 10"}
	}
	at.SetInt(int64(n))
	return nil
}

// most is the largest number that a form takes; the practical's own rules are tighter.
const most = 1_000_000

// setList reads ticked boxes (several values) or one line of words with commas.
func setList(at reflect.Value, typed []string) {
	list := reflect.MakeSlice(at.Type(), 0, len(typed))
	for _, text := range typed {
		for word := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ',' || r == '\n' || r == '\r' }) {
			if word = strings.TrimSpace(word); word != "" {
				entry := reflect.New(at.Type().Elem()).Elem()
				entry.SetString(word)
				list = reflect.Append(list, entry)
			}
		}
	}
	if list.Len() == 0 {
		at.SetZero()
		return
	}
	at.Set(list)
}

// quote shows what was typed, shortened.
func quote(text string) string {
	const longest = 40
	if runes := []rune(text); len(runes) > longest {
		text = string(runes[:longest]) + "…"
	}
	return "“" + text + "”"
}

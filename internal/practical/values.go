package practical

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// span is the least and greatest a number may be, both allowed.
type span struct {
	least, most int
	unit        string
}

// spans are the ranges of the numbers, by type and by the file's name of the
// field. The schema says the same (a test compares them).
var spans = map[string]span{
	"Practical.cooks":         {1, 2, "cooks"},
	"Extra.set-up":            {0, 100, "per cent"},
	"Extra.cook":              {0, 100, "per cent"},
	"Extra.serve":             {0, 100, "per cent"},
	"Break.minutes":           {1, 120, "minutes"},
	"Rules.dishes":            {0, MaxDishes, "dishes"},
	"Rules.tasting":           {0, 60, "minutes"},
	"Rules.clean-down":        {0, 60, "minutes"},
	"Rules.wash-up-every":     {0, 240, "minutes"},
	"Rules.wash-up":           {0, 30, "minutes"},
	"Rules.raw-clean-down":    {0, 30, "minutes"},
	"Rules.rinse":             {0, 30, "minutes"},
	"Rules.serving-window":    {1, 120, "minutes"},
	"Rules.looks":             {1, 6, "waits"},
	"Kitchen.rings":           {0, 12, "rings"},
	"Kitchen.processors":      {0, 12, "processors"},
	"Kitchen.mixers":          {0, 12, "mixers"},
	"Kitchen.microwaves":      {0, 12, "microwaves"},
	"Kitchen.fridge-shelves":  {0, 30, "shelves"},
	"Kitchen.freezer-shelves": {0, 30, "shelves"},
	"Oven.shelves":            {1, 10, "shelves"},
	"Oven.preheat":            {0, 60, "minutes"},
	"Oven.up":                 {0, 60, "minutes"},
	"Oven.down":               {0, 60, "minutes"},
	"Oven.door-recovery":      {0, 30, "minutes"},
	"Taken.number":            {1, 30, "pieces"},
	"GasMark.celsius":         {50, 300, "°C"},
	"GasMark.fan":             {0, 300, "°C"},
	"GasMark.fahrenheit":      {0, 575, "°F"},
	"Dish.portions":           {0, 100, "portions"},
	"Ingredient.quantity":     {0, 1_000_000, ""},
	"Ingredient.most":         {0, 1_000_000, ""},
	"Serve.minutes":           {0, 60, "minutes"},
	"Serve.within":            {0, 240, "minutes"},
	"Estimate.low":            {0, 600, "minutes"},
	"Estimate.likely":         {0, 600, "minutes"},
	"Estimate.high":           {0, 600, "minutes"},
	"Step.doubt":              {0, 1, ""},
	"Wait.least":              {0, 1440, "minutes"},
	"Wait.most":               {0, 1440, "minutes"},
	"Wait.band":               {0, 50, "°C"},
	"Wait.shelves":            {0, 10, "shelves"},
	"Wait.every":              {0, 240, "minutes"},
	"Wait.door-shut":          {0, 240, "minutes"},
	"Wait.put-in":             {0, 30, "minutes"},
	"Wait.take-out":           {0, 30, "minutes"},
	"After.least":             {0, 1440, "minutes"},
	"After.most":              {0, 1440, "minutes"},
}

// choices are the numbers that allow a few figures only.
var choices = map[string][]int{
	"Clock.hours": {12, 24},
	"Clock.round": {1, 5},
}

// needed are the texts that must not be empty.
var needed = map[string]string{
	"Practical.title":      "give the practical a title",
	"Dish.letter":          "give the dish a letter, A to Z",
	"Ingredient.raw":       "write the line of the recipe's list",
	"Oven.name":            "name the oven, such as left oven",
	"Step.id":              "give the step an id, such as A3",
	"Step.text":            "say what is to be done",
	"After.step":           "name the step it comes after, such as A3",
	"Pin.row":              "name the row it holds, such as A3/hands",
	"GasMark.mark":         "name the mark, such as 4",
	"Rules.set-up-verbs[]": "write a verb such as weigh",
}

// values judges every single value by its type and range, wherever it stands.
func (j *judge) values(v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			j.values(v.Elem(), path)
		}
	case reflect.Slice:
		if v.Len() > maxListing {
			j.faultf(path, fmt.Sprintf("at most %d", maxListing), "the list has %d entries", v.Len())
			return
		}
		for i := range v.Len() {
			j.values(v.Index(i), fmt.Sprintf("%s[%d]", path, i))
		}
	case reflect.Struct:
		for i, name := range fieldNames(v.Type()) {
			j.value(v.Field(i), join(path, name), v.Type().Name()+"."+name)
			j.values(v.Field(i), join(path, name))
		}
	case reflect.String:
		j.word(v, path)
	}
}

// value judges one field of a struct by its row in the tables above.
func (j *judge) value(v reflect.Value, path, name string) {
	if v.Kind() == reflect.Pointer && !v.IsNil() {
		v = v.Elem()
	}
	switch v.Kind() {
	case reflect.String:
		if hint := needed[name]; hint != "" && strings.TrimSpace(v.String()) == "" {
			j.fault(path, "nothing is written here", hint)
		}
	case reflect.Slice:
		if hint := needed[name+"[]"]; hint != "" {
			for i := range v.Len() {
				if strings.TrimSpace(v.Index(i).String()) == "" {
					j.fault(fmt.Sprintf("%s[%d]", path, i), "nothing is written here", hint)
				}
			}
		}
	case reflect.Float64:
		s := spans[name]
		if f := v.Float(); math.IsNaN(f) || f < float64(s.least) || f > float64(s.most) {
			j.faultf(path, s.String(), "%g is out of range", f)
		}
	case reflect.Int:
		j.number(v, path, name)
	}
}

func (j *judge) number(v reflect.Value, path, name string) {
	n := int(v.Int())
	if s, ok := spans[name]; ok && (n < s.least || n > s.most) {
		j.faultf(path, s.String(), "%d is out of range", n)
	}
	if allowed := choices[name]; allowed != nil && !slices.Contains(allowed, n) {
		j.faultf(path, fmt.Sprintf("%d or %d", allowed[0], allowed[1]), "%d is not known here", n)
	}
	if v.Type() == reflect.TypeFor[TimeOfDay]() && (n < 0 || n > int(lastMinute)) {
		j.faultf(path, "00:00 to 23:59, or to 47:59 for the day after", "%d minutes after midnight is not a time of day", n)
	}
}

// word judges a text: its letters, its length, and its place in a fixed list.
func (j *judge) word(v reflect.Value, path string) {
	s, most := v.String(), maxText
	pasted := strings.HasSuffix(path, "].text") && strings.Count(path, "[") == 1
	if pasted {
		most = maxPasted
	}
	switch {
	case !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool { return unwritable(r, pasted) }):
		j.fault(path, "the text holds characters that cannot be written", "type it again as plain text")
	case len(s) > most:
		j.faultf(path, fmt.Sprintf("at most %d bytes", most), "the text has %d bytes", len(s))
	}
	allowed := words[v.Type()]
	if allowed == nil || s == "" && mayBeEmpty[v.Type()] || slices.Contains(allowed, s) {
		return
	}
	j.faultf(path, oneOf(s, allowed), "%q is not known here", clip(s))
}

// unwritable says that a letter cannot be shown or printed. A recipe as it was
// pasted may hold what word processors leave in it; it is kept, not printed.
func unwritable(r rune, pasted bool) bool {
	switch r {
	case '\n', '\r', '\t':
		return false
	case 0:
		return true
	}
	return !pasted && (unicode.IsControl(r) || r == '\ufeff')
}

func (s span) String() string {
	return strings.TrimSpace(fmt.Sprintf("%d to %d %s", s.least, s.most, s.unit))
}

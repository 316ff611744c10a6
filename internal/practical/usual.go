package practical

import "reflect"

// usual are the values of what a file leaves out, per type. What is not here is
// zero or empty, save clock, rules and kitchen (see startingpoints.go).
var usual = []any{
	Oven{Name: "oven", Fuel: Electric, Shelves: 2}, // two shelves in a domestic oven: common practice, no source
	Taken{Number: 1},
	Dish{Serve: Serve{Heat: AsIs, Minutes: 5}}, // plating 5, 8 or 15 minutes: the least, common practice, no source
	Serve{Heat: AsIs, Minutes: 5},
}

// usualOf is the usual value of a type, if it has one other than zero.
func usualOf(t reflect.Type) (reflect.Value, bool) {
	for _, u := range usual {
		if reflect.TypeOf(u) == t {
			v := reflect.New(t).Elem()
			v.Set(reflect.ValueOf(u))
			return v, true
		}
	}
	return reflect.Zero(t), false
}

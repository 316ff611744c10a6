package practical

import (
	"fmt"
	"reflect"
	"strconv"
)

// timeOfDay reads what ParseTimeOfDay reads.
func (d *decoder) timeOfDay(n *node, v reflect.Value, path string) bool {
	if n.kind != scalar {
		d.fault(n, path, "a time of day was expected here, not "+n.kind.String(), "write it like 09:05")
		return true
	}
	t, err := ParseTimeOfDay(n.text)
	if err != nil {
		d.fault(n, path, fmt.Sprintf("%q is not a time of day", clip(n.text)), "write it like 09:05")
	}
	v.SetInt(int64(t))
	return true
}

// estimate reads one number of minutes as the likely one; see Around.
func (d *decoder) estimate(n *node, v reflect.Value, path string) bool {
	if n.kind == table {
		return false
	}
	minutes, err := strconv.Atoi(n.text)
	if n.kind != scalar || err != nil || !n.plain {
		d.fault(n, path, "minutes were expected here", "write one whole number, such as 8, or {low: 6, likely: 8, high: 11}")
		return true
	}
	v.Set(reflect.ValueOf(Around(minutes)))
	return true
}

// after reads the id of a step alone.
func (d *decoder) after(n *node, v reflect.Value, path string) bool {
	if n.kind != scalar {
		return false
	}
	v.Set(reflect.ValueOf(After{Step: n.text}))
	d.at[path+".step"] = n
	return true
}

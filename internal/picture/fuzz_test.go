package picture

import "testing"

// FuzzPlait draws any plan, in any size: it never panics and is always well-formed.
func FuzzPlait(f *testing.F) {
	for seed := range uint64(20) {
		f.Add(seed, 300+int(seed)*70, seed%2 == 0, seed%3 == 0)
	}
	f.Fuzz(func(t *testing.T, seed uint64, width int, rows, large bool) {
		p := randomPlan(seed)
		checkClean(t, Plait(p, Options{Width: width, Rows: rows, Large: large}))
		Words(p)
	})
}

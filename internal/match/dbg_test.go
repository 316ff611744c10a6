package match

import (
	"fmt"
	"os"
	"sort"
	"strconv"
	"strings"
	"testing"
)

func TestDbg(t *testing.T) {
	folder, name, row := os.Getenv("F"), os.Getenv("N"), os.Getenv("R")
	n, _ := strconv.Atoi(row)
	for _, e := range readExamples(t, folder) {
		if !strings.HasPrefix(e.name, name) {
			continue
		}
		k := learn(e.practical)
		m := Match(e.plan, e.practical, nil)
		var pieces []piece
		for i := range m.Rows {
			pieces = append(pieces, k.piecesOf(i, m.Rows[i].Row, m.Rows[i].Acts)...)
		}
		fit := make([][]float64, len(pieces))
		at := make([]int, len(pieces))
		for i := range pieces {
			at[i] = -1
			for j := range k.steps {
				fit[i] = append(fit[i], k.fits(&pieces[i], &k.steps[j]))
			}
		}
		seen := fit
		for r := range rounds {
			k.choose(m.Plan, pieces, seen)
			for i := range at {
				at[i] = -1
			}
			for d := range k.dishes {
				k.align(d, ofDish(pieces, d), pieces, seen, at)
			}
			for i := range pieces {
				if pieces[i].row != n-1 {
					continue
				}
				p := pieces[i]
				a := "-"
				if at[i] >= 0 {
					a = k.steps[at[i]].id
				}
				type c struct {
					id   string
					f, b float64
				}
				var cs []c
				for j := range k.steps {
					cs = append(cs, c{k.steps[j].id, seen[i][j], fit[i][j]})
				}
				sort.Slice(cs, func(x, y int) bool { return cs[x].f > cs[y].f })
				s := ""
				for _, x := range cs[:6] {
					s += fmt.Sprintf(" %s %.2f(%.2f)", x.id, x.f, x.b)
				}
				fmt.Printf("round %d %s/%s %v dish %d -> %s |%s\n", r, p.kind, p.verb, p.words, p.dish, a, s)
			}
			seen = k.context(pieces, fit, at)
		}
	}
}

//go:build ignore

// Choose searches for the eight inks of inks.go. It climbs from random
// palettes, moving one ink at a time, and keeps what raises the worst ratio of a
// colour difference to its goal: over all pairs, in common sight, in the three
// deficiencies and in grey, with higher goals for the first four inks. Same seed, same inks.
//
//	go run choose.go -steps 60000 -starts 40 | sort -r
package main

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"

	"plait.example/internal/colour"
)

// lch is lightness, chroma and hue in CIELAB.
type lch struct{ l, c, h float64 }

// window keeps an ink a hue that has a plain name, and calm enough for a page.
type window struct{ l0, l1, c0, c1, h0, h1 float64 }

// windows of the eight inks: blue, amber, teal, rose, then what is left between them.
var windows = [8]window{
	{22, 46, 40, 72, 258, 292},
	{50, 58, 45, 75, 55, 82},
	{30, 55, 28, 60, 150, 190},
	{22, 48, 40, 70, -20, 20},
	{18, 57, 30, 80, 300, 330},
	{18, 57, 28, 75, 100, 140},
	{18, 57, 30, 75, 28, 52},
	{18, 57, 26, 60, 195, 250},
}

func (w window) holds(p lch) bool {
	return p.l >= w.l0 && p.l <= w.l1 && p.c >= w.c0 && p.c <= w.c1 && p.h >= w.h0 && p.h <= w.h1
}

const paper = "#F4EEE1" // the darkest ground that a line is drawn on

func (p lch) hex() (string, bool) {
	a, b := p.c*math.Cos(p.h*math.Pi/180), p.c*math.Sin(p.h*math.Pi/180)
	fy := (p.l + 16) / 116
	inv := func(t float64) float64 {
		if t > 6.0/29 {
			return t * t * t
		}
		return 3 * 36.0 / 841 * (t - 4.0/29)
	}
	x, y, z := 0.95047*inv(fy+a/500), inv(fy), 1.08883*inv(fy-b/200)
	c := colour.RGB{
		R: 3.2404542*x - 1.5371385*y - 0.4985314*z,
		G: -0.9692660*x + 1.8760108*y + 0.0415560*z,
		B: 0.0556434*x - 0.2040259*y + 1.0572252*z,
	}
	in := func(v float64) bool { return v >= -0.0005 && v <= 1.0005 }
	return c.Hex(), in(c.R) && in(c.G) && in(c.B)
}

// around is the lightest ink of the same hue that can be read as text on the
// ground and on its own tint, and the tint.
func around(p lch) (text, tint string) {
	tint, _ = lch{95.5, min(p.c/5, 9), p.h}.hex()
	for l := p.l; ; l -= 0.25 {
		for c := p.c; c > 0; c-- {
			if hex, ok := (lch{l, c, p.h}).hex(); ok {
				if min(colour.Contrast(hex, paper), colour.Contrast(hex, tint)) >= 4.6 {
					return hex, tint
				}
				break
			}
		}
	}
}

// sight is one ink as the five kinds of eyes see it.
type sight [5]colour.Lab

func see(hex string) sight {
	lab := func(h string) colour.Lab { c, _ := colour.Parse(h); return c.Lab() }
	s := sight{lab(hex)}
	for i, d := range colour.Deficiencies() {
		s[1+i] = lab(colour.See(hex, d))
	}
	s[4] = lab(colour.Grey(hex))
	return s
}

// goals by kind of sight, for pairs among the first four and for all pairs.
var (
	first = sightGoals{34, 22, 22, 18, 10.5}
	every = sightGoals{17, 10, 10, 9, 4.2}
)

type sightGoals [5]float64

func score(p []sight) float64 {
	worst, sum := math.Inf(1), 0.0
	for i := range p {
		for j := range i {
			goals := every
			if i < 4 {
				goals = first
			}
			for k := range goals {
				r := colour.DeltaE(p[i][k], p[j][k]) / goals[k]
				worst = min(worst, r)
				sum += min(r, 1.5)
			}
		}
	}
	return worst + sum*1e-5
}

func main() {
	seed := flag.Uint64("seed", 1, "")
	steps := flag.Int("steps", 60000, "")
	starts := flag.Int("starts", 12, "")
	flag.Parse()
	rng := rand.New(rand.NewPCG(*seed, 0))
	fresh := func(i int) (lch, string) {
		w := windows[i]
		for {
			p := lch{w.l0 + (w.l1-w.l0)*rng.Float64(), w.c0 + (w.c1-w.c0)*rng.Float64(), w.h0 + (w.h1-w.h0)*rng.Float64()}
			if hex, ok := p.hex(); ok && colour.Contrast(hex, paper) >= 3.05 {
				return p, hex
			}
		}
	}
	for range *starts {
		inks, hexes, eyes := make([]lch, 8), make([]string, 8), make([]sight, 8)
		for i := range inks {
			inks[i], hexes[i] = fresh(i)
			eyes[i] = see(hexes[i])
		}
		best := score(eyes)
		for step := range *steps {
			i := rng.IntN(8)
			p, hex := fresh(i)
			if rng.Float64() < 0.9 {
				size := 1 - float64(step)/float64(*steps)
				p = lch{inks[i].l + 12*size*rng.NormFloat64(), inks[i].c + 20*size*rng.NormFloat64(), inks[i].h + 40*size*rng.NormFloat64()}
				var ok bool
				if hex, ok = p.hex(); !ok || !windows[i].holds(p) || colour.Contrast(hex, paper) < 3.05 {
					continue
				}
			}
			old := eyes[i]
			eyes[i] = see(hex)
			if s := score(eyes); s > best {
				best, inks[i], hexes[i] = s, p, hex
			} else {
				eyes[i] = old
			}
		}
		fmt.Printf("%.3f", best)
		for i, p := range inks {
			text, tint := around(p)
			fmt.Printf(" {%q, %q, %q}", hexes[i], text, tint)
		}
		fmt.Println()
	}
}

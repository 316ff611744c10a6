package picture

import "plait.example/internal/practical"

// across sets everything that stands side by side: clock times, lanes, words.
func (f *frame) across() {
	u := f.u
	f.clockRight = 50 * u
	if f.narrow() {
		f.clockRight = 46 * u
	}
	left, right := f.clockRight+12*u, f.width-10*u
	if f.withWords() {
		right = left + min(max(0.52*f.width-left, 200), 680*u)
	}
	right = left + f.spread(left, right-left)
	f.plaitRight = right
	if f.withWords() {
		f.wordsLeft = right + 18*u
		f.wordsRight = f.width - 12*u
	}
}

// gutter is the edge of an oven's lane that carries its setting.
const gutter = 19.0

// spread gives the lanes their places from left on, in at most room pixels,
// and returns how much they take. A lane is as wide as its sub-lanes, and wide enough
// for a tag where food waits in it, as far as there is room.
func (f *frame) spread(left, room float64) float64 {
	u := f.u
	hands := min((40*float64(f.hands)+16)*u, room/3)
	widths := func(step, ease float64) (all []float64, sum float64) {
		for _, l := range f.lanes {
			w := max(step*(float64(l.subs)+0.7), ease*f.leastWidth(l))
			switch l.place {
			case practical.Served: // a badge ends each strand
				w = max(w, min(15*u*(float64(l.subs)+0.7), room/5))
			case practical.AtHands:
				w = hands
			case practical.AtOven:
				w += gutter * u
			}
			all, sum = append(all, w), sum+w
		}
		return all, sum
	}
	ease, step := 1.0, 9*u
	for _, sum := widths(step, ease); sum > room && ease > 0.05; _, sum = widths(step, ease) {
		ease -= 0.1
	}
	for _, sum := widths(step, ease); sum > room && step > 0.5; _, sum = widths(step, ease) {
		step *= 0.9
	}
	for _, sum := widths(step+0.5, ease); sum <= room && step < 30*u; _, sum = widths(step+0.5, ease) {
		step += 0.5
	}
	all, sum := widths(step, ease)
	x := left
	for i, l := range f.lanes {
		l.left, l.right = x, x+all[i]
		x = l.right
		wide := all[i]
		if l.place == practical.AtOven {
			wide -= gutter * u
		}
		for _, p := range l.pieces {
			p.x = l.subX(p.sub, wide/(float64(l.subs)+0.7))
		}
	}
	return sum
}

// leastWidth is how wide a lane would like to be: its name, or a tag.
func (f *frame) leastWidth(l *lane) float64 {
	least := textWidth(l.name, headSize*f.u, true) + 10*f.u
	for _, p := range l.pieces {
		if p.wait != nil {
			wide, _ := f.tagSize(f.tagLines(p))
			least = max(least, wide+4*f.u)
		}
	}
	return least
}

// subX is where a sub-lane runs: the first is nearest to the hands.
func (l *lane) subX(sub int, step float64) float64 {
	along := step * (0.85 + float64(sub))
	if l.rightOfHands() {
		return l.left + along
	}
	return l.right - along
}

func (l *lane) rightOfHands() bool {
	switch l.place {
	case practical.AtHob, practical.AtOven, practical.AtGrill, practical.AtMicrowave, practical.Served:
		return true
	}
	return false
}

// handsLane is the lane in the middle.
func (f *frame) handsLane() *lane {
	for _, l := range f.lanes {
		if l.place == practical.AtHands {
			return l
		}
	}
	return nil
}

// handsX is where a row's mark stands.
func (f *frame) handsX(row int) float64 { return f.columnX(float64(f.columns[row])) }

// columnX is the middle of a column of the hands' lane; halves lie between.
func (f *frame) columnX(column float64) float64 {
	l := f.handsLane()
	inset := 0.0
	if f.hands > 1 {
		inset = min(8*f.u, (l.right-l.left)/8)
	}
	step := (l.right - l.left - 2*inset) / float64(f.hands)
	return l.left + inset + step*(column+0.5)
}

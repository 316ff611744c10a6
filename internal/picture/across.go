package picture

import "plait.example/internal/practical"

// across sets everything that stands side by side: clock times, lanes, words.
func (f *frame) across() {
	u := f.u
	f.clockRight = 46 * u
	if f.narrow() {
		f.clockRight = 40 * u
	}
	left, right := f.clockRight+14*u, f.width-12*u
	if f.withWords() {
		right = left + min(max(0.44*f.width-left, 200), 640*u)
	}
	right = left + f.spread(left, right-left)
	f.plaitRight = right
	if f.withWords() {
		f.wordsLeft = right + 18*u
		f.wordsRight = f.width - 12*u
	}
}

// spread gives the lanes their places from left on, in at most room pixels,
// and returns how much they take.
func (f *frame) spread(left, room float64) float64 {
	u := f.u
	hands := (40*float64(f.hands) + 16) * u
	gutters, units := 0.0, 0.0
	for _, l := range f.lanes {
		switch l.place {
		case practical.AtHands:
		case practical.AtOven:
			gutters += 15 * u
			fallthrough
		default:
			units += float64(l.subs) + 0.7
		}
	}
	if hands > room/3 {
		hands = room / 3
	}
	step := 0.0
	if units > 0 {
		step = max(2, min((room-hands-gutters)/units, 34*u))
	}
	x := left
	for _, l := range f.lanes {
		l.left = x
		switch l.place {
		case practical.AtHands:
			x += hands
		case practical.AtOven:
			x += 15 * u
			fallthrough
		default:
			x += step * (float64(l.subs) + 0.7)
		}
		l.right = x
		for _, p := range l.pieces {
			p.x = l.subX(p.sub, step)
		}
	}
	return x - left
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
func (f *frame) handsX(row int) float64 {
	l := f.handsLane()
	step := (l.right - l.left) / float64(f.hands)
	if f.hands > 1 {
		inset := min(8*f.u, (l.right-l.left)/8)
		step = (l.right - l.left - 2*inset) / float64(f.hands)
		return l.left + inset + step*(float64(f.columns[row])+0.5)
	}
	return l.left + step/2
}

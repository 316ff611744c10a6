package written

import "slices"

// layout says what the columns of a table hold.
type layout struct {
	columns         []column
	heads           map[int]bool // rows that are headings
	first           int          // the first row below them
	time, until     int          // columns; -1: none
	minutes         int
	text            []int // the main one first
	dish            []int
	points, besides []int
	perDish         []int // a column for each dish
	marks           []int // a column for each dish, with ticks
	runs            mode  // of the time column
	stamped         int
	base            int // from when it counts, as its heading says, in minutes after midnight, and one more; 0: it does not
	across          int // rows that are a time alone, for the rows under them
}

// layoutOf finds what the columns hold; known says whether a heading is a dish.
func layoutOf(g *grid, known func(string) bool) layout {
	l := layout{heads: map[int]bool{}, time: -1, until: -1, minutes: -1, columns: make([]column, g.width)}
	l.findHeads(g, known)
	for c := range l.columns {
		l.columns[c].measure(g, c, l.first, l.heads)
	}
	l.ledTimes()
	l.chooseTimes()
	l.countAcross(g)
	l.chooseText(known)
	l.chooseRest(known)
	return l
}

// ledTimes takes a column of times with words after them for one of times, when
// its heading says so and another column says what is done.
func (l *layout) ledTimes() {
	for c := range l.columns {
		k := &l.columns[c]
		if k.role != timeRole || k.led == 0 {
			continue
		}
		for other, o := range l.columns {
			if other != c && o.role == textRole && o.texts > 0 {
				k.stamps, k.texts, k.mode, k.led = k.stamps+k.led, k.texts-k.led, k.ledMode, 0
				k.share = float64(k.stamps) / float64(k.filled)
				break
			}
		}
	}
}

// chooseTimes finds the columns of times: the one with clock times, else one
// that counts from the start; and how long.
func (l *layout) chooseTimes() {
	for _, wanted := range []struct {
		roles []role
		modes []mode
		share float64
	}{
		{[]role{timeRole}, []mode{clockMode}, 0.25},
		{[]role{noRole, untilRole, minutesRole, runningRole}, []mode{clockMode}, 0.6},
		{[]role{timeRole, runningRole}, []mode{elapsedMode, runMode}, 0.25},
		{[]role{noRole, minutesRole}, []mode{runMode, elapsedMode}, 0.6},
	} {
		for c, k := range l.columns {
			if l.time < 0 && slices.Contains(wanted.roles, k.role) && slices.Contains(wanted.modes, k.mode) && k.share >= wanted.share && !k.counts {
				l.time, l.runs, l.stamped = c, k.mode, k.stamps
			}
		}
	}
	for c, k := range l.columns {
		if c == l.time || k.stamps == 0 || k.counts {
			continue
		}
		switch {
		case k.mode == clockMode && l.time >= 0 && l.until < 0 && slices.Contains([]role{untilRole, timeRole, noRole}, k.role) && k.share >= 0.5:
			l.until = c
		case l.minutes < 0 && k.mode == lengthMode && slices.Contains([]role{minutesRole, timeRole, runningRole}, k.role),
			l.minutes < 0 && k.mode == lengthMode && k.role == noRole && k.share > 0.8 && k.heading == "",
			l.minutes < 0 && k.mode == runMode && k.role == minutesRole,
			l.minutes < 0 && k.mode == elapsedMode && k.role == minutesRole:
			l.minutes = c
		}
	}
}

// countAcross counts rows that are a time alone, and finds from when a column
// counts: "Minutes after 9.00".
func (l *layout) countAcross(g *grid) {
	for r := l.first; r < len(g.rows); r++ {
		filled := g.filled(r)
		if len(filled) == 1 && g.cell(r, filled[0]).Span > 1 {
			if st, is := readStamp(g.words(r, filled[0])); is && st.kind == clock {
				l.across++
			}
		}
	}
	if l.time >= 0 && (l.runs == runMode || l.runs == elapsedMode) {
		if st := clockIn(l.columns[l.time].heading); st.kind == clock {
			l.base = usualHour(st) + 1
		}
	}
}

// usualHour is what a time means by itself: in the hours in which people cook.
func usualHour(st stamp) int {
	best := st.times[0].at
	for _, o := range st.times {
		if best < 7*60 && o.at > best {
			best = o.at
		}
	}
	return best
}

// taken says whether a column has its role.
func (l *layout) taken(c int) bool { return c == l.time || c == l.until || c == l.minutes }

// chooseText finds the column of what is done, or the columns of the dishes.
func (l *layout) chooseText(known func(string) bool) {
	var unknown, named []int
	best := -1
	for c, k := range l.columns {
		switch {
		case l.taken(c) || k.counts:
		case k.led > 0 && 2*k.led >= k.filled && l.time < 0:
			l.text = append(l.text, c)
			l.stamped += k.led
			best = c
		case k.role == textRole && k.texts > 0:
			l.text = append(l.text, c)
			if best < 0 || k.long > l.columns[best].long {
				best = c
			}
		case k.heading != "" && (known(k.heading) || dishWords.MatchString(k.heading)):
			named = append(named, c)
		case k.role == noRole && k.heading != "" && k.texts > 0:
			unknown = append(unknown, c)
		}
	}
	switch {
	case best >= 0:
		l.text = append([]int{best}, without(l.text, best)...)
		for _, c := range named {
			if l.columns[c].filled > 0 && l.columns[c].long <= 4 {
				l.marks = append(l.marks, c)
			}
		}
	case len(named)+len(unknown) >= 2 && l.time >= 0 && (len(named) > 0 || sparse(l.columns, unknown)):
		l.perDish = union(named, unknown)
	default:
		for c, k := range l.columns {
			if !l.taken(c) && slices.Contains([]role{noRole, dishRole}, k.role) && k.texts > 0 && (best < 0 || k.long > l.columns[best].long) {
				best = c
			}
		}
		if best >= 0 {
			l.text = []int{best}
		}
	}
}

// sparse says whether columns are filled by turns, as dishes beside one another are.
func sparse(columns []column, list []int) bool {
	for _, c := range list {
		if columns[c].long < 5 {
			return false
		}
	}
	return true
}

func without(list []int, one int) []int {
	return slices.DeleteFunc(slices.Clone(list), func(x int) bool { return x == one })
}

// union is the columns of both lists, in the order of the page.
func union(a, b []int) []int {
	all := append(slices.Clone(a), b...)
	slices.Sort(all)
	return slices.Compact(all)
}

// chooseRest gives the other columns their roles.
func (l *layout) chooseRest(known func(string) bool) {
	for c, k := range l.columns {
		switch {
		case l.taken(c) || slices.Contains(l.text, c) || slices.Contains(l.perDish, c) || slices.Contains(l.marks, c):
		case k.counts || k.filled == 0 || k.role == besideRole || k.role == needRole:
			l.besides = append(l.besides, c)
		case k.role == dishRole && k.long < 60:
			l.dish = append(l.dish, c)
		case k.role == pointsRole:
			l.points = append(l.points, c)
		case k.role == noRole && k.heading == "" && len(l.dish) == 0 && k.texts >= 2 && k.long <= 40 && (k.kinds <= 8 && 2*k.kinds <= k.texts || k.long <= 3):
			l.dish = append(l.dish, c)
		case k.texts > 0:
			l.points = append(l.points, c)
		default:
			l.besides = append(l.besides, c)
		}
	}
}

// plan says whether the table is a time plan.
func (l *layout) plan() bool {
	if len(l.text) == 0 && len(l.perDish) == 0 {
		return false
	}
	needs, heads := 0, map[role]bool{}
	for _, k := range l.columns {
		heads[k.role] = true
		if k.role == needRole {
			needs++
		}
	}
	works := heads[textRole] || len(l.perDish) > 0
	switch {
	case l.time < 0 && (l.stamped > 1 || l.across > 1):
		return needs == 0
	case l.time < 0:
		return l.minutes >= 0 && heads[textRole] && needs == 0 && l.columns[l.minutes].stamps > 1
	case l.runs == clockMode && (works || heads[timeRole]):
		return needs == 0 || works && heads[timeRole]
	case l.runs == clockMode:
		return needs == 0 && l.stamped >= 2
	}
	return needs == 0 && (works || heads[timeRole] || heads[runningRole]) && l.stamped >= 2
}

package written

import (
	"strings"
)

// mode is what the times of a column count.
type mode int

// The modes.
const (
	noMode      mode = iota
	clockMode        // times of day
	runMode          // minutes from the start
	elapsedMode      // hours and minutes from the start: 0:00, 0:05, 1:10
	lengthMode       // how long each row takes
)

// column is what is known of a column.
type column struct {
	heading string
	role    role
	mode    mode
	filled  int     // cells with words
	stamps  int     // of them, cells that are a time
	letters int     // letters in all, of cells that are no time
	texts   int     // cells that are no time
	kinds   int     // different texts
	counts  bool    // 1, 2, 3
	led     int     // cells that begin with a time and go on with words
	ledMode mode    // with these
	share   float64 // stamps of the filled
	long    float64 // letters of a text
}

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
}

const farthestHead = 12 // rows down to which headings are looked for

// layoutOf finds what the columns hold; known says whether a heading is a dish.
func layoutOf(g *grid, known func(string) bool) layout {
	l := layout{heads: map[int]bool{}, time: -1, until: -1, minutes: -1, columns: make([]column, g.width)}
	l.findHeads(g, known)
	for c := range l.columns {
		l.columns[c].measure(g, c, l.first, l.heads)
	}
	l.ledTimes()
	l.chooseTimes()
	l.chooseText(known)
	l.chooseRest(known)
	return l
}

// findHeads finds the rows of headings, and the same again further down.
func (l *layout) findHeads(g *grid, known func(string) bool) {
	for r := range min(len(g.rows), farthestHead) {
		if !isHead(g, r, known) {
			continue
		}
		l.heads[r], l.first = true, r+1
		l.name(g, r)
		for r+1 < len(g.rows) && l.second(g, r+1) {
			r++
			l.heads[r], l.first = true, r+1
			l.name(g, r)
		}
		for again := r + 1; again < len(g.rows); again++ {
			for head := range l.heads {
				if head < l.first && g.same(again, head) && len(g.filled(again)) > 0 {
					l.heads[again] = true
					break
				}
			}
		}
		return
	}
}

// name adds a row's words to the headings.
func (l *layout) name(g *grid, r int) {
	for c := range l.columns {
		cell, _ := g.over(r, c)
		if text := plain(cell); text != "" && text != l.columns[c].heading {
			l.columns[c].heading = strings.TrimSpace(l.columns[c].heading + " " + text)
		}
	}
}

// second says whether a row goes on with the headings of the one above: "From" and "To" under "Time".
func (l *layout) second(g *grid, r int) bool {
	roles := 0
	for _, c := range g.filled(r) {
		if _, is := stampOf(g.cell(r, c)); is && wordless(g.words(r, c)) || len(g.words(r, c)) > 30 {
			return false
		}
		if roleOf(g.words(r, c)) != noRole {
			roles++
		}
	}
	above, _ := g.over(r-1, 0)
	return roles >= 2 && (above.Down > 1 || len(g.filled(r)) < g.width || roles == len(g.filled(r)))
}

// wordless says whether a text has a figure in it.
func wordless(text string) bool { return strings.ContainsAny(text, "0123456789") }

// isHead says whether a row holds headings: two of them known, or one a time and
// the others short, or names of dishes.
func isHead(g *grid, r int, known func(string) bool) bool {
	roles, dishes, short := map[role]bool{}, 0, 0
	filled := g.filled(r)
	for _, c := range filled {
		text := g.words(r, c)
		if _, is := stampOf(g.cell(r, c)); is && wordless(text) {
			return false
		}
		if len(text) > longestHeading {
			return false
		}
		if role := roleOf(text); role != noRole {
			roles[role] = true
		}
		if known(text) || dishWords.MatchString(text) {
			dishes++
		}
		if len(text) <= 60 {
			short++
		}
	}
	timed := roles[timeRole] || roles[runningRole] || roles[minutesRole]
	switch {
	case len(filled) < 2:
		return false
	case len(roles) >= 2:
		return timed || roles[textRole] || roles[needRole] || g.head > r
	case roles[timeRole] || roles[runningRole]:
		return short == len(filled) && below(g, r, filled[0])
	}
	return dishes >= 2 && dishes >= len(filled)-1
}

// below says whether times stand under a heading.
func below(g *grid, r, c int) bool {
	for i := r + 1; i < min(len(g.rows), r+4); i++ {
		if _, is := stampOf(g.cell(i, c)); is {
			return true
		}
	}
	return false
}

// measure counts what stands in a column.
func (k *column) measure(g *grid, c, first int, heads map[int]bool) {
	k.role = roleOf(k.heading)
	var stamps, led []stamp
	seen := map[string]bool{}
	k.counts = true
	number := 0
	for r := first; r < len(g.rows); r++ {
		text := g.words(r, c)
		if heads[r] || text == "" || g.cell(r, c).Span == g.width && g.width > 1 {
			continue
		}
		k.filled++
		if st, is := stampOf(g.cell(r, c)); is && ledBy(text) {
			k.led++
			k.counts = false
			led = append(led, st)
		} else if is {
			k.stamps++
			stamps = append(stamps, st)
			if number++; st.kind != digits || st.number != number || st.last >= 0 {
				k.counts = false
			}
			continue
		}
		k.counts = false
		k.texts++
		k.letters += len(text)
		seen[strings.ToLower(text)] = true
	}
	k.kinds = len(seen)
	k.counts = k.counts && number > 1
	if k.filled > 0 {
		k.share = float64(k.stamps) / float64(k.filled)
	}
	if k.texts > 0 {
		k.long = float64(k.letters) / float64(k.texts)
	}
	k.mode, k.ledMode = modeOf(stamps, k.role), modeOf(append(led, stamps...), k.role)
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

// ledBy says whether a text is a time with words after it.
func ledBy(text string) bool {
	for _, line := range strings.Split(text, "\n") {
		if _, is := readStamp(line); strings.TrimSpace(line) != "" && !is {
			_, rest, led := leading(strings.ReplaceAll(text, "\n", " "), false)
			return led && rest != ""
		}
	}
	return false
}

// modeOf finds what the times of a column count.
func modeOf(stamps []stamp, r role) mode {
	var clocks, times, offsets, lengths, small int
	var numbers, minutes []int
	elapsed := true
	for _, st := range stamps {
		switch st.kind {
		case clock:
			clocks++
			at := st.times[0].at
			elapsed = elapsed && at < 6*60
			minutes = append(minutes, at)
		case digits:
			numbers = append(numbers, st.number)
			if len(st.times) > 0 && st.number >= 600 {
				times++
			} else {
				small++
			}
		case length:
			lengths++
			numbers = append(numbers, st.number)
		case offset, plus:
			offsets++
		case noStamp, later, atStart, atSetUp, atFinish, following:
		}
	}
	switch {
	case clocks > 0 && elapsed && minutes[0] < 60 && (len(minutes) == 1 || rises(minutes)) && small+lengths+times == 0:
		if r == minutesRole {
			return lengthMode
		}
		return elapsedMode
	case clocks > 0, times > 0 && times >= small:
		return clockMode
	case offsets > 0 && offsets >= lengths+small:
		return runMode
	case len(numbers) == 0:
		return noMode
	case r == runningRole:
		return runMode
	case len(numbers) > 1 && rises(numbers) && (numbers[0] == 0 || r == timeRole && len(numbers) >= 4):
		return runMode
	}
	return lengthMode
}

// rises says whether numbers never fall, and do not stand still.
func rises(numbers []int) bool {
	for i := 1; i < len(numbers); i++ {
		if numbers[i] < numbers[i-1] {
			return false
		}
	}
	return len(numbers) > 1 && numbers[len(numbers)-1] > numbers[0]
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
			if l.time < 0 && has(wanted.roles, k.role) && has(wanted.modes, k.mode) && k.share >= wanted.share && !k.counts {
				l.time, l.runs, l.stamped = c, k.mode, k.stamps
			}
		}
	}
	for c, k := range l.columns {
		if c == l.time || k.stamps == 0 || k.counts {
			continue
		}
		switch {
		case k.mode == clockMode && l.time >= 0 && l.until < 0 && has([]role{untilRole, timeRole, noRole}, k.role) && k.share >= 0.5:
			l.until = c
		case l.minutes < 0 && k.mode == lengthMode && has([]role{minutesRole, timeRole, runningRole}, k.role),
			l.minutes < 0 && k.mode == lengthMode && k.role == noRole && k.share > 0.8 && k.heading == "",
			l.minutes < 0 && k.mode == runMode && k.role == minutesRole,
			l.minutes < 0 && k.mode == elapsedMode && k.role == minutesRole:
			l.minutes = c
		}
	}
}

func has[T comparable](list []T, one T) bool {
	for _, x := range list {
		if x == one {
			return true
		}
	}
	return false
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
			if !l.taken(c) && has([]role{noRole, dishRole}, k.role) && k.texts > 0 && (best < 0 || k.long > l.columns[best].long) {
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

func without(list []int, one int) (rest []int) {
	for _, x := range list {
		if x != one {
			rest = append(rest, x)
		}
	}
	return rest
}

func union(a, b []int) (all []int) {
	for c := range 1000 {
		if has(a, c) || has(b, c) {
			all = append(all, c)
		}
	}
	return all
}

// chooseRest gives the other columns their roles.
func (l *layout) chooseRest(known func(string) bool) {
	for c, k := range l.columns {
		switch {
		case l.taken(c) || has(l.text, c) || has(l.perDish, c) || has(l.marks, c):
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
	case l.time < 0 && l.stamped > 1:
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

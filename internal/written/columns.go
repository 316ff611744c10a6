package written

import (
	"regexp"
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
		if len(bareWords(text)) == 0 {
			continue // a box to tick
		}
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
	if k.role == textRole && k.texts+k.led == 0 && timeSaid.MatchString(k.heading) {
		k.role = minutesRole // "preparation time"
	}
	k.mode, k.ledMode = modeOf(stamps, k.role), modeOf(append(led, stamps...), k.role)
}

var timeSaid = regexp.MustCompile(`(?i)\btime|\bmin`)

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

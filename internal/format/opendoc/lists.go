package opendoc

import (
	"strconv"

	"plait.example/internal/format/packed"
)

// listLevels are how many levels a list has (ISO/IEC 26300-1, 19.880).
const listLevels = 10

// list is how a list style counts: for each level what stands before and after
// its number, "" in format for a bullet.
type list struct {
	levels [listLevels]struct {
		format, before, after string
		start                 int
	}
}

func listOf(e *packed.Element) *list {
	var l list
	for _, c := range e.Children {
		n, err := strconv.Atoi(c.Attr("level"))
		if err != nil || n < 1 || n > listLevels || c.Name != "list-level-style-number" {
			continue
		}
		level := &l.levels[n-1]
		level.format, level.before, level.after, level.start = c.Attr("num-format"), c.Attr("num-prefix"), c.Attr("num-suffix"), 1
		if start, err := strconv.Atoi(c.Attr("start-value")); err == nil && start >= 0 && start < 32768 {
			level.start = start
		}
	}
	return &l
}

// marker is what stands before an item of a level from 0.
func (l *list) marker(level, number int) string {
	if l == nil || level >= listLevels || l.levels[level].format == "" {
		return "-"
	}
	at := l.levels[level]
	text := strconv.Itoa(number)
	if (at.format == "a" || at.format == "A") && number >= 1 && number <= 26 {
		text = string(rune(at.format[0]) + rune(number-1))
	}
	return at.before + text + at.after
}

// first is the number of a level's first item.
func (l *list) first(level int) int {
	if l == nil || level >= listLevels {
		return 1
	}
	return l.levels[level].start
}

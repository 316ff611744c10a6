package recipe

import "unicode/utf8"

// Lines of a method without markers may go on in the next line, because a page
// was only so wide, or each may say a thing of its own, as in a message. A line
// that stops although the next word would have fitted was ended on purpose.

// widestWrapped is the most characters of a line that was broken for the width of a page.
const widestWrapped = 100

// wrapSlack is the share of a block's widest line below which a line, with the
// next word, was ended on purpose: lines of prose are rarely that uneven.
const wrapSlack = 0.75

// widths notes for every line how wide the block of lines that it stands in is, in characters.
func widths(lines []line) []int {
	out := make([]int, len(lines))
	for i := 0; i < len(lines); {
		j, widest := i, 0
		for j < len(lines) && !lines[j].blank && (j == i || lines[j].marker == noMarker && lines[j].heading == 0) {
			widest = max(widest, utf8.RuneCountInString(lines[j].text)+lines[j].indent)
			j++
		}
		for k := i; k < max(j, i+1); k++ {
			out[k] = widest
		}
		i = max(j, i+1)
	}
	return out
}

// endedOnPurpose says that the line before line i was not broken for want of width.
func (s *sorter) endedOnPurpose(i int) bool {
	if i == 0 || len(s.lines[i].ts) == 0 {
		return false
	}
	before, width := s.lines[i-1], s.width[i]
	if before.blank || len(before.ts) == 0 || before.ts[len(before.ts)-1].is(",", "and", "-", "(", "or", "the", "a", "of", "in", "to", "with", "for", "until", "&", "+") {
		return false
	}
	if width > widestWrapped {
		return true
	}
	first := s.lines[i].ts[0]
	long := utf8.RuneCountInString(before.text) + before.indent + 1 + first.end - first.start
	return float64(long) < wrapSlack*float64(width)
}

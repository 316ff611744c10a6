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

// block is how a run of lines was broken.
type block struct {
	widest int  // characters
	ragged bool // most lines end although the next word would have fitted
}

// blocks notes for every line the block of lines that it stands in.
func blocks(lines []line) []block {
	out := make([]block, len(lines))
	for i := 0; i < len(lines); {
		j, b := i, block{}
		for j < len(lines) && !lines[j].blank && (j == i || lines[j].marker == noMarker && lines[j].heading == 0) {
			b.widest = max(b.widest, wide(lines[j]))
			j++
		}
		fitted := 0
		for k := i + 1; k < j; k++ {
			fitted += boolInt(withNext(lines, k) <= b.widest)
		}
		b.ragged = j > i+1 && 2*fitted > j-i-1
		for k := i; k < max(j, i+1); k++ {
			out[k] = b
		}
		i = max(j, i+1)
	}
	return out
}

func wide(l line) int { return utf8.RuneCountInString(l.text) + l.indent }

// withNext is how wide the line before line i would be with the first word of line i.
func withNext(lines []line, i int) int {
	if len(lines[i].ts) == 0 {
		return 0
	}
	first := lines[i].ts[0]
	return wide(lines[i-1]) + 1 + first.end - first.start
}

// endedOnPurpose says that the line before line i was not broken for want of width.
func (s *sorter) endedOnPurpose(i int) bool {
	if i == 0 || len(s.lines[i].ts) == 0 {
		return false
	}
	before, b := s.lines[i-1], s.blocks[i]
	if before.blank || len(before.ts) == 0 || before.ts[len(before.ts)-1].is(",", "and", "-", "(", "or", "the", "a", "of", "in", "to", "with", "for", "until", "&", "+") {
		return false
	}
	return b.widest > widestWrapped || b.ragged || float64(withNext(s.lines, i)) < wrapSlack*float64(b.widest)
}

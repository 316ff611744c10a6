package written

import (
	"regexp"
	"slices"
	"strings"

	"plait.example/internal/format/table"
)

// timesFirst puts the time at the head of each line that has it elsewhere, when
// more lines do than begin with one: "rub in (9.05)", "Quiche 9.05 rub in",
// "Step 2 (9.05): rub in". There are as many blocks as before, in their order.
func (r *reader) timesFirst(blocks []table.Block) []table.Block {
	out := zipped(slices.Clone(blocks))
	leads, at := 0, []int(nil)
	heads := r.headsBefore(out)
	for i, b := range out {
		if b.Table != nil {
			continue
		}
		if st, _, ok := leadingItem(b, false); ok && st.kind == clock {
			leads++
		} else if turned, is := r.turn(b, heads); is {
			out[i] = turned
			at = append(at, i)
		}
	}
	if len(at) < 3 || len(at) < leads {
		for _, i := range at {
			out[i] = blocks[i]
		}
	}
	return out
}

// zipped joins a run of lines that are a time alone with the run of as many lines
// after it: boxes of times beside boxes of jobs, read one after the other. The
// lines of the jobs are left empty.
func zipped(blocks []table.Block) []table.Block {
	bare := func(i int) bool {
		st, is := readStamp(blocks[i].Line.Text())
		return blocks[i].Table == nil && is && st.kind == clock
	}
	for from := 0; from < len(blocks); from++ {
		to := from
		for to < len(blocks) && bare(to) {
			to++
		}
		end := to
		for end < len(blocks) && blocks[end].Table == nil && blocks[end].Heading == 0 && !bare(end) && strings.TrimSpace(blocks[end].Line.Text()) != "" {
			end++
		}
		if n := to - from; n >= 3 && end-to == n {
			for i := from; i < to; i++ {
				job := blocks[i+n]
				blocks[i].Line = append(append(slices.Clone(blocks[i].Line), table.Piece{Text: "  "}), job.Line...)
				blocks[i].Item = strings.TrimSpace(blocks[i].Item + " " + job.Item)
				blocks[i+n].Line, blocks[i+n].Item = nil, ""
			}
		}
		from = max(from, to)
	}
	return blocks
}

var (
	tickBox    = regexp.MustCompile(`^(?:\[[ xX✓✔]?\]|[\p{So}\x{FE0F}]+)\s*`)
	stepNumber = regexp.MustCompile(`(?i)^(?:step|task|job|row|stage|no\.?)\s*\d+\s*[-–—.:)(]*\s*`)
	lineHead   = regexp.MustCompile(`^([^\d\n]{2,40}?)[\s,:(\[@–—-]+\d`)
)

// headsBefore are words that stand before the time in several lines: dishes.
func (r *reader) headsBefore(blocks []table.Block) map[string]bool {
	times := map[string]int{}
	for _, b := range blocks {
		if m := lineHead.FindStringSubmatch(strings.TrimSpace(kept(b.Line))); b.Table == nil && m != nil && len(strings.Fields(m[1])) <= 4 {
			times[strings.ToLower(m[1])]++
		}
	}
	heads := map[string]bool{}
	for _, head := range sortedWords(times) {
		if _, known := r.find(head); known || times[head] >= 2 && !noDish.MatchString(head) {
			heads[head] = true
		}
	}
	return heads
}

func sortedWords(times map[string]int) (words []string) {
	for w := range times {
		words = append(words, w)
	}
	slices.Sort(words)
	return words
}

// turn puts the time of a line before its words; false when it has none.
func (r *reader) turn(b table.Block, heads map[string]bool) (table.Block, bool) {
	text := kept(b.Line)
	lead := len(text) - len(strings.TrimLeft(text, " \t\u00A0"))
	for _, sign := range []*regexp.Regexp{tickBox, stepNumber} {
		if n := len(sign.FindString(text[lead:])); n > 0 {
			st, rest, ok := leading(text[lead+n:], false)
			if ok && st.kind == clock && rest != "" {
				if _, dish := r.signed(text[lead : lead+n]); dish {
					return moved(b, lead, lead+n, lead+n, len(text)-len(rest), " "), true
				}
				b.Item = strings.TrimSpace(b.Item + " " + text[lead:lead+n])
				b.Line = cutLine(b.Line, lead+n)
				return b, true
			}
		}
	}
	if m := lineHead.FindStringSubmatchIndex(text[lead:]); m != nil && heads[strings.ToLower(text[lead:][m[2]:m[3]])] {
		from := lead + m[1] - 1
		if st, rest, ok := leading(text[from:], false); ok && st.kind == clock && rest != "" {
			return moved(b, lead, lead+m[3], from, len(text)-len(rest), ": "), true
		}
	}
	if words, from, to := timeAtEnd(text); words > 0 {
		return moved(b, 0, words, from, to, ""), true
	}
	return b, false
}

// moved is a line whose time, from one byte to another, stands before the words
// that end before it.
func moved(b table.Block, begin, words, from, to int, sign string) table.Block {
	var line table.Line
	line = append(line, headOf(cutLine(b.Line, from), to-from)...)
	line = append(line, table.Piece{Text: " "})
	line = append(line, headOf(cutLine(b.Line, begin), words-begin)...)
	if sign != "" {
		line = append(line, table.Piece{Text: sign})
	}
	for _, p := range cutLine(b.Line, to) {
		if p.Struck || sign != "" || len(bareWords(p.Text)) > 0 {
			line = append(line, p)
		}
	}
	b.Line = line
	return b
}

var (
	endOpen  = regexp.MustCompile(`[\s.…_(\[,;:@–—-]+$`)
	endWords = regexp.MustCompile(`(?i)\s(?:at|by|from|about|approx|around)$`)
	notHere  = regexp.MustCompile(`(?i)\b(?:until|till|to|for|after|before|gas|mark)$`)
)

// timeAtEnd finds a time of day at the end of a text: how many bytes the words
// before it have, and from where to where it stands; words is 0 when there is none.
func timeAtEnd(text string) (words, from, to int) {
	whole := strings.TrimRight(text, " \t\u00A0.)]")
	for from = max(0, len(whole)-longestStamp); from < len(whole); from++ {
		if from == 0 || !strings.ContainsRune(" \t([.-@_", rune(whole[from-1])) || whole[from] == ' ' || whole[from-1] == '.' && (from < 2 || whole[from-2] != '.' && whole[from-2] != ' ') {
			continue
		}
		st, is := readStamp(whole[from:])
		if !is || st.kind != clock || !hasFigure(whole[from:]) {
			continue
		}
		from += len(whole[from:]) - len(strings.TrimLeft(whole[from:], " .…_(["))
		head := endOpen.ReplaceAllString(whole[:from], "")
		if notHere.MatchString(head) {
			return 0, 0, 0
		}
		return len(strings.TrimRight(endWords.ReplaceAllString(head, ""), " ,")), from, len(whole)
	}
	return 0, 0, 0
}

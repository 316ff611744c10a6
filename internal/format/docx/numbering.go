package docx

import (
	"strconv"
	"strings"

	"plait.example/internal/format/packed"
)

// levels of a list at most (ECMA-376 part 1, 17.9.6).
const listLevels = 9

// listLevel is how a level of a list counts.
type listLevel struct {
	format string // decimal, lowerLetter, bullet ...
	text   string // "%1.%2)"
	start  int
	legal  bool // all numbers in figures
}

// numbering is how the document's lists count, and how far they have counted.
type numbering struct {
	kinds    map[string]*[listLevels]listLevel // by abstract list
	lists    map[string]string                 // abstract list of each list
	override map[string]map[int]int            // first number of levels of a list that begins anew
	begun    map[string]bool
	counts   map[string]*[listLevels]int // of each abstract list; the number last given, 0 before the first
}

// numbering reads word/numbering.xml; a document may have none.
func (p pack) numbering() (*numbering, error) {
	n := &numbering{map[string]*[listLevels]listLevel{}, map[string]string{}, map[string]map[int]int{}, map[string]bool{}, map[string]*[listLevels]int{}}
	root, err := p.part("word/numbering.xml")
	if err != nil || root == nil {
		return n, err
	}
	for _, e := range root.Children {
		switch e.Name {
		case "abstractNum":
			n.kinds[e.Attr("abstractNumId")] = kindOf(e)
		case "num":
			n.addList(e)
		}
	}
	return n, nil
}

func kindOf(e *packed.Element) *[listLevels]listLevel {
	var kind [listLevels]listLevel
	for _, l := range e.Children {
		at, err := strconv.Atoi(l.Attr("ilvl"))
		if l.Name != "lvl" || err != nil || at < 0 || at >= listLevels {
			continue
		}
		start, err := strconv.Atoi(l.Val("start"))
		if err != nil || start < 0 || start > 32767 {
			start = 1
		}
		kind[at] = listLevel{l.Val("numFmt"), l.Val("lvlText"), start, l.On("isLgl")}
	}
	return &kind
}

func (n *numbering) addList(e *packed.Element) {
	id := e.Attr("numId")
	n.lists[id] = e.Val("abstractNumId")
	for _, o := range e.Children {
		at, err := strconv.Atoi(o.Attr("ilvl"))
		start, err2 := strconv.Atoi(o.Val("startOverride"))
		if o.Name == "lvlOverride" && err == nil && err2 == nil && start >= 0 && start <= 32767 {
			if n.override[id] == nil {
				n.override[id] = map[int]int{}
			}
			n.override[id][at] = start
		}
	}
}

// next is the marker of the next item of a list, nil when there is no such list.
func (n *numbering) next(id string, at int) *Item {
	kind := n.kinds[n.lists[id]]
	if id == "" || id == "0" || at < 0 || at >= listLevels {
		return nil
	}
	if kind == nil {
		return &Item{Level: at, Marker: "-"}
	}
	counts := n.counts[n.lists[id]]
	if counts == nil {
		counts = &[listLevels]int{}
		for i := range counts {
			counts[i] = kind[i].start - 1
		}
		n.counts[n.lists[id]] = counts
	}
	if !n.begun[id] {
		n.begun[id] = true
		for level, start := range n.override[id] {
			if level >= 0 && level < listLevels {
				counts[level] = start - 1
			}
		}
	}
	counts[at]++
	for deeper := at + 1; deeper < listLevels; deeper++ {
		counts[deeper] = kind[deeper].start - 1
	}
	return &Item{Level: at, Marker: marker(kind, counts, at)}
}

// marker puts the numbers of this and the outer levels in the level's text.
func marker(kind *[listLevels]listLevel, counts *[listLevels]int, at int) string {
	level := kind[at]
	if level.format == "bullet" || level.format == "" && level.text == "" {
		return "-"
	}
	text := level.text
	for i := range listLevels {
		format := kind[i].format
		if level.legal {
			format = "decimal"
		}
		text = strings.ReplaceAll(text, "%"+strconv.Itoa(i+1), figure(format, max(counts[i], kind[i].start, 0)))
	}
	return text
}

// figure is a number in a format of ECMA-376 part 1, 17.18.59; those of other
// scripts are given in figures.
func figure(format string, n int) string {
	switch format {
	case "none":
		return ""
	case "decimalZero":
		if n < 10 {
			return "0" + strconv.Itoa(n)
		}
	case "lowerLetter", "upperLetter":
		if n < 1 || n > 26*10 {
			break
		}
		s := strings.Repeat(string(rune('a'+(n-1)%26)), (n-1)/26+1)
		return inCase(format, s)
	case "lowerRoman", "upperRoman":
		if n > 0 && n < 4000 {
			return inCase(format, roman(n))
		}
	case "ordinal":
		return strconv.Itoa(n) + ordinal(n)
	}
	return strconv.Itoa(n)
}

func inCase(format, s string) string {
	if strings.HasPrefix(format, "upper") {
		return strings.ToUpper(s)
	}
	return s
}

func roman(n int) string {
	var b strings.Builder
	for _, d := range []struct {
		worth int
		sign  string
	}{{1000, "m"}, {900, "cm"}, {500, "d"}, {400, "cd"}, {100, "c"}, {90, "xc"}, {50, "l"}, {40, "xl"}, {10, "x"}, {9, "ix"}, {5, "v"}, {4, "iv"}, {1, "i"}} {
		for ; n >= d.worth; n -= d.worth {
			b.WriteString(d.sign)
		}
	}
	return b.String()
}

func ordinal(n int) string {
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			return "st"
		case 2:
			return "nd"
		case 3:
			return "rd"
		}
	}
	return "th"
}

package check

import (
	"fmt"
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// span is a stretch of time with the row that it comes from.
type span struct {
	row         *row
	begin, end  int // minutes after midnight
	of          *load
	long        bool // it goes on by itself: the hands may be elsewhere
	share       int  // pieces of kit
	sureMinutes bool
}

// shelvesOverFull tells more loads at once than the oven has shelves.
func shelvesOverFull(v *view, f *asker) {
	shelves := f.limit("shelves")
	if v.kitchen != nil {
		shelves = 0
		for _, o := range v.kitchen.Ovens {
			shelves += max(1, o.Shelves)
		}
	}
	var spans []span
	for _, l := range v.loads {
		if until, known := l.until(); known && until > l.from() && !l.in.row.backwards {
			spans = append(spans, span{row: l.in.row, begin: l.from(), end: until, share: l.shelves(), of: l})
		}
	}
	if rows, most := crowded(spans, shelves); len(rows) > 0 {
		f.tell(saw{rows: rows, say: map[string]string{"found": fmt.Sprint(most), "have": fmt.Sprint(shelves)}})
	}
}

// crowded is the rows that are at work together where more is used than there
// is, the one that makes it too many first.
func crowded(spans []span, have int) (rows []*row, most int) {
	for _, at := range spans {
		used := 0
		together := []*row{at.row}
		for _, s := range spans {
			if s.begin <= at.begin && s.end > at.begin {
				used += s.share
				if s.row != at.row && !slices.Contains(together, s.row) {
					together = append(together, s.row)
				}
			}
		}
		if used > have && used > most {
			rows, most = together, used
		}
	}
	return rows, most
}

// hobSpans are the stretches of the rings.
func (v *view) hobSpans() (spans []span) {
	for _, d := range v.of(act.Hob) {
		if d.row.backwards {
			continue
		}
		end := d.likely + max(d.job.Low, 1)
		sure := false
		if d.Least > 0 {
			end, sure = d.likely+d.Least, true
		} else if d.row.HasUntil && len(d.row.deeds) == 1 {
			end, sure = d.row.end, true
		}
		s := span{row: d.row, begin: d.likely, end: end, share: 1, long: unattended(d.Act), sureMinutes: sure}
		// one pan: the same row's later acts go on with it
		if n := len(spans); n > 0 && spans[n-1].row == d.row {
			spans[n-1].end = max(spans[n-1].end, s.end)
			spans[n-1].long = spans[n-1].long || s.long
			continue
		}
		spans = append(spans, s)
	}
	for _, d := range v.of(act.BoilWater) {
		if !d.row.backwards && !slices.Contains(d.words, "kettle") {
			spans = append(spans, span{row: d.row, begin: d.likely, end: d.likely + 8, share: 1, long: true})
		}
	}
	return spans
}

func tooManyRings(v *view, f *asker) {
	rings := f.limit("rings")
	if v.kitchen != nil && v.kitchen.Rings > 0 {
		rings = v.kitchen.Rings
	}
	if rows, most := crowded(v.hobSpans(), rings); len(rows) > 0 {
		f.tell(saw{rows: rows, say: map[string]string{"found": fmt.Sprint(most), "have": fmt.Sprint(rings)}})
	}
}

// grillWithOven tells a grill that is wanted while its own cavity bakes.
func grillWithOven(v *view, f *asker) {
	if v.kitchen == nil || v.kitchen.Grill != practical.GrillInOven || v.ovens() > 1 {
		return
	}
	for _, d := range v.of(act.Grill) {
		for _, l := range v.loads {
			until, known := l.until()
			if !known && l.out == nil {
				continue
			}
			if d.row != l.in.row && d.likely >= l.from() && d.likely < until {
				f.at(d.row, l.in.row)
				return
			}
		}
	}
}

// machines are kit that a room shares, by the words for it.
var machines = []struct {
	kit   practical.Kit
	words *lexicon
	name  string
}{
	{practical.Processor, lex("food processor, processor, blender, magimix, liquidis*, blitz*"), "food processor"},
	{practical.Mixer, lex("stand mixer, mixer, electric whisk, hand whisk, electric mixer, kenwood, electric hand"), "mixer"},
	{practical.Microwave, lex("microwave*"), "microwave"},
	{practical.GrillPan, lex("under the grill, grill"), "grill"},
}

// sharedKit tells rows that want the same machine at the same time.
func sharedKit(v *view, f *asker) {
	for _, m := range machines {
		have := 1
		if v.kitchen != nil {
			have = max(1, v.kitchen.Count(m.kit))
		}
		var spans []span
		for _, r := range v.inTime {
			if !r.backwards && m.words.in(r.words) && (m.kit != practical.GrillPan || r.has(act.Grill)) {
				spans = append(spans, span{row: r, begin: r.begin, end: max(r.end, r.begin+1), share: 1})
			}
		}
		rows, _ := crowded(spans, have)
		if len(rows) == 0 && have == 1 && m.kit != practical.GrillPan && m.kit != practical.Microwave {
			rows = v.unrinsed(spans)
		}
		if len(rows) > 1 && !rows[0].samely(rows[1]) {
			f.tell(saw{rows: rows, say: map[string]string{"kit": m.name, "have": fmt.Sprint(have)}})
		}
	}
}

// unrinsed are two rows of two dishes that use a machine one straight after the
// other, with no minute to rinse it.
func (v *view) unrinsed(spans []span) []*row {
	for i, s := range spans[:max(0, len(spans)-1)] {
		next := spans[i+1]
		if next.row.place == s.row.place+1 && len(s.row.Letters) > 0 && len(next.row.Letters) > 0 && !next.row.samely(s.row) && next.begin <= s.end && !s.row.washesUp() {
			return []*row{next.row, s.row}
		}
	}
	return nil
}

// kitTaken tells rows that want kit while it is someone else's.
func kitTaken(v *view, f *asker) {
	if v.kitchen == nil {
		return
	}
	for _, k := range v.kitchen.Taken {
		for _, m := range machines {
			if m.kit != k.Kit || v.kitchen.Count(m.kit) > k.Number {
				continue
			}
			for _, r := range v.inTime {
				if !r.backwards && m.words.in(r.words) && r.begin < int(k.Until) && r.begin >= int(k.From) {
					f.tell(saw{rows: []*row{r}, minutes: int(k.Until) - r.begin, say: map[string]string{"kit": m.name, "from": v.clock(int(k.From)), "until": v.clock(int(k.Until))}})
					break
				}
			}
		}
	}
}

// cakeDoorOpened tells a door that is opened while something inside needs it shut.
func cakeDoorOpened(v *view, f *asker) {
	for _, l := range v.loads {
		if !doorShut.in(l.words()) && !doorShut.in(wordsOf(v.dish(l.in.row.only()))) && (l.step == nil || l.step.Wait.DoorShut == 0) {
			continue
		}
		until, known := l.until()
		length := until - l.begun()
		if !known || length <= 0 || l.in.row.backwards {
			continue
		}
		shut := l.begun() + length*2/3
		if l.step != nil && l.step.Wait.DoorShut > 0 {
			shut = l.begun() + l.step.Wait.DoorShut
		}
		for _, o := range v.loads {
			for _, d := range []*deed{o.in, o.out} {
				if o == l || d == nil || d.row == l.in.row || l.out != nil && d.row == l.out.row || v.ovens() > 1 {
					continue
				}
				if d.row.place > l.in.row.place && d.early >= l.in.early && d.late < shut {
					f.tell(saw{rows: []*row{d.row, l.in.row}, say: map[string]string{"until": v.clock(shut)}})
					return
				}
			}
		}
	}
}

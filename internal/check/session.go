package check

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/act"
)

// realWork are acts that are never set-up, unless the teacher's list names their verb.
var realWork = []act.Kind{
	act.Cut, act.Mix, act.Shape, act.Fill, act.Decorate, act.Hob, act.Grill, act.PutIn, act.Microwave, act.Plate, act.Serve,
	act.Prove, act.Marinate, act.BoilWater, act.Reheat,
}

// setUpWork tells rows before the start that do what set-up may not hold.
func setUpWork(v *view, f *asker) {
	if !v.clocked {
		return
	}
	for _, r := range v.inTime {
		if !r.timed || r.backwards || r.begin >= v.start {
			continue
		}
		if v.setUp < v.start && r.begin < v.setUp {
			f.tell(saw{rows: []*row{r}, minutes: v.setUp - r.begin, say: map[string]string{"what": "begins before set-up does"}})
			continue
		}
		for _, d := range r.deeds {
			if (d.Kind == act.Fill || d.Verb == "prepar") && weighing.in(r.words) {
				continue // "weigh stuff out", "prepare myself"
			}
			if slices.Contains(realWork, d.Kind) && !allowedVerb(v.Practical.Rules.SetUpVerbs, d.Verb) {
				f.tell(saw{rows: []*row{r}, minutes: max(1, r.hands.Low), say: map[string]string{"what": fmt.Sprintf("has %q before the clock starts at %s", said(r, d), v.clock(v.start))}})
				break
			}
		}
	}
}

var weighing = lex("self, myself, apron, hair, weigh*, measur*, get, gather, collect")

// said is the words of a row that say the act, or its verb.
func said(r *row, d *deed) string {
	if d.Start >= 0 && d.End <= len(r.Text) && d.Start < d.End {
		return r.Text[d.Start:d.End]
	}
	return d.Verb
}

func allowedVerb(verbs []string, verb string) bool {
	return verb != "" && slices.ContainsFunc(verbs, func(v string) bool {
		v = strings.ToLower(v)
		return strings.HasPrefix(v, verb) || strings.HasPrefix(verb, strings.TrimSuffix(v, "e"))
	})
}

// ovenInSetUp tells an oven that is turned on before the clock where that is not allowed.
func ovenInSetUp(v *view, f *asker) {
	if !v.clocked || v.Practical.Rules.OvenInSetUp {
		return
	}
	for _, d := range v.of(act.HeatOven) {
		if d.row.timed && !d.row.backwards && d.row.begin < v.start {
			f.at(d.row)
			return
		}
	}
}

// extraTime tells a plan that stops where the clock would stop without the
// extra time that its cook has.
func extraTime(v *view, f *asker) {
	if !v.clocked || v.finish <= int(v.Practical.Clock.Finish) {
		return
	}
	var last *row
	for _, r := range v.inTime {
		if r.timed && !r.backwards {
			last = r
		}
	}
	if last != nil && last.begin <= int(v.Practical.Clock.Finish)+f.limit("near") {
		f.tell(saw{rows: []*row{last}, minutes: v.finish - int(v.Practical.Clock.Finish), say: map[string]string{"finish": v.clock(v.finish)}})
	}
}

// restBreak tells work of the hands that is written into a rest break.
func restBreak(v *view, f *asker) {
	if !v.clocked {
		return
	}
	for _, k := range v.Practical.Clock.Breaks {
		for _, r := range v.inTime {
			if r.timed && !r.backwards && r.begin >= int(k.At) && r.begin < int(k.At)+k.Minutes && r.hands.Low > 0 {
				f.tell(saw{rows: []*row{r}, minutes: k.Minutes, say: map[string]string{"from": v.clock(int(k.At)), "until": v.clock(int(k.At) + k.Minutes)}})
				break
			}
		}
	}
}

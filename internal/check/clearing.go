package check

import (
	"slices"

	"plait.example/internal/act"
)

// noWashingUp tells a plan in which nothing is washed up.
func noWashingUp(v *view, f *asker) {
	if !slices.ContainsFunc(v.rows, (*row).washesUp) {
		f.at()
	}
}

// washesUp says that a row clears, by its acts or its words.
func (r *row) washesUp() bool {
	if r.has(act.WashUp, act.FinalClean) && !cleanBowl.in(r.words) || washWords.in(r.all()) || r.listsPlaces() {
		return true
	}
	for _, d := range r.deeds {
		if d.Kind == act.CleanDown && !slices.ContainsFunc(r.deeds, func(o *deed) bool { return o.Kind == act.Cut || o.Kind == act.Shape || o.Kind == act.Mix }) && !boardOnly.in(d.words) {
			return true
		}
	}
	return false
}

// listsPlaces says that a row lists two places that are cleared at the end: "sink, hob, floor".
func (r *row) listsPlaces() bool {
	n := 0
	for i := range r.words {
		if clearedPlaces.in(r.words[i : i+1]) {
			n++
		}
	}
	return n >= 2 && !r.has(act.Cut, act.Mix, act.Hob, act.PutIn, act.Shape, act.Fill, act.Chill, act.Serve, act.Plate, act.Decorate)
}

var clearedPlaces = lex("sink, sinks, hob, floor, cooker, worktop*, sides, bin, bins, draining")

var (
	washWords = lex("clean all, clean everyth*, clean cooker, clean hob, clean sink, clean table, clean kitchen, scrub pan*, scrub pots, scrub the pan*, wash up, washing up, wash dishes, wash equipment, clear up, clean as you, tidy*, do dishes, do the dishes, wash the dishes, clear away, clear down")
	cleanBowl = lex("clean bowl, clean dry, clean grease, clean pan, clean tin")
	boardOnly = lex("board*, hand*, knife, knives, table")
)

// noFinalClean tells a plan that ends without clearing.
func noFinalClean(v *view, f *asker) {
	_, end := v.span()
	lastServe := -1
	for _, d := range v.of(act.Serve) {
		lastServe = max(lastServe, d.row.place)
	}
	for _, r := range v.inTime {
		if r.washesUp() && (r.place >= lastServe && lastServe >= 0 || r.begin >= end-f.limit("last")) {
			return
		}
	}
	f.at()
}

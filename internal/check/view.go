package check

import (
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
)

// view is a plan as the rules look at it, worked out once.
type view struct {
	match.Matched
	kitchen  *practical.Kitchen // nil: not known
	recipes  bool               // the practical has steps
	clocked  bool               // start and finish are known
	hasTimes bool               // most rows have a time
	start    int                // minutes after midnight
	finish   int                // with extra time and rest breaks
	setUp    int
	rows     []*row   // in the order of the document
	inTime   []*row   // by the clock
	runs     [][]*row // whose times should not fall
	deeds    []*deed  // by the clock, then in the order of the text
	loads    []*load
	strayOut []*deed  // taken out, and nothing was in
	dishes   []string // letters in order
	names    map[string]string
	words    map[string][]string // of a dish's name and of all its rows
	steps    map[string]*stepSeen
	spelling map[string]string // of the words met
	waitList []waitSeen        // nil: not worked out yet
	saving   Saving
}

// row is a row of the plan at its time. Minutes are after midnight.
type row struct {
	*match.Row
	index     int // in the document
	place     int // in the order of the clock
	begin     int
	end       int
	timed     bool // begin is known
	behind    bool // its time is out of order
	backwards bool // and by so much that it is not believed
	words     []string
	points    []string // words of its special points
	deeds     []*deed
	hands     practical.Estimate // by the words
	recipe    practical.Estimate // by the steps that it stands for; High 0: none
}

// deed is an act at its time.
type deed struct {
	*act.Act
	row    *row
	place  int // among all deeds
	words  []string
	job    job
	early  int // minutes after midnight: it begins at the earliest, likely, at the latest
	likely int
	late   int
}

// look works the view out.
func look(m match.Matched, saving Saving) *view {
	v := &view{Matched: m, names: map[string]string{}, words: map[string][]string{}, spelling: map[string]string{}, saving: saving}
	v.session()
	v.readRows()
	v.timeRows()
	v.timeDeeds()
	v.nameDishes()
	v.readSteps()
	v.readLoads()
	return v
}

func (v *view) session() {
	p := v.Practical
	if p == nil {
		return
	}
	v.recipes = slices.ContainsFunc(p.Dishes, func(d practical.Dish) bool { return len(d.Steps) > 0 })
	if len(p.Kitchen.Ovens) > 0 {
		v.kitchen = &p.Kitchen
	}
	if p.Clock.Finish > p.Clock.Start {
		v.clocked, v.start, v.finish, v.setUp = true, int(p.Clock.Start), int(p.Allowed()), int(p.SetUpFrom())
	}
}

func (v *view) readRows() {
	for i := range v.Rows {
		r := &row{Row: general(v.Rows[i]), index: i, words: v.spelt(v.Rows[i].Text), points: v.spelt(v.Rows[i].Points)}
		acts := mended(r.Text, r.Acts)
		for k := range acts {
			d := &deed{Act: &acts[k], row: r, words: v.spelt(segment(r.Text, acts, k))}
			d.job = jobOf(d.Act, d.words)
			r.deeds = append(r.deeds, d)
		}
		r.detailed()
		if r.saysDone() {
			for _, d := range r.deeds {
				d.job = job{}
			}
		}
		for _, d := range r.deeds {
			r.hands.Low, r.hands.Likely, r.hands.High = r.hands.Low+d.job.Low, r.hands.Likely+d.job.Likely, r.hands.High+d.job.High
		}
		v.rows = append(v.rows, r)
	}
}

// spelt is the words of a text as the kitchen spells them.
func (v *view) spelt(text string) []string {
	words := wordsOf(text)
	for i, w := range words {
		mended, known := v.spelling[w]
		if !known {
			mended = plain(v.Words.Spell(w))
			if w == "veg" {
				mended = w // which the rules know
			}
			v.spelling[w] = mended
		}
		words[i] = mended
	}
	return words
}

// saysDone says that a row only tells that something is done: "curry done".
func (r *row) saysDone() bool {
	return len(r.words) <= 4 && doneSaid.in(r.words) && !r.has(act.PutIn, act.TakeOut, act.Serve, act.Plate, act.SetUp)
}

// general is a row as it is, without a dish if it is work for none of them:
// washing up, hands, weighing.
func general(r match.Row) *match.Row {
	for _, a := range r.Acts {
		switch a.Kind {
		case act.WashUp, act.WashHands, act.CleanDown, act.FinalClean, act.SetUp, act.Timer, act.Idle:
		default:
			return &r
		}
	}
	if len(r.Acts) > 0 && len(r.Steps) == 0 {
		r.Letters = nil
	}
	return &r
}

// segment is the part of a row's text that says its act k: from where it
// begins to where the next begins.
func segment(text string, acts []act.Act, k int) string {
	from, to := 0, len(text)
	if k > 0 {
		from = min(max(acts[k].Start, 0), len(text))
	}
	if k+1 < len(acts) {
		to = min(max(acts[k+1].Start, from), len(text))
	}
	return text[from:to]
}

// timeDeeds puts the acts of each row one after another.
func (v *view) timeDeeds() {
	for _, r := range v.inTime {
		var before practical.Estimate
		for _, d := range r.deeds {
			d.early = min(r.begin+before.Low, r.end)
			d.likely = min(r.begin+before.Likely, r.end)
			d.late = min(r.begin+before.High, r.end)
			d.place = len(v.deeds)
			v.deeds = append(v.deeds, d)
			before.Low += d.job.Low + passing(d).Low
			before.Likely += d.job.Likely + passing(d).Likely
			before.High += d.job.High + passing(d).High
		}
	}
}

// passing is the minutes of a wait that stands in the midst of a row: "bake for
// 20 minutes, then cool".
func passing(d *deed) practical.Estimate {
	switch d.Kind {
	case act.PutIn, act.Chill, act.Freeze, act.Prove, act.Rest, act.Cool, act.Marinate, act.Soak, act.Idle, act.Microwave:
		return practical.Estimate{Low: d.Least, Likely: d.Least, High: d.Most}
	case act.Hob:
		if unattended(d.Act) {
			return practical.Estimate{Low: d.Least, Likely: d.Least, High: d.Most}
		}
	}
	return practical.Estimate{}
}

func (v *view) nameDishes() {
	note := func(letter, name string) {
		if letter != "" && !slices.Contains(v.dishes, letter) {
			v.dishes = append(v.dishes, letter)
		}
		if name != "" && v.names[letter] == "" {
			v.names[letter] = name
		}
	}
	if v.Practical != nil {
		for _, d := range v.Practical.Dishes {
			note(d.Letter, d.Name)
		}
	}
	for _, r := range v.rows {
		for _, l := range r.Letters {
			name := ""
			if len(r.Letters) == 1 && len(r.Dishes) == 1 {
				name = r.Dishes[0]
			}
			note(l, name)
		}
	}
}

// wordsOfDish are the words of a dish's name and of its rows; of no dish, none.
func (v *view) wordsOfDish(letter string) []string {
	if letter == "" {
		return nil
	}
	if v.words[letter] == nil {
		words := wordsOf(v.dish(letter))
		for _, r := range v.rows {
			if r.only() == letter {
				words = append(words, r.words...)
			}
		}
		v.words[letter] = words
	}
	return v.words[letter]
}

// dish is the name of a dish for people.
func (v *view) dish(letter string) string {
	name := v.names[letter]
	if name == "" {
		return letter
	}
	if len(name) == 1 {
		for _, n := range v.Plan.Dishes {
			if strings.EqualFold(n.Letter, name) && n.Name != "" {
				return n.Name
			}
		}
	}
	return name
}

// about says that a row is about the dish.
func (r *row) about(letter string) bool { return slices.Contains(r.Letters, letter) }

// shares says that two rows are about a dish in common, or that one of them
// does not say which it is about.
func (r *row) shares(o *row) bool {
	if len(r.Letters) == 0 || len(o.Letters) == 0 {
		return true
	}
	return r.samely(o)
}

// samely says that two rows are about a dish in common, and say so.
func (r *row) samely(o *row) bool {
	return slices.ContainsFunc(r.Letters, func(l string) bool { return slices.Contains(o.Letters, l) })
}

// only is the one dish of a row; empty: several, all or none.
func (r *row) only() string {
	if len(r.Letters) == 1 {
		return r.Letters[0]
	}
	return ""
}

// all is the words of the row and of its special points.
func (r *row) all() []string { return slices.Concat(r.words, r.points) }

// has says that a row holds an act of one of the kinds.
func (r *row) has(kinds ...act.Kind) bool {
	return slices.ContainsFunc(r.deeds, func(d *deed) bool { return slices.Contains(kinds, d.Kind) })
}

// noted says that a row or its special points hold an act of one of the kinds.
func (r *row) noted(kinds ...act.Kind) bool {
	return r.has(kinds...) || slices.ContainsFunc(r.Notes, func(a act.Act) bool { return slices.Contains(kinds, a.Kind) })
}

// of lists the deeds of these kinds, by the clock.
func (v *view) of(kinds ...act.Kind) (list []*deed) {
	for _, d := range v.deeds {
		if slices.Contains(kinds, d.Kind) {
			list = append(list, d)
		}
	}
	return list
}

// after lists the deeds that come after d and share its dish.
func (v *view) after(d *deed) (list []*deed) {
	for _, o := range v.deeds[d.place+1:] {
		if o.row.shares(d.row) {
			list = append(list, o)
		}
	}
	return list
}

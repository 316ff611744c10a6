package check

import (
	"fmt"
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// hotFood and notHot are words by which a dish is known as one that is eaten
// hot, where no recipe says so. Common practice, no source.
var (
	hotFood = lex("curry, lasagne, soup, stew, casserole, risotto, bolognese, chilli con carne, stir fry, pie, burger*, chicken, steak, pasta, spaghetti, ravioli, tagliatelle, carbonara, moussaka, ragu, pizza, fish, salmon, cod, kebab*, meatball*, noodle*, korma, masala, goulash, tagine, fajita*, enchilada*, roast, duck, lamb, pork, beef, crumble, souffle*")
	notHot  = lex("salad*, cake*, biscuit*, cookie*, cheesecake*, quiche, bread, scone*, meringue*, mousse, sorbet, trifle, tart, eclair*, profiterole*, choux, pastry, jelly, roulade, sushi, sandwich*, wrap, wraps, coleslaw, dip, hummus, pate, brownie*, muffin*, cupcake*, panna, tiramisu")
)

// rowsOfDish are the rows that are about the dish, by the clock.
func (v *view) rowsOfDish(letter string) (list []*row) {
	for _, r := range v.inTime {
		if r.about(letter) && !r.backwards {
			list = append(list, r)
		}
	}
	return list
}

// hot says that a dish is eaten hot, and with it the row from which it is ready.
func (v *view) ready(letter string) (row *row, at int, hot bool) {
	known := practical.Heat("")
	if v.Practical != nil {
		for _, d := range v.Practical.Dishes {
			if d.Letter == letter && len(d.Steps) > 0 {
				known = d.Serve.Heat
			}
		}
	}
	if known == practical.Cold || known == practical.AsIs {
		return nil, 0, false
	}
	text := wordsOf(v.dish(letter))
	for _, r := range v.rowsOfDish(letter) {
		for _, d := range r.deeds {
			if (d.Kind == act.Reheat || d.Kind == act.Microwave || d.Kind == act.KeepHot || d.Kind == act.Hob && warming.in(d.words)) && platesOnly.in(d.words) {
				continue
			}
			if r.saysDone() {
				hot = hot || d.Kind == act.Hob
				continue
			}
			switch d.Kind {
			case act.Hob, act.PutIn, act.Grill, act.Reheat, act.TakeOut, act.Microwave:
				if end, ok := v.thermalEnd(d); ok && end >= at {
					row, at = r, end
				}
				hot = true
			case act.Chill, act.Freeze, act.Cool:
				hot = false
			}
		}
		text = append(text, r.words...)
		if row != nil && hot && doneSaid.in(r.words) && !r.has(act.Serve, act.Plate) && r.begin >= at {
			row, at = r, r.begin
		}
	}
	if row == nil || !hot {
		return nil, 0, false
	}
	return row, at, known == practical.Hot || hotFood.in(text) && (hotFood.in(wordsOf(v.dish(letter))) || !notHot.in(wordsOf(v.dish(letter)))) && !notHot.in(row.words)
}

var warming = lex("warm, warmed, heat, heated")

var doneSaid = lex("done, ready, cooked, finished, complete*")

// thermalEnd is when a cooking act is surely over. False: not known.
func (v *view) thermalEnd(d *deed) (int, bool) {
	switch d.Kind {
	case act.PutIn:
		for _, l := range v.loads {
			if l.in == d {
				return l.until()
			}
		}
		return 0, false
	case act.TakeOut:
		return d.likely, true
	case act.Hob:
		if d.Least > 0 {
			return d.likely + d.Least, true
		}
	}
	return max(d.row.end, d.likely), true
}

// served is when a dish goes to the table and the row that says so; the finish
// where no row does.
func (v *view) served(letter string) (int, *row) {
	var first *row
	for _, d := range v.of(act.Serve, act.Plate) {
		if d.row.backwards || d.Kind == act.Plate && plateWarm.in(d.words) && !d.row.has(act.Serve) {
			continue
		}
		own := d.row.about(letter)
		if own || len(d.row.Letters) == 0 && d.Kind == act.Serve {
			if first == nil || own && !first.about(letter) {
				first = d.row
			} else if d.Kind == act.Serve && !first.has(act.Serve) {
				first = d.row
			}
		}
	}
	if first != nil {
		return first.begin, first
	}
	return v.finishing(), nil
}

// held says that a row between two times keeps a dish hot.
func (v *view) held(letter string, from, until int) bool {
	for _, r := range v.inTime {
		if (r.about(letter) || len(r.Letters) == 0) && r.end >= from && r.begin <= until && !(platesOnly.in(r.words) && warming.in(r.words)) {
			if r.noted(act.KeepHot, act.Reheat) || holdWords.in(r.all()) {
				return true
			}
		}
	}
	return false
}

// hotDishEarly tells hot food that is ready long before it is eaten.
func hotDishEarly(v *view, f *asker) {
	for _, letter := range v.dishes {
		row, at, hot := v.ready(letter)
		if !hot {
			continue
		}
		serve, to := v.served(letter)
		if to == nil && !v.clocked || to != nil && to.place <= row.place {
			continue
		}
		if early := serve - at; early > f.limit("most") && !v.held(letter, row.begin, serve) {
			f.tell(saw{rows: rowsOf(row, to), dish: letter, minutes: early})
		}
	}
}

// finishesScattered tells hot dishes that are served far apart.
func finishesScattered(v *view, f *asker) {
	type end struct {
		letter string
		at     int
		row    *row
	}
	var ends []end
	for _, letter := range v.dishes {
		if _, _, hot := v.ready(letter); hot {
			if at, r := v.served(letter); r != nil && r.about(letter) {
				ends = append(ends, end{letter, at, r})
			}
		}
	}
	slices.SortStableFunc(ends, func(a, b end) int { return a.at - b.at })
	if n := len(ends); n > 1 && ends[n-1].at-ends[0].at > f.limit("apart") {
		f.tell(saw{rows: []*row{ends[0].row, ends[n-1].row}, dish: ends[0].letter, minutes: ends[n-1].at - ends[0].at})
	}
}

// courses are words of a course, in the order in which people eat.
var courses = []*lexicon{lex("starter*, soup course, first course"), lex("main, mains, main course"), lex("dessert*, pudding*, sweet course")}

// courseOrder tells courses that come to the table in another order than people eat.
func courseOrder(v *view, f *asker) {
	latest, before := -1, (*row)(nil)
	for _, d := range v.of(act.Serve) {
		if d.row.backwards {
			continue
		}
		n, course := 0, -1
		for i, c := range courses {
			if c.in(d.row.words) {
				n, course = n+1, i
			}
		}
		if n != 1 || before == d.row {
			continue
		}
		if course < latest && d.row.begin > before.begin {
			f.tell(saw{rows: []*row{before, d.row}, minutes: d.row.begin - before.begin})
			return
		}
		if course >= latest {
			latest, before = course, d.row
		}
	}
}

// fragileTooEarly tells food that does not keep and is made long before it is eaten.
func fragileTooEarly(v *view, f *asker) {
	for _, d := range v.deeds {
		letter := d.row.only()
		if d.row.backwards || letter == "" {
			continue
		}
		at, what := d.likely, ""
		switch {
		case d.Kind == act.TakeOut && fragile.in(d.row.words):
			what = "a souffle falls"
		case (d.Kind == act.Mix || d.Kind == act.Decorate || d.Kind == act.Fill || d.Kind == act.Other) && dresses.in(d.words) && leavesFood.in(d.row.words) && v.hasLeaves(letter):
			what = "dressed leaves wilt"
		case d.Kind == act.Hob && friedFood.in(d.row.words):
			at, what = max(d.row.end, d.likely), "fried food softens"
		default:
			continue
		}
		serve, to := v.served(letter)
		if to == nil && !v.clocked {
			continue
		}
		if early := serve - at; early > f.limit("most") && !v.held(letter, d.row.end, serve) {
			f.tell(saw{rows: rowsOf(d.row, to), minutes: early, say: map[string]string{"why": what}})
		}
	}
}

var (
	dresses    = lex("vinegar dressing, with dressing, dressing on, vinaigrette, dress, toss*, dress the, dressed")
	leavesFood = lex("watercress, salad*, leaves, rocket, lettuce, spinach")
)

// hasLeaves says that the dish's recipe takes leaves, which wilt; true where no recipe is there.
func (v *view) hasLeaves(letter string) bool {
	if !v.recipes {
		return true
	}
	for i := range v.Practical.Dishes {
		d := &v.Practical.Dishes[i]
		for _, ing := range d.Ingredients {
			if d.Letter == letter && leafy.in(wordsOf(ing.Name)) {
				return true
			}
		}
	}
	return false
}

var leafy = lex("leaf, leaves, lettuce, rocket, spinach, watercress, cress, salad, mizuna, radicchio, chicory, lambs, endive")

// platesAndGarnish tells a plan with hot food in which neither plates nor garnish are planned.
func platesAndGarnish(v *view, f *asker) {
	var hot []string
	for _, letter := range v.dishes {
		if _, _, is := v.ready(letter); is {
			hot = append(hot, letter)
		}
	}
	if len(hot) == 0 {
		return
	}
	for _, r := range v.rows {
		if plateWarm.in(r.all()) || garnishing.in(r.all()) && !r.washesUp() {
			return
		}
	}
	f.at()
}

// simmerTimeMissing tells food that is left on the hob with nothing to say until when.
func simmerTimeMissing(v *view, f *asker) {
	for _, d := range v.of(act.Hob) {
		if d.row.backwards || !simmers.in(d.words) || d.Least > 0 || d.row.HasUntil || d.row.Minutes > 0 || d.job.watch {
			continue
		}
		if doneness.in(d.row.all()) || until.in(d.row.words) || v.waited(d.row, practical.AtHob) {
			continue
		}
		named := slices.ContainsFunc(v.after(d), func(o *deed) bool {
			return o.row != d.row && o.row.samely(d.row)
		})
		if !named {
			f.tell(saw{rows: []*row{d.row}, say: map[string]string{"what": fmt.Sprintf("%q", said(d.row, d))}})
		}
	}
}

var (
	simmers = lex("simmer*, stew*, brais*, boil potatoes, boil rice, boil pasta")
	until   = lex("until, till, til")
)

package written_test

import (
	"slices"
	"strings"
	"testing"

	"plait.example/internal/written"
)

var crumbleAndSoup = []written.Named{{Name: "Apple crumble", Letter: "A"}, {Name: "Onion soup", Letter: "O"}}

// habit is a way of setting a plan out.
type habit struct {
	name  string
	first int    // how many of its rows were read right at first
	file  string // its name; empty: a page or lines
	text  string
	o     written.Options
	want  string
}

// habits are ways that the reader had not seen when they were written down. All
// are invented, after the habits of pupils and teachers.
var habits = []habit{
	{
		name: "planned and actual clocks", first: 4, text: html("", `
Planned time | Actual time | Dish | What I will do
9.00 | 9.02 | All | Wash hands
9.05 | 9.10 | Crumble | Rub in
9.15 | 9.25 | Soup | Chop onions
9.30 | | Soup | Fry onions`),
		want: "09:00 all: Wash hands\n09:05 Crumble: Rub in\n09:15 Soup: Chop onions\n09:30 Soup: Fry onions\n",
	},
	{
		name: "bullets in each quarter of an hour", first: 0, o: written.Options{Dishes: crumbleAndSoup}, text: html("", `
Time | Jobs
9.00 - 9.15 | • wash hands//• Crumble: rub in//• Soup: chop onions
9.15 - 9.30 | • Soup: fry onions//• wash up
9.30 - 9.45 | • Crumble: slice apples`),
		want: "09:00-09:15 Crumble+Soup: • wash hands / • Crumble: rub in / • Soup: chop onions\n09:15-09:30 Soup: • Soup: fry onions / • wash up\n09:30-09:45 Crumble: • Crumble: slice apples\n",
	},
	{
		name: "a list under headings of the hour", first: 5, text: `<html><body><h1>Plan</h1>
<h2>9.00</h2><ul><li>Wash hands</li><li>Rub in</li></ul>
<h2>9.30</h2><ul><li>Chop onions</li><li>Fry onions</li></ul>
<h2>10 o'clock</h2><ul><li>Bake the crumble</li></ul></body></html>`,
		want: "09:00 : Wash hands\n09:00(next) : Rub in\n09:30 : Chop onions\n09:30(next) : Fry onions\n10:00 : Bake the crumble\n",
	},
	{
		name: "minutes under headings of the hour", first: 5, text: `<html><body>
<h2>9 o'clock</h2><p>.00 Wash hands</p><p>.05 Rub in</p><p>.20 Chop onions</p>
<h2>10 o'clock</h2><p>.00 Fry onions</p><p>.10 Bake the crumble</p></body></html>`,
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chop onions\n10:00 : Fry onions\n10:10 : Bake the crumble\n",
	},
	{
		name: "times at the end of the line", first: 0, o: written.Options{Dishes: crumbleAndSoup}, text: `My time plan

Wash hands and tie hair back (9.00)
Crumble: rub the fat into the flour (9.05)
Soup: chop 2 onions (9.20)
Soup: fry for 10 minutes (9.25-9.35)
Bake the crumble at 190C for 30 minutes (9.40)
`,
		want: "09:00 : Wash hands and tie hair back\n09:05 Crumble: Crumble: rub the fat into the flour\n09:20 Soup: Soup: chop 2 onions\n09:25-09:35 Soup: Soup: fry for 10 minutes\n09:40 : Bake the crumble at 190C for 30 minutes\n",
	},
	{
		name: "times after a row of dots", first: 0, text: `Plan
Wash hands .......... 9.00
Rub in .............. 9.05
Chop onions ......... 9.20am
Serve the soup ...... 12.15
`,
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chop onions\n12:15 : Serve the soup\n",
	},
	{
		name: "from and till", first: 2, text: `From 9.00 till 9.05 wash hands
From 9.05 till 9.20 rub in
Between 9.20 and 9.30 chop onions
From half past nine until ten o'clock fry onions
`,
		want: "09:00-09:05 : wash hands\n09:05-09:20 : rub in\n09:20-09:30 : chop onions\n09:30-10:00 : fry onions\n",
	},
	{
		name: "at signs", first: 5, text: `@9.00 wash hands
@9.05 rub in
@ 9.20: chop onions
at 9.30 I will fry the onions
By 10.15, bake the crumble
`,
		want: "09:00 : wash hands\n09:05 : rub in\n09:20 : chop onions\n09:30 : I will fry the onions\n10:15 : bake the crumble\n",
	},
	{
		name: "ranges in words", first: 4, text: html("", `
When | What
nine o'clock to quarter past nine | Rub in
quarter past nine until half past nine | Chop onions
half nine to twenty to ten | Fry onions
twenty to ten | Bake`),
		want: "09:00-09:15 : Rub in\n09:15-09:30 : Chop onions\n09:30-09:40 : Fry onions\n09:40 : Bake\n",
	},
	{
		name: "from the serving upwards", first: 6, text: html("", `
Time | Task
1.00 | Serve
12.45 | Plate up
12.10 | Take crumble out
11.40 | Bake crumble
10.50 | Rub in
10.45 | Wash hands`),
		want: "13:00(mended) : Serve\n12:45 : Plate up\n12:10 : Take crumble out\n11:40 : Bake crumble\n10:50 : Rub in\n10:45 : Wash hands\n",
	},
	{
		name: "a column for each quarter of an hour", first: 4, text: html("", `
 | 9.00-9.15 | 9.15-9.30 | 9.30-9.45 | 9.45-10.00
Crumble | Rub in | | {colspan=2}Bake
Soup | {colspan=2}Chop onions | ^ | Fry onions | Add stock
Washing up | | Wash up | | `),
		want: "09:00-09:15 Crumble: Rub in\n09:00-09:30 Soup: Chop onions\n09:15-09:30 : Wash up\n09:30-10:00 Crumble: Bake\n09:30-09:45 Soup: Fry onions\n09:45-10:00 Soup: Add stock\n",
	},
	{
		name: "a number before each time, no headings", first: 4, text: html("", `
1 | 9.00 | Wash hands
2 | 9.05 | Rub in
3 | 9.20 | Chop onions
4 | 9.30 | Fry onions`),
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chop onions\n09:30 : Fry onions\n",
	},
	{
		name: "steps with numbers and times", first: 0, text: `Step 1 (9.00): wash hands
Step 2 (9.05): rub in
Step 3 (9.20): chop onions
Step 4 - 9.30 - fry onions
`,
		want: "09:00 : wash hands\n09:05 : rub in\n09:20 : chop onions\n09:30 : fry onions\n",
	},
	{
		name: "the day before", first: 2, o: written.Options{Clock: morning}, text: html("", `
Time | Task
{colspan=2}The day before
4.00pm | Make the jelly
 | Weigh the flour
{colspan=2}On the day
8.45 | Wash hands
9.00 | Rub in`),
		want: "--:-- : Make the jelly\n--:-- : Weigh the flour\n08:45 : Wash hands\n09:00 : Rub in\n",
	},
	{
		name: "down to the serving", first: 0, o: written.Options{Clock: morning}, text: html("", `
Time | Task
T-90 | Rub in
T-60 | Bake
T-20 | Fry onions
T-5 | Plate up
T-0 | Serve`),
		want: "10:30(counted) : Rub in\n11:00(counted) : Bake\n11:40(counted) : Fry onions\n11:55(counted) : Plate up\n12:00(counted) : Serve\n",
	},
	{
		name: "boxes of times, then boxes of jobs", first: 0, text: `9.00
9.05
9.20
9.30
Wash hands
Rub in
Chop onions
Fry onions
`,
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chop onions\n09:30 : Fry onions\n",
	},
	{
		name: "a table inside a table", first: 3, text: `<html><body><table><tr><td><p>Key: C = Crumble, S = Soup</p></td><td>` + strings.TrimSuffix(strings.TrimPrefix(html("", `
Time | Dish | Task
9.00 | C | Rub in
9.20 | S | Chop onions
9.30 | S | Fry onions`), "<html><body>"), "</body></html>") + `</td></tr></table></body></html>`,
		want: "09:00 Crumble: Rub in\n09:20 Soup: Chop onions\n09:30 Soup: Fry onions\n",
	},
	{
		name: "the text of a picture, with lines that wrap", first: 1, text: `TIME PLAN
9:OO  Wash hands
9:l0  Rub the fat into the flour until it
looks like breadcrumbs
9;20  Chop the onions
|9.30 Fry the onions gently in the butter,
stirring all the time
`,
		want: "09:00(mended) : Wash hands\n09:10(mended) : Rub the fat into the flour until it / looks like breadcrumbs\n09:20(mended) : Chop the onions\n09:30 : Fry the onions gently in the butter, / stirring all the time\n",
	},
	{
		name: "a card for each job", first: 0, text: `Time: 9.00
Dish: Crumble
Task: Rub in
Special points: cold hands

Time: 9.20
Dish: Soup
Task: Chop onions

Time: 9.30
Dish: Soup
Task: Fry onions
`,
		want: "09:00 Crumble: Rub in {cold hands}\n09:20 Soup: Chop onions\n09:30 Soup: Fry onions\n",
	},
	{
		name: "the dish before the time", first: 0, o: written.Options{Dishes: crumbleAndSoup}, text: `Crumble 9.00 rub in
Soup 9.20 chop onions
Soup, 9.30: fry onions
Crumble - 9.45 - bake
`,
		want: "09:00 Crumble: Crumble: rub in\n09:20 Soup: Soup: chop onions\n09:30 Soup: Soup: fry onions\n09:45 Crumble: Crumble: bake\n",
	},
	{
		name: "times on the right, no headings", first: 4, text: html("", `
Wash hands | 9.00
Rub in the fat | 9.05
Chop the onions | 9.20
Fry the onions | 9.30`),
		want: "09:00 : Wash hands\n09:05 : Rub in the fat\n09:20 : Chop the onions\n09:30 : Fry the onions\n",
	},
	{
		name: "dates with the times", first: 0, file: "plan.csv", text: "When,What\n2026-03-04 09:00,Wash hands\n2026-03-04 09:05,Rub in\n2026-03-04T09:20:00,Chop onions\n04/03/2026 09:30,Fry onions\n",
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chop onions\n09:30 : Fry onions\n",
	},
	{
		name: "boxes to tick before the times", first: 0, text: `[ ] 9.00 wash hands
[x] 9.05 rub in
☐ 9.20 chop onions
- [ ] 9.30 fry onions
`,
		want: "09:00 : wash hands\n09:05 : rub in\n09:20 : chop onions\n09:30 : fry onions\n",
	},
	{
		name: "coloured dots", first: 1, text: `Key: 🔴 = Crumble, 🔵 = Soup
9.00 🔴 rub in
9.20 🔵 chop onions
9.30 🔵 fry onions
9.45 wash up
`,
		want: "09:00 Crumble: 🔴 rub in\n09:20 Soup: 🔵 chop onions\n09:30 Soup: 🔵 fry onions\n09:45 : wash up\n",
	},
}

// Each habit is read as its writer means it.
func TestHabits(t *testing.T) {
	first, all := 0, 0
	for _, h := range slices.Concat(habits, moreHabits) {
		t.Run(h.name, func(t *testing.T) {
			file := h.file
			if file == "" {
				file = "plan"
			}
			p := read(t, file, h.text, h.o)
			got := rowsOf(p)
			right, rows := agree(got, h.want)
			first, all = first+h.first, all+rows
			if got != h.want {
				t.Errorf("%d of %d rows are right\n%swant:\n%sother: %q\nunread: %q", right, rows, got, h.want, p.Other, p.Unread)
			}
		})
	}
	t.Logf("at first %d of %d rows were read right", first, all)
}

// agree counts the rows that were wanted and came, in their order.
func agree(got, want string) (right, rows int) {
	have := strings.SplitAfter(got, "\n")
	for _, w := range strings.SplitAfter(strings.TrimSuffix(want, "\n"), "\n") {
		rows++
		for i, g := range have {
			if strings.TrimSuffix(g, "\n") == strings.TrimSuffix(w, "\n") {
				right++
				have = have[i+1:]
				break
			}
		}
	}
	return right, rows
}

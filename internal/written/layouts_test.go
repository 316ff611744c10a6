package written_test

import (
	"testing"

	"plait.example/internal/written"
)

// More ways of setting a plan out; all invented.
func TestFurtherLayouts(t *testing.T) {
	for _, c := range []struct {
		name, text string
		o          written.Options
		want       string
	}{
		{
			name: "numbers first, length and clock", text: html("", `
Step | Clock time | Time (mins) | ACTIVITY | H&S / HYGIENE / QUALITY | EQUIPMENT
1 | 9:00 | 5 | Wash hands | soap | 
2 | 9:05 | 10 | Rub in | cold hands | bowl
3 | 9:15 | 20 | Chill pastry | |`),
			want: "09:00[5] : Wash hands {soap}\n09:05[10] : Rub in {cold hands / bowl}\n09:15[20] : Chill pastry\n",
		},
		{
			name: "candidate and title rows in the table, two times in a cell", text: html("", `
{colspan=2}Candidate Name: Ola Reid | ^ | Centre: 123
{colspan=3}Plan of action
Time | Method | Special points
9.00 9.15 | Rub in | breadcrumbs
9.15//9.30 | Roll out |
9:30 - 9:45 (15 mins) | Bake blind | 190`),
			want: "09:00-09:15 : Rub in {breadcrumbs}\n09:15-09:30 : Roll out\n09:30-09:45[15] : Bake blind {190}\n",
		},
		{
			name: "elapsed hours and minutes", o: written.Options{Clock: morning}, text: html("", `
Time | Task
0:00 | Wash hands
0:05 | Rub in
1:10 | Bake`),
			want: "09:00(counted) : Wash hands\n09:05(counted) : Rub in\n10:10(counted) : Bake\n",
		},
		{
			name: "a length in each cell of the time column", text: html("", `
Time | Task
9.00 (5 mins) | Wash hands
9.05 - 10 mins | Rub in
 | Chill`),
			want: "09:00[5] : Wash hands\n09:05[10] : Rub in\n09:15(next) : Chill\n",
		},
		{
			name: "a section with its time", text: html("", `
Time | Task
{colspan=2}Set-up 8.30 - 9.00
 | Weigh flour
 | Grease tin
{colspan=2}Hour 1: 9.00 - 10.00
9.00 | Rub in`),
			want: "08:30(next) : Weigh flour\n08:30(next) : Grease tin\n09:00 : Rub in\n",
		},
		{
			name: "set-up without a time, the practical's clock known", o: written.Options{Clock: morning}, text: html("", `
Time | Task
Set-up | Weigh flour
Start | Rub in
9.20 | Bake`),
			want: "08:30(counted) : Weigh flour\n09:00(counted) : Rub in\n09:20 : Bake\n",
		},
		{
			name: "a table for each dish under its heading", text: "<html><body><h2>Dish 1: Quiche</h2>" + html("", `
Time | Task
9.00 | Rub in
9.20 | Chill`) + "<h2>Dish 2: Curry</h2>" + html("", `
Time | Task
9.10 | Dice onion
9.30 | Fry`),
			want: "09:00 Quiche: Rub in\n09:20 Quiche: Chill\n09:10 Curry: Dice onion\n09:30 Curry: Fry\n",
		},
		{
			name: "digits without signs", text: html("", `
Time | Task
0900-0915 | Rub in
0915-0930 | Chill
1000hrs | Bake`),
			want: "09:00-09:15 : Rub in\n09:15-09:30 : Chill\n10:00 : Bake\n",
		},
		{
			name: "what a sheet leaves of times", text: "Time,Task\n9,Wash hands\n9.1,Rub in\n9.15,Chill\n9.5,Bake\n10,Take out\n",
			want: "09:00 : Wash hands\n09:10(mended) : Rub in\n09:15 : Chill\n09:50(mended) : Bake\n10:00 : Take out\n",
		},
		{
			name: "dishes ticked", text: html("", `
Time | Dish 1 | Dish 2 | What I will do
9.00 | x | | Rub in
9.10 | | x | Dice onion
9.20 | x | x | Wash up`),
			want: "09:00 Dish 1: Rub in\n09:10 Dish 2: Dice onion\n09:20 Dish 1+Dish 2: Wash up\n",
		},
		{
			name: "start, task, finish", text: html("", `
Start time | Dish | Task | Finish time
9.00 | Pie | Rub in | 9.10
9.10 | Soup | Chop | 9.25`),
			want: "09:00-09:10 Pie: Rub in\n09:10-09:25 Soup: Chop\n",
		},
		{
			name: "blank rows, a legend in the table", text: html("", `
{style="background:#FFE699"}Pie | {style="background:#BDD7EE"}Soup
Time | Task
 | 
9.00 | {style="background:#FFE699"}Rub in
 | 
9.10 | {style="background:#BDD7EE"}Chop`),
			want: "09:00 Pie: Rub in\n09:10 Soup: Chop\n",
		},
		{
			name: "minutes alone after the hour", text: html("", `
Time | Task
9.00 | Wash hands
.05 | Rub in
:50 | Chill
10.00 | Roll out
.10 | Bake`),
			want: "09:00 : Wash hands\n09:05 : Rub in\n09:50 : Chill\n10:00 : Roll out\n10:10 : Bake\n",
		},
		{
			name: "past noon in words", text: html("", `
When | What
ten to twelve | Drain pasta
12 noon | Serve soup
quarter past 12 | Wash up
1 o'clock | Finish`),
			want: "11:50 : Drain pasta\n12:00 : Serve soup\n12:15 : Wash up\n13:00(mended) : Finish\n",
		},
		{
			name: "one step in each paragraph of one cell", text: html("", `
Time | Order of work
9.00-9.20 | • wash hands//• weigh flour//• rub in
9.20 | bake 200°C`),
			want: "09:00-09:20 : • wash hands / • weigh flour / • rub in\n09:20 : bake 200°C\n",
		},
		{
			name: "a plan that goes on beside itself", text: html("", `
Time | Task | Time | Task
9.00 | Wash hands | 10.00 | Bake
9.05 | Rub in | 10.30 | Take out
9.30 | Chill | |`),
			want: "09:00 : Wash hands\n09:05 : Rub in\n09:30 : Chill\n10:00 : Bake\n10:30 : Take out\n",
		},
		{
			name: "two dishes in one cell, each in its colour", text: html(`<p>Key: <span style="color:#C00000">Quiche</span> <span style="color:#0070C0">Curry</span></p>`, `
Time | Sequence of work | Contingency
9.00-9.10//Mise en place | <span style="color:#C00000">Rub in fat</span>//<span style="color:#0070C0">Dice onion</span> | use a processor`),
			want: "09:00-09:10 Quiche+Curry: Rub in fat / Dice onion {use a processor}\n",
		},
		{
			name: "start and time", text: html("", `
Start | Time | Dish | Process
9.00 | 10 mins | Pie | Rub in
9.10 | 5 | Soup | Chop`),
			want: "09:00[10] Pie: Rub in\n09:10[5] Soup: Chop\n",
		},
		{
			name: "an ingredients table is no plan", text: html("", `
Ingredient | Quantity | When needed
Flour | 200 g | 9.05
Eggs | 3 | 9.20`) + html("", `
Time | Task
9.00 | Wash hands
9.05 | Rub in`),
			want: "09:00 : Wash hands\n09:05 : Rub in\n",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := read(t, "plan", c.text, c.o)
			if c.name == "what a sheet leaves of times" {
				p = read(t, "plan.csv", c.text, c.o)
			}
			if got := rowsOf(p); got != c.want {
				t.Errorf("rows:\n%swant:\n%sother: %q\nunread: %q", got, c.want, p.Other, p.Unread)
			}
		})
	}
}

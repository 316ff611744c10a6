package written_test

import (
	"fmt"
	"strings"
	"testing"

	"plait.example/internal/format"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// rowsOf writes the rows of a plan one a line: clock, end, how it is known,
// minutes, dishes, words, points.
func rowsOf(p written.Plan) string {
	var b strings.Builder
	for _, r := range p.Rows {
		at := r.At.String()
		if r.Clock == written.NoClock {
			at = "--:--"
		}
		if r.HasUntil {
			at += "-" + r.Until.String()
		}
		if r.Clock != written.Said && r.Clock != written.NoClock {
			at += "(" + string(r.Clock) + ")"
		}
		if r.Minutes > 0 {
			at += fmt.Sprintf("[%d]", r.Minutes)
		}
		fmt.Fprintf(&b, "%s %s: %s", at, strings.Join(r.Dishes, "+"), strings.ReplaceAll(r.Text, "\n", " / "))
		if r.Points != "" {
			fmt.Fprintf(&b, " {%s}", strings.ReplaceAll(r.Points, "\n", " / "))
		}
		b.WriteString("\n")
	}
	return b.String()
}

func read(t *testing.T, name, text string, o written.Options) written.Plan {
	t.Helper()
	d, err := format.Read(name, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return written.Read(name, d.Blocks, o)
}

// html makes a web page of a table: rows on lines, cells between bars; "!" before
// a cell makes it a heading, {…} gives it attributes.
func html(before, rows string) string {
	var b strings.Builder
	b.WriteString("<html><body>" + before + "<table>")
	for _, row := range strings.Split(strings.TrimSpace(rows), "\n") {
		b.WriteString("<tr>")
		for _, cell := range strings.Split(row, "|") {
			cell = strings.TrimSpace(cell)
			attrs := ""
			if rest, has := strings.CutPrefix(cell, "{"); has {
				attrs, cell, _ = strings.Cut(rest, "}")
			}
			if cell == "^" {
				continue // covered by the cell above or before
			}
			fmt.Fprintf(&b, "<td %s>%s</td>", attrs, strings.ReplaceAll(cell, "//", "<br>"))
		}
		b.WriteString("</tr>")
	}
	return b.String() + "</table></body></html>"
}

var morning = &practical.Clock{SetUp: 8*60 + 30, Start: 9 * 60, Finish: 12 * 60}

// All these plans are invented, after the ways in which pupils and teachers set
// a plan out.
func TestLayouts(t *testing.T) {
	for _, c := range []struct {
		name, text string
		o          written.Options
		want       string
		dishes     string
		candidate  string
	}{
		{
			name: "merged times and dishes, sections, repeated headings", text: html("<p>Name: Amy Okafor   Class: 10B</p><h1>Time plan</h1>", `
{colspan=4}Time Plan for my practical
Time | Dish | What I will do | Special points
{colspan=4}Set-up
8.30 | All | Apron on, wash hands | hygiene
{colspan=4}First hour
{rowspan=2}9.00 | {rowspan=2}Quiche | Weigh flour | accurate
^ | ^ | Rub in fat | breadcrumbs
9.15-9.25 | Curry | Dice onion | claw grip
 | Curry | Dice chicken | red board
Time | Dish | What I will do | Special points
9.40 |  | Wash up | 
{colspan=4}Wash up and clean down
10.00 | Quiche | Bake |`),
			want: `08:30 all: Apron on, wash hands {hygiene}
09:00 Quiche: Weigh flour {accurate}
09:00(next) Quiche: Rub in fat {breadcrumbs}
09:15-09:25 Curry: Dice onion {claw grip}
09:25(next) Curry: Dice chicken {red board}
09:40 : Wash up
09:40(next) : Wash up and clean down
10:00 Quiche: Bake
`, candidate: "Amy Okafor",
		},
		{
			name: "several times in a cell", text: html("", `
Time | Order of work
9.00//9.05//9.20 | Wash hands//Rub in//Chill pastry
9.30 | 9.30 Dice onion//9.35 Fry onion//then add spices//9.45 Simmer`),
			want: `09:00 : Wash hands
09:05 : Rub in
09:20 : Chill pastry
09:30 : Dice onion
09:35 : Fry onion / then add spices
09:45 : Simmer
`,
		},
		{
			name: "time and words in one column", text: html("", `
Order of work | Notes
9.05 - wash hands | soap
9.10: rub in the fat, add 2 eggs |
9.30am bake at 180 | gas 4
10 o'clock take out | `),
			want: `09:05 : wash hands {soap}
09:10 : rub in the fat, add 2 eggs
09:30 : bake at 180 {gas 4}
10:00 : take out
`,
		},
		{
			name: "times across the top", text: html("", `
 | 9.00 | 9.15 | 9.30 | 9.45
Quiche | Make pastry | | Roll out | Bake blind
Curry | | Dice chicken | |
Other | Wash hands | | Wash up |`),
			want: `09:00 Quiche: Make pastry
09:00 : Wash hands
09:15 Curry: Dice chicken
09:30 Quiche: Roll out
09:30 : Wash up
09:45 Quiche: Bake blind
`,
		},
		{
			name: "a column for each dish", text: html("", `
Time | Cheese scones | Tomato soup | Notes
9.00 | Weigh flour | |
9.10 | Rub in | Chop onion | knife
9.30 | {colspan=2}Wash up | ^ |
9.40 | | Simmer soup | stir`),
			want: `09:00 Cheese scones: Weigh flour
09:10 Cheese scones: Rub in {knife}
09:10 Tomato soup: Chop onion
09:30 : Wash up
09:40 Tomato soup: Simmer soup {stir}
`,
		},
		{
			name: "twelve-hour clock, one true step back", text: html("", `
Time | Task
11.45 | Fry
12.50 | Serve soup
1.05 | Wash up
12.55 | Dry up
1.20pm | Finish`),
			want: `11:45 : Fry
12:50 : Serve soup
13:05(mended) : Wash up
12:55 : Dry up
13:20 : Finish
`,
		},
		{
			name: "the clock is not mended where it goes back", text: html("", `
Time | Task
10.30 | Fry
10.45 | Boil
10.20 | Bake
11.00 | Serve`),
			want: "10:30 : Fry\n10:45 : Boil\n10:20 : Bake\n11:00 : Serve\n",
		},
		{
			name: "an afternoon", text: html("", `
Time | Task
1.15 | Set up
1.30 | Make pastry
2.05 | Bake
4.10 | Serve`),
			want: "13:15(mended) : Set up\n13:30(mended) : Make pastry\n14:05(mended) : Bake\n16:10(mended) : Serve\n",
		},
		{
			name: "slips of typing", text: html("", `
Time | Task
9.:00 | Wash hands
9.5 | Weigh
9;15 | Rub in
l0.15 | Bake
1O:30 | Take out
1045 | Serve`),
			want: `09:00(mended) : Wash hands
09:05(mended) : Weigh
09:15(mended) : Rub in
10:15(mended) : Bake
10:30(mended) : Take out
10:45 : Serve
`,
		},
		{
			name: "minutes from the start", o: written.Options{Clock: morning}, text: html("", `
Time in minutes | Dish | Process
0 | All | Wash hands
5 | Quiche | Rub in
10 | Quiche | Chill
120 | Quiche | Serve`),
			want: `09:00(counted) all: Wash hands
09:05(counted) Quiche: Rub in
09:10(counted) Quiche: Chill
11:00(counted) Quiche: Serve
`,
		},
		{
			name: "ranges of minutes from the start", o: written.Options{Clock: morning}, text: html("", `
Time | Process
0-10 | Wash hands
10-25 mins | Rub in
25-30 | Chill`),
			want: "09:00-09:10(counted) : Wash hands\n09:10-09:25(counted) : Rub in\n09:25-09:30(counted) : Chill\n",
		},
		{
			name: "how long each takes", o: written.Options{Clock: morning}, text: html("", `
Task | How long
Wash hands | 5 mins
Rub in | 15 mins
Chill | 20`),
			want: "09:00(counted)[5] : Wash hands\n09:05(counted)[15] : Rub in\n09:20(counted)[20] : Chill\n",
		},
		{
			name: "a start and lengths", text: html("", `
Time | Task
9.00 | Wash hands
5 mins | Rub in
10 mins | Chill
+20 min | Roll out`),
			want: "09:00 : Wash hands\n09:00(counted)[5] : Rub in\n09:05(counted)[10] : Chill\n09:25(counted) : Roll out\n",
		},
		{
			name: "lengths with the time, ends in a column", text: html("", `
Start | Finish | Task
10:00 | 10:10 | Fry
10:10 | 10:40 | Simmer`),
			want: "10:00-10:10 : Fry\n10:10-10:40 : Simmer\n",
		},
		{
			name: "from and to under time", text: html("", `
{colspan=2}Time | ^ | {rowspan=2}Task | {rowspan=2}Started | {rowspan=2}Finished
From | To | ^ | ^ | ^
10:00 | 10:10 | Fry | |
10:10 | 10:40 | Simmer | x |`),
			want: "10:00-10:10 : Fry\n10:10-10:40 : Simmer\n",
		},
		{
			name: "the colour of the letters through a key", text: html(`<p>Key: <span style="color:#C00000">Quiche</span> <span style="color:#0070C0">Curry</span></p>`, `
Time | What I do
9.00 | <span style="color:#C00000">Rub in</span>
9.10 | <span style="color:#0070C0">Dice onion</span>
9.20 | Wash up
9.30 | <span style="color:#C00000">Roll out pastry</span>, <span style="color:#0070C0">fry onions</span>`),
			want:   "09:00 Quiche: Rub in\n09:10 Curry: Dice onion\n09:20 : Wash up\n09:30 Quiche+Curry: Roll out pastry, fry onions\n",
			dishes: "Quiche//C00000/ Curry//0070C0/",
		},
		{
			name: "shading through a key that is a table", text: "<html><body><table><tr><td style='background:#FFE699'></td><td>Quiche</td></tr><tr><td style='background:#BDD7EE'></td><td>Curry</td></tr></table>" + html("", `
Time | What I do
{style="background:#FFE699"}9.00 | {style="background:#FFE699"}Rub in
{style="background:#BDD7EE"}9.10 | {style="background:#BDD7EE"}Dice onion
9.20 | Wash up`),
			want:   "09:00 Quiche: Rub in\n09:10 Curry: Dice onion\n09:20 : Wash up\n",
			dishes: "Quiche///FFE699 Curry///BDD7EE",
		},
		{
			name: "colours by their names", text: html("<p>Colour key</p><p>Red = quiche</p><p>Blue = curry</p>", `
Time | What I do
9.00 | <font color="#FF0000">Rub in</font>
9.10 | <font color="#1F4E9E">Dice onion</font>`),
			want: "09:00 quiche: Rub in\n09:10 curry: Dice onion\n",
		},
		{
			name: "colours without a key", text: html("", `
Time | What I do
9.00 | <font color="#FF0000">Rub in</font>
9.10 | <font color="#0000FF">Dice onion</font>
9.20 | <font color="#FF0000">Roll out</font>`),
			want:   "09:00 : Rub in\n09:10 : Dice onion\n09:20 : Roll out\n",
			dishes: "//FF0000/ //0000FF/",
		},
		{
			name: "every other row shaded says no dish", text: html("", `
Time | What I do
{style="background:#DDEBF7"}9.00 | {style="background:#DDEBF7"}Rub in
9.10 | Dice onion
{style="background:#DDEBF7"}9.20 | {style="background:#DDEBF7"}Roll out
9.30 | Fry onion
{style="background:#DDEBF7"}9.40 | {style="background:#DDEBF7"}Serve`),
			want: "09:00 : Rub in\n09:10 : Dice onion\n09:20 : Roll out\n09:30 : Fry onion\n09:40 : Serve\n",
		},
		{
			name: "letters through a key", text: html("<p>Q = Quiche, C = Curry</p>", `
Time | | What I do
9.00 | Q | Rub in
9.10 | C | Dice onion
9.20 | Q & C | Wash up
9.25 | all | Wash hands
9.30 | Q | Roll out`),
			want: "09:00 Quiche: Rub in\n09:10 Curry: Dice onion\n09:20 Quiche+Curry: Wash up\n09:25 all: Wash hands\n09:30 Quiche: Roll out\n",
		},
		{
			name: "no headings", text: html("", `
9.00 | Quiche | Rub fat into the flour | wash hands first
9.10 | Curry | Dice the onion and chicken | claw grip
9.20 | Quiche | Roll out the pastry | even
9.30 | Curry | Fry the onion until soft |`),
			want: `09:00 Quiche: Rub fat into the flour {wash hands first}
09:10 Curry: Dice the onion and chicken {claw grip}
09:20 Quiche: Roll out the pastry {even}
09:30 Curry: Fry the onion until soft
`,
		},
		{
			name: "menu, shopping list and requisition before, plan over two tables", text: html("", `
Course | Dish
Starter | Soup
Main | Quiche`) + html("", `
Ingredient | Amount | Cost
Flour | 200 g | 1.20
Eggs | 3 | 0.75`) + html("", `
No. | Time | Dish | Method
1 | 9.00 | Soup | Chop onion
2 | 9.10 | Quiche | Rub in`) + html("<p>continued</p>", `
3 | 9.30 | Soup | Simmer
4 | 9.40 | Quiche | Bake`),
			want:   "09:00 Soup: Chop onion\n09:10 Quiche: Rub in\n09:30 Soup: Simmer\n09:40 Quiche: Bake\n",
			dishes: "Soup/// Quiche///",
		},
		{
			name: "sections that name the dish", text: html("", `
Time | Task
{colspan=2}Dish 1: Quiche
9.00 | Rub in
9.10 | Chill
{colspan=2}Dish 2: Curry
9.20 | Dice onion`),
			want: "09:00 Quiche: Rub in\n09:10 Quiche: Chill\n09:20 Curry: Dice onion\n",
		},
		{
			name: "words that are struck out", text: html("", `
Time | Task
9.00 | Rub in <s>with lard</s>
9.10 | Chill`),
			want: "09:00 : Rub in\n09:10 : Chill\n",
		},
		{
			name: "lines of text", text: `My time plan
Name: Ben Carter
Dishes: Quiche, Curry

9.00 Wash hands
9.05 Quiche: rub in the fat
Set the timer
9.20-9.30 Curry - dice 2 onions
0945 Bake at 180 for 20 mins
10.05 Take out
Evaluation: it went well
`,
			want: `09:00 : Wash hands
09:05 Quiche: Quiche: rub in the fat
09:05(next) : Set the timer
09:20-09:30 Curry: Curry - dice 2 onions
09:45 : Bake at 180 for 20 mins
10:05 : Take out
`, candidate: "Ben Carter", dishes: "Quiche/// Curry///",
		},
		{
			name: "times on lines of their own", text: "9.00\nWash hands\n9.05\nRub in\n9.20\nChill\n",
			want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chill\n",
		},
		{
			name: "pasted with tabs", text: "Time\tDish\tWhat\n9.00\tQuiche\tRub in\n9.10\tCurry\tDice onion\n",
			want: "09:00 Quiche: Rub in\n09:10 Curry: Dice onion\n",
		},
		{
			name: "bars", text: "| Time | Dish | What |\n|---|---|---|\n| 9.00 | Quiche | Rub in |\n| 9.10 | Curry | Dice onion |\n",
			want: "09:00 Quiche: Rub in\n09:10 Curry: Dice onion\n",
		},
		{
			name: "commas", text: "Time,Dish,What\n9:00,Quiche,Rub in\n9:10,Curry,Dice onion\n",
			want: "09:00 Quiche: Rub in\n09:10 Curry: Dice onion\n",
		},
		{
			name: "a list without times", text: "Order of work\n1. Wash hands\n2. Rub in\n3. Chill\n",
			want: "--:-- : Wash hands\n--:-- : Rub in\n--:-- : Chill\n",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := read(t, "plan", c.text, c.o)
			if got := rowsOf(p); got != c.want {
				t.Errorf("rows:\n%swant:\n%sother: %q\nunread: %q", got, c.want, p.Other, p.Unread)
			}
			if p.Candidate != c.candidate {
				t.Errorf("candidate %q, want %q", p.Candidate, c.candidate)
			}
			var dishes []string
			for _, d := range p.Dishes {
				dishes = append(dishes, d.Name+"/"+d.Letter+"/"+d.Ink+"/"+d.Shade)
			}
			if got := strings.Join(dishes, " "); c.dishes != "" && got != c.dishes {
				t.Errorf("dishes %q, want %q", got, c.dishes)
			}
		})
	}
}

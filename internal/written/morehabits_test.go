package written_test

import "plait.example/internal/written"

// moreHabits were written down when the rules for the others had been made.
var moreHabits = []habit{
	{
		name: "minutes past a time in the heading", first: 4, text: html("", `
Mins from 9.15 start | Dish | Job
0 | All | Wash hands
5 | Crumble | Rub in
20 | Soup | Chop onions
75 | Soup | Serve`),
		want: "09:15(counted) all: Wash hands\n09:20(counted) Crumble: Rub in\n09:35(counted) Soup: Chop onions\n10:30(counted) Soup: Serve\n",
	},
	{
		name: "a numbered list", first: 3, text: "<html><body><ol><li>9.00 wash hands</li><li>9.05 rub in</li><li>9.20-9.30 chop onions</li></ol></body></html>",
		want: "09:00 : wash hands\n09:05 : rub in\n09:20-09:30 : chop onions\n",
	},
	{
		name: "the letter at the end", first: 3, text: html("<p>C = Crumble</p><p>S = Soup</p>", `
Time | What I do
9.00 | Rub in (C)
9.20 | Chop onions - S
9.30 | Fry onions [S]
9.45 | Wash up`),
		want: "09:00 Crumble: Rub in (C)\n09:20 Soup: Chop onions - S\n09:30 Soup: Fry onions [S]\n09:45 : Wash up\n",
	},
	{
		name: "minutes under the hour, in ranges", first: 0, text: html("", `
Minutes | Task
{colspan=2}9.00 - 10.00
00-05 | Wash hands
05-20 | Rub in
20-60 | Chill
{colspan=2}10.00 - 11.00
00-10 | Roll out
10-30 | Bake`),
		want: "09:00-09:05 : Wash hands\n09:05-09:20 : Rub in\n09:20-10:00 : Chill\n10:00-10:10 : Roll out\n10:10-10:30 : Bake\n",
	},
	{
		name: "one column", first: 5, text: html("", `
Time plan
9.00 Wash hands
9.05 Crumble: rub in
9.20 Crumble: chill
9.30 Soup: chop onions
9.40 Soup: fry`),
		want: "09:00 : Wash hands\n09:05 Crumble: Crumble: rub in\n09:20 Crumble: Crumble: chill\n09:30 Soup: Soup: chop onions\n09:40 Soup: Soup: fry\n",
	},
	{
		name: "only the first time, and how long", first: 4, text: html("", `
Start | Mins | Task
9.00 | 5 | Wash hands
 | 15 | Rub in
 | 10 | Chop onions
 | 20 | Fry onions`),
		want: "09:00[5] : Wash hands\n09:05(next)[15] : Rub in\n09:20(next)[10] : Chop onions\n09:30(next)[20] : Fry onions\n",
	},
	{
		name: "signs between the ends", first: 4, text: html("", `
Time | Task
9.00/9.15 | Wash hands
9.15 → 9.30 | Rub in
11.45-12.10pm | Bake
12.10 > 12.50 | Wash up
12.50-1.10 | Serve`),
		want: "09:00-09:15 : Wash hands\n09:15-09:30 : Rub in\n11:45-12:10 : Bake\n12:10-12:50 : Wash up\n12:50-13:10 : Serve\n",
	},
	{
		name: "notes in brackets below", first: 1, text: "9.00am Wash hands.\n(hygiene)\n9.05am Rub the fat in.\n(cold hands, no lumps)\n9.20am Chop the onions.\n",
		want: "09:00 : Wash hands. / (hygiene)\n09:05 : Rub the fat in. / (cold hands, no lumps)\n09:20 : Chop the onions.\n",
	},
	{
		name: "the dish beside the time", first: 4, o: written.Options{Dishes: crumbleAndSoup}, text: html("", `
Time | Task
9.00 | Wash hands
9.05 Crumble | Rub in
9.20 Soup | Chop onions
9.30 Soup | Fry onions`),
		want: "09:00 : Wash hands\n09:05 Crumble: Rub in\n09:20 Soup: Chop onions\n09:30 Soup: Fry onions\n",
	},
	{
		name: "the table on its side", first: 0, text: html("", `
Time | 9.00 | 9.05 | 9.20 | 9.30
Dish | All | Crumble | Soup | Soup
Task | Wash hands | Rub in | Chop onions | Fry onions
Special points | Soap | Cold hands | Claw grip | Gentle heat`),
		want: "09:00 all: Wash hands {Soap}\n09:05 Crumble: Rub in {Cold hands}\n09:20 Soup: Chop onions {Claw grip}\n09:30 Soup: Fry onions {Gentle heat}\n",
	},
	{
		name: "about so late", first: 5, text: html("", `
Time | Task
9ish | Wash hands
~9.05 | Rub in
c. 9.20 | Chop onions
about half nine | Fry onions
10ish | Serve`),
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chop onions\n09:30 : Fry onions\n10:00 : Serve\n",
	},
	{
		name: "a little clock before each", first: 0, text: "🕘 9.00 wash hands\n⏰ 9.05 rub in\n⏰ 9.20 chop onions\n",
		want: "09:00 : wash hands\n09:05 : rub in\n09:20 : chop onions\n",
	},
	{
		name: "stars around the times", first: 3, text: "# Plan\n\n- **9.00** wash hands\n- **9.05**: rub in\n- **9.20 - 9.30** chop onions\n",
		want: "09:00 : wash hands\n09:05 : rub in\n09:20-09:30 : chop onions\n",
	},
	{
		name: "past and to, without the hour", first: 1, text: html("", `
Time | Task
9 o'clock | Wash hands
5 past | Rub in
quarter past | Chop onions
half past | Fry onions
quarter to | Bake
10 o'clock | Wash up
ten past | Serve`),
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:15 : Chop onions\n09:30 : Fry onions\n09:45 : Bake\n10:00 : Wash up\n10:10 : Serve\n",
	},
	{
		name: "the dish on a line of its own in the cell", first: 1, o: written.Options{Dishes: crumbleAndSoup}, text: html("", `
Time | Task
9.00 | <b>Crumble</b>//Rub in
9.20 | <b>Soup</b>//Chop onions//Fry onions
9.45 | Wash up`),
		want: "09:00 Crumble: Crumble / Rub in\n09:20 Soup: Soup / Chop onions / Fry onions\n09:45 : Wash up\n",
	},
	{
		name: "the day before in lines", first: 0, text: "The day before:\n5pm make jelly\n\n9.00 wash hands\n9.05 rub in\n9.10 chop onions\n",
		want: "--:-- : make jelly\n09:00 : wash hands\n09:05 : rub in\n09:10 : chop onions\n",
	},
	{
		name: "minutes before the serving", first: 0, o: written.Options{Clock: morning}, text: html("", `
Time | Task
60 mins before serving | Rub in
30 mins before | Bake
10 minutes before | Plate up
0 | Serve`),
		want: "11:00(counted) : Rub in\n11:30(counted) : Bake\n11:50(counted) : Plate up\n12:00(counted) : Serve\n",
	},
	{
		name: "two in a line", first: 0, text: "9.00 Wash hands    9.05 Rub in\n9.20 Chop onions    9.30 Fry onions\n",
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chop onions\n09:30 : Fry onions\n",
	},
	{
		name: "days of the week", first: 0, text: html("", `
Time | Task
Mon 9.00 | Wash hands
Mon. 9.05 | Rub in
Monday 9.20 | Chop onions`),
		want: "09:00 : Wash hands\n09:05 : Rub in\n09:20 : Chop onions\n",
	},
}

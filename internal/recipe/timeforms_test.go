package recipe

import (
	"strconv"
	"strings"
	"testing"
)

// timeForms are ways in which recipes state a time, with the minutes they mean,
// least and most: invented, the sums are by hand. Seconds count as a minute.
var timeForms = map[role]string{
	lasts: `
bake 5-7 min = 5 7
5 - 7 minutes = 5 7
5—7 minutes = 5 7
5 to 7 mins = 5 7
8 or 10 minutes = 8 10
five to seven minutes = 5 7
about 20mins = 20
20mins = 20
20min = 20
approx. 20 minutes = 20
approx 1hr = 60
1hr 20mins = 80
1hr20 = 80
1 hr 20 = 80
1h30 = 90
1h 30min = 90
1h30m = 90
1 1/2 hours = 90
1½ hrs = 90
1½-2 hours = 90 120
1 1/2 to 2 hours = 90 120
1 to 1-1/2 hours = 60 90
1-1 1/2 hours = 60 90
1–1½ hours = 60 90
an hour = 60
half an hour = 30
half-an-hour = 30
an hour and a half = 90
one and a half hours = 90
one hour and a half = 90
an hour or so = 60
an hour or two = 60 120
a good hour = 60
at least an hour = 60
90 seconds = 2
30 secs = 1
30s = 1
45 sec. = 1
a couple of minutes = 2
a couple mins = 2
a couple more minutes = 2
two or three minutes = 2 3
2 or 3 mins = 2 3
another 5 minutes = 5
a further 5 mins = 5
5 min each side = 10
3-4 mins per side = 6 8
2 minutes on each side = 4
4 minutes a side = 8
3 min/side = 6
on each side for 3 minutes = 6
3 minutes on both sides = 6
2-3 mins on either side = 4 6
2 mins on one side = 2
1 minute each = 1
5 minutes before serving = 5
overnight = 480 720
12 hours or overnight = 720
4 hours or overnight = 240 720
overnight or for at least 8 hours = 480 720
for 2 hours, or overnight = 120 720
twenty minutes = 20
twenty-five to thirty minutes = 25 30
a 20-minute rest = 20
20' = 20
20’ = 20
20 mins (25 if large) = 20
(15-20 min.) = 15 20
3/4 hour = 45
¾ hour = 45
3/4 of an hour = 45
¾ of an hour = 45
three quarters of an hour = 45
three-quarters of an hour = 45
1/2 an hour = 30
1/2 hr = 30
¼ hour = 15
1/2 - 3/4 hour = 30 45
half to three quarters of an hour = 30 45
an hour and 15 minutes = 75
an hour and twenty minutes = 80
1 hour 20 to 30 minutes = 80 90
1 hr 10 - 1 hr 20 mins = 70 80
1 hour 15 minutes to 1 hour 30 minutes = 75 90
45 minutes to 1 hour = 45 60
45 mins-1 hr = 45 60
45 min. to 1 hr. = 45 60
45-60 mins = 45 60
between 45 minutes and an hour = 45 60
45 minutes or an hour = 45 60
55 min to 1 hour = 55 60
10 minutes - 15 minutes = 10 15
10mins to 15mins = 10 15
several hours = 240 360
a few hours = 120 240
a minute = 1
one minute = 1
a minute or so = 1
a minute or two = 1 2
another minute or two = 1 2
10 additional minutes = 10
an additional 10 minutes = 10
10 minutes more = 10
10 more min = 10
5 extra minutes = 5
20-25 minutes total = 20 25
a total of 20 minutes = 20
10-12 minutes per pound = 10 12
20 minutes per 500g plus 20 minutes = 20
two hours = 120
2 hrs. = 120
2hrs = 120
24 hours = 1440
a day = 1440
2 days = 2880
a week = 10080
15 MINUTES = 15
15 Mins = 15
fifteen mins = 15
seventeen minutes = 17
forty five minutes = 45
forty to forty five minutes = 40 45
thirty five minutes = 35
thirty to forty minutes = 30 40
seventy-five minutes = 75
4½ minutes = 5
2.5 hours = 150
1.5 hrs = 90
1,5 hours = 90
30-60 seconds = 1
30 seconds to 1 minute = 1
30 sec - 1 min = 1
a few seconds = 1
20 minutes, or 25 from frozen = 20
20–25 minutes or until golden = 20 25
10 – 15 min = 10 15
10 -15 mins = 10 15
10- 15 mins = 10 15
10/15 minutes = 10 15
10 until 15 minutes = 10 15
10 ~ 15 minutes = 10 15
~15 min = 15
+ 10 mins = 10
5 minutes max = 5
a maximum of 5 minutes = 5
3 x 10 minutes = 30
2 minutes x 2 = 2
half a minute = 1
1 minute 30 seconds = 2
1 min 30 secs = 2
1½ minutes = 2
one to two minutes = 1 2
1 or 2 min = 1 2
about ten minutes or so = 10
10 or so minutes = 10
10ish minutes = 10
10-ish minutes = 10
quarter of an hour = 15
a quarter of an hour = 15
an hour and a quarter = 75
one hour = 60
1-hour = 60
1 hour + = 60
1+ hours = 60
20+ minutes = 20
under 5 minutes = 5
less than 5 minutes = 5
more than 5 minutes = 5
over 5 minutes = 5
not more than two minutes = 2
the best part of an hour = 60
15 to 20 minuets = 15 20
15 minites = 15
15 miniutes = 15
15 minuites = 15
15 minute = 15
1 hour-1 hour 15 mins = 60 75
12-15mins. = 12 15
1 hour, 30 minutes = 90
1 hour and 30 = 90
1:30 hours = 90
5-6 minutes, then 3-4 minutes = 5 6
20 - 25 more minutes = 20 25
7 minutes for a soft yolk = 7
5 mins for each side = 10
8 mins on each side = 16
a further 20-25 mins = 20 25
`,
	refersBack: `
after 20 minutes = 20
After about 20 minutes = 20
after a further 10 mins = 10
When the 20 minutes are up = 20
once the 10 minutes is up = 10
after the first 10 minutes = 10
`,
	recurs: `
every 10 minutes = 10
every 5 mins or so = 5
every half hour = 30
every 20-30 minutes = 20 30
at 10 minute intervals = 10
at 10-minute intervals = 10
every hour = 60
every minute = 1
`,
	ends: `
for the last 10 minutes = 10
during the final 5 mins = 5
10 minutes before the end of the cooking time = 10
for the last 10 = 10
in the last half hour = 30
10 minutes from the end = 10
halfway through the 20 minutes = 20
for the remaining 10 minutes = 10
5 minutes before it is ready = 5
`,
}

// TestTimeForms: every form is found, once, with its minutes and its meaning.
func TestTimeForms(t *testing.T) {
	for r, table := range timeForms {
		for _, row := range strings.Split(strings.TrimSpace(table), "\n") {
			text, figures, _ := strings.Cut(row, " = ")
			low, high, ranged := strings.Cut(figures, " ")
			if !ranged {
				high = low
			}
			least, _ := strconv.Atoi(low)
			most, _ := strconv.Atoi(high)
			got := durations(tokenize(text, 0))
			if len(got) == 0 || got[0].least != least || got[0].most != most || got[0].role != r {
				t.Errorf("%q: got %+v, want %d to %d, role %d", text, got, least, most, r)
			}
		}
	}
}

// TestNoTimeForms: words that are near to a time and state none.
func TestNoTimeForms(t *testing.T) {
	for _, text := range []string{"another five", "a moment", "00:20", "next day", "the first day", "a second bowl", "a second time", "for another 10 eggs", "for 4 people", "20 g", "per 100 g"} {
		if got := durations(tokenize(text, 0)); len(got) != 0 {
			t.Errorf("%q: got %+v, want none", text, got)
		}
	}
}

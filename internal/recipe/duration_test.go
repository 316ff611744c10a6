package recipe

import "testing"

// TestDurations: forms as recipes write them; the sums are by hand.
func TestDurations(t *testing.T) {
	for _, c := range []struct {
		text        string
		least, most int
		role        role
	}{
		{"for 8-10 minutes", 8, 10, lasts},
		{"8–10 mins", 8, 10, lasts},
		{"8 to 10 min", 8, 10, lasts},
		{"between 8 and 10 minutes", 8, 10, lasts},
		{"five or six hours", 300, 360, lasts},
		{"about half an hour", 30, 30, lasts},
		{"one-half hour", 30, 30, lasts},
		{"1/2 hour", 30, 30, lasts},
		{"½ hr", 30, 30, lasts},
		{"1½ hours", 90, 90, lasts},
		{"1 ½ hours", 90, 90, lasts},
		{"1 1/2 hours", 90, 90, lasts},
		{"2-1/2 hours", 150, 150, lasts},
		{"2½ – 3 hours", 150, 180, lasts},
		{"1 hr 30", 90, 90, lasts},
		{"1 hr 30 mins", 90, 90, lasts},
		{"1h30m", 90, 90, lasts},
		{"1 hour and 15 minutes", 75, 75, lasts},
		{"an hour", 60, 60, lasts},
		{"an hour and a quarter", 75, 75, lasts},
		{"an hour and a half", 90, 90, lasts},
		{"two and a half hours", 150, 150, lasts},
		{"three quarters of an hour", 45, 45, lasts},
		{"a quarter of an hour", 15, 15, lasts},
		{"20 minutes to half an hour", 20, 30, lasts},
		{"30 minutes to 1 hour", 30, 60, lasts},
		{"another hour", 60, 60, lasts},
		{"10 more minutes", 10, 10, lasts},
		{"a further 5-8 minutes", 5, 8, lasts},
		{"20 minutes longer", 20, 20, lasts},
		{"twenty-five minutes", 25, 25, lasts},
		{"10 mins each side", 20, 20, lasts},
		{"4-5 minutes per side", 8, 10, lasts},
		{"each side for 4 min", 8, 8, lasts},
		{"30 seconds", 1, 1, lasts},
		{"90 secs", 2, 2, lasts},
		{"overnight", 480, 720, lasts},
		{"a few minutes", 2, 4, lasts},
		{"a couple of minutes", 2, 2, lasts},
		{"a minute or two", 1, 2, lasts},
		{"a minute or so", 1, 1, lasts},
		{"3 days", 4320, 4320, lasts},
		{"1,440 minutes", 1440, 1440, lasts},
		{"after 20 minutes", 20, 20, refersBack},
		{"every 10 minutes", 10, 10, recurs},
		{"for the last 5 minutes", 5, 5, ends},
		{"10 minutes before the end of cooking", 10, 10, ends},
		{"keeps 3 days", 4320, 4320, describes},
	} {
		got := durations(tokenize(c.text, 0))
		if len(got) != 1 || got[0].least != c.least || got[0].most != c.most || got[0].role != c.role {
			t.Errorf("%q: got %+v, want %d to %d, role %d", c.text, got, c.least, c.most, c.role)
		}
	}
}

// TestNoDuration: figures that are no times.
func TestNoDuration(t *testing.T) {
	for _, text := range []string{"200g flour", "1 cm thick", "2 x 400 g tins", "gas 6", "180C", "serves 4", "a second bowl", "2 eggs", "an egg", "half the flour", "5 m of string"} {
		if got := durations(tokenize(text, 0)); len(got) != 0 {
			t.Errorf("%q: got %+v, want none", text, got)
		}
	}
}

func TestDurationBounds(t *testing.T) {
	for _, c := range []struct {
		text         string
		open, capped bool
	}{
		{"at least 2 hours", true, false},
		{"for 2 hours or longer", true, false},
		{"30 minutes minimum", true, false},
		{"up to 24 hours", false, true},
		{"no more than 10 minutes", false, true},
	} {
		got := durations(tokenize(c.text, 0))
		if len(got) != 1 || got[0].open != c.open || got[0].capped != c.capped {
			t.Errorf("%q: got %+v, want open %v, capped %v", c.text, got, c.open, c.capped)
		}
	}
}

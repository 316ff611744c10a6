package written

import (
	"fmt"
	"strings"
	"testing"
)

// say writes a stamp's first meaning, for tests.
func (st stamp) say() string {
	var b strings.Builder
	fmt.Fprint(&b, []string{"none", "clock", "digits", "length", "offset", "plus", "later", "start", "set-up", "finish", "next"}[st.kind])
	cheap := func(all []option) {
		best := option{cost: 100}
		for _, o := range all {
			if o.cost < best.cost {
				best = o
			}
		}
		fmt.Fprintf(&b, " %d:%02d", best.at/60, best.at%60)
	}
	if st.kind == clock {
		cheap(st.times)
	} else if st.number != 0 {
		fmt.Fprintf(&b, " %d", st.number)
	}
	if st.last >= 0 {
		fmt.Fprintf(&b, " to %d", st.last)
	} else if len(st.until) > 0 {
		b.WriteString(" to")
		cheap(st.until)
	}
	if st.minutes > 0 {
		fmt.Fprintf(&b, " (%d)", st.minutes)
	}
	return b.String()
}

// The ways of writing a time are invented, after how pupils and teachers write them.
func TestStamp(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"9:05", "clock 9:05"},
		{"9.05", "clock 9:05"},
		{"09:05", "clock 9:05"},
		{"09:05 am", "clock 9:05"},
		{"9.05am.", "clock 9:05"},
		{"9.05 a.m.", "clock 9:05"},
		{"1.05pm", "clock 13:05"},
		{"9am", "clock 9:00"},
		{"9 am", "clock 9:00"},
		{"12 noon", "clock 12:00"},
		{"905", "digits 905"},
		{"0905", "digits 905"},
		{"0905 hrs", "clock 9:05"},
		{"9", "digits 9"},
		{"9.05-9.20", "clock 9:05 to 9:20"},
		{"9.05 – 9.20", "clock 9:05 to 9:20"},
		{"9.05 to 9.20", "clock 9:05 to 9:20"},
		{"9-9.15", "clock 9:00 to 9:15"},
		{"9.05-20", "clock 9:05 to 9:20"},
		{"9.50-10", "clock 9:50 to 10:00"},
		{"9-9.15am", "clock 9:00 to 9:15"},
		{"10:00 (10 mins)", "clock 10:00 (10)"},
		{"10:00 - 10 mins", "clock 10:00 (10)"},
		{"10:00 for 10 minutes", "clock 10:00 (10)"},
		{"5 mins", "length 5"},
		{"5mins", "length 5"},
		{"5'", "length 5"},
		{"1 hour", "length 60"},
		{"1 hr 15 mins", "length 75"},
		{"half an hour", "length 30"},
		{"+20 min", "plus 20"},
		{"+ 20", "plus 20"},
		{"10 mins in", "offset 10"},
		{"T+20", "offset 20"},
		{"T-10", "offset -10"},
		{"after 10 mins", "later 10"},
		{"10 minutes later", "later 10"},
		{"0-10", "digits to 10"},
		{"5-10 mins", "length 5 to 10"},
		{"quarter past 9", "clock 9:15"},
		{"quarter past nine", "clock 9:15"},
		{"half nine", "clock 9:30"},
		{"half past 9", "clock 9:30"},
		{"ten to ten", "clock 9:50"},
		{"20 past 9", "clock 9:20"},
		{"9 o'clock", "clock 9:00"},
		{"nine o'clock", "clock 9:00"},
		{"midday", "clock 12:00"},
		{"9.:05", "clock 9:05"},
		{"9;05", "clock 9:05"},
		{"9,05", "clock 9:05"},
		{"9.5", "clock 9:05"},
		{"9.3", "clock 9:30"},
		{"l0.15", "clock 10:15"},
		{"1O:15", "clock 10:15"},
		{"1o.o5", "clock 10:05"},
		{"9 : 05", "clock 9:05"},
		{"9 05", "clock 9:05"},
		{"9h05", "clock 9:05"},
		{"9-05", "clock 9:05"},
		{"09:05:00", "clock 9:05"},
		{"at 9.05", "clock 9:05"},
		{"by 11.50", "clock 11:50"},
		{"9.05 onwards", "clock 9:05"},
		{"9.05-", "clock 9:05"},
		{"(9.05)", "clock 9:05"},
		{"９：０５", "clock 9:05"},
		{"Start", "start"},
		{"Set-up", "set-up"},
		{"Then", "next"},
		{"9:05am - 9:20am", "clock 9:05 to 9:20"},
		{"11.50-12.10", "clock 11:50 to 12:10"},
		{"0:10", "clock 0:10"},
	} {
		st, ok := readStamp(c.text)
		if got := st.say(); !ok || got != c.want {
			t.Errorf("%q: %s (%v), want %s", c.text, got, ok, c.want)
		}
	}
}

// Numbers that are no times.
func TestNoStamp(t *testing.T) {
	for _, text := range []string{"", "-", "add 2 eggs", "180C", "180 °C", "gas 4", "250g", "9.05 wash hands", "two eggs", "£1.20", "25:00", "9:75", "1.250", "half the butter", "past", "1/2"} {
		if st, ok := readStamp(text); ok {
			t.Errorf("%q is read as %s", text, st.say())
		}
	}
}

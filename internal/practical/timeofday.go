package practical

import (
	"fmt"
	"strconv"
	"strings"
)

// TimeOfDay is minutes after midnight, 0 to 2879 (a session may pass midnight).
// As a file's value the hours count on, "24:30" being half past midnight of the
// day after, as in public timetables (General Transit Feed Specification).
type TimeOfDay int

// ParseTimeOfDay reads "9:05", "09.05", "0905", "9:05 pm", and "24:30" to "47:59" of the day after.
// It fails on anything that is not a time of day, naming what it saw.
func ParseTimeOfDay(s string) (TimeOfDay, error) {
	text := strings.ToLower(strings.TrimSpace(s))
	pm, am := strings.HasSuffix(text, "pm"), strings.HasSuffix(text, "am")
	if am || pm {
		text = strings.TrimSpace(text[:len(text)-2])
	}
	hours, minutes, found := strings.Cut(strings.ReplaceAll(text, ".", ":"), ":")
	if !found && len(text) >= 3 {
		hours, minutes = text[:len(text)-2], text[len(text)-2:]
	} else if !found {
		minutes = "0"
		if !am && !pm {
			return 0, fmt.Errorf("%q is not a time of day; write it like 09:05", s)
		}
	}
	h, errH := strconv.Atoi(hours)
	m, errM := strconv.Atoi(minutes)
	if errH != nil || errM != nil || h < 0 || h > 47 || m < 0 || m > 59 || ((am || pm) && (h < 1 || h > 12)) {
		return 0, fmt.Errorf("%q is not a time of day; write it like 09:05", s)
	}
	if am || pm {
		h %= 12
	}
	if pm {
		h += 12
	}
	return TimeOfDay(h*60 + m), nil
}

// lastMinute is the greatest TimeOfDay: 23:59 of the day after.
const lastMinute TimeOfDay = 2*24*60 - 1

// String writes the time as HH:MM on the 24-hour clock.
func (t TimeOfDay) String() string {
	return fmt.Sprintf("%02d:%02d", int(t)/60%24, int(t)%60)
}

// Write writes the time on a 12-hour clock ("9:05") when hours is 12, else as HH:MM.
func (t TimeOfDay) Write(hours int) string {
	if hours != 12 {
		return t.String()
	}
	return fmt.Sprintf("%d:%02d", (int(t)/60+11)%12+1, int(t)%60)
}

// MarshalText writes HH:MM, the hours counting on past midnight. It fails on a
// time before midnight of the first day.
func (t TimeOfDay) MarshalText() ([]byte, error) {
	if t < 0 {
		return nil, fmt.Errorf("%d minutes after midnight is not a time of day", int(t))
	}
	return fmt.Appendf(nil, "%02d:%02d", int(t)/60, int(t)%60), nil
}

// UnmarshalText reads what ParseTimeOfDay reads.
func (t *TimeOfDay) UnmarshalText(b []byte) (err error) {
	*t, err = ParseTimeOfDay(string(b))
	return err
}

package practical

import "testing"

func TestParseTimeOfDay(t *testing.T) {
	for text, want := range map[string]TimeOfDay{
		"9:05": 545, "09:05": 545, "09.05": 545, "0905": 545, "905": 545, " 9:05 PM ": 1265, "12:00 am": 0, "12.30pm": 750, "9 am": 540, "0:00": 0, "23:59": 1439,
		"24:30": 1470, "47:59": lastMinute,
	} {
		if got, err := ParseTimeOfDay(text); got != want || err != nil {
			t.Errorf("%q: %d, %v, want %d", text, got, err, want)
		}
	}
	for _, text := range []string{"", "9", "nine", "9:60", "48:00", "13:00 pm", "0:30 am", "-1:00", "9:05:30", "9:", ":30", "99999", "9.5.5"} {
		if got, err := ParseTimeOfDay(text); err == nil {
			t.Errorf("%q is taken for %v", text, got)
		}
	}
}

func TestTimeOfDayWritten(t *testing.T) {
	for _, tt := range []struct {
		time                TimeOfDay
		full, twelve, saved string
	}{
		{545, "09:05", "9:05", "09:05"},
		{0, "00:00", "12:00", "00:00"},
		{720, "12:00", "12:00", "12:00"},
		{1265, "21:05", "9:05", "21:05"},
		{1470, "00:30", "12:30", "24:30"}, // half past midnight of the day after
	} {
		saved, err := tt.time.MarshalText()
		if tt.time.String() != tt.full || tt.time.Write(24) != tt.full || tt.time.Write(12) != tt.twelve || string(saved) != tt.saved || err != nil {
			t.Errorf("%d: %v, %s, %s, %v", tt.time, tt.time, tt.time.Write(12), saved, err)
		}
		var back TimeOfDay
		if err := back.UnmarshalText(saved); err != nil || back != tt.time {
			t.Errorf("%s is read back as %d: %v", saved, back, err)
		}
	}
	if text, err := TimeOfDay(-1).MarshalText(); err == nil {
		t.Errorf("-1 is saved as %s", text)
	}
}

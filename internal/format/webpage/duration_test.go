package webpage_test

import (
	"strings"
	"testing"
	"time"

	"plait.example/internal/format/webpage"
)

// Sources: the examples of W3C XML Schema Part 2 (second edition), 3.2.6, which
// restricts ISO 8601, and those of RFC 3339 Appendix A and ISO 8601:2004 4.4.3
// as widely quoted (from memory); schema.org's example PT15M, PT1H.
func TestDurations(t *testing.T) {
	const day = 24 * time.Hour
	for in, want := range map[string]time.Duration{
		"PT15M": 15 * time.Minute, "PT1H": time.Hour,
		"PT130S": 130 * time.Second, "PT2M10S": 130 * time.Second, "P1DT2S": day + 2*time.Second,
		"PT1004199059S": 1004199059 * time.Second,
		"P23DT23H":      23*day + 23*time.Hour, "P4W": 28 * day, "P2W": 14 * day, "PT36H": 36 * time.Hour, "P1DT12H": 36 * time.Hour,
		"PT0S": 0, "P0D": 0, "PT0,5H": 30 * time.Minute, "PT0.5H": 30 * time.Minute, "PT1.5M": 90 * time.Second,
		"P0Y0M0DT0H35M0.000S": 35 * time.Minute, "P0000-00-01T02:30:00": day + 150*time.Minute,
	} {
		if got, err := webpage.ParseDuration(in); err != nil || got != want {
			t.Errorf("%s: %v %v, want %v", in, got, err, want)
		}
	}
	for in, says := range map[string]string{
		"P1Y2M3DT10H30M": "fixed length", "P3Y6M4DT12H30M5S": "fixed length", "P0Y1347M": "fixed length", "P1Y2MT2H": "fixed length", "P1M": "fixed length", "P0003-06-04T12:30:05": "fixed length",
		"-P1347M": "begin with P", "P-1347M": "missing", "P1Y2MT": "no amount", "1Y": "begin with P", "P1S": "wrong place", "P1M2Y": "fixed length", "P1Y-1M": "fixed length",
		"": "begin with P", "P": "no amount", "PT": "no amount", "PT1": "missing", "PTM": "missing", "PT1M1H": "wrong place", "PT1.5H30M": "fraction", "PT.5H": "not a number", "PT1..5H": "not a number",
		"15 minutes": "begin with P", "PT99999999999999H": "hundred years", "P0000-00-01T02-30-00": "extended",
	} {
		if got, err := webpage.ParseDuration(in); err == nil || got != 0 || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v %v, want an error with %q", in, got, err, says)
		}
	}
}

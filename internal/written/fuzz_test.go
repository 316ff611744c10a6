package written_test

import (
	"strings"
	"testing"

	"plait.example/internal/format"
	"plait.example/internal/written"
)

// FuzzRead gives any text to the reader, as it comes out of a file: it must not
// fail, nor lose a word.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"9.05 - wash hands\n9.10 rub in\n", "Time\tDish\tWhat\n9.00\tQ\tRub in\n", "| 9.00 | Q |\n| 9:.05 | C |\n",
		"<table><tr><td rowspan=3>9<td>a<tr><td>b<tr><td colspan=9>9.10 c</table>", "{\"rows\":[{\"clock\":\"09:00\"}]}",
		"Time   Min  Step  Action    What to do\n08:30    2  all   set-up    Wash hands\n", "0-10 a\n10-20 b", "half past nine wash\nten to ten bake",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := format.Read("plan", []byte(text))
		if err != nil {
			return
		}
		p := written.Read("plan", d.Blocks, written.Options{})
		if lost := missing(d.Blocks, p); len(lost) > 0 && !strings.HasPrefix(strings.TrimSpace(text), "{") {
			t.Errorf("lost %q", lost)
		}
	})
}

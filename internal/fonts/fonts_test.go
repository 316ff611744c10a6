package fonts

import (
	"bytes"
	"io/fs"
	"strings"
	"testing"
)

// missing is what the README says of each family: the signs of our trade that it lacks.
var missing = map[string]string{Family: "⅓⅔⅕⅙⅛⅜⅝⅞←→↑↓✓\u202f\u2011☐☑□■●▲◆", Fallback: "☐☑□■●▲◆"}

const wanted = "°½¼¾⅓⅔⅕⅙⅛⅜⅝⅞éèêüöäçñîßœ£€–—−×÷±·•…‘’“”←→↑↓☐☑✓≤≥\u00a0\u202f\u2011☐☑□■●▲◆"

func TestCoverage(t *testing.T) {
	for _, f := range Faces() {
		for r := rune(' '); r <= '~'; r++ {
			if !f.Has(r) {
				t.Errorf("%s lacks %q", f.file, r)
			}
		}
		for _, r := range wanted {
			if want := !strings.ContainsRune(missing[f.Family], r); f.Has(r) != want {
				t.Errorf("%s: Has(%q) = %t, README says %t", f.file, r, !want, want)
			}
		}
	}
}

// The first bytes: OpenType specification 1.9, "Organization of an OpenType
// font"; W3C WOFF File Format 2.0, section 4.1.
func TestFiles(t *testing.T) {
	for _, f := range Faces() {
		if !bytes.HasPrefix(f.TTF(), []byte{0, 1, 0, 0}) {
			t.Errorf("%s is not TrueType", f.file)
		}
		if !bytes.HasPrefix(f.WOFF2(), []byte("wOF2")) {
			t.Errorf("%s is not WOFF2", f.file)
		}
		family := strings.ReplaceAll(f.Family, " ", "")
		licence, err := fs.ReadFile(FS(), family+"-OFL.txt")
		if err != nil || !bytes.Contains(licence, []byte("SIL OPEN FONT LICENSE Version 1.1")) || !bytes.Contains(licence, []byte("PERMISSION & CONDITIONS")) {
			t.Errorf("%s has no licence beside it: %v", f.file, err)
		}
		if _, err := fs.Stat(FS(), f.File()); err != nil {
			t.Error(err)
		}
	}
}

// Figures of one width keep clock times in a column.
func TestAdvance(t *testing.T) {
	for _, f := range Faces() {
		if w := f.Advance('0'); w < 400 || w > 800 {
			t.Errorf("%s: Advance('0') = %d, want 400 to 800", f.file, w)
		}
		if f.Advance('M') <= f.Advance('i') {
			t.Errorf("%s: M is not wider than i", f.file)
		}
		if w := f.Advance('\U0001F95A'); w != 0 {
			t.Errorf("%s: Advance of a missing sign = %d, want 0", f.file, w)
		}
	}
}

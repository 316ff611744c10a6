package plain_test

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"plait.example/internal/format/plain"
)

// The bytes were worked out by hand from the Unicode Standard 3.9 and 3.10
// (encoding schemes, byte-order marks) and Microsoft's table of code page 1252
// (1/2 is BD, degree B0, e acute E9, en dash 96, euro 80). Texts are invented.
func TestDecode(t *testing.T) {
	for _, c := range []struct{ name, in, want, encoding string }{
		{"empty", "", "", plain.UTF8},
		{"ASCII", "Rub in\r\nthe fat\n", "Rub in\r\nthe fat\n", plain.UTF8},
		{"UTF-8", "½ tsp at 180 °C", "½ tsp at 180 °C", plain.UTF8},
		{"UTF-8 with mark", "\xEF\xBB\xBF½ tsp", "½ tsp", plain.UTF8},
		{"Windows", "\xBD tsp, 180\xB0C, pur\xE9e \x96 \x805", "½ tsp, 180°C, purée – €5", plain.Windows1252},
		{"UTF-8 with a Windows byte", "½ tsp, pur\xE9e", "½ tsp, purée", plain.Mixed},
		{"UTF-16LE with mark", "\xFF\xFE\xBD\x00 \x00g\x00\x53\x21", "½ g⅓", plain.UTF16LE},
		{"UTF-16BE with mark", "\xFE\xFF\x00\xBD\x00 \x00g\x21\x53", "½ g⅓", plain.UTF16BE},
		{"UTF-16LE without", "S\x00o\x00u\x00p\x00", "Soup", plain.UTF16LE},
		{"UTF-16BE without", "\x00S\x00o\x00u\x00p", "Soup", plain.UTF16BE},
		{"UTF-32LE with mark", "\xFF\xFE\x00\x00\xBD\x00\x00\x00", "½", plain.UTF32LE},
		{"UTF-32BE with mark", "\x00\x00\xFE\xFF\x00\x00\x00\xBD", "½", plain.UTF32BE},
		{"surrogates", "\xFE\xFF\xD8\x3C\xDF\x5E", "🍞", plain.UTF16BE},
		{"stray control", strings.Repeat("stir ", 20) + "\x1a", strings.Repeat("stir ", 20) + " ", plain.UTF8},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, encoding, err := plain.Decode([]byte(c.in))
			if err != nil || got != c.want || encoding != c.encoding {
				t.Errorf("%q %s %v, want %q %s", got, encoding, err, c.want, c.encoding)
			}
		})
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		name, in string
		want     error
		says     string
	}{
		{"too large", strings.Repeat("x", plain.MaxBytes+1), plain.ErrTooLarge, "cut it into several"},
		{"zero bytes", "stir\x00\x00\x01 well then", plain.ErrNotText, "zero bytes"},
		{"GIF", "GIF89a\x01\x00\x01\x00\x80\x00\x00", plain.ErrNotText, "zero bytes"},
		{"control characters", "ab\x01\x02\x03cd", plain.ErrNotText, "control characters"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text, _, err := plain.Decode([]byte(c.in))
			if text != "" || !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%q %v", text, err)
			}
		})
	}
	if _, _, err := plain.Decode([]byte(strings.Repeat("x", plain.MaxBytes))); err != nil {
		t.Errorf("at the limit: %v", err)
	}
}

func FuzzDecode(f *testing.F) {
	for _, s := range []string{"½ tsp", "\xFF\xFES\x00", "\xFE\xFF\x00", "\xFF\xFE\x00\x00\x00", "\xBD", "S\x00o\x00", "\x81\x8D"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		text, name, err := plain.Decode(data)
		if err != nil && text != "" || err == nil && name == "" {
			t.Errorf("%q %q %v", text, name, err)
		}
		if !utf8.ValidString(text) || strings.ContainsRune(text, 0) {
			t.Errorf("%q is not clean text", text)
		}
		if again, _, err := plain.Decode([]byte(text)); err == nil && name == plain.UTF8 && again != strings.TrimPrefix(text, "\uFEFF") {
			t.Errorf("decoded again, %q became %q", text, again)
		}
	})
}

func BenchmarkDecode(b *testing.B) {
	page := []byte(strings.Repeat("Bake at 180\xB0C for \xBD an hour.\r\n", 60))
	b.SetBytes(int64(len(page)))
	for b.Loop() {
		if text, _, _ := plain.Decode(page); !strings.HasPrefix(text, "Bake at 180°C") {
			b.Fatal(text)
		}
	}
}

package app

import (
	"strings"
	"testing"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

func TestFileName(t *testing.T) {
	for title, want := range map[string]string{
		"Zoë":                               "zoë",
		"Zoe\u0308":                         "zoë", // the accent apart
		"Crème brûlée & Chips":              "crème-brûlée-chips",
		"李小明":                               "李小明",
		"Юлія К.":                           "юлія-к",
		"सीता":                              "सीता",
		"../../etc/passwd":                  "etc-passwd",
		"a:b*c?\x00|d\u202E.exe":            "a-b-c-d-exe",
		"CON":                               "con-plan",
		"com1":                              "com1-plan",
		"LPT³":                              "lpt", // the figure is no digit of a name
		"Connie":                            "connie",
		" \u0301. ":                         "plan",
		"":                                  "plan",
		"trailing ...":                      "trailing",
		strings.Repeat("ab ", 40):           strings.TrimRight(strings.Repeat("ab-", 20), "-"),
		strings.Repeat("각", 90):             strings.Repeat("각", 16), // three letters of three bytes each when taken apart
		"x" + strings.Repeat("\u0301", 200): "x",                     // marks go with their letter
	} {
		got := fileName(title)
		if title[0:min(1, len(title))] == "x" {
			if len(got) > mostNameBytes {
				t.Errorf("%d bytes", len(got))
			}
			continue
		}
		if got != want {
			t.Errorf("%q: %q, want %q", title, got, want)
		}
	}
}

// No two pupils have files of one name, on any system: small letters and
// capitals, accents in one sign or two, a name that ends as another's file does.
func TestNamesAreFree(t *testing.T) {
	names := taken{}
	seen := map[string]string{}
	for _, who := range []string{"Zoë", "zoe\u0308", "ZOË", "Zoe", "Zoë 2", "Straße", "STRASSE", "Kim-commented", "Kim", "ﬁn", "fin", "aux", "aux plan", "", "plan"} {
		name := names.free(fileName(who), "-commented")
		for _, file := range []string{name, name + "-commented"} {
			key := strings.ToUpper(norm.NFKD.String(file))
			if seen[key] != "" {
				t.Errorf("%q and %q have one file: %s", who, seen[key], file)
			}
			seen[key] = who
		}
	}
}

func FuzzFileName(f *testing.F) {
	for _, s := range []string{"Zoë", "nul", "a/b", "\u0301", "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, title string) {
		name := fileName(title)
		if name == "" || !utf8.ValidString(name) && utf8.ValidString(title) || len(norm.NFD.String(name)) > mostNameBytes+len("-plan") || strings.ContainsAny(name, "/\\:*?\"<>|. \x00") || reserved(name) || fileName(name) != name && !strings.HasSuffix(fileName(name), "-plan") {
			t.Errorf("%q: %q, again %q", title, name, fileName(name))
		}
	})
}

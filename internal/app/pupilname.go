package app

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// Lengths of a file's name without its ending; file systems take 255 bytes, and
// some count them after taking accents apart.
const (
	mostNameRunes = 60
	mostNameBytes = 150
)

// fileName is a title as a file's name that every system takes: letters of any
// script, their marks, and digits, in small letters with hyphens between.
func fileName(title string) string {
	words := strings.FieldsFunc(norm.NFC.String(strings.ToLower(title)), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r)
	})
	var name []rune
	for i, w := range words {
		w = strings.TrimLeftFunc(w, unicode.IsMark) // a mark without its letter
		if w == "" {
			continue
		}
		if i > 0 && len(name) > 0 {
			name = append(name, '-')
		}
		name = append(name, []rune(w)...)
	}
	end := min(len(name), mostNameRunes)
	for end > 0 && (len(norm.NFD.String(string(name[:end]))) > mostNameBytes || end < len(name) && unicode.IsMark(name[end])) {
		end--
	}
	switch one := strings.TrimRight(string(name[:end]), "-"); {
	case one == "":
		return "plan"
	case reserved(one):
		return one + "-plan"
	default:
		return one
	}
}

// reserved says whether Windows keeps a name for a device, whatever its ending
// (Microsoft, "Naming Files, Paths, and Namespaces").
func reserved(name string) bool {
	if slices.Contains([]string{"con", "prn", "aux", "nul"}, name) {
		return true
	}
	port, number := name[:min(len(name), 3)], name[min(len(name), 3):]
	return (port == "com" || port == "lpt") && slices.Contains(strings.Split("0123456789", ""), number)
}

// taken are names of files in one folder that are given away, as systems compare
// them: without regard to small letters, capitals and how accents are written.
type taken map[string]bool

func alike(name string) string { return cases.Fold().String(norm.NFKC.String(name)) }

// free is a name that is not taken yet, neither by itself nor with one of the
// suffixes, with a number after it where it must be; it is taken from then on.
func (t taken) free(name string, suffixes ...string) string {
	all := append([]string{""}, suffixes...)
	one := name
	for n := 2; slices.ContainsFunc(all, func(s string) bool { return t[alike(one+s)] }); n++ {
		one = fmt.Sprintf("%s-%d", name, n)
	}
	for _, s := range all {
		t[alike(one+s)] = true
	}
	return one
}

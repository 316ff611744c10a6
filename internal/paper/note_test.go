package paper

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

// What people type: half a character, signs that no font has, markup, a word
// without end.
func oddNote(p *timeplan.Plan) Note {
	return Note{
		Title: "Questions \xff\U0001F370", Name: "Zoë <b>O'Neill</b>", Lead: []string{"a\u202eb", ""}, Plait: p, Foot: []string{"end"},
		Points: []NotePoint{{Rows: []string{strings.Repeat("x", 400), "<script>alert(1)</script>"}, Ask: "How hot,\x00 200\u00a0°C?", Why: "seen"}},
	}
}

func TestNoteOfOddWords(t *testing.T) {
	for _, p := range []*timeplan.Plan{nil, {}, timeplantest.Sample()} {
		n := oddNote(p)
		data, err := NotePDF(n)
		if err != nil {
			t.Fatal(err)
		}
		if pages := regexp.MustCompile(`/Type /Page\b`).FindAll(data, -1); len(pages) != 1 || !bytes.HasPrefix(data, []byte("%PDF-1.7")) {
			t.Errorf("%d pages", len(pages))
		}
		html, err := NoteHTML(n)
		if err != nil {
			t.Fatal(err)
		}
		for _, bad := range []string{"<script", "<b>O", "src=\"http"} {
			if bytes.Contains(html, []byte(bad)) {
				t.Errorf("the page has %q", bad)
			}
		}
	}
}

// The longer the words, the smaller the type: it stays one page down to 7 points.
func TestNoteFits(t *testing.T) {
	n := oddNote(nil)
	for range 4 {
		n.Points = append(n.Points, NotePoint{Rows: []string{strings.Repeat("knead the dough and ", 20), strings.Repeat("prove ", 60)}, Ask: strings.Repeat("What then? ", 10), Why: strings.Repeat("I could not find it. ", 10)})
	}
	data, err := NotePDF(n)
	if err != nil {
		t.Fatal(err)
	}
	if pages := regexp.MustCompile(`/Type /Page\b`).FindAll(data, -1); len(pages) != 1 {
		t.Errorf("%d pages", len(pages))
	}
}

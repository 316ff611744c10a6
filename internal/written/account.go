package written

import (
	"strings"
	"unicode"

	"plait.example/internal/format/table"
)

// account puts what has found no place among the rows and the rest into Unread,
// so that no word of a document is ever lost.
func (r *reader) account(blocks []table.Block) {
	have := map[string]bool{}
	p := &r.plan
	note := func(texts ...string) {
		for _, t := range texts {
			for _, w := range bareWords(t) {
				have[w] = true
			}
		}
	}
	note(p.Other...)
	note(p.Unread...)
	for _, row := range p.Rows {
		note(row.Written, row.Text, row.Points)
		note(row.Dishes...)
		note(row.Besides...)
	}
	look := func(text string) {
		for _, w := range bareWords(text) {
			if !have[w] {
				p.Unread = append(p.Unread, "no place was found for: "+strings.TrimSpace(text))
				note(text)
				return
			}
		}
	}
	for _, b := range blocks {
		if b.Table == nil {
			look(lineText(b))
			continue
		}
		look(b.Table.Name)
		for _, row := range b.Table.Rows {
			for _, c := range row {
				look(c.Text())
			}
		}
	}
}

// bareWords are a text's runs of letters and figures, in small letters.
func bareWords(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsNumber(c) })
}

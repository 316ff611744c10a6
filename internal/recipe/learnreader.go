package recipe

import (
	"strings"

	"plait.example/internal/format"
)

// Reader reads recipes as one teacher would have them read. The zero Reader is
// the program's own. It does not change while it reads: the same text, table and
// corrections give the same recipes.
type Reader struct {
	Techniques  *Table       // nil: the table that comes with the program
	Corrections *Corrections // what the teacher put right before; nil: nothing
}

// table is the technique table in use.
func (rd Reader) table() *Table {
	if rd.Techniques == nil {
		return DefaultTable()
	}
	return rd.Techniques
}

// Read reads every recipe in the text, like the function Read.
func (rd Reader) Read(text string) []Recipe {
	lines, notes := splitLines(text)
	var all []Recipe
	for _, d := range drafts(lines) {
		all = append(all, rd.one(d, text))
	}
	if len(all) == 0 {
		all = []Recipe{{Unread: emptyNote(text)}}
	}
	last := &all[len(all)-1]
	last.Unread = append(last.Unread, notes...)
	return all
}

// one reads a draft with the teacher's table, then puts right what was put right before.
func (rd Reader) one(d *draft, text string) Recipe {
	for i := range d.items {
		d.items[i].table = rd.Techniques
		rd.teach(d.items[i].ts)
	}
	r := d.read(text)
	r.Text = strings.TrimSpace(text[d.start:d.end])
	rd.Corrections.apply(&r)
	return r
}

// teach marks the verbs that the teacher's table has and the reader does not
// know by itself: "spatchcock the chicken".
func (rd Reader) teach(ts []token) {
	if rd.Techniques == nil {
		return
	}
	for i := range ts {
		if _, known := verbs[ts[i].text]; !known && len(rd.Techniques.byVerb[ts[i].text]) > 0 {
			ts[i].taught = true
		}
	}
}

// ReadDocument reads the recipes of a document with the program's own table and no corrections.
func ReadDocument(d format.Document) Reading { return Reader{}.ReadDocument(d) }

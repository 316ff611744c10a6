// Package written holds a time plan as somebody wrote it: the rows of a
// document with their clock times, dishes and words, read out of its tables
// and lines. It knows no recipe, and nothing of whether the plan is any good.
package written

import "plait.example/internal/practical"

// Plan is a time plan as it was written. Nothing of the document is dropped:
// what is no row stands in Other or Unread.
type Plan struct {
	Name      string   // of the file
	Candidate string   // who wrote it, as the document says; may be empty
	Dishes    []Named  // the dishes as the document itself names them
	Rows      []Row    // in the order of the document
	Other     []string // text outside the rows: headings, menu, notes
	Unread    []string // what was not understood, each with why
}

// Named is a dish as the document names it, with the colour or letter by which
// the rows say it; an empty field was not given.
type Named struct {
	Name   string
	Letter string
	Ink    string // RRGGBB of the letters
	Shade  string // RRGGBB behind them
}

// Row is one row as written.
type Row struct {
	Number   int                 // from 1, in the order of the document
	Table    int                 // which table of the document, from 0; -1: a line of text
	Line     int                 // row of that table, or line of the text, from 0
	Written  string              // the time as written; may be empty
	Clock    Clock               // how At is known
	At       practical.TimeOfDay // when it begins
	HasUntil bool                // an end is written: "9.05-9.20"
	Until    practical.TimeOfDay
	Minutes  int      // a length that is written in a column of its own or with the time ("5 mins"); 0: none
	Dishes   []string // as said in the row's own column, or by colour or letter through the key; empty: not said
	Ink      string   // RRGGBB of most of its letters; empty: the usual
	Shade    string   // RRGGBB behind it; empty: none
	Text     string   // what is done
	Points   string   // special points: safety, quality, hygiene, in a column of their own
	Besides  []string // what else stands in it: its own number, ticks, words that are struck out
}

// Clock says how a row's time is known.
type Clock string

// The ways.
const (
	NoClock  Clock = ""        // no time can be given
	Said     Clock = "said"    // it is written
	Counted  Clock = "counted" // worked out from a length or an offset that is written ("+20 min")
	Carried  Clock = "next"    // blank: after, or with, the row above
	Restored Clock = "mended"  // written, and read as something else: "1.05" after "12.50"
)

// Package paper turns a plan into documents and back: plain text, JSON, one
// printable HTML page and PDF. It owns how a plan is laid out for people who
// stand at a bench, and what is said beside it about food safety. It must not
// know how plans are found, checked or kept.
package paper

// Sheet says how a plan is laid out on A4.
type Sheet struct {
	Landscape bool
	LargeType bool
	Name      string // the candidate; empty leaves a line to write on
}

package app

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"strings"

	"plait.example/internal/check"
	"plait.example/internal/match"
	"plait.example/internal/written"
)

//go:embed checks.schema.json
var checksSchema []byte

// checkedObject is a checked plan as JSON.
type checkedObject struct {
	File      string          `json:"file"`
	Error     string          `json:"error,omitempty"`     // why it could not be read
	Unchecked string          `json:"unchecked,omitempty"` // why its rows were read and not checked
	Candidate string          `json:"candidate"`
	Rows      []rowObject     `json:"rows"`
	Findings  []findingObject `json:"findings"`
	Unread    []string        `json:"unread"` // what was not understood, each with why
	Other     []string        `json:"other"`  // words outside the rows
}

type rowObject struct {
	Number  int        `json:"number"`
	Clock   *string    `json:"clock"` // HH:MM of 24 hours; null: not known
	Until   *string    `json:"until,omitempty"`
	How     string     `json:"clock_is"` // said, counted, next, mended; empty: not known
	Written string     `json:"written"`  // the time as written
	Minutes int        `json:"minutes,omitempty"`
	Dish    string     `json:"dish"`              // as the row says it, by its key; else the letter that it was matched to; empty: all or none
	Letters []string   `json:"letters"`           // of the practical's dishes that it is about
	Text    string     `json:"text"`              //
	Points  string     `json:"points,omitempty"`  // special points
	Steps   []string   `json:"steps"`             // ids of the steps it stands for
	Parts   []partOnly `json:"parts"`             // of each of them: whole, put-in, take-out
	Sure    float64    `json:"sure"`              // 0 a guess to 1
	Besides []string   `json:"besides,omitempty"` // ticks, numbers, what is struck out
}

type partOnly struct {
	Step string     `json:"step"`
	Part match.Part `json:"part"`
	Sure float64    `json:"sure"`
}

// findingObject is a finding whose row may be null.
type findingObject struct {
	check.Finding
	Row *int `json:"row"`
}

// CheckedJSON writes checked plans as a JSON array of the schema "checks", an object for each file in
// their order. Lists are never null; a file that could not be read has an error.
func (a *App) CheckedJSON(all []Checked) ([]byte, error) {
	objects := make([]checkedObject, len(all))
	for i, c := range all {
		objects[i] = objectOf(c)
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	if err := e.Encode(objects); err != nil {
		return nil, err
	}
	return []byte(strings.ToValidUTF8(b.String(), "\uFFFD")), nil
}

func objectOf(c Checked) checkedObject {
	o := checkedObject{
		File: c.File, Candidate: c.Matched.Plan.Candidate, Rows: []rowObject{}, Findings: []findingObject{},
		Unread: filled(append(c.Notes[:len(c.Notes):len(c.Notes)], c.Matched.Plan.Unread...)), Other: filled(c.Matched.Plan.Other),
	}
	if c.Fault != nil {
		f := *c.Fault
		f.File = ""
		o.Error = f.Error()
		o.Unread = append(o.Unread, f.Error())
	}
	if c.Unchecked != nil {
		f := *c.Unchecked
		f.File = ""
		o.Unchecked = f.Error()
	}
	for _, r := range c.Matched.Rows {
		o.Rows = append(o.Rows, rowOf(r))
	}
	for _, f := range c.Findings {
		found := findingObject{Finding: f}
		if f.Row > 0 {
			found.Row = &f.Row
		}
		o.Findings = append(o.Findings, found)
	}
	return o
}

func rowOf(r match.Row) rowObject {
	o := rowObject{
		Number: r.Number, How: string(r.Clock), Written: r.Written, Minutes: r.Minutes, Dish: lettersOf(r),
		Letters: filled(r.Letters), Text: r.Text, Points: r.Points, Steps: []string{}, Parts: []partOnly{}, Sure: r.Sure, Besides: r.Besides,
	}
	if r.Clock != written.NoClock {
		at := r.At.String()
		o.Clock = &at
	}
	if r.HasUntil {
		until := r.Until.String()
		o.Until = &until
	}
	for _, s := range r.Steps {
		o.Steps = append(o.Steps, s.ID)
		o.Parts = append(o.Parts, partOnly{s.ID, s.Part, s.Sure})
	}
	return o
}

// dishAsRead is what a row is about: as it says, else as it was matched.
func lettersOf(r match.Row) string {
	if len(r.Dishes) > 0 {
		return strings.Join(r.Dishes, ", ")
	}
	return strings.Join(r.Letters, ", ")
}

// filled is a list that is empty rather than nil.
func filled(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

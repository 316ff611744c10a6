package paper

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"strings"

	"plait.example/internal/timeplan"
)

//go:embed plan.schema.json
var schema []byte

// Schema is the JSON Schema (2020-12) of what JSON writes.
func Schema() []byte { return bytes.Clone(schema) }

// JSON writes the plan as JSON with two spaces of indent and a line feed at the
// end. Times are HH:MM on the 24-hour clock, lists are never null, and a row
// without a take-out has no until. Bytes that are not UTF-8 come out as U+FFFD.
func JSON(p *timeplan.Plan) ([]byte, error) {
	q := *p
	q.Dishes, q.Rows, q.Waits = list(p.Dishes), list(p.Rows), list(p.Waits)
	q.Threads, q.Ovens = list(p.Threads), list(p.Ovens)
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	if err := e.Encode(&q); err != nil {
		return nil, err
	}
	return []byte(strings.ToValidUTF8(b.String(), "\uFFFD")), nil
}

// list is a list that is empty rather than nil.
func list[T any](l []T) []T {
	if l == nil {
		return []T{}
	}
	return l
}

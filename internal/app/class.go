package app

import (
	"context"
	"fmt"
	"strings"
	"unicode/utf8"

	"plait.example/internal/practical"
)

// mostCandidates is far above any class; it stops a pasted novel.
const mostCandidates = 200

// Classes is every class with its candidates, by name.
func (a *App) Classes(ctx context.Context) ([]practical.Class, error) { return a.Store.Classes(ctx) }

// SaveClass keeps a class; one without ID is new.
func (a *App) SaveClass(ctx context.Context, c practical.Class) (practical.Class, error) {
	return a.Store.SaveClass(ctx, c)
}

// ReadCandidates reads one candidate a line, first name and initial ("Amara B").
// A longer family name is cut to its initial, so that it is never kept. Faults
// carry the line; the lines that could be read come back all the same.
func ReadCandidates(text string) ([]practical.Candidate, practical.Faults) {
	var read []practical.Candidate
	var faults practical.Faults
	for i, line := range strings.Split(text, "\n") {
		words := strings.Fields(line)
		if len(words) == 0 {
			continue
		}
		if len(read) == mostCandidates {
			return read, append(faults, practical.Fault{
				Line: i + 1, Field: "candidates", Code: practical.TooLarge,
				Message: fmt.Sprintf("more than %d candidates", mostCandidates), Hint: "make two classes",
			})
		}
		read = append(read, candidate(words))
	}
	return read, faults
}

func candidate(words []string) practical.Candidate {
	if len(words) == 1 {
		return practical.Candidate{First: words[0]}
	}
	last := words[len(words)-1]
	_, size := utf8.DecodeRuneInString(last)
	return practical.Candidate{
		First:   strings.Join(words[:len(words)-1], " "),
		Initial: strings.ToUpper(last[:size]),
	}
}

package web

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// Bar is the head of a practical's pages: where one is on the road, whether
// all is saved, and what undo would take back.
type Bar struct {
	ID, Title    string
	Version      int
	Stops        []Stop
	Label        string // the change that made this version
	At           string // when
	CanUndo      bool
	CanRedo      bool
	Undo, Redo   string
	Path         string // of this page, to come back to
	Unread       bool   // something typed could not be read, and so is not saved
	Troubles     []Trouble
	TroubleTitle string
}

// Stop is one of the parts of the work.
type Stop struct {
	Name, Link string
	Here       bool
	Faults     int
}

// The stops, with the paths that each answers for.
var stops = []struct {
	name, link string
	prefixes   []string
}{
	{"Clock", "", []string{"title", "date", "cooks", "clock", "rules"}},
	{"Kitchen", "/kitchen", []string{"kitchen"}},
	{"Dishes", "/dishes", []string{"dishes"}},
	{"Plan", "/plan", []string{"pins"}},
	{"Check", "/plans", nil},
}

func bar(rec app.Record, here string, r *http.Request) *Bar {
	b := &Bar{
		ID: rec.ID, Title: rec.Practical.Title, Version: rec.Version, Label: rec.Label,
		At: rec.Saved.Local().Format("15:04"), CanUndo: rec.CanUndo, CanRedo: rec.CanRedo,
		Undo: rec.UndoLabel, Redo: rec.RedoLabel, Path: r.URL.Path,
	}
	if strings.TrimSpace(b.Title) == "" {
		b.Title = "Practical without a title"
	}
	faults := rec.Practical.Validate()
	for _, st := range stops {
		b.Stops = append(b.Stops, Stop{
			Name: st.name, Link: "/practical/" + rec.ID + st.link, Here: st.name == here,
			Faults: countWithin(faults, st.prefixes),
		})
	}
	return b
}

func countWithin(faults practical.Faults, prefixes []string) int {
	n := 0
	for _, f := range faults {
		for _, p := range prefixes {
			if within(f.Field, p) {
				n++
				break
			}
		}
	}
	return n
}

// base is the common part of a practical's page.
func (s *Server) base(r *http.Request, rec app.Record, here string, f *form) Base {
	b := bar(rec, here, r)
	if f != nil {
		for _, st := range stops {
			if st.name == here {
				b.Troubles = f.troubles(st.prefixes...)
			}
		}
		b.Unread = len(f.typed) > 0
	}
	b.TroubleTitle = things(len(b.Troubles))
	said := "Saved: " + rec.Label
	if b.Unread {
		said = "Not all is saved. " + b.TroubleTitle
	}
	if r.Method == http.MethodGet && r.URL.Query().Get("saved") == "" {
		said = ""
	}
	return Base{Title: here + " · " + b.Title, Said: said, Bar: b}
}

// things is the title of so many faults.
func things(n int) string {
	if n == 1 {
		return "1 thing to put right"
	}
	return fmt.Sprintf("%d things to put right", n)
}

// version is the version that a form was made from.
func version(r *http.Request) int {
	n, err := strconv.Atoi(r.PostFormValue("version"))
	if err != nil {
		return 0
	}
	return n
}

package web

import (
	"errors"
	"net/http"
	"slices"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// ConflictPage shows what somebody else saved beside what was typed here.
type ConflictPage struct {
	Base
	Label, At    string // the other change
	Differences  []Difference
	Hidden       []Typed // the whole form, to send again
	Action, Back string
	Version      int
}

// Difference is one value as it is now and as it was typed here.
type Difference struct{ Where, Now, Typed string }

// clash shows the page of a conflict. Nothing typed is lost: the whole form
// stands on the page and can be sent again on top of the new version.
func (s *Server) clash(w http.ResponseWriter, r *http.Request, now app.Record) error {
	page := ConflictPage{
		Base: Base{Title: "Changed in the meantime"}, Label: now.Label, At: now.Saved.Local().Format("15:04"),
		Action: r.URL.Path, Back: back(r), Version: now.Version,
	}
	for _, name := range ordered(r.PostForm) {
		if name == "version" {
			continue
		}
		for _, text := range r.PostForm[name] {
			page.Hidden = append(page.Hidden, Typed{Name: name, Text: text})
		}
		if _, known := words[pattern(name)]; !known {
			continue
		}
		mine := strings.Join(slices.DeleteFunc(slices.Clone(r.PostForm[name]), func(t string) bool { return t == "" }), ", ")
		if len(r.PostForm[name]) > 1 && slices.Contains(r.PostForm[name], off) {
			mine = on
		}
		if theirs := shown(now.Practical, name); strings.ReplaceAll(mine, "\r\n", "\n") != theirs {
			page.Differences = append(page.Differences, Difference{Where: say(now.Practical, name), Now: theirs, Typed: mine})
		}
	}
	return s.render(w, http.StatusConflict, "conflict", page)
}

// settle answers the error of a change: a conflict with its own page.
func (s *Server) settle(w http.ResponseWriter, r *http.Request, now app.Record, err error) error {
	var fault practical.Fault
	if errors.As(err, &fault) && fault.Code == practical.Conflict {
		if now.Practical == nil {
			var reload error
			if now, reload = s.app.Open(r.Context(), r.PathValue("id")); reload != nil {
				return reload
			}
		}
		return s.clash(w, r, now)
	}
	return err
}

package web

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// edited is what came of a form: the record after it, what could not be read,
// and the id of the field to open at.
type edited struct {
	rec      app.Record
	unread   practical.Faults
	focus    string
	fragment string           // where a page without script opens, such as #open
	refused  *practical.Fault // why the button's work was not done; the form was saved all the same
}

// edit saves a form under the prefixes as one version and then lets act do what
// the pressed button says. act may be nil. ok is false when the answer has been
// written already.
func (s *Server) edit(w http.ResponseWriter, r *http.Request, prefixes []string, act func(p *practical.Practical, do string) (string, string, error)) (e edited, ok bool, err error) {
	id, do := r.PathValue("id"), r.PostFormValue("do")
	before, err := s.app.Open(r.Context(), id)
	if err != nil {
		return e, false, err
	}
	label := describe(before.Practical, r.PostForm, prefixes)
	if act != nil && do != "" {
		// The label must be known before the edit: try the act on a copy that is thrown away.
		trial, err := before.Practical.Copy()
		if err != nil {
			return e, false, err
		}
		apply(trial, r.PostForm, prefixes...)
		said, _, err := act(trial, do)
		var fault practical.Fault
		switch {
		case asFault(err, &fault):
			act, e.refused, said = nil, &fault, ""
		case err != nil:
			return e, false, err
		}
		if said != "" {
			label = said
		}
	}
	var acted error
	e.rec, e.unread, err = s.app.Correct(r.Context(), id, version(r), label, func(p *practical.Practical) practical.Faults {
		return apply(p, r.PostForm, prefixes...)
	}, func(p *practical.Practical) {
		if act != nil && do != "" {
			_, e.focus, acted = act(p, do)
		}
	})
	if err != nil {
		return e, false, s.settle(w, r, e.rec, err)
	}
	return e, acted == nil, acted
}

// describe names what a form changes, for the label of its version.
func describe(p *practical.Practical, typed url.Values, prefixes []string) string {
	var changed []string
	for _, name := range ordered(typed) {
		if !slices.ContainsFunc(prefixes, func(prefix string) bool { return within(name, prefix) }) {
			continue
		}
		text := typed[name][len(typed[name])-1]
		if words[pattern(name)].kind == ticks {
			text = strings.Join(slices.DeleteFunc(slices.Clone(typed[name]), func(t string) bool { return t == "" }), ", ")
		}
		if strings.ReplaceAll(strings.TrimSpace(text), "\r\n", "\n") != shown(p, name) {
			changed = append(changed, say(p, name))
		}
	}
	switch len(changed) {
	case 0:
		return "no change"
	case 1, 2:
		return strings.Join(changed, "; ")
	default:
		return fmt.Sprintf("%s and %d more", changed[0], len(changed)-1)
	}
}

// home sends the browser back to the page after a change.
func (e edited) home(w http.ResponseWriter, r *http.Request, to string, query url.Values) {
	if query == nil {
		query = url.Values{}
	}
	query.Set("saved", "1")
	if e.focus != "" {
		query.Set("focus", e.focus)
	}
	http.Redirect(w, r, to+"?"+query.Encode()+e.fragment, http.StatusSeeOther)
}

// undo and redo step through the versions.
func (s *Server) undo(w http.ResponseWriter, r *http.Request) error {
	return s.travel(w, r, s.app.Undo)
}

func (s *Server) redo(w http.ResponseWriter, r *http.Request) error {
	return s.travel(w, r, s.app.Redo)
}

// travel goes a version back or forth; a correction taken back is forgotten too.
func (s *Server) travel(w http.ResponseWriter, r *http.Request, to func(context.Context, string, int) (app.Record, error)) error {
	before, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	now, err := to(r.Context(), r.PathValue("id"), version(r))
	if err != nil {
		return s.settle(w, r, now, err)
	}
	if err := s.app.TakenBack(r.Context(), before.Practical, now.Practical); err != nil {
		return err
	}
	http.Redirect(w, r, back(r)+"?saved=1", http.StatusSeeOther)
	return nil
}

package web

import (
	"errors"
	"fmt"
	"net/http"
	"slices"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// CorrectionsPage is what the teacher put right in recipes, to look through, to
// forget and to share.
type CorrectionsPage struct {
	Base
	List     []app.Correction // the newest first
	Off      bool             // nothing new is remembered
	Done     string
	Faults   practical.Faults // of a file
	File     string
	Incoming *Incoming // a file that has been read, to be added
}

// Incoming is what a colleague's file would bring.
type Incoming struct {
	app.Incoming
	File, Data string
}

func (s *Server) corrections(w http.ResponseWriter, r *http.Request) error {
	page, err := s.correctionsPage(r)
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "corrections", page)
}

// doneWords says what a button of the page has done.
var doneWords = map[string]string{
	"forgotten": "Forgotten. The recipe is read as before.", "taken": "Added.",
	"off": "Nothing new is remembered from now on.", "on": "What you put right is remembered again.",
	"plans": "Kept and checked.", "same": "These plans were here already; nothing is kept twice.", "away": "The plan is put away; it stands at the foot of this page.", "back": "The plan is back.", "setting": "The setting is kept.", "room": "The room is kept.", "row": "The row is kept, and the plan checked again.",
	"rules": "Plans are checked by your file of rules from now on.", "usual": "The usual rules are in use again.",
	"kept": "The table is kept. Recipes are read with it from now on.", "dropped": "The table that comes with plait is in use again.",
}

func (s *Server) correctionsPage(r *http.Request) (CorrectionsPage, error) {
	kept, err := s.app.Corrections(r.Context())
	if err != nil {
		return CorrectionsPage{}, err
	}
	on, err := s.app.Remembers(r.Context())
	if err != nil {
		return CorrectionsPage{}, err
	}
	done := doneWords[r.URL.Query().Get("done")]
	return CorrectionsPage{Base: Base{Title: "Corrections", Here: "corrections", Said: done}, List: kept.All(), Off: !on, Done: done}, nil
}

// correctionsFile sends the corrections as a file to share.
func (s *Server) correctionsFile(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.app.Corrections(r.Context())
	if err != nil {
		return err
	}
	return send(w, app.Document{Name: "corrections.yaml", MediaType: "application/yaml", Data: kept.Write()}, true)
}

// forget takes one correction away, by the words of its step, or turns remembering on or off.
func (s *Server) forget(w http.ResponseWriter, r *http.Request) error {
	if to := r.PostFormValue("do"); to == "on" || to == "off" {
		if err := s.app.SetRemembers(r.Context(), to == "on"); err != nil {
			return err
		}
		http.Redirect(w, r, "/corrections?done="+to, http.StatusSeeOther)
		return nil
	}
	if err := s.app.Forget(r.Context(), r.PostForm["words"]...); err != nil {
		return err
	}
	http.Redirect(w, r, "/corrections?done=forgotten", http.StatusSeeOther)
	return nil
}

// compareCorrections reads a colleague's file and says what it would bring.
func (s *Server) compareCorrections(w http.ResponseWriter, r *http.Request) error {
	name, data, err := sent(r)
	if err == nil {
		var in app.Incoming
		if in, err = s.app.CompareCorrections(r.Context(), name, data); err == nil {
			page, err := s.correctionsPage(r)
			if err != nil {
				return err
			}
			page.Incoming = &Incoming{in, name, string(data)}
			page.Said = fmt.Sprintf("%s would bring %d new figures and %d that differ from yours", name, in.Added, len(in.Conflicts))
			return s.render(w, http.StatusOK, "corrections", page)
		}
	}
	return s.correctionsAgain(w, r, name, err)
}

// takeCorrections adds a colleague's corrections.
func (s *Server) takeCorrections(w http.ResponseWriter, r *http.Request) error {
	name := r.PostFormValue("file")
	if _, err := s.app.TakeCorrections(r.Context(), name, []byte(r.PostFormValue("data")), r.PostFormValue("do") == "theirs"); err != nil {
		return s.correctionsAgain(w, r, name, err)
	}
	http.Redirect(w, r, "/corrections?done=taken", http.StatusSeeOther)
	return nil
}

func (s *Server) correctionsAgain(w http.ResponseWriter, r *http.Request, name string, err error) error {
	faults, ok := faultsOf(err)
	if !ok {
		return err
	}
	page, err := s.correctionsPage(r)
	if err != nil {
		return err
	}
	page.Faults, page.File, page.Said = faults, name, "The file could not be read"
	return s.render(w, http.StatusUnprocessableEntity, "corrections", page)
}

// mostFaults is how many faults of a file a page shows.
const mostFaults = 30

// faultsOf is the faults of a file in an error, if it is such.
func faultsOf(err error) (practical.Faults, bool) {
	var fault practical.Fault
	var faults practical.Faults
	switch {
	case errors.As(err, &faults):
		if more := len(faults) - mostFaults; more > 0 {
			faults = append(slices.Clone(faults[:mostFaults]), practical.Fault{Message: fmt.Sprintf("and %d more", more), Hint: "put these right first"})
		}
		return faults, true
	case errors.As(err, &fault) && fault.Code != practical.Internal:
		return practical.Faults{fault}, true
	}
	return nil, false
}

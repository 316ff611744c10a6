package web

import (
	"net/http"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// ClassPage is a class: its name and its candidates, one a line.
type ClassPage struct {
	Base
	Classes []ClassForm
	Saved   bool
}

// ClassForm is one class as it is typed.
type ClassForm struct {
	ID, Name, Candidates string
	Count                int
	Faults               practical.Faults
}

func (s *Server) class(w http.ResponseWriter, r *http.Request) error {
	page, err := s.classPage(r)
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "class", page)
}

func (s *Server) classPage(r *http.Request) (ClassPage, error) {
	page := ClassPage{Base: Base{Title: "Class", Here: "class"}, Saved: r.URL.Query().Get("saved") != ""}
	kept, err := s.app.Classes(r.Context())
	for _, c := range kept {
		lines := make([]string, len(c.Candidates))
		for i, candidate := range c.Candidates {
			lines[i] = candidate.String()
		}
		page.Classes = append(page.Classes, ClassForm{ID: c.ID, Name: c.Name, Candidates: strings.Join(lines, "\n"), Count: len(lines)})
	}
	page.Classes = append(page.Classes, ClassForm{})
	if page.Saved {
		page.Said = "Saved"
	}
	return page, err
}

// saveClass keeps what could be read. What could not is shown again with its fault.
func (s *Server) saveClass(w http.ResponseWriter, r *http.Request) error {
	text := strings.ReplaceAll(r.PostFormValue("candidates"), "\r\n", "\n")
	candidates, faults := app.ReadCandidates(text)
	c := practical.Class{ID: r.PostFormValue("id"), Name: strings.TrimSpace(r.PostFormValue("name")), Candidates: candidates}
	if c.Name == "" {
		faults = append(practical.Faults{{Field: "name", Code: practical.Invalid, Message: "the class has no name", Hint: "give it one, such as 10B"}}, faults...)
	}
	if len(faults) == 0 {
		if _, err := s.app.SaveClass(r.Context(), c); err != nil {
			return err
		}
		http.Redirect(w, r, "/class?saved=1", http.StatusSeeOther)
		return nil
	}
	page, err := s.classPage(r)
	if err != nil {
		return err
	}
	for i := range page.Classes {
		if page.Classes[i].ID == c.ID {
			page.Classes[i].Name, page.Classes[i].Candidates, page.Classes[i].Faults = c.Name, text, faults
		}
	}
	return s.render(w, http.StatusUnprocessableEntity, "class", page)
}

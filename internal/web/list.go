package web

import (
	"errors"
	"io"
	"net/http"
	"time"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// ListPage is the first page: what is kept, and how to begin.
type ListPage struct {
	Base
	Kept, Deleted []app.Summary
	Starts        []practical.StartingPoint
	Pasted        string
	Faults        practical.Faults // of a file that could not be read
	File          string
}

func (s *Server) list(w http.ResponseWriter, r *http.Request) error {
	page, err := s.listPage(r)
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "list", page)
}

func (s *Server) listPage(r *http.Request) (ListPage, error) {
	page := ListPage{Base: Base{Title: "Practicals", Here: "list"}, Starts: practical.StartingPoints()}
	all, err := s.app.Practicals(r.Context())
	for _, one := range all {
		if one.Title == "" {
			one.Title = "Practical without a title"
		}
		if one.Deleted {
			page.Deleted = append(page.Deleted, one)
		} else {
			page.Kept = append(page.Kept, one)
		}
	}
	return page, err
}

// Day writes a date as people say it, or gives it back as it is.
func (p ListPage) Day(date string) string { return day(date) }

// day writes a date as people say it, or gives it back as it is.
func day(date string) string {
	day, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return date
	}
	return day.Format("Monday 2 January 2006")
}

// start makes a practical from a named starting point.
func (s *Server) start(w http.ResponseWriter, r *http.Request) error {
	rec, err := s.app.NewPractical(r.Context(), r.PostFormValue("start"))
	if err != nil {
		return err
	}
	http.Redirect(w, r, "/practical/"+rec.ID+"?saved=1", http.StatusSeeOther)
	return nil
}

// open keeps the practical of a file that was sent.
func (s *Server) open(w http.ResponseWriter, r *http.Request) error {
	name, data, err := sent(r)
	if err != nil {
		return err
	}
	rec, err := s.app.Import(r.Context(), name, data)
	var faults practical.Faults
	if errors.As(err, &faults) {
		page, err := s.listPage(r)
		if err != nil {
			return err
		}
		page.Faults, page.File, page.Title = faults, name, "The file could not be read"
		return s.render(w, http.StatusUnprocessableEntity, "list", page)
	}
	if err != nil {
		return err
	}
	http.Redirect(w, r, "/practical/"+rec.ID+"?saved=1", http.StatusSeeOther)
	return nil
}

// sent is the file of a form.
func sent(r *http.Request) (name string, data []byte, err error) {
	file, head, err := r.FormFile("file")
	if err != nil {
		return "", nil, practical.Fault{Code: practical.Invalid, Field: "file", Message: "no file was chosen", Hint: "choose a file, then send it"}
	}
	defer func() { _ = file.Close() }()
	data, err = io.ReadAll(file)
	return head.Filename, data, err
}

func (s *Server) remove(w http.ResponseWriter, r *http.Request) error {
	if err := s.app.Delete(r.Context(), r.PathValue("id")); err != nil {
		return err
	}
	http.Redirect(w, r, "/", http.StatusSeeOther)
	return nil
}

func (s *Server) restore(w http.ResponseWriter, r *http.Request) error {
	if _, err := s.app.Restore(r.Context(), r.PathValue("id")); err != nil {
		return err
	}
	http.Redirect(w, r, "/", http.StatusSeeOther)
	return nil
}

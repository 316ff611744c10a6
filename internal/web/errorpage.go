package web

import (
	"context"
	"errors"
	"log/slog"
	"net/http"

	"plait.example/internal/practical"
)

// ErrorPage says in plain words what went wrong, and gives back what was typed.
type ErrorPage struct {
	Base
	Heading, Message, Hint string
	Faults                 []practical.Fault // when there are several
	Typed                  []Typed
	Back                   string
}

// status is the HTTP status and heading of a code.
func status(c practical.Code) (int, string) {
	switch c {
	case practical.Invalid:
		return http.StatusUnprocessableEntity, "That could not be used as it is"
	case practical.NotFound:
		return http.StatusNotFound, "There is no such page"
	case practical.Conflict:
		return http.StatusConflict, "Somebody else changed this in the meantime"
	case practical.TooLarge:
		return http.StatusRequestEntityTooLarge, "That is too much at once"
	default:
		return http.StatusInternalServerError, "Something broke on our side"
	}
}

// fail shows the page of an error. An error without a code is ours: it is
// logged and not shown.
func (s *Server) fail(w http.ResponseWriter, r *http.Request, err error) {
	var fault practical.Fault
	var faults practical.Faults
	switch {
	case errors.As(err, &fault):
	case errors.As(err, &faults) && len(faults) > 0:
		fault = faults[0]
	case errors.Is(err, context.Canceled) && r.Context().Err() != nil:
		return // nobody waits for the answer
	default:
		fault = practical.Fault{Code: practical.Internal}
	}
	code, heading := status(fault.Code)
	page := ErrorPage{
		Base: Base{Title: heading}, Heading: heading, Message: sentence(fault.Message), Hint: sentence(fault.Hint),
		Typed: typed(r.PostForm), Back: back(r),
	}
	if len(faults) > 1 {
		page.Message, page.Hint, page.Faults = "", "", faults
	}
	if code == http.StatusInternalServerError {
		s.log.LogAttrs(r.Context(), slog.LevelError, "page failed",
			slog.String("method", r.Method), slog.String("path", r.URL.Path), slog.Any("error", err))
		page.Message = "What was saved before is safe."
		page.Hint = "Go back and try again. If it happens again, tell whoever runs plait at your school."
	}
	if err := s.render(w, code, "error", page); err != nil {
		s.log.LogAttrs(r.Context(), slog.LevelError, "error page failed", slog.Any("error", err))
		http.Error(w, heading, code)
	}
}

// nothing answers an address that no page has.
func (s *Server) nothing(http.ResponseWriter, *http.Request) error {
	return practical.Fault{Code: practical.NotFound, Message: "the address leads nowhere", Hint: "begin at the list of practicals"}
}

// back is the page that a form was on.
func back(r *http.Request) string {
	if to := r.PostFormValue("back"); local(to) {
		return to
	}
	if id := r.PathValue("id"); id != "" {
		return "/practical/" + id
	}
	return "/"
}

// local says whether an address is a page of ours: a path, and no other host.
func local(to string) bool {
	return len(to) > 0 && to[0] == '/' && (len(to) == 1 || to[1] != '/' && to[1] != '\\')
}

// asFault takes the fault out of an error.
func asFault(err error, fault *practical.Fault) bool { return errors.As(err, fault) }

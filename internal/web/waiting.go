package web

import (
	"fmt"
	"net/http"
	"time"
)

// WaitingPage stands while the plans of a class are checked for the first time.
type WaitingPage struct {
	Base
	Progress string // address of the events
	After    string // address of the page that waits for them
	Sofar    string
}

// fewPlans are checked while the page is made: some tenths of a second.
const fewPlans = 4

// toWait says whether so many plans have to be checked that the page should say
// so first, and if so how many of how many.
func (s *Server) toWait(r *http.Request) (wanting, of int, wait bool, err error) {
	wanting, of, err = s.app.PlansToCheck(r.Context(), r.PathValue("id"))
	return wanting, of, wanting > fewPlans && r.URL.Query().Get("now") == "", err
}

// waiting writes the page that follows the check and then goes on to this address.
func (s *Server) waiting(w http.ResponseWriter, r *http.Request, wanting, of int) error {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	then := *r.URL
	query := then.Query()
	query.Set("now", "1")
	then.RawQuery = query.Encode()
	return s.render(w, http.StatusOK, "waiting", WaitingPage{
		Base: s.base(r, rec, "Check", nil), Progress: "/practical/" + rec.ID + "/plans/progress", After: then.RequestURI(), Sofar: checkedSofar(of-wanting, of),
	})
}

func checkedSofar(done, of int) string {
	return fmt.Sprintf("%d of %s checked", done, count(of, "plan"))
}

// checkProgress checks the plans of a practical and tells, as server-sent events,
// how far it is: an event "step" at each plan, "end" when all are done. When the
// page is closed, or the network goes away, the check ends; what it has done is kept.
func (s *Server) checkProgress(w http.ResponseWriter, r *http.Request) error {
	if _, err := s.app.Open(r.Context(), r.PathValue("id")); err != nil {
		return err
	}
	control := http.NewResponseController(w)
	_ = control.SetWriteDeadline(time.Time{}) // a check may outlast the server's limit
	w.Header().Set("Content-Type", "text/event-stream")
	say := func(event, data string) {
		_, _ = fmt.Fprintf(w, "event: %s\ndata: %s\n\n", event, data)
		_ = control.Flush()
	}
	_, _, err := s.app.HandedPlans(r.Context(), r.PathValue("id"), func(done, of int) { say("step", checkedSofar(done, of)) })
	if r.Context().Err() != nil {
		return nil // nobody listens any more
	}
	if err != nil {
		s.log.Error("plans could not be checked", "path", r.URL.Path, "error", err)
	}
	say("end", "done") // after an error too: the page itself says what is wrong
	return nil
}

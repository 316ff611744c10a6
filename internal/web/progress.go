package web

import (
	"fmt"
	"net/http"
	"time"

	"plait.example/internal/app"
)

// progress tells, as server-sent events, how far a search has come: an event
// "step" with a sentence at each better plan, "end" when it is over.
func (s *Server) progress(w http.ResponseWriter, r *http.Request) error {
	id := r.PathValue("id")
	rec, err := s.app.Open(r.Context(), id)
	if err != nil {
		return err
	}
	control := http.NewResponseController(w)
	_ = control.SetWriteDeadline(time.Time{}) // a search may outlast the server's limit
	w.Header().Set("Content-Type", "text/event-stream")
	hours := rec.Practical.Clock.Hours
	for u := s.runs.of(id); u != nil; {
		last, seen, changed := u.now()
		if seen > 0 {
			_, _ = fmt.Fprintf(w, "event: step\ndata: %s\n\n", sofar(last, hours))
		} else {
			_, _ = fmt.Fprint(w, ": begun\n\n")
		}
		_ = control.Flush()
		select {
		case <-changed:
			continue
		case <-r.Context().Done():
			return nil
		case <-u.done:
		}
		break
	}
	_, _ = fmt.Fprint(w, "event: end\ndata: done\n\n")
	_ = control.Flush()
	return nil
}

// sofar says what a search has found.
func sofar(p app.Progress, hours int) string {
	if p.Unfit {
		said := "It does not fit"
		if p.Found {
			said += ": the best plan finishes at " + p.Finish.Write(hours)
		}
		return said + ". Looking for the reason and for ways out."
	}
	none := ""
	if p.Bound > 0 {
		none = fmt.Sprintf("; none can finish before %s", p.Bound.Write(hours))
	}
	if !p.Found {
		return "No plan yet" + none + "."
	}
	if p.Finish == p.Bound {
		return fmt.Sprintf("A plan that finishes at %s; none can finish earlier.", p.Finish.Write(hours))
	}
	return fmt.Sprintf("A plan that finishes at %s%s.", p.Finish.Write(hours), none)
}

// stop ends a search; what it has found is kept.
func (s *Server) stop(w http.ResponseWriter, r *http.Request) error {
	id := r.PathValue("id")
	if u := s.runs.of(id); u != nil {
		u.cancel()
		<-u.done
	}
	http.Redirect(w, r, "/practical/"+id+"/plan", http.StatusSeeOther)
	return nil
}

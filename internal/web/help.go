package web

import "net/http"

// HelpPage is one short page of how to, words and safety.
type HelpPage struct{ Base }

func (s *Server) help(w http.ResponseWriter, _ *http.Request) error {
	return s.render(w, http.StatusOK, "help", HelpPage{Base{Title: "Help", Here: "help"}})
}

package web

import (
	"bytes"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"plait.example/internal/practical"
)

func TestList(t *testing.T) {
	s := newSite(t)
	empty := s.get("/").ok()
	empty.says("main", "No practicals yet")
	empty.has(`form[action="/practicals"]`, len(practical.StartingPoints()))
	made := s.post("/practicals", url.Values{"start": {"two-in-two"}}).ok()
	made.says("h1", "Clock and rules")
	made.says("#state", "Saved")
	full := s.get("/").ok()
	full.has("main .cards li form[action$='/delete']", 1)
	full.says(".cards", "Two dishes in two hours")
}

func TestDeletedPracticalComesBack(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	gone := s.post("/practical/"+rec.ID+"/delete", nil).ok()
	gone.has(".cards form[action$='/delete']", 0)
	gone.says("details", rec.Practical.Title)
	s.post("/practical/"+rec.ID+"/restore", nil).ok().has(".cards form[action$='/delete']", 1)
}

func TestStartErrUnknown(t *testing.T) {
	if a := newSite(t).post("/practicals", url.Values{"start": {"a banquet"}}); a.status != http.StatusNotFound {
		t.Errorf("status %d", a.status)
	}
}

// upload sends a file as a browser does and follows the way back.
func (s *site) upload(path, name, text string) answer {
	s.Helper()
	var b bytes.Buffer
	form := multipart.NewWriter(&b)
	part, err := form.CreateFormFile("file", name)
	if err != nil {
		s.Fatal(err)
	}
	if _, err := part.Write([]byte(text)); err != nil {
		s.Fatal(err)
	}
	if err := form.Close(); err != nil {
		s.Fatal(err)
	}
	r := httptest.NewRequest(http.MethodPost, path, &b)
	r.Header.Set("Content-Type", form.FormDataContentType())
	r.Header.Set("Sec-Fetch-Site", "same-origin")
	a := s.ask(r)
	if a.status == http.StatusSeeOther {
		to, _, _ := strings.Cut(a.header.Get("Location"), "#")
		return s.get(to)
	}
	return a
}

func TestOpenFile(t *testing.T) {
	text, err := practical.Write(menu())
	if err != nil {
		t.Fatal(err)
	}
	s := newSite(t)
	s.upload("/practicals/open", "menu.yaml", string(text)).ok().says(".title-of", menu().Title)
}

// All faults of a file at once, with their lines, and nothing kept.
func TestOpenFileErrFaults(t *testing.T) {
	s := newSite(t)
	a := s.upload("/practicals/open", "bad.yaml", "title: Bad\nclock:\n  start: soon\n  finish: later\nsurprise: 1\n")
	if a.status != http.StatusUnprocessableEntity {
		t.Errorf("status %d", a.status)
	}
	a.says(".faults h2", "bad.yaml could not be read")
	for _, words := range []string{"Line 3", "Line 4", "Line 5"} {
		a.says(".faults", words)
	}
	if all, err := s.app.Practicals(t.Context()); err != nil || len(all) > 0 {
		t.Errorf("kept %v, %v", all, err)
	}
	if a := s.upload("/practicals/open", "", ""); a.status != http.StatusUnprocessableEntity {
		t.Errorf("no file: status %d", a.status)
	}
}

func TestClass(t *testing.T) {
	s := newSite(t)
	a := s.post("/class", url.Values{"name": {"11C"}, "candidates": {"Amara B\r\nBo\r\n\r\nCaz Delacroix"}}).ok()
	a.says("h2", "11C, 3 candidates")
	a.says("textarea", "Amara B Bo Caz D") // a family name is never kept
	nameless := s.post("/class", url.Values{"name": {" "}, "candidates": {"Dee E"}})
	if nameless.status != http.StatusUnprocessableEntity {
		t.Errorf("status %d", nameless.status)
	}
	nameless.has(`input[name=name][aria-invalid=true]`, 1)
	nameless.says("textarea", "Dee E")
	crowd := s.post("/class", url.Values{"name": {"Everybody"}, "candidates": {strings.Repeat("Fay G\n", 300)}})
	crowd.has("textarea[aria-invalid=true]", 1)
	if got := strings.Count(crowd.Find("textarea[aria-invalid=true]").Text(), "Fay G"); got != 300 {
		t.Errorf("%d lines came back, want all 300", got)
	}
}

func TestHelp(t *testing.T) {
	a := newSite(t).get("/help").ok()
	a.says("main", "never approval")
	a.says("footer", "responsible adult decide")
}

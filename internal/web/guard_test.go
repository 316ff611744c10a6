package web

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"plait.example/internal/app"
)

func TestHeaders(t *testing.T) {
	s := newSite(t)
	rec := s.planned()
	for _, path := range []string{"/", "/nowhere", "/practical/" + rec.ID + "/plan", "/assets/plait.css", "/practical/" + rec.ID + "/plait.svg"} {
		h := s.get(path).header
		if !strings.HasPrefix(h.Get("Content-Security-Policy"), "default-src 'self'") || strings.Contains(h.Get("Content-Security-Policy"), "unsafe") {
			t.Errorf("%s: policy %q", path, h.Get("Content-Security-Policy"))
		}
		if h.Get("X-Content-Type-Options") != "nosniff" || h.Get("X-Frame-Options") != "DENY" || h.Get("Referrer-Policy") == "" {
			t.Errorf("%s: headers %v", path, h)
		}
	}
	if policy := s.get("/practical/" + rec.ID + "/print").header.Get("Content-Security-Policy"); strings.Contains(policy, "script-src") || !strings.Contains(policy, "default-src 'none'") {
		t.Errorf("print: policy %q", policy)
	}
}

// A form that another site sends is refused.
func TestCrossSitePost(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	r := httptest.NewRequest(http.MethodPost, "/practical/"+rec.ID, strings.NewReader(url.Values{"version": {"1"}, "title": {"Theirs"}}.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Sec-Fetch-Site", "cross-site")
	if a := s.ask(r); a.status == http.StatusOK || a.status == http.StatusSeeOther {
		t.Errorf("status %d", a.status)
	}
	if got := s.now(rec.ID).Practical.Title; got != menu().Title {
		t.Errorf("kept %q", got)
	}
}

func TestTooLarge(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	a := s.post("/practical/"+rec.ID+"/dishes", url.Values{"version": {"1"}, "text": {strings.Repeat("x", largest+1)}})
	if a.status != http.StatusRequestEntityTooLarge {
		t.Errorf("status %d", a.status)
	}
	a.says("h1", "too much at once")
}

// A page that breaks is a page all the same: it gives back what was typed and
// says nothing of the inside.
func TestPanicKeepsWhatWasTyped(t *testing.T) {
	var log strings.Builder
	s := newSite(t)
	s.server = New(&app.App{}, Options{Log: slogTo(&log)}) // no store: every page breaks
	a := s.post("/practical/x", url.Values{"version": {"1"}, "title": {"An hour of typing"}, "do": {"x"}})
	if a.status != http.StatusInternalServerError {
		t.Errorf("status %d", a.status)
	}
	a.says("textarea", "An hour of typing")
	a.says("label", "Title")
	if strings.Contains(a.body, "nil pointer") || strings.Contains(a.body, ".go") {
		t.Error("the inside of the program shows")
	}
	if !strings.Contains(log.String(), "page broke") {
		t.Errorf("log: %s", log.String())
	}
}

func TestLocal(t *testing.T) {
	for to, want := range map[string]bool{"/": true, "/practical/x": true, "//evil.example": false, `/\evil.example`: false, "https://evil.example": false, "": false} {
		if local(to) != want {
			t.Errorf("%q: %v", to, !want)
		}
	}
}

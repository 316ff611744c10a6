package web

import (
	"bytes"
	"context"
	"fmt"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"plait.example/internal/app"
)

// class hands in plans of n learners, which differ in a name alone.
func (s *site) class(id string, n int) {
	s.Helper()
	var files []app.PlanFile
	for i := range n {
		files = append(files, app.PlanFile{Name: fmt.Sprintf("p%02d.txt", i), Data: []byte(strings.Replace(ashsPlan, "Ash", fmt.Sprintf("Pupil %02d", i), 1))})
	}
	if in, err := s.app.HandIn(context.Background(), id, files); err != nil || in.Kept != n {
		s.Fatal(in, err)
	}
}

// The first look at a class says how far its check is; after that every page is
// there at once, until a change of rules asks for another check.
func TestFirstLookWaits(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.class(rec.ID, 6)
	at := "/practical/" + rec.ID + "/plans"
	for _, page := range []string{at, at + "/2"} {
		a := s.get(page).ok()
		a.says("#sofar", "0 of 6 plans checked")
		if then := a.Find("[data-progress]").AttrOr("data-page", ""); then != page+"?now=1" {
			t.Errorf("goes on to %q", then)
		}
	}
	events := s.get(at + "/progress").ok().body
	if strings.Count(events, "event: step") != 6 || !strings.Contains(events, "data: 6 of 6 plans checked") || !strings.HasSuffix(events, "event: end\ndata: done\n\n") {
		t.Errorf("events:\n%s", events)
	}
	s.get(at).ok().has(".handed-in tbody tr", 6)
	s.get(at+"/2").ok().has(".handed tbody tr", 7)
	s.upload(at+"/rules", "rules.yaml", "rules:\n  in-never-out: {on: false}\n").ok().says("#sofar", "0 of 6")
	s.get(at+"?now=1").ok().has(".handed-in tbody tr", 6) // without a script
}

// A page that is closed ends the check.
func TestClosedPageEndsTheCheck(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.class(rec.ID, 6)
	ctx, leave := context.WithCancel(t.Context())
	leave()
	w := httptest.NewRecorder()
	s.server.ServeHTTP(w, httptest.NewRequestWithContext(ctx, http.MethodGet, "/practical/"+rec.ID+"/plans/progress", nil))
	if strings.Contains(w.Body.String(), "event: end") {
		t.Errorf("events after the page was closed: %s", w.Body)
	}
	if n, of, err := s.app.PlansToCheck(t.Context(), rec.ID); n != 6 || of != 6 || err != nil {
		t.Errorf("%d of %d to check, %v", n, of, err)
	}
}

// bring sends files and a pasted plan in one form.
func (s *site) bring(path, text string, files map[string]string) answer {
	s.Helper()
	var b bytes.Buffer
	form := multipart.NewWriter(&b)
	for name, data := range files {
		w, err := form.CreateFormFile("file", name)
		if err == nil {
			_, err = w.Write([]byte(data))
		}
		if err != nil {
			s.Fatal(err)
		}
	}
	if err := form.WriteField("text", text); err != nil {
		s.Fatal(err)
	}
	if err := form.Close(); err != nil {
		s.Fatal(err)
	}
	r := httptest.NewRequest(http.MethodPost, path, &b)
	r.Header.Set("Content-Type", form.FormDataContentType())
	a := s.ask(r)
	if to := a.header.Get("Location"); to != "" {
		return s.get(to)
	}
	return a
}

// What was kept of a form that partly failed is kept once, however often the form
// is sent, and is not in the form again.
func TestPartlyFailedIsKeptOnce(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/plans"
	bad := map[string]string{"class.zip": "no zip"}
	for range 2 {
		a := s.bring(at, ashsPlan, bad)
		if a.status != http.StatusUnprocessableEntity {
			t.Errorf("status %d", a.status)
		}
		a.says(".faults", "Not all was kept")
		a.says(".done", "1 plan kept")
		a.has(".handed-in tbody tr", 1)
		if text := strings.TrimSpace(a.Find("#text").Text()); text != "" {
			t.Errorf("the plan that was kept is in the form again: %q", text)
		}
	}
	s.bring(at, ashsPlan, nil).ok().says(".done", "nothing is kept twice")
	again := s.bring(at, ashsPlan+"11.10\tall\tServe\n", nil).ok()
	again.has(".handed-in tbody tr", 2)
	if a := s.bring(at, "", bad); a.status != http.StatusUnprocessableEntity {
		t.Errorf("status %d", a.status)
	}
}

// What plait wrote about a plan is passed over with a word.
func TestOwnFilesArePassedOver(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.handIn(rec.ID)
	at := "/practical/" + rec.ID + "/plans"
	a := s.bring(at, "", map[string]string{"class.xlsx": s.get(at + "/class.xlsx").ok().body}).ok()
	a.says(".note", "class.xlsx: plait wrote it about a plan")
	a.has(".handed-in tbody tr", 1)
}

// A kept file of rules that can no longer be read is told on the page, with what
// is wrong and what would be right; it is there to be mended.
func TestUnusableRulesAreTold(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.handIn(rec.ID)
	const old = "rules:\n  in-never-out: {on: false}\n  rule-of-last-year: {on: false}\n"
	if err := s.app.Store.Keep(t.Context(), "", "rules", map[string]string{"": old}, nil, noon()); err != nil {
		t.Fatal(err)
	}
	at := "/practical/" + rec.ID + "/plans"
	a := s.get(at).ok()
	a.says(".faults", "Your file of rules is not in use")
	a.says(".faults", "Line 3")
	a.says(".faults", "rule-of-last-year")
	s.get(at+"/1").ok().says(".findings.stops", "When does it come out") // the usual rules stand
	if got := s.get(at + "/rules.yaml").ok().body; got != old {
		t.Errorf("the file comes back as %q", got)
	}
}

// A document with far more rows than a plan is kept, read and shown, and says
// that it was not checked.
func TestFarTooManyRows(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	var long strings.Builder
	for i := range app.MostRows + 1 {
		fmt.Fprintf(&long, "%d:%02d\tchop the leeks\n", 9+i/60%3, i%60)
	}
	at := "/practical/" + rec.ID + "/plans"
	s.upload(at, "long.txt", "Time\tWhat I do\n"+long.String()).ok().says(".handed-in", "601 rows were read and not checked")
	a := s.get(at + "/1").ok()
	a.says(".faults", "a file of its own")
	a.has(".handed tbody tr", app.MostRows+1)
}

// The page says when the plans together want more than the room has, asks for the
// room's numbers while they are not known, and keeps what was typed when it is wrong.
func TestRoomIsAskedFor(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.class(rec.ID, 3)
	at := "/practical/" + rec.ID + "/plans"
	a := s.get(at).ok()
	a.says(".busy", "3 ovens wanted at once")
	a.says(".busy", "Pupil 00 Example 09:55")
	a.has(".room details[open]", 1)
	if bad := s.post(at+"/room", url.Values{"ovens": {"two"}, "mixers": {"4"}}); bad.status != http.StatusUnprocessableEntity || !strings.Contains(bad.body, "is no number of ovens") || !strings.Contains(bad.body, `value="two"`) {
		t.Errorf("status %d", bad.status)
	}
	a = s.post(at+"/room", url.Values{"ovens": {"2"}}).ok()
	a.says(".busy", "3 ovens wanted, the room has 2")
	a.has(".room details[open]", 0)
	a = s.post(at+"/room", url.Values{"ovens": {"3"}}).ok()
	a.has(".busy", 0)
	a.says(".room", "no more than the room has")
}

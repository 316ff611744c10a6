package web

import (
	"fmt"
	"net/http"
	"net/url"
	"testing"

	"github.com/PuerkitoBio/goquery"

	"plait.example/internal/practical"
)

func TestClock(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID
	form := s.get(at).ok().form("#form", "")
	form.Set("clock.start", "9.15")
	a := s.post(at, form).ok()
	if got := s.now(rec.ID); got.Practical.Clock.Start != 555 || got.Label != "Start" {
		t.Errorf("kept %v as %q", got.Practical.Clock.Start, got.Label)
	}
	a.says("#state", "Saved at")
	a.says("#said", "Saved: Start")
	a.says("#undoes", "Undo takes back: Start")
}

// Sending the page back untouched changes nothing, not even the version.
func TestFormsUntouchedChangeNothing(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	for _, path := range []string{"", "/kitchen", "/dishes/A", "/dishes/A?step=A2", "/dishes/B?step=B2"} {
		page := "/practical/" + rec.ID + path
		a := s.get(page).ok()
		s.post(page, a.form("#form", "")).ok()
		if got := s.now(rec.ID); got.Version != rec.Version {
			t.Errorf("%s made version %d, labelled %q", path, got.Version, got.Label)
		}
	}
}

// A finish before the start is kept and explained beside its field.
func TestClockFinishBeforeStart(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID
	form := s.get(at).form("#form", "")
	form.Set("clock.finish", "07:00")
	a := s.post(at, form).ok()
	if got := s.now(rec.ID).Practical.Clock.Finish; got != 420 {
		t.Errorf("kept %v", got)
	}
	described(a)
	a.has(".road .faulty", 1)
	if a.Find(".faults a[href^='#f-clock']").Length() == 0 {
		t.Error("the summary does not lead to the clock")
	}
	s.get(at+"/kitchen").ok().has(".faults", 0)
}

// described holds every field with a fault to what a screen reader needs.
func described(a answer) {
	a.Helper()
	wrong := a.Find("[aria-invalid=true]")
	if wrong.Length() == 0 {
		a.Error("no field is marked as invalid")
	}
	wrong.Each(func(_ int, e *goquery.Selection) {
		id := e.AttrOr("id", "")
		fault := a.Find(fmt.Sprintf("[id=%q]", id+"-fault"))
		if fault.Text() == "" || e.Filter(fmt.Sprintf("[aria-describedby~=%q]", id+"-fault")).Length() != 1 {
			a.Errorf("%s is not described by its fault %q", id, fault.Text())
		}
	})
	a.Find(".faults a[href^='#']").Each(func(_ int, e *goquery.Selection) {
		if id := e.AttrOr("href", "")[1:]; a.Find(fmt.Sprintf("[id=%q]", id)).Length() != 1 {
			a.Errorf("the summary leads to %q, which is not on the page", id)
		}
	})
}

// What cannot be read comes back as typed; the rest of the form is kept.
func TestClockUnreadable(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID
	form := s.get(at).form("#form", "")
	form.Set("clock.start", "half nine")
	form.Set("title", "A new title")
	a := s.post(at, form)
	if a.status != http.StatusUnprocessableEntity {
		t.Errorf("status %d", a.status)
	}
	if got := a.Find("#f-clock-start").AttrOr("value", ""); got != "half nine" {
		t.Errorf("the field holds %q", got)
	}
	described(a)
	a.says("#state", "Not all is saved")
	if got := s.now(rec.ID).Practical; got.Title != "A new title" || got.Clock.Start != menu().Clock.Start {
		t.Errorf("kept %q, %v", got.Title, got.Clock.Start)
	}
}

func TestRestBreaks(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID
	form := s.get(at).form("#form", "add:clock.rest-breaks")
	form.Set("title", "Typed before the button")
	a := s.post(at, form).ok()
	a.has("#f-clock-rest-breaks-0-at[autofocus]", 1)
	got := s.now(rec.ID)
	if len(got.Practical.Clock.Breaks) != 1 || got.Practical.Title != "Typed before the button" || got.Label != "add a rest break" {
		t.Errorf("%+v, %q, %q", got.Practical.Clock.Breaks, got.Practical.Title, got.Label)
	}
	s.post(at, a.form("#form", "remove:clock.rest-breaks[0]")).ok()
	if got := s.now(rec.ID); len(got.Practical.Clock.Breaks) != 0 || got.Label != "remove a rest break" {
		t.Errorf("%+v, %q", got.Practical.Clock.Breaks, got.Label)
	}
}

func TestKitchen(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/kitchen"
	s.post(at, s.get(at).ok().form("#form", "add:kitchen.ovens")).ok().has(`[name="kitchen.ovens[1].fuel"]`, 1)
	table := s.post(at, s.get(at).form("#form", "handbook")).ok()
	if n := len(s.now(rec.ID).Practical.Kitchen.GasTable); n < 9 {
		t.Errorf("%d rows of the handbook's table", n)
	}
	form := table.form("#form", "")
	form.Set("kitchen.grill", string(practical.GrillInOven))
	form.Set("kitchen.ovens[0].fuel", string(practical.Gas))
	s.post(at, form).ok()
	if k := s.now(rec.ID).Practical.Kitchen; k.Grill != practical.GrillInOven || k.Ovens[0].Fuel != practical.Gas || len(k.Ovens) != 2 {
		t.Errorf("%+v", k)
	}
	s.post(at, s.get(at).form("#form", "remove:kitchen.ovens[0]")).ok()
	if k := s.now(rec.ID).Practical.Kitchen; len(k.Ovens) != 1 || k.Ovens[0].Name != "oven 2" {
		t.Errorf("%+v", k.Ovens)
	}
	for _, do := range []string{"remove:kitchen.ovens[7]", "remove:kitchen.ovens[x]", "add:dishes", "remove:dishes[0]", "add:kitchen.ovens[0]", "dance"} {
		version := s.now(rec.ID).Version
		s.post(at, s.get(at).form("#form", do)).ok()
		if got := s.now(rec.ID); got.Version != version {
			t.Errorf("%q made version %d: %s", do, got.Version, got.Label)
		}
	}
}

// Two people at once: the second sees both, keeps what was typed and can save it.
func TestConflict(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID
	mine := s.get(at).form("#form", "")
	theirs := s.get(at).form("#form", "")
	theirs.Set("clock.start", "09:10")
	s.post(at, theirs).ok()
	mine.Set("title", "My title")
	a := s.post(at, mine)
	if a.status != http.StatusConflict {
		t.Fatalf("status %d", a.status)
	}
	a.says("table", "My title")
	a.says("table", "09:10")
	if got := s.now(rec.ID).Practical.Title; got != menu().Title {
		t.Errorf("kept %q already", got)
	}
	s.post(at, a.form("main form", "")).ok()
	if got := s.now(rec.ID).Practical; got.Title != "My title" {
		t.Errorf("kept %q", got.Title)
	}
}

func TestUndoRedo(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID
	first := s.get(at).ok()
	first.has("#undo[disabled]", 1)
	form := first.form("#form", "")
	form.Set("title", "Changed")
	changed := s.post(at, form).ok()
	back := s.post(at+"/undo", changed.form(`form[action$="/undo"]`, "")).ok()
	if got := s.now(rec.ID).Practical.Title; got != menu().Title {
		t.Errorf("after undo %q", got)
	}
	back.says("#undoes", "Redo brings again: Title")
	s.post(at+"/redo", back.form(`form[action$="/redo"]`, "")).ok()
	if got := s.now(rec.ID).Practical.Title; got != "Changed" {
		t.Errorf("after redo %q", got)
	}
	if a := s.post(at+"/undo", url.Values{"version": {"1"}}); a.status != http.StatusConflict {
		t.Errorf("undo of an old version: status %d", a.status)
	}
}

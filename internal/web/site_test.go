package web

import (
	"context"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/PuerkitoBio/goquery"

	"plait.example/internal/app"
	"plait.example/internal/practical"
	"plait.example/internal/store"
	"plait.example/internal/timeplan/timeplantest"
)

// site is the application on a real store in a temporary folder.
type site struct {
	*testing.T
	server *Server
	app    *app.App
	store  *store.Store
}

// noon stands still, so that pages are the same on every run.
func noon() time.Time { return time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC) }

func newSite(t *testing.T) *site {
	t.Helper()
	kept, err := store.Open(context.Background(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	a := &app.App{Store: kept, Now: noon}
	s := New(a, Options{Plan: app.PlanOptions{Effort: 2000}})
	t.Cleanup(func() {
		s.Close()
		if err := kept.Close(); err != nil {
			t.Error(err)
		}
	})
	return &site{t, s, a, kept}
}

// answer is a page as it came.
type answer struct {
	*site
	*goquery.Document
	status int
	header http.Header
	body   string
}

func (s *site) ask(r *http.Request) answer {
	s.Helper()
	w := httptest.NewRecorder()
	s.server.ServeHTTP(w, r)
	body := w.Body.String()
	doc, err := goquery.NewDocumentFromReader(strings.NewReader(body))
	if err != nil {
		s.Fatal(err)
	}
	return answer{s, doc, w.Code, w.Header(), body}
}

func (s *site) get(path string) answer {
	s.Helper()
	return s.ask(httptest.NewRequest(http.MethodGet, path, nil))
}

// post sends a form from this site and follows the way back.
func (s *site) post(path string, form url.Values) answer {
	s.Helper()
	r := httptest.NewRequest(http.MethodPost, path, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Sec-Fetch-Site", "same-origin")
	a := s.ask(r)
	if a.status == http.StatusSeeOther {
		to, _, _ := strings.Cut(a.header.Get("Location"), "#")
		return s.get(to)
	}
	return a
}

// form is the values of a form of the page as a browser would send them, with a pressed button.
func (a answer) form(selector, do string) url.Values {
	a.Helper()
	f := a.Find(selector)
	if f.Length() != 1 {
		a.Fatalf("%d forms at %s", f.Length(), selector)
	}
	values := url.Values{}
	f.Find("input[name], textarea[name], select[name]").Each(func(_ int, e *goquery.Selection) {
		name, value := e.AttrOr("name", ""), e.AttrOr("value", "")
		switch {
		case e.Is("textarea"):
			value = strings.TrimPrefix(e.Text(), "\n")
		case e.Is("select"):
			value = e.Find("option[selected]").First().AttrOr("value", e.Find("option").First().AttrOr("value", ""))
		case e.Is("[type=checkbox]") && !e.Is("[checked]"), e.Is("[type=file]"):
			return
		}
		values.Add(name, value)
	})
	if do != "" {
		values.Set("do", do)
	}
	return values
}

// has requires a selector to match so many elements.
func (a answer) has(selector string, n int) {
	a.Helper()
	if got := a.Find(selector).Length(); got != n {
		a.Errorf("%d of %s, want %d", got, selector, n)
	}
}

// says requires the first match of a selector to contain words.
func (a answer) says(selector, words string) {
	a.Helper()
	got := strings.Join(strings.Fields(a.Find(selector).Text()), " ")
	if !strings.Contains(got, words) {
		a.Errorf("%s says %q, want %q in it", selector, got, words)
	}
}

func (a answer) ok() answer {
	a.Helper()
	if a.status != http.StatusOK {
		a.Fatalf("status %d: %s", a.status, strings.Join(strings.Fields(a.Find("main").Text()), " "))
	}
	return a
}

// kept keeps a practical.
func (s *site) kept(p *practical.Practical) app.Record {
	s.Helper()
	rec, err := s.store.Create(context.Background(), p, "kept for a test", noon())
	if err != nil {
		s.Fatal(err)
	}
	return rec
}

// planned keeps a small practical with the invented plan of three dishes.
func (s *site) planned() app.Record {
	s.Helper()
	rec := s.kept(menu())
	if err := s.store.SavePlan(context.Background(), rec.ID, rec.Version, timeplantest.Sample()); err != nil {
		s.Fatal(err)
	}
	return rec
}

func (s *site) now(id string) app.Record {
	s.Helper()
	rec, err := s.app.Open(context.Background(), id)
	if err != nil {
		s.Fatal(err)
	}
	return rec
}

// menu is an invented practical of two dishes.
func menu() *practical.Practical {
	p := practical.StartingPoints()[0].New()
	p.Title, p.Date = "Leek pasties and a sauce", "2026-11-27"
	p.Rules.Dishes = 0
	p.Dishes = []practical.Dish{
		{
			Letter: "A", Name: "Leek pasties", Portions: 4, Serve: practical.Serve{Heat: practical.Hot, How: "on a board", Minutes: 3},
			Text: "Leek pasties\n\nRub the butter into the flour. Chill for 20 minutes.\nRoll out and fill. Bake at 200 C for 25 minutes.",
			Steps: []practical.Step{
				{ID: "A1", Text: "Rub the butter into the flour.", Hands: practical.Estimate{Low: 6, Likely: 8, High: 12}, Why: []string{"usual for rubbing in"}},
				{ID: "A2", Text: "Chill for 20 minutes.", Wait: &practical.Wait{Least: 20, Most: 60, Place: practical.AtFridge}, After: []practical.After{{Step: "A1"}}, Hands: practical.Estimate{Low: 1, Likely: 1, High: 1}},
				{ID: "A3", Text: "Roll out and fill.", Hands: practical.Estimate{Low: 10, Likely: 14, High: 20}, After: []practical.After{{Step: "A2"}}, Doubt: 0.7, Why: []string{"no time is given in the recipe"}},
				{ID: "A4", Text: "Bake at 200 C for 25 minutes.", Hands: practical.Estimate{Low: 1, Likely: 1, High: 2}, Wait: &practical.Wait{Least: 25, Most: 30, Place: practical.AtOven, Celsius: 200, Band: 10}, After: []practical.After{{Step: "A3"}}, Check: "golden"},
			},
		},
		{
			Letter: "B", Name: "Pepper sauce", Serve: practical.Serve{Heat: practical.Hot, How: "in a warm bowl", Minutes: 2},
			Steps: []practical.Step{
				{ID: "B1", Text: "Chop the peppers.", Hands: practical.Estimate{Low: 4, Likely: 6, High: 10}},
				{ID: "B2", Text: "Simmer.", Hands: practical.Estimate{Low: 1, Likely: 2, High: 3}, Uses: []practical.Kit{practical.Ring}, Wait: &practical.Wait{Least: 15, Most: 25, Place: practical.AtHob, Attention: practical.Look, Every: 5}, After: []practical.After{{Step: "B1"}}},
			},
		},
	}
	return p
}

// slogTo writes a log as text.
func slogTo(w io.Writer) *slog.Logger { return slog.New(slog.NewTextHandler(w, nil)) }

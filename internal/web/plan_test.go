package web

import (
	"context"
	"errors"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/app"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

// The page says the same rows as the plan, in its order: time, minutes, text.
func TestPlan(t *testing.T) {
	s := newSite(t)
	rec := s.planned()
	plan := timeplantest.Sample()
	a := s.get("/practical/" + rec.ID + "/plan").ok()
	a.has("table.rows tbody tr", len(plan.Rows))
	for i, row := range plan.Rows {
		tr := a.Find("table.rows tbody tr").Eq(i)
		if got := tr.Find(".time").Text(); !strings.HasPrefix(got, row.Clock.Write(plan.Hours)) {
			t.Errorf("row %d: time %q, want %v", i, got, row.Clock)
		}
		for _, words := range []string{row.Text, row.Kit, row.Check, row.Safety, row.Setting} {
			if !strings.Contains(tr.Text(), words) {
				t.Errorf("row %d: %q is missing", i, words)
			}
		}
		if got := tr.Find(".dish .chip").Text(); row.Dish != "" && got != row.Dish {
			t.Errorf("row %d: dish %q, want %q", i, got, row.Dish)
		}
	}
	a.has(".plait-picture svg", 1)
	a.has(".plait-picture details li", a.Find(".plait-picture details li").Length())
	if a.Find(".plait-picture details li").Length() < len(plan.Rows)/2 {
		t.Error("the plait has hardly any words")
	}
	for _, f := range files(rec.ID) {
		a.has(`.files a[href="`+f.Link+`"]`, 1)
	}
}

func TestStanding(t *testing.T) {
	plan := func(finish, bound, allowed practical.TimeOfDay, status timeplan.Status, over int) *timeplan.Plan {
		return &timeplan.Plan{Finish: finish, Bound: bound, Allowed: allowed, Status: status, Over: over, Hours: 24, Rows: []timeplan.Row{{}}}
	}
	for want, p := range map[string]*timeplan.Plan{
		"It fits. It finishes at 11:47, 13 minutes to spare. No plan can finish earlier.":            plan(707, 707, 720, timeplan.Optimal, 0),
		"It fits. It finishes at 11:59, 1 minute to spare. No plan can finish before 11:44.":         plan(719, 704, 720, timeplan.Feasible, 0),
		"It fits. It finishes at 12:00, with no time to spare. No plan can finish before 11:44.":     plan(720, 704, 720, timeplan.Feasible, 0),
		"It does not fit: the best plan finishes at 12:09, 9 minutes after the time is up at 12:00.": plan(729, 722, 720, timeplan.Infeasible, 9),
		"It cannot be done, whatever the time.":                                                      {Status: timeplan.Infeasible, Hours: 24},
	} {
		if got := standing(p); got != want {
			t.Errorf("\n got %s\nwant %s", got, want)
		}
	}
}

func TestSofar(t *testing.T) {
	for want, p := range map[string]app.Progress{
		"A plan that finishes at 11:47; none can finish before 11:44.": {Finish: 707, Bound: 704, Found: true},
		"A plan that finishes at 11:44; none can finish earlier.":      {Finish: 704, Bound: 704, Found: true},
		"No plan yet; none can finish before 11:44.":                   {Bound: 704},

		"It does not fit: the best plan finishes at 12:09. Looking for the reason and for ways out.": {Finish: 729, Bound: 729, Found: true, Unfit: true},
		"It does not fit. Looking for the reason and for ways out.":                                  {Unfit: true},
	} {
		if got := sofar(p, 24); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// A practical without dishes, with faults, and one that can be planned.
func TestMakePlan(t *testing.T) {
	s := newSite(t)
	empty, err := s.app.NewPractical(t.Context(), "")
	if err != nil {
		t.Fatal(err)
	}
	s.get("/practical/"+empty.ID+"/plan").ok().says("main", "nothing to plan yet")

	bad := menu()
	bad.Clock.Finish = bad.Clock.Start - 30
	rec := s.kept(bad)
	at := "/practical/" + rec.ID + "/plan"
	a := s.post(at, s.get(at).ok().form("[data-dovetails]", "dovetail"))
	if a.status != http.StatusUnprocessableEntity {
		t.Errorf("status %d", a.status)
	}
	if a.Find(`.faults a[href="/practical/`+rec.ID+`"]`).Length() == 0 {
		t.Error("the summary does not lead to the clock")
	}

	rec = s.kept(menu())
	made := s.makes(rec.ID, "dovetail", url.Values{})
	made.says("details.aims", "It cannot finish sooner: proved.")
	if got := s.now(rec.ID); got.Plan == nil || got.Version != rec.Version {
		t.Fatalf("plan %v, version %d", got.Plan, got.Version)
	}
}

// makes sends a button of the plan page and waits for the search behind it.
func (s *site) makes(id, do string, more url.Values) answer {
	s.Helper()
	at := "/practical/" + id + "/plan"
	form := url.Values{"version": {s.get(at).ok().Find("#keep").AttrOr("data-version", "")}, "do": {do}}
	for name, values := range more {
		form[name] = values
	}
	a := s.post(at, form)
	if u := s.server.runs.of(id); u != nil {
		<-u.done
		a = s.get(at)
	}
	return a
}

func TestPinMoveUnpin(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.makes(rec.ID, "dovetail", nil)
	plan := s.now(rec.ID).Plan
	row := plan.Rows[0]
	for _, r := range plan.Rows {
		if r.Action == timeplan.Do && len(r.Steps) > 0 {
			row = r
		}
	}
	later := row.At + 5
	a := s.makes(rec.ID, "pin", url.Values{"row": {row.ID}, "at": {later.String()}}).ok()
	a.has(`tr.pinned[data-row="`+row.ID+`"]`, 1)
	got := s.now(rec.ID)
	if len(got.Practical.Pins) != 1 || got.Practical.Pins[0].At == nil || *got.Practical.Pins[0].At != later {
		t.Errorf("pins %+v", got.Practical.Pins)
	}
	s.makes(rec.ID, "unpin", url.Values{"row": {row.ID}}).ok().has("tr.pinned", 0)
	if bad := s.makes(rec.ID, "pin", url.Values{"row": {row.ID}, "at": {"noonish"}}); bad.status != http.StatusUnprocessableEntity {
		t.Errorf("status %d", bad.status)
	}
	s.makes(rec.ID, "dovetail", nil).ok()
	if bad := s.makes(rec.ID, "up", url.Values{"row": {"Z9/hands"}}); bad.status != http.StatusNotFound && bad.status != http.StatusUnprocessableEntity {
		t.Errorf("no such row: status %d", bad.status)
	}
}

// A practical that cannot fit says by how much, why, and what would help; a way
// out is one change that undo takes back.
func TestWaysOut(t *testing.T) {
	s := newSite(t)
	p := menu()
	p.Clock.Finish = p.Clock.Start + 45
	rec := s.kept(p)
	a := s.makes(rec.ID, "dovetail", nil).ok()
	a.says(".status-line", "It does not fit")
	if a.Find("#conflict-title ~ ul li").Length() == 0 {
		t.Error("no demands are named")
	}
	way := a.Find(`.ways button[value="way-out:finish"]`)
	if way.Length() != 1 {
		t.Fatalf("ways out: %s", a.Find(".ways").Text())
	}
	over := s.now(rec.ID).Plan.Over
	s.makes(rec.ID, "way-out:finish", nil).ok().says(".status-line", "It fits")
	if got := s.now(rec.ID).Practical.Clock.Finish; got != p.Clock.Finish+practical.TimeOfDay(over) {
		t.Errorf("finish %v", got)
	}
	form := s.get("/practical/"+rec.ID+"/plan").form(`form[action$="/undo"]`, "")
	s.post("/practical/"+rec.ID+"/undo", form).ok()
	if got := s.now(rec.ID).Practical.Clock.Finish; got != p.Clock.Finish {
		t.Errorf("after undo, finish %v", got)
	}
}

// The page does not wait for a long search: it shows how far it is, tells the
// rest as events, and Stop ends it.
func TestProgress(t *testing.T) {
	s := newSite(t)
	rec := s.planned()
	at := "/practical/" + rec.ID + "/plan"
	u := s.server.runs.start(rec.ID, func(ctx context.Context, improved func(app.Progress)) (app.Record, error) {
		improved(app.Progress{Finish: 707, Bound: 704, Found: true})
		<-ctx.Done()
		return rec, nil
	})
	for _, seen, changed := u.now(); seen == 0; _, seen, changed = u.now() {
		<-changed
	}
	running := s.get(at).ok()
	running.has("[data-progress]", 1)
	running.says("#sofar", "A plan that finishes at 11:47; none can finish before 11:44.")

	live := httptest.NewServer(s.server)
	defer live.Close()
	r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, live.URL+at+"/progress", nil)
	if err != nil {
		t.Fatal(err)
	}
	stream, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = stream.Body.Close() }()
	read := make([]byte, 200)
	n, err := stream.Body.Read(read)
	if want := "event: step\ndata: A plan that finishes at 11:47; none can finish before 11:44.\n\n"; err != nil || string(read[:n]) != want {
		t.Errorf("%v\n%s", err, cmp.Diff(want, string(read[:n])))
	}
	s.post(at+"/stop", nil).ok().has("[data-progress]", 0)
	n, _ = stream.Body.Read(read)
	if want := "event: end\ndata: done\n\n"; string(read[:n]) != want {
		t.Error(cmp.Diff(want, string(read[:n])))
	}
}

// A search that ends while its page is being made leaves no page without it: the
// record was read before the plan was kept, so the page still shows the search,
// and its events say at once that it is over.
func TestSearchEndsDuringThePage(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	u := s.server.runs.start(rec.ID, func(context.Context, func(app.Progress)) (app.Record, error) { return rec, nil })
	<-u.done
	page := s.server.planPage(httptest.NewRequest(http.MethodGet, "/practical/"+rec.ID+"/plan", nil), rec, u)
	if !page.Running {
		t.Error("the page knows of no search, and has no plan")
	}
	events := s.get("/practical/" + rec.ID + "/plan/progress").ok()
	if want := "event: end\ndata: done\n\n"; events.body != want {
		t.Error(cmp.Diff(want, events.body))
	}
}

// A search that fails or breaks says so on the page; one that is replaced ends first.
func TestRuns(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	for name, work := range map[string]func(context.Context, func(app.Progress)) (app.Record, error){
		"fails":  func(context.Context, func(app.Progress)) (app.Record, error) { return app.Record{}, errors.New("no") },
		"breaks": func(context.Context, func(app.Progress)) (app.Record, error) { panic("no") },
	} {
		<-s.server.runs.start(rec.ID, work).done
		a := s.get("/practical/" + rec.ID + "/plan").ok()
		if !strings.Contains(a.Find(".faults").Text(), "something broke on our side") {
			t.Errorf("%s: %s", name, a.Find("main").Text())
		}
		s.get("/practical/"+rec.ID+"/plan").ok().has(".faults", 0) // said once
	}
	old := s.server.runs.start(rec.ID, func(ctx context.Context, _ func(app.Progress)) (app.Record, error) {
		<-ctx.Done()
		return rec, nil
	})
	<-s.server.runs.start(rec.ID, func(context.Context, func(app.Progress)) (app.Record, error) {
		select {
		case <-old.done:
			return rec, nil
		default:
			return rec, errors.New("the old search still ran")
		}
	}).done
	if err := s.server.runs.ended(rec.ID); err != nil {
		t.Error(err)
	}
}

func TestPaper(t *testing.T) {
	s := newSite(t)
	rec := s.planned()
	at := "/practical/" + rec.ID
	for path, want := range map[string]struct{ kind, begins string }{
		"/print":                {"text/html; charset=utf-8", "<!"},
		"/print?large=1":        {"text/html; charset=utf-8", "<!"},
		"/plan.pdf":             {"application/pdf", "%PDF-"},
		"/plan.pdf?landscape=1": {"application/pdf", "%PDF-"},
		"/plan.json":            {"application/json", "{"},
		"/plan.txt":             {"text/plain; charset=utf-8", ""},
		"/practical.yaml":       {"", "title:"},
		"/plait.svg":            {"image/svg+xml", "<svg"},
	} {
		a := s.get(at + path).ok()
		if got := a.header.Get("Content-Type"); want.kind != "" && got != want.kind {
			t.Errorf("%s: type %q, want %q", path, got, want.kind)
		}
		if !strings.HasPrefix(strings.ToLower(a.body), strings.ToLower(want.begins)) {
			t.Errorf("%s begins %.20q", path, a.body)
		}
	}
	bare := s.kept(menu())
	if a := s.get("/practical/" + bare.ID + "/plan.pdf"); a.status != http.StatusNotFound {
		t.Errorf("no plan: status %d", a.status)
	}
}

// The plait is drawn to the heights of the page's rows, or refuses nonsense.
func TestPlaitHeights(t *testing.T) {
	s := newSite(t)
	rec := s.planned()
	at := "/practical/" + rec.ID + "/plait.svg?heights="
	rows := len(timeplantest.Sample().Rows)
	tall := s.get(at + strings.TrimSuffix(strings.Repeat("90,", rows), ",")).ok()
	if tall.header.Get("Plait-Top") == "" {
		t.Error("no top is told")
	}
	for _, bad := range []string{"90", "x", strings.Repeat("-1,", rows-1) + "-1", strings.Repeat("NaN,", rows-1) + "NaN", strings.Repeat("1e9,", rows-1) + "1"} {
		if a := s.get(at + bad).ok(); a.header.Get("Plait-Top") != "" {
			t.Errorf("%.20q was taken", bad)
		}
	}
}

// The plait lies on the sheet's own colour.
func TestGroundIsTheSheets(t *testing.T) {
	css, err := os.ReadFile("assets/plait.css")
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(css), "--paper: "+sheetGround) {
		t.Errorf("the sheet is not %s", sheetGround)
	}
}

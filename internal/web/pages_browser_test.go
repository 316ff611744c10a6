package web

import (
	"bytes"
	"context"
	_ "embed"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// axe is the accessibility engine axe-core (MPL-2.0; licence beside it), for tests only.
//
//go:embed testdata/axe.min.js
var axe string

// menuOfThree keeps the first example file, with its plan.
func (s *site) menuOfThree() app.Record {
	s.Helper()
	p, err := s.app.ReadFS(os.DirFS("../../examples"), "three-in-three.yaml")
	if err != nil {
		s.Fatal(err)
	}
	rec, err := s.app.Plan(context.Background(), s.kept(p).ID, app.PlanOptions{Seed: 1, Effort: 2000})
	if err != nil {
		s.Fatal(err)
	}
	return rec
}

// tooMuch keeps the same practical with an hour less, and the plan that does not fit.
func (s *site) tooMuch() app.Record {
	s.Helper()
	p, err := s.app.ReadFS(os.DirFS("../../examples"), "three-in-three.yaml")
	if err != nil {
		s.Fatal(err)
	}
	p.Title, p.Clock.Finish = "Too much for the time", p.Clock.Start+90
	rec, err := s.app.Plan(context.Background(), s.kept(p).ID, app.PlanOptions{Seed: 1, Effort: 500})
	if err != nil {
		s.Fatal(err)
	}
	return rec
}

// everyPage is a name and an address for every kind of page.
func (s *site) everyPage() [][2]string {
	s.Helper()
	full, tight := s.menuOfThree(), s.tooMuch()
	wrong := menu()
	wrong.Title, wrong.Clock.Finish = "Finish before start", wrong.Clock.Start-60
	wrong.Dishes[0].Steps[0].Hands.Low = 99
	faulty := s.kept(wrong)
	if _, err := s.app.SaveClass(context.Background(), practical.Class{Name: "11C", Candidates: []practical.Candidate{{First: "Amara", Initial: "B"}, {First: "Bo"}}}); err != nil {
		s.Fatal(err)
	}
	empty, err := s.app.NewPractical(context.Background(), "")
	if err != nil {
		s.Fatal(err)
	}
	read, _, err := s.app.AddDish(context.Background(), empty.ID, empty.Version, pasted)
	if err != nil {
		s.Fatal(err)
	}
	if _, err := s.app.TakeCorrections(context.Background(), "c.yaml", []byte("plait-corrections: 1\ncorrections:\n- {words: Knead for 8 minutes, date: 2026-03-12, recipe: Soda bread, now: {hands: 10}, was: {hands: 8}}\n"), false); err != nil {
		s.Fatal(err)
	}
	fresh, err := s.app.NewPractical(context.Background(), "")
	if err != nil {
		s.Fatal(err)
	}
	small := "id,technique,skill group,complexity,learner low,learner likely,learner high,place,source\nknead,Knead,10,basic,4,5,6,bench,invented\n"
	if *screens == "" { // the whole table is for the pictures: judging its 200 rows takes long
		if _, err := s.app.UseTechniques(context.Background(), "small.csv", []byte(small)); err != nil {
			s.Fatal(err)
		}
	}
	at, no := "/practical/"+full.ID, "/practical/"+faulty.ID
	s.handIn(full.ID)
	letter := full.Practical.Dishes[0].Letter
	return [][2]string{
		{"list", "/"},
		{"class", "/class"},
		{"help", "/help"},
		{"clock", at},
		{"kitchen", at + "/kitchen"},
		{"dishes", at + "/dishes"},
		{"skills", at + "/skills"},
		{"corrections", "/corrections"},
		{"techniques", "/techniques"},
		{"dish", at + "/dishes/" + letter},
		{"step", at + "/dishes/" + letter + "?step=" + full.Practical.Dishes[0].Steps[1].ID},
		{"plan", at + "/plan"},
		{"check-plans", at + "/plans"},
		{"check-one", at + "/plans/1?row=3"},
		{"plan-too-much", "/practical/" + tight.ID + "/plan"},
		{"clock-wrong", no},
		{"dish-wrong", no + "/dishes/A?step=A1"},
		{"plan-wrong", no + "/plan"},
		{"recipe-read", "/practical/" + read.ID + "/dishes/A"},
		{"recipe-beside", "/practical/" + read.ID + "/dishes/A?step=A2"},
		{"dishes-empty", "/practical/" + fresh.ID + "/dishes"},
		{"plan-empty", "/practical/" + fresh.ID + "/plan"},
		{"not-there", "/nowhere"},
	}
}

// pictured are the pages that docs/screens has pictures of.
var pictured = map[string]bool{
	"list": true, "class": true, "help": true, "clock": true, "kitchen": true, "dishes": true, "recipe-read": true,
	"recipe-beside": true, "skills": true, "corrections": true, "techniques": true, "plan": true, "check-plans": true, "check-one": true, "plan-too-much": true, "clock-wrong": true,
}

// Pictures of the pages on a phone, on a laptop and on paper: into the folder of
// the flag -screens, else one of them, which must be as wide as the screen.
func TestScreens(t *testing.T) {
	s := newSite(t)
	if *screens == "" {
		b, file := s.tab(phone, true), filepath.Join(t.TempDir(), "help.png")
		b.open("/help")
		b.shoot(file, tallest)
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if size, err := png.DecodeConfig(bytes.NewReader(data)); err != nil || size.Width != phone {
			t.Errorf("%d wide, %v", size.Width, err)
		}
		return
	}
	pages := s.everyPage()
	for _, width := range []int64{phone, laptop} {
		b := s.tab(width, true)
		for _, page := range pages {
			if !pictured[page[0]] {
				continue
			}
			b.open(page[1])
			if width == laptop && strings.HasPrefix(page[0], "plan") {
				b.until(`document.querySelector("[data-aligned]") !== null`)
			}
			b.picture(fmt.Sprintf("%s-%d", page[0], width))
			if width == laptop && page[0] == "plan" {
				b.shoot(filepath.Join(*screens, "plan.png"), 1300) // for the front page of the project
			}
		}
	}
	b := s.paper()
	for _, page := range pages {
		if page[0] == "plan" {
			b.open(strings.TrimSuffix(page[1], "plan") + "print")
			b.picture("print-a4")
			b.open(strings.TrimSuffix(page[1], "plan") + "print?large=1")
			b.picture("print-a4-large")
		}
	}
}

// paper is a tab as wide as A4 that shows pages as a printer does.
func (s *site) paper() *tab {
	s.Helper()
	b := s.tab(794, true) // 210 mm at 96 dots an inch
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		return err
	}))
	return b
}

// judge holds a page to what every page must keep.
const judge = `(async (whole) => {
  const found = [];
  const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
  if (wide > 0) {
    const far = [...document.querySelectorAll("main *")].filter((e) => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !e.closest(".plait-picture, .recipe-text")).slice(0, 3);
    found.push("scrolls sideways by " + wide + ": " + far.map((e) => e.outerHTML.slice(0, 90)).join(" | "));
  }
  if (!whole) return found;
  const result = await axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"], resultTypes: ["violations"] });
  for (const v of result.violations) found.push(v.id + ": " + v.help + ": " + v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160)).join(" | "));
  return found;
})(%t)`

// Every page at both widths: no violation of WCAG 2.2 A and AA that axe-core can
// find, no error on the console, no scrolling sideways. The wide layout is judged
// by axe-core on the pages that have one of their own.
func TestEveryPageIsAccessible(t *testing.T) {
	s := newSite(t)
	pages := s.everyPage()
	for _, width := range []int64{phone, laptop} {
		b := s.tab(width, true)
		for _, page := range pages {
			b.open(page[1])
			whole := width == phone || page[0] == "list" || page[0] == "step" || page[0] == "plan"
			b.judged(page[0], width, whole)
		}
	}
}

// judged holds the page that the tab shows to what every page must keep; whole: by axe-core too.
func (b *tab) judged(name string, width int64, whole bool) {
	b.Helper()
	if whole {
		b.do(chromedp.Evaluate[chromedp.Void](axe + "; undefined"))
	}
	found, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]string](fmt.Sprintf(judge, whole), chromedp.EvalAwaitPromise))
	if err != nil {
		b.Fatal(err)
	}
	for _, f := range found {
		b.Errorf("%s at %d: %s", name, width, f)
	}
}

// The plait stands on the clock of the rows beside it: the mark of each row is
// level with the row, to a few pixels.
func TestPlaitStandsOnTheRowsClock(t *testing.T) {
	s := newSite(t)
	rec := s.menuOfThree()
	b := s.tab(laptop, true)
	b.open("/practical/" + rec.ID + "/plan")
	b.until(`document.querySelector("[data-aligned]") !== null`)
	off := eval[[]string](b, `[...document.querySelectorAll("tr[data-row]")].map((row) => {
	  const mark = document.querySelector('svg [data-row="' + CSS.escape(row.dataset.row) + '"]');
	  const a = row.getBoundingClientRect(), m = mark.getBoundingClientRect();
	  return m.top < a.top - 4 || m.top > a.bottom ? row.dataset.row + ": row at " + a.top + ", mark at " + m.top : "";
	}).filter(Boolean)`)
	for _, o := range off {
		t.Error(o)
	}
}

// The printed page keeps its style under its own policy, and fits the width of A4.
func TestPrintView(t *testing.T) {
	s := newSite(t)
	rec := s.menuOfThree()
	b := s.paper()
	for name, address := range map[string]string{"print-a4": "/print", "print-a4-large": "/print?large=1"} {
		b.open("/practical/" + rec.ID + address)
		if over := eval[int](b, `document.documentElement.scrollWidth - document.documentElement.clientWidth`); over > 0 {
			t.Errorf("%s is %d pixels too wide", name, over)
		}
		if n := eval[int](b, `document.querySelectorAll("tr").length`); n < len(rec.Plan.Rows) {
			t.Errorf("%s has %d rows, want at least %d", name, n, len(rec.Plan.Rows))
		}
	}
}

// small lists what one can press that is smaller than 24 by 24 pixels (WCAG 2.2,
// 2.5.8), apart from links within a sentence, which the criterion leaves out.
const small = `[...document.querySelectorAll("a, button, input:not([type=hidden]), select, textarea, summary")].filter((e) => {
  if (!e.checkVisibility() || e.closest(".unseen, p, li, dd") && e.tagName === "A" || e.classList.contains("skip")) return false;
  const r = e.getBoundingClientRect();
  return r.width < 24 || r.height < 24;
}).map((e) => e.outerHTML.slice(0, 120))`

// faint walks the page with the Tab key in mind: everything that takes the
// focus must show it.
const faint = `[...document.querySelectorAll("a, button:not([disabled]), input:not([type=hidden]), select, textarea, summary")].filter((e) => {
  if (!e.checkVisibility()) return false;
  e.focus({ focusVisible: true });
  const s = getComputedStyle(e);
  return document.activeElement === e && (s.outlineStyle === "none" || parseFloat(s.outlineWidth) < 2);
}).map((e) => e.outerHTML.slice(0, 120))`

func TestTargetsAndFocus(t *testing.T) {
	s := newSite(t)
	pages := s.everyPage()
	b := s.tab(phone, true)
	for _, page := range pages {
		b.open(page[1])
		for _, e := range eval[[]string](b, small) {
			t.Errorf("%s: smaller than 24 px: %s", page[0], e)
		}
		for _, e := range eval[[]string](b, faint) {
			t.Errorf("%s: focus does not show: %s", page[0], strings.TrimSpace(e))
		}
	}
}

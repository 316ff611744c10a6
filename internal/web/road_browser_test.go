package web

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"plait.example/internal/app"
)

// pasted is an invented recipe, as one pastes it.
const pasted = `Cheese scones
Serves 4

Ingredients
225 g self-raising flour
50 g butter
100 g cheese
150 ml milk

Method
1. Rub the butter into the flour until it looks like crumbs.
2. Grate the cheese and stir it in.
3. Add the milk and bring to a soft dough.
4. Roll out and cut 8 rounds.
5. Bake at 220°C for 12 minutes until golden.
6. Cool on a rack for 10 minutes.
`

// press moves the focus to an element and presses Enter, as one does without a mouse.
func (b *tab) press(selector string) {
	b.Helper()
	b.do(chromedp.Focus(chromedp.CSS(selector)), chromedp.KeyEvent(kb.Enter))
}

// retype replaces what stands in a field and leaves it with the Tab key.
func (b *tab) retype(selector, text string) {
	b.Helper()
	b.do(chromedp.Focus(chromedp.CSS(selector)), chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)), chromedp.KeyEvent(text), chromedp.KeyEvent(kb.Tab))
}

// settle waits until nothing is under way.
func (b *tab) settle() {
	b.Helper()
	b.until(`document.readyState === "complete" && !document.querySelector(".htmx-request, .htmx-swapping, .htmx-settling, [data-progress]")`)
}

// says waits until an element contains words.
func (b *tab) says(selector, words string) {
	b.Helper()
	b.until(fmt.Sprintf(`(document.querySelector(%q)?.textContent ?? "").includes(%q)`, selector, words))
}

// id is the practical that the tab shows.
func (b *tab) id() string {
	b.Helper()
	rest := strings.TrimPrefix(eval[string](b, "location.pathname"), "/practical/")
	id, _, _ := strings.Cut(rest, "/")
	return id
}

// begin makes a practical of one dish from the pasted recipe, all from the keyboard.
func (b *tab) begin() {
	b.Helper()
	b.open("/")
	b.press(`form[action="/practicals"] button`)
	b.says("h1", "Clock and rules")
	b.open("/practical/" + b.id())
	b.retype("#f-rules-dishes", "0")
	b.settle()
}

// The main road without a mouse, with script, at both widths: new practical,
// paste, correct a step, dovetail, move a row, pin it, undo.
func TestMainRoad(t *testing.T) {
	for _, width := range []int64{phone, laptop} {
		t.Run(fmt.Sprint(width), func(t *testing.T) {
			b := newTab(t, width, true)
			b.begin()
			b.says("#state", "Saved")
			id := b.id()
			if got := b.now(id).Practical.Rules.Dishes; got != 0 {
				t.Fatalf("%d dishes asked for are kept, want 0", got)
			}
			b.open("/practical/" + id + "/dishes")
			b.do(chromedp.SetValue(chromedp.CSS("#text"), pasted))
			b.press("#read")
			b.says("h1", "Cheese scones")
			if n := eval[int](b, `document.querySelectorAll(".steps tbody tr").length`); n < 5 {
				t.Fatalf("%d steps read, want at least 5", n)
			}
			b.correct(id)
			b.open("/practical/" + id + "/plan")
			b.press("#dovetail")
			b.says("main", "It fits. It finishes at")
			b.settle()
			b.until(`document.querySelector(".plait-picture svg") !== null`)
			b.moveAndPin(id)
		})
	}
}

// correct changes the minutes of the first step; the change saves itself, and
// what cannot be read is said beside its field while the focus stays.
func (b *tab) correct(id string) {
	b.Helper()
	field := "#f-dishes-0-steps-0-hands-high"
	b.retype(field, "soon")
	b.says(field+"-fault", "is not a whole number")
	b.until(`document.querySelector("` + field + `").getAttribute("aria-invalid") === "true"`)
	if got := eval[string](b, `document.querySelector("`+field+`").value`); got != "soon" {
		b.Errorf("the field now holds %q, want what was typed", got)
	}
	if eval[bool](b, `document.activeElement === document.body`) {
		b.Error("the focus was lost")
	}
	b.retype(field, "25")
	b.until(`document.querySelector("` + field + `-fault").textContent.trim() === ""`)
	b.says("#state", "Saved")
	if got := b.now(id).Practical.Dishes[0].Steps[0].Hands.High; got != 25 {
		b.Errorf("kept high %d, want 25", got)
	}
}

// order is the rows of the plan, by id.
const order = `[...document.querySelectorAll("tr[data-row]")].map((r) => r.dataset.row)`

// moveAndPin moves a row down, pins it and takes both back.
func (b *tab) moveAndPin(id string) {
	b.Helper()
	before := eval[[]string](b, order)
	row := eval[string](b, `(() => {
	  const rows = [...document.querySelectorAll("tr.moves")].map((r) => r.id);
	  return [...document.querySelectorAll("tr.moves")].filter((r) => r.dataset.row.startsWith("wash-up")).map((r) => r.id)[0] || rows[0];
	})()`)
	b.press("#" + row + "-up")
	b.settle()
	b.until(`document.querySelector("#said").textContent !== "" || document.querySelector("main .faults") !== null`)
	b.until(`document.activeElement !== document.body`)
	b.press("#" + row + "-pin")
	b.settle()
	b.until(`document.querySelector("tr.pinned") !== null`)
	if len(b.now(id).Practical.Pins) == 0 {
		b.Error("nothing is pinned in what is kept")
	}
	for len(b.now(id).Practical.Pins) > 0 {
		version := b.now(id).Version
		b.press("#undo")
		b.settle()
		b.until(fmt.Sprintf(`document.querySelector("#keep").dataset.version !== "%d"`, version))
	}
	b.press("#dovetail")
	b.settle()
	b.until(fmt.Sprintf("%s.join(' ') === %q", order, strings.Join(before, " ")))
}

// The same road by plain forms.
func TestMainRoadWithoutScript(t *testing.T) {
	b := newTab(t, phone, false)
	b.begin()
	id := b.id()
	b.do(chromedp.Click(chromedp.CSS("form#form button.main")))
	b.until(`location.search.includes("saved")`)
	b.says("#state", "Saved")
	if got := b.now(id).Practical.Rules.Dishes; got != 0 {
		t.Fatalf("%d dishes asked for are kept, want 0", got)
	}
	b.open("/practical/" + id + "/dishes")
	b.do(chromedp.SetValue(chromedp.CSS("#text"), pasted))
	b.press("#read")
	b.says("h1", "Cheese scones")
	b.retype("#f-dishes-0-steps-0-hands-high", "soon")
	b.do(chromedp.Click(chromedp.CSS("form#form button.main")))
	b.says("#f-dishes-0-steps-0-hands-high-fault", "is not a whole number")
	if got := eval[string](b, `document.querySelector("#f-dishes-0-steps-0-hands-high").value`); got != "soon" {
		t.Errorf("the field now holds %q, want what was typed", got)
	}
	b.do(chromedp.SetValue(chromedp.CSS("#f-dishes-0-steps-0-hands-high"), "26"))
	b.press("#f-dishes-0-steps-0-hands-high") // Enter in a field saves
	b.until(`document.querySelector("#f-dishes-0-steps-0-hands-high-fault")?.textContent.trim() === ""`)
	if got := b.now(id).Practical.Dishes[0].Steps[0].Hands.High; got != 26 {
		t.Errorf("kept high %d, want 26", got)
	}
	b.open("/practical/" + id + "/plan")
	b.press("#dovetail")
	b.says("main", "It fits.")
	before := eval[[]string](b, order)
	row := eval[string](b, `document.querySelector("tr.moves").id`)
	b.press("#" + row + "-pin")
	b.until(`document.querySelector("tr.pinned") !== null`)
	if focus := eval[string](b, `document.activeElement.id`); focus != row+"-pin" {
		t.Errorf("the focus is on %q, want the row's pin", focus)
	}
	b.press("#undo")
	b.until(`document.querySelector("tr.pinned") === null`)
	b.press("#dovetail")
	b.until(fmt.Sprintf("%s.join(' ') === %q", order, strings.Join(before, " ")))
}

// A step moved with its button keeps the focus on that step's button, so that
// the next press moves the same step again.
func TestMoveStepKeepsFocus(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	b := s.tab(phone, true)
	b.open("/practical/" + rec.ID + "/dishes/A")
	first := menu().Dishes[0].Steps[0].Text
	for want := 1; want <= 2; want++ {
		b.press(fmt.Sprintf("#down-A%d", want))
		b.until(fmt.Sprintf(`document.activeElement.id === "down-A%d"`, want+1))
		if got := s.now(rec.ID).Practical.Dishes[0].Steps[want].Text; got != first {
			t.Errorf("after %d presses step %d is %q", want, want+1, got)
		}
	}
}

// Typing in one field while another saves loses nothing, and the page says that
// it is not saved yet.
func TestTypingWhileSaving(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	b := s.tab(laptop, true)
	b.open("/practical/" + rec.ID)
	b.retype("#f-title", "First")
	b.do(chromedp.Focus(chromedp.CSS("#f-clock-start")), chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)), chromedp.KeyEvent("09:2"))
	b.settle()
	b.do(chromedp.KeyEvent("0"))
	if got := eval[string](b, `document.querySelector("#f-clock-start").value`); got != "09:20" {
		t.Errorf("the field holds %q", got)
	}
	b.says("#state", "Not saved yet")
	b.do(chromedp.KeyEvent(kb.Tab))
	b.says("#state", "Saved")
	b.settle()
	if got := s.now(rec.ID).Practical; got.Title != "First" || got.Clock.Start != 560 {
		t.Errorf("kept %q, %v", got.Title, got.Clock.Start)
	}
}

// A long search is followed on the page, and its plan comes by itself.
func TestProgressInTheBrowser(t *testing.T) {
	s := newSite(t)
	rec := s.planned()
	more, end := make(chan app.Progress), make(chan struct{})
	s.server.runs.start(rec.ID, func(_ context.Context, improved func(app.Progress)) (app.Record, error) {
		for p := range more {
			improved(p)
		}
		<-end
		return rec, nil
	})
	b := s.tab(phone, true)
	b.open("/practical/" + rec.ID + "/plan")
	b.says("#sofar", "Looking for a plan")
	more <- app.Progress{Bound: 704}
	b.says("#sofar", "No plan yet; none can finish before 11:44.")
	more <- app.Progress{Finish: 707, Bound: 704, Found: true}
	b.says("#sofar", "A plan that finishes at 11:47; none can finish before 11:44.")
	close(more)
	close(end)
	b.until(`document.querySelector("table.rows") !== null`)
}

// Somebody else's change shows at once, with what was typed here still there.
func TestConflictInTheBrowser(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	b := s.tab(phone, true)
	b.open("/practical/" + rec.ID)
	form := s.get("/practical/"+rec.ID).form("#form", "")
	form.Set("clock.start", "09:10")
	s.post("/practical/"+rec.ID, form).ok()
	b.retype("#f-title", "My title")
	b.says("h1", "Somebody else changed this")
	b.says("table", "My title")
	b.press("main form button")
	b.until(`document.querySelector("#f-title")?.value === "My title"`)
	if got := s.now(rec.ID).Practical; got.Title != "My title" {
		t.Errorf("kept %q", got.Title)
	}
}

// A row is dragged by its grip to another place; the drop asks for a new plan.
func TestDragRow(t *testing.T) {
	s := newSite(t)
	rec := s.menuOfThree()
	b := s.tab(laptop, true)
	b.open("/practical/" + rec.ID + "/plan")
	b.settle()
	before := s.now(rec.ID).Version
	box := eval[[]float64](b, `(() => {
	  const rows = [...document.querySelectorAll("tr.moves")].filter((r) => r.classList.contains("before-clock"));
	  rows[0].scrollIntoView({ block: "center" });
	  const from = rows[0].querySelector(".grip").getBoundingClientRect(), to = rows[1].getBoundingClientRect();
	  return [from.x + from.width / 2, from.y + from.height / 2, to.x + 700, to.bottom - 4];
	})()`)
	b.do(chromedp.DragAndDropXY(box[0], box[1], box[0], box[3], 20))
	b.until(`document.querySelector("#said").textContent.includes("is now at")`)
	if s.now(rec.ID).Version == before {
		t.Error("the drag made no new version")
	}
}

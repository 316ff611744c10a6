package web

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"plait.example/internal/practical"
)

// A step is retimed, moved, split and joined with the keyboard alone, and each
// change is saved by itself.
func TestStepsByKeyboard(t *testing.T) {
	b := newTab(t, laptop, true)
	p := menu()
	p.Dishes[0].Steps[0].Text = "Rub the butter into the flour, add water and form a dough."
	id := b.kept(p).ID
	steps := func() []practical.Step { return b.now(id).Practical.Dishes[0].Steps }
	b.open("/practical/" + id + "/dishes/A")
	// The step in doubt is found right with one press.
	b.focus(`document.querySelector("button[value='sure:A3']")`)
	b.do(chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelector("#doubts li") === null && document.querySelector("#state").textContent.includes("step A3 is right")`)
	if s := steps()[2]; s.Doubt != 0 || s.Hands != p.Dishes[0].Steps[2].Hands {
		t.Errorf("found right: %+v", s)
	}
	field := `document.getElementsByName("dishes[0].steps[0].hands.likely")[0]`
	b.focus(field)
	for range 6 { // 8 to 14, past the high 12
		b.do(chromedp.KeyEvent(kb.ArrowUp))
	}
	b.do(chromedp.KeyEvent(kb.Tab))
	b.until(`document.querySelector("#state").textContent.includes("Step A1, hands")`)
	if got := steps()[0].Hands; got != (practical.Estimate{Low: 6, Likely: 14, High: 19}) {
		t.Errorf("hands %+v", got)
	}
	if got := remembered(b.site); len(got) != 1 || got[0].Words != p.Dishes[0].Steps[0].Text {
		t.Errorf("remembered %+v", got)
	}
	b.focus(field)
	b.do(chromedp.KeyEvent(kb.ArrowDown, chromedp.KeyModifiers(chromedp.ModifierAlt)))
	b.until(`document.querySelector("tr[data-step=A2] .what").textContent.includes("Rub") && document.activeElement.id === "down-A2"`)
	// Open the step by its button, choose a place to cut, split.
	b.focus(`document.getElementById("look-A2")`)
	b.do(chromedp.KeyEvent(kb.Enter))
	b.until(`document.getElementById("cut") !== null`)
	b.focus(`document.getElementById("cut")`)
	b.do(chromedp.KeyEvent(kb.Home), chromedp.KeyEvent(kb.Tab), chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelectorAll("tr[data-step]:not(.open)").length === 4`)
	if s := steps(); len(s) != 5 || s[1].Text != "Rub the butter into the flour," || s[2].Text != "add water and form a dough." {
		t.Errorf("split: %+v", s)
	}
	b.focus(`[...document.querySelectorAll("button[value^=join]")][0]`)
	b.do(chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelectorAll("tr[data-step]:not(.open)").length === 3`)
	if s := steps(); s[1].Text != p.Dishes[0].Steps[0].Text {
		t.Errorf("joined: %q", s[1].Text)
	}
	// Another place asks for other fields: the oven for its temperature.
	eval[bool](b, `((s) => { s.value = "oven"; s.dispatchEvent(new Event("change", {bubbles: true})); return true })(document.getElementsByName("dishes[0].steps[1].wait.place")[0])`)
	b.until(`document.getElementsByName("dishes[0].steps[1].wait.celsius").length === 1`)
}

// A file is dropped on its form and read; of its two recipes one is chosen.
func TestDropAFile(t *testing.T) {
	b := newTab(t, phone, true)
	id := b.kept(menu()).ID
	b.open("/practical/" + id + "/dishes")
	eval[bool](b, `(() => {
		const data = new DataTransfer();
		data.items.add(new File([`+"`"+stew+"\n"+flapjack+"`"+`], "stew.txt", {type: "text/plain"}));
		document.querySelector("[data-drop] .hint").dispatchEvent(new DragEvent("drop", {bubbles: true, cancelable: true, dataTransfer: data}));
		return true;
	})()`)
	b.until(`document.querySelectorAll("[name=take]").length === 2`)
	b.judged("choose", phone, true)
	eval[bool](b, `document.getElementById("take-1").click() || true`)
	eval[bool](b, `document.querySelector("form[action$=chosen] button").click() || true`)
	b.until(`document.querySelector("h1").textContent.includes("Flapjack")`)
}

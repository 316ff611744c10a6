package picture

import (
	"bytes"
	"encoding/xml"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/colour"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

var update = flag.Bool("update", false, "write the golden files anew")

// sheets are the ways of drawing that every test goes through.
var sheets = map[string]Options{
	"page":  {Width: 1000, Rows: true},
	"phone": {Width: 360, ID: "a b\"<"},
	"print": {Width: 720, Rows: true, Print: true},
	"wall":  {Width: 1600, Rows: true, Large: true},
	"grey":  {Width: 640, Grey: true, Bare: true},
	"cream": {Width: 520, Bare: true, Ground: "#FFF9EC"},
}

func TestGolden(t *testing.T) {
	for name, b := range map[string][]byte{
		"page.svg":  Plait(supper(), sheets["page"]),
		"phone.svg": Plait(supper(), sheets["phone"]),
		"clash.svg": Plait(clashing(), sheets["page"]),
		"words.txt": []byte(strings.Join(Words(supper()), "\n") + "\n"),
	} {
		path := "testdata/" + name
		if *update {
			if err := os.MkdirAll("testdata", 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, b, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(b)); diff != "" {
			t.Errorf("%s differs (go test -update writes it anew):\n%.2000s", name, diff)
		}
	}
}

// element is what a test reads of the SVG.
type element struct {
	name       string
	attributes map[string]string
	text       string
}

// read parses the SVG with a parser that is not ours, and fails on what is not well-formed.
func read(t *testing.T, svg []byte) (all []element) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(svg))
	d.Strict = true
	var open []int
	for {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attributes: map[string]string{}}
			for _, a := range token.Attr {
				if _, twice := e.attributes[a.Name.Local]; twice {
					t.Errorf("%s has %s twice", e.name, a.Name.Local)
				}
				e.attributes[a.Name.Local] = a.Value
			}
			open = append(open, len(all))
			all = append(all, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				all[open[len(open)-1]].text += string(token)
			}
		case xml.Comment, xml.Directive, xml.ProcInst:
			t.Errorf("unexpected %T", token)
		}
	}
}

// attributes that the SVG may carry: presentation attributes of SVG 1.1, names and hooks. No style, no links, no handlers.
var allowed = map[string]string{
	"svg":   "xmlns viewBox width height role aria-labelledby font-family fill stroke-linejoin",
	"title": "id", "desc": "id",
	"g":    "class data-row",
	"path": "d fill stroke stroke-width stroke-dasharray stroke-dashoffset stroke-linecap",
	"text": "x y font-size fill font-weight text-anchor transform textLength lengthAdjust",
}

func checkClean(t *testing.T, svg []byte) []element {
	t.Helper()
	all := read(t, svg)
	for _, e := range all {
		names, known := allowed[e.name]
		if !known {
			t.Errorf("element %q", e.name)
		}
		for a := range e.attributes {
			if !strings.Contains(" "+names+" ", " "+a+" ") {
				t.Errorf("%s has attribute %q", e.name, a)
			}
		}
	}
	return all
}

func TestWellFormedAndClean(t *testing.T) {
	plans := map[string]*timeplan.Plan{
		"supper": supper(), "clashing": clashing(), "empty": {}, "sample": timeplantest.Sample(),
		"pair": timeplantest.Pair(), "too much": timeplantest.TooMuch(),
	}
	for seed := range uint64(60) {
		plans[fmt.Sprint("random ", seed)] = randomPlan(seed)
	}
	number := regexp.MustCompile(`\d\.\d\d`)
	for plan, p := range plans {
		for sheet, o := range sheets {
			svg := Plait(p, o)
			all := checkClean(t, svg)
			if len(all) == 0 || all[0].name != "svg" || all[0].attributes["role"] != "img" {
				t.Fatalf("%s %s: no svg with role img", plan, sheet)
			}
			ids := map[string]bool{}
			for _, e := range all {
				for _, key := range []string{"d", "x", "y", "width", "height", "viewBox", "stroke-width", "stroke-dasharray", "transform", "font-size"} {
					if v := e.attributes[key]; number.MatchString(v) || strings.Contains(v, "e+") || strings.Contains(v, "NaN") {
						t.Fatalf("%s %s: %s=%q is not rounded to 0.1", plan, sheet, key, v)
					}
				}
				ids[e.attributes["id"]] = true
			}
			for _, id := range strings.Fields(all[0].attributes["aria-labelledby"]) {
				if !ids[id] {
					t.Errorf("%s %s: aria-labelledby names %q, which is not there", plan, sheet, id)
				}
			}
			if t.Failed() {
				t.Fatalf("%s %s", plan, sheet)
			}
		}
	}
}

func TestHostileTextStaysText(t *testing.T) {
	for _, s := range hostile {
		p := supper()
		p.Title, p.Dishes[0].Name, p.Dishes[0].Letter = s, s, s
		p.Rows[2].Text, p.Rows[2].ID, p.Threads[0].Component = s, s, s
		p.Ovens[0].Words = s
		for _, o := range sheets {
			checkClean(t, Plait(p, o))
		}
	}
	p := supper()
	p.Title = `</title><script>alert("1 & 2")</script>`
	all := read(t, Plait(p, Options{}))
	if want := "Plait of " + p.Title; all[1].name != "title" || all[1].text != want {
		t.Errorf("title = %q, want %q word for word", all[1].text, want)
	}
}

func TestSameBytes(t *testing.T) {
	for name, o := range sheets {
		if !bytes.Equal(Plait(supper(), o), Plait(supper(), o)) {
			t.Errorf("%s: two drawings of one plan differ", name)
		}
	}
	for seed := range uint64(30) {
		if !bytes.Equal(Plait(randomPlan(seed), Options{Rows: true}), Plait(randomPlan(seed), Options{Rows: true})) {
			t.Errorf("random %d: two drawings of one plan differ", seed)
		}
	}
}

func classes(all []element, class string) (found []element) {
	for _, e := range all {
		if e.attributes["class"] == class {
			found = append(found, e)
		}
	}
	return found
}

func TestEveryRowAndThreadIsDrawn(t *testing.T) {
	for name, p := range map[string]*timeplan.Plan{"supper": supper(), "sample": timeplantest.Sample(), "clashing": clashing()} {
		for sheet, o := range sheets {
			all := read(t, Plait(p, o))
			rows := classes(all, "row")
			if len(rows) != len(p.Rows) {
				t.Errorf("%s %s: %d rows drawn, want %d", name, sheet, len(rows), len(p.Rows))
				continue
			}
			for i, r := range rows {
				if r.attributes["data-row"] != p.Rows[i].ID {
					t.Errorf("%s %s: row %d is %q, want %q", name, sheet, i, r.attributes["data-row"], p.Rows[i].ID)
				}
			}
			lines := map[string]bool{} // components that go the same way together are one line
			for _, th := range p.Threads {
				lines[fmt.Sprint(th.Dish, th.From, th.To, th.Place, th.Wait)] = true
			}
			if got := len(classes(all, "strand")); got != len(lines) {
				t.Errorf("%s %s: %d strands drawn, want %d", name, sheet, got, len(lines))
			}
		}
	}
}

func TestClashIsMarked(t *testing.T) {
	if n := len(classes(read(t, Plait(supper(), Options{})), "clash")); n != 0 {
		t.Errorf("%d clashes in a plan without any", n)
	}
	if n := len(classes(read(t, Plait(timeplantest.Pair(), Options{})), "clash")); n != 0 {
		t.Errorf("%d clashes between two cooks", n)
	}
	// Plums 10:09 to 10:14, bread 10:12 to 10:19, plums on to stew 10:14 to 10:15: two overlaps.
	all := read(t, Plait(clashing(), Options{}))
	if n := len(classes(all, "clash")); n != 2 {
		t.Errorf("%d clashes, want 2", n)
	}
	if f := newFrame(clashing(), Options{}); f.hands != 2 {
		t.Errorf("the rows of a clash stand in %d columns, want 2 side by side", f.hands)
	}
}

func TestWaitsSayUntilWhen(t *testing.T) {
	for sheet, o := range sheets {
		p := supper()
		d := Draw(p, o)
		said := map[string]bool{}
		for _, m := range d.Marks {
			for _, w := range p.Waits {
				if m.Kind == Text && strings.HasSuffix(m.Text, w.Until.String()) {
					said[w.Until.String()] = true
				}
			}
		}
		for _, w := range p.Waits {
			if !said[w.Until.String()] {
				t.Errorf("%s: no tag says %s", sheet, w.Until)
			}
		}
	}
}

func TestOvenLaneCarriesItsSettings(t *testing.T) {
	d := Draw(supper(), Options{Width: 900})
	for _, s := range supper().Ovens {
		found := false
		for _, m := range d.Marks {
			if m.Kind == Text && m.Turn == 90 && strings.HasPrefix(m.Text, fmt.Sprint(s.Celsius)) {
				found = true
			}
		}
		if !found {
			t.Errorf("the oven lane does not say %d °C", s.Celsius)
		}
	}
}

func TestGreyHasNoColour(t *testing.T) {
	hex := regexp.MustCompile(`#([0-9A-F]{2})([0-9A-F]{2})([0-9A-F]{2})`)
	found := hex.FindAllSubmatch(Plait(supper(), Options{Grey: true}), -1)
	if len(found) < 100 {
		t.Fatalf("only %d colours in the drawing", len(found))
	}
	for _, m := range found {
		if !bytes.Equal(m[1], m[2]) || !bytes.Equal(m[2], m[3]) {
			t.Errorf("%s is not grey", m[0])
		}
	}
}

// Every text against what was painted last under it. WCAG 2.2, criterion 1.4.3: 4.5.
func TestTextContrast(t *testing.T) {
	for sheet, o := range sheets {
		for _, p := range []*timeplan.Plan{supper(), clashing(), timeplantest.Sample(), timeplantest.Pair(), timeplantest.TooMuch()} {
			texts := 0
			d := Draw(p, o)
			boxes := make([]flat, len(d.Marks))
			for i, m := range d.Marks {
				boxes[i] = flatten(m.Path)
			}
			for i, m := range d.Marks {
				if m.Kind != Text || m.Text == "" {
					continue
				}
				texts++
				x, y := m.X, m.Y-0.35*m.Size
				if m.Turn == 90 {
					x, y = m.X+0.35*m.Size, m.Y+m.Size
				}
				under := ""
				for j, b := range d.Marks[:i] {
					f := boxes[j]
					if b.Kind == Figure && b.Fill != "" && x >= f.left && x <= f.right && y >= f.top && y <= f.bottom {
						under = b.Fill
					}
				}
				if got := colour.Contrast(m.Fill, under); got < 4.5 {
					t.Errorf("%s: %q %s on %s has %.2f, want 4.5", sheet, m.Text, m.Fill, under, got)
				}
				if got := colour.Contrast(colour.Grey(m.Fill), colour.Grey(under)); got < 4.4 { // 8-bit rounding of grey
					t.Errorf("%s in grey: %q on %s has %.2f", sheet, m.Text, under, got)
				}
			}
			if texts < len(p.Rows) {
				t.Errorf("%s: only %d texts", sheet, texts)
			}
		}
	}
}

// Strands against every ground they can cross. WCAG 2.2, criterion 1.4.11: 3.
func TestStrandContrast(t *testing.T) {
	for i := range colour.Inks {
		for _, under := range []string{colour.Paper, lit, unlit, warmth, ramp, restful} {
			if got := colour.Contrast(colour.Ink(i).Line, under); got < 3 {
				t.Errorf("%s on %s has %.2f, want 3", colour.Ink(i).Name, under, got)
			}
		}
	}
	for _, under := range []string{warmth, ramp} {
		if got := colour.Contrast(settingInk, under); got < 4.5 {
			t.Errorf("setting on %s has %.2f, want 4.5", under, got)
		}
	}
}

func TestShort(t *testing.T) {
	for in, want := range map[float64]string{
		0: "0", 1: "1", 0.04: "0", -0.04: "0", 0.05: "0.1", 12.34: "12.3", 12.96: "13", -3.25: "-3.3", 1000000.5: "1000000.5",
		math.NaN(): "0", math.Inf(1): "0", 1e300: "0",
	} {
		if got := short(in); got != want {
			t.Errorf("short(%v) = %q, want %q", in, got, want)
		}
	}
}

func TestGround(t *testing.T) {
	for in, want := range map[string]string{"": "#FFFFFF", "#fff9ec": "#FFF9EC", "#000000": "#FFFFFF", "red": "#FFFFFF", `#FFF"/>`: "#FFFFFF"} {
		d := Draw(supper(), Options{Ground: in})
		if got := d.Marks[0].Fill; got != want {
			t.Errorf("Ground %q gives %s, want %s", in, got, want)
		}
	}
}

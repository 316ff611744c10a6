package paper

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"

	"plait.example/internal/colour"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

func page(t *testing.T, p *timeplan.Plan, s Sheet) *goquery.Document {
	t.Helper()
	b, err := HTML(p, s)
	if err != nil {
		t.Fatal(err)
	}
	d, err := goquery.NewDocumentFromReader(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestHTML holds the page less its fonts and its plait.
func TestHTML(t *testing.T) {
	for name, p := range samples() {
		b, err := HTML(p, Sheet{Name: "Sam O."})
		if err != nil {
			t.Fatal(err)
		}
		b = regexp.MustCompile(`base64,[^)]*`).ReplaceAll(b, []byte("base64,..."))
		b = regexp.MustCompile(`(?s)<figure>.*</figure>`).ReplaceAll(b, []byte("<figure>...</figure>"))
		golden(t, name+".html", b)
	}
}

// TestHTMLTable: the table is a table to machines as well: caption, heads with
// scope, one row a row, the time as the row's head.
func TestHTMLTable(t *testing.T) {
	for name, s := range sheets {
		p := timeplantest.Sample()
		d := page(t, p, s)
		columns := len(layoutOf(s).withoutStrip().columns)
		for selector, want := range map[string]int{
			"html[lang=en-GB]": 1, "head title": 1, "h1": 1, "main table": 1, "caption": 1,
			"thead tr": 1, "thead th[scope=col]": columns, "tbody": 2, "tbody th[scope=rowgroup]": 2,
			"tbody th[scope=row]": len(p.Rows), "tbody td": (columns - 1) * len(p.Rows),
			".key li": 3, "figure ol li": d.Find("figure ol li").Length(), "script": 0, "link": 0, "img": 0,
		} {
			if got := d.Find(selector).Length(); got != want {
				t.Errorf("%s: %d of %s, want %d", name, got, selector, want)
			}
		}
		if d.Find("figure ol li").Length() < len(p.Rows) {
			t.Errorf("%s: the plait is told in %d lines", name, d.Find("figure ol li").Length())
		}
	}
}

// TestHTMLStandsAlone: nothing is fetched: every address is inside the file.
func TestHTMLStandsAlone(t *testing.T) {
	b, _ := HTML(timeplantest.Sample(), Sheet{})
	for _, m := range regexp.MustCompile(`(?:src|href|action|srcset|url|@import)\s*[=(]\s*["']?([^"')\s>]*)`).FindAllSubmatch(b, -1) {
		if !bytes.HasPrefix(m[1], []byte("data:")) && !bytes.HasPrefix(m[1], []byte("#")) {
			t.Errorf("refers to %.60s", m[1])
		}
	}
}

// TestHTMLPrints: what makes the page print as it should. Chromium's own print is looked at by eye.
func TestHTMLPrints(t *testing.T) {
	for _, s := range sheets {
		b, _ := HTML(timeplantest.Sample(), s)
		side := "portrait"
		if s.Landscape {
			side = "landscape"
		}
		for _, rule := range []string{
			"@page{size:A4 " + side, `counter(page) " of " counter(pages)`,
			"thead { display: table-header-group; }", "tr { break-inside: avoid; }",
			fmt.Sprintf("--text:%gpt", layoutOf(s).text), "print-color-adjust: exact",
		} {
			if !bytes.Contains(b, []byte(rule)) {
				t.Errorf("%+v: no %s", s, rule)
			}
		}
	}
}

// TestHTMLInjection: words of a plan never become marks of the page.
func TestHTMLInjection(t *testing.T) {
	const bad = `"><script>alert(1)</script></style><!--`
	p := timeplantest.Pair()
	p.Title, p.Notes = bad, []string{bad}
	p.Dishes[0].Letter, p.Dishes[0].Name, p.Dishes[0].Allergens = bad, bad, []string{bad}
	p.Rows[2].Dish = bad
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Text, r.Kit, r.Check, r.Safety, r.Setting, r.ID = bad, bad, bad, bad, bad, bad
	}
	p.Conflict = []timeplan.Demand{{Text: bad}}
	p.WaysOut = []timeplan.WayOut{{Text: bad}}
	d := page(t, p, Sheet{Name: bad})
	if n := d.Find("script").Length(); n != 0 {
		t.Errorf("%d scripts", n)
	}
	if got := d.Find("h1").Text(); got != bad {
		t.Errorf("title %q", got)
	}
	if n := d.Find("table tbody th[scope=row]").Length(); n != len(p.Rows) {
		t.Errorf("%d rows of %d", n, len(p.Rows))
	}
}

// TestPairsOnPaper: a put-in says when it comes out and the take-out says since
// when it is in, with the very times of each other's rows.
func TestPairsOnPaper(t *testing.T) {
	d := page(t, timeplantest.Sample(), Sheet{})
	in, out := map[string]string{}, map[string]string{}
	d.Find("tbody tr").Each(func(_ int, row *goquery.Selection) {
		at := row.Find("th.time").Text()
		if due, ok := strings.CutPrefix(row.Find(".due").Text(), "out at "); ok {
			in[at[:5]] = strings.TrimSpace(strings.ReplaceAll(due, "out at", ""))
		} else if due := row.Find(".due").Text(); due != "" {
			in[at[:5]] = due[len(due)-5:]
		}
		if since := row.Find(".since").Text(); since != "" {
			out[at[:5]] = since[len(since)-5:]
		}
	})
	if len(in) != 13 || len(out) != 13 {
		t.Fatalf("%d put-ins, %d take-outs; want 13 each", len(in), len(out))
	}
	for put, due := range in {
		if out[due] != put {
			t.Errorf("in at %s and due at %s, where the row says in since %q", put, due, out[due])
		}
	}
}

// TestInkOnPaper: words and marks of every dish keep the contrast of WCAG 2.2
// (1.4.3: 4.5 for words; 1.4.11: 3 for marks), also as a grey photocopier sees them.
func TestInkOnPaper(t *testing.T) {
	for i := range 8 {
		ink := colour.Ink(i)
		for _, see := range []func(string) string{func(s string) string { return s }, colour.Grey} {
			if c := colour.Contrast(see(ink.Text), see(ink.Tint)); c < 4.5 {
				t.Errorf("dish %d: words on tint %.2f", i, c)
			}
			if c := colour.Contrast(see(ink.On), see(ink.Line)); c < 4.5 {
				t.Errorf("dish %d: letter on mark %.2f", i, c)
			}
			if c := colour.Contrast(see(ink.Line), see(ink.Tint)); c < 3 {
				t.Errorf("dish %d: mark on tint %.2f", i, c)
			}
		}
	}
	for _, ink := range []string{inkText, inkSoft} {
		if c := colour.Contrast(ink, inkPale); c < 7 {
			t.Errorf("%s on the band: %.2f", ink, c)
		}
	}
}

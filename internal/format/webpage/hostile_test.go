package webpage_test

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"plait.example/internal/format/webpage"
)

func TestLimits(t *testing.T) {
	for _, c := range []struct {
		name, source string
		want         error
	}{
		{"bytes", strings.Repeat(" ", webpage.MaxBytes+1), webpage.ErrTooLarge},
		{"elements", strings.Repeat("<p>", webpage.MaxElements+1), webpage.ErrTooLarge},
		{"depth", strings.Repeat("<div>", webpage.MaxDepth+1), webpage.ErrTooDeep},
	} {
		t.Run(c.name, func(t *testing.T) {
			page, err := webpage.Read([]byte(c.source))
			if !errors.Is(err, c.want) || page.Text != "" || !strings.Contains(err.Error(), ";") {
				t.Errorf("%v", err)
			}
		})
	}
	page := read(t, strings.Repeat("<div>", webpage.MaxDepth-1)+"deep")
	if page.Text != "deep" {
		t.Errorf("at the limit: %q", page.Text)
	}
}

// Pages that cost a browser's tree builder copies of elements, and items that
// name one another, are read in one pass and end.
func TestPagesThatGrow(t *testing.T) {
	formatting := strings.Repeat("<p><b><i><u><s><tt>x", 30_000)
	if text := read(t, formatting).Text; strings.Count(text, "x") != 30_000 {
		t.Errorf("%d of 30000 paragraphs", strings.Count(text, "x"))
	}
	ring := strings.Repeat(`<div id=a itemscope itemtype=Recipe itemref="a b"></div><div id=b itemprop=x itemscope itemref="a b a b"></div>`, 200)
	read(t, ring)
	read(t, `<script type="application/ld+json">`+strings.Repeat("[", 1_000_000)+`</script><p>after`)
	read(t, `<script type="application/ld+json">{"@type":"Recipe","recipeInstructions":`+strings.Repeat(`{"itemListElement":[`, 4000)+strings.Repeat(`]}`, 4000)+`}</script>`)
}

func FuzzRead(f *testing.F) {
	f.Add(tart(f))
	for _, name := range []string{"recipe.jsonld", "recipe.microdata.html", "recipe.rdfa.html", "howto.jsonld", "howto.microdata.html"} {
		f.Add(example(f, name))
	}
	f.Add([]byte(`<table><tr><td><table><tr><td>a</table><li>b</ol></td></tr><sup>1`))
	f.Fuzz(func(t *testing.T, data []byte) {
		page, err := webpage.Read(data)
		if err != nil && (page.Text != "" || len(page.Recipes) > 0) {
			t.Errorf("%v, and yet %q", err, page.Text)
		}
		if !utf8.ValidString(page.Text) || !utf8.ValidString(page.Title) {
			t.Errorf("%q %q are not clean text", page.Title, page.Text)
		}
	})
}

func FuzzParseDuration(f *testing.F) {
	for _, s := range []string{"PT1H30M", "P2W", "P0000-00-01T02:30:00", "PT0,5H", "P1M"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if d, err := webpage.ParseDuration(s); d < 0 || err != nil && d != 0 {
			t.Errorf("%q: %v %v", s, d, err)
		}
	})
}

func BenchmarkRead(b *testing.B) {
	page := tart(b)
	b.SetBytes(int64(len(page)))
	for b.Loop() {
		if p, err := webpage.Read(page); err != nil || len(p.Recipes) != 1 {
			b.Fatal(err)
		}
	}
}

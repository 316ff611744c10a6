package packed_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/packed"
)

func pack(t testing.TB, files ...string) packed.Pack {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for i := 0; i < len(files); i += 2 {
		w, err := z.Create(files[i])
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(files[i+1])); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	p, err := packed.Open(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Targets are relative to the part that names them, or begin at the root
// (ECMA-376 part 2, 9.3); those to the outside are left alone.
func TestRelations(t *testing.T) {
	p := pack(t, "_rels/.rels", `<Relationships><Relationship Type="x/officeDocument" Target="/a/../b/main.xml"/></Relationships>`,
		"b/main.xml", "<m/>", "b/_rels/main.xml.rels", `<Relationships><Relationship Id="1" Type="x/y/styles" Target="s.xml"/><Relationship Id="2" Type="theme" Target="/t/t.xml"/>`+
			`<Relationship Id="3" Type="x/link" Target="http://example.org/" TargetMode="External"/><Relationship Id="4" Type="x/up" Target="../../../etc/passwd"/></Relationships>`)
	name, err := p.Main("usual.xml")
	if name != "b/main.xml" || err != nil {
		t.Error(name, err)
	}
	got, err := p.Related(name)
	want := map[string]packed.Relation{"1": {Type: "styles", Part: "b/s.xml"}, "2": {Type: "theme", Part: "t/t.xml"}, "4": {Type: "up", Part: "etc/passwd"}}
	if diff := cmp.Diff(want, got); diff != "" || err != nil {
		t.Error(err, diff)
	}
	if name, err := pack(t).Main("usual.xml"); name != "usual.xml" || err != nil {
		t.Error(name, err)
	}
	if e, err := p.Part("no.xml"); e != nil || err != nil || p.Has("no.xml") || !p.Has("b/main.xml") || len(p.Files()) != 3 {
		t.Error("parts that are not there")
	}
}

// Where elements stand, in bytes, and what text is kept.
func TestSpans(t *testing.T) {
	const source = "\n<a x='1'>not <p k=\"v\" >kept <b/>&amp; in</p ><c/></a>"
	root, err := packed.Parse([]byte(source), "p")
	if err != nil {
		t.Fatal(err)
	}
	p, c := root.Child("p"), root.Child("c")
	if got := source[p.At.From:p.At.To]; got != `<p k="v" >kept <b/>&amp; in</p >` {
		t.Error(got)
	}
	if got := source[p.At.Inside:p.At.Stop]; got != `kept <b/>&amp; in` || p.Content() != "kept & in" || root.Content() != "" {
		t.Error(got)
	}
	if source[c.At.From:c.At.To] != "<c/>" || c.At.Inside != c.At.To || c.At.Stop != c.At.To {
		t.Errorf("%+v", c.At)
	}
	var none *packed.Element
	if root.Attr("x") != "1" || none.Child("a").Path("b", "c").Attr("d") != "" || none.Content() != "" || none.All() != nil || none.On("a") {
		t.Error("what is not there")
	}
}

func TestRefusals(t *testing.T) {
	for source, want := range map[string]string{
		"": "empty", "<a>": "EOF", `<!DOCTYPE a><a/>`: "document type", `<?xml version="1.0" encoding="utf-16"?><a/>`: "not in UTF-8", "<a>&b;</a>": "entity",
		strings.Repeat("<a>", packed.MaxDepth+1): "nested more than", strings.Repeat("<a/>", packed.MaxElements+1): "more than 1000000 elements",
		"<p>" + strings.Repeat("a<!---->", packed.MaxElements) + "</p>": "pieces",
	} {
		_, err := packed.Parse([]byte(source), "p")
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.30q: %v, want %s", source, err, want)
		}
	}
	if _, err := packed.Open([]byte("Dear all")); !errors.Is(err, packed.ErrNotZip) {
		t.Error(err)
	}
}

package store

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestKept(t *testing.T) {
	dir := t.TempDir()
	s := mustOpen(t, dir)
	ctx := t.Context()
	keep := func(teacher, kind string, put map[string]string, take ...string) {
		t.Helper()
		if err := s.Keep(ctx, teacher, kind, put, take, noon); err != nil {
			t.Fatal(err)
		}
	}
	keep("a", "correction", map[string]string{"knead 8 min": "one", "é 'quoted'": "two\nlines", "": ""})
	keep("a", "correction", map[string]string{"knead 8 min": "three"}, "", "never there")
	keep("a", "techniques", map[string]string{"": "table"})
	keep("b", "correction", map[string]string{"knead 8 min": "of another teacher"})
	for _, c := range []struct {
		teacher, kind string
		want          map[string]string
	}{
		{"a", "correction", map[string]string{"knead 8 min": "three", "é 'quoted'": "two\nlines"}},
		{"a", "techniques", map[string]string{"": "table"}},
		{"b", "correction", map[string]string{"knead 8 min": "of another teacher"}},
		{"b", "techniques", map[string]string{}},
	} {
		got, err := s.Kept(ctx, c.teacher, c.kind)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s, %s (-want +got):\n%s", c.teacher, c.kind, diff)
		}
	}
}

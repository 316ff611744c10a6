package store

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// What is handed in comes back as it was, with what the teacher said of its rows.
func TestHandedIn(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	r := mustCreate(t, s, "Soup")
	files := []timeplan.HandedIn{{Name: "sam.docx", Data: []byte{0, 1, 255}}, {Name: "empty.txt"}}
	if err := s.HandIn(t.Context(), r.ID, files, noon); err != nil {
		t.Fatal(err)
	}
	if err := s.Fix(t.Context(), r.ID, 1, map[int][]string{3: {"A1", "A2"}, 4: {}}); err != nil {
		t.Fatal(err)
	}
	if err := s.PutAway(t.Context(), r.ID, 2, true); err != nil {
		t.Fatal(err)
	}
	got, err := s.HandedIn(t.Context(), r.ID)
	if err != nil {
		t.Fatal(err)
	}
	want := []timeplan.HandedIn{
		{ID: 1, Name: "sam.docx", Data: []byte{0, 1, 255}, At: noon, Fixed: map[int][]string{3: {"A1", "A2"}, 4: {}}},
		{ID: 2, Name: "empty.txt", At: noon, Fixed: map[int][]string{}, Away: true},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestHandedInNowhere(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	r := mustCreate(t, s, "Soup")
	other := mustCreate(t, s, "Bread")
	if err := s.HandIn(t.Context(), r.ID, []timeplan.HandedIn{{Name: "sam.txt"}}, noon); err != nil {
		t.Fatal(err)
	}
	for what, err := range map[string]error{
		"handed in for no practical": s.HandIn(t.Context(), "nothing", []timeplan.HandedIn{{Name: "a"}}, noon),
		"fixed in no plan":           s.Fix(t.Context(), r.ID, 9, nil),
		"fixed in another's plan":    s.Fix(t.Context(), other.ID, 1, nil),
		"no plan put away":           s.PutAway(t.Context(), r.ID, 9, true),
	} {
		if f, is := errors.AsType[practical.Fault](err); !is || f.Code != practical.NotFound {
			t.Errorf("%s: %v", what, err)
		}
	}
	if all, err := s.HandedIn(t.Context(), "nothing"); err != nil || len(all) != 0 {
		t.Errorf("%v, %v", all, err)
	}
}

package store

import (
	"bytes"
	"errors"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// What is handed in comes back as it was, with what the teacher said of its rows.
func TestHandedIn(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	r := mustCreate(t, s, "Soup")
	files := []timeplan.HandedIn{{Name: "sam.docx", Data: []byte{0, 1, 255}}, {Name: "empty.txt"}}
	if n, err := s.HandIn(t.Context(), r.ID, files, noon); err != nil || n != 2 {
		t.Fatal(n, err)
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
		{ID: 1, Name: "sam.docx", At: noon, Fixed: map[int][]string{3: {"A1", "A2"}, 4: {}}},
		{ID: 2, Name: "empty.txt", At: noon, Fixed: map[int][]string{}, Away: true},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if data, err := s.HandedData(t.Context(), r.ID, 1); err != nil || !bytes.Equal(data, files[0].Data) {
		t.Errorf("%v, %v", data, err)
	}
}

// What is handed in again because a part of it failed is kept once; a pupil who
// goes back to an earlier plan has handed in another.
func TestHandedInTwice(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	r := mustCreate(t, s, "Soup")
	one, two := timeplan.HandedIn{Name: "plan.docx", Data: []byte("one")}, timeplan.HandedIn{Name: "plan.docx", Data: []byte("two")}
	other := timeplan.HandedIn{Name: "kim.docx", Data: []byte("one")}
	for i, c := range []struct {
		files []timeplan.HandedIn
		after int // minutes
		want  int
	}{
		{[]timeplan.HandedIn{one, two}, 0, 2}, // two pupils' folders
		{[]timeplan.HandedIn{one, two, other}, 1, 1},
		{[]timeplan.HandedIn{two}, 2, 0},
		{[]timeplan.HandedIn{{Name: "plan.docx", Data: []byte("three")}, one}, 3, 1},
		{[]timeplan.HandedIn{one}, 4, 1}, // back to the plan before
	} {
		if n, err := s.HandIn(t.Context(), r.ID, c.files, noon.Add(time.Duration(c.after)*time.Minute)); err != nil || n != c.want {
			t.Errorf("time %d: %d new of %d, %v; want %d", i+1, n, len(c.files), err, c.want)
		}
	}
	if err := s.PutAway(t.Context(), r.ID, 5, true); err != nil {
		t.Fatal(err)
	}
	if n, err := s.HandIn(t.Context(), r.ID, []timeplan.HandedIn{one}, noon.Add(time.Hour)); err != nil || n != 0 {
		t.Errorf("%d new, %v", n, err)
	}
	if all, err := s.HandedIn(t.Context(), r.ID); err != nil || len(all) != 5 || all[4].Away {
		t.Errorf("%+v, %v: what was put away is not back", all, err)
	}
}

func TestHandedInNowhere(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	r := mustCreate(t, s, "Soup")
	other := mustCreate(t, s, "Bread")
	if _, err := s.HandIn(t.Context(), r.ID, []timeplan.HandedIn{{Name: "sam.txt"}}, noon); err != nil {
		t.Fatal(err)
	}
	_, nowhere := s.HandIn(t.Context(), "nothing", []timeplan.HandedIn{{Name: "a"}}, noon)
	_, noFile := s.HandedData(t.Context(), other.ID, 1)
	for what, err := range map[string]error{
		"handed in for no practical": nowhere,
		"the file of another's plan": noFile,
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

package practical_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"plait.example/internal/practical"
	"plait.example/internal/practical/practicaltest"
)

func TestWriteThenParseIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := practicaltest.Practical(t)
		text, err := practical.Write(p)
		if err != nil {
			t.Fatal(err)
		}
		again, faults := practical.Parse("written.yaml", text)
		if len(faults) > 0 {
			t.Fatalf("%v\n%s", faults, text)
		}
		if diff := cmp.Diff(p, again, cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("%s\n%s", diff, text)
		}
	})
}

func TestRandomPracticalsAreReady(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := practicaltest.Practical(t)
		if faults := append(p.Validate(), p.Ready()...); len(faults) > 0 {
			t.Fatal(faults)
		}
	})
}

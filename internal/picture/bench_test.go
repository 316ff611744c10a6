package picture

import (
	"testing"

	"plait.example/internal/timeplan/timeplantest"
)

func BenchmarkPlait(b *testing.B) {
	p := timeplantest.Sample()
	if len(Plait(p, Options{Rows: true})) < 10_000 {
		b.Fatal("hardly anything is drawn")
	}
	for b.Loop() {
		Plait(p, Options{Width: 1000, Rows: true})
	}
}

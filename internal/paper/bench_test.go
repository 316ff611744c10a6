package paper

import (
	"testing"

	"plait.example/internal/timeplan/timeplantest"
)

// The benchmarks write the three dishes' plan; each checks that something was written.

func BenchmarkText(b *testing.B) {
	p := timeplantest.Sample()
	for b.Loop() {
		if len(Text(p)) < 1000 {
			b.Fatal("hardly any text")
		}
	}
}

func BenchmarkHTML(b *testing.B) {
	p := timeplantest.Sample()
	for b.Loop() {
		if h, err := HTML(p, Sheet{}); err != nil || len(h) < 10000 {
			b.Fatal(len(h), err)
		}
	}
}

func BenchmarkPDF(b *testing.B) {
	p := timeplantest.Sample()
	for b.Loop() {
		if f, err := PDF(p, Sheet{Landscape: true}); err != nil || len(f) < 10000 {
			b.Fatal(len(f), err)
		}
	}
}

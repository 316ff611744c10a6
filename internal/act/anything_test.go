package act

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// Whatever a row says, its acts lie inside it, in order, with figures that can be.
func TestAnythingCanBeRead(t *testing.T) {
	pieces := []string{
		"put", "take", "out", "oven", "in", "the", "180", "°C", "C", "fan", "gas", "4", "1/2", "½", "20", "mins", "-", "25", "hour", ",", ".", ";", "\n", "and", "then", "don't", "not", "while", "until", "before",
		"leave", "to", "cool", "set", "cream", "butter", "egg wash", "wash", "hands", "up", "chopped", "onions", "é", "日本", "🥧", "(", ")", "/", "mark", "999999999999", "0", ".5", "’", "", "to boil", "get ready", "on", "off", "with", "a", "is", "for",
	}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 14).Draw(t, "row"), rapid.SampledFrom([]string{" ", "", "  "}).Draw(t, "between"))
		inside(t, text)
	})
	rapid.Check(t, func(t *rapid.T) { inside(t, rapid.String().Draw(t, "row")) })
}

func inside(t *rapid.T, text string) {
	acts := Read(text)
	last := 0
	for _, a := range acts {
		if a.Start < last || a.End < a.Start || a.End > len(text) || utf8.ValidString(text) && !utf8.ValidString(text[a.Start:a.End]) {
			t.Fatalf("%q: act %+v", text, a)
		}
		if a.Least < 0 || a.Most < a.Least || a.Most > maxMinutes || a.Kind == "" {
			t.Fatalf("%q: act %+v", text, a)
		}
		last = a.Start
	}
	for _, h := range Heats(text) {
		if !strings.Contains(text, h.Written) || h.Scale != Words && (h.Celsius < celsiusLeast || h.Celsius > 330) {
			t.Fatalf("%q: heat %+v", text, h)
		}
	}
	if again := Read(text); !reflect.DeepEqual(acts, again) {
		t.Fatalf("%q is read differently a second time", text)
	}
}

func ExampleRead() {
	for _, a := range Read("Take out buns, leave to cool 20 mins and whip cream. Do not open the oven") {
		fmt.Println(a.Kind, a.Least)
	}
	// Output:
	// take-out 0
	// cool 20
	// mix 0
}

func BenchmarkRead(b *testing.B) {
	for b.Loop() {
		if len(Read("Take out buns, leave to cool and whip cream; wisk egs then put quiche in oven at 180C for 35 mins")) < 4 {
			b.Fatal("acts are missing")
		}
	}
}

package practical_test

import (
	"testing"

	"pgregory.net/rapid"

	"plait.example/internal/practical"
)

// TestAnythingIsJudged holds that no value whatever makes the rules of form
// panic, and that every fault says what was wrong and what would be right.
func TestAnythingIsJudged(t *testing.T) {
	anything := rapid.Make[practical.Practical]()
	rapid.Check(t, func(t *rapid.T) {
		p := anything.Draw(t, "practical")
		for _, f := range append(p.Validate(), p.Ready()...) {
			if f.Field == "" || f.Message == "" || f.Hint == "" || f.Code == "" {
				t.Fatalf("a fault without words: %+v", f)
			}
		}
		p.Rows()
		p.Kitchen.Setting(rapid.IntRange(-1000, 1000).Draw(t, "celsius"))
		for i := range p.Dishes {
			p.Rules.OutOfSetUp(&p.Dishes[i])
		}
		for _, o := range p.Kitchen.Ovens {
			o.HeatMinutes(practical.ColdOven, 200)
		}
		if text, err := practical.Write(&p); err == nil {
			practical.Parse("p.yaml", text)
		}
	})
}

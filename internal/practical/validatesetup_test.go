package practical

import (
	"slices"
	"testing"
)

func TestVerbsOf(t *testing.T) {
	for text, want := range map[string][]string{
		"Weigh the flour": {"weigh"},
		"Weighing flour, sugar and butter; line the tin": {"weigh", "sugar", "butter", "line"},
		"Heat the oven. Then grease a tray!":             {"heat", "grease"},
		"":                                               nil,
		"and then":                                       nil,
	} {
		if got := verbsOf(text); !slices.Equal(got, want) {
			t.Errorf("verbsOf(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestNotInSetUp(t *testing.T) {
	rules := threeInThree().Rules
	lit := rules
	lit.OvenInSetUp = true
	for _, tt := range []struct {
		rules Rules
		text  string
		want  string
	}{
		{rules, "Weigh flour, cream and bread", ""},
		{rules, "Grease the tin and line it", ""},
		{rules, "Peel the potatoes", "peel"},
		{rules, "Wash, peel and weigh the potatoes", "peel"},
		{rules, "Weigh the nuts then chop them", "chop"},
		{rules, "Weigh chopped nuts and grated cheese", ""},
		{rules, "Heat the oven to 180 °C and grease a tin", "heat"},
		{lit, "Heat the oven to 180 °C and grease a tin", ""},
		{threeCourses().Rules, "Weigh the flour", "weigh"},
		{rules, "", ""},
	} {
		if got := tt.rules.NotInSetUp(tt.text); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.text, got, tt.want)
		}
	}
}

func TestOutOfSetUp(t *testing.T) {
	p := small()
	p.Dishes[0].Steps = []Step{
		{ID: "A1", Text: "Weigh the flour", Hands: Around(5), SetUp: true},
		{ID: "A2", Text: "Preheat the oven and flour a tray", Hands: Around(2), SetUp: true},
		{ID: "A3", Text: "Rub in", Hands: Around(5), After: []After{{Step: "A2"}}},
		{ID: "A4", Text: "Line a tin", Hands: Around(5), SetUp: true, After: []After{{Step: "A1"}}},
		{ID: "A5", Text: "Grease a tin", Hands: Around(5), SetUp: true, After: []After{{Step: "A3"}}},
	}
	p.Rules.OutOfSetUp(&p.Dishes[0])
	var got []bool
	for _, s := range p.Dishes[0].Steps {
		got = append(got, s.SetUp)
	}
	if want := []bool{true, false, false, true, false}; !slices.Equal(got, want) {
		t.Errorf("in set-up %v, want %v", got, want)
	}
	if faults := p.Validate(); len(faults) > 0 {
		t.Error(faults)
	}
}

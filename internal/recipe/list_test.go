package recipe

import (
	"strings"
	"testing"
)

// TestListLines: what stands among the ingredients and is none. Invented.
func TestListLines(t *testing.T) {
	r := Read("Bites\n\nIngredients\n- For the sauce\n- 50 g butter\n- Salt\n- For the bites:\n- 12 slices of bread\n- I find that cheese which is grated at home melts better than any other.\n- Oil for frying\n- For frying\n\nMethod\n1. Melt the butter.\n2. Grill the bread for 5 minutes.\n")[0]
	var got []string
	for _, ing := range r.Ingredients {
		got = append(got, ing.Component+"|"+ing.Name)
	}
	if want := "sauce|butter;sauce|Salt;bites|bread;bites|Oil;bites|For frying"; strings.Join(got, ";") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, ";"), want)
	}
	if !strings.Contains(strings.Join(r.Unread, "\n"), "I find that cheese") {
		t.Errorf("the sentence is lost: %q", r.Unread)
	}
}

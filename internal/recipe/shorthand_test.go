package recipe

import (
	"fmt"
	"strings"
	"testing"
)

// TestShorthand: what people leave out. Wanted: minutes of each step with the
// place of a wait, or "-" for work without a stated time. Invented.
func TestShorthand(t *testing.T) {
	for method, want := range map[string]string{
		// each thing its own time
		"Heat the oil in a pan. Cumin seeds 1 min, onion 8 min, garlic 2 min.": "1 8 2",
		// settings after a comma
		"Put the rice in a pan with water, boil, lid on, low 10 min, off 5 min.": "- 10-10hob 5-0side",
		// a time before the work
		"10 min: Mix the flour and water, then knead until smooth.\n45 min: Leave it in a warm place.\n": "10 45-56warm",
		// a time after the work
		"Roll out the dough, cut circles and fill them. Allow 40 minutes.": "40",
		// batches said afterwards
		"Heat the oil and fry for 2 minutes. Do this in 2 batches.": "4",
		// times of day number the steps
		"9.00 Put the sausages in the tin. Bake at 200C for 15 mins.\n9.05 Whisk the eggs.\n9.30 Fry the onion for 5 mins.\n": "- 15-15oven - 5",
		// an alternative is not added
		"Put the lid on the pan. Low 8-9 hours, or High 5 hours.": "- 480-540hob",
	} {
		text := "Dish\n\n2 eggs\n1 onion\n200 g rice\n\nMethod\n" + method
		all := Read(text)
		checkRecipes(t, text, all)
		var got []string
		for _, s := range all[0].Steps {
			switch {
			case s.Wait != nil && !saysMinutes(s):
				got = append(got, string(s.Wait.Place))
			case s.Wait != nil:
				got = append(got, fmt.Sprintf("%d-%d%s", s.Wait.Least, s.Wait.Most, s.Wait.Place))
			case saysMinutes(s):
				got = append(got, fmt.Sprint(s.Hands.Low))
			default:
				got = append(got, "-")
			}
		}
		if g := strings.Join(got, " "); g != want {
			t.Errorf("%q: got %s, want %s", method, g, want)
		}
	}
}

// TestPastTense: what was done reads like what is to be done. Invented.
func TestPastTense(t *testing.T) {
	past := "First we turned the oven on to 190C. We cut the onion and roasted it for 25 minutes. While it was roasting we melted the butter, stirred in the flour and cooked it for 1 minute. Then I left it to cool for 10 minutes.\n"
	text := "Dish\n\n1 onion\n20 g butter\n20 g flour\n\nMethod\n" + past
	r := Read(text)[0]
	var waits, hands int
	for _, s := range r.Steps {
		if s.Wait != nil {
			waits += s.Wait.Least
		} else if saysMinutes(s) {
			hands += s.Hands.Low
		}
	}
	if waits != 35 || hands != 1 || r.Steps[0].ID != OvenStep {
		t.Errorf("waits %d, hands %d, first %s", waits, hands, r.Steps[0].ID)
	}
	for _, w := range []string{"the chopped onions", "a grated carrot", "the melted butter is hot"} {
		if ts := tokenize(w, 0); told(ts) {
			t.Errorf("%q tells nothing that was done", w)
		}
	}
}

// TestLinesOfAMessage: a line that ends although the next word would fit is a job of its own; a wrapped one is not. Invented.
func TestLinesOfAMessage(t *testing.T) {
	for method, items := range map[string]int{
		"chop the onion and fry it in the oil 5 mins\nfridge it\nroll the dough into 10 balls and prove 20 mins somewhere warm ok\nwhile thats going grate the carrot\n": 4,
		"Chop the onion and fry it in the oil for\nfive minutes until soft. Stir in the rice\nand cook for a minute. Add the hot stock\nand simmer for 20 minutes.\n":    1,
	} {
		d := drafts(first(splitLines("Dish\n\n1 onion\n2 eggs\n\nMethod\n" + method)))
		if len(d) != 1 || len(d[0].items) != items {
			t.Errorf("%q: %d items, want %d", method, len(d[0].items), items)
		}
	}
}

func first(lines []line, _ []string) []line { return lines }

package recipe

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/practical"
)

// figure is one thing of a step that can be put right and is remembered: how it
// is written, and how it is put into a step from what was written.
type figure struct {
	name  string
	label string // for people
	unit  string // said after it
	of    func(s practical.Step, named map[string]string) string
	// put gives what is wrong with the text, "" when it was put in.
	put func(s *practical.Step, text string, ids map[string]string) string
	// around: what it was read as comes from the recipe around the step as much as
	// from its words, so it is put right only where it is read the same again.
	around bool
}

// none is written where a step has no wait, no links, no food to mind.
const none = "none"

// remembered is every figure, in the order in which they are put in: a place makes the wait
// that the others belong to.
var remembered = []figure{
	{"hands", "hands", " minutes", func(s practical.Step, _ map[string]string) string { return writeHands(s.Hands) }, putHands, false},
	{"place", "waits at", "", placeOf, putPlace, false},
	{"wait", "wait", " minutes", waitOf, putWait, false},
	{"celsius", "oven", " °C", celsiusOf, putCelsius, true},
	{"attention", "attention", "", attentionOf, putAttention, false},
	{"food", "hands touch", "", func(s practical.Step, _ map[string]string) string { return orNone(string(s.Food)) }, putFood, false},
	{"set-up", "in set-up", "", func(s practical.Step, _ map[string]string) string { return yesOrNo(s.SetUp) }, putSetUp, false},
	{"follows", "comes after", "", followsOf, putFollows, true},
}

// FigureNames is the names that a figure of a correction may have, in their order.
func FigureNames() []string {
	names := make([]string, len(remembered))
	for i, f := range remembered {
		names[i] = f.name
	}
	return names
}

func figureNamed(name string) *figure {
	i := slices.IndexFunc(remembered, func(f figure) bool { return f.name == name })
	if i < 0 {
		return nil
	}
	return &remembered[i]
}

func orNone(s string) string {
	if s == "" {
		return none
	}
	return s
}

func yesOrNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func writeHands(e practical.Estimate) string {
	if e.Low == e.Likely && e.Likely == e.High {
		return strconv.Itoa(e.Likely)
	}
	return fmt.Sprintf("%d to %d, likely %d", e.Low, e.High, e.Likely)
}

var handsForm = regexp.MustCompile(`^(\d{1,3})(?: to (\d{1,3}), likely (\d{1,3}))?$`)

func putHands(s *practical.Step, text string, _ map[string]string) string {
	m := handsForm.FindStringSubmatch(text)
	if m == nil {
		return "write minutes of hands as 10, or as 8 to 12, likely 10"
	}
	low := digits(m[1])
	e := practical.Estimate{Low: low, Likely: low, High: low}
	if m[2] != "" {
		e.High, e.Likely = digits(m[2]), digits(m[3])
	}
	if e.Low > e.Likely || e.Likely > e.High || e.High > mostHands {
		return fmt.Sprintf("write the minutes in order, and none above %d", mostHands)
	}
	s.Hands = e
	return ""
}

// digits is the number of a few digits that a pattern has found.
func digits(s string) int {
	n, _ := strconv.Atoi(s) // the pattern allows digits only
	return n
}

func placeOf(s practical.Step, _ map[string]string) string {
	if s.Wait == nil {
		return none
	}
	return string(s.Wait.Place)
}

func putPlace(s *practical.Step, text string, _ map[string]string) string {
	if text == none {
		s.Wait = nil
		return ""
	}
	places := []string{
		string(practical.AtSide), string(practical.AtFridge), string(practical.AtFreezer), string(practical.AtWarm),
		string(practical.AtHob), string(practical.AtOven), string(practical.AtGrill), string(practical.AtMicrowave),
	}
	if !slices.Contains(places, text) {
		return "write the place as one of " + strings.Join(places, ", ") + " or none"
	}
	w := practical.Wait{}
	if s.Wait != nil {
		w = *s.Wait
	}
	w.Place = practical.Place(text)
	if w.Place != practical.AtOven {
		w.Celsius, w.Band, w.DoorShut, w.Shelves = 0, 0, 0, 0
	}
	s.Wait = &w
	return ""
}

func waitOf(s practical.Step, _ map[string]string) string {
	switch {
	case s.Wait == nil:
		return none
	case s.Wait.Most == 0:
		return fmt.Sprintf("at least %d", s.Wait.Least)
	default:
		return fmt.Sprintf("%d to %d", s.Wait.Least, s.Wait.Most)
	}
}

var waitForm = regexp.MustCompile(`^(?:at least (\d{1,4})|(\d{1,4}) to (\d{1,4}))$`)

func putWait(s *practical.Step, text string, _ map[string]string) string {
	m := waitForm.FindStringSubmatch(text)
	switch {
	case text == none:
		s.Wait = nil
		return ""
	case m == nil:
		return "write a wait as 20 to 25, as at least 20, or as none"
	case m[1] == "" && digits(m[2]) > digits(m[3]):
		return "write the shorter wait first"
	}
	return ofWait(s, func(w *practical.Wait) {
		w.Least, w.Most = digits(m[1]), 0
		if m[1] == "" {
			w.Least, w.Most = digits(m[2]), digits(m[3])
		}
	})
}

// ofWait changes a copy of the step's wait; a step without one is left.
func ofWait(s *practical.Step, change func(*practical.Wait)) string {
	if s.Wait != nil {
		w := *s.Wait
		change(&w)
		s.Wait = &w
	}
	return ""
}

func celsiusOf(s practical.Step, _ map[string]string) string {
	if s.Wait == nil || s.Wait.Celsius == 0 {
		return none
	}
	return strconv.Itoa(s.Wait.Celsius)
}

func putCelsius(s *practical.Step, text string, _ map[string]string) string {
	n, err := strconv.Atoi(text)
	if text != none && (err != nil || n < 50 || n > 300) {
		return "write the oven without fan as a number from 50 to 300, or none"
	}
	return ofWait(s, func(w *practical.Wait) {
		if w.Place == practical.AtOven {
			w.Celsius = n
		}
	})
}

func attentionOf(s practical.Step, _ map[string]string) string {
	switch {
	case s.Wait == nil:
		return none
	case s.Wait.Attention == practical.Look:
		return fmt.Sprintf("look every %d", s.Wait.Every)
	case s.Wait.Attention == "":
		return string(practical.Leave)
	}
	return string(s.Wait.Attention)
}

var lookForm = regexp.MustCompile(`^look every ([1-9]\d{0,2})$`)

func putAttention(s *practical.Step, text string, _ map[string]string) string {
	look := lookForm.FindStringSubmatch(text)
	if look == nil && text != string(practical.Leave) && text != string(practical.Stay) && text != none {
		return "write attention as leave, stay or look every 5"
	}
	return ofWait(s, func(w *practical.Wait) {
		switch {
		case look != nil:
			w.Attention, w.Every = practical.Look, digits(look[1])
		case text != none:
			w.Attention, w.Every = practical.Attention(text), 0
		}
	})
}

func putFood(s *practical.Step, text string, _ map[string]string) string {
	food := practical.Food(strings.TrimPrefix(text, none))
	if food != "" && food != practical.Raw && food != practical.ReadyToEat {
		return "write food as raw, ready-to-eat or none"
	}
	s.Food = food
	return ""
}

func putSetUp(s *practical.Step, text string, _ map[string]string) string {
	if text != "yes" && text != "no" {
		return "write set-up as yes or no"
	}
	s.SetUp = text == "yes"
	return ""
}

package feedback_test

import (
	"fmt"
	"strings"
	"testing"

	"plait.example/internal/feedback"
	"plait.example/internal/practical"
)

// bakers are invented plans that differ in when the oven is on, in minutes after nine.
func bakers(times ...[2]int) (plans []feedback.Plan) {
	for i, t := range times {
		var p feedback.Plan
		p.Matched.Plan.Candidate = fmt.Sprintf("Pupil %c", 'A'+i)
		p.Matched.Rows = append(p.Matched.Rows,
			row(1, practical.TimeOfDay(540+t[0]), "", "Turn the oven on to 200 C"),
			row(2, practical.TimeOfDay(540+t[0]+10), "A", "Put the scones in the oven for 15 minutes"),
			row(3, practical.TimeOfDay(540+t[1]), "A", "Take the scones out of the oven"),
			row(4, practical.TimeOfDay(540+t[1]+5), "A", "Whip the cream with the electric whisk for 5 minutes"),
			row(5, practical.TimeOfDay(540+t[1]+20), "A", "Serve the scones"))
		plans = append(plans, p)
	}
	return plans
}

func busyWords(all []feedback.Busy) (list []string) {
	for _, b := range all {
		var who []string
		for _, u := range b.Who {
			who = append(who, u.Who[len(u.Who)-1:]+" "+u.From.Write(24)+"-"+u.Until.Write(24))
		}
		list = append(list, fmt.Sprintf("%s of %d: %d at %s-%s, %s", b.Kit, b.Have, b.Most, b.From.Write(24), b.Until.Write(24), strings.Join(who, ", ")))
	}
	return list
}

// Ovens of a class, counted by hand: A 9:00-9:30, B 9:10-9:40, C 9:20-9:50, D 10:10-10:40.
func TestRoomIsOverUsed(t *testing.T) {
	plans := bakers([2]int{0, 30}, [2]int{10, 40}, [2]int{20, 50}, [2]int{70, 100})
	for name, c := range map[string]struct {
		room feedback.Room
		want []string
	}{
		"enough":   {feedback.Room{feedback.Ovens: 3, feedback.Mixers: 1}, nil},
		"two":      {feedback.Room{feedback.Ovens: 2, feedback.Mixers: 1}, []string{"ovens of 2: 3 at 09:20-09:30, A 09:00-09:30, B 09:10-09:40, C 09:20-09:50"}},
		"one":      {feedback.Room{feedback.Ovens: 1, feedback.Mixers: 1}, []string{"ovens of 1: 3 at 09:10-09:40, A 09:00-09:30, B 09:10-09:40, C 09:20-09:50"}},
		"not said": {nil, []string{"ovens of 0: 3 at 09:20-09:30, A 09:00-09:30, B 09:10-09:40, C 09:20-09:50"}},
	} {
		got := busyWords(feedback.ClassOf(plans, nil, c.room).Busy)
		if fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s:\ngot  %q\nwant %q", name, got, c.want)
		}
	}
	same := bakers([2]int{0, 30}, [2]int{0, 30})
	got := busyWords(feedback.ClassOf(same, nil, feedback.Room{feedback.Ovens: 2, feedback.Mixers: 1}).Busy)
	if len(got) != 1 || got[0] != "mixers of 1: 2 at 09:35-09:40, A 09:35-09:40, B 09:35-09:40" {
		t.Errorf("two whisks at once: %q", got)
	}
	text := string(feedback.ClassOf(plans, nil, feedback.Room{feedback.Ovens: 2}).Text())
	if !strings.Contains(text, "09:20 to 09:30: 3 ovens wanted, 2 there") {
		t.Errorf("the text does not say it:\n%s", text)
	}
}

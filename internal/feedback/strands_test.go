package feedback_test

import (
	"fmt"
	"strings"
	"testing"

	"plait.example/internal/feedback"
	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// Strands end where the food is taken up again, in rows of one dish without a
// recipe (invented): a part of it waits while the hands are at another.
func TestStrandsEndWhereFoodIsTakenUp(t *testing.T) {
	for name, c := range map[string]struct {
		rows []string // minutes after nine, and what is done
		want []string // place from-until, and the rows of the thread
	}{
		"chilled beside other work": {
			[]string{"0 Make the pastry and chill it for 20 minutes", "10 Chop the leeks", "30 Roll out the pastry", "50 Serve the pasties"},
			[]string{"fridge 9:05-9:30 1>3"},
		},
		"out of the fridge is said": {
			[]string{"0 Shape the fishcakes, chill", "10 Chop the parsley", "40 Take the fishcakes out of the fridge and coat", "60 Serve"},
			[]string{"fridge 9:05-9:40 1>3"},
		},
		"simmers for its minutes": {
			[]string{"0 Simmer the soup for 20 minutes", "5 Grate the cheese", "60 Blend the soup", "70 Serve the soup"},
			[]string{"hob 9:01-9:20 1>3"},
		},
		"stirred where it is": {
			[]string{"0 Simmer the soup for 40 minutes", "20 Stir the soup", "40 Blend the soup", "50 Serve the soup"},
			[]string{"hob 9:01-9:40 1>2", "hob 9:01-9:40 2>3"},
		},
		"kept on low": {
			[]string{"0 Simmer the gravy 5 minutes, keep on low heat", "30 Serve the gravy"},
			[]string{"hob 9:05-9:30 1>2"},
		},
		"fried by the hands": {
			[]string{"0-10 Fry the onions for 10 minutes", "30 Add the onions to the stock", "50 Serve"},
			nil,
		},
		"baked beside other work": {
			[]string{"0 Put the cases in the oven for 15 minutes", "5 Put the cream in the fridge", "15 Take the cases out of the oven", "40 Fill the cases with the cream", "50 Serve"},
			[]string{"oven 9:01-9:15 1>3", "fridge 9:06-9:40 2>4", "side 9:20-9:40 3>4"},
		},
		"back into the oven": {
			[]string{"0 Bake the case blind for 15 minutes", "15 Take the beans out and put back in the oven for 10 minutes", "25 Take the case out of the oven", "50 Serve"},
			[]string{"oven 9:01-9:15 1>2", "oven 9:20-9:25 2>3", "side 9:30-9:50 3>4"},
		},
		"never taken out": {
			[]string{"0 Put the scones in the oven", "40 Serve the scones"},
			[]string{"oven 9:01-9:40 1>2"},
		},
	} {
		var m match.Matched
		for i, line := range c.rows {
			at, text, _ := strings.Cut(line, " ")
			var begin, until int
			n, err := fmt.Sscanf(at, "%d-%d", &begin, &until)
			if n == 0 {
				t.Fatal(err)
			}
			r := row(i+1, practical.TimeOfDay(540+begin), "A", text)
			if n == 2 {
				r.HasUntil, r.Until = true, practical.TimeOfDay(540+until)
			}
			m.Rows = append(m.Rows, r)
		}
		plan := feedback.Plait(m)
		got := waitsOf(plan)
		if fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s:\ngot  %q\nwant %q", name, got, c.want)
		}
	}
}

func waitsOf(plan *timeplan.Plan) (list []string) {
	for _, th := range plan.Threads {
		if th.Wait >= 0 {
			w := plan.Waits[th.Wait]
			list = append(list, fmt.Sprintf("%s %s-%s %d>%d", w.Place, w.From.Write(12), w.Until.Write(12), th.From+1, th.To+1))
		}
	}
	return list
}

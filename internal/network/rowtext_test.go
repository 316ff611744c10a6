package network

import (
	"testing"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// What a row adds to a step's words is a sentence of its own, and a look is
// never asked for after the wait is over.
func TestPutInRowText(t *testing.T) {
	for _, c := range []struct {
		text string
		wait practical.Wait
		want string
	}{
		{"Boil the noodles for 4 minutes,", practical.Wait{Least: 4, Most: 4, Place: practical.AtHob, Attention: practical.Look, Every: 5}, "Boil the noodles for 4 minutes. Look at it before it is due."},
		{"Simmer for 20 minutes.", practical.Wait{Least: 20, Most: 20, Place: practical.AtHob, Attention: practical.Look, Every: 10}, "Simmer for 20 minutes. Look at it every 10 minutes."},
		{"Melt the sugar", practical.Wait{Least: 3, Most: 4, Place: practical.AtHob, Attention: practical.Stay}, "Melt the sugar. Stay with it; do not leave it."},
		{"Chill", practical.Wait{Least: 20, Place: practical.AtFridge}, "Chill"},
	} {
		n := &network{practical: &practical.Practical{Dishes: []practical.Dish{{Letter: "A"}}}, steps: map[string]*stepJobs{"A1": {hands: -1}}}
		var row timeplan.Row
		n.putInRow(&row, job{step: &practical.Step{ID: "A1", Text: c.text, Wait: &c.wait}}, nil)
		if row.Text != c.want {
			t.Errorf("%q, want %q", row.Text, c.want)
		}
	}
}

package picture_test

import (
	"fmt"

	"plait.example/internal/picture"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

func ExampleWords() {
	p := &timeplan.Plan{
		Start: 570, Finish: 606, Allowed: 615, Hours: 12,
		Dishes: []timeplan.Dish{{Letter: "A", Name: "Rolls"}},
		Rows: []timeplan.Row{
			{ID: "A1/hands", At: 570, Clock: 570, Minutes: 5, Dish: "A", Action: timeplan.Do, Text: "Knead the dough."},
			{ID: "A1/take-out", At: 605, Clock: 605, Minutes: 1, Dish: "A", Action: timeplan.TakeOut, Text: "Fetch the dough."},
		},
		Waits:   []timeplan.Wait{{Step: "A1", Dish: "A", Place: practical.AtFridge, From: 575, Until: 605}},
		Threads: []timeplan.Thread{{Dish: "A", Component: "dough", From: 0, To: 1, Place: practical.AtFridge, Wait: 0}},
	}
	for _, line := range picture.Words(p) {
		fmt.Println(line)
	}
	// Output:
	// 9:30 the clock starts.
	// 9:30 A, Knead the dough (5 minutes).
	// 9:35 A, dough: into the fridge until 10:05, 30 minutes.
	// 10:05 A, Fetch the dough (1 minute).
	// 10:06 finish. The time allowed ends at 10:15.
}

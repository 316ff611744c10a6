package practical_test

import (
	"fmt"

	"plait.example/internal/practical"
)

func ExampleParse() {
	p, faults := practical.Parse("scones.yaml", []byte(`
title: Scones
clock: {start: 13:00, finish: 13:45}
dishes:
  - name: Scones
    steps:
      - {text: Rub in and shape, hands: 12}
      - {text: Glaze and bake, hands: 2, wait: {least: 12, most: 14, place: oven, celsius: 220}}
`))
	fmt.Println(faults.OrNil(), p.Clock.SetUp, p.Dishes[0].Steps[1].After[0].Step, p.Dishes[0].Steps[0].Hands)
	_, faults = practical.Parse("scones.yaml", []byte("title: Scones\nclock: {strat: 13:00, finish: 8:00}\n"))
	fmt.Println(faults)
	// Output:
	// <nil> 12:30 A1 {9 12 16}
	// scones.yaml:2:9: clock.strat: unknown field "strat"; did you mean "start"; known here: set-up, start, finish, extra-time, rest-breaks, hours, round
	// scones.yaml:2:31: clock.finish: the finish at 08:00 is before the start at 09:00; a finish after 09:00; past midnight, count the hours on, such as 24:30
}

func ExampleKitchen_Setting() {
	fmt.Println(practical.Kitchen{}.Setting(200))
	// Output: 200 °C, fan 180 °C, gas 6
}

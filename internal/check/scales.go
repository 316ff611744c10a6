package check

import (
	"fmt"
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// wrongScale tells figures that the dial of this cooker has not got.
func wrongScale(v *view, f *asker) {
	if v.kitchen == nil || len(v.kitchen.Ovens) == 0 {
		return
	}
	fuel := v.kitchen.Ovens[0].Fuel
	for _, o := range v.kitchen.Ovens {
		if o.Fuel != fuel {
			return // any dial may be meant
		}
	}
	var rows []*row
	fanSaid := false
	v.saidHeats(func(r *row, heats []act.Heat) {
		gas, degrees, fan, fahrenheit := false, false, fanWord.in(r.words), false
		for _, h := range heats {
			gas = gas || h.Gas > 0 || h.Scale == act.GasMark
			degrees = degrees || h.Scale == act.Degrees
			fan = fan || h.Fan
			fahrenheit = fahrenheit || h.Scale == act.Fahrenheit
		}
		fanSaid = fanSaid || fan
		wrong := false
		switch fuel {
		case practical.Gas:
			wrong = !gas && (degrees || fahrenheit)
		case practical.Fan:
			wrong = !fan && (gas || degrees || fahrenheit) && !v.fanFigure(r, heats)
		default:
			wrong = !degrees && (gas || fahrenheit) || fan && !unfanned(heats)
		}
		if wrong {
			rows = append(rows, r)
		}
	})
	if len(rows) == 0 || fuel == practical.Fan && fanSaid {
		return
	}
	dial := map[practical.Fuel]string{practical.Gas: "gas", practical.Fan: "electric with a fan", practical.Electric: "electric without a fan"}[fuel]
	f.tell(saw{rows: rows, say: map[string]string{"cooker": dial}})
}

var fanWord = lex("fan")

func unfanned(heats []act.Heat) bool {
	return slices.ContainsFunc(heats, func(h act.Heat) bool { return h.Scale == act.Degrees && !h.Fan })
}

// fanFigure says that the figure, though "fan" is not said, is the recipe's for a fan oven.
func (v *view) fanFigure(r *row, heats []act.Heat) bool {
	for _, l := range v.loads {
		if l.in.row != r || l.step == nil || l.step.Wait.Celsius == 0 {
			continue
		}
		for _, h := range heats {
			if h.Scale == act.Degrees && !h.Fan && practical.CelsiusOfFan(h.Celsius) == l.step.Wait.Celsius {
				return true
			}
		}
	}
	return false
}

// pairDisagrees tells degrees and a gas mark that are not the same heat.
func pairDisagrees(v *view, f *asker) {
	v.saidHeats(func(r *row, heats []act.Heat) {
		if off, fan := fanOff(r); off > f.limit("fan") {
			f.tell(saw{rows: []*row{r}, say: map[string]string{"off": fmt.Sprint(off), "said": fmt.Sprintf("%s is about %d C without a fan", fan.Written, fan.Celsius)}})
			return
		}
		for _, g := range heats {
			if g.Gas == 0 {
				continue
			}
			table := v.gasCelsius(g.Gas)
			worst, agrees := 0, false
			for _, h := range heats {
				if h.Scale != act.Degrees && h.Scale != act.Fahrenheit || h.Celsius == 0 {
					continue
				}
				off := abs(h.Celsius - table)
				if !h.Fan && v.oven().Fuel == practical.Fan || !h.Fan && fanWord.in(r.words) {
					off = min(off, abs(practical.CelsiusOfFan(h.Celsius)-table))
				}
				agrees = agrees || off <= f.limit("most")
				worst = max(worst, off)
			}
			if worst > f.limit("most") && !agrees {
				f.tell(saw{rows: []*row{r}, say: map[string]string{"said": fmt.Sprintf("Gas %g is about %d C without a fan", g.Gas, table), "off": fmt.Sprint(worst)}})
				return
			}
		}
	})
}

// fanOff is how far, in degrees Celsius, a figure for a fan is from one without
// that one act gives beside it, and the figure for the fan.
func fanOff(r *row) (off int, fan act.Heat) {
	if thenSaid.in(r.words) {
		return 0, fan
	}
	for _, d := range r.deeds {
		for _, a := range d.Heats {
			for _, b := range d.Heats {
				if a.Fan && !b.Fan && a.Scale == act.Degrees && b.Scale == act.Degrees && abs(a.Celsius-b.Celsius) > off {
					off, fan = abs(a.Celsius-b.Celsius), a
				}
			}
		}
	}
	return off, fan
}

var thenSaid = lex("then, turn down, reduce, lower, after")

// gasCelsius is the temperature of a gas mark by the room's table, or the handbook's.
func (v *view) gasCelsius(gas float64) int {
	marks := practical.Handbook()
	if v.kitchen != nil {
		marks = v.kitchen.Marks()
	}
	mark := fmt.Sprint(gas)
	switch gas {
	case 0.25:
		mark = "1/4"
	case 0.5:
		mark = "1/2"
	}
	for _, m := range marks {
		if m.Mark == mark {
			return m.Celsius
		}
	}
	c, _ := practical.CelsiusOfGas(mark)
	return c
}

func abs(n int) int { return max(n, -n) }

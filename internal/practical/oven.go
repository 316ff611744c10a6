package practical

// ColdOven is the temperature, in degrees Celsius, of an oven that has not been on.
const ColdOven = 20

// warm is from where on an oven heats as a hot one does, in degrees Celsius.
const warm = 50

// heating are a fuel's usual minutes. Published pages give 10 to 15 for
// electric, 8 to 12 with a fan, 10 to 15 for gas, up to 20 for 220 °C and more, and
// disagree on which is faster; 3 to 5 to rise 20 °C, 10 to 15 to fall 40 °C, and 3 to 5
// for the heat to come back after the door was open: common practice, no source.
var heating = map[Fuel]Oven{
	Electric: {Preheat: 12, Up: 4, Down: 6, DoorOpen: 4},
	Fan:      {Preheat: 10, Up: 4, Down: 6, DoorOpen: 4},
	Gas:      {Preheat: 12, Up: 4, Down: 6, DoorOpen: 4},
}

// Usual is the oven with its fuel's usual minutes wherever it has none of its own.
func (o Oven) Usual() Oven {
	u, ok := heating[o.Fuel]
	if !ok {
		u = heating[Electric]
	}
	o.Preheat, o.Up, o.Down, o.DoorOpen = or(o.Preheat, u.Preheat), or(o.Up, u.Up), or(o.Down, u.Down), or(o.DoorOpen, u.DoorOpen)
	return o
}

func or(given, usual int) int {
	if given > 0 {
		return given
	}
	return usual
}

// HeatMinutes is how long the oven takes from one temperature to another, both
// in degrees Celsius of an oven without fan, in whole minutes rounded up. From
// ColdOven it takes Preheat to 180 °C, beyond that Up for every 20 °C, and below
// 180 °C proportionately less. A hot oven rises 20 °C in Up (never slower than
// a cold one) and falls 20 °C in Down.
//
// Going by way of a third temperature is never quicker.
func (o Oven) HeatMinutes(from, to int) int {
	o = o.Usual()
	switch {
	case to <= from:
		return up(o.Down*(from-to), 20)
	case from < warm:
		return o.fromCold(to)
	default:
		return min(up(o.Up*(to-from), 20), o.fromCold(to))
	}
}

// fromCold is the minutes from ColdOven to a temperature. Below 180 °C its slope is that
// of Preheat or of Up, whichever is less steep.
func (o Oven) fromCold(to int) int {
	const at, span = 180, 180 - ColdOven
	if to >= at {
		return o.Preheat + up(o.Up*(to-at), 20)
	}
	// (at-to) * min(Preheat/span, Up/20) minutes less, rounded so that what is left is rounded up
	less := min(o.Preheat*(at-to)*20, o.Up*(at-to)*span) / (span * 20)
	return max(0, o.Preheat-less)
}

// up divides, rounding up.
func up(n, by int) int { return (n + by - 1) / by }

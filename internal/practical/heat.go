package practical

import (
	"fmt"
	"strings"
)

// GasMark is one row of a heat table: a gas mark with the figures that go with it.
type GasMark struct {
	Mark       string `json:"mark" yaml:"mark"`             // "1/4" to "9"
	Celsius    int    `json:"celsius" yaml:"celsius"`       // oven without fan
	Fan        int    `json:"fan" yaml:"fan"`               // fan oven, degrees Celsius; 0: Celsius less 20
	Fahrenheit int    `json:"fahrenheit" yaml:"fahrenheit"` // oven without fan; 0: not given
}

// fanOffset is how much lower a fan oven is set, in degrees Celsius. 10 to 20
// is in use, 20 usual: common practice.
const fanOffset = 20

// handbook is the table of UK cookery handbooks, to the nearest listed step.
// The Fahrenheit column is exact by rule: 275 + 25 (mark - 1), and below mark
// 1 each halving takes 25 off. Some books list gas 3 at 160.
var handbook = []struct {
	GasMark
	words string
}{
	{GasMark{"1/4", 110, 90, 225}, "very cool"},
	{GasMark{"1/2", 130, 110, 250}, "very cool"},
	{GasMark{"1", 140, 120, 275}, "cool"},
	{GasMark{"2", 150, 130, 300}, "cool"},
	{GasMark{"3", 170, 150, 325}, "warm"},
	{GasMark{"4", 180, 160, 350}, "moderate"},
	{GasMark{"5", 190, 170, 375}, "fairly hot"},
	{GasMark{"6", 200, 180, 400}, "fairly hot"},
	{GasMark{"7", 220, 200, 425}, "hot"},
	{GasMark{"8", 230, 210, 450}, "very hot"},
	{GasMark{"9", 240, 220, 475}, "very hot"},
}

// Handbook is the heat table of UK cookery handbooks, coolest first.
func Handbook() []GasMark {
	marks := make([]GasMark, len(handbook))
	for i, row := range handbook {
		marks[i] = row.GasMark
	}
	return marks
}

// Marks is the heat table in force: the room's own, else the handbook's.
func (k Kitchen) Marks() []GasMark {
	if len(k.GasTable) > 0 {
		return k.GasTable
	}
	return Handbook()
}

// farOff is how far, in degrees Celsius, a temperature may lie beyond the ends
// of the table and still take the mark there.
const farOff = 10

// Setting says a temperature of an oven without fan for every kind of dial:
// "200 °C, fan 180 °C, gas 6", with the nearest mark of the table in force. Of
// two marks equally near it takes the cooler. A temperature more than 10 °C
// beyond the table is said to be below or above its last mark.
func (k Kitchen) Setting(celsius int) string {
	marks := k.Marks()
	near, low, high := marks[0], marks[0], marks[0]
	for _, m := range marks {
		if d, best := abs(m.Celsius-celsius), abs(near.Celsius-celsius); d < best || d == best && m.Celsius < near.Celsius {
			near = m
		}
		if m.Celsius < low.Celsius {
			low = m
		}
		if m.Celsius > high.Celsius {
			high = m
		}
	}
	offset := fanOffset
	if near.Fan > 0 {
		offset = near.Celsius - near.Fan
	}
	gas := "gas " + near.Mark
	switch {
	case celsius < low.Celsius-farOff:
		gas = "below gas " + low.Mark
	case celsius > high.Celsius+farOff:
		gas = "above gas " + high.Mark
	}
	return fmt.Sprintf("%d °C, fan %d °C, %s", celsius, celsius-offset, gas)
}

// CelsiusOfGas is the handbook's temperature of an oven without fan for a gas
// mark: "1/4", "¼", "1/2", "½", "1" to "9". False for anything else.
func CelsiusOfGas(mark string) (celsius int, ok bool) {
	mark = strings.NewReplacer("¼", "1/4", "½", "1/2", " ", "").Replace(mark)
	for _, row := range handbook {
		if row.Mark == mark {
			return row.Celsius, true
		}
	}
	return 0, false
}

// CelsiusOfFahrenheit is the temperature of an oven without fan in the
// handbook's row nearest to f; beyond the table, the exact figure rounded to 10.
func CelsiusOfFahrenheit(f int) int {
	first, last := handbook[0].Fahrenheit, handbook[len(handbook)-1].Fahrenheit
	if f < first-13 || f > last+13 {
		exact := (f - 32) * 5
		return (exact + 45*sign(exact)) / 90 * 10
	}
	near := handbook[0]
	for _, row := range handbook {
		if abs(row.Fahrenheit-f) < abs(near.Fahrenheit-f) {
			near = row
		}
	}
	return near.Celsius
}

// CelsiusOfFan is the temperature of an oven without fan for a fan oven's figure.
func CelsiusOfFan(fan int) int { return fan + fanOffset }

// CelsiusOfWords is the handbook's temperature, of an oven without fan, for an
// oven called "moderate", "hot" and so on; where a word covers two rows, the
// hotter of "very cool" and "cool", the cooler of the others. False for other words.
func CelsiusOfWords(words string) (celsius int, ok bool) {
	words = strings.ToLower(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(words), "oven")))
	for _, row := range handbook {
		if row.words == words {
			celsius, ok = row.Celsius, true
			if !strings.HasSuffix(words, "cool") {
				break
			}
		}
	}
	return celsius, ok
}

func abs(n int) int { return max(n, -n) }

func sign(n int) int {
	if n < 0 {
		return -1
	}
	return 1
}

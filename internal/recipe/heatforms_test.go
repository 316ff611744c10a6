package recipe

import (
	"strconv"
	"strings"
	"testing"
)

// ovenForms are ways in which recipes state the heat of an oven, with the
// degrees Celsius of an oven without fan: invented; the pairs of scales are those
// of the handbooks' heat table, fan 20 lower. Of a range the lower figure counts.
const ovenForms = `
oven to 180C/160C fan/gas 4 = 180
oven to 180°C (fan 160°C) = 180
bake at 350F = 180
oven to 350 degrees = 180
oven 350º F = 180
preheat oven to 350 = 180
oven to 425 = 220
bake in a moderate oven = 180
Gas Mark 6 = 200
Mark 4 = 180
bake at G4 = 180
oven to 200 C / 400 F = 200
reduce the oven to 160 = 160
lower the heat to 325 = 170
lower oven temp to 325F = 170
turn up to 220C = 220
turn the oven up to 220 = 220
fan oven 160 = 180
fan oven to 180C = 200
a hot oven = 220
oven to 180 C / 160 C Fan / Gas Mark 4 = 180
180c fan = 200
bake 150 fan 40 mins = 170
bake at 170fan 20 min = 190
bake at fan 160 90 mins = 180
200C (180C fan oven) = 200
200C fan bake = 220
180C conventional/160C fan = 180
180°C/Gas Mark 4/fan oven 160°C = 180
fan-forced 160 = 180
160 degrees fan = 180
160C (fan) = 180
160C fan-assisted = 180
160°C/320°F fan-forced (180C conventional) = 180
oven at 190 degrees celsius = 190
oven at 190 deg C = 190
oven at 190 deg. C. = 190
oven (375 deg. F., Mark 5) = 190
Preheat oven to 375 degrees F (190 degrees C) = 190
Preheat oven to 350°F (180°C). = 180
oven 220C/425F/Gas 7 = 220
oven 220ºC, gas 7 = 220
oven to 220 °C = 220
pre-heat to 220 Celsius = 220
gas mark 4-5 = 180
Oven temp: 180 = 180
Oven: 200C = 200
oven on 200 = 200
oven on at 200 = 200
put the oven on to 200 = 200
oven 180 = 180
in the oven at 180 for 20 mins = 180
bake 180 20 mins = 180
bake at 180c 20 mins = 180
bake 20 mins at 180 = 180
roast at 200 for 1 hour = 200
Turn down to 160C = 160
then down to 160 for an hour = 160
400 degree oven = 200
350-degree oven = 180
a 350F oven = 180
a 200C oven = 200
a 350° oven = 180
in a 425° oven = 220
oven to 180-190C = 180
oven to 180–200°C = 180
oven to 350 to 375 degrees F = 180
very moderate oven (325 deg. F., Mark 3) = 170
hot oven (450 F) = 230
moderate oven (350 degrees F) = 180
moderate oven, 180C = 180
moderately hot oven = 190
fairly hot oven = 190
slow oven = 150
Oven preheated to 180C = 180
set oven temperature to 180 degrees centigrade = 180
gas no. 4 = 180
gas mk 4 = 180
Gas regulo 4 = 180
Regulo 4 = 180
GM 4 = 180
G.M. 4 = 180
gas4 = 180
gasmark 4 = 180
180 C. = 180
180ᵒC = 180
180oC = 180
180⁰C = 180
180° C = 180
180 ° C = 180
350 °F/ 175 °C = 175
400F/200C = 200
230 C / 450 F / gas 8 = 230
160C/140C fan/gas 3 = 160
120C/100C fan/gas ½ = 120
200 (fan 180) = 200
oven 200 (fan 180) = 200
oven to 200/180 fan = 200
bake at 200/400 = 200
oven to 200 degrees (fan) = 220
oven to 180 (350F) = 180
oven to gas 6, 200°C, fan 180°C = 200
gas 6, 200C, 400F = 200
Gas Mark 6 (200C) = 200
heat to 180C = 180
increase oven temperature to 200C = 200
raise the temperature to 450F = 230
drop the temperature to 150C = 150
reduce heat to 350 degrees = 180
air fryer to 180C = 180
air fry at 200C = 200
`

// TestOvenForms: every form is found, once.
func TestOvenForms(t *testing.T) {
	for _, row := range strings.Split(strings.TrimSpace(ovenForms), "\n") {
		text, figure, _ := strings.Cut(row, " = ")
		want, _ := strconv.Atoi(figure)
		var got []heat
		for _, h := range heats(tokenize(text, 0)) {
			if h.oven {
				got = append(got, h)
			}
		}
		if len(got) != 1 || got[0].celsius != want {
			t.Errorf("%q: got %+v, want one of %d", text, got, want)
		}
	}
}

// otherHeats are temperatures of oil, sugar, milk and the middle of food, and figures that are none.
const otherHeats = `
75C in the middle
until the thickest part reads 75C
boil to 115°C, soft ball
fry in 180C oil
deep fry at 180C
heat oil to 180C
lukewarm (37C)
milk to 37 degrees
water at 80C
115C (soft ball stage)
cook to 63C
probe reads 75°C
internal temp of 165°F
jam reaches 105C
heat the oil in a deep fryer to 190°C/375°F
caramel to 160C
sugar syrup to 121C
custard to 82C
tempered to 31C
fridge below 5C
oil until 170C
melt chocolate to 45C
in hot oil (180C)
warm place (about 25C)
at 180 rpm
add 200 ml
180 g
cut to 200 g pieces
serves 180
fryer to 180C
wok until the oil reaches 180°C
core temperature of 75
the centre should be at least 75°C
heat a pan of oil to 180C/350F
`

// TestOtherHeats: none of them is taken for an oven's.
func TestOtherHeats(t *testing.T) {
	for _, text := range strings.Split(strings.TrimSpace(otherHeats), "\n") {
		for _, h := range heats(tokenize(text, 0)) {
			if h.oven {
				t.Errorf("%q: got %+v, want no oven's heat", text, h)
			}
		}
	}
}

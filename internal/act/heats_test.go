package act

import (
	"fmt"
	"strings"
	"testing"
)

// brief writes heats as "C180", "C180f" (fan), "G4=180", "F350=180", "W", with "?" where no dial has the figure.
func brief(heats []Heat) string {
	var list []string
	for _, h := range heats {
		s := map[Scale]string{Degrees: "C", Fahrenheit: "F", GasMark: "G", Words: "W"}[h.Scale]
		if h.Scale == GasMark {
			s += fmt.Sprint(h.Gas) + "="
		}
		if h.Scale != Words {
			s += fmt.Sprint(h.Celsius)
		}
		if h.Fan {
			s += "f"
		}
		if h.Implausible {
			s += "?"
		}
		list = append(list, s)
	}
	return strings.Join(list, " ")
}

// The rows are invented. Celsius of gas marks and of Fahrenheit: the table of
// UK cookery handbooks (gas 4 is 180 °C and 350 °F); a fan oven is set 20 °C
// lower: common practice.
func TestHeats(t *testing.T) {
	for text, want := range map[string]string{
		"Preheat oven to 180C":              "C180",
		"oven 180":                          "C180",
		"oven on at 200":                    "C200",
		"bake at 180 degrees":               "C180",
		"bake at 180 degrees C for 20 mins": "C180",
		"180 fan":                           "C200f",
		"oven on 160 fan":                   "C180f",
		"fan 180":                           "C200f",
		"Set fan oven to 160C":              "C180f",
		"160F":                              "F180f?",
		"bake 350F":                         "F180",
		"oven 400°F":                        "F200",
		"GM4":                               "G4=180",
		"gas 4":                             "G4=180",
		"gas mark 6":                        "G6=200",
		"mark 4":                            "G4=180",
		"Gas Mark 1/2":                      "G0.5=130",
		"gas ½":                             "G0.5=130",
		"gas mark 4-5":                      "G4=180",
		"gas 7 / 220C":                      "G7=220 C220",
		"180/160 fan/gas 4":                 "C180 C180f G4=180",
		"oven 180/160 fan/gas 4":            "C180 C180f G4=180",
		"200°C/180°C fan/gas 6":             "C200 C200f G6=200",
		"200C (fan 180C, gas 6)":            "C200 C200f G6=200",
		"180C (fan)":                        "C200f",
		"180c fan":                          "C200f",
		"190ºC":                             "C190",
		"190 oC":                            "C190",
		"hot oven":                          "W",
		"put in a moderate oven":            "W",
		"very cool oven":                    "W",
		"bake 200C gas 4":                   "C200 G4=180",
		"bake 25 mins at 190":               "C190",
		"cakes in at 180 for 25 mins":       "C180",
		"roast 200 30 min":                  "C200",
		"turn oven down to 150":             "C150",
		"oven from 200 to 180":              "C200 C180",
		"350C":                              "C180?",
		"gas 180":                           "C180?",
		"keep warm in oven 80C":             "C80",
		"cook on medium heat":               "",
		"core 75C":                          "",
		"core temp 75C":                     "",
		"probe chicken to 75 degrees":       "",
		"chicken out, check 75C":            "",
		"oil at 180":                        "",
		"heat oil to 180C":                  "",
		"deep fry at 180C":                  "",
		"sugar syrup to 118C":               "",
		"boil caramel to 160C":              "",
		"fridge below 8C":                   "",
		"weigh 200g flour":                  "",
		"add 150 ml milk":                   "",
		"bake 20 mins":                      "",
		"roll to 20 cm":                     "",
		"bake for 20 - 25 minutes":          "",
		"oven on, weigh 200g sugar":         "",
		"oven on 200 weigh 150g sugar":      "C200",
		"put 100 g chocolate in a bowl over 100 ml water": "",
		"serve 4":                                        "",
		"Bake at 200C until the core is 75C":             "C200",
		"chicken in oven 200C 25 mins, core 75C":         "C200",
		"pre-heat to gas mark 5 (190)":                   "G5=190 C190",
		"180 degrees fan":                                "C200f",
		"Oven on 180oC":                                  "C180",
		"180 celsius":                                    "C180",
		"oven gas no 4":                                  "G4=180",
		"bake in a preheated oven at 220 for 15 minutes": "C220",
		"oven temp 180 (fan)":                            "C200f",
		"cook at 180 for 1 hour":                         "C180",
		"170-180C":                                       "C170 C180",
	} {
		if got := brief(Heats(text)); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

func TestHeatIsQuotedAsWritten(t *testing.T) {
	heats := Heats("Turn oven on to 180°C / Gas Mark 4 now")
	if len(heats) != 2 || heats[0].Written != "180°C" || heats[1].Written != "Gas Mark 4" {
		t.Errorf("%+v", heats)
	}
}

// Rows invented.
func TestMinutesOfAnAct(t *testing.T) {
	for text, want := range map[string]string{
		"bake for 20 mins":                       "20-20",
		"bake 20-25 min":                         "20-25",
		"bake 20 to 25 minutes":                  "20-25",
		"simmer half an hour":                    "30-30",
		"chill for 1 hour":                       "60-60",
		"chill for 1 1/2 hours":                  "90-90",
		"chill 1½ hrs":                           "90-90",
		"chill 1 hour 15 minutes":                "75-75",
		"prove an hour":                          "60-60",
		"rest 5":                                 "5-5",
		"bake 20":                                "20-20",
		"bake at 200C for 20":                    "20-20",
		"simmer for twenty minutes":              "20-20",
		"rest for a few minutes":                 "3-3",
		"bake at 180C":                           "0-0",
		"bake 12 buns":                           "0-0",
		"chill 2 cm thick":                       "0-0",
		"simmer until soft":                      "0-0",
		"bake 10-15mins until golden":            "10-15",
		"Bake gas 4 for 35m":                     "35-35",
		"bake 1hr":                               "60-60",
		"freeze quarter of an hour":              "15-15",
		"bake for another 5 mins":                "5-5",
		"put in the fridge to set for 2 hours":   "120-120",
		"leave in a warm place for about 40 min": "40-40",
	} {
		acts := Read(text)
		if len(acts) == 0 {
			t.Errorf("%q: no act", text)
			continue
		}
		if got := fmt.Sprintf("%d-%d", acts[0].Least, acts[0].Most); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

package ingredient_test

import (
	"math"
	"strings"
	"testing"

	"plait.example/internal/ingredient"
)

// Exact by definition. British: Weights and Measures Act 1985, schedule 1 (pound, gallon), spoons
// common practice. American: NIST Handbook 44, appendix C (gallon of 231 cubic inches), from memory.
func TestFactors(t *testing.T) {
	for unit, want := range map[string]float64{"g": 1, "kg": 1000, "oz": 28.349523125, "ounce": 28.349523125, "lb": 453.59237, "pound": 453.59237} {
		if got, ok := ingredient.GramsIn(unit); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s is %v g, want %v", unit, got, want)
		}
	}
	for _, c := range []struct {
		m    ingredient.Measures
		unit string
		want float64
	}{
		{ingredient.British, "tsp", 5},
		{ingredient.British, "tbsp", 15},
		{ingredient.British, "pint", 568.26125},
		{ingredient.British, "fl oz", 28.4130625},
		{ingredient.British, "gill", 142.0653125},
		{ingredient.British, "cup", 236.5882365},
		{ingredient.American, "cup", 236.5882365},
		{ingredient.American, "tablespoon", 14.78676478125},
		{ingredient.American, "teaspoon", 4.92892159375},
		{ingredient.American, "fluid ounce", 29.5735295625},
		{ingredient.American, "pint", 473.176473},
		{ingredient.American, "quart", 946.352946},
		{ingredient.British, "litre", 1000},
		{ingredient.British, "cl", 10},
	} {
		if got, ok := c.m.MillilitresIn(c.unit); !ok || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s is %v ml, want %v", c.unit, got, c.want)
		}
	}
	if _, ok := ingredient.British.MillilitresIn("gram"); ok {
		t.Error("a gram is no volume")
	}
}

// weighed is a line with the grams that a published table gives for it.
type weighed struct {
	line  string
	grams float64
}

func checkWeights(t *testing.T, m ingredient.Measures, share float64, lines []weighed) {
	t.Helper()
	for _, c := range lines {
		g, how, ok := m.Weigh(ingredient.Parse(c.line))
		if !ok || math.Abs(g-c.grams) > share*c.grams {
			t.Errorf("%s: %.1f g, want %v (%s)", c.line, g, c.grams, how)
		}
	}
}

// The published table itself: USDA National Nutrient Database for Standard Reference, Release 28,
// household weights. This checks that a name finds its food and the right state of it.
func TestWeightsOfTheTables(t *testing.T) {
	checkWeights(t, ingredient.American, 0.01, []weighed{
		{"1 cup all-purpose flour", 125},
		{"1 cup plain flour", 125},
		{"1 cup bread flour", 137},
		{"1 cup granulated sugar", 200},
		{"1 cup caster sugar", 200},
		{"1 cup packed brown sugar", 220},
		{"1 cup light brown sugar", 220},
		{"1 cup unsifted icing sugar", 120},
		{"1 cup confectioners' sugar, sifted", 100},
		{"1 cup butter", 227},
		{"1 stick unsalted butter", 113},
		{"1 cup whole milk", 244},
		{"1 cup honey", 339},
		{"1 cup olive oil", 216},
		{"1 cup rolled oats", 81},
		{"1 cup cornflour", 128},
		{"1 cup unsweetened cocoa powder", 86},
		{"1 cup long-grain rice", 185},
		{"1 cup cooked white rice", 158},
		{"1 cup chopped onions", 160},
		{"1 cup onions, sliced", 115},
		{"1 cup grated cheddar cheese", 113},
		{"1 cup walnuts, chopped", 117},
		{"1 cup raisins", 145},
		{"1 cup strawberries, sliced", 166},
		{"1 cup shredded cabbage", 70},
		{"2 large eggs", 100},
		{"3 cloves garlic, crushed", 9},
		{"2 medium carrots", 122},
		{"1 large onion", 150},
		{"1 cup sour cream", 230},
	})
}

// A published handbook that is not the source of the tables: R. L. Beranbaum, The Cake Bible (1988),
// as quoted in a public listing of its weights (ounces of 28.35 g a cup). Books differ on how firmly
// a cup is filled, so a tenth is allowed.
func TestWeightsOfAHandbook(t *testing.T) {
	const oz = 28.349523125
	checkWeights(t, ingredient.American, 0.1, []weighed{
		{"1 cup butter", 8 * oz},
		{"1 cup vegetable oil", 7.5 * oz},
		{"1 cup all-purpose flour", 4.25 * oz},
		{"1 cup bread flour", 4.5 * oz},
		{"1 cup cornstarch", 120},
		{"1 cup unsweetened cocoa powder", 82},
		{"1 cup heavy cream", 232},
		{"1 cup milk", 242},
	})
}

// Another outside source: specific gravities of McCance and Widdowson's The Composition of Foods
// Integrated Dataset 2021 (Open Government Licence v3.0) for foods that the American tables weigh.
func TestWeightsOfTheBritishTables(t *testing.T) {
	checkWeights(t, ingredient.British, 0.02, []weighed{
		{"100 ml whole milk", 103},
		{"100 ml red wine", 100},
		{"100 ml dry white wine", 100},
		{"150 ml double cream", 141},
		{"300 ml single cream", 300},
		{"1 pint semi-skimmed milk", 568.26125 * 1.03},
		{"100 ml creme fraiche", 97},
		{"1 tbsp Greek yogurt", 15 * 1.02},
		{"100 ml plain yoghurt", 102},
		{"100 ml lager", 100},
	})
}

func TestWeighWays(t *testing.T) {
	for _, c := range []struct {
		line, how string
		grams     float64
	}{
		{"2 x 400 g tins chopped tomatoes", "2 times 400 grams", 800},
		{"1 (14-ounce) can tomatoes", "1 times 14 ounces", 396.893},
		{"1 lb / 450 g beef", "1 pound at 453.592 g", 453.592},
		{"3 courgettes (about 600 g)", "600 grams as stated", 600},
		{"100-150 g spinach", "100 to 150 grams as stated", 125},
		{"1 cup plus 2 tablespoons milk", "plus 2 tablespoons is 30 ml", 236.588*1.031 + 30*1.031},
		{"2 eggs", "British grades", 104},
		{"2 rashers bacon", "slice raw", 56},
		{"12 cherry tomatoes", "(cherry)", 204},
		{"2 chicken breasts", "(breast)", 348},
		{"1 sweet potato", "(sweetpotato)", 130},
		{"1 lrg onion", "(large)", 150},
		{"½ pepper", "Peppers, sweet, red", 59.5},
		{"| 300 g | chicken thighs | diced |", "300 grams as stated", 300},
		{"2 x 15ml spoons tomato puree", "2 times 15 millilitres", 33.5},
		{"4 skinless, boneless chicken thighs", "(thigh without skin)", 596},
		{"2 jalapeños", "(pepper)", 28},
		{"100 ml S.R. flour", "self-rising", 52.8},
		{"chopped tomatoes 400g tin", "400 grams as stated", 400},
		{"1 tbsp turmeric powder", "Spices, turmeric", 9.5},
		{"1 tin chickpeas", "(can drained)", 254},
		{"1 block tofu (400 g, firm)", "400 grams as stated", 400},
	} {
		g, how, ok := ingredient.Grams(ingredient.Parse(c.line))
		if !ok || math.Abs(g-c.grams) > 0.5 || !strings.Contains(how, c.how) {
			t.Errorf("%s: %.2f g, %q, %v; want %.2f, %q", c.line, g, how, ok, c.grams, c.how)
		}
	}
	for line, why := range map[string]string{
		"salt":                 "no quantity is given",
		"a pinch of salt":      "a pinch has no agreed weight",
		"1 cup gochujang":      "no food in the tables is called",
		"1 cup tamarind paste": "no food in the tables",
		"12 prawns":            "shrimp, mixed species, canned",
		"2 cardamom pods":      "what one of \"Spices, cardamom\" weighs",
		"8 cloves":             "what one of \"Spices, cloves, ground\" weighs",
	} {
		if g, how, ok := ingredient.Grams(ingredient.Parse(line)); ok || g != 0 || !strings.Contains(how, why) {
			t.Errorf("%s: %v, %q, %v; want no weight, %q", line, g, how, ok, why)
		}
	}
}

// A large egg of the United States weighs 50 g without its shell (National Nutrient Database, code 01123).
func TestWeighEggs(t *testing.T) {
	for m, want := range map[ingredient.Measures]float64{ingredient.British: 52, ingredient.American: 50} {
		if g, how, ok := m.Weigh(ingredient.Parse("1 egg")); !ok || g != want {
			t.Errorf("%d: %v, %q; want %v", m, g, how, want)
		}
	}
}

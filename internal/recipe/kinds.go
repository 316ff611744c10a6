package recipe

import "strings"

// kinds are the words by which a method speaks of a food that the list names
// more closely: "the pasta" for penne, "the meat" for lamb.
var kinds = func() map[string][]string {
	m := map[string][]string{}
	for general, words := range map[string]string{
		"pasta":   "spaghetti penne fusilli macaroni tagliatelle pappardelle linguine farfalle rigatoni orzo conchiglie fettuccine tagliolini bucatini cannelloni ziti mostaccioli",
		"meat":    "beef lamb pork mutton veal venison goat steak brisket gammon mince oxtail",
		"beef":    "brisket topside silverside oxtail",
		"bird":    "chicken turkey duck goose pheasant guinea-fowl",
		"fish":    strings.Join(fishes, " "),
		"greens":  "spinach kale chard cabbage callaloo",
		"berries": "raspberries strawberries blueberries blackberries",
		"cheese":  "cheddar parmesan gruyere mozzarella feta halloumi paneer mascarpone ricotta",
		"nuts":    "cashews almonds walnuts hazelnuts peanuts pecans pistachios",
		"lentils": "dal daal dhal",
		"dal":     "lentils",
		"noodles": "vermicelli udon soba ramen",
	} {
		for _, w := range strings.Fields(words) {
			m[stem(w)] = append(m[stem(w)], stem(general))
		}
	}
	return m
}()

// addKinds adds to names of foods, by stem, the general words for a food.
func addKinds(m map[string]bool, food string) {
	for _, k := range kinds[food] {
		m[k] = true
	}
}

package check

import (
	"testing"

	"plait.example/internal/practical"
)

// soupAndCake is a practical of two dishes, invented by us.
func soupAndCake(t *testing.T) *practical.Practical {
	t.Helper()
	return parsed(t, `
title: Soup and cake
kitchen:
  ovens: [{name: oven, fuel: electric, shelves: 2}]
dishes:
  - letter: A
    name: Carrot soup
    allergens: [celery]
    ingredients: [{raw: 4 carrots, name: carrots}, {raw: 1 onion, name: onion}, {raw: 500 ml stock, name: stock}, {raw: 1 tbsp coriander, name: coriander}, {raw: 2 tbsp lentils, name: lentils}]
    serve: {heat: hot, how: in a bowl}
    steps:
      - {id: A1, text: Peel and chop the carrots and the onion., hands: {low: 8, likely: 12, high: 18}}
      - {id: A2, text: "Fry the onion and carrots for 10 minutes.", hands: {low: 10, likely: 12, high: 15}}
      - {id: A3, text: "Add the stock and the lentils and simmer for 20 minutes.", hands: 1, wait: {least: 20, most: 30, place: hob}}
      - {id: A4, text: Blend the soup until smooth., hands: {low: 4, likely: 5, high: 8}}
  - letter: B
    name: Cream cake
    allergens: [eggs, milk]
    ingredients: [{raw: 150 g butter, name: butter}, {raw: 150 g sugar, name: sugar}, {raw: 3 eggs, name: eggs}, {raw: 150 g flour, name: flour}, {raw: 200 ml cream, name: cream}]
    serve: {heat: cold, how: on a stand}
    steps:
      - {id: B1, text: "Cream the butter and the sugar, beat in the eggs and fold in the flour.", hands: {low: 10, likely: 14, high: 20}}
      - {id: B2, text: "Bake the cake at 180°C for 25 minutes.", hands: 1, wait: {least: 25, most: 28, place: oven, celsius: 180, band: 10, door-shut: 17}}
      - {id: B3, text: Leave the cake to cool for 30 minutes., hands: 0, wait: {least: 30, most: 60, place: side}}
      - {id: B4, text: Whip the cream., hands: {low: 3, likely: 5, high: 8}, after: []}
      - {id: B5, text: Fill the cake with the cream and dust with icing sugar., hands: {low: 4, likely: 6, high: 9}, after: [B3, B4]}
`)
}

func parsed(t *testing.T, text string) *practical.Practical {
	t.Helper()
	p, faults := practical.Parse("invented", []byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return p
}

package practical

import (
	"math"
	"slices"
	"testing"
)

// Published tables, read November 2026, in the order of the marks 1/4, 1/2, 1 to 9.
var (
	marks = []string{"1/4", "1/2", "1", "2", "3", "4", "5", "6", "7", "8", "9"}
	// simetric.co.uk, "Gas and Electric Cooker Conversions"; it has gas 3 at 160,
	// as engineeredbydesign.co.uk, "Oven temperatures", has 160/170.
	publishedCelsius    = []int{110, 130, 140, 150, 160, 180, 190, 200, 220, 230, 240}
	publishedFahrenheit = []int{225, 250, 275, 300, 325, 350, 375, 400, 425, 450, 475}
	// liquisearch.com, "Gas mark: conversion": exact Celsius of the same marks.
	exactCelsius = []int{107, 121, 135, 149, 163, 177, 191, 204, 218, 232, 246}
	// pinchofnom.com, "Oven temperature conversion guide": electric and fan, marks 1 to 9.
	publishedFan = []int{120, 130, 140, 160, 170, 180, 200, 210, 220}
)

func TestHandbookAgreesWithPublishedTables(t *testing.T) {
	table := Handbook()
	if len(table) != len(marks) {
		t.Fatalf("%d marks, want %d", len(table), len(marks))
	}
	for i, row := range table {
		if row.Mark != marks[i] || row.Fahrenheit != publishedFahrenheit[i] {
			t.Errorf("row %d: gas %s at %d °F, published gas %s at %d °F", i, row.Mark, row.Fahrenheit, marks[i], publishedFahrenheit[i])
		}
		if row.Celsius != publishedCelsius[i] && (row.Mark != "3" || row.Celsius != 170) {
			t.Errorf("gas %s is %d °C, published %d", row.Mark, row.Celsius, publishedCelsius[i])
		}
		// Handbook steps are rounded for the dial: within 10 °C of the exact figure.
		if exact := (float64(row.Fahrenheit) - 32) * 5 / 9; int(math.Round(exact)) != exactCelsius[i] || math.Abs(float64(row.Celsius)-exact) > 10 {
			t.Errorf("gas %s: %d °C, exactly %.1f, published exactly %d", row.Mark, row.Celsius, exact, exactCelsius[i])
		}
		if i >= 2 && row.Fan != publishedFan[i-2] && (row.Mark != "3" || row.Fan != 150) {
			t.Errorf("gas %s is fan %d °C, published %d", row.Mark, row.Fan, publishedFan[i-2])
		}
		if row.Fan != row.Celsius-20 {
			t.Errorf("gas %s: fan %d °C is not 20 below %d", row.Mark, row.Fan, row.Celsius)
		}
	}
}

// The rule of the scale (liquisearch.com, as above): mark 1 is 275 °F, each mark
// 25 °F more; below 1 each halving 25 °F less.
func TestHandbookFollowsTheRuleOfTheScale(t *testing.T) {
	for i, row := range Handbook() {
		if want := 275 + 25*(i-2); row.Fahrenheit != want {
			t.Errorf("gas %s: %d °F, by rule %d", row.Mark, row.Fahrenheit, want)
		}
	}
}

// manual is a gas cooker's own table: Belling G755, user manual, page 20, main oven.
var manual = []GasMark{
	{"1/2", 110, 0, 230},
	{"1", 120, 0, 250},
	{"2", 150, 0, 300},
	{"3", 175, 0, 350},
	{"4", 195, 0, 385},
	{"5", 210, 0, 410},
	{"6", 220, 0, 430},
	{"7", 230, 0, 445},
	{"8", 235, 0, 455},
	{"9", 240, 0, 465},
}

func TestSetting(t *testing.T) {
	tests := []struct {
		table   []GasMark
		celsius int
		want    string
	}{
		{nil, 200, "200 °C, fan 180 °C, gas 6"},
		{nil, 180, "180 °C, fan 160 °C, gas 4"},
		{nil, 110, "110 °C, fan 90 °C, gas 1/4"},
		{nil, 240, "240 °C, fan 220 °C, gas 9"},
		{nil, 160, "160 °C, fan 140 °C, gas 2"}, // as near to 3: the cooler
		{nil, 185, "185 °C, fan 165 °C, gas 4"},
		{nil, 208, "208 °C, fan 188 °C, gas 6"},
		{nil, 100, "100 °C, fan 80 °C, gas 1/4"},
		{nil, 99, "99 °C, fan 79 °C, below gas 1/4"},
		{nil, 250, "250 °C, fan 230 °C, gas 9"},
		{nil, 260, "260 °C, fan 240 °C, above gas 9"},
		{manual, 200, "200 °C, fan 180 °C, gas 4"}, // the handbook's 6: the room's own table tells
		{manual, 180, "180 °C, fan 160 °C, gas 3"},
		{[]GasMark{{"4", 180, 165, 0}}, 180, "180 °C, fan 165 °C, gas 4"}, // the room's own fan figure
	}
	for _, tt := range tests {
		if got := (Kitchen{GasTable: tt.table}).Setting(tt.celsius); got != tt.want {
			t.Errorf("Setting(%d) = %q, want %q", tt.celsius, got, tt.want)
		}
	}
	if got := (Kitchen{GasTable: manual}).Marks(); !slices.Equal(got, manual) {
		t.Errorf("the room's own table is not in force: %v", got)
	}
}

func TestConversions(t *testing.T) {
	for i, mark := range marks {
		if got, ok := CelsiusOfGas(mark); !ok || got != Handbook()[i].Celsius {
			t.Errorf("CelsiusOfGas(%q) = %d, %v", mark, got, ok)
		}
		if got := CelsiusOfFahrenheit(publishedFahrenheit[i]); got != Handbook()[i].Celsius {
			t.Errorf("CelsiusOfFahrenheit(%d) = %d", publishedFahrenheit[i], got)
		}
	}
	for mark, want := range map[string]int{"¼": 110, "½": 130, " 4 ": 180} {
		if got, ok := CelsiusOfGas(mark); !ok || got != want {
			t.Errorf("CelsiusOfGas(%q) = %d, %v", mark, got, ok)
		}
	}
	for _, mark := range []string{"", "0", "10", "4.5", "hot"} {
		if got, ok := CelsiusOfGas(mark); ok {
			t.Errorf("CelsiusOfGas(%q) = %d", mark, got)
		}
	}
	// Beside and beyond the table: 360 is nearest to 350; 500 °F is 260 °C and 200 °F 93 °C by arithmetic.
	for f, want := range map[int]int{360: 180, 365: 190, 500: 260, 200: 90, 212: 110, 211: 100, -40: -40} {
		if got := CelsiusOfFahrenheit(f); got != want {
			t.Errorf("CelsiusOfFahrenheit(%d) = %d, want %d", f, got, want)
		}
	}
	if got := CelsiusOfFan(160); got != 180 {
		t.Errorf("CelsiusOfFan(160) = %d", got)
	}
	for words, want := range map[string]int{"moderate": 180, "Hot oven": 220, "very cool": 130, "cool": 150, "fairly hot": 190, "very hot": 230, "warm": 170} {
		if got, ok := CelsiusOfWords(words); !ok || got != want {
			t.Errorf("CelsiusOfWords(%q) = %d, %v, want %d", words, got, ok, want)
		}
	}
	if got, ok := CelsiusOfWords("lukewarm"); ok {
		t.Errorf("CelsiusOfWords(lukewarm) = %d", got)
	}
}

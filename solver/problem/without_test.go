package problem_test

import (
	"encoding/json"
	"reflect"
	"testing"

	"plait.example/solver/problem"
)

func asJSON(t *testing.T, v any) string {
	t.Helper()
	data, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func TestWithout(t *testing.T) {
	type P = *problem.Problem
	for name, want := range map[string]func(P){
		"":                  func(P) {},
		"no such name":      func(P) {},
		"ink first":         func(p P) { p.Lags = p.Lags[1:] },
		"print while wet":   func(p P) { p.Lags = []problem.Lag{p.Lags[0], p.Lags[2]} },
		"roller comes at 5": func(p P) { p.Choices = nil },
		"break":             func(p P) { p.Resources[0].Closures = p.Resources[0].Closures[:1] },
		"one printer": func(p P) {
			p.Resources[0].Closures = nil
			p.Activities[0].Modes[0].Uses = nil
			p.Activities[1].Modes[0].Uses = nil
			p.States[0].Uses = nil
		},
		"fuse":      func(p P) { p.Activities[0].Modes[1].Uses = nil },
		"one plate": func(p P) { p.Activities[1].Modes[0].Needs = nil },
	} {
		p, wanted := press(), press()
		want(wanted)
		got := problem.Without(p, map[string]bool{name: true})
		if asJSON(t, got) != asJSON(t, wanted) {
			t.Errorf("without %q:\n got %s\nwant %s", name, asJSON(t, got), asJSON(t, wanted))
		}
		if !reflect.DeepEqual(p, press()) {
			t.Errorf("without %q: the problem itself was changed", name)
		}
		if err := got.Validate(); err != nil {
			t.Errorf("without %q: %v", name, err)
		}
	}
}

// What is left shares nothing with the problem that it came from.
func TestWithoutSharesNothing(t *testing.T) {
	p := press()
	q := problem.Without(p, nil)
	scribble(reflect.ValueOf(q).Elem())
	if !reflect.DeepEqual(p, press()) {
		t.Errorf("scribbling on the copy changed the problem: %s", asJSON(t, p))
	}
}

// scribble overwrites every number, string and slice entry under v.
func scribble(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			scribble(v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			scribble(v.Index(i))
		}
	case reflect.Int:
		v.SetInt(77)
	case reflect.String:
		v.SetString("scribble")
	case reflect.Bool:
		v.SetBool(!v.Bool())
	}
}

package act

import (
	"slices"
	"testing"
)

func TestFirstKinds(t *testing.T) {
	for text, want := range map[string][]Kind{
		"Chop the chocolate":                          {Cut},
		"Blind bake at 190C":                          {PutIn},
		"do not open the oven":                        nil,
		"pop cake in":                                 {PutIn},
		"take chicken out of fridge":                  {FromCold},
		"take out buns, leave to cool and whip cream": {TakeOut, Cool, Mix},
	} {
		var got []Kind
		for _, a := range Read(text) {
			got = append(got, a.Kind)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
}

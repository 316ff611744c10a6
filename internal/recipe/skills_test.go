package recipe

import (
	"slices"
	"strings"
	"testing"

	"plait.example/internal/practical"
)

// The dishes of these tests are invented. Which technique is in which of the
// twelve groups follows the appendix of the national subject content for GCSE
// food preparation and nutrition (2015), from memory; how complex it is held to
// be is common practice, no source.

func dishOf(text, letter string) practical.Dish { return Read(text)[0].Dish(letter) }

const tart = `Leek tart

200 g plain flour
100 g butter
2 leeks
2 eggs
200 ml milk

1. Rub the butter into the flour until it looks like breadcrumbs. Add water and bring the dough together.
2. Slice the leeks. Sweat them in butter for 8 minutes.
3. Roll out the pastry and line a flan tin. Bake blind for 15 minutes.
4. Beat the eggs into the milk. Pour over the leeks.
5. Bake the quiche at 180 C for 30 minutes until set.
`

const fool = `Rhubarb fool

300 g rhubarb
80 g sugar
250 ml double cream

1. Simmer the rhubarb with the sugar for 10 minutes. Leave to cool.
2. Whip the double cream to soft peaks. Fold in the rhubarb.
`

func TestSkills(t *testing.T) {
	p := Reader{}.Skills([]practical.Dish{dishOf(tart, "A"), dishOf(fool, "B")})
	shown := func(group int, id string) []string {
		for _, s := range p.Groups[group-1].Shown {
			if s.Technique.ID == id {
				return s.Dishes
			}
		}
		return nil
	}
	for _, c := range []struct {
		group  int
		id     string
		dishes []string
	}{
		{10, "shortcrust", []string{"A"}},
		{10, "rub-in", []string{"A"}},
		{10, "line-blind-bake", []string{"A"}},
		{12, "quiche-set", []string{"A"}},
		{2, "chop-veg", []string{"A"}},
		{5, "whip-cream", []string{"B"}},
		{11, "fold-in", []string{"B"}},
		{6, "simmer", []string{"B"}},
		{4, "hob-use", []string{"A", "B"}},
		{8, "roux-sauce", nil},
	} {
		if got := shown(c.group, c.id); !slices.Equal(got, c.dishes) {
			t.Errorf("%s in group %d: %v, want %v", c.id, c.group, got, c.dishes)
		}
	}
	if l := p.Groups[9].Level(); l != Medium {
		t.Errorf("dough is held to be %q, want medium", l)
	}
	if n := p.Dishes[0].Count(Medium); n != 3 { // shortcrust, blind baking, the quiche's filling
		t.Errorf("%d medium techniques in the tart, want 3: %v", n, ids(p.Dishes[0].Techniques))
	}
	raised := map[int]Raise{}
	for _, r := range p.Raise {
		raised[r.Group] = r
	}
	if r := raised[8]; r.Missing != "No sauce is made" || len(r.Such) == 0 || r.Such[0].Group != 8 || r.Such[0].Complexity == Basic {
		t.Errorf("sauces: %+v", r)
	}
	if r := raised[2]; !strings.HasSuffix(r.Missing, "is basic") || r.Would != "" {
		t.Errorf("knives: %+v", r)
	}
	if _, there := raised[12]; there || p.Covered() >= 12 {
		t.Errorf("%d groups covered, setting among what is missing: %v", p.Covered(), there)
	}
}

// A jelly alone: it sets something, and nearly all else is missing.
func TestSkillsOfOneDish(t *testing.T) {
	p := Reader{}.Skills([]practical.Dish{dishOf("Orange jelly\n\n4 leaves gelatine\n500 ml orange juice\n\n1. Warm the orange juice and stir in the gelatine.\n2. Chill for 2 hours until set.\n", "A")})
	if p.Groups[11].Level() != Medium {
		t.Errorf("setting: %+v", p.Groups[11])
	}
	if empty := (Reader{}).Skills(nil); empty.Covered() != 0 || len(empty.Raise) != 12 || empty.Count(Basic) != 0 {
		t.Errorf("no dishes: %+v", empty)
	}
}

// The teacher's table decides what is held to be complex, and which words show it.
func TestSkillsByTheTable(t *testing.T) {
	mine := strings.Replace(invented, ",words", ",words,recipe words", 1)
	mine = strings.Replace(mine, ",basic,", ",high,", 1)
	mine = strings.Replace(mine, ",knead\n", ",,fool+cream+!bake\n", 1)
	rd := Reader{Techniques: mustTable(t, []byte(mine))}
	if p := rd.Skills([]practical.Dish{dishOf(fool, "B")}); p.Count(High) != 1 || p.Groups[9].Shown[0].Technique.Name != "Knead purée" {
		t.Errorf("%+v", p.Groups[9])
	}
	if p := rd.Skills([]practical.Dish{dishOf(strings.Replace(fool, "Leave to cool", "Bake", 1), "B")}); p.Count(High) != 0 {
		t.Error("a word that speaks against it was not heeded")
	}
}

func ids(list []*Technique) (out []string) {
	for _, t := range list {
		out = append(out, t.ID)
	}
	return out
}

package recipe

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// SkillPicture is which of the twelve skill groups the dishes of a menu cover,
// how complex their techniques are held to be, and what would raise it. It goes
// by the words of the dishes: a technique done and not named is not in it, and
// how well one is done is for the teacher to see.
type SkillPicture struct {
	Groups [12]GroupSkills // Groups[0] is group 1
	Dishes []DishSkills    // in the order of the menu
	Raise  []Raise         // groups that nothing covers first
}

// GroupSkills is what covers a skill group.
type GroupSkills struct {
	Number int
	Name   string
	Shown  []ShownSkill // the most complex first; empty: nothing covers the group
}

// Level is the greatest complexity shown in the group, empty when nothing covers it.
func (g GroupSkills) Level() Complexity {
	if len(g.Shown) == 0 {
		return ""
	}
	return g.Shown[0].Technique.Complexity
}

// ShownSkill is a technique and the letters of the dishes that show it.
type ShownSkill struct {
	Technique *Technique
	Dishes    []string
}

// DishSkills is a dish's techniques, the most complex first.
type DishSkills struct {
	Letter, Name string
	Techniques   []*Technique
}

// Count is how many of the dish's techniques are held to be of a complexity.
func (d DishSkills) Count(c Complexity) (n int) {
	for _, t := range d.Techniques {
		if t.Complexity == c {
			n++
		}
	}
	return n
}

// Count is how many different techniques of a complexity the menu shows.
func (p SkillPicture) Count(c Complexity) (n int) {
	for _, g := range p.Groups {
		for _, s := range g.Shown {
			if s.Technique.Complexity == c {
				n++
			}
		}
	}
	return n
}

// Covered is how many of the twelve groups something covers.
func (p SkillPicture) Covered() (n int) {
	for _, g := range p.Groups {
		if len(g.Shown) > 0 {
			n++
		}
	}
	return n
}

// rank orders complexities.
func rank(c Complexity) int { return slices.Index([]Complexity{Basic, Medium, High}, c) }

// Skills is the skill picture of dishes by this reader's technique table.
func (rd Reader) Skills(dishes []practical.Dish) SkillPicture {
	var p SkillPicture
	for i, name := range Groups {
		p.Groups[i] = GroupSkills{Number: i + 1, Name: name}
	}
	for _, d := range dishes {
		one := DishSkills{Letter: d.Letter, Name: d.Name, Techniques: rd.techniquesOf(d)}
		p.Dishes = append(p.Dishes, one)
		for _, t := range one.Techniques {
			p.Groups[t.Group-1].show(t, d.Letter)
		}
	}
	for i := range p.Groups {
		slices.SortStableFunc(p.Groups[i].Shown, func(a, b ShownSkill) int { return mostComplexFirst(a.Technique, b.Technique) })
	}
	p.Raise = rd.raise(p)
	return p
}

func mostComplexFirst(a, b *Technique) int {
	return cmp.Compare(rank(b.Complexity), rank(a.Complexity))
}

func (g *GroupSkills) show(t *Technique, letter string) {
	for i := range g.Shown {
		if g.Shown[i].Technique == t {
			g.Shown[i].Dishes = append(g.Shown[i].Dishes, letter)
			return
		}
	}
	g.Shown = append(g.Shown, ShownSkill{t, []string{letter}})
}

// techniquesOf is the techniques that a dish shows: by the words of each of its
// steps, and by the words of the whole recipe.
func (rd Reader) techniquesOf(d practical.Dish) []*Technique {
	table := rd.table()
	found := map[*Technique]bool{}
	var all []token
	for _, s := range d.Steps {
		ts := tokenize(s.Text, 0)
		rd.teach(ts)
		all = append(all, ts...)
		all = append(all, token{kind: sign, text: "."})
		for _, part := range sentences(ts) {
			body := ts[part[0]:part[1]]
			for _, c := range clauses(body) {
				if t := table.find(c.verb.name, body[c.from:c.to]); t != nil {
					found[t] = true
				}
			}
		}
	}
	for _, in := range d.Ingredients {
		all = append(all, tokenize(in.Raw, 0)...)
		all = append(all, token{kind: sign, text: "."})
	}
	all = append(all, tokenize(d.Name, 0)...)
	var list []*Technique
	for i := range table.Techniques {
		t := &table.Techniques[i]
		if found[t] || len(d.Steps) > 0 && slices.ContainsFunc(t.whole, func(w [][]string) bool { return shows(w, all) }) {
			list = append(list, t)
		}
	}
	slices.SortStableFunc(list, mostComplexFirst)
	return list
}

// shows says whether the words of a recipe hold every term, and none that speaks against it.
func shows(terms [][]string, all []token) bool {
	for _, t := range terms {
		against := strings.HasPrefix(t[0], "!")
		words := t
		if against {
			words = append([]string{t[0][1:]}, t[1:]...)
		}
		if has(all, words...) == against {
			return false
		}
	}
	return true
}

// Raise is a way to a fuller picture: what is missing and what would bring it.
type Raise struct {
	Group   int
	Missing string       // a sentence without its stop: "No dish sets anything"
	Would   string       // what would, in a few words: "a custard or a jelly"
	Such    []*Technique // from the table, the less complex first
}

// missing says of each group that nothing covers it, and which usual dishes
// would. Common practice, no source.
var missing = [12]struct{ not, would string }{
	{"No dish names weighing, seasoning, testing or finishing", "tasting and seasoning, or a garnish,"},
	{"Nothing is cut with a knife", "diced vegetables or a jointed chicken"},
	{"No fruit or vegetables are prepared", "a slaw or a puree"},
	{"Neither hob nor oven nor grill is used", "any hot dish"},
	{"No food processor, blender, mixer or pasta machine is used", "a blended soup or whipped cream"},
	{"Nothing is boiled, fried, baked or roasted", "almost any hot dish"},
	{"Nothing is shaped, rolled, coated or layered", "fishcakes, a roulade or a lasagne"},
	{"No sauce is made", "a roux sauce or a coulis"},
	{"Nothing is tenderised or marinated", "a marinade or meat batted out"},
	{"No dough or pastry is made", "shortcrust or a bread dough"},
	{"Nothing is raised", "a sponge, a meringue or a yeast dough"},
	{"No dish sets anything", "a custard or a jelly"},
}

// suggestions is how many techniques a way to raise the picture names.
const suggestions = 3

// raise lists what would cover the groups that nothing covers, then what would be
// more complex in those that stay basic.
func (rd Reader) raise(p SkillPicture) (list []Raise) {
	for _, g := range p.Groups {
		if len(g.Shown) == 0 {
			m := missing[g.Number-1]
			list = append(list, Raise{g.Number, m.not, m.would, rd.above(g.Number, "")})
		}
	}
	for _, g := range p.Groups {
		if such := rd.above(g.Number, Basic); g.Level() == Basic && len(such) > 0 {
			list = append(list, Raise{Group: g.Number, Missing: fmt.Sprintf("Everything in %s is basic", g.Name), Such: such})
		}
	}
	return list
}

// above is the first techniques of a group that are held to be more complex.
func (rd Reader) above(group int, than Complexity) (list []*Technique) {
	table := rd.table()
	for i := range table.Techniques {
		t := &table.Techniques[i]
		if t.Group == group && rank(t.Complexity) > rank(than) && t.Whole+t.Match != "" && rank(t.Complexity) > rank(Basic) {
			list = append(list, t)
		}
	}
	slices.SortStableFunc(list, func(a, b *Technique) int { return -mostComplexFirst(a, b) })
	return list[:min(len(list), suggestions)]
}

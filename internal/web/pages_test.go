package web

import (
	"bytes"
	"fmt"
	"html/template"
	"net/url"
	"reflect"
	"strings"
	"testing"

	"plait.example/internal/app"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

// every pairs each template with its page: the empty page, and one with
// everything on it that a template can branch on.
func every() map[string][]any {
	field := Field{Path: "title", ID: "f-title", Label: "Title", Unit: "minutes", Hint: "h", Kind: string(line), Value: "v", Rows: 2, Faults: []practical.Fault{{Message: "m", Hint: "h"}}, Form: "form", Focus: true, Context: "step A1"}
	kinds := []Field{field}
	for _, k := range []kind{number, date, area, choice, tick, ticks} {
		f := field
		f.Kind, f.Options = string(k), []Option{{"a", "A", true}, {"b", "B", false}}
		kinds = append(kinds, f)
	}
	groups := []Group{{Legend: "l", About: "a", Fields: kinds, Entries: []Entry{{"e", kinds, Press{"remove:x[0]", "Remove"}}}, Add: &Press{"add:x", "Add"}}}
	bar := &Bar{ID: "x", Title: "t", Version: 3, Stops: []Stop{{"Clock", "/", true, 2}, {"Kitchen", "/", false, 0}}, Label: "l", At: "12:00", CanUndo: true, CanRedo: true, Undo: "u", Redo: "r", Path: "/p", Unread: true, Troubles: []Trouble{{"w", "t", "#x"}}, TroubleTitle: "1"}
	base := Base{Title: "t", Said: "s", Bar: bar}
	plain := Base{Bar: &Bar{}}
	mark := chip(0, "A", "n")
	plan := timeplantest.TooMuch()
	plan.Notes = []string{"note"}
	plan.WaysOut = append(plan.WaysOut, timeplan.WayOut{Text: "w", Demand: "finish"})
	row := PlanRow{Row: plan.Rows[0], Chip: &mark, Time: "9:00", Till: "9:30", Anchor: "row-x", Moves: true, Focus: "up"}
	row.Setting, row.Kit, row.Check, row.Safety, row.Cook = "s", "k", "c", "s", 1
	held := row
	held.Pinned, held.Before = true, true
	editor := &Editor{Text: field, Groups: groups, Why: []string{"w"}, Doubt: "d", Next: "A2", Cuts: []Option{{"3", "a", true}}}
	return map[string][]any{
		"list": {ListPage{}, ListPage{
			Kept: []app.Summary{{ID: "x", Title: "t", Date: "2026-11-25", Dishes: 1, Planned: true}}, Deleted: []app.Summary{{ID: "y"}},
			Starts: practical.StartingPoints(), Faults: practical.Faults{{Line: 3, Field: "f", Message: "m", Hint: "h"}}, File: "f",
		}},
		"class": {ClassPage{}, ClassPage{Saved: true, Classes: []ClassForm{{}, {ID: "x", Name: "n", Candidates: "c", Count: 2, Faults: practical.Faults{{Field: "name"}, {Field: "candidates", Line: 2}}}}}},
		"help":  {HelpPage{}},
		"form":  {FormPage{Base: plain}, FormPage{Base: base, Heading: "h", Action: "/a", Groups: groups, Next: Next{"/n", "next"}, Mirror: "#a"}},
		"dishes": {DishesPage{Base: plain}, DishesPage{
			Base: base, Dishes: []DishCard{{Chip: mark, Link: "/l", Steps: 1, Doubtful: 1, Wrong: 1}, {Chip: mark}}, Text: "t", Faults: practical.Faults{{Message: "m"}}, FileFaults: practical.Faults{{Message: "m", Hint: "h"}},
		}},
		"choose": {ChoosePage{Base: plain}, ChoosePage{Base: base, File: "f", Fault: "f", Recipes: []FoundRecipe{{"t", "x", 1, 2, true}, {}}}},
		"corrections": {CorrectionsPage{}, CorrectionsPage{
			List: []app.Correction{{Words: "w", Recipe: "r", Date: "2026-03-12"}}, Off: true, Done: "d", Faults: practical.Faults{{Line: 1, Message: "m", Hint: "h"}}, File: "f",
			Incoming: &Incoming{app.Incoming{Added: 1, Conflicts: []app.Conflict{{Words: "w", TheirsIn: "r"}}}, "f", "d"},
		}},
		"techniques": {TechniquesPage{}, TechniquesPage{
			Groups: []TechniqueGroup{{1, "n", []app.Technique{{Name: "n", Contested: "high"}}}, {2, "m", nil}}, Own: true, Changes: app.TechniqueChanges{Added: []string{"a"}}, Columns: app.TechniqueColumns(),
			Done: "d", Faults: practical.Faults{{Line: 2, Column: 28, Field: "f", Message: "m", Hint: "h"}, {Message: "m"}}, File: "f",
		}},
		"skills": {SkillsPage{Base: plain}, SkillsPage{
			Base: base, Title: "t", Date: "d", Dishes: []DishLevels{{mark, 1, 2, 3}}, Groups: []GroupRow{{1, "n", "high", []Shown{{"s", "high", []Chip{mark}}}, []Shown{{"s", "basic", []Chip{mark}}}}, {Number: 2}},
			Picture: app.SkillPicture{Raise: []app.Raise{{Missing: "m", Would: "w", Such: []*app.Technique{{Name: "n"}}}}},
		}},
		"dish": {DishPage{Base: plain}, DishPage{
			Base: base, Chip: mark, Name: field, About: kinds, Doubts: []Doubt{{"A1", "/l", "t", "w"}, {ID: "A2"}, {}, {}, {}, {}}, Text: []Piece{{Text: "t"}, {"t", "A1", "/l", true, true, 2}},
			Ingredients: []Line{{"r", []Used{{"A1", "/l"}, {"serving", ""}}}, {Raw: "r"}}, NotUsed: 1, Unlisted: []NotListed{{"garlic", []Used{{"A1", "/l"}}}}, Pasted: "p", Notes: []string{"n"}, Earlier: "/e", Later: "/l",
			Steps: []StepRow{{ID: "A1", Hands: kinds[:3], Wait: kinds[:3], After: "A0", Tags: []Tag{{"raw", "raw"}}, Why: []string{"w"}, Doubtful: true, First: true, Open: true, Wrong: 1, Editor: editor}, {ID: "A2", Why: []string{"w"}, Last: true}},
		}},
		"plan": {
			PlanPage{Base: plain},
			PlanPage{Base: plain, Empty: true},
			PlanPage{Base: base, Running: true, Sofar: "s", After: "/a"},
			PlanPage{Base: base, Stale: true, Failed: "f", FailHint: "h"},
			PlanPage{Base: base, Plan: plan, Status: "s", Dishes: []Chip{mark}, Rows: []PlanRow{row, held, {}}, Pair: true, Pinned: 1, Plait: template.HTML("<svg></svg>"), Words: []string{"w"}, Files: files("x"), Names: []string{"n"}, Conflict: []Clash{{"t", "A1", "/l"}, {Text: "t"}}},
		},
		"handedin": {HandedInPage{Base: plain}, HandedInPage{
			Base: base, Class: ClassTable{[]Again{{"w", 2}}, []Common{{"q", "s", "w", 2}}, []BusyRow{{"w", "w", true, []string{"a", "b"}}, {When: "w"}}}, Room: kinds[:2], RoomOpen: true, Setting: "coached", Choices: settingChoices, Asked: 2, Text: "t", Name: "n", Done: "d", Away: []app.HandedIn{{ID: 1, Name: "n"}},
			Faults: practical.Faults{{File: "f", Message: "m", Hint: "h"}, {Message: "m"}}, Unusable: practical.Faults{{Line: 1, Message: "m", Hint: "h"}}, Passed: []string{"p"}, Waiting: 9,
			Plans: []HandedCard{{HandedPlan: &app.HandedPlan{Who: "w"}, Link: "/l", Stops: 1, Change: "c", Main: "m"}, {HandedPlan: &app.HandedPlan{Later: true}, Why: "w"}},
		}},
		"handed": {HandedPage{Base: base, HandedCard: HandedCard{HandedPlan: &app.HandedPlan{Who: "w"}, Why: "w"}}, HandedPage{Base: base, HandedCard: HandedCard{HandedPlan: &app.HandedPlan{Who: "w"}, Unsaid: "u"}, Rows: []HandedRow{{}}}, HandedPage{
			Base: base, HandedCard: HandedCard{HandedPlan: &app.HandedPlan{Who: "w"}, Stops: 1, Change: "c"}, Action: "/a", Shows: true, Word: true, Unread: []string{"u"}, Done: "d", Earlier: &PlanLink{"/l", "w"}, Next: &PlanLink{"/l", "w"},
			Groups:  []FoundGroup{{"stops", "w", []FoundFault{{"stops", "w", "q", "e", "a", 1}, {Question: "q"}}}},
			Rows:    []HandedRow{{1, "9:00", "h", []Chip{mark}, "t", "p", []string{"A1 t"}, "90 %", false, true, []FoundFault{{"stops", "w", "q", "e", "a", 1}}, true}, {Number: 2, Sure: "10 %", Unsure: true}, {}},
			Correct: &Correcting{1, "t", []StepsOf{{mark, []StepChoice{{"A1", "t", true}, {ID: "A2"}}}}},
		}},
		"waiting":  {WaitingPage{Base: base, Progress: "/p", After: "/a", Sofar: "s"}},
		"error":    {ErrorPage{}, ErrorPage{Heading: "h", Message: "m", Hint: "h", Faults: practical.Faults{{Line: 1, Field: "f", Message: "m", Hint: "h"}}, Typed: []Typed{{"n", "t"}}}},
		"conflict": {ConflictPage{}, ConflictPage{Differences: []Difference{{"w", "n", "t"}}, Hidden: []Typed{{"n", "t"}}, Action: "/a"}},
	}
}

// Every template runs with its page, and no template has no page here.
func TestTemplates(t *testing.T) {
	pages := parsePages()
	cases := every()
	for name := range pages {
		if len(cases[name]) == 0 {
			t.Errorf("no page for template %s", name)
		}
	}
	for name, list := range cases {
		for i, page := range list {
			var b bytes.Buffer
			if err := pages[name].ExecuteTemplate(&b, "page", page); err != nil {
				t.Errorf("%s %d: %v", name, i, err)
			}
			if strings.Contains(b.String(), "ZgotmplZ") {
				t.Errorf("%s %d: a value was refused as unsafe", name, i)
			}
			if strings.Contains(b.String(), " style=") || strings.Contains(b.String(), "<style") || strings.Contains(b.String(), " onclick") {
				t.Errorf("%s %d: style or script in the page, which the policy blocks", name, i)
			}
		}
	}
}

const attack = `"><script>alert(1)</script><b a='`

// Whatever is typed in any field of any page comes back as text.
func TestHTMLInjection(t *testing.T) {
	s := newSite(t)
	p := menu()
	p.Title = attack
	p.Rules.SetUpVerbs = []string{attack}
	p.Kitchen.Ovens[0].Name = attack
	p.Kitchen.GasTable = []practical.GasMark{{Mark: attack}}
	for i := range p.Dishes {
		d := &p.Dishes[i]
		d.Name, d.Text, d.Serve.How, d.Allergens = attack, attack, attack, []string{attack}
		for k := range d.Steps {
			st := &d.Steps[k]
			st.Text, st.Component, st.Kit, st.Check, st.Safety, st.Why, st.Doubt = attack, attack, attack, attack, attack, []string{attack}, 0.9
			if k > 0 {
				st.After = append(st.After, practical.After{Step: attack})
			}
		}
	}
	rec := s.kept(p)
	plan := timeplantest.Sample()
	overwrite(reflect.ValueOf(plan).Elem())
	if err := s.store.SavePlan(t.Context(), rec.ID, rec.Version, plan); err != nil {
		t.Fatal(err)
	}
	s.post("/class", url.Values{"name": {attack}, "candidates": {attack}})
	at := "/practical/" + rec.ID
	for _, path := range []string{"/", "/class", at, at + "/kitchen", at + "/dishes", at + "/dishes/A", at + "/dishes/A?step=A1", at + "/plan", at + "/dishes/" + url.PathEscape(attack), at + "/dishes/A?note=" + url.QueryEscape(attack), "/practical/" + url.PathEscape(attack)} {
		s.harmless(path, s.get(path))
	}
	bad := url.Values{"version": {fmt.Sprint(rec.Version)}, "clock.start": {attack}, "kitchen.rings": {attack}, "dishes[0].steps[0].hands.low": {attack}, "text": {attack}, "do": {attack}, "row": {attack}, "at": {attack}, "back": {"//evil.example"}}
	for _, path := range []string{at, at + "/kitchen", at + "/dishes", at + "/dishes/A", at + "/plan", at + "/undo", "/practicals", "/class"} {
		s.harmless("POST "+path, s.post(path, bad))
		stale := url.Values{"version": {"999"}, "title": {attack}, "dishes[0].name": {attack}, "kitchen.rings": {attack}, "do": {"x"}}
		s.harmless("stale POST "+path, s.post(path, stale))
	}
}

// overwrite puts the attack into every text of a value.
func overwrite(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if name := v.Type().Field(i).Name; name == "Text" || name == "Kit" || name == "Check" || name == "Safety" || name == "Setting" || name == "Name" || name == "Title" || v.Field(i).Kind() == reflect.Slice || v.Field(i).Kind() == reflect.Struct {
				overwrite(v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			overwrite(v.Index(i))
		}
	case reflect.String:
		v.SetString(attack)
	}
}

func (s *site) harmless(path string, a answer) {
	s.Helper()
	if strings.Contains(a.body, "<script>alert") || a.Find("b[a]").Length() > 0 {
		s.Errorf("%s: what was typed became part of the page", path)
	}
	if a.status == 500 {
		s.Errorf("%s: status 500", path)
	}
}

package web

import (
	"net/http"

	"plait.example/internal/practical"
)

// kitchen is the page of what one cook has.
func (s *Server) kitchen(w http.ResponseWriter, r *http.Request) error {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "form", s.kitchenPage(r, edited{rec: rec, focus: r.URL.Query().Get("focus")}))
}

func (s *Server) saveKitchen(w http.ResponseWriter, r *http.Request) error {
	act := lists("kitchen")
	e, ok, err := s.edit(w, r, []string{"kitchen"}, func(p *practical.Practical, do string) (string, string, error) {
		if do == "handbook" {
			p.Kitchen.GasTable = handbook(p)
			return "the handbook’s gas table, to change", identifier("kitchen.gas-table[0]") + "-", nil
		}
		return act(p, do)
	})
	if !ok {
		return err
	}
	if len(e.unread) > 0 {
		return s.render(w, http.StatusUnprocessableEntity, "form", s.kitchenPage(r, e))
	}
	e.home(w, r, r.URL.Path, nil)
	return nil
}

// handbook is the table that the kitchen uses while it has none of its own.
func handbook(p *practical.Practical) []practical.GasMark {
	k := p.Kitchen
	k.GasTable = nil
	return k.Marks()
}

func (s *Server) kitchenPage(r *http.Request, e edited) FormPage {
	f := newForm(e.rec.Practical, r.PostForm, e.unread, e.focus)
	ovens, addOven := f.entries("kitchen.ovens", "oven", "name", "fuel", "shelves", "preheat", "up", "down", "door-recovery")
	taken, addTaken := f.entries("kitchen.taken", "kit that is taken", "kit", "number", "from", "until")
	marks, addMark := f.entries("kitchen.gas-table", "row of the gas table", "mark", "celsius", "fan", "fahrenheit")
	gas := Group{Legend: "Gas table", About: "Your room’s own figures, if they differ from the handbook’s. Without rows the handbook’s are used.", Entries: marks, Add: addMark}
	if len(marks) == 0 {
		gas.Add = &Press{Value: "handbook", Words: "Start from the handbook’s table"}
	}
	page := FormPage{
		Heading: "Kitchen", About: "What one cook, or one pair, can use.",
		Action: "/practical/" + e.rec.ID + "/kitchen",
		Groups: []Group{
			{Legend: "Ovens", Entries: ovens, Add: addOven},
			{Legend: "Hob, grill and machines", Fields: f.fields("kitchen.", "rings", "grill", "processors", "mixers", "microwaves")},
			{Legend: "Cold places", Fields: f.fields("kitchen.", "fridge-shelves", "freezer-shelves")},
			{Legend: "Kit that others have for a while", Entries: taken, Add: addTaken},
			gas,
		},
		Next: Next{"/practical/" + e.rec.ID + "/dishes", "On to the dishes"},
	}
	page.Base, page.Mirror = s.base(r, e.rec, "Kitchen", f), mirror(page.Groups)
	return page
}

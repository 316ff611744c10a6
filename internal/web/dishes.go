package web

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// DishesPage is the menu, and the place to paste a recipe.
type DishesPage struct {
	Base
	Dishes []DishCard
	Text   string           // pasted and not kept
	Faults practical.Faults // of the pasted text

	FileFaults practical.Faults // of a file
	Enough     bool             // as many dishes as are asked for: the road goes on
}

// DishCard is a dish of the menu in short.
type DishCard struct {
	Chip
	Link            string
	Steps, Minutes  int // hands minutes, likely
	Doubtful, Wrong int // steps to look at; faults
	Served          string
}

func (s *Server) dishes(w http.ResponseWriter, r *http.Request) error {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "dishes", s.dishesPage(r, rec))
}

func (s *Server) dishesPage(r *http.Request, rec app.Record) DishesPage {
	f := newForm(rec.Practical, nil, nil, "")
	page := DishesPage{}
	for i, d := range rec.Practical.Dishes {
		card := DishCard{
			Chip: chip(i, d.Letter, named(d)), Link: "/practical/" + rec.ID + "/dishes/" + url.PathEscape(d.Letter),
			Steps: len(d.Steps), Served: heatWords(d.Serve.Heat),
			Wrong: countWithin(f.faults, []string{fmt.Sprintf("dishes[%d]", i)}),
		}
		for _, step := range d.Steps {
			card.Minutes += step.Hands.Likely
			if doubtful(step) {
				card.Doubtful++
			}
		}
		page.Dishes = append(page.Dishes, card)
	}
	page.Enough = len(page.Dishes) >= max(1, rec.Practical.Rules.Dishes)
	page.Base = s.base(r, rec, "Dishes", f)
	for i, trouble := range page.Bar.Troubles {
		page.Bar.Troubles[i].Link = s.troubleLink(rec, f.faults, trouble)
	}
	return page
}

// troubleLink leads from the menu to the page of the dish that a fault is about.
func (s *Server) troubleLink(rec app.Record, faults practical.Faults, t Trouble) string {
	for _, fault := range faults {
		if names, err := parts(fault.Field); err == nil && say(rec.Practical, fault.Field) == t.Where &&
			names[0].name == "dishes" && names[0].index >= 0 && names[0].index < len(rec.Practical.Dishes) {
			link := "/practical/" + rec.ID + "/dishes/" + url.PathEscape(rec.Practical.Dishes[names[0].index].Letter)
			if len(names) > 1 && names[1].index >= 0 && names[1].index < len(rec.Practical.Dishes[names[0].index].Steps) {
				link += "?step=" + url.QueryEscape(rec.Practical.Dishes[names[0].index].Steps[names[1].index].ID)
			}
			return link
		}
	}
	return t.Link
}

// saveDishes adds a dish from a pasted text or empty, or takes one away.
func (s *Server) saveDishes(w http.ResponseWriter, r *http.Request) error {
	id := r.PathValue("id")
	verb, letter, _ := strings.Cut(r.PostFormValue("do"), ":")
	if verb == "remove" {
		rec, _, err := s.app.Change(r.Context(), id, version(r), "remove dish "+letter, func(p *practical.Practical) practical.Faults {
			app.RemoveDish(p, letter)
			return nil
		})
		if err != nil {
			return s.settle(w, r, rec, err)
		}
		edited{rec: rec}.home(w, r, r.URL.Path, nil)
		return nil
	}
	text := strings.ReplaceAll(r.PostFormValue("text"), "\r\n", "\n")
	if verb == "empty" {
		text = ""
	} else if strings.TrimSpace(text) == "" {
		rec, err := s.app.Open(r.Context(), id)
		if err != nil {
			return err
		}
		return s.pasteAgain(w, r, rec, text, practical.Faults{{Field: "text", Message: "there is no recipe in the box", Hint: "paste its ingredients and method, or add an empty dish"}})
	}
	if several, rec, err := s.severalPasted(r, text); err != nil || len(several) > 1 {
		if err != nil {
			return err
		}
		return s.choose(w, r, rec, pastedText, several)
	}
	rec, faults, err := s.app.AddDish(r.Context(), id, version(r), text)
	var fault practical.Fault
	if asFault(err, &fault) && fault.Code != practical.Conflict && fault.Code != practical.NotFound {
		now, reload := s.app.Open(r.Context(), id)
		if reload != nil {
			return reload
		}
		return s.pasteAgain(w, r, now, text, practical.Faults{fault})
	}
	return s.added(w, r, rec, faults, err, text)
}

// severalPasted is the recipes in a pasted text, and the practical they may go
// into; none in a text that is too long to be read, which AddDish tells of.
func (s *Server) severalPasted(r *http.Request, text string) ([]app.Recipe, app.Record, error) {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil || len(text) > app.MostText {
		return nil, rec, err
	}
	reader, err := s.app.Reader(r.Context())
	if err != nil {
		return nil, rec, err
	}
	return full(reader.Read(text)), rec, nil
}

// leftOut says of words from a pasted text that they have become no step; a note
// of the reader's own is told as it is.
func leftOut(message, text string) string {
	if strings.Contains(text, message) {
		return "Kept, but not made into a step: “" + message + "”"
	}
	return message
}

// pasteAgain shows the page with the text as it was pasted and what is wrong with it.
func (s *Server) pasteAgain(w http.ResponseWriter, r *http.Request, rec app.Record, text string, faults practical.Faults) error {
	page := s.dishesPage(r, rec)
	page.Text, page.Faults, page.Said = text, faults, "Not added. "+faults[0].Message
	code, _ := status(faults[0].Code)
	if faults[0].Code == "" {
		code = http.StatusUnprocessableEntity
	}
	return s.render(w, code, "dishes", page)
}

func named(d practical.Dish) string {
	if d.Name == "" {
		return "Dish without a name"
	}
	return d.Name
}

func heatWords(h practical.Heat) string {
	for _, o := range words["dishes.serve.heat"].options {
		if o.Value == string(h) {
			return o.Text
		}
	}
	return string(h)
}

// dishIndex finds a dish of a practical, -1 when it has none of that letter.
func dishIndex(p *practical.Practical, letter string) int {
	return slices.IndexFunc(p.Dishes, func(d practical.Dish) bool { return d.Letter == letter })
}

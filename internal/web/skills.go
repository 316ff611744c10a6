package web

import (
	"net/http"

	"plait.example/internal/app"
)

// SkillsPage is the skill picture of a practical's menu; it prints on one sheet.
type SkillsPage struct {
	Base
	Title   string // of the practical
	Date    string
	Dishes  []DishLevels
	Groups  []GroupRow
	Picture app.SkillPicture
	Chips   map[string]Chip // by letter
}

// DishLevels is how many techniques of each level a dish shows.
type DishLevels struct {
	Chip
	Basic, Medium, High int
}

// GroupRow is a skill group: what covers it, its basic techniques apart.
type GroupRow struct {
	Number      int
	Name, Level string
	Hard, Plain []Shown // medium or high; basic
}

// Shown is a technique and the dishes that show it.
type Shown struct {
	Name, Level string
	Dishes      []Chip
}

func (s *Server) skills(w http.ResponseWriter, r *http.Request) error {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	picture, err := s.app.Skills(r.Context(), rec.Practical)
	if err != nil {
		return err
	}
	page := SkillsPage{Base: s.base(r, rec, "Dishes", nil), Title: rec.Practical.Title, Date: day(rec.Practical.Date), Picture: picture, Chips: map[string]Chip{}}
	page.Base.Title, page.Bar.Troubles = "Skills · "+page.Bar.Title, nil
	for i, d := range picture.Dishes {
		mark := chip(i, d.Letter, named(rec.Practical.Dishes[i]))
		page.Chips[d.Letter] = mark
		page.Dishes = append(page.Dishes, DishLevels{mark, d.Count("basic"), d.Count("medium"), d.Count("high")})
	}
	for _, g := range picture.Groups {
		row := GroupRow{Number: g.Number, Name: capital(g.Name), Level: string(g.Level())}
		for _, one := range g.Shown {
			shown := Shown{Name: one.Technique.Name, Level: string(one.Technique.Complexity)}
			for _, letter := range one.Dishes {
				shown.Dishes = append(shown.Dishes, page.Chips[letter])
			}
			if shown.Level == "basic" {
				row.Plain = append(row.Plain, shown)
			} else {
				row.Hard = append(row.Hard, shown)
			}
		}
		page.Groups = append(page.Groups, row)
	}
	return s.render(w, http.StatusOK, "skills", page)
}

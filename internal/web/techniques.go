package web

import (
	"fmt"
	"net/http"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// TechniquesPage is the technique table in use, to read, to download and to replace.
type TechniquesPage struct {
	Base
	Groups  []TechniqueGroup
	All     int
	Own     bool // the teacher's own table
	Changes app.TechniqueChanges
	Columns []app.TechniqueColumn
	Done    string
	Faults  practical.Faults // of a table that was sent
	File    string
}

// TechniqueGroup is the techniques of a skill group.
type TechniqueGroup struct {
	Number int
	Name   string
	List   []app.Technique
}

func (s *Server) techniques(w http.ResponseWriter, r *http.Request) error {
	page, err := s.techniquesPage(r)
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "techniques", page)
}

func (s *Server) techniquesPage(r *http.Request) (TechniquesPage, error) {
	table, own, err := s.app.Techniques(r.Context())
	if err != nil {
		return TechniquesPage{}, err
	}
	done := doneWords[r.URL.Query().Get("done")]
	page := TechniquesPage{
		Base: Base{Title: "Techniques", Here: "techniques", Said: done}, Own: own, Changes: app.ChangesOf(table),
		All: len(table.Techniques), Columns: app.TechniqueColumns(), Done: done,
	}
	for i, name := range app.SkillGroups() {
		group := TechniqueGroup{Number: i + 1, Name: name}
		for _, t := range table.Techniques {
			if t.Group == i+1 {
				group.List = append(group.List, t)
			}
		}
		page.Groups = append(page.Groups, group)
	}
	return page, nil
}

// techniquesFile sends the table in use for a spreadsheet.
func (s *Server) techniquesFile(w http.ResponseWriter, r *http.Request) error {
	table, _, err := s.app.Techniques(r.Context())
	if err != nil {
		return err
	}
	return send(w, app.Document{Name: "techniques.csv", MediaType: "text/csv; charset=utf-8", Data: table.Write()}, true)
}

// saveTechniques keeps a table from a spreadsheet, or shows its faults by row and column.
func (s *Server) saveTechniques(w http.ResponseWriter, r *http.Request) error {
	name, data, err := sent(r)
	if err == nil {
		_, err = s.app.UseTechniques(r.Context(), name, data)
	}
	if err == nil {
		http.Redirect(w, r, "/techniques?done=kept", http.StatusSeeOther)
		return nil
	}
	faults, ok := faultsOf(err)
	if !ok {
		return err
	}
	page, err := s.techniquesPage(r)
	if err != nil {
		return err
	}
	page.Faults, page.File = faults, name
	page.Said = fmt.Sprintf("The table is not kept: %s", things(len(faults)))
	return s.render(w, http.StatusUnprocessableEntity, "techniques", page)
}

// dropTechniques goes back to the table that comes with plait.
func (s *Server) dropTechniques(w http.ResponseWriter, r *http.Request) error {
	if err := s.app.DropTechniques(r.Context()); err != nil {
		return err
	}
	http.Redirect(w, r, "/techniques?done=dropped", http.StatusSeeOther)
	return nil
}

// cell names a cell as a spreadsheet does: row 3, column 2 is B3.
func cell(row, column int) string {
	name := ""
	for n := column; n > 0; n = (n - 1) / 26 {
		name = string(rune('A'+(n-1)%26)) + name
	}
	return fmt.Sprintf("%s%d", name, row)
}

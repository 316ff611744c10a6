package web

import (
	"net/http"
	"strconv"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// roomFields asks how many of each kind the room has.
func roomFields(room app.Room) (fields []Field) {
	for _, kind := range app.SharedKit() {
		f := Field{Path: kind, ID: "room-" + strings.ReplaceAll(kind, " ", "-"), Label: capital(kind), Kind: string(number)}
		for k, n := range room {
			if string(k) == kind {
				f.Value = strconv.Itoa(n)
			}
		}
		fields = append(fields, f)
	}
	return fields
}

// saveRoom keeps how many of each kind the room has.
func (s *Server) saveRoom(w http.ResponseWriter, r *http.Request) error {
	said := map[string]string{}
	for _, kind := range app.SharedKit() {
		said[kind] = r.PostFormValue(kind)
	}
	err := s.app.SetRoom(r.Context(), r.PathValue("id"), said)
	if err == nil {
		http.Redirect(w, r, strings.TrimSuffix(r.URL.Path, "/room")+"?done=room#room", http.StatusSeeOther)
		return nil
	}
	page, faults, err := s.refusedPage(r, err)
	if err != nil {
		return err
	}
	for i, f := range page.Room {
		page.Room[i].Value = said[f.Path]
		for _, fault := range faults {
			if fault.Field == f.Path {
				page.Room[i].Faults = append(page.Room[i].Faults, practical.Fault{Message: fault.Message, Hint: fault.Hint})
			}
		}
	}
	page.RoomOpen, page.Said = true, "The room was not kept. "+faults[0].Message
	return s.render(w, http.StatusUnprocessableEntity, "handedin", page)
}

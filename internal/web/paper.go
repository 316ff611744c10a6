package web

import (
	"mime"
	"net/http"
	"strconv"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/picture"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// printPolicy lets the printed page bring its own style and fonts, which stand
// in it; it has no script.
const printPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; font-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// planned is the practical's plan, or a fault that says there is none yet.
func (s *Server) planned(r *http.Request) (*timeplan.Plan, error) {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return nil, err
	}
	if rec.Plan == nil {
		return nil, practical.Fault{Code: practical.NotFound, Message: "there is no plan of this practical as it is now", Hint: "go to its plan and press Dovetail"}
	}
	return rec.Plan, nil
}

func sheet(r *http.Request) app.Sheet {
	q := r.URL.Query()
	return app.Sheet{Landscape: q.Has("landscape"), LargeType: q.Has("large"), Name: q.Get("name")}
}

// print shows the plan as the printer will have it.
func (s *Server) print(w http.ResponseWriter, r *http.Request) error {
	plan, err := s.planned(r)
	if err != nil {
		return err
	}
	doc, err := s.app.Paper(plan, app.HTML, sheet(r))
	if err != nil {
		return err
	}
	w.Header().Set("Content-Security-Policy", printPolicy)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, err = w.Write(doc.Data)
	return err
}

// paper sends the plan as a file.
func (s *Server) paper(format app.Format) func(http.ResponseWriter, *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		plan, err := s.planned(r)
		if err != nil {
			return err
		}
		doc, err := s.app.Paper(plan, format, sheet(r))
		if err != nil {
			return err
		}
		return send(w, doc, format != app.Text)
	}
}

// export sends the practical as a practical file.
func (s *Server) export(w http.ResponseWriter, r *http.Request) error {
	doc, err := s.app.Export(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	return send(w, doc, true)
}

func send(w http.ResponseWriter, doc app.Document, keep bool) error {
	w.Header().Set("Content-Type", doc.MediaType)
	if keep {
		w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": doc.Name}))
	}
	w.Header().Set("Content-Length", strconv.Itoa(len(doc.Data)))
	_, err := w.Write(doc.Data)
	return err
}

// plait sends the picture alone: with its words, or, when the heights of a
// page's rows are given, drawn on their clock.
func (s *Server) plait(w http.ResponseWriter, r *http.Request) error {
	plan, err := s.planned(r)
	if err != nil {
		return err
	}
	options := picture.Options{Rows: true, Width: 900}
	if heights := heights(r.URL.Query().Get("heights"), len(plan.Rows)); heights != nil {
		options = besideRows(heights)
		if rows := picture.Layout(plan, options).Rows; len(rows) > 0 {
			w.Header().Set("Plait-Top", strconv.FormatFloat(rows[0].Top, 'f', 1, 64))
		}
	}
	w.Header().Set("Content-Type", "image/svg+xml")
	_, err = w.Write(picture.Plait(plan, options))
	return err
}

// heights reads the heights of a page's rows, one for each row of the plan; nil
// when they are not that.
func heights(text string, rows int) []float64 {
	words := strings.Split(text, ",")
	if text == "" || len(words) != rows {
		return nil
	}
	read := make([]float64, len(words))
	for i, word := range words {
		h, err := strconv.ParseFloat(word, 64)
		if err != nil || !(h >= 0 && h <= 4000) {
			return nil
		}
		read[i] = h
	}
	return read
}

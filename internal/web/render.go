package web

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"net/http"
	"path"
	"strings"

	"plait.example/internal/practical"
)

//go:embed pages/*.html
var pageFiles embed.FS

// Base is what every page has.
type Base struct {
	Title string // of the window
	Here  string // which entry of the head's links is this page
	Said  string // told to those who hear the page
	Bar   *Bar   // of a practical's pages
}

// parsePages reads the templates: one set a page, each with the shared parts
// (files that begin with _). A template that does not parse is a broken build.
func parsePages() map[string]*template.Template {
	files, err := pageFiles.ReadDir("pages")
	if err != nil {
		panic("web: " + err.Error())
	}
	pages := map[string]*template.Template{}
	for _, f := range files {
		if strings.HasPrefix(f.Name(), "_") {
			continue
		}
		name := strings.TrimSuffix(f.Name(), path.Ext(f.Name()))
		pages[name] = template.Must(template.New(name).Funcs(template.FuncMap{
			"clock":   func(t practical.TimeOfDay, hours int) string { return t.Write(hours) },
			"asset":   address,
			"plus":    func(a, b int) int { return a + b },
			"count":   count,
			"capital": capital,
			"cell":    cell,
		}).ParseFS(pageFiles, "pages/_*.html", "pages/"+f.Name()))
	}
	return pages
}

// render writes a page. A template that fails writes nothing of it.
func (s *Server) render(w http.ResponseWriter, status int, name string, page any) error {
	var b bytes.Buffer
	set, ok := s.pages[name]
	if !ok {
		return fmt.Errorf("there is no page %q", name)
	}
	if err := set.ExecuteTemplate(&b, "page", page); err != nil {
		return fmt.Errorf("page %s: %w", name, err)
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = b.WriteTo(w)
	return nil
}

// count writes a number with its noun: “1 minute”, “2 minutes”.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	if strings.HasSuffix(noun, "sh") {
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

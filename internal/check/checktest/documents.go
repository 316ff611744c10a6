package checktest

import (
	"embed"
	"fmt"
	"strings"
)

// office holds the documents that LibreOffice 25.2 made of layouts written here
// (see TestWriteDocuments): a plan's name, its layout, and .docx, .odt, .xlsx or .ods.
//
//go:embed documents
var office embed.FS

// Document is a plan in a file.
type Document struct {
	Plan   Plan
	Layout string
	Name   string // of the file
	Data   []byte
}

// Few of the documents, for a run that is slow: every eighth.
func Few(documents []Document) []Document {
	var few []Document
	for i := 0; i < len(documents); i += 8 {
		few = append(few, documents[i])
	}
	return few
}

// Documents gives every plan of a folder, sound ones first, each in one document.
func Documents(folder string) ([]Document, error) {
	sound, err := Sound(folder)
	if err != nil {
		return nil, err
	}
	faulty, err := Faulty(folder)
	if err != nil {
		return nil, err
	}
	var all []Document
	for i, p := range append(sound, faulty...) {
		d, err := document(p, i)
		if err != nil {
			return nil, err
		}
		all = append(all, d)
	}
	return all, nil
}

func document(p Plan, i int) (Document, error) {
	l, ext := layoutOf(p.Folder, i)
	d := Document{Plan: p, Layout: l.Name, Name: p.Name + "." + l.Name + ext}
	if ext == l.Ext {
		d.Data = l.Document(p, i)
		return d, nil
	}
	data, err := office.ReadFile("documents/" + d.Name)
	if err != nil {
		return d, fmt.Errorf("%s: write it with: go test ./internal/check/checktest -run TestWriteDocuments -soffice soffice", d.Name)
	}
	d.Data = data
	return d, nil
}

// layoutOf is the layout of the i-th document of a folder, and its extension.
func layoutOf(folder string, i int) (Layout, string) {
	if folder == Fourth || folder == Fifth { // layouts of both lists in turn, as they are written here
		l := append(append([]Layout(nil), Layouts...), OtherLayouts...)[(5*i)%(len(Layouts)+len(OtherLayouts))]
		return l, l.Ext
	}
	if folder != Third {
		l := Layouts[i%len(Layouts)]
		return l, extension(i, l)
	}
	l := OtherLayouts[i%len(OtherLayouts)]
	if len(l.Made) == 0 {
		return l, l.Ext
	}
	return l, l.Made[i/len(OtherLayouts)%len(l.Made)]
}

// extension is that of the i-th document: three of four web pages become documents of an office.
func extension(i int, l Layout) string {
	if l.Ext != ".html" {
		return l.Ext
	}
	return []string{".docx", ".html", ".odt", ".docx", ".xlsx", ".html", ".ods"}[(i+i/len(Layouts))%7]
}

// Practical is the text of a plan's practical file.
func (p Plan) Practical() (string, error) {
	data, err := Menus.ReadFile(p.Folder + "/" + p.Menu + "/practical.yaml")
	text := string(data)
	if p.Finish != "" {
		at := strings.Index(text, "finish: ")
		text = text[:at] + "finish: " + p.Finish + text[at+len("finish: 12:00"):]
	}
	if p.Extra > 0 {
		text = strings.Replace(text, "clock: {", fmt.Sprintf("clock: {extra-time: {set-up: 0, cook: %d, serve: 0}, ", p.Extra), 1)
	}
	if p.Rings > 0 {
		text = strings.Replace(text, "rings: 4", fmt.Sprintf("rings: %d", p.Rings), 1)
	}
	if p.Shelves > 0 {
		text = strings.Replace(text, "shelves: 2", fmt.Sprintf("shelves: %d", p.Shelves), 1)
	}
	if p.OneGrill {
		text = strings.Replace(text, "grill: separate", "grill: in-oven", 1)
	}
	return text, err
}

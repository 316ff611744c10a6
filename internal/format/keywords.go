package format

import (
	"bytes"
	"html"
	"regexp"
	"strings"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/packed"
)

var (
	pageKeywords = regexp.MustCompile(`(?i)<meta name="keywords" content="([^"]*)">`)
	pdfKeywords  = regexp.MustCompile(`/Keywords *\(([^()\\]*)\)`)
)

// Keywords are those in the properties of a Word document, a workbook, a web page
// or a PDF whose properties are not packed; empty: none were found. No more than
// that is read of it.
func Keywords(data []byte) string {
	switch head := data[:min(len(data), 4096)]; {
	case bytes.HasPrefix(head, []byte("PK\x03\x04")):
		p, err := packed.Open(data)
		if err != nil {
			return ""
		}
		root, err := p.Part("docProps/core.xml", "keywords")
		if err != nil {
			return ""
		}
		return strings.TrimSpace(root.Child("keywords").Content())
	case bytes.Contains(head, []byte("%PDF-")):
		if m := pdfKeywords.FindSubmatch(data); m != nil {
			return string(m[1])
		}
	default:
		if m := pageKeywords.FindSubmatch(head); m != nil {
			return html.UnescapeString(string(m[1]))
		}
	}
	return ""
}

// ReturnedAsSent says whether a document is one into which comments were put
// here, with nothing of its words changed since.
func ReturnedAsSent(data []byte) bool {
	return bytes.HasPrefix(data, []byte("PK\x03\x04")) && docx.Untouched(data)
}

package webpage

import (
	"encoding/json"
	"strings"
)

// An object of schema.org's vocabulary is a map from property to value, with its
// types under "@type", whichever of the three syntaxes it was written in. A
// value is a string, a json.Number, a bool, nil, an object, or a list of them.
type object = map[string]any

// linked is every top-level value of the page's JSON-LD. Data that are not JSON,
// even when what pages often get wrong is mended, are passed over.
func linked(root *node) (values []any) {
	root.each(func(n *node) bool {
		if n.tag == "script" && strings.Contains(strings.ToLower(n.attribute("type")), "ld+json") {
			if v, ok := decodeJSON(n.content()); ok {
				values = append(values, v)
			}
		}
		return true
	})
	return values
}

func decodeJSON(source string) (any, bool) {
	source = strings.TrimSpace(source)
	for _, wrap := range []string{"<!--", "//<![CDATA[", "<![CDATA[", "/*<![CDATA[*/"} {
		source = strings.TrimSpace(strings.TrimPrefix(source, wrap))
	}
	if v, ok := unmarshal(source); ok {
		return v, true
	}
	return unmarshal(mend(source))
}

// unmarshal reads the first JSON value of a text; what follows it is not read.
func unmarshal(source string) (v any, ok bool) {
	d := json.NewDecoder(strings.NewReader(source))
	d.UseNumber()
	return v, d.Decode(&v) == nil
}

// mend takes out what makes pages' JSON invalid most often: line ends and tabs
// inside strings, escapes that JSON has not, commas before a closing bracket.
func mend(source string) string {
	var b strings.Builder
	inside := false
	for i := 0; i < len(source); i++ {
		c := source[i]
		switch {
		case c == '"':
			inside = !inside
		case inside && c < ' ':
			c = ' '
		case inside && c == '\\' && i+1 < len(source):
			i++
			if strings.IndexByte(`"\/bfnrtu`, source[i]) >= 0 {
				b.WriteByte('\\')
			}
			c = source[i]
		case !inside && c == ',':
			if rest := strings.TrimLeft(source[i+1:min(len(source), i+200)], " \t\r\n"); rest != "" && (rest[0] == ']' || rest[0] == '}') {
				continue
			}
		}
		b.WriteByte(c)
	}
	return b.String()
}

package check

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"

	"plait.example/internal/practical"
)

// mostRules is the largest file of rules that is read, in bytes.
const mostRules = 1 << 20

// everyPlace are the places that every wording may name; a rule's own are those
// of its usual wordings and its limits.
var everyPlace = []string{"row", "other", "rows", "dish", "time", "other-time", "minutes"}

// ReadRules reads a teacher's own file (YAML) over the usual rules: under
// "rules", by name, what is to be other than usual: on, severity, evidence,
// question, answer, and limits by name. It gives back all faults at once, each
// with its line; where there is any, the rules are the usual ones. It never panics.
func ReadRules(name string, data []byte) (rules Rules, faults practical.Faults) {
	defer func() {
		if recover() != nil { // the library's own failing on a malformed text
			rules, faults = Usual(), practical.Faults{{File: name, Line: 1, Message: "the file is not readable as YAML", Hint: "compare it with the example in docs/checking.md", Code: practical.Invalid}}
		}
		for i := range faults {
			faults[i].File = name
		}
	}()
	r := &ruleReader{rules: Usual()}
	if len(data) > mostRules {
		r.faults = practical.Faults{{Message: fmt.Sprintf("the file is larger than %d bytes", mostRules), Hint: "a file of rules holds only what it changes", Code: practical.TooLarge}}
		return Usual(), r.faults
	}
	r.file(data)
	slices.SortStableFunc(r.faults, func(a, b practical.Fault) int { return a.Line - b.Line })
	if len(r.faults) > 0 {
		return Usual(), r.faults
	}
	return r.rules, nil
}

// ruleReader changes rules by a file. It collects faults and carries on.
type ruleReader struct {
	rules  Rules
	faults practical.Faults
}

func (r *ruleReader) fault(at ast.Node, field, message, hint string) {
	f := practical.Fault{Field: field, Message: message, Hint: hint, Code: practical.Invalid}
	if tok := at.GetToken(); tok != nil && tok.Position != nil {
		f.Line, f.Column = tok.Position.Line, tok.Position.Column
	}
	r.faults = append(r.faults, f)
}

func (r *ruleReader) file(data []byte) {
	if f := practical.TooDeep(data); f != nil {
		r.faults = append(r.faults, *f)
		return
	}
	file, err := parser.ParseBytes(bytes.TrimPrefix(data, []byte("\ufeff")), 0)
	if err != nil {
		r.faults = append(r.faults, syntax(err))
		return
	}
	for _, doc := range file.Docs {
		if doc.Body == nil {
			continue
		}
		for _, f := range r.fields(doc.Body, "") {
			if key(f) != "rules" {
				r.fault(f.Key, key(f), fmt.Sprintf("unknown field %q", key(f)), "known here: rules")
				continue
			}
			if f.Value.Type() == ast.NullType {
				continue
			}
			for _, rule := range r.fields(f.Value, "rules") {
				r.rule(rule)
			}
		}
	}
}

func syntax(err error) practical.Fault {
	f := practical.Fault{Line: 1, Message: "the file is not readable as YAML", Hint: "check the indentation, the colons and the quotes near here", Code: practical.Invalid}
	var at *yaml.SyntaxError
	if errors.As(err, &at) {
		f.Message += ": " + at.Message
		if at.Token != nil && at.Token.Position != nil {
			f.Line, f.Column = at.Token.Position.Line, at.Token.Position.Column
		}
	}
	return f
}

func key(f *ast.MappingValueNode) string { return text(f.Key) }

// text is what a single value says.
func text(n ast.Node) string {
	switch n := n.(type) {
	case *ast.StringNode:
		return n.Value
	case *ast.LiteralNode:
		return n.Value.Value
	}
	if tok := n.GetToken(); tok != nil {
		return tok.Value
	}
	return ""
}

// fields are the entries of a table.
func (r *ruleReader) fields(n ast.Node, field string) []*ast.MappingValueNode {
	switch n := n.(type) {
	case *ast.MappingNode:
		return n.Values
	case *ast.MappingValueNode:
		return []*ast.MappingValueNode{n}
	}
	r.fault(n, field, "a table of names and values was expected here", "write a name, a colon, and what belongs to it on lines below, further in")
	return nil
}

func (r *ruleReader) rule(f *ast.MappingValueNode) {
	i := slices.IndexFunc(r.rules.list, func(rule Rule) bool { return rule.Name == key(f) })
	if i < 0 {
		r.fault(f.Key, "rules."+key(f), fmt.Sprintf("there is no rule %q", key(f)), "the names are in docs/checking.md, such as in-never-out")
		return
	}
	rule := &r.rules.list[i]
	for _, part := range r.fields(f.Value, "rules."+rule.Name) {
		r.part(rule, part, "rules."+rule.Name+"."+key(part))
	}
}

func (r *ruleReader) part(rule *Rule, f *ast.MappingValueNode, field string) {
	value := text(f.Value)
	switch key(f) {
	case "on":
		b, ok := f.Value.(*ast.BoolNode)
		if !ok {
			r.fault(f.Value, field, fmt.Sprintf("%q is not true or false", value), "write true or false")
			return
		}
		rule.On = b.Value
	case "severity":
		if rank(Severity(value)) < 0 {
			r.fault(f.Value, field, fmt.Sprintf("%q is not a severity", value), "one of stops, marks, polish")
			return
		}
		rule.Severity = Severity(value)
	case "evidence":
		r.wording(&rule.Evidence, rule, f.Value, field)
	case "question":
		r.wording(&rule.Question, rule, f.Value, field)
	case "answer":
		r.wording(&rule.Answer, rule, f.Value, field)
	case "limits":
		rule.Limits = slices.Clone(rule.Limits)
		for _, l := range r.fields(f.Value, field) {
			r.limit(rule, l, field+"."+key(l))
		}
	default:
		r.fault(f.Key, field, fmt.Sprintf("unknown field %q", key(f)), "known here: on, severity, evidence, question, answer, limits")
	}
}

// wording takes a new wording, whose places must be ones that the rule fills.
func (r *ruleReader) wording(to *string, rule *Rule, n ast.Node, field string) {
	if _, single := n.(ast.ScalarNode); !single {
		r.fault(n, field, "a text was expected here", "write the wording in quotes")
		return
	}
	value := text(n)
	known := rule.places()
	for _, p := range placesOf(value) {
		if !slices.Contains(known, p) {
			r.fault(n, field, fmt.Sprintf("this rule does not know {%s}", p), "known here: {"+strings.Join(known, "}, {")+"}")
			return
		}
	}
	*to = value
}

// places are the names that the rule's wordings may hold.
func (r Rule) places() []string {
	known := slices.Clone(everyPlace)
	usualRule, _ := Rules{}.Named(r.Name)
	for _, wording := range []string{usualRule.Evidence, usualRule.Question, usualRule.Answer} {
		for _, p := range placesOf(wording) {
			if !slices.Contains(known, p) {
				known = append(known, p)
			}
		}
	}
	for _, l := range r.Limits {
		if !slices.Contains(known, l.Name) {
			known = append(known, l.Name)
		}
	}
	return known
}

// placesOf are the names in braces of a wording.
func placesOf(wording string) (names []string) {
	for {
		_, rest, found := strings.Cut(wording, "{")
		name, after, closed := strings.Cut(rest, "}")
		if !found || !closed {
			return names
		}
		names = append(names, name)
		wording = after
	}
}

// limit takes a new figure for a limit that the rule has.
func (r *ruleReader) limit(rule *Rule, f *ast.MappingValueNode, field string) {
	i := slices.IndexFunc(rule.Limits, func(l Limit) bool { return l.Name == key(f) })
	if i < 0 {
		var names []string
		for _, l := range rule.Limits {
			names = append(names, l.Name)
		}
		hint := "this rule has none"
		if len(names) > 0 {
			hint = "known here: " + strings.Join(names, ", ")
		}
		r.fault(f.Key, field, fmt.Sprintf("there is no limit %q", key(f)), hint)
		return
	}
	n, ok := whole(f.Value)
	if !ok || n < 0 || n > 1000 {
		r.fault(f.Value, field, fmt.Sprintf("%q is not a whole number from 0 to 1000", text(f.Value)), "write a number of "+rule.Limits[i].Unit+", such as "+fmt.Sprint(rule.Limits[i].Value))
		return
	}
	rule.Limits[i].Value, rule.Limits[i].Source = n, "the teacher's"
}

func whole(n ast.Node) (int, bool) {
	i, ok := n.(*ast.IntegerNode)
	if !ok {
		return 0, false
	}
	switch v := i.Value.(type) {
	case int64:
		return int(v), v < 1<<31
	case uint64:
		return int(v), v < 1<<31 // a file's whole numbers come so
	}
	return 0, false
}

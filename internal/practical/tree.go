package practical

import (
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
)

// kind is what a node of the file is.
type kind int

const (
	nothing kind = iota
	scalar
	list
	table
)

// node is a value of the file with its place: YAML without anchors, tags and styles.
type node struct {
	kind   kind
	line   int // from 1
	column int // from 1
	text   string
	plain  bool // a number or true or false, not words
	items  []*node
	fields []field
}

// field is one entry of a table, in the order of the file.
type field struct {
	key   string
	at    *node // where the key stands
	value *node
}

// readTree reads YAML. It never panics: what the reader of YAML cannot digest is a fault.
func readTree(data []byte) (root *node, faults Faults) {
	if fault := refuse(data); fault != nil {
		return nil, Faults{*fault}
	}
	defer func() {
		if recover() != nil { // the library's own failing on a malformed text
			root, faults = nil, Faults{{Line: 1, Message: "the file is not readable as YAML", Hint: "compare it with one of the examples", Code: Invalid}}
		}
	}()
	tokens := lexer.Tokenize(string(data))
	if at := tooWide(tokens); at != nil {
		return nil, Faults{{
			Line: at.Position.Line, Column: at.Position.Column, Message: "the file holds too much",
			Hint: fmt.Sprintf("at most %d names in one table", maxTable), Code: TooLarge,
		}}
	}
	file, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		return nil, Faults{syntaxFault(err)}
	}
	t := &treeReader{anchors: map[string]ast.Node{}, open: map[string]bool{}}
	for _, doc := range file.Docs {
		if doc.Body == nil {
			continue
		}
		if root != nil {
			t.fault(doc.Body, "the file holds more than one document", "keep one practical in a file, without a second ---")
			break
		}
		root = t.read(doc.Body, 0)
	}
	return root, t.faults
}

func syntaxFault(err error) Fault {
	f := Fault{Message: "the file is not readable as YAML", Hint: "check the indentation, the colons and the quotes near here", Code: Invalid}
	var syntax *yaml.SyntaxError
	if errors.As(err, &syntax) {
		f.Message += ": " + strings.ReplaceAll(syntax.Message, "\t", `\t`)
		if syntax.Token != nil && syntax.Token.Position != nil {
			f.Line, f.Column = syntax.Token.Position.Line, syntax.Token.Position.Column
		}
	}
	return f
}

// treeReader turns the library's tree into nodes, writing out aliases within a budget.
type treeReader struct {
	anchors map[string]ast.Node
	open    map[string]bool // aliases being written out: a ring of them has no end
	nodes   int
	full    bool
	faults  Faults
}

func (t *treeReader) fault(at ast.Node, message, hint string) {
	n := place(at)
	t.faults = append(t.faults, Fault{Line: n.line, Column: n.column, Message: message, Hint: hint, Code: Invalid})
}

// place is an empty node where the library's node begins.
func place(n ast.Node) *node {
	out := &node{}
	if mapping, ok := n.(*ast.MappingNode); ok && !mapping.IsFlowStyle && len(mapping.Values) > 0 {
		n = mapping.Values[0].Key
	} else if value, ok := n.(*ast.MappingValueNode); ok {
		n = value.Key
	}
	if tok := n.GetToken(); tok != nil && tok.Position != nil {
		out.line, out.column = tok.Position.Line, tok.Position.Column
	}
	return out
}

func (t *treeReader) read(n ast.Node, depth int) *node {
	if n == nil {
		return &node{}
	}
	t.nodes++
	out := place(n)
	if t.nodes > maxNodes || depth > maxDepth {
		if !t.full {
			t.fault(n, "the file holds too much", fmt.Sprintf("at most %d values and %d levels, aliases written out", maxNodes, maxDepth))
		}
		t.full = true
		return out
	}
	switch n := n.(type) {
	case *ast.NullNode:
	case *ast.MappingNode:
		out.kind = table
		for _, v := range n.Values {
			t.entry(out, v, depth)
		}
		for _, v := range n.Values {
			t.merge(out, v, depth)
		}
	case *ast.MappingValueNode:
		out.kind = table
		t.entry(out, n, depth)
		t.merge(out, n, depth)
	case *ast.SequenceNode:
		out.kind = list
		for _, v := range n.Values {
			if t.full {
				break
			}
			out.items = append(out.items, t.read(v, depth+1))
		}
	case *ast.AnchorNode:
		t.anchors[n.Name.GetToken().Value] = n.Value
		return t.read(n.Value, depth+1)
	case *ast.AliasNode:
		return t.alias(n, depth)
	case *ast.TagNode:
		return t.read(n.Value, depth+1)
	case *ast.LiteralNode:
		out.kind, out.text = scalar, n.Value.Value
	case *ast.StringNode:
		out.kind, out.text = scalar, n.Value
	case ast.ScalarNode:
		out.kind, out.text, out.plain = scalar, n.GetToken().Value, true
	default:
		t.fault(n, "this kind of YAML is not used here", "write names with values, and lists with dashes")
	}
	return out
}

func (t *treeReader) alias(n *ast.AliasNode, depth int) *node {
	name := n.Value.GetToken().Value
	target, known := t.anchors[name]
	if !known || t.open[name] {
		t.fault(n, fmt.Sprintf("*%s stands for nothing that was named before it", name), fmt.Sprintf("name it first with &%s", name))
		return place(n)
	}
	t.open[name] = true
	defer delete(t.open, name)
	return t.read(target, depth+1)
}

// entry adds one entry to a table, unless it is a merge.
func (t *treeReader) entry(out *node, v *ast.MappingValueNode, depth int) {
	if t.full || v.Key.IsMergeKey() {
		return
	}
	if len(out.fields) >= maxTable {
		t.full = true
		t.fault(v, "the file holds too much", fmt.Sprintf("at most %d names in one table", maxTable))
		return
	}
	key := t.read(keyNode(v.Key), depth+1)
	switch value := t.read(v.Value, depth+1); {
	case t.full:
	case key.kind != scalar:
		t.fault(v, "a name was expected here", "write a name, a colon and a value")
	default:
		out.fields = append(out.fields, field{key.text, key, value})
	}
}

// merge adds what a merge (<<) brings and the table does not have itself.
func (t *treeReader) merge(out *node, v *ast.MappingValueNode, depth int) {
	if t.full || !v.Key.IsMergeKey() {
		return
	}
	for _, f := range t.read(v.Value, depth+1).fields {
		if len(out.fields) < maxTable && out.field(f.key) == nil {
			out.fields = append(out.fields, f)
		}
	}
}

func keyNode(k ast.MapKeyNode) ast.Node {
	if question, ok := k.(*ast.MappingKeyNode); ok {
		return question.Value
	}
	return k
}

// field is the value of a name, nil when it is not there.
func (n *node) field(key string) *node {
	for _, f := range n.fields {
		if f.key == key {
			return f.value
		}
	}
	return nil
}

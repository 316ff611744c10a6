package paper

import (
	"bytes"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

func TestJSON(t *testing.T) {
	for name, p := range samples() {
		b, err := JSON(p)
		if err != nil {
			t.Fatal(err)
		}
		golden(t, name+".json", b)
		if errs := validate(t, b); errs != nil {
			t.Errorf("%s: %v", name, errs)
		}
	}
}

// TestJSONReadsBack: standard decoding gives the plan again.
func TestJSONReadsBack(t *testing.T) {
	want := timeplantest.Sample()
	b, _ := JSON(want)
	got := new(timeplan.Plan)
	if err := json.Unmarshal(b, got); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// TestJSONNothingIsNull: no list is null, no until is 00:00.
func TestJSONNothingIsNull(t *testing.T) {
	b, _ := JSON(&timeplan.Plan{Title: "a\xffb <i>", Rows: []timeplan.Row{{}}})
	for _, bad := range []string{"null", "until", `\u003c`} {
		if bytes.Contains(b, []byte(bad)) {
			t.Errorf("%q in %s", bad, b)
		}
	}
	if !json.Valid(b) {
		t.Errorf("not JSON: %s", b)
	}
}

// validate holds a document against the schema with somebody else's validator.
func validate(t *testing.T, document []byte) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("plan.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(document))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(value)
}

// TestSchemaRefuses spoils a valid plan and expects the place to be named.
func TestSchemaRefuses(t *testing.T) {
	good, _ := JSON(timeplantest.Sample())
	for _, test := range []struct{ from, to, where string }{
		{`"status": "feasible"`, `"status": "fine"`, "/status"},
		{`"start": "09:00"`, `"start": "9am"`, "/start"},
		{`"rows": [`, `"rowz": [`, "rowz"},
		{`"action": "put-in"`, `"action": "insert"`, "/action"},
		{`"minutes": 3`, `"minutes": -3`, "/minutes"},
		{`"until": "09:33"`, `"untill": "09:33"`, "until"},
		{`"place": "fridge"`, `"place": "attic"`, "/place"},
	} {
		if !bytes.Contains(good, []byte(test.from)) {
			t.Fatalf("no %s in the sample", test.from)
		}
		err := validate(t, bytes.Replace(good, []byte(test.from), []byte(test.to), 1))
		if err == nil || !strings.Contains(err.Error(), test.where) {
			t.Errorf("%s: %v", test.to, err)
		}
	}
}

// TestSchemaAgreesWithPlan compares schema and structs field by field: the same
// keys, required exactly where a key is always written, the same kinds.
func TestSchemaAgreesWithPlan(t *testing.T) {
	var s node
	if err := json.Unmarshal(Schema(), &s); err != nil {
		t.Fatal(err)
	}
	s.agree(t, s, "plan", reflect.TypeFor[timeplan.Plan]())
}

// node is the part of a schema that the comparison reads.
type node struct {
	Type       string          `json:"type"`
	Ref        string          `json:"$ref"`
	Enum       []any           `json:"enum"`
	Required   []string        `json:"required"`
	Properties map[string]node `json:"properties"`
	Items      *node           `json:"items"`
	Defs       map[string]node `json:"$defs"`
}

func (root node) agree(t *testing.T, n node, at string, typ reflect.Type) {
	if n.Ref != "" {
		name := strings.TrimPrefix(n.Ref, "#/$defs/")
		def, ok := root.Defs[name]
		if !ok {
			t.Errorf("%s: no definition %s", at, name)
		}
		if (typ == reflect.TypeFor[practical.TimeOfDay]()) != (name == "clock") {
			t.Errorf("%s: %s against %s", at, name, typ)
		}
		if name == "clock" {
			return
		}
		n = def
	}
	switch typ.Kind() {
	case reflect.Struct:
		root.agreeStruct(t, n, at, typ)
	case reflect.Slice:
		if n.Type != "array" || n.Items == nil {
			t.Errorf("%s: %q, want an array", at, n.Type)
			return
		}
		root.agree(t, *n.Items, at+"[]", typ.Elem())
	default:
		want := map[reflect.Kind]string{reflect.String: "string", reflect.Int: "integer", reflect.Int64: "integer", reflect.Bool: "boolean"}[typ.Kind()]
		if n.Type != want && len(n.Enum) == 0 {
			t.Errorf("%s: %q, want %q", at, n.Type, want)
		}
	}
}

func (root node) agreeStruct(t *testing.T, n node, at string, typ reflect.Type) {
	fields := map[string]bool{}
	for _, f := range reflect.VisibleFields(typ) {
		key, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		fields[key] = true
		property, ok := n.Properties[key]
		if !ok {
			t.Errorf("%s.%s is not in the schema", at, key)
			continue
		}
		if always := options != "omitempty"; always != slices.Contains(n.Required, key) {
			t.Errorf("%s.%s: required is %v, always written is %v", at, key, !always, always)
		}
		root.agree(t, property, at+"."+key, f.Type)
	}
	for key := range n.Properties {
		if !fields[key] {
			t.Errorf("%s.%s is in the schema only", at, key)
		}
	}
}

package recipe

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	yamltoken "github.com/goccy/go-yaml/token"

	"plait.example/internal/practical"
)

// How large a file of corrections may be.
const (
	mostCorrections = 1 << 20 // bytes
	correctionsForm = 1       // the form of the file that this program writes and reads
)

// correctionsFile is a file of corrections as it stands in YAML.
type correctionsFile struct {
	Form        int               `yaml:"plait-corrections"`
	Corrections []correctionEntry `yaml:"corrections"`
}

type correctionEntry struct {
	Words  string        `yaml:"words"`
	Recipe string        `yaml:"recipe,omitempty"`
	Date   string        `yaml:"date"`
	Now    yaml.MapSlice `yaml:"now"`
	Was    yaml.MapSlice `yaml:"was"`
}

// Write is the corrections as a file that ParseCorrections reads back the same;
// docs/corrections.md tells its form.
func (c *Corrections) Write() []byte {
	file := correctionsFile{Form: correctionsForm, Corrections: []correctionEntry{}}
	for _, one := range c.All() {
		e := correctionEntry{Words: one.Words, Recipe: one.Recipe, Date: one.Date}
		for _, f := range one.Figures {
			e.Now = append(e.Now, yaml.MapItem{Key: f.Name, Value: f.Now})
			e.Was = append(e.Was, yaml.MapItem{Key: f.Name, Value: f.Was})
		}
		file.Corrections = append(file.Corrections, e)
	}
	data, err := yaml.MarshalWithOptions(file, yaml.UseLiteralStyleIfMultiline(true), yaml.IndentSequence(true))
	if err != nil {
		panic("recipe: corrections cannot be written: " + err.Error()) // strings and a number: nothing to fail on
	}
	return data
}

// ParseCorrections reads a file of corrections. Every fault carries its line. A
// file with faults gives nil; nothing of it is taken.
func ParseCorrections(name string, data []byte) (c *Corrections, faults practical.Faults) {
	r := &correctionsReader{file: name}
	defer func() {
		if recover() != nil { // the library's own failing on a malformed text
			c, faults = nil, practical.Faults{{File: name, Line: 1, Message: "the file is not readable as YAML", Hint: "export the corrections again", Code: practical.Invalid}}
		}
	}()
	file := r.decode(data)
	if len(r.faults) > 0 {
		return nil, r.faults
	}
	var list []Correction
	seen := map[string]int{}
	for i, e := range file.Corrections {
		one := r.entry(i, e)
		key := NormalWords(one.Words)
		if first, twice := seen[key]; twice && key != "" {
			r.fault(entryPath(i, "words"), quoted(one.Words)+fmt.Sprintf(" means the same as correction %d", first+1), "keep one of them")
		}
		seen[key] = i
		list = append(list, one)
	}
	if len(r.faults) > 0 {
		return nil, r.faults
	}
	return NewCorrections(list), nil
}

// correctionsReader collects the faults of a file.
type correctionsReader struct {
	file   string
	tree   *ast.File
	faults practical.Faults
}

func entryPath(i int, field string) string { return fmt.Sprintf("$.corrections[%d].%s", i, field) }

// fault notes what is wrong with the value at a path of the file.
func (r *correctionsReader) fault(path, message, hint string) {
	f := practical.Fault{File: r.file, Field: strings.TrimPrefix(path, "$."), Message: message, Hint: hint, Code: practical.Invalid}
	for p := path; f.Line == 0 && p != "" && r.tree != nil; p = p[:max(strings.LastIndexAny(p, ".["), 0)] {
		where, err := yaml.PathString(p)
		if err != nil {
			continue
		}
		if n, err := where.FilterFile(r.tree); err == nil && n != nil && n.GetToken() != nil {
			f.Line, f.Column = n.GetToken().Position.Line, n.GetToken().Position.Column
		}
	}
	r.faults = append(r.faults, f)
}

// decode reads the YAML, without the parts of it that make one value stand for another.
func (r *correctionsReader) decode(data []byte) (file correctionsFile) {
	if len(data) > mostCorrections {
		r.fault("", fmt.Sprintf("the file is larger than %d MB", mostCorrections>>20), "keep fewer corrections in one file")
		return file
	}
	if f := practical.TooDeep(data); f != nil {
		f.File = r.file
		r.faults = append(r.faults, *f)
		return file
	}
	tokens := lexer.Tokenize(string(bytes.TrimPrefix(data, []byte("\xEF\xBB\xBF"))))
	for _, t := range tokens {
		if t.Type == yamltoken.AnchorType || t.Type == yamltoken.AliasType || t.Type == yamltoken.MergeKeyType {
			r.faults = append(r.faults, practical.Fault{File: r.file, Line: t.Position.Line, Column: t.Position.Column, Message: "anchors and aliases (& and *) are not read", Hint: "write the value out, in quotes if it begins with such a sign", Code: practical.Invalid})
			return file
		}
	}
	tree, err := parser.Parse(tokens, 0)
	if err == nil {
		r.tree = tree
		err = yaml.NewDecoder(bytes.NewReader(data), yaml.Strict()).Decode(&file)
	}
	switch {
	case err != nil:
		line, what := yamlFault(err)
		r.faults = append(r.faults, practical.Fault{File: r.file, Line: line, Message: "the file is not one of corrections: " + what, Hint: "compare it with docs/corrections.md", Code: practical.Invalid})
	case file.Form == 0:
		r.fault("$.plait-corrections", "the file does not say that it holds corrections", "begin it with plait-corrections: 1")
	case file.Form > correctionsForm:
		r.fault("$.plait-corrections", fmt.Sprintf("a newer plait wrote this file (form %d, this program reads %d)", file.Form, correctionsForm), "use the newer plait")
	}
	return file
}

// yamlFault is the line and the words of the library's complaint.
func yamlFault(err error) (line int, what string) {
	what = strings.TrimSpace(err.Error())
	if place, rest, ok := strings.Cut(what, "] "); ok && strings.HasPrefix(place, "[") {
		_, _ = fmt.Sscanf(place, "[%d:", &line)
		what = rest
	}
	what, _, _ = strings.Cut(what, "\n")
	return line, what
}

// entry reads one correction.
func (r *correctionsReader) entry(i int, e correctionEntry) Correction {
	c := Correction{Words: strings.TrimSpace(e.Words), Recipe: e.Recipe, Date: e.Date}
	if NormalWords(c.Words) == "" {
		r.fault(entryPath(i, "words"), "this correction has no words", "give the step's words")
	}
	if _, err := time.Parse(time.DateOnly, c.Date); err != nil {
		r.fault(entryPath(i, "date"), quoted(c.Date)+" is not a date", "write it as 2026-03-12")
	}
	now, was := r.values(i, "now", e.Now), r.values(i, "was", e.Was)
	for _, f := range remembered {
		text, changed := now[f.name]
		if changed && was[f.name] == "" {
			r.fault(entryPath(i, "was"), "it does not say what "+f.name+" was read as", "add "+f.name+" under was")
		} else if changed {
			c.Figures = append(c.Figures, Figure{f.name, was[f.name], text})
		}
	}
	if len(now) == 0 {
		r.fault(entryPath(i, "now"), "this correction changes nothing", "give one of "+strings.Join(FigureNames(), ", "))
	}
	return c
}

// values reads the figures under now or was.
func (r *correctionsReader) values(i int, of string, list yaml.MapSlice) map[string]string {
	out := map[string]string{}
	for _, item := range list {
		name, path := fmt.Sprint(item.Key), entryPath(i, of)
		f := figureNamed(name)
		if f == nil {
			r.fault(path, quoted(name)+" is nothing that is remembered", "use one of "+strings.Join(FigureNames(), ", "))
			continue
		}
		text := strings.TrimSpace(fmt.Sprint(item.Value))
		if b, is := item.Value.(bool); is {
			text = yesOrNo(b)
		}
		scratch := practical.Step{Wait: &practical.Wait{Place: practical.AtOven}}
		if wrong := f.put(&scratch, text, nil); wrong != "" {
			r.fault(path+"."+name, quoted(text)+" cannot be read", wrong)
			continue
		}
		out[name] = text
	}
	return out
}

// Conflict is a figure that two teachers put right differently.
type Conflict struct {
	Words, Figure              string
	Mine, Theirs               string
	MineOn, TheirsOn, TheirsIn string // days, and the dish in which theirs was made
}

// Merge is mine with theirs added. Where the two have the same figure of the same
// words differently, it is told as a conflict and mine stands, unless theirs is
// preferred. added is how many figures came from theirs, conflicts not counted.
func Merge(mine, theirs *Corrections, preferTheirs bool) (merged *Corrections, added int, conflicts []Conflict) {
	list := mine.All()
	slices.Reverse(list)
	for _, other := range theirs.All() {
		own, both := mine.For(other.Words)
		if !both {
			list = append(list, other)
			added += len(other.Figures)
			continue
		}
		joined := Correction{Words: own.Words, Recipe: own.Recipe, Date: own.Date}
		for _, f := range remembered {
			a, has := own.figure(f.name)
			b, had := other.figure(f.name)
			switch {
			case has && had && a.Now != b.Now:
				conflicts = append(conflicts, Conflict{own.Words, f.label, f.brief(a.Now), f.brief(b.Now), own.Day(), other.Day(), other.Recipe})
				if preferTheirs {
					a.Now, joined.Date, joined.Recipe = b.Now, other.Date, other.Recipe
				}
			case had && !has:
				a, added = b, added+1
			}
			if has || had {
				joined.Figures = append(joined.Figures, a)
			}
		}
		list = append(list, joined)
	}
	return NewCorrections(list), added, conflicts
}

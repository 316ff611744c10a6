package web

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// stepRow makes the row of step k of dish i.
func (s *Server) stepRow(f *form, action string, i, k int, open string) StepRow {
	d := f.practical.Dishes[i]
	step := d.Steps[k]
	at := fmt.Sprintf("dishes[%d].steps[%d].", i, k)
	row := StepRow{
		ID: step.ID, Text: step.Text, Index: k, After: afterWords(step.After), Tags: tags(step), Why: step.Why, Doubtful: doubtful(step),
		First: k == 0, Last: k == len(d.Steps)-1, Open: step.ID == open && open != "",
		Link:  stepLink(action, step.ID),
		Hands: f.fields(at+"hands.", "low", "likely", "high"), Wait: f.fields(at+"wait.", "place", "least", "most"),
	}
	if button, of, _ := strings.Cut(f.focus, "-"); of == step.ID {
		row.Focus = button
	}
	for _, fields := range [][]Field{row.Hands, row.Wait} {
		for n := range fields {
			fields[n].Context, fields[n].Hint, fields[n].Unit = "step "+step.ID, "", ""
			fields[n].Apart = true
		}
	}
	if row.Open {
		row.Editor = editor(f, at, d, k)
	}
	row.Wrong = countWithin(f.faults, []string{strings.TrimSuffix(at, ".")})
	return row
}

// stepLink is where a step stands open.
func stepLink(action, id string) string { return action + "?step=" + url.QueryEscape(id) + "#open" }

// editor is the full form of the open step.
func editor(f *form, at string, d practical.Dish, k int) *Editor {
	step := d.Steps[k]
	e := &Editor{Text: f.field(at + "text"), Why: step.Why, Doubt: doubtWords(step.Doubt)}
	e.Text.Rows = 3
	if k+1 < len(d.Steps) {
		e.Next = d.Steps[k+1].ID
	}
	e.Cuts = cuts(step.Text)
	var order []Field
	for n := range len(step.After) + 1 {
		link := f.fields(fmt.Sprintf("%safter[%d].", at, n), "step", "least", "most")
		link[0].choose(stepOptions(f.practical, step.ID))
		if n > 0 {
			link[0].Label = "and after"
		}
		order = append(order, link...)
	}
	if step.Wait != nil {
		names := []string{"attention", "every", "put-in", "take-out"}
		if p := step.Wait.Place; p == practical.AtOven || p == practical.AtFridge || p == practical.AtFreezer || step.Wait.Shelves != 0 {
			names = append(names, "shelves")
		}
		e.Groups = append(e.Groups, Group{Legend: "The wait", Fields: f.fields(at+"wait.", names...)})
	}
	if step.Wait != nil && step.Wait.Place == practical.AtOven {
		e.Groups = append(e.Groups, Group{Legend: "In the oven", Fields: f.fields(at+"wait.", "celsius", "band", "door-shut")})
	}
	e.Groups = append(e.Groups, []Group{
		{Legend: "Order", About: "What has to be done before this step.", Fields: order},
		{Legend: "Kit and hygiene", Fields: f.fields(at, "uses", "food", "set-up")},
		{Legend: "Words for the plan", Fields: f.fields(at, "check", "safety", "kit", "component")},
	}...)
	return e
}

// cuts is where a step can be split, each by the words around the cut.
func cuts(text string) []Option {
	const around = 28
	all, best := app.Cuts(text)
	options := make([]Option, len(all))
	for i, at := range all {
		before, after := strings.TrimSpace(text[:at]), text[at:]
		if runes := []rune(before); len(runes) > around {
			before = "…" + string(runes[len(runes)-around+1:])
		}
		options[i] = Option{Value: strconv.Itoa(at), Text: before + " ✂ " + cut(after, around), Chosen: at == best}
	}
	return options
}

// stepOptions is every other step of the practical, for “comes after”.
func stepOptions(p *practical.Practical, self string) []Option {
	options := []Option{{Value: "", Text: "no other step"}}
	for _, d := range p.Dishes {
		for _, step := range d.Steps {
			if step.ID != self {
				options = append(options, Option{Value: step.ID, Text: step.ID + " " + cut(step.Text, 40)})
			}
		}
	}
	return options
}

func afterWords(after []practical.After) string {
	var said []string
	for _, a := range after {
		text := a.Step
		switch {
		case a.Least > 0 && a.Most != nil:
			text += fmt.Sprintf(" by %d to %d min", a.Least, *a.Most)
		case a.Least > 0:
			text += fmt.Sprintf(" by at least %d min", a.Least)
		case a.Most != nil:
			text += fmt.Sprintf(" by at most %d min", *a.Most)
		}
		said = append(said, text)
	}
	return strings.Join(said, ", ")
}

// tags are the short words beside a step in the table.
func tags(s practical.Step) []Tag {
	var list []Tag
	if s.SetUp {
		list = append(list, Tag{"", "set-up"})
	}
	if s.Wait != nil && s.Wait.Celsius > 0 {
		text := fmt.Sprintf("%d °C", s.Wait.Celsius)
		if s.Wait.Band > 0 {
			text += fmt.Sprintf(" ± %d", s.Wait.Band)
		}
		list = append(list, Tag{"", text})
	}
	for _, k := range s.Uses {
		list = append(list, Tag{"", kitWords[k]})
	}
	switch s.Food {
	case practical.Raw:
		list = append(list, Tag{"raw", "raw"})
	case practical.ReadyToEat:
		list = append(list, Tag{"", "ready to eat"})
	}
	if s.Wait != nil {
		switch s.Wait.Attention {
		case practical.Stay:
			list = append(list, Tag{"raw", "must be watched"})
		case practical.Look:
			list = append(list, Tag{"", fmt.Sprintf("a look every %d min", s.Wait.Every)})
		}
	}
	if s.Component != "" {
		list = append(list, Tag{"", s.Component})
	}
	return list
}

func doubtWords(doubt float64) string {
	switch {
	case doubt >= 0.8:
		return "These figures are a guess. Set them from your own cooking."
	case doubt >= 0.5:
		return "These figures are unsure. Check them."
	case doubt > 0:
		return "Read with little doubt."
	default:
		return ""
	}
}

// cut shortens a text for a list.
func cut(text string, longest int) string {
	text = strings.Join(strings.Fields(text), " ")
	if runes := []rune(text); len(runes) > longest {
		return string(runes[:longest-1]) + "…"
	}
	return text
}

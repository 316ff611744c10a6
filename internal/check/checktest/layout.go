package checktest

import (
	"fmt"
	"html"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/practical"
)

// Layout is one way in which people set a plan out.
type Layout struct {
	Name  string
	Ext   string   // of the file as it is written here: .html, .csv, .txt, .docx
	Made  []string // what a web page is made into, by turns; nil: as extension says
	write func(sheet) string
}

// Layouts are all of them.
var Layouts = []Layout{
	{Name: "four-columns", Ext: ".html", write: fourColumns},
	{Name: "shaded-rows", Ext: ".html", write: shadedRows},
	{Name: "dish-columns", Ext: ".html", write: dishColumns},
	{Name: "merged-dish", Ext: ".html", write: mergedDish},
	{Name: "ranges", Ext: ".html", write: ranges},
	{Name: "sections", Ext: ".html", write: sections},
	{Name: "two-columns", Ext: ".html", write: twoColumns},
	{Name: "inked-words", Ext: ".html", write: inkedWords},
	{Name: "how-long", Ext: ".html", write: howLong},
	{Name: "tabs", Ext: ".txt", write: tabs},
	{Name: "lines", Ext: ".txt", write: lines},
	{Name: "commas", Ext: ".csv", write: commas},
	{Name: "semicolons", Ext: ".csv", write: semicolons},
}

// clockStyles are ways of writing the time.
var clockStyles = []func(h, m int) string{
	func(h, m int) string { return fmt.Sprintf("%d:%02d", h, m) },
	func(h, m int) string { return fmt.Sprintf("%d.%02d", h, m) },
	func(h, m int) string { return fmt.Sprintf("%02d:%02d", h, m) },
	func(h, m int) string { return fmt.Sprintf("%d.%02d", twelve(h), m) },
	func(h, m int) string { return fmt.Sprintf("%d:%02d%s", twelve(h), m, half(h)) },
	func(h, m int) string { return fmt.Sprintf("%02d%02d", h, m) },
}

func twelve(h int) int { return (h+11)%12 + 1 }

func half(h int) string {
	if h < 12 {
		return "am"
	}
	return " pm"
}

// sheet is a plan to be set out.
type sheet struct {
	Plan
	style func(h, m int) string
	span  func(from, to practical.TimeOfDay) string
}

// Document sets a plan out as the n-th layout and clock style say.
func (l Layout) Document(p Plan, n int) []byte {
	return []byte(l.write(sheet{p, clockStyles[n%len(clockStyles)], otherStyles[n%len(otherStyles)]}))
}

func (s sheet) clock(t practical.TimeOfDay) string { return s.style(int(t)/60, int(t)%60) }

// Names are the dishes of the menus by letter, in their order.
var Names = map[string][][2]string{
	"fishcakes":  {{"A", "Salmon fishcakes"}, {"B", "Focaccia"}, {"C", "Panna cotta"}},
	"koftas":     {{"K", "Lamb koftas"}, {"L", "Lemon meringue tart"}},
	"ravioli":    {{"R", "Mushroom ravioli"}, {"S", "Stuffed chicken with ratatouille"}, {"T", "Fruit tartlets"}},
	"biryani":    {{"A", "Vegetable samosas"}, {"B", "Chicken biryani"}, {"C", "Mango cheesecake pots"}},
	"pie":        {{"X", "Chicken and leek pies"}, {"Y", "Chocolate roulade"}},
	"lasagne":    {{"L", "Beef lasagne"}, {"P", "Lemon posset trifles"}, {"D", "Garlic dough balls"}},
	"rolls":      {{"S", "Prawn spring rolls"}, {"F", "Egg fried rice"}, {"J", "Orange jelly"}},
	"scotch":     {{"E", "Scotch eggs"}, {"V", "Victoria sandwich"}},
	"goujons":    {{"F", "Fish goujons and chips"}, {"M", "Strawberry mousse"}},
	"soup":       {{"P", "Leek and potato soup"}, {"S", "Cheese scones"}, {"J", "Jam tarts"}},
	"crepes":     {{"C", "Chicken and mushroom crepes"}, {"A", "Apple crumble and custard"}},
	"pasta":      {{"T", "Tagliatelle and meatball bake"}, {"R", "Bread rolls"}, {"C", "Chocolate orange mousse"}},
	"toad":       {{"H", "Toad in the hole"}, {"A", "Apple turnovers"}},
	"thai":       {{"F", "Thai fish parcels"}, {"D", "Lemon drizzle cakes"}, {"N", "Noodle salad"}},
	"enchiladas": {{"E", "Chicken enchiladas"}, {"S", "Black bean salad"}, {"P", "Profiteroles"}},
	"katsu":      {{"K", "Chicken katsu curry"}, {"B", "Bakewell tart"}},
	"buns":       {{"P", "Pork fillet with mustard sauce and mash"}, {"C", "Chelsea buns"}, {"G", "Raspberry set creams"}},
	"burgers":    {{"P", "Beef burgers in milk rolls"}, {"Q", "Jam Swiss roll"}},
}

func (s sheet) names() [][2]string { return Names[s.Menu] }

func (s sheet) name(letter string) string {
	for _, n := range s.names() {
		if n[0] == letter {
			return n[1]
		}
	}
	return "All"
}

var shades = []string{"FFE699", "BDD7EE", "C6E0B4", "F8CBAD"}

var inks = []string{"C00000", "0070C0", "00803C", "7030A0"}

func (s sheet) colour(letter string, from []string) string {
	i := slices.IndexFunc(s.names(), func(n [2]string) bool { return n[0] == letter })
	if i < 0 {
		return ""
	}
	return from[i]
}

// hands is how long a row takes, as its writer thinks.
func (r Row) hands() int {
	for _, a := range r.Acts {
		if n, err := strconv.Atoi(strings.TrimPrefix(a, "h")); err == nil {
			return max(1, n)
		}
	}
	return 1
}

func page(title, body string) string {
	return "<!DOCTYPE html><html><head><meta charset=\"utf-8\"><title>" + html.EscapeString(title) + "</title></head><body>\n" + body + "</body></html>\n"
}

type cell struct{ text, attrs string }

func tr(tag string, cells ...cell) string {
	var b strings.Builder
	b.WriteString("<tr>")
	for _, c := range cells {
		fmt.Fprintf(&b, "<%s%s>%s</%s>", tag, c.attrs, c.text, tag)
	}
	return b.String() + "</tr>\n"
}

func plainCells(texts ...string) (list []cell) {
	for _, t := range texts {
		list = append(list, cell{text: html.EscapeString(t)})
	}
	return list
}

func fourColumns(s sheet) string {
	body := "<h1>Time plan</h1><p>Name: Sam Example</p><table border=\"1\">" + tr("th", plainCells("Time", "Dish", "What to do", "Special points")...)
	for _, r := range s.Rows {
		body += tr("td", plainCells(s.clock(r.Clock), s.name(r.Dish), r.Text, r.Points)...)
	}
	return page("Time plan", body+"</table>")
}

func shadedRows(s sheet) string {
	body := "<h2>My dovetailed plan</h2><table border=\"1\"><tr><td>Key</td>"
	for _, n := range s.names() {
		body += fmt.Sprintf("<td style=\"background-color: #%s\">%s</td>", s.colour(n[0], shades), n[1])
	}
	body += "</tr></table><p></p><table border=\"1\">" + tr("td", plainCells("Time", "Order of work", "Health, safety and quality")...)
	for _, r := range s.Rows {
		attr := ""
		if c := s.colour(r.Dish, shades); c != "" {
			attr = " style=\"background-color: #" + c + "\""
		}
		cells := plainCells(s.clock(r.Clock), r.Text, r.Points)
		for i := range cells {
			cells[i].attrs = attr
		}
		body += tr("td", cells...)
	}
	return page("Plan", body+"</table>")
}

func dishColumns(s sheet) string {
	heads := []string{"Time"}
	for _, n := range s.names() {
		heads = append(heads, n[1])
	}
	body := "<table border=\"1\">" + tr("td", plainCells(append(heads, "General / cleaning", "Notes")...)...)
	for _, r := range s.Rows {
		texts := []string{s.clock(r.Clock)}
		for _, n := range s.names() {
			texts = append(texts, pick(r.Dish == n[0], r.Text))
		}
		body += tr("td", plainCells(append(texts, pick(r.Dish == "all", r.Text), r.Points)...)...)
	}
	return page("Plan", body+"</table>")
}

func pick(yes bool, text string) string {
	if yes {
		return text
	}
	return ""
}

func mergedDish(s sheet) string {
	body := "<h1>Production plan</h1><table border=\"1\">" + tr("th", plainCells("Dish", "Start time", "Task", "Hygiene / safety / quality")...)
	for i, r := range s.Rows {
		cells := plainCells(s.clock(r.Clock), r.Text, r.Points)
		if i == 0 || s.Rows[i-1].Dish != r.Dish {
			down := 1
			for i+down < len(s.Rows) && s.Rows[i+down].Dish == r.Dish {
				down++
			}
			cells = append([]cell{{html.EscapeString(s.name(r.Dish)), fmt.Sprintf(" rowspan=\"%d\"", down)}}, cells...)
		}
		body += tr("td", cells...)
	}
	return page("Plan", body+"</table>")
}

func ranges(s sheet) string {
	body := "<table border=\"1\">" + tr("td", plainCells("When", "Dish", "Process", "Points to watch")...)
	for _, r := range s.Rows {
		when := s.clock(r.Clock) + "-" + s.clock(r.Clock+practical.TimeOfDay(r.hands()))
		body += tr("td", plainCells(when, r.Dish, r.Text, r.Points)...)
	}
	return page("Plan", s.legend()+body+"</table>")
}

func (s sheet) legend() string {
	body := ""
	for _, n := range s.names() {
		body += "<p>" + n[0] + " = " + html.EscapeString(n[1]) + "</p>"
	}
	return body
}

func sections(s sheet) string {
	body := "<table border=\"1\"><tr><td colspan=\"4\">TIME PLAN</td></tr>" + tr("td", plainCells("Time", "Dish", "Method", "Notes")...)
	hour := -1
	for _, r := range s.Rows {
		if h := int(r.Clock) / 60; h != hour {
			hour = h
			body += fmt.Sprintf("<tr><td colspan=\"4\"><b>From %d o'clock</b></td></tr>\n", twelve(h))
		}
		body += tr("td", plainCells(s.clock(r.Clock), r.Dish, r.Text, r.Points)...)
	}
	return page("Plan", s.legend()+body+"</table>")
}

func twoColumns(s sheet) string {
	body := "<h1>Order of work</h1><table border=\"1\">"
	for _, r := range s.Rows {
		text := r.Text
		if r.Dish != "all" {
			text = s.name(r.Dish) + ": " + text
		}
		if r.Points != "" {
			text += " (" + r.Points + ")"
		}
		body += tr("td", plainCells(s.clock(r.Clock), text)...)
	}
	return page("Plan", body+"</table>")
}

func inkedWords(s sheet) string {
	body := "<p>"
	for _, n := range s.names() {
		body += fmt.Sprintf("<span style=\"color: #%s\">%s</span> ", s.colour(n[0], inks), n[1])
	}
	body += "</p><table border=\"1\">" + tr("th", plainCells("Time", "Task", "Special points")...)
	for _, r := range s.Rows {
		text := html.EscapeString(r.Text)
		if c := s.colour(r.Dish, inks); c != "" {
			text = "<span style=\"color: #" + c + "\">" + text + "</span>"
		}
		body += tr("td", cell{text: s.clock(r.Clock)}, cell{text: text}, cell{text: html.EscapeString(r.Points)})
	}
	return page("Plan", body+"</table>")
}

func howLong(s sheet) string {
	body := "<table border=\"1\">" + tr("th", plainCells("Start", "How long", "Recipe", "Activity", "Quality and safety", "Done")...)
	for _, r := range s.Rows {
		body += tr("td", plainCells(s.clock(r.Clock), fmt.Sprintf("%d mins", r.hands()), s.name(r.Dish), r.Text, r.Points, "")...)
	}
	return page("Plan", body+"</table>")
}

func tabs(s sheet) string {
	out := "Time\tDish\tWhat I will do\tPoints\n"
	for _, r := range s.Rows {
		out += strings.Join([]string{s.clock(r.Clock), s.name(r.Dish), r.Text, r.Points}, "\t") + "\n"
	}
	return out
}

func lines(s sheet) string {
	out := "My plan\n\n"
	for _, r := range s.Rows {
		text := r.Text
		if r.Dish != "all" {
			text = s.name(r.Dish) + " - " + text
		}
		if r.Points != "" {
			text += ". " + r.Points
		}
		out += s.clock(r.Clock) + " - " + text + "\n"
	}
	return out
}

func commas(s sheet) string { return s.separated(",") }

func semicolons(s sheet) string { return s.separated(";") }

func (s sheet) separated(by string) string {
	quote := func(t string) string { return `"` + strings.ReplaceAll(t, `"`, `""`) + `"` }
	out := strings.Join([]string{"Time", "Dish", "Task", "Special points"}, by) + "\n"
	for _, r := range s.Rows {
		out += strings.Join([]string{s.clock(r.Clock), quote(s.name(r.Dish)), quote(r.Text), quote(r.Points)}, by) + "\n"
	}
	return out
}

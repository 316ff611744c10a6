package checktest

import (
	"fmt"
	"html"
	"strings"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/table"
	"plait.example/internal/practical"
)

// OtherLayouts are ways in which the plans of Third are set out, and no others.
// Those in .docx are written by this program's own writer of documents.
var OtherLayouts = []Layout{
	{Name: "start-finish", Ext: ".html", Made: []string{".docx", ".xlsx"}, write: startFinish},
	{Name: "minutes", Ext: ".html", Made: []string{".docx", ".html"}, write: minutesFrom},
	{Name: "blank-next", Ext: ".html", Made: []string{".docx", ".odt", ".docx"}, write: blankNext},
	{Name: "two-tables", Ext: ".docx", write: twoTables},
	{Name: "split", Ext: ".docx", write: split},
	{Name: "time-rows", Ext: ".html", Made: []string{".html", ".docx"}, write: timeRows},
	{Name: "in-cell", Ext: ".docx", write: inCell},
	{Name: "letter-first", Ext: ".html", Made: []string{".docx", ".html"}, write: letterFirst},
	{Name: "colour-words", Ext: ".html", Made: []string{".docx", ".xlsx"}, write: colourWords},
	{Name: "tick-boxes", Ext: ".docx", write: tickBoxes},
	{Name: "wide", Ext: ".docx", write: wide},
	{Name: "numbered", Ext: ".txt", write: numbered},
	{Name: "dish-headings", Ext: ".html", Made: []string{".docx", ".html"}, write: dishHeadings},
}

// otherStyles are their ways of writing the time: when a row begins, and perhaps when it ends.
var otherStyles = []func(from, to practical.TimeOfDay) string{
	func(from, to practical.TimeOfDay) string { return pointed(from) + " - " + pointed(to) },
	func(from, _ practical.TimeOfDay) string { return fmt.Sprintf("%d:%d", int(from)/60, int(from)%60) },
	func(from, _ practical.TimeOfDay) string { return fmt.Sprintf("%02d%02dh", int(from)/60, int(from)%60) },
	func(from, _ practical.TimeOfDay) string {
		return fmt.Sprintf("%d.%02d", twelve(int(from)/60), int(from)%60)
	},
	func(from, _ practical.TimeOfDay) string { return pointed(from) },
}

func pointed(t practical.TimeOfDay) string {
	return fmt.Sprintf("%d.%02d%s", twelve(int(t)/60), int(t)%60, strings.TrimSpace(half(int(t)/60)))
}

func (s sheet) when(r Row) string {
	return s.span(r.Clock, r.Clock+practical.TimeOfDay(r.hands()))
}

func startFinish(s sheet) string {
	body := "<table border=\"1\">" + tr("th", plainCells("Start", "Finish", "Dish", "Task", "Special points")...)
	for _, r := range s.Rows {
		end := r.Clock + practical.TimeOfDay(r.hands())
		body += tr("td", plainCells(s.span(r.Clock, r.Clock), s.span(end, end), s.name(r.Dish), r.Text, r.Points)...)
	}
	return page("Plan", body+"</table>")
}

func minutesFrom(s sheet) string {
	first := s.Rows[0].Clock
	body := "<h2>Time plan</h2><table border=\"1\">" + tr("th", plainCells("Minutes after "+pointed(first), "Dish", "Job", "Notes")...)
	for _, r := range s.Rows {
		body += tr("td", plainCells(fmt.Sprint(int(r.Clock-first)), s.name(r.Dish), r.Text, r.Points)...)
	}
	return page("Plan", body+"</table>")
}

// blankNext leaves the time out where a row follows at once on the one above.
func blankNext(s sheet) string {
	body := "<p>No time means straight after the job above.</p><table border=\"1\">" + tr("th", plainCells("Time", "Mins", "Dish", "What I do", "Watch out for")...)
	next := practical.TimeOfDay(-1)
	for _, r := range s.Rows {
		when := s.span(r.Clock, r.Clock)
		if r.Clock == next {
			when = ""
		}
		next = r.Clock + practical.TimeOfDay(r.hands())
		body += tr("td", plainCells(when, fmt.Sprint(r.hands()), s.name(r.Dish), r.Text, r.Points)...)
	}
	return page("Plan", body+"</table>")
}

func timeRows(s sheet) string {
	body := s.legend() + "<table border=\"1\">" + tr("th", plainCells("Dish", "Job", "Remember")...)
	for _, r := range s.Rows {
		body += fmt.Sprintf("<tr><td colspan=\"3\"><b>%s</b></td></tr>\n", s.when(r))
		body += tr("td", plainCells(r.Dish, r.Text, r.Points)...)
	}
	return page("Plan", body+"</table>")
}

func letterFirst(s sheet) string {
	body := s.legend() + "<table border=\"1\">" + tr("th", plainCells("Time", "Order of work", "Quality, hygiene and safety")...)
	for _, r := range s.Rows {
		text := r.Text
		if r.Dish != "all" {
			text = "(" + r.Dish + ") " + text
		}
		body += tr("td", plainCells(s.when(r), text, r.Points)...)
	}
	return page("Plan", body+"</table>")
}

var colourNames = []string{"red", "blue", "green"}

func colourWords(s sheet) string {
	body := "<h1>My plan</h1><p>Key</p>"
	for _, n := range s.names() {
		body += "<p>" + s.colour(n[0], colourNames) + " = " + html.EscapeString(n[1]) + "</p>"
	}
	body += "<table border=\"1\">" + tr("td", plainCells("Time", "What to do", "Points")...)
	for _, r := range s.Rows {
		text := r.Text
		if c := s.colour(r.Dish, colourNames); c != "" {
			text = "(" + c + ") " + text
		}
		body += tr("td", plainCells(s.when(r), text, r.Points)...)
	}
	return page("Plan", body+"</table>")
}

func dishHeadings(s sheet) string {
	body := "<h1>Order of work</h1><table border=\"1\">" + tr("th", plainCells("Time", "Task", "Special points")...)
	for i, r := range s.Rows {
		if i == 0 || s.Rows[i-1].Dish != r.Dish {
			body += fmt.Sprintf("<tr><td colspan=\"3\"><b>%s</b></td></tr>\n", html.EscapeString(s.name(r.Dish)))
		}
		body += tr("td", plainCells(s.when(r), r.Text, r.Points)...)
	}
	return page("Plan", body+"</table>")
}

func numbered(s sheet) string {
	out := "Time plan\n\n"
	for i, r := range s.Rows {
		text := r.Text
		if r.Dish != "all" {
			text = s.name(r.Dish) + ": " + text
		}
		if r.Points != "" {
			text += ". " + r.Points
		}
		out += fmt.Sprintf("%d) %s %s\n", i+1, s.when(r), text)
	}
	return out
}

// written is a document made by this program; what stops it is told by its reader.
func written(title string, landscape bool, blocks ...table.Block) string {
	data, err := docx.Write(docx.Paper{Title: title, Landscape: landscape, Blocks: blocks})
	if err != nil {
		return err.Error()
	}
	return string(data)
}

func line(text string) table.Block { return table.Block{Line: table.Line{{Text: text}}} }

func docCells(texts ...string) (row []table.Cell) {
	for _, text := range texts {
		c := table.Cell{Span: 1, Down: 1, Clock: -1}
		for l := range strings.SplitSeq(text, "\n") {
			c.Lines = append(c.Lines, table.Line{{Text: l}})
		}
		row = append(row, c)
	}
	return row
}

// twoTables puts what must be ordered before the plan.
func twoTables(s sheet) string {
	order := [][]table.Cell{docCells("Food order", "Quantity", "Dish")}
	for _, n := range s.names() {
		order = append(order, docCells("Dry goods for "+n[1], "see recipe", n[0]), docCells("Dairy and eggs", "see recipe", n[0]))
	}
	plan := [][]table.Cell{docCells("Time", "Dish", "Method", "Special points")}
	for _, r := range s.Rows {
		plan = append(plan, docCells(s.when(r), r.Dish, r.Text, r.Points))
	}
	blocks := []table.Block{line("My menu")}
	for _, n := range s.names() {
		blocks = append(blocks, line(n[0]+": "+n[1]))
	}
	return written("Plan", false, append(blocks, line("Requisition"), table.Block{Table: &table.Table{Rows: order}}, line("Time plan"), table.Block{Table: &table.Table{Rows: plan, Header: 1}})...)
}

func split(s sheet) string {
	var blocks []table.Block
	middle := len(s.Rows) / 2
	for i, rows := range [][]Row{s.Rows[:middle], s.Rows[middle:]} {
		list := [][]table.Cell{docCells("Time", "Dish", "Activity", "Quality points")}
		for _, r := range rows {
			list = append(list, docCells(s.when(r), s.name(r.Dish), r.Text, r.Points))
		}
		blocks = append(blocks, line(fmt.Sprintf("Time plan, page %d of 2", i+1)), table.Block{Table: &table.Table{Rows: list, Header: 1}})
	}
	return written("Plan", false, blocks...)
}

// inCell has one row for each half hour, with a line for each job in it.
func inCell(s sheet) string {
	var list [][]table.Cell
	block, text := -1, ""
	for _, r := range s.Rows {
		if b := int(r.Clock) / 30; b != block {
			if text != "" {
				list = append(list, docCells(fmt.Sprint(len(list)+1), text))
			}
			block, text = b, ""
		} else {
			text += "\n"
		}
		text += s.when(r) + " " + r.Text
		if r.Dish != "all" {
			text += " [" + r.Dish + "]"
		}
		if r.Points != "" {
			text += " (" + r.Points + ")"
		}
	}
	list = append(list, docCells(fmt.Sprint(len(list)+1), text))
	var blocks []table.Block
	for _, n := range s.names() {
		blocks = append(blocks, line(n[0]+" = "+n[1]))
	}
	head := docCells("Half hour", "What I will be doing")
	return written("Plan", false, append(blocks, table.Block{Table: &table.Table{Rows: append([][]table.Cell{head}, list...), Header: 1}})...)
}

func tickBoxes(s sheet) string {
	list := [][]table.Cell{docCells("", "Time", "Dish", "Task", "Points", "Done?")}
	for _, r := range s.Rows {
		list = append(list, docCells("☐", s.when(r), s.name(r.Dish), r.Text, r.Points, "Y / N"))
	}
	return written("Plan", false, table.Block{Table: &table.Table{Rows: list, Header: 1}})
}

// wide has a column for each dish; what is for all goes across them.
func wide(s sheet) string {
	heads := []string{"Time"}
	for i, n := range s.names() {
		heads = append(heads, fmt.Sprintf("Dish %d: %s", i+1, n[1]))
	}
	list := [][]table.Cell{docCells(append(heads, "Reminders")...)}
	for _, r := range s.Rows {
		texts := []string{s.when(r)}
		for i, n := range s.names() {
			texts = append(texts, pick(r.Dish == n[0] || r.Dish == "all" && i == 0, r.Text))
		}
		row := docCells(append(texts, r.Points)...)
		if r.Dish == "all" {
			row[1].Span = len(s.names())
			for i := 2; i <= len(s.names()); i++ {
				row[i] = table.Cell{Span: 1, Clock: -1}
			}
		}
		list = append(list, row)
	}
	return written("Plan", true, table.Block{Table: &table.Table{Rows: list, Header: 1}})
}

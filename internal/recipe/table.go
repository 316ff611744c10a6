package recipe

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/practical"
)

// Table is a technique table: the rows in the order of its file. It is made by
// ParseTable and not changed afterwards, so many readers may share one.
type Table struct {
	Techniques []Technique

	byVerb map[string][]alternativeAt
}

// alternativeAt is where an alternative of a technique's words stands.
type alternativeAt struct{ row, alternative int }

// Find is the technique of an id; nil when the table has none.
func (t *Table) Find(id string) *Technique {
	for i := range t.Techniques {
		if t.Techniques[i].ID == id {
			return &t.Techniques[i]
		}
	}
	return nil
}

// index makes the table ready for questions.
func (t *Table) index() {
	t.byVerb = map[string][]alternativeAt{}
	for i := range t.Techniques {
		t.Techniques[i].alternatives = readMatch(t.Techniques[i].Match)
		t.Techniques[i].whole = readTerms(t.Techniques[i].Whole)
		for k, w := range t.Techniques[i].alternatives {
			for _, v := range w.verbs {
				t.byVerb[v] = append(t.byVerb[v], alternativeAt{i, k})
			}
		}
	}
}

// column is a column of the table's file: its name in the first row, whether a
// cell of it may be empty, and how a cell is read and written.
type column struct {
	name     string
	about    string // what it holds, for people
	required bool
	read     func(*Technique, string) *practical.Fault
	write    func(*Technique) string
}

// Column tells of a column of the table's file.
type Column struct {
	Name, About string
	Required    bool // a cell of it may not be empty
}

// Columns tells of every column, in the order in which the table is written.
func Columns() []Column {
	list := make([]Column, len(columns))
	for i, c := range columns {
		list[i] = Column{c.name, c.about, c.required}
	}
	return list
}

var columns = []column{
	text("id", "a short name of the row's own, such as rub-in", true, func(t *Technique) *string { return &t.ID }),
	text("technique", "what it is called", true, func(t *Technique) *string { return &t.Name }),
	whole("skill group", "1 to 12", true, 1, 12, func(t *Technique) *int { return &t.Group }),
	level("complexity", "basic, medium or high", true, func(t *Technique) *Complexity { return &t.Complexity }),
	level("also held", "another level that is in use, or empty", false, func(t *Technique) *Complexity { return &t.Contested }),
	whole("learner low", "minutes of hands, at least", true, 0, mostHands, func(t *Technique) *int { return &t.Learner.Low }),
	whole("learner likely", "minutes of hands, usually", true, 0, mostHands, func(t *Technique) *int { return &t.Learner.Likely }),
	whole("learner high", "minutes of hands, at most", true, 1, mostHands, func(t *Technique) *int { return &t.Learner.High }),
	whole("skilled low", "the same for a skilled cook; empty: as for a learner", false, 0, mostHands, func(t *Technique) *int { return &t.Skilled.Low }),
	whole("skilled likely", "", false, 0, mostHands, func(t *Technique) *int { return &t.Skilled.Likely }),
	whole("skilled high", "", false, 0, mostHands, func(t *Technique) *int { return &t.Skilled.High }),
	whole("wait least", "minutes without the hands, at least", false, 0, mostWait, func(t *Technique) *int { return &t.Wait.Least }),
	whole("wait most", "minutes without the hands, at most", false, 0, mostWait, func(t *Technique) *int { return &t.Wait.Most }),
	text("wait what", "what happens meanwhile", false, func(t *Technique) *string { return &t.WaitWhat }),
	text("wait place", "where it waits", false, func(t *Technique) *string { return &t.WaitPlace }),
	yesNo("watch", "yes: must be watched while the hands work", func(t *Technique) *bool { return &t.Watch }),
	text("place", "what the hands work at: bench, hob, food processor", true, func(t *Technique) *string { return &t.Place }),
	text("kit", "small kit, with ; between", false, func(t *Technique) *string { return &t.Kit }),
	text("heat", "temperatures, in words", false, func(t *Technique) *string { return &t.Heat }),
	text("quality words", "how the cook knows that it is right, with ; between", false, func(t *Technique) *string { return &t.Quality }),
	text("control", "the usual safety control; local rules and the risk assessment decide", false, func(t *Technique) *string { return &t.Control }),
	text("key terms", "words of the trade, with ; between", false, func(t *Technique) *string { return &t.Terms }),
	text("source", "where the figures come from", true, func(t *Technique) *string { return &t.Source }),
	yesNo("each", "yes: the minutes are for one thing named, and each further one adds half as much", func(t *Technique) *bool { return &t.Each }),
	text("words", "the words of a step that call for it: verb+word+word, / between words that do as well, ; between other ways to say it", false, func(t *Technique) *string { return &t.Match }),
	text("recipe words", "the words that show it in a whole recipe, written the same way, its ingredients counted in; ! before words that speak against it", false, func(t *Technique) *string { return &t.Whole }),
}

// The most minutes that a cell may hold: ten hours of hands, three days of waiting.
const (
	mostHands = 600
	mostWait  = 3 * 24 * 60
)

func text(name, about string, required bool, of func(*Technique) *string) column {
	return column{
		name, about, required,
		func(t *Technique, s string) *practical.Fault {
			if formula(s) {
				return &practical.Fault{Message: quoted(s) + " begins as a formula does", Hint: "begin with a letter or a digit"}
			}
			*of(t) = s
			return nil
		},
		func(t *Technique) string { return *of(t) },
	}
}

// formula says whether a spreadsheet would take a cell for something to work
// out; "-18C" is a temperature.
func formula(s string) bool {
	return s != "" && (strings.ContainsRune("=+@", rune(s[0])) || s[0] == '-' && strings.ContainsAny(s, "=|(!"))
}

func whole(name, about string, required bool, least, most int, of func(*Technique) *int) column {
	return column{
		name, about, required,
		func(t *Technique, s string) *practical.Fault {
			n, err := strconv.Atoi(s)
			switch {
			case s == "":
				*of(t) = 0
				return nil
			case err != nil:
				return &practical.Fault{Message: quoted(s) + " is not a whole number", Hint: "write digits, such as 10"}
			case n < least || n > most:
				return &practical.Fault{Message: fmt.Sprintf("%d is outside %d to %d", n, least, most), Hint: "write a number between them"}
			}
			*of(t) = n
			return nil
		},
		func(t *Technique) string { return strconv.Itoa(*of(t)) },
	}
}

func level(name, about string, required bool, of func(*Technique) *Complexity) column {
	return column{
		name, about, required,
		func(t *Technique, s string) *practical.Fault {
			c := Complexity(strings.ToLower(s))
			if s != "" && !slices.Contains([]Complexity{Basic, Medium, High}, c) {
				return &practical.Fault{Message: quoted(s) + " is no level", Hint: "write basic, medium or high"}
			}
			*of(t) = c
			return nil
		},
		func(t *Technique) string { return string(*of(t)) },
	}
}

func yesNo(name, about string, of func(*Technique) *bool) column {
	return column{
		name, about, false,
		func(t *Technique, s string) *practical.Fault {
			switch strings.ToLower(s) {
			case "yes", "y", "true":
				*of(t) = true
			case "no", "n", "false", "":
				*of(t) = false
			default:
				return &practical.Fault{Message: quoted(s) + " is neither yes nor no", Hint: "write yes or no"}
			}
			return nil
		},
		func(t *Technique) string {
			if *of(t) {
				return "yes"
			}
			return ""
		},
	}
}

// quoted is a cell as a fault shows it, shortened.
func quoted(s string) string {
	const longest = 40
	if runes := []rune(s); len(runes) > longest {
		s = string(runes[:longest]) + "…"
	}
	return "“" + s + "”"
}

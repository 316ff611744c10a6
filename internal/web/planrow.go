package web

import (
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

var actionWords = map[timeplan.Action]string{
	timeplan.SetUp: "set-up", timeplan.PutIn: "put in", timeplan.TakeOut: "take out", timeplan.TurnTo: "turn to",
	timeplan.WashUp: "wash up", timeplan.Serve: "serve", timeplan.Rest: "rest",
}

// planRows are the plan's rows as the page shows them.
func planRows(p *timeplan.Plan) []PlanRow {
	places := map[string]int{}
	for i, d := range p.Dishes {
		places[d.Letter] = i
	}
	rows := make([]PlanRow, len(p.Rows))
	for i, row := range p.Rows {
		shown := PlanRow{
			Row: row, Time: row.Clock.Write(p.Hours), Anchor: anchor(row.ID), Kind: actionWords[row.Action],
			Before: row.At < p.Start, First: i == 0, Last: i == len(p.Rows)-1,
			Moves: row.Action != timeplan.TurnTo && row.Action != timeplan.Rest && (len(row.Steps) > 0 || row.Action == timeplan.Serve || strings.HasPrefix(row.ID, "wash-up/")),
			Name:  cut(row.Text, 40),
		}
		if strings.Contains(row.Text, row.Setting) {
			shown.Setting = "" // said already
		}
		if row.Until > 0 {
			shown.Till = row.Until.Write(p.Hours)
		}
		if d, ok := places[row.Dish]; ok {
			mark := chip(d, row.Dish, p.Dishes[d].Name)
			shown.Chip = &mark
		}
		rows[i] = shown
	}
	return rows
}

// anchor is a row's id for HTML.
func anchor(row string) string { return "row-" + strings.ReplaceAll(row, "/", "-") }

// Where says where the row sends the food, for those who cannot see the plait.
func (r PlanRow) Where() string {
	if r.Place == "" || r.Place == practical.AtHands || r.Place == practical.AtBench {
		return ""
	}
	return placeWords[r.Place]
}

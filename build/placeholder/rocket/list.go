package rocket

import (
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

// What the entry takes.
const argTeams form.Key[int] = "teams"

func rocketList() entry.Entry {
	return entry.Entry{
		Name:      "rocket-list",
		Summary:   "The flight list to print: two lines a group, the plain and the changed rocket, in the order in which they fly.",
		Printable: true,
		Arguments: form.Form{
			{Key: argTeams, Min: 1, Max: 6, Default: 3, Doc: "Teams of groups that take turns; each launches in one round."},
		},
		Settings: form.Keys{school.ClassPupils, school.ClassGroupSize, school.Paper},
		Facts: []entry.Fact{
			{Name: "groups", Doc: "groups that fly"},
			{Name: "flights", Doc: "flights of all groups, two each"},
			{Name: "rounds", Doc: "rounds of launching"},
			{Name: "most", Doc: "flights in the longest round"},
		},
		Sources:  []string{"Each pair flown one right after the other, every second pair the other way round: common practice of paired tests, no source"},
		Cautions: []string{entry.CareSighting},
		Reckon:   reckonRocketList,
	}
}

// A pair is a group's two flights.
type pair struct {
	group        int // from 1
	changedFirst bool
}

// roundsOf shares groups out to teams, as equal as can be; a team flies in one round.
// Every second group flies its changed rocket first, so that what changes on the way,
// the bottle or the wind, touches both kinds alike.
func roundsOf(groups, teams int) [][]pair {
	var rounds [][]pair
	group := 0
	for team := range min(groups, teams) {
		n := groups / teams
		if team < groups%teams {
			n++
		}
		var round []pair
		for range n {
			group++
			round = append(round, pair{group, group%2 == 0})
		}
		rounds = append(rounds, round)
	}
	return rounds
}

func reckonRocketList(v form.Values) (result.Result, error) {
	groups := max(1, len(classroom.Groups(school.ClassPupils.Of(v), school.ClassGroupSize.Of(v))))
	rounds := roundsOf(groups, argTeams.Of(v))
	table := result.Table{
		Name: "rounds", Title: say.Line("rocket-list.title"),
		Columns: []result.Column{{Name: "round"}, {Name: "first"}, {Name: "last"}, {Name: "flights"}},
	}
	most := 0
	for i, round := range rounds {
		most = max(most, 2*len(round))
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Count(i + 1), say.Count(round[0].group), say.Count(round[len(round)-1].group), say.Count(2 * len(round)),
		}})
	}
	r := result.Result{
		Facts: []result.Fact{
			{Name: "groups", Value: say.Count(groups)},
			{Name: "flights", Value: say.Count(2 * groups)},
			{Name: "rounds", Value: say.Count(len(rounds))},
			{Name: "most", Value: say.Count(most)},
		},
		Tables: []result.Table{table},
		Notes:  []say.Phrase{say.Line("rocket-list.note")},
	}
	paper := drawing.PaperOf(school.Paper.Of(v))
	for _, d := range listSheets(rounds) {
		r.Sheets = append(r.Sheets, paper.Sheets(d)...)
	}
	return r, nil
}

// The list's sheet in millimetres; it goes on Letter and A4 alike.
const (
	listLine = 9.0
	listTop  = 24.0
	listMost = 22 // lines on a sheet, a round's own line among them
)

// listColumns are the columns with their widths.
var listColumns = []struct {
	head string
	wide float64
}{
	{"rocket-list.head_flight", 20}, {"rocket-list.head_group", 18}, {"rocket-list.head_rocket", 32},
	{"rocket-list.head_one", 32}, {"rocket-list.head_two", 32}, {"rocket-list.head_time", 26}, {"rocket-list.head_remark", 28},
}

// listSheets draws the list. A round that does not fit begins a sheet.
func listSheets(rounds [][]pair) []drawing.Drawing {
	var sheets []drawing.Drawing
	line, flight := listMost, 0
	open := func() *drawing.Drawing {
		if line >= listMost {
			sheets = append(sheets, emptyList())
			line = 0
		}
		return &sheets[len(sheets)-1]
	}
	for i, round := range rounds {
		if line+1+2*len(round) > listMost && line > 0 {
			line = listMost
		}
		d := open()
		d.Label("strong", drawing.Point{X: 1, Y: lineFoot(line) - 2.5}, drawing.Start, say.Words("rocket-list.round", say.Count(i+1)))
		d.Line("mark", drawing.Point{X: 0, Y: lineFoot(line)}, drawing.Point{X: d.Width, Y: lineFoot(line)})
		line++
		for _, p := range round {
			order := []string{"rocket-list.plain", "rocket-list.changed"}
			if p.changedFirst {
				slices.Reverse(order)
			}
			for _, key := range order {
				flight++
				d := open()
				y, x := lineFoot(line), 0.0
				cells := []say.Value{say.Count(flight), say.Count(p.group), say.Words(key)}
				for j, c := range listColumns {
					if j < len(cells) {
						d.Label("small", drawing.Point{X: x + c.wide/2, Y: y - 3}, drawing.Middle, cells[j])
					}
					x += c.wide
				}
				d.Line("mark", drawing.Point{X: 0, Y: y}, drawing.Point{X: d.Width, Y: y})
				line++
			}
		}
	}
	return sheets
}

// lineFoot is where a line of the list ends, counted from 0.
func lineFoot(line int) float64 { return listTop + listLine*float64(line+1) }

// emptyList is a sheet with its head and its columns.
func emptyList() drawing.Drawing {
	d := drawing.Drawing{
		Name: "flight-list", Height: lineFoot(listMost-1) + 1,
		Title:       say.Line("rocket-list.sheet"),
		Description: say.Line("rocket-list.description"),
	}
	for _, c := range listColumns {
		d.Width += c.wide
	}
	d.Label("strong", drawing.Point{X: 0, Y: 4}, drawing.Start, say.Words("rocket-list.sheet"))
	d.Label("small", drawing.Point{X: d.Width, Y: 4}, drawing.End, say.Words("rocket-list.blank_day"))
	d.Label("small", drawing.Point{X: 0, Y: 12}, drawing.Start, say.Words("rocket-list.blank_change"))
	x := 0.0
	for _, c := range listColumns {
		d.Label("strong", drawing.Point{X: x + c.wide/2, Y: listTop - 2}, drawing.Middle, say.Words(c.head))
		if x > 0 {
			d.Line("mark", drawing.Point{X: x, Y: listTop}, drawing.Point{X: x, Y: lineFoot(listMost - 1)})
		}
		x += c.wide
	}
	d.Line("mark", drawing.Point{X: 0, Y: listTop}, drawing.Point{X: d.Width, Y: listTop})
	return d
}

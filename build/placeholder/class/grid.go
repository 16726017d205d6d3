package class

import (
	"fmt"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
)

// Measures of the marking grid in millimetres.
const (
	gridTitle  = 13.0 // lines above the columns
	gridHead   = 66.0 // of a column: its number, and the goal, turned
	gridName   = 48.0 // room for a name
	gridColumn = 11.0 // least width
	gridRow    = 6.0  // least height, to write in; common practice, no source
	gridTall   = 9.0  // greatest height
	gridLine   = 3.0  // from line to line of a goal
	gridEdge   = 0.2  // that the outer lines keep from the edge of the drawing
)

// What a grid has where the class or the lesson says nothing.
const (
	blankRows    = 30
	blankColumns = 8
)

func markingGrid() entry.Entry {
	return entry.Entry{
		Name:      "marking-grid",
		Summary:   "A sheet to mark on, a row for each pupil and a column for each goal, with names left blank, and sentences for reports made from the goals.",
		Printable: true, Lessons: true, For: entry.OneClass,
		Arguments: form.Form{
			entry.OfLesson(),
			levelsField(),
		},
		Settings: append(school.CalendarSettings(), school.Paper, school.UnitTitle, school.ClassPupils),
		Facts: []entry.Fact{
			{Name: "goals", Doc: "how many goals have a column; where no lesson has any the sheet has empty ones"},
			{Name: "rows", Doc: "how many rows there are for names"},
			{Name: "sheets", Doc: "how many sheets that makes"},
		},
		Sources:  []string{"Goals: the lessons' own; levels: common practice, no source"},
		Harmless: "A sheet for marks, which an adult fills in.",
		Reckon:   reckonGrid,
	}
}

// A goal is one column of the grid.
type goal struct{ number, text string }

func reckonGrid(v form.Values) (result.Result, error) {
	lessons, only := entry.Lessons(v), entry.Lesson.Of(v)
	if _, err := taught(lessons, only); err != nil {
		return result.Result{}, err
	}
	levels, err := levelsOf(v)
	if err != nil {
		return result.Result{}, err
	}
	title := say.Text(school.UnitTitle.Of(v))
	var goals []goal
	for i, l := range lessons {
		if only > 0 && i != only-1 {
			continue
		}
		if only > 0 {
			title = numbered(i+1, l)
		}
		for k, text := range l.Goals {
			goals = append(goals, goal{fmt.Sprintf("%d.%d", i+1, k+1), text})
		}
	}
	rows := school.ClassPupils.Of(v)
	if rows == 0 {
		rows = blankRows
	}
	r := result.Result{Sheets: gridSheets(drawing.PaperOf(school.Paper.Of(v)), title, levels, goals, rows)}
	if len(goals) > 0 {
		r.Tables = []result.Table{sentenceTable(goals, levels, !argLevels.In(v))}
		r.Notes = append(r.Notes, say.Line("marking-grid.sentence"))
	} else {
		r.Notes = append(r.Notes, say.Line("marking-grid.no_goals"))
	}
	r.Notes = append(r.Notes, say.Line("marking-grid.names"))
	r.Facts = []result.Fact{
		{Name: "goals", Value: say.Count(len(goals))}, {Name: "rows", Value: say.Count(rows)}, {Name: "sheets", Value: say.Count(len(r.Sheets))},
	}
	return r, nil
}

// sentenceTable has for each goal a sentence a level, whose gap is for a name.
func sentenceTable(goals []goal, levels []say.Value, usual bool) result.Table {
	table := result.Table{Name: "sentences", Title: say.Line("marking-grid.title"), Columns: []result.Column{{Name: "goal"}}}
	for i := range levels {
		table.Columns = append(table.Columns, result.Column{Name: fmt.Sprint("points", i)})
	}
	table.Rows = []result.Row{{Marked: true, Cells: append([]say.Value{say.Text("")}, levels...)}}
	for _, g := range goals {
		text, cells := say.Text(g.text), []say.Value{say.Text(g.number)}
		if usual {
			cells = append(cells, say.Words("marking-grid.not_yet", text), say.Words("marking-grid.with_help", text), say.Words("marking-grid.yes", text), say.Words("marking-grid.more", text))
		} else {
			for _, level := range levels {
				cells = append(cells, say.Words("marking-grid.own", text, level))
			}
		}
		table.Rows = append(table.Rows, result.Row{Cells: cells})
	}
	return table
}

// gridSheets lays the grid out over as many sheets as its columns and rows need.
func gridSheets(paper drawing.Paper, title say.Value, levels []say.Value, goals []goal, rows int) []drawing.Sheet {
	if len(goals) == 0 {
		goals = make([]goal, blankColumns)
	}
	width, height := paper.Whole() // a row more may hold the whole class
	across := int((width - gridName - 2*gridEdge) / gridColumn)
	down := int((height - gridTitle - gridHead - gridEdge) / gridRow)
	var sheets []drawing.Sheet
	down = spread(rows, down)
	for begin := 0; begin < rows; begin += down {
		for some := range slices.Chunk(goals, across) {
			d := gridDrawing(width, height, title, levels, some, begin, min(down, rows-begin))
			sheets = append(sheets, drawing.Sheet{Paper: paper, Drawing: d, Row: 1, Column: 1, Rows: 1, Columns: 1, Slim: true})
		}
	}
	return sheets
}

// spread returns how many of a number go on each sheet, where so many are the most, so that
// the last has about as many as the others.
func spread(number, most int) int {
	sheets := (number + most - 1) / most
	return (number + sheets - 1) / sheets
}

// gridDrawing is one sheet, with rows of pupils begin+1 and on.
func gridDrawing(width, height float64, title say.Value, levels []say.Value, goals []goal, begin, rows int) drawing.Drawing {
	d := drawing.Drawing{
		Name: "marking", Width: width, Height: height,
		Title:       say.Line("marking-grid.sheet", title),
		Description: say.Line("marking-grid.description"),
	}
	column := (width - gridName - 2*gridEdge) / float64(max(len(goals), blankColumns))
	left := func(i int) float64 { return gridEdge + gridName + float64(i)*column }
	right, head := left(len(goals)), gridTitle+gridHead
	row := min(gridTall, (height-head-gridEdge)/float64(rows))
	foot := head + float64(rows)*row
	d.Label("numeral", drawing.Point{X: gridEdge, Y: 5}, drawing.Start, say.Words("marking-grid.sheet", title))
	var named []say.Value
	for i, level := range levels {
		named = append(named, say.Words("marking-grid.level", say.Count(i), level))
	}
	d.Label("small", drawing.Point{X: gridEdge, Y: 10}, drawing.Start, entry.Listed(named))
	d.Label("strong", drawing.Point{X: gridEdge + 1.5, Y: head - 2}, drawing.Start, say.Words("marking-grid.pupil"))
	for i, g := range goals {
		d.Label("strong", drawing.Point{X: left(i) + column/2, Y: gridTitle + 4}, drawing.Middle, say.Text(g.number))
		if g.text != "" { // what is too long for the column, the table of sentences has
			p := d.Paragraph("small", drawing.Point{X: left(i) + 3.2, Y: head - 1.5}, gridHead-9, gridLine, say.Text(g.text))
			p.Turn, p.Most = -90, int((column-1.6)/gridLine)
		}
	}
	for i := range len(goals) + 1 {
		d.Line("grid", drawing.Point{X: left(i), Y: gridTitle}, drawing.Point{X: left(i), Y: foot})
	}
	d.Line("grid", drawing.Point{X: gridEdge, Y: head}, drawing.Point{X: gridEdge, Y: foot})
	d.Line("grid", drawing.Point{X: left(0), Y: gridTitle}, drawing.Point{X: right, Y: gridTitle})
	for i := range rows + 1 {
		y := head + float64(i)*row
		d.Line("grid", drawing.Point{X: gridEdge, Y: y}, drawing.Point{X: right, Y: y})
		if i < rows {
			d.Label("small", drawing.Point{X: gridEdge + 5, Y: y + row/2 + 1}, drawing.End, say.Count(begin+i+1))
		}
	}
	return d
}

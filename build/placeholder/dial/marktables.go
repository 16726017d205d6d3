package dial

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// marksTable lists each mark with its place on a true dial and on the one that
// fits; marks far from theirs stand out.
func marksTable(p place.Place, b board, rows []markRow, marked bool, fit dial.Fit) result.Table {
	table := result.Table{
		Name: "marks", Title: say.Line("dial-marks.title"),
		Columns: []result.Column{{Name: "group"}, {Name: "date"}, {Name: "clock"}},
	}
	for _, of := range []string{"true_dial", "marked", "fitted", "off"} {
		name, unit := b.column(of)
		table.Columns = append(table.Columns, result.Column{Name: name, Unit: unit})
	}
	none := say.None("dial-marks.none")
	for i, row := range rows {
		cells := []say.Value{say.Text(row.group), entry.DayOfYear(p.DateAt(row.at)), say.Clock(row.at), none, none, none, none}
		if row.group == "" {
			cells[0] = say.Words("dial-marks.whole_class")
		}
		if line, ok := b.right(dial.SunDirection(b.latitude, row.Declination, row.HourAngle)); ok {
			cells[3] = b.shown(line)
		}
		if marked {
			cells[4] = b.shown(row.Line)
		}
		suspect := false
		if fit.Residuals != nil {
			off := fit.Residuals[i]
			cells[5] = b.shown((row.Line - off).Signed())
			cells[6] = b.apart(row.Line, row.Line-off)
			suspect = slices.Contains(oddMarks(fit), i)
		}
		table.Rows = append(table.Rows, result.Row{Cells: cells, Marked: suspect})
	}
	return table
}

// groupsTable fits each group by itself.
func groupsTable(b board, rows []markRow, groups []string, ask dial.Unknown, variation quantity.Angle) result.Table {
	table := result.Table{
		Name: "groups", Title: say.Line("dial-marks.groups_title"),
		Columns: []result.Column{{Name: "group"}, {Name: "marks"}, {Name: "turn", Unit: "deg"}, {Name: "gnomon_off", Unit: "deg"}, {Name: "finding"}},
	}
	for _, group := range groups {
		own := slices.DeleteFunc(slices.Clone(rows), func(row markRow) bool { return row.group != group })
		fit, err := b.fit(marksIn(own), ask)
		facts := fitFacts(fit, err)
		name := say.Text(group)
		if group == "" {
			name = say.Words("dial-marks.whole_class")
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			name, say.Count(len(own)), facts[0].Value, facts[2].Value, b.finding(fit, err, ask, variation),
		}})
	}
	return table
}

// oddMarks are the marks far from the curve that fits them: two and a half times the scatter
// of all, and more than a degree. Common practice, no source.
func oddMarks(fit dial.Fit) []int {
	var odd []int
	for i, off := range fit.Residuals {
		if max(off, -off) > 2.5*fit.Scatter && math.Abs(off.Degrees()) > 1 {
			odd = append(odd, i)
		}
	}
	return odd
}

// marksChart draws marks over the hours of the Sun, with the true dial's line
// and the one that fits.
func marksChart(b board, rows []markRow, marked bool, fit dial.Fit, fitted bool) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title:       say.Line("dial-marks.chart"),
		Description: say.Line("dial-marks.chart_description"),
	}
	first, last, far := 24.0, 0.0, b.step()
	reach := func(line quantity.Angle, ok bool) {
		if size, onPlate := b.measured(line); ok && onPlate {
			far = max(far, math.Abs(size))
		}
	}
	for _, row := range rows {
		hour := row.HourAngle.Hours() + 12
		first, last = min(first, hour), max(last, hour)
		reach(row.Line, true)
	}
	for _, row := range rows {
		reach(b.right(dial.SunDirection(b.latitude, row.Declination, row.HourAngle)))
	}
	step, title := b.step(), say.Words("dial-marks.chart_angle")
	if b.isPolar() {
		title = say.Words("dial-marks.chart_distance")
	}
	first, last, far = math.Floor(first), math.Ceil(last+1e-9), math.Ceil(far/step)*step
	c := d.Chart(entry.YearFrame(),
		drawing.Axis{From: first, To: max(last, first+1), Ticks: drawing.Every(first, last, 1, inClock), Title: say.Words("dial-marks.chart_hours")},
		drawing.Axis{From: -far, To: far, Ticks: drawing.Every(-far, far, step, b.inPrint), Title: title})
	declination := rows[0].Declination
	c.Curve("rule", b.curve(declination, dial.Fit{}, first, last)...)
	if fitted && marked {
		c.Curve("curve", b.curve(declination, fit, first, last)...)
	}
	odd := oddMarks(fit)
	for i, row := range rows {
		if size, ok := b.measured(row.Line); marked && ok {
			c.Measured(drawing.Point{X: row.HourAngle.Hours() + 12, Y: size}, slices.Contains(odd, i))
		}
	}
	return d
}

// curve is where the shadow falls through a day on a dial that is out of place as the
// fit says.
func (b board) curve(declination quantity.Angle, fit dial.Fit, first, last float64) []drawing.Point {
	var curve []drawing.Point
	falls := b.laid(fit)
	for hour := first; hour <= last; hour += 0.25 {
		line, ok := falls(dial.SunDirection(b.latitude, declination, quantity.Hours(hour-12-fit.Watch.Hours())))
		if size, onPlate := b.measured(line); ok && onPlate && (len(curve) == 0 || math.Abs(size-curve[len(curve)-1].Y) < 180) {
			curve = append(curve, drawing.Point{X: hour, Y: size})
		}
	}
	return curve
}

func inClock(hour float64) say.Value {
	return say.HourOnAxis(int(hour))
}

package dial

import (
	"math"
	"slices"
	"time"

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
func marksTable(p place.Place, rows []markRow, marked bool, fit dial.Fit) result.Table {
	table := result.Table{
		Name: "marks", Title: say.Line("dial-marks.title"),
		Columns: []result.Column{
			{Name: "group"}, {Name: "date"}, {Name: "clock"}, {Name: "true_dial", Unit: "deg"},
			{Name: "marked", Unit: "deg"}, {Name: "fitted", Unit: "deg"}, {Name: "off", Unit: "deg"},
		},
	}
	none := say.None("dial-marks.none")
	for i, row := range rows {
		cells := []say.Value{say.Text(row.group), entry.DayOfYear(p.DateAt(row.at)), say.Clock(row.at), none, none, none, none}
		if row.group == "" {
			cells[0] = say.Words("dial-marks.whole_class")
		}
		if line, ok := dial.True(p.Latitude).Line(dial.SunDirection(p.Latitude, row.Declination, row.HourAngle)); ok {
			cells[3] = say.Number(line.Degrees(), "deg", 1)
		}
		if marked {
			cells[4] = say.Number(row.Line.Degrees(), "deg", 1)
		}
		suspect := false
		if fit.Residuals != nil {
			off := fit.Residuals[i]
			cells[5] = say.Number((row.Line - off).Signed().Degrees(), "deg", 1)
			cells[6] = say.Number(off.Degrees(), "deg", 1)
			suspect = max(off, -off) > 2.5*fit.Scatter && off.Degrees()*off.Degrees() > 1
		}
		table.Rows = append(table.Rows, result.Row{Cells: cells, Marked: suspect})
	}
	return table
}

// groupsTable fits each group by itself.
func groupsTable(p place.Place, rows []markRow, groups []string, ask dial.Unknown, variation quantity.Angle) result.Table {
	table := result.Table{
		Name: "groups", Title: say.Line("dial-marks.groups_title"),
		Columns: []result.Column{{Name: "group"}, {Name: "marks"}, {Name: "turn", Unit: "deg"}, {Name: "gnomon_off", Unit: "deg"}, {Name: "finding"}},
	}
	for _, group := range groups {
		own := slices.DeleteFunc(slices.Clone(rows), func(row markRow) bool { return row.group != group })
		fit, err := dial.FitMarks(p.Latitude, marksIn(own), ask)
		facts := fitFacts(fit, err)
		name := say.Text(group)
		if group == "" {
			name = say.Words("dial-marks.whole_class")
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			name, say.Count(len(own)), facts[0].Value, facts[2].Value, finding(fit, err, ask, variation),
		}})
	}
	return table
}

// marksChart draws marks over the hours of the Sun, with the true dial's line
// and the one that fits.
func marksChart(p place.Place, rows []markRow, marked bool, fit dial.Fit, fitted bool) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title:       say.Line("dial-marks.chart"),
		Description: say.Line("dial-marks.chart_description"),
	}
	first, last, far := 24.0, 0.0, 30.0
	for _, row := range rows {
		hour := row.HourAngle.Hours() + 12
		first, last = min(first, hour), max(last, hour)
		far = max(far, math.Abs(row.Line.Degrees()))
	}
	true0 := dial.True(p.Latitude)
	for _, row := range rows {
		if line, ok := true0.Line(dial.SunDirection(p.Latitude, row.Declination, row.HourAngle)); ok {
			far = max(far, math.Abs(line.Degrees()))
		}
	}
	first, last, far = math.Floor(first), math.Ceil(last+1e-9), math.Ceil(far/30)*30
	c := d.Chart(entry.YearFrame(),
		drawing.Axis{From: first, To: max(last, first+1), Ticks: drawing.Every(first, last, 1, inClock), Title: say.Words("dial-marks.chart_hours")},
		drawing.Axis{From: -far, To: far, Ticks: drawing.Every(-far, far, 30, entry.InDegrees), Title: say.Words("dial-marks.chart_angle")})
	declination := rows[0].Declination
	c.Curve("rule", lineCurve(p.Latitude, declination, true0, 0, first, last)...)
	if fitted && marked {
		laid := true0
		laid.Style.Elevation += fit.Gnomon
		c.Curve("curve", lineCurve(p.Latitude, declination, laid.Turned(fit.Turn), fit.Watch, first, last)...)
	}
	for _, row := range rows {
		if marked {
			c.Mark("mark", drawing.Point{X: row.HourAngle.Hours() + 12, Y: row.Line.Degrees()}, 0.9)
		}
	}
	return d
}

func lineCurve(latitude, declination quantity.Angle, d dial.Dial, watch time.Duration, first, last float64) []drawing.Point {
	var curve []drawing.Point
	for hour := first; hour <= last; hour += 0.25 {
		line, ok := d.Line(dial.SunDirection(latitude, declination, quantity.Hours(hour-12-watch.Hours())))
		if ok && (len(curve) == 0 || math.Abs(line.Degrees()-curve[len(curve)-1].Y) < 180) {
			curve = append(curve, drawing.Point{X: hour, Y: line.Degrees()})
		}
	}
	return curve
}

func inClock(hour float64) say.Value {
	return say.HourOnAxis(int(hour))
}

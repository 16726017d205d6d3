package placeholder

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/compass"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func dialMarks() Entry {
	return Entry{
		Name:    "dial-marks",
		Summary: "What the class's own marks say: how the plate was turned, the gnomon's angle, the watch.",
		Arguments: form.Form{onDate,
			{Name: "group", Default: "", Doc: "The group whose marks count; all of them together where none is named."},
			{Name: "find", Kind: form.Texts, Choices: []string{"turn", "gnomon", "watch"}, Default: []string{"turn", "gnomon", "watch"}, Doc: "What is looked for; the rest is taken to be right."},
			{Name: "watch_within_min", Kind: form.Number, Unit: "min", Min: 0, Max: 60, Default: 1.0, Doc: "How well the watch was set, as a standard deviation; 0 where nothing is known of it."},
		},
		Settings: slices.Concat(where, []string{"records.dial_marks"}),
		Facts: []Fact{
			{"marks", "", "how many marks count"},
			{"turn", "deg", "how far plate and gnomon were turned, clockwise positive"},
			{"turn_margin", "deg", "how far that may be wrong"},
			{"gnomon_off", "deg", "how much too steep the gnomon was"},
			{"gnomon_margin", "deg", "how far that may be wrong"},
			{"watch_off", "s", "how fast the watch was"},
			{"watch_margin", "s", "how far that may be wrong"},
			{"scatter", "deg", "how far marks lie from their places when all that is put right"},
			{"finding", "", "the answer in words, or why there is none"},
		},
		Sources: []string{sourceSun, sourceWMM, sourceIANA, "Least squares on shadows by vectors, margins that hold together in 95 of 100 classes, as compute/dial documents"},
		Reckon:  reckonDialMarks,
	}
}

// A markRow is one mark of the records.
type markRow struct {
	group string
	at    time.Time // by the watch
	dial.Mark
}

func reckonDialMarks(v form.Values) (result.Result, error) {
	p := Place(v)
	rows, err := markRows(p, v.Records("records.dial_marks"), v.Text("group"))
	if err != nil {
		return result.Result{}, err
	}
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, p.Clock(v.Date("date"), 12, 0))
	if err != nil {
		return result.Result{}, err
	}
	ask := dial.Unknown{
		Turn: slices.Contains(v.Texts("find"), "turn"), Gnomon: slices.Contains(v.Texts("find"), "gnomon"), Watch: slices.Contains(v.Texts("find"), "watch"),
		WatchWithin: time.Duration(v.Number("watch_within_min") * float64(time.Minute)),
	}
	fit, err := dial.FitMarks(p.Latitude, marksIn(rows), ask)
	r := result.Result{Facts: slices.Concat(
		[]result.Fact{{Name: "marks", Value: say.Count(len(rows))}}, fitFacts(fit, err),
		[]result.Fact{{Name: "finding", Value: finding(fit, err, ask, field.Declination)}},
	)}
	predicted := rows
	if len(rows) == 0 {
		predicted = predictedRows(p, v.Date("date"))
		r.Notes = []say.Phrase{say.Line("dial-marks.no_records")}
	} else {
		r.Notes = []say.Phrase{say.Line("dial-marks.margins")}
	}
	r.Tables = []result.Table{marksTable(p, predicted, len(rows) > 0, fit)}
	if groups := groupsIn(rows); len(groups) > 1 {
		r.Tables = append(r.Tables, groupsTable(p, rows, groups, ask, field.Declination))
	}
	if len(predicted) > 1 {
		r.Drawings = []drawing.Drawing{marksChart(p, predicted, len(rows) > 0, fit, err == nil)}
	}
	r.Working = []say.Phrase{say.Line("dial-marks.working_point"), say.Line("dial-marks.working_fit")}
	return r, nil
}

// markRows turns records into marks, those of one group or of all.
func markRows(p place.Place, records form.Records, group string) ([]markRow, error) {
	var rows []markRow
	for i, row := range records.Rows {
		if group != "" && row.Text("group") != group {
			continue
		}
		angle, err := lineOf(row)
		if err != nil {
			return nil, fmt.Errorf("%s, line %d: %w", records.File, records.Line[i], err)
		}
		clock := row.Clock("time")
		at := p.Clock(row.Date("date"), int(clock/time.Hour), int(clock/time.Minute)%60)
		hour, declination := dial.SunAt(p, at)
		rows = append(rows, markRow{row.Text("group"), at.In(p.Zone), dial.Mark{Line: angle, HourAngle: hour, Declination: declination}})
	}
	if group != "" && len(rows) == 0 && len(records.Rows) > 0 {
		return nil, fmt.Errorf("no marks are of the group %q", group)
	}
	return rows, nil
}

// lineOf is the angle of a mark from the noon line, from angle or point.
func lineOf(row form.Values) (quantity.Angle, error) {
	x, y := row.Number("x_mm"), row.Number("y_mm")
	point := row.Has("x_mm") && row.Has("y_mm")
	switch {
	case row.Has("angle_deg") && (row.Has("x_mm") || row.Has("y_mm")):
		return 0, errors.New("a mark has angle_deg, or x_mm and y_mm, not both")
	case row.Has("angle_deg"):
		return quantity.Degrees(row.Number("angle_deg")), nil
	case !point:
		return 0, errors.New("a mark needs angle_deg, or both x_mm and y_mm")
	case math.Hypot(x, y) < 10:
		return 0, errors.New("a mark within 10 mm of the toe tells no angle")
	}
	return quantity.Atan2(x, y), nil
}

func marksIn(rows []markRow) []dial.Mark {
	marks := make([]dial.Mark, len(rows))
	for i, row := range rows {
		marks[i] = row.Mark
	}
	return marks
}

func groupsIn(rows []markRow) []string {
	var groups []string
	for _, row := range rows {
		if !slices.Contains(groups, row.group) {
			groups = append(groups, row.group)
		}
	}
	return groups
}

// predictedRows are the whole hours of a day, without marks.
func predictedRows(p place.Place, d place.Date) []markRow {
	from, to := p.Day(d)
	var rows []markRow
	for t := firstHour(from); t.Before(to); t = t.Add(time.Hour) {
		if almanac.SunFrom(p, t).Altitude > 0 {
			hour, declination := dial.SunAt(p, t)
			rows = append(rows, markRow{at: t, Mark: dial.Mark{HourAngle: hour, Declination: declination}})
		}
	}
	return rows
}

func fitFacts(fit dial.Fit, err error) []result.Fact {
	values := []say.Value{
		sided(fit.Turn.Degrees(), 1, "compass.clockwise", "compass.anticlockwise"),
		say.Number(fit.TurnMargin.Degrees(), "deg", 1),
		sided(fit.Gnomon.Degrees(), 1, "dial-marks.too_steep", "dial-marks.too_flat"),
		say.Number(fit.GnomonMargin.Degrees(), "deg", 1),
		fastOrSlow(fit.Watch),
		say.Minutes(fit.WatchMargin),
		say.Number(fit.Scatter.Degrees(), "deg", 1),
	}
	facts := make([]result.Fact, len(values))
	for i, name := range []string{"turn", "turn_margin", "gnomon_off", "gnomon_margin", "watch_off", "watch_margin", "scatter"} {
		facts[i] = result.Fact{Name: name, Value: values[i]}
		if err != nil {
			facts[i].Value = say.None("dial-marks.none")
		}
	}
	return facts
}

// finding says in words what the marks tell.
func finding(fit dial.Fit, err error, ask dial.Unknown, variation quantity.Angle) say.Value {
	var few *dial.TooFew
	var against *dial.Contradictory
	switch {
	case errors.As(err, &few) && few.Marks == 0:
		return say.Words("dial-marks.no_marks")
	case errors.As(err, &few):
		return say.Words("dial-marks.too_few", say.Count(few.Marks), say.Count(few.Want))
	case errors.As(err, &against):
		return say.Words("dial-marks.contradict", say.Number(against.Scatter.Degrees(), "deg", 0))
	case err != nil:
		return say.Words("dial-marks.undecided")
	}
	var found []say.Value
	if ask.Turn {
		found = append(found, turnFinding(fit, variation))
	}
	if off := fit.Gnomon; ask.Gnomon && max(off, -off) > fit.GnomonMargin {
		found = append(found, say.Words("dial-marks.gnomon_wrong", sided(off.Degrees(), 1, "dial-marks.too_steep", "dial-marks.too_flat"), say.Number(fit.GnomonMargin.Degrees(), "deg", 1)))
	} else if ask.Gnomon {
		found = append(found, say.Words("dial-marks.gnomon_right", say.Number(fit.GnomonMargin.Degrees(), "deg", 1)))
	}
	if ask.Watch && fit.Watch.Abs() > fit.WatchMargin {
		found = append(found, watchFinding(fit))
	} else if ask.Watch {
		found = append(found, say.Words("dial-marks.watch_right", say.Minutes(fit.WatchMargin)))
	}
	if len(found) == 0 {
		return say.Words("dial-marks.nothing_sought", say.Number(fit.Scatter.Degrees(), "deg", 1))
	}
	all := found[0]
	for _, next := range found[1:] {
		all = say.Words("dial-marks.and", all, next)
	}
	return all
}

// turnFinding compares a turn with what a compass does to it: laid along the
// needle, a plate is turned by the variation; corrected to the wrong side, by
// twice that.
func turnFinding(fit dial.Fit, variation quantity.Angle) say.Value {
	turn := sided(fit.Turn.Degrees(), 0, "compass.clockwise", "compass.anticlockwise")
	margin := say.Number(fit.TurnMargin.Degrees(), "deg", 1)
	is := func(cause quantity.Angle) bool { // and could not be nothing
		off := (fit.Turn - cause).Signed()
		return max(off, -off) <= fit.TurnMargin+quantity.Degrees(0.5) // the model of the field is no better
	}
	switch {
	case is(0):
		return say.Words("dial-marks.turn_right", margin)
	case is(variation):
		return say.Words("dial-marks.turn_needle", turn, margin)
	case is(2 * variation):
		return say.Words("dial-marks.turn_wrong_side", turn, margin)
	}
	return say.Words("dial-marks.turn_other", turn, margin)
}

func watchFinding(fit dial.Fit) say.Value {
	key := "dial-marks.watch_wrong"
	if hour := fit.Watch.Abs() - time.Hour; hour.Abs() <= fit.WatchMargin {
		key = "dial-marks.watch_hour"
	}
	return say.Words(key, fastOrSlow(fit.Watch), say.Minutes(fit.WatchMargin))
}

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
		cells := []say.Value{say.Text(row.group), dayOfYear(p.DateAt(row.at)), say.Clock(row.at), none, none, none, none}
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
		Name: "chart", Width: chartWidth, Height: chartHeight,
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
	c := d.Chart(yearFrame,
		drawing.Axis{From: first, To: max(last, first+1), Ticks: drawing.Every(first, last, 1, inClock), Title: say.Words("dial-marks.chart_hours")},
		drawing.Axis{From: -far, To: far, Ticks: drawing.Every(-far, far, 30, inDegrees), Title: say.Words("dial-marks.chart_angle")})
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
	return sunTime(time.Duration(hour * float64(time.Hour)))
}

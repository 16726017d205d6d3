package dial

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/compass"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argGroup          form.Key[string]   = "group"
	argFind           form.Key[[]string] = "find"
	argWatchWithinMin form.Key[float64]  = "watch_within_min"
)

func dialMarks() entry.Entry {
	return entry.Entry{
		Name:    "dial-marks",
		Summary: "What the class's own marks say: how the plate was turned, the gnomon's angle, the watch.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argGroup, Default: "", Doc: "The group whose marks count; all of them together where none is named."},
			{Key: argFind, Choices: []string{"turn", "gnomon", "watch"}, Default: []string{"turn", "gnomon", "watch"}, Doc: "What is looked for; the rest is taken to be right."},
			{Key: argWatchWithinMin, Unit: "min", Min: 0, Max: 60, Default: 1.0, Doc: "How well the watch was set, as a standard deviation; 0 where nothing is known of it."},
		},
		Settings: slices.Concat(school.Where(), form.Keys{school.RecordsDialMarks, school.StockPolarHeightMM}),
		Facts: []entry.Fact{
			{Name: "marks", Doc: "how many marks count"},
			{Name: "turn", Unit: "deg", Doc: "how far plate and gnomon were turned, clockwise positive"},
			{Name: "turn_margin", Unit: "deg", Doc: "how far that may be wrong"},
			{Name: "gnomon_off", Unit: "deg", Doc: "how much too steep the gnomon was, or the plate of a polar dial"},
			{Name: "gnomon_margin", Unit: "deg", Doc: "how far that may be wrong"},
			{Name: "watch_off", Unit: "s", Doc: "how fast the watch was"},
			{Name: "watch_margin", Unit: "s", Doc: "how far that may be wrong"},
			{Name: "scatter", Unit: "deg", Doc: "how far marks lie from their places when all that is put right"},
			{Name: "finding", Doc: "the answer in words, or why there is none"},
			entry.Truth("kept", "whether any marks count"),
		},
		Sources:  []string{entry.SourceSun, entry.SourceWMM, entry.SourceIANA, "Least squares on shadows by vectors, margins that hold together in 95 of 100 classes, as compute/dial documents"},
		Harmless: "Reads marks that were made already; making them is the work of dial-hours.",
		Reckon:   reckonDialMarks,
	}
}

// A markRow is one mark of the records.
type markRow struct {
	group string
	at    time.Time // by the watch
	dial.Mark
}

func reckonDialMarks(v form.Values) (result.Result, error) {
	p, b := school.Place(v), boardOf(v)
	rows, left, err := markRows(p, b, school.RecordsDialMarks.Of(v), argGroup.Of(v))
	if err != nil {
		return result.Result{}, err
	}
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, p.Clock(entry.Date.Of(v), 12, 0))
	if err != nil {
		return result.Result{}, err
	}
	ask := dial.Unknown{
		Turn: slices.Contains(argFind.Of(v), "turn"), Gnomon: slices.Contains(argFind.Of(v), "gnomon"), Watch: slices.Contains(argFind.Of(v), "watch"),
		WatchWithin: time.Duration(argWatchWithinMin.Of(v) * float64(time.Minute)),
	}
	fit, err := b.fit(marksIn(rows), ask)
	r := result.Result{Facts: slices.Concat(
		[]result.Fact{{Name: "marks", Value: say.Count(len(rows))}}, fitFacts(fit, err),
		[]result.Fact{{Name: "finding", Value: b.finding(fit, err, ask, field.Declination)}, entry.True("kept", len(rows) > 0)},
	)}
	predicted := rows
	if len(rows) == 0 {
		predicted = predictedRows(p, entry.Date.Of(v))
		r.Notes = []say.Phrase{say.Line("dial-marks.no_records")}
		if b.isPolar() {
			r.Notes = []say.Phrase{say.Line("dial-marks.no_polar_records")}
		}
	} else {
		r.Notes = []say.Phrase{say.Line("dial-marks.margins")}
	}
	if left > 0 {
		r.Warnings = []say.Phrase{say.Line("dial-marks.no_distance", say.Count(left))}
	}
	r.Tables = []result.Table{marksTable(p, b, predicted, len(rows) > 0, fit)}
	if groups := groupsIn(rows); len(groups) > 1 {
		r.Tables = append(r.Tables, groupsTable(b, rows, groups, ask, field.Declination))
	}
	if len(predicted) > 1 {
		chart := marksChart(b, predicted, len(rows) > 0, fit, err == nil)
		if odd := oddMarks(fit); len(rows) > 0 && len(odd) > 0 {
			chart.Finding = say.Line("dial-marks.finding_odd", say.Count(len(odd)))
		} else if len(rows) > 0 && err == nil {
			chart.Finding = say.Line("dial-marks.finding_even")
		} else if len(rows) > 0 {
			chart.Finding = say.Line("dial-marks.finding_none")
		} else {
			chart.Finding = say.Line("dial-marks.finding_true")
		}
		r.Drawings = []drawing.Drawing{chart}
	}
	r.Working = []say.Phrase{say.Line("dial-marks.working_point"), say.Line("dial-marks.working_fit")}
	if b.isPolar() {
		r.Working[0] = say.Line("dial-marks.working_distance", mm(b.height.Millimetres()))
	}
	return r, nil
}

// markRows turns records into marks, those of one group or of all. On a polar dial only
// x_mm counts, and those without it are left out.
func markRows(p place.Place, b board, records form.Records, group string) (rows []markRow, left int, err error) {
	for i, row := range records.Rows {
		if group != "" && argGroup.Of(row) != group {
			continue
		}
		if b.isPolar() && !school.DialMarksXMM.In(row) {
			left++
			continue
		}
		angle, err := b.lineOf(row)
		if err != nil {
			return nil, 0, fmt.Errorf("%s, line %d: %w", records.File, records.Line[i], err)
		}
		clock := school.DialMarksTime.Of(row)
		at := p.Clock(entry.Date.Of(row), int(clock/time.Hour), int(clock/time.Minute)%60)
		hour, declination := dial.SunAt(p, at)
		rows = append(rows, markRow{argGroup.Of(row), at.In(p.Zone), dial.Mark{Line: angle, HourAngle: hour, Declination: declination}})
	}
	if group != "" && len(rows) == 0 && left == 0 && len(records.Rows) > 0 {
		return nil, 0, fmt.Errorf("no marks are of the group %q", group)
	}
	return rows, left, nil
}

// lineOf is the angle of a mark from the noon line, from angle or point; on a polar dial
// that under which the style sees it.
func (b board) lineOf(row form.Values) (quantity.Angle, error) {
	if b.isPolar() {
		return dial.PolarHourAngle(b.height, quantity.Millimetres(school.DialMarksXMM.Of(row))), nil
	}
	x, y := school.DialMarksXMM.Of(row), school.DialMarksYMM.Of(row)
	point := school.DialMarksXMM.In(row) && school.DialMarksYMM.In(row)
	switch {
	case school.DialMarksAngleDeg.In(row) && (school.DialMarksXMM.In(row) || school.DialMarksYMM.In(row)):
		return 0, errors.New("a mark has angle_deg, or x_mm and y_mm, not both")
	case school.DialMarksAngleDeg.In(row):
		return quantity.Degrees(school.DialMarksAngleDeg.Of(row)), nil
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
	for _, t := range entry.WholeHours(from, to) {
		if almanac.SunFrom(p, t).Altitude > 0 {
			hour, declination := dial.SunAt(p, t)
			rows = append(rows, markRow{at: t, Mark: dial.Mark{HourAngle: hour, Declination: declination}})
		}
	}
	return rows
}

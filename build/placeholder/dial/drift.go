package dial

import (
	"math"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argMarked      form.Key[place.Date] = "marked"
	argWeeks       form.Key[int]        = "weeks"
	argAccuracyMin form.Key[float64]    = "accuracy_min"
	argOffDeg      form.Key[float64]    = "off_deg"
)

const sourceStyles = "Shadows of right and wrong styles: vectors, as compute/dial documents"

func dialDrift() entry.Entry {
	return entry.Entry{
		Name:    "dial-drift",
		Summary: "How far hour marks made by the watch are off week after week, and what a wrong gnomon or plate does.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argMarked, Assumed: "the date", Doc: "Day on which the hours were marked by the watch."},
			{Key: argWeeks, Min: 1, Max: 52, Default: 12, Doc: "Weeks that the table follows the marks."},
			{Key: argAccuracyMin, Unit: "min", Min: 0.5, Max: 120, Default: 5.0, Doc: "How far off the marks may be before they are made again."},
			{Key: argOffDeg, Unit: "deg", Min: 0.1, Max: 30, Default: 5.0, Doc: "How far the gnomon or plate of the second table is out of place."},
		},
		Settings: append(form.Keys{school.StockPolarHeightMM}, school.Where()...),
		Facts: []entry.Fact{
			{Name: "marked", Doc: "the day on which the hours were marked"},
			{Name: "fast", Unit: "s", Doc: "what the marks show on the date, less the clock"},
			{Name: "equation_part", Unit: "s", Doc: "the part of it that the equation of time makes"},
			{Name: "clock_part", Unit: "s", Doc: "the part of it that a clock change makes"},
			{Name: "moved_noon", Unit: "deg", Doc: "how far the shadow then lies from the mark of the Sun's noon, afternoon positive; none on a polar dial"},
			{Name: "moved_noon_mm", Unit: "mm", Doc: "the same on a polar dial"},
			{Name: "worst", Unit: "s", Doc: "the most that the marks are off within the weeks of the table"},
			{Name: "worst_on", Doc: "the day of the table on which that is"},
			{Name: "mark_again", Doc: "first day on which the marks are off by more than the accuracy wanted"},
			{Name: "mark_again_same_clock", Doc: "the same if a clock change is only written over the marks"},
			entry.Truth("stick_marks", "whether a stick marks that hour on both days"),
			{Name: "stick", Unit: "s", Doc: "what marks round an upright stick show on the date three hours after the Sun's noon, less the clock"},
			{Name: "turned_at_noon", Unit: "s", Doc: "what the dial shows at the equinox noon, less the sun time, a degree that plate and gnomon are turned clockwise"},
			{Name: "leaning_at_noon", Unit: "s", Doc: "the same a degree that the plate's east side is low"},
			{Name: "steep_at_three", Unit: "s", Doc: "the same at three o'clock by the Sun, a degree that the gnomon is too steep"},
		},
		Sources:  []string{entry.SourceSun, entry.SourceIANA, sourceStyles},
		Harmless: "Compares marks with the year, at a desk; making marks is the work of dial-hours.",
		Reckon:   reckonDialDrift,
	}
}

func reckonDialDrift(v form.Values) (result.Result, error) {
	p, date, marked := school.Place(v), entry.Date.Of(v), argMarked.Of(v)
	if marked.IsZero() {
		marked = date
	}
	limit := time.Duration(argAccuracyMin.Of(v) * float64(time.Minute))
	now := dial.DriftOn(p, marked, date)
	var weeks []dial.Drift
	worst := dial.Drift{On: marked}
	for week := 0; week <= argWeeks.Of(v); week++ {
		d := dial.DriftOn(p, marked, marked.Add(7*week))
		weeks = append(weeks, d)
		if d.Fast().Abs() > worst.Fast().Abs() {
			worst = d
		}
	}
	stick := uprightStick(p, marked)
	off := stickOff(p, stick, now, quantity.Hours(3))
	built := builds(v)
	movedAngle, movedDistance := say.Number(now.Moved(p.Latitude, 0).Degrees(), "deg", 1), say.None("dial-table.lines_meet")
	if built == dial.Polar {
		movedAngle, movedDistance = say.None("dial-table.parallel_lines"), polarMoved(polarHeight(v), now, 0)
	}
	r := result.Result{
		Facts: []result.Fact{
			{Name: "marked", Value: say.Date(marked)},
			{Name: "fast", Value: fastOrSlow(now.Fast())},
			{Name: "equation_part", Value: entry.Signed(say.Seconds(now.Equation))},
			{Name: "clock_part", Value: entry.Signed(say.Minutes(now.Clock)).IfAny()},
			{Name: "moved_noon", Value: movedAngle},
			{Name: "moved_noon_mm", Value: movedDistance},
			{Name: "worst", Value: fastOrSlow(worst.Fast())},
			{Name: "worst_on", Value: say.Date(worst.On)},
			{Name: "mark_again", Value: markAgain(p, marked, limit, true)},
			{Name: "mark_again_same_clock", Value: markAgain(p, marked, limit, false)},
			entry.True("stick_marks", off.Kind != say.Nothing),
			{Name: "stick", Value: off},
		},
		Drawings: []drawing.Drawing{driftChart(p, marked)},
		Tables:   []result.Table{weeksTable(v, marked, weeks, stick), causesTable(p.Latitude, built, quantity.Degrees(argOffDeg.Of(v)))},
	}
	rules := rulesOfThumb(p.Latitude, built)
	r.Facts = append(r.Facts, rules...)
	if worst.Fast().Abs() >= 30*time.Second {
		r.Drawings[0].Finding = say.Line("dial-drift.finding", say.Count(argWeeks.Of(v)), fastOrSlow(worst.Fast()), say.Date(worst.On))
	} else {
		r.Drawings[0].Finding = say.Line("dial-drift.finding_none", say.Count(argWeeks.Of(v)))
	}
	r.Notes = []say.Phrase{
		say.Line("dial-drift.note"),
		say.Line("dial-drift.rule", rules[0].Value, rules[1].Value, rules[2].Value),
		say.Line("dial-drift.rule_signs"),
	}
	if built == dial.Polar {
		r.Notes[1] = say.Line("dial-drift.rule_polar", rules[0].Value, rules[1].Value)
		r.Notes[2] = say.Line("dial-drift.rule_polar_signs")
	}
	r.Working = []say.Phrase{
		say.Line("dial-drift.working", say.Date(marked), say.Date(date),
			entry.Signed(say.Seconds(now.Equation)), entry.Signed(say.Minutes(now.Clock)), entry.Signed(say.Seconds(now.Fast()))),
		say.Line("dial-drift.working_turn"),
	}
	return r, nil
}

// fastOrSlow says which way a dial is off, to the minute.
func fastOrSlow(d time.Duration) say.Value {
	if d.Abs() < 30*time.Second {
		return say.Minutes(d)
	}
	key := "dial-table.fast"
	if d < 0 {
		key = "dial-table.slow"
	}
	return say.Minutes(d).As(key, say.Minutes(d.Abs()))
}

func markAgain(p place.Place, marked place.Date, limit time.Duration, clock bool) say.Value {
	end, ok := dial.MarksHold(p, marked, limit, clock)
	if !ok {
		return say.None("dial-drift.never", say.Number(limit.Minutes(), "min", 0))
	}
	return say.Date(end.On)
}

// uprightStick is a stick whose hours are marked on the day.
func uprightStick(p place.Place, marked place.Date) dial.Marked {
	return dial.Marked{
		Style:       dial.Style{Elevation: quantity.Turn / 4},
		Declination: almanac.SunAt(p.Clock(marked, 12, 0)).Declination,
	}
}

// stickOff adds what the season does to a stick's marks to what time does to all
// marks.
func stickOff(p place.Place, stick dial.Marked, d dial.Drift, hour quantity.Angle) say.Value {
	declination := almanac.SunAt(p.Clock(d.On, 12, 0)).Declination
	off, ok := stick.Off(p.Latitude, declination, hour)
	if !ok {
		return say.None("dial-drift.no_mark")
	}
	return fastOrSlow(off + d.Fast())
}

// polarMoved is how far a shadow on a polar plate lies from a mark.
func polarMoved(height quantity.Length, d dial.Drift, mark quantity.Angle) say.Value {
	far, ok := d.PolarMoved(height, mark)
	if !ok {
		return say.None("dial-table.off_plate")
	}
	return say.Millimetres(far, 1)
}

func weeksTable(v form.Values, marked place.Date, weeks []dial.Drift, stick dial.Marked) result.Table {
	table := result.Table{
		Name:  "weeks",
		Title: say.Line("dial-drift.title", say.Date(marked)),
		Columns: []result.Column{
			{Name: "date"}, {Name: "equation_part", Unit: "s"}, {Name: "clock_part", Unit: "s"}, {Name: "fast", Unit: "s"},
			{Name: "moved_noon", Unit: "deg"}, {Name: "moved_three", Unit: "deg"},
			{Name: "stick_nine", Unit: "s"}, {Name: "stick_three", Unit: "s"},
		},
	}
	p, polar := school.Place(v), builds(v) == dial.Polar
	if polar {
		table.Columns[4], table.Columns[5] = result.Column{Name: "moved_noon_mm", Unit: "mm"}, result.Column{Name: "moved_three_mm", Unit: "mm"}
	}
	moved := func(d dial.Drift, mark quantity.Angle) say.Value {
		if polar {
			return polarMoved(polarHeight(v), d, mark)
		}
		return say.Number(d.Moved(p.Latitude, mark).Degrees(), "deg", 1)
	}
	for i, d := range weeks {
		table.Rows = append(table.Rows, result.Row{Marked: i > 0 && d.Clock != weeks[i-1].Clock, Cells: []say.Value{
			entry.DayOfYear(d.On),
			entry.Signed(say.Seconds(d.Equation)),
			entry.Signed(say.Minutes(d.Clock)),
			fastOrSlow(d.Fast()),
			moved(d, 0),
			moved(d, quantity.Hours(3)),
			stickOff(p, stick, d, quantity.Hours(-3)),
			stickOff(p, stick, d, quantity.Hours(3)),
		}})
	}
	return table
}

// Wrong dials, each by the same angle.
var wrongDials = []struct {
	key  string
	make func(dial.Dial, quantity.Angle) dial.Dial
}{
	{"dial-drift.steep", func(d dial.Dial, a quantity.Angle) dial.Dial { d.Style.Elevation += a; return d }},
	{"dial-drift.turned", func(d dial.Dial, a quantity.Angle) dial.Dial { return d.Turned(a) }},
	{"dial-drift.east_low", func(d dial.Dial, a quantity.Angle) dial.Dial {
		d.Tilt = dial.Tilt{Toward: quantity.Turn / 4, By: a}
		return d
	}},
	{"dial-drift.noon_low", func(d dial.Dial, a quantity.Angle) dial.Dial {
		d.Tilt = dial.Tilt{Toward: d.NoonLine, By: a}
		return d
	}},
}

// A wrongDial is one that is out of place by a small angle.
type wrongDial struct {
	key string
	dial.Laid
}

// wrongDialsOf are those of the dial that a school builds. On a polar dial the slope of
// the style is that of the plate, and so is a noon side that is low.
func wrongDialsOf(built dial.Face, latitude, by quantity.Angle) []wrongDial {
	var list []wrongDial
	if built != dial.Polar {
		for _, wrong := range wrongDials {
			list = append(list, wrongDial{wrong.key, wrong.make(dial.True(latitude), by)})
		}
		return list
	}
	turned, leaning := dial.PolarAt(latitude), dial.PolarAt(latitude)
	turned.Turn = by
	leaning.Lean = dial.Tilt{Toward: quantity.Turn / 4, By: by}
	return []wrongDial{
		{"dial-drift.plate_steep", dial.PolarAt(latitude).Steeper(by)},
		{"dial-drift.turned", turned},
		{"dial-drift.east_low", leaning},
	}
}

// Seasons of the second table, by the Sun's declination.
var seasonsOfDials = []struct {
	key         string
	declination quantity.Angle
}{
	{"dial-drift.june", dial.MaxDeclination},
	{"dial-drift.equinox", 0},
	{"dial-drift.december", -dial.MaxDeclination},
}

func causesTable(latitude quantity.Angle, built dial.Face, off quantity.Angle) result.Table {
	table := result.Table{
		Name:    "causes",
		Title:   say.Line("dial-drift.causes_title", say.Number(off.Degrees(), "deg", 1)),
		Columns: []result.Column{{Name: "cause"}, {Name: "season"}},
	}
	hours := []float64{-4, -2, 0, 2, 4}
	for _, name := range []string{"at_8", "at_10", "at_noon", "at_14", "at_16"} {
		table.Columns = append(table.Columns, result.Column{Name: name, Unit: "s"})
	}
	for _, wrong := range wrongDialsOf(built, latitude, off) {
		for _, season := range seasonsOfDials {
			row := result.Row{Cells: []say.Value{say.Words(wrong.key), say.Words(season.key)}}
			for _, hour := range hours {
				cell := say.None("dial-table.no_shadow")
				if fast, ok := wrong.Off(latitude, season.declination, quantity.Hours(hour)); ok {
					cell = entry.Signed(say.Minutes(fast.Round(time.Second))) // so that rounding gives nothing a sign
				}
				row.Cells = append(row.Cells, cell)
			}
			table.Rows = append(table.Rows, row)
		}
	}
	return table
}

// rulesOfThumb are errors a degree, from an error of a tenth of one.
func rulesOfThumb(latitude quantity.Angle, built dial.Face) []result.Fact {
	const part = 10
	dials := wrongDialsOf(built, latitude, quantity.Degrees(1.0/part))
	rule := func(name string, wrong int, hour quantity.Angle) result.Fact {
		fast, ok := dials[wrong].Off(latitude, 0, hour)
		if !ok {
			return result.Fact{Name: name, Value: say.None("dial-table.no_shadow")}
		}
		minutes := part * fast.Minutes()
		key, size := "dial-drift.minutes", say.Number(math.Abs(minutes), "min", 1)
		switch { // what rounds to nothing is off to no side
		case minutes >= 0.05:
			key = "dial-table.fast"
		case minutes <= -0.05:
			key = "dial-table.slow"
		}
		return result.Fact{Name: name, Value: say.Number(60*minutes, "s", 0).As(key, size)}
	}
	return []result.Fact{
		rule("turned_at_noon", 1, 0), rule("leaning_at_noon", 2, 0), rule("steep_at_three", 0, quantity.Hours(3)),
	}
}

// driftChart follows the marks through the year after the marking day.
func driftChart(p place.Place, marked place.Date) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title:       say.Line("dial-drift.chart", say.Date(marked)),
		Description: say.Line("dial-drift.chart_description"),
	}
	var year []dial.Drift
	least, most := 0.0, 0.0
	for days := 0; days <= 364; days += 4 {
		drift := dial.DriftOn(p, marked, marked.Add(days))
		year = append(year, drift)
		least, most = min(least, drift.Fast().Minutes()), max(most, drift.Fast().Minutes())
	}
	step := drawing.Step(most-least, 6)
	from, to := math.Floor(least/step)*step, math.Ceil(most/step)*step
	c := d.Chart(entry.YearFrame(), drawing.Axis{To: 52, Ticks: drawing.Every(0, 52, 4, inWeeks), Title: say.Words("dial-drift.chart_weeks")},
		drawing.Axis{From: from, To: to, Ticks: drawing.Every(from, to, step, inMinutes), Title: say.Words("dial-drift.chart_axis")})
	var run []drawing.Point
	for i, drift := range year {
		if i > 0 && drift.Clock != year[i-1].Clock {
			c.Curve("curve", run...)
			run = nil
		}
		run = append(run, drawing.Point{X: float64(i*4) / 7, Y: drift.Fast().Minutes()})
	}
	c.Curve("curve", run...)
	return d
}

func inWeeks(x float64) say.Value { return say.Number(x, "", 0) }

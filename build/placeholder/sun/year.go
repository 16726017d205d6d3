package sun

import (
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
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const argRows form.Key[string] = "rows"

func sunYear() entry.Entry {
	return entry.Entry{
		Name:    "sun-year",
		Summary: "How long the days are and how high the Sun climbs through a year.",
		Arguments: form.Form{entry.OnDate(), inYear,
			{Key: argRows, Choices: []string{"thrice", "monthly"}, Default: "thrice", Doc: "Rows of the table on the 1st, 11th and 21st of each month, or on the 1st alone."},
		},
		Settings: school.Where(),
		Facts: []entry.Fact{
			{Name: "longest", Unit: "s", Doc: "length of the longest day of the year"},
			{Name: "longest_on", Doc: "its date, the first where several are as long"},
			{Name: "shortest", Unit: "s", Doc: "length of the shortest day of the year"},
			{Name: "shortest_on", Doc: "its date, the first where several are as short"},
			{Name: "highest_noon", Unit: "deg", Doc: "the Sun's greatest height at noon in the year, as seen"},
			{Name: "highest_on", Doc: "the date of it"},
			{Name: "lowest_noon", Unit: "deg", Doc: "the Sun's smallest height at noon; negative where it stays below the horizon"},
			{Name: "lowest_on", Doc: "the date of it"},
			{Name: "change", Unit: "s", Doc: "how much longer the date is than the day before; negative when days shorten"},
			{Name: "days_up", Doc: "days of the year on which the Sun does not set"},
			{Name: "days_down", Doc: "days of the year on which it does not rise"},
		},
		Sources:  []string{entry.SourceSun, entry.SourceRise, entry.SourceRefraction, entry.SourceIANA},
		Harmless: "Times and dates, to read; watching the Sun by its shadow is the work of sun-path.",
		Reckon:   reckonSunYear,
	}
}

// A sunDate is what one day of the year has.
type sunDate struct {
	date  place.Date
	day   almanac.Day
	up    time.Duration
	noon  almanac.Horizontal // at the Sun's noon
	noons bool               // whether the day has a noon
}

func sunOn(p place.Place, d place.Date) sunDate {
	s := sunDate{date: d, day: entry.SunDay(p, d)}
	s.up = sunUp(s.day)
	if s.noons = len(s.day.Transits) > 0; s.noons {
		s.noon = almanac.SunFrom(p, s.day.Transits[0])
	}
	return s
}

// A handbook has tables of one year in several places, monthly and thrice a month. Two
// years a school are many, and few schools are pressed at once.
var sunYears = entry.Memory[sunYearKey, []sunDate]{Most: 8}

type sunYearKey struct {
	place place.Place
	year  int
}

// sunDates returns the days of a year, which are shared.
func sunDates(p place.Place, year int) []sunDate {
	days, _ := sunYears.Of(sunYearKey{p, year}, func() ([]sunDate, error) {
		days := make([]sunDate, 0, 366)
		for d := (place.Date{Year: year, Month: time.January, Day: 1}); d.Year == year; d = d.Add(1) {
			if s := sunOn(p, d); s.day.State != almanac.NoDay {
				days = append(days, s)
			}
		}
		return days, nil
	})
	return slices.Clip(days)
}

func reckonSunYear(v form.Values) (result.Result, error) {
	p := school.Place(v)
	year, err := yearOf(v)
	if err != nil {
		return result.Result{}, err
	}
	days := sunDates(p, year)
	date := entry.Date.Of(v)
	r := result.Result{
		Facts:    append(sunYearFacts(days), result.Fact{Name: "change", Value: lengthening(p, date)}),
		Drawings: []drawing.Drawing{dayLengthChart(year, days, date), noonChart(year, days, date)},
		Tables:   []result.Table{sunYearTable(v, year, days)},
		Working:  sunYearWorking(p, date),
	}
	r.Drawings[0].Finding, r.Drawings[1].Finding = yearFindings(r)
	if date.Year == year {
		r.Notes = []say.Phrase{say.Line("sun-year.marked", say.Date(date))}
	}
	lowest, _ := r.Fact("lowest_noon")
	r.Notes = append(r.Notes, belowAtNoon(lowest)...)
	return r, nil
}

// yearFindings are what the two charts show: the ends of their curves, or the days without
// sunrise and sunset.
func yearFindings(r result.Result) (length, noon say.Phrase) {
	of := func(name string) say.Value {
		v, _ := r.Fact(name)
		return v
	}
	up, down := of("days_up"), of("days_down")
	switch {
	case up.Number > 0 || down.Number > 0:
		length = say.Line("sun-year.finding_polar", up, down)
	case math.Abs(of("longest").Number-of("shortest").Number) < time.Minute.Seconds():
		length = say.Line("sun-year.finding_even", of("longest"))
	default:
		length = say.Line("sun-year.finding_length", of("longest"), of("longest_on"), of("shortest"), of("shortest_on"))
	}
	noon = say.Line("sun-year.finding_noon", of("highest_noon"), of("highest_on"), of("lowest_noon"), of("lowest_on"))
	if of("lowest_noon").Number <= 0 {
		noon = say.Line("sun-year.finding_noon_polar", of("highest_noon"), of("highest_on"))
	}
	return length, noon
}

// lengthening compares a day with the one before it.
func lengthening(p place.Place, d place.Date) say.Value {
	today, before := sunOn(p, d), sunOn(p, d.Add(-1))
	return entry.Signed(say.Seconds(today.up - before.up))
}

func sunYearFacts(days []sunDate) []result.Fact {
	longest, shortest := days[0], days[0]
	var highest, lowest sunDate
	up, down := 0, 0
	for _, s := range days {
		switch s.day.State {
		case almanac.UpAllDay:
			up++
		case almanac.DownAllDay:
			down++
		}
		if s.up > longest.up {
			longest = s
		}
		if s.up < shortest.up {
			shortest = s
		}
		if s.noons && (!highest.noons || s.noon.Altitude > highest.noon.Altitude) {
			highest = s
		}
		if s.noons && (!lowest.noons || s.noon.Altitude < lowest.noon.Altitude) {
			lowest = s
		}
	}
	return []result.Fact{
		{Name: "longest", Value: say.Minutes(longest.up)},
		{Name: "longest_on", Value: say.Date(longest.date)},
		{Name: "shortest", Value: say.Minutes(shortest.up)},
		{Name: "shortest_on", Value: say.Date(shortest.date)},
		{Name: "highest_noon", Value: entry.AltitudeOf(highest.noon)},
		{Name: "highest_on", Value: say.Date(highest.date)},
		{Name: "lowest_noon", Value: entry.AltitudeOf(lowest.noon)},
		{Name: "lowest_on", Value: say.Date(lowest.date)},
		{Name: "days_up", Value: say.Count(up).IfAny()},
		{Name: "days_down", Value: say.Count(down).IfAny()},
	}
}

func sunYearTable(v form.Values, year int, days []sunDate) result.Table {
	table := result.Table{
		Name:  "year",
		Title: say.Line("sun-year.title", entry.YearValue(year)),
		Columns: []result.Column{
			{Name: "date"}, {Name: "rise"}, {Name: "set"}, {Name: "day_length", Unit: "s"},
			{Name: "noon_altitude", Unit: "deg"}, {Name: "noon_direction"},
		},
	}
	for _, s := range days {
		if s.date.Day != 1 && (argRows.Of(v) == "monthly" || s.date.Day != 11 && s.date.Day != 21) {
			continue
		}
		altitude, direction := say.None("sun-day.no_noon"), say.None("sun-day.no_noon")
		if s.noons {
			altitude, direction = entry.AltitudeOf(s.noon), entry.Toward(s.noon.Azimuth)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			entry.DayOfYear(s.date),
			entry.TimesOr(s.day.Rises, s.day.State, "sun-day.no_rise"),
			entry.TimesOr(s.day.Sets, s.day.State, "sun-day.no_set"),
			say.Minutes(s.up), altitude, direction,
		}})
	}
	return table
}

// sunYearWorking is the noon altitude and the length of the date's day from the
// Sun's declination; the second has no meaning where the Sun does not set.
func sunYearWorking(p place.Place, d place.Date) []say.Phrase {
	phi, delta := p.Latitude, almanac.SunAt(p.Clock(d, 12, 0)).Declination
	apart := phi - delta
	if apart < 0 {
		apart = -apart
	}
	noon := say.Degrees(quantity.Turn/4-apart, 1)
	a := entry.Enough(noon, func(x []float64) float64 { return 90 - x[0] }, say.Degrees(apart, 1))
	o := entry.Enough(a[0], func(x []float64) float64 { return math.Abs(x[0] - x[1]) }, say.Degrees(phi, 1), say.Degrees(delta, 1))
	larger, smaller := o[0], o[1]
	if delta > phi {
		larger, smaller = o[1], o[0]
	}
	steps := []say.Phrase{say.Line("sun-year.working_noon", say.Date(d), o[0], o[1], noon, a[0], larger, smaller)}
	if x := -phi.Tan() * delta.Tan(); x > -1 && x < 1 {
		half := quantity.Acos(x)
		lasts := say.Minutes(time.Duration(2 * half.Hours() * float64(time.Hour)))
		h := entry.Enough(lasts, func(x []float64) float64 { return 2 * x[0] * 240 }, say.Degrees(half, 2))
		c := entry.Enough(h[0], func(x []float64) float64 { return quantity.Acos(x[0]).Degrees() }, say.Number(x, "", 4))
		o := entry.Enough(c[0], func(x []float64) float64 { return -quantity.Degrees(x[0]).Tan() * quantity.Degrees(x[1]).Tan() }, o[0], o[1])
		steps = append(steps, say.Line("sun-year.working_length", o[0], o[1], c[0], h[0], lasts))
	}
	return steps
}

func dayLengthChart(year int, days []sunDate, date place.Date) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title:       say.Line("sun-year.length_chart", entry.YearValue(year)),
		Description: say.Line("sun-year.length_description"),
	}
	c := entry.YearChart(&d, year, drawing.Axis{To: 24, Ticks: drawing.Every(0, 24, 6, inHours), Title: say.Words("sun-year.length_axis")})
	yearCurve(c, days, date, func(s sunDate) float64 { return min(24, s.up.Hours()) })
	return d
}

func noonChart(year int, days []sunDate, date place.Date) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title:       say.Line("sun-year.noon_chart", entry.YearValue(year)),
		Description: say.Line("sun-year.noon_description"),
	}
	c := entry.YearChart(&d, year, drawing.Axis{To: 90, Ticks: drawing.Every(0, 90, 15, entry.InDegrees), Title: say.Words("sun-year.noon_axis")})
	yearCurve(c, days, date, func(s sunDate) float64 {
		if !s.noons {
			return -90 // below the frame
		}
		return entry.AsSeen(s.noon.Altitude).Degrees()
	})
	return d
}

// yearCurve draws a value through the year and marks the date on it.
func yearCurve(c drawing.Chart, days []sunDate, date place.Date, value func(sunDate) float64) {
	var curve, marked []drawing.Point
	for _, s := range days {
		now := drawing.Point{X: entry.DayNumber(s.date), Y: value(s)}
		curve = append(curve, now)
		if s.date == date {
			marked = append(marked, now)
		}
	}
	c.Curve("curve", curve...)
	for _, now := range marked {
		c.Mark("sun", now, 1.3)
	}
}

func inHours(x float64) say.Value { return say.Number(x, "h", 0) }

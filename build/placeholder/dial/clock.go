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
	"noonbook/compute/dial"
	"noonbook/compute/place"
)

// What the entry takes.
const argEveryDays form.Key[int] = "every_days"

func dialClock() entry.Entry {
	return entry.Entry{
		Name:      "dial-clock",
		Summary:   "From dial time to clock time through a year, with a pocket strip to glue on the dial.",
		Printable: true,
		Arguments: form.Form{entry.OnDate(),
			{Key: argEveryDays, Min: 1, Max: 31, Assumed: "the 1st, 11th and 21st of each month", Doc: "Days from one row to the next, from 1 January on."},
		},
		Settings: append(form.Keys{school.Paper}, school.Where()...),
		Facts: []entry.Fact{
			{Name: "equation_of_time", Unit: "s", Doc: "apparent minus mean solar time on the date"},
			{Name: "dial_to_clock", Unit: "s", Doc: "what to add to the time on the dial to get the clock's, on the date"},
			{Name: "longitude_part", Unit: "s", Doc: "the part of it that comes from the longitude; the same all year"},
			{Name: "saving_part", Unit: "s", Doc: "the part of it that comes from daylight saving on the date"},
			{Name: "smallest", Unit: "s", Doc: "the smallest correction of the year"},
			{Name: "largest", Unit: "s", Doc: "the largest correction of the year"},
		},
		Sources:  []string{entry.SourceSun, entry.SourceIANA},
		Cautions: []string{entry.CareScissors},
		OnPaper:  []string{entry.CareSun},
		For:      entry.EachGroup,
		OnSheet:  stripsOn,
		Reckon:   reckonDialClock,
	}
}

// stripsOn is how many pocket strips a sheet holds.
func stripsOn(v form.Values) int {
	_, n := drawing.PaperOf(school.Paper.Of(v)).Repeated(drawing.Drawing{Width: stripWidth, Height: stripHeight}, stripGap)
	return n
}

// A correctionDate is what one day of the year adds to the dial.
type correctionDate struct {
	date place.Date
	dial.Correction
}

// correctionOn returns the correction of a day with its parts to the whole second, as
// they are printed, so that their sum is what every row and the working come to, even at
// half a minute, where a sum of finer parts could round to another minute. In half a day
// the equation of time changes by up to 15 s.
func correctionOn(p place.Place, d place.Date) dial.Correction {
	c := dial.CorrectionOn(p, d)
	for _, part := range []*time.Duration{&c.Equation, &c.Longitude, &c.Saving} {
		*part = part.Round(time.Second)
	}
	return c
}

func reckonDialClock(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	var year []correctionDate
	for d := (place.Date{Year: date.Year, Month: time.January, Day: 1}); d.Year == date.Year; d = d.Add(1) {
		year = append(year, correctionDate{d, correctionOn(p, d)})
	}
	least, most := year[0].Total(), year[0].Total()
	for _, c := range year {
		least, most = min(least, c.Total()), max(most, c.Total())
	}
	c := correctionOn(p, date)
	paper := drawing.PaperOf(school.Paper.Of(v))
	strips, _ := paper.Repeated(pocketStrip(year), stripGap)
	chart := correctionChart(year, least, most)
	chart.Finding = say.Line("dial-clock.finding", entry.Signed(say.Minutes(least)), entry.Signed(say.Minutes(most)))
	return result.Result{
		Facts: []result.Fact{
			{Name: "equation_of_time", Value: say.Seconds(c.Equation)},
			{Name: "dial_to_clock", Value: entry.Signed(say.Minutes(c.Total()))},
			{Name: "longitude_part", Value: entry.Signed(say.Seconds(c.Longitude))},
			{Name: "saving_part", Value: entry.Signed(say.Minutes(c.Saving))},
			{Name: "smallest", Value: entry.Signed(say.Minutes(least))},
			{Name: "largest", Value: entry.Signed(say.Minutes(most))},
		},
		Drawings: []drawing.Drawing{chart},
		Tables:   []result.Table{correctionTable(v, year)},
		Sheets:   paper.Sheets(strips),
		Notes:    []say.Phrase{say.Line("dial-clock.note")},
		Working: []say.Phrase{
			say.Line("dial-clock.working", say.Date(date), entry.Signed(say.Seconds(c.Longitude)), entry.Signed(say.Minutes(c.Saving)),
				say.Seconds(c.Equation), entry.Signed(say.Seconds(c.Total()))),
		},
	}, nil
}

func correctionTable(v form.Values, year []correctionDate) result.Table {
	table := result.Table{
		Name:  "year",
		Title: say.Line("dial-clock.title", entry.YearValue(year[0].date.Year)),
		Columns: []result.Column{
			{Name: "date"}, {Name: "equation_of_time", Unit: "s"}, {Name: "longitude_part", Unit: "s"},
			{Name: "saving_part", Unit: "s"}, {Name: "dial_to_clock", Unit: "s"},
		},
	}
	for _, c := range year {
		if rowOn(v, c.date) {
			table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
				entry.DayOfYear(c.date),
				say.Seconds(c.Equation),
				entry.Signed(say.Seconds(c.Longitude)),
				entry.Signed(say.Minutes(c.Saving)),
				entry.Signed(say.Minutes(c.Total())),
			}})
		}
	}
	return table
}

func rowOn(v form.Values, d place.Date) bool {
	if every := argEveryDays.Of(v); every > 0 {
		first := place.Date{Year: d.Year, Month: time.January, Day: 1}
		return first.DaysUntil(d)%every == 0
	}
	return d.Day == 1 || d.Day == 11 || d.Day == 21
}

// correctionChart draws what to add through the year, with a gap where the
// clocks change.
func correctionChart(year []correctionDate, least, most time.Duration) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title:       say.Line("dial-clock.chart", entry.YearValue(year[0].date.Year)),
		Description: say.Line("dial-clock.chart_description", entry.Signed(say.Minutes(least)), entry.Signed(say.Minutes(most))),
	}
	step := drawing.Step((most - least).Minutes(), 6)
	from, to := math.Floor(least.Minutes()/step)*step, math.Ceil(most.Minutes()/step)*step
	c := entry.YearChart(&d, year[0].date.Year, drawing.Axis{From: from, To: to, Ticks: drawing.Every(from, to, step, inMinutes), Title: say.Words("dial-clock.chart_axis")})
	var run []drawing.Point
	for i, day := range year {
		if i > 0 && day.Fixed() != year[i-1].Fixed() {
			c.Curve("curve", run...)
			run = nil
		}
		run = append(run, drawing.Point{X: entry.DayNumber(day.date), Y: day.Total().Minutes()})
	}
	c.Curve("curve", run...)
	return d
}

func inMinutes(x float64) say.Value { return say.Number(x, "min", 0) }

// Measures of the pocket strip in millimetres.
const (
	stripWidth  = 180.0
	stripHeight = 42.0
	stripGap    = 3.0  // from one strip to the next
	stripHead   = 12.0 // room above the months
	stripRow    = 6.0
	stripLeft   = 18.0 // room for the days
)

// pocketStrip is a small table to glue on the dial: what to add in minutes, by
// month and day, without daylight saving, so that it holds in any year.
func pocketStrip(year []correctionDate) drawing.Drawing {
	d := drawing.Drawing{
		Name: "pocket", Width: stripWidth, Height: stripHeight,
		Title:       say.Line("dial-clock.strip"),
		Description: say.Line("dial-clock.strip_description"),
	}
	d.Area("cut", frame{0, 0, stripWidth, stripHeight}.corners()...)
	d.Label("strong", drawing.Point{X: 4, Y: 6.5}, drawing.Start, say.Words("dial-clock.strip_head"))
	wide := (stripWidth - stripLeft - 3) / 12
	at := func(month time.Month) float64 { return stripLeft + (float64(month)-0.5)*wide }
	line := func(row int) float64 { return stripHead + 4 + float64(row)*stripRow }
	for month := time.January; month <= time.December; month++ {
		d.Label("strong", drawing.Point{X: at(month), Y: line(0)}, drawing.Middle, entry.ShortMonth(month))
	}
	rows := map[int]int{1: 1, 11: 2, 21: 3}
	saving := time.Duration(0)
	for _, c := range year {
		saving = max(saving, c.Saving)
		row, shown := rows[c.date.Day]
		if !shown {
			continue
		}
		if c.date.Month == time.January {
			d.Label("small", drawing.Point{X: 4, Y: line(row)}, drawing.Start, say.Words("dial-clock.strip_day", say.Count(c.date.Day)))
		}
		minutes := math.Round((c.Longitude - c.Equation).Minutes())
		value := say.Number(minutes, "", 0)
		if minutes > 0 {
			value = value.As("dial-clock.plus", value)
		}
		d.Label("cell", drawing.Point{X: at(c.date.Month), Y: line(row)}, drawing.Middle, value)
	}
	foot := say.Words("dial-clock.strip_no_saving")
	if saving > 0 {
		foot = say.Words("dial-clock.strip_saving", say.Minutes(saving))
	}
	d.Label("small", drawing.Point{X: 4, Y: stripHeight - 3}, drawing.Start, foot)
	return d
}

package placeholder

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

func dialClock() Entry {
	return Entry{
		Name:    "dial-clock",
		Summary: "From dial time to clock time through a year.",
		Arguments: form.Form{onDate,
			{Name: "every_days", Kind: form.Whole, Min: 1, Max: 31, Assumed: "the 1st, 11th and 21st of each month", Doc: "Days from one row to the next, from 1 January on."},
		},
		Settings: where,
		Facts: []Fact{
			{"equation_of_time", "s", "apparent minus mean solar time on the date"},
			{"dial_to_clock", "s", "what to add to the time on the dial to get the clock's, on the date"},
			{"longitude_part", "s", "the part of it that comes from the longitude; the same all year"},
			{"saving_part", "s", "the part of it that comes from daylight saving on the date"},
			{"smallest", "s", "the smallest correction of the year"},
			{"largest", "s", "the largest correction of the year"},
		},
		Sources: []string{sourceSun, sourceIANA},
		Reckon:  reckonDialClock,
	}
}

// A correction is what turns dial time into clock time, at the clock's midday.
type correction struct {
	equation, longitude, saving time.Duration
}

func (c correction) total() time.Duration { return c.longitude + c.saving - c.equation }

func correctionOn(p place.Place, d place.Date) correction {
	midday := p.Clock(d, 12, 0)
	saving := time.Duration(0)
	if p.DaylightSaving(midday) {
		saving = time.Hour
	}
	return correction{
		equation:  almanac.EquationOfTime(midday),
		longitude: p.UTCOffset(midday) - saving - meridianTime(p),
		saving:    saving,
	}
}

func reckonDialClock(v form.Values) (result.Result, error) {
	p, date := Place(v), v.Date("date")
	table := result.Table{
		Name:  "year",
		Title: say.Line("dial-clock.title", say.Text(date.String()[:4])),
		Columns: []result.Column{
			{Name: "date"}, {Name: "equation_of_time", Unit: "s"}, {Name: "dial_to_clock", Unit: "s"},
		},
	}
	var least, most time.Duration
	for d := (place.Date{Year: date.Year, Month: time.January, Day: 1}); d.Year == date.Year; d = d.Add(1) {
		total := correctionOn(p, d).total()
		if d.Month == time.January && d.Day == 1 {
			least, most = total, total
		}
		least, most = min(least, total), max(most, total)
		if !rowOn(v, d) {
			continue
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Date(d).As("dial-clock.day", say.Count(d.Day), say.Words(monthKey(d.Month))),
			say.Seconds(correctionOn(p, d).equation),
			signed(say.Minutes(total)),
		}})
	}
	c := correctionOn(p, date)
	return result.Result{
		Facts: []result.Fact{
			{Name: "equation_of_time", Value: say.Seconds(c.equation)},
			{Name: "dial_to_clock", Value: signed(say.Minutes(c.total()))},
			{Name: "longitude_part", Value: signed(say.Seconds(c.longitude))},
			{Name: "saving_part", Value: signed(say.Minutes(c.saving))},
			{Name: "smallest", Value: signed(say.Minutes(least))},
			{Name: "largest", Value: signed(say.Minutes(most))},
		},
		Tables: []result.Table{table},
		Notes:  []say.Phrase{say.Line("dial-clock.note")},
		Working: []say.Phrase{
			say.Line("dial-clock.working", say.Date(date), signed(say.Seconds(c.longitude)), signed(say.Minutes(c.saving)),
				say.Seconds(c.equation), signed(say.Seconds(c.total()))),
		},
	}, nil
}

func rowOn(v form.Values, d place.Date) bool {
	if every := v.Whole("every_days"); every > 0 {
		first := place.Date{Year: d.Year, Month: time.January, Day: 1}
		return first.DaysUntil(d)%every == 0
	}
	return d.Day == 1 || d.Day == 11 || d.Day == 21
}

// signed prints a stretch of time to be added or taken away.
func signed(v say.Value) say.Value {
	if v.Number < 0 {
		return v
	}
	return v.As("dial-clock.plus", v)
}

func monthKey(m time.Month) string {
	return "month." + [...]string{"", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"}[m]
}

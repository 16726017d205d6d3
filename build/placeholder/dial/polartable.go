package dial

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// reckonPolarTable is dial-table where the school builds a polar dial: distances take
// the place of angles.
func reckonPolarTable(v form.Values) (result.Result, error) {
	p, date, height := school.Place(v), entry.Date.Of(v), polarHeight(v)
	lines, err := dial.HourLines(p.Latitude, dial.PolarFirst, dial.PolarLast, time.Duration(argStepMinutes.Of(v))*time.Minute)
	if err != nil {
		return result.Result{}, err
	}
	high, long := mm(height.Millimetres()), mm(school.StockStyleMM.Of(v))
	table := result.Table{
		Name:  "distances",
		Title: say.Line("dial-table.polar_title", high, entry.Sided(p.Latitude.Degrees(), 1, "compass.north_of", "compass.south_of")),
		Columns: []result.Column{
			{Name: "sun_time", Unit: "h"}, {Name: "hour_angle", Unit: "deg"}, {Name: "distance", Unit: "mm"}, {Name: "clock_time"},
		},
	}
	for _, line := range lines {
		clock := say.None("sun-day.no_noon")
		if t, ok := clockAt(p, date, line.HourAngle); ok {
			clock = say.Clock(t)
		}
		table.Rows = append(table.Rows, result.Row{Marked: line.HourAngle == 0, Cells: []say.Value{
			sunTime(line.SunTime), say.Number(line.HourAngle.Degrees(), "deg", 0), polarDistance(height, line.HourAngle), clock,
		}})
	}
	needle, warnings, err := needleFacts(p, date, dial.Polar)
	if err != nil {
		return result.Result{}, err
	}
	hour := func(h float64) quantity.Length {
		far, _ := dial.PolarDistance(height, quantity.Hours(h))
		return far
	}
	upper, none := poleUp(p.Latitude), say.None("dial-table.parallel_lines")
	r := result.Result{
		Facts: append([]result.Fact{
			{Name: "gnomon_angle", Value: say.None("dial-face.parallel")},
			{Name: "gnomon_base", Value: long},
			{Name: "gnomon_height", Value: high},
			{Name: "gnomon_style", Value: long},
			{Name: "noon_line", Value: upper},
			{Name: "turns", Value: say.Words("dial-table.west_to_east")},
			{Name: "first_hour", Value: none},
			{Name: "uneven", Value: none},
			{Name: "first_distance", Value: say.Millimetres(hour(1), 1)},
			{Name: "last_distance", Value: say.Millimetres(hour(5)-hour(4), 1)},
		}, needle...),
		Tables:   []result.Table{shown(v, table)},
		Notes:    []say.Phrase{say.Line("dial-table.polar_sides", upper)},
		Warnings: warnings,
	}
	four := say.Millimetres(hour(4), 1)
	tangent := entry.Enough(four, func(x []float64) float64 { return x[0] * x[1] }, high, say.Number(math.Tan(math.Pi/3), "", 3))
	r.Working = []say.Phrase{
		say.Line("dial-table.working_polar", tangent[0], tangent[1], four),
	}
	return withClockRule(v, r), nil
}

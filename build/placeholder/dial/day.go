package dial

import (
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/compass"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func dialDay() entry.Entry {
	return entry.Entry{
		Name:    "dial-day",
		Summary: "What the shadow does on a day, at each whole hour of the school's clock.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argHeightMM, Unit: "mm", Min: 1, Max: 20000, Assumed: "the height of the gnomon's tip, or 100 mm within 15° of the equator", Doc: "Height of the point whose shadow is followed."},
		},
		Settings: slices.Concat(school.Where(), form.Keys{school.StockStyleMM}),
		Facts: []entry.Fact{
			{Name: "tip_height", Unit: "mm", Doc: "height of the point whose shadow is followed"},
			{Name: "noon_shadow", Unit: "mm", Doc: "length of its shadow at the Sun's noon"},
			{Name: "noon_shadow_bearing", Unit: "deg", Doc: "true bearing of that shadow"},
			{Name: "noon_shadow_points", Doc: "which way that shadow points"},
		},
		Sources:  []string{entry.SourceSun, "Shadow: length = height / tan altitude, opposite to the Sun, with the Sun as seen (refraction after Sæmundsson 1986)", entry.SourceWMM, entry.SourceIANA},
		Cautions: []string{entry.CareSun},
		Reckon:   reckonDialDay,
	}
}

func reckonDialDay(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	height, err := tipHeight(v, p.Latitude)
	if err != nil {
		return result.Result{}, err
	}
	from, to := p.Day(date)
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, from)
	if err != nil {
		return result.Result{}, err
	}
	table := result.Table{
		Name:  "hours",
		Title: say.Line("dial-day.title", say.Date(date), say.Number(height.Millimetres(), "mm", 0)),
		Columns: []result.Column{
			{Name: "clock"}, {Name: "shadow_bearing", Unit: "deg"}, {Name: "compass_bearing", Unit: "deg"},
			{Name: "sun_altitude", Unit: "deg"}, {Name: "shadow_length", Unit: "mm"},
		},
	}
	for _, t := range entry.WholeHours(from, to) {
		s, ok := entry.ShadowAt(p, t, height)
		if !ok {
			continue
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Clock(t),
			say.Bearing(s.Bearing, 1),
			say.Bearing(s.Bearing-field.Declination, 1),
			say.Number(s.Altitude.Degrees(), "deg", 1),
			s.LengthValue(height),
		}})
	}
	shadow := noonShadow(p, date, height)
	r := result.Result{
		Facts: []result.Fact{
			{Name: "tip_height", Value: say.Number(height.Millimetres(), "mm", 0)},
			{Name: "noon_shadow", Value: shadow.length},
			{Name: "noon_shadow_bearing", Value: shadow.bearing},
			{Name: "noon_shadow_points", Value: shadow.points},
		},
		Warnings: entry.CompassWarnings(field),
	}
	if len(table.Rows) == 0 {
		r.Warnings = append(r.Warnings, say.Line("dial-day.no_sun", say.Date(date)))
		return r, nil
	}
	r.Tables = []result.Table{table}
	r.Working = []say.Phrase{
		say.Line("dial-day.working_length", say.Number(height.Millimetres(), "mm", 0)),
		say.Line("dial-day.working_compass", entry.Sided(field.Declination.Degrees(), 1, "compass.east_of", "compass.west_of")),
	}
	return r, nil
}

// tipHeight is the height of the gnomon's tip, or what the author wants. The style of
// a polar dial has no tip, so near the equator an upright stick stands in.
func tipHeight(v form.Values, latitude quantity.Angle) (quantity.Length, error) {
	if argHeightMM.In(v) {
		return quantity.Millimetres(argHeightMM.Of(v)), nil
	}
	if dial.Shallow(latitude) {
		return quantity.Millimetres(100), nil
	}
	g, err := dial.GnomonOfStyle(latitude, quantity.Millimetres(school.StockStyleMM.Of(v)))
	return g.Height, err
}

// A noonValue is what the shadow at the Sun's noon is, in values.
type noonValue struct{ length, bearing, points say.Value }

func noonShadow(p place.Place, d place.Date, height quantity.Length) noonValue {
	none := say.None("dial-table.no_shadow")
	v := noonValue{none, none, none}
	noon, ok := entry.LocalNoon(p, d)
	if !ok {
		return v
	}
	s, ok := entry.ShadowAt(p, noon, height)
	if !ok {
		return v
	}
	v = noonValue{s.LengthValue(height), say.Bearing(s.Bearing, 1), say.Words("compass.true_north")}
	if s.Bearing.Cos() < 0 {
		v.points = say.Words("compass.true_south")
	}
	return v
}

package strip

import (
	"math"
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// What the entry takes.
const argBearingDeg form.Key[float64] = "bearing_deg"

func stripMoon() entry.Entry {
	return entry.Entry{
		Name:    "strip-moon",
		Summary: "Earth, Moon and the nearest star at the scale of the strip: how thin the one, how far beyond the school gate the other.",
		Arguments: append(stripArguments(),
			form.Field{Key: argBearingDeg, Unit: "deg", Min: 0, Max: 360, Default: 90.0, Doc: "True bearing in which the strip is rolled out, and on to the star."},
			entry.CraftArgument()),
		Settings: slices.Concat(roll, school.Where(), form.Keys{school.ClassWalkKmH}),
		Facts: []entry.Fact{
			{Name: "moon_mm", Unit: "mm", Doc: "distance from the Earth to the Moon on the strip"},
			{Name: "moon_thickness", Unit: "mm", Doc: "diameter of the Moon on the strip"},
			{Name: "earth_thickness", Unit: "mm", Doc: "diameter of the Earth on the strip"},
			{Name: "moon_light", Unit: "s", Doc: "time that light takes to the Moon"},
			{Name: "earths_between", Doc: "how many Earths side by side reach to the Moon"},
			{Name: "star_km", Unit: "km", Doc: "how far from the Sun the nearest star is at the scale of the strip"},
			{Name: "star_words", Doc: "the same in words"},
			{Name: "star_bearing", Doc: "the direction in which the strip is rolled out"},
			{Name: "star_latitude", Unit: "deg", Doc: "where on the Earth that would be, latitude"},
			{Name: "star_longitude", Unit: "deg", Doc: "where on the Earth that would be, longitude"},
			{Name: "star_light", Unit: "years", Doc: "time that light takes to the star"},
			{Name: "star_craft", Unit: "years", Doc: "how long the spacecraft would take to it"},
			{Name: "craft", Doc: "the spacecraft"},
			{Name: "star_walk", Unit: "days", Doc: "days to walk to the star's place on the strip's scale, eight hours a day"},
			{Name: "star_strips", Doc: "how many strips laid end to end reach it"},
		},
		Sources: []string{
			"Moon: mean distance 384 399 km, the semi-major axis of the lunar theory (M. Chapront-Touzé and J. Chapront); mean radius 1737.4 km (IAU Working Group on Cartographic Coordinates 2015)",
			"Nearest star: Proxima Centauri, parallax 768.0665 mas (Gaia DR3, 2022)", sourceOrbits, sourceSizes, entry.SourceLight, entry.SourceCraft,
			"Way over the ground: great circle on a sphere of 6371.0 km",
		},
		Cautions: []string{entry.CareSmallParts},
		Reckon:   reckonMoonStrip,
	}
}

func reckonMoonStrip(v form.Values) (result.Result, error) {
	u, err := stripUseOf(v)
	if err != nil {
		return result.Result{}, err
	}
	p, bearing := school.Place(v), quantity.Degrees(argBearingDeg.Of(v))
	star := u.OnPaper(strip.NearestStar)
	lat, lon := strip.Landing(p.Latitude, p.Longitude, bearing, star)
	earth := strip.Bodies()[slices.IndexFunc(strip.Bodies(), func(b strip.Body) bool { return b.Name == "earth" })]
	r := result.Result{
		Facts: []result.Fact{
			{Name: "moon_mm", Value: thickness(u.OnPaper(strip.ToTheMoon))},
			{Name: "moon_thickness", Value: thickness(u.OnPaper(strip.MoonDiameter))},
			{Name: "earth_thickness", Value: thickness(u.OnPaper(earth.Diameter))},
			{Name: "moon_light", Value: say.Number(strip.LightTime(strip.ToTheMoon).Seconds(), "s", 1)},
			{Name: "earths_between", Value: say.Number(float64(strip.ToTheMoon/earth.Diameter), "", 0)},
			{Name: "star_km", Value: say.Number(star.Kilometres(), "km", 0)},
			{Name: "star_words", Value: beyondGate(star)},
			{Name: "star_bearing", Value: entry.Toward(bearing)},
			{Name: "star_latitude", Value: entry.Sided(lat.Degrees(), 1, "compass.north_of", "compass.south_of")},
			{Name: "star_longitude", Value: entry.Sided(lon.Degrees(), 1, "compass.east_of", "compass.west_of")},
			{Name: "star_light", Value: say.Number(float64(strip.NearestStar/strip.LightYear), "years", 2)},
			{Name: "star_craft", Value: entry.Years(strip.Years(strip.NearestStar, u.craft.Speed))},
			{Name: "craft", Value: entry.CraftWord(u.craft)},
			{Name: "star_walk", Value: say.Number(star.Metres()/u.walk/(8*3600), "days", 0)},
			{Name: "star_strips", Value: say.Number(float64(star/u.Length()), "", 0)},
		},
		Notes: []say.Phrase{say.Line("strip-moon.note", thickness(u.OnPaper(strip.ToTheMoon)), beyondGate(star), entry.Toward(bearing))},
	}
	r.Tables = []result.Table{starTable(u)}
	r.Working = moonWorking(u, star)
	return r, nil
}

func moonWorking(u stripUse, star quantity.Length) []say.Phrase {
	moon, end := thickness(u.OnPaper(strip.ToTheMoon)), say.Number(star.Kilometres(), "km", 0)
	m := entry.Enough(moon, func(x []float64) float64 { return x[0] / x[1] * x[2] },
		say.Number(strip.ToTheMoon.Kilometres(), "km", 0), say.Number(u.Scale.Kilometres(), "km", 0), say.Number(u.Square.Millimetres(), "mm", entry.WholeOrTenth(u.Square.Millimetres())))
	s := entry.Enough(end, func(x []float64) float64 { return x[0] * x[1] / 1000 },
		say.Number(float64(strip.NearestStar/quantity.AstronomicalUnit), "au", 0), say.Number(u.OnPaper(quantity.AstronomicalUnit).Metres(), "m", 3))
	return []say.Phrase{say.Line("strip-moon.working_moon", m[0], m[1], m[2], moon), say.Line("strip-moon.working_star", s[0], s[1], end)}
}

func starTable(u stripUse) result.Table {
	table := result.Table{
		Name:    "far",
		Title:   say.Line("strip-moon.title"),
		Columns: []result.Column{{Name: "what"}, {Name: "distance_km", Unit: "km"}, {Name: "on_strip_mm", Unit: "mm"}, {Name: "light", Unit: "s"}},
	}
	row := func(name say.Value, far quantity.Length, shown say.Value) {
		light := entry.LightWay(far)
		if far < quantity.AstronomicalUnit/100 {
			light = say.Number(strip.LightTime(far).Seconds(), "s", 1)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{name, bigKilometres(far), shown, light}})
	}
	row(say.Words("strip-moon.to_moon"), strip.ToTheMoon, thickness(u.OnPaper(strip.ToTheMoon)))
	row(say.Words("strip-moon.to_sun"), quantity.AstronomicalUnit, inMillimetres(u.OnPaper(quantity.AstronomicalUnit)))
	row(say.Words("strip-moon.to_star"), strip.NearestStar, inMillimetres(u.OnPaper(strip.NearestStar)))
	return table
}

// bigKilometres is a distance in space, printed in millions of kilometres where
// that is easier to read.
func bigKilometres(l quantity.Length) say.Value {
	km := l.Kilometres()
	if km < 1e7 {
		return say.Number(km, "km", 0)
	}
	return say.Number(km, "km", 0).As("strip-table.ground", say.Number(km/1e6, "million_km", entry.WholeOrTenth(math.Min(km/1e6, 1e4))))
}

// inMillimetres is a length in millimetres, printed as on the ground.
func inMillimetres(l quantity.Length) say.Value {
	return say.Number(l.Millimetres(), "mm", 0).As("strip-table.ground", onGround(l))
}

// beyondGate says a distance over the ground in words: common sense, no source.
func beyondGate(l quantity.Length) say.Value {
	round := float64(l / strip.EarthRound)
	far := onGround(l)
	switch km := l.Kilometres(); {
	case km < 1:
		return say.Words("strip-moon.in_sight", far)
	case km < 30:
		return say.Words("strip-moon.a_walk", far)
	case km < 300:
		return say.Words("strip-moon.by_car", far, say.Number(km/80, "", 0))
	case round < 0.5:
		return say.Words("strip-moon.by_plane", far, say.Number(math.Max(1, km/900), "", 0))
	case round < 1:
		return say.Words("strip-moon.other_side", far)
	}
	return say.Words("strip-moon.round_earth", far, say.Number(round, "", 1))
}

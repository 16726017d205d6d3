package worlds

import (
	"fmt"
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/place"
	"noonbook/compute/strip"
	"noonbook/compute/world"
)

// What the entry takes.
const argWorlds form.Key[[]string] = "worlds"

// What the placeholders about worlds share: which worlds, and their values in
// words.

const (
	sourceWorlds    = "Worlds: radii, B. A. Archinal and others, IAU Working Group on Cartographic Coordinates 2015 (2018), Ceres R. S. Park and others (2016); pull, R. S. Park and others, DE440 (2021), and JPL satellite ephemerides (2024); years, JPL Planetary Physical Parameters (2021); turns (of the giants System III), tilts and temperatures, D. R. Williams, NASA Planetary Fact Sheets (2024), the extremes of the Earth, WMO World Weather and Climate Extremes Archive, those of Mars, NASA Mars facts; comet 67P, M. Pätzold and others (2016) and F. Capaccioni and others (2015)"
	sourceDerived   = "Mass GM/G with G = 6.67430e−11 (CODATA 2018), density over the mean radius, pull GM/r² and escape speed √(2GM/r) at the equator, noon to noon 1/(1/turn ∓ 1/year)"
	sourceMoons     = "Moons: confirmed ones after the IAU Minor Planet Center, as of 31 August 2025"
	sourceFeatures  = "Names: " + world.FeatureSource + "; clouds and rings, the Earth and comet 67P are not in it"
	sourceFarWorlds = "Distance on the date: compute/almanac; Ceres, Swiss Ephemeris; comet 67P, JPL Small-Body Database, 2019 to 2030"
)

// chosen is the argument that picks worlds.
func worldsArgument() form.Field {
	return form.Field{Key: argWorlds, Choices: world.Names(), Assumed: "all of them", Doc: "Which worlds, in the order of their cards."}
}

// oneWorld is the argument that picks the world of the facts.
func oneWorld(usual string) form.Field {
	return form.Field{Key: argWorld, Choices: world.Names(), Default: usual, Doc: "The world that the facts are about."}
}

// worldsOf returns the worlds of the argument, each once.
func worldsOf(v form.Values) []world.World {
	var list []world.World
	seen := map[string]bool{}
	for _, name := range argWorlds.Of(v) {
		if w, ok := world.Find(name); ok && !seen[name] {
			list, seen[name] = append(list, w), true
		}
	}
	if list == nil {
		return world.All()
	}
	return list
}

func worldOf(v form.Values) (world.World, error) {
	w, ok := world.Find(argWorld.Of(v))
	if !ok {
		return w, fmt.Errorf("no world is called %q", argWorld.Of(v))
	}
	return w, nil
}

func worldName(w world.World) say.Value { return say.Words("body." + w.Name) }

func worldKind(w world.World) say.Value {
	return map[world.Kind]say.Value{
		world.Rocky: say.Words("world.rocky"), world.Giant: say.Words("world.giant"), world.Dwarf: say.Words("world.dwarf"),
		world.Moon: say.Words("world.moon"), world.Comet: say.Words("world.comet"),
	}[w.Kind]
}

// digits returns the decimals that show n digits that count.
func digits(x float64, n int) int {
	if x == 0 || math.IsInf(x, 0) || math.IsNaN(x) {
		return 0
	}
	return max(0, n-1-int(math.Floor(math.Log10(math.Abs(x)))))
}

// sized is a pure number or a quantity with n digits that count.
func sized(x float64, unit string, n int) say.Value { return say.Number(x, unit, digits(x, n)) }

func earth() world.World {
	w, _ := world.Find("earth")
	return w
}

// lasts is a stretch of time in seconds, printed as hours and minutes, days or
// years, whichever is easiest to think of.
func lasts(d time.Duration) say.Value {
	v := say.Number(d.Seconds(), "s", 0)
	days := d.Hours() / 24
	switch {
	case days < 3:
		return say.Minutes(d)
	case days < 1000:
		return v.As("world.plain", say.Number(days, "days", digits(days, 3)))
	}
	return v.As("world.plain", sized(days/365.25, "years", 3))
}

func worldAcross(w world.World) say.Value {
	km := w.Diameter().Kilometres()
	return say.Number(km, "km", digits(km, 2))
}

func inEarths(x float64) say.Value { return sized(x, "", 2) }

// worldMass is the mass in Earths; that of the comet is told in tonnes.
func worldMass(w world.World) say.Value {
	ratio := inEarths(w.Mass() / earth().Mass())
	if w.Kind == world.Comet {
		return ratio.As("world.tonnes", say.Number(w.Mass()/1e12, "", 0))
	}
	return ratio
}

func worldPull(w world.World) say.Value {
	g := w.Gravity()
	return say.Number(g, "m_s2", max(2, digits(g, 2)))
}

// worldDensity is in kilograms a cubic metre; water has 1000.
func worldDensity(w world.World) say.Value { return say.Number(w.Density(), "kg_m3", 0) }

func worldTurn(w world.World) say.Value {
	turn := lasts(w.Turn)
	switch {
	case w.Kind == world.Comet: // its jets change it with every passage of the Sun
		return turn.As("world.about", turn)
	case w.Backwards():
		return turn.As("world.backwards", turn)
	}
	return turn
}

func worldNoon(w world.World) say.Value {
	noon := lasts(w.SolarDay())
	if w.Kind == world.Comet {
		return noon.As("world.about", noon)
	}
	return noon
}

// worldYear is the year, of the Moon that which it shares.
func worldYear(w world.World) say.Value {
	year := lasts(w.Year)
	if w.Kind == world.Moon {
		return year.As("world.with_earth", year)
	}
	return year
}

// worldTilt has a decimal where it is known to a tenth of a degree.
func worldTilt(w world.World) say.Value {
	d := w.Tilt.Degrees()
	if w.Name == "ceres" || w.Kind == world.Comet {
		return say.Number(d, "deg", 0)
	}
	return say.Number(d, "deg", 1)
}

func celsius(kelvin float64) say.Value { return say.Number(kelvin-273.15, "celsius", 0) }

// worldWarmth is the temperature in words: of the ground, or where the pressure
// is that of our sea level.
func worldWarmth(w world.World) say.Value {
	v := celsius(w.Mean)
	switch {
	case w.Kind == world.Giant:
		return v.As("world.warmth_level", v)
	case w.Coldest == w.Warmest:
		return v.As("world.warmth_everywhere", v)
	case w.Mean == 0:
		return say.Words("world.warmth_span", celsius(w.Coldest), celsius(w.Warmest))
	}
	return v.As("world.warmth_mean", v, celsius(w.Coldest), celsius(w.Warmest))
}

func worldAir(w world.World) say.Value { return say.Words("air." + w.Name) }

func worldQuestion(w world.World) say.Value { return say.Words("question." + w.Name) }

func fromSun(w world.World) say.Value {
	au := w.Orbit.Kilometres() / 1e6
	return say.Number(au, "million_km", digits(au, 3))
}

// A standing is where a world is at noon on the date, in values.
type standing struct {
	distance, au, light, sun say.Value
	known                    bool
}

func standingOf(w world.World, t time.Time) standing {
	s, ok := w.At(t)
	n := standing{known: ok}
	if s.SunDistance > 0 {
		n.sun = sized(s.SunDistance.Kilometres()/1e6, "million_km", 3)
	} else {
		n.sun = say.None("world.not_known")
	}
	if !ok {
		missing := say.None("world.not_known")
		if w.Name == "earth" {
			missing = say.None("world.here")
		}
		n.distance, n.au, n.light = missing, missing, missing
		return n
	}
	million := s.Distance.Kilometres() / 1e6
	n.distance, n.au = sized(million, "million_km", 3), sized(million*1e9/149597870700, "au", 3)
	if w.Kind == world.Moon {
		n.distance = n.distance.As("world.plain", say.Number(math.Round(million*1000)*1000, "km", 0))
	}
	n.light = say.Seconds(strip.LightTime(s.Distance))
	if light := strip.LightTime(s.Distance); light < 10*time.Second {
		n.light = say.Number(light.Seconds(), "s", 1)
	} else if w.Kind == world.Comet || w.Kind == world.Dwarf { // Ceres and the comet are not placed to the second
		n.light = say.Minutes(light)
	}
	return n
}

// noonOn is noon by the school's clock, for which the distances of a date stand.
func noonOn(p place.Place, d place.Date) time.Time { return p.Clock(d, 12, 0) }

// featureName is a name that every language writes alike, or one that it
// translates.
func featureName(f world.Feature, w world.World) say.Value {
	if w.Kind == world.Giant {
		return say.Words("feature." + f.Key)
	}
	return say.Text(f.Name)
}

func featureWhere(f world.Feature) (latitude, longitude say.Value) {
	latitude, longitude = say.None("world.not_placed"), say.None("world.not_placed")
	if f.Placed {
		latitude = entry.Sided(f.Latitude.Degrees(), 0, "world.north", "world.south")
		longitude = entry.Sided(f.Longitude.Degrees(), 0, "world.east", "world.west")
	}
	if f.Drifts {
		longitude = say.None("world.drifts")
	}
	return latitude, longitude
}

func featureSize(f world.Feature) say.Value {
	if f.Size == 0 {
		return say.None("sky.dash")
	}
	return say.Number(f.Size.Kilometres(), "km", 0)
}

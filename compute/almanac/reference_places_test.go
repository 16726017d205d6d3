package almanac_test

import (
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
)

// bodies are the names of the bodies in the tables.
func bodyOf(t *testing.T, name string) almanac.Body {
	t.Helper()
	for i, s := range []string{"sun", "moon", "mercury", "venus", "mars", "jupiter", "saturn", "uranus", "neptune", "pluto"} {
		if s == name {
			return almanac.Body(i)
		}
	}
	t.Fatalf("no body %q", name)
	return 0
}

// instantTT reads a moment of TT.
func (r row) instantTT(column string) time.Time {
	r.t.Helper()
	return dynamical(r.t, r.text(column)+"Z")
}

// Limit of the issue for planets: 1′. This package's own promise is narrower,
// and the libraries that use whole theories are held to it: Sun 1″, Moon 5″
// (the sum of both sides), planets 15″. astronomy-engine cuts its planets at 1′;
// pyephem's Pluto is a fit of its own.
func TestGeocentricPlacesOfTheLibraries(t *testing.T) {
	all := map[almanac.Body]*worst{}
	for _, r := range table(t, "geocentric.csv") {
		b := bodyOf(t, r.text("body"))
		if all[b] == nil {
			all[b] = newWorst(t, b.String(), "″")
		}
		limit := 15.0
		switch {
		case r.text("library") == "astronomy-engine" || b == almanac.Pluto:
			limit = 60
		case b == almanac.Sun:
			limit = 1
		case b == almanac.Moon:
			limit = 5
		}
		meetEquatorial(all[b], r, b.At(r.instantTT("tt")), limit)
	}
	for b := almanac.Sun; b <= almanac.Pluto; b++ {
		all[b].log()
	}
}

// Heliocentric places of the table are of the ecliptic of J2000. The general
// precession p_A takes their longitudes to the equinox of date (Capitaine et al.
// 2003, equation 39); the tilt of the ecliptic since then, 47″ a century times the
// sine of an angle, is allowed for, and 15″ beside it; astronomy-engine 60″.
func TestHeliocentricPlacesOfTheLibraries(t *testing.T) {
	longitude, distance := newWorst(t, "heliocentric longitude", "″"), newWorst(t, "distance from the Sun", "%")
	for _, r := range table(t, "heliocentric.csv") {
		at := r.instantTT("tt")
		got := bodyOf(t, r.text("body")).HeliocentricAt(at)
		century := at.Sub(utc(t, "2000-01-01T12:00:00Z")).Hours() / 24 / 36525
		precession := quantity.ArcSeconds(5028.796195*century + 1.1054348*century*century)
		off := (got.Longitude - quantity.Degrees(r.number("longitude_deg")) - precession).Signed().ArcSeconds()
		limit := 15 + 47*math.Abs(century)*math.Abs(math.Tan(got.Latitude.Radians()))
		if r.text("library") == "astronomy-engine" {
			limit += 45
		}
		longitude.meet(r.text("library"), off, limit, r.fields)
		up := (got.Latitude - quantity.Degrees(r.number("latitude_deg"))).ArcSeconds()
		longitude.meet(r.text("library")+", latitude", up, limit+47*math.Abs(century), r.fields)
		au := float64(got.Distance / quantity.AstronomicalUnit)
		distance.meet(r.text("library"), 100*(au/r.number("distance_au")-1), 0.02, r.fields)
	}
	longitude.log()
	distance.log()
}

// The Moon from places, and the middle of its lit limb from the zenith. The
// issue's 10″ in longitude and 4″ in latitude for its place; 0.003° for altitude
// and azimuth, the same as for the Sun; the limb to 0.3°, a hundredth of an hour
// on a clock face, where it is neither full nor dark.
func TestMoonPositionsOfTheLibraries(t *testing.T) {
	horizontal, geocentric := newWorst(t, "Moon's altitude and azimuth", "°"), newWorst(t, "Moon's place", "″")
	limb, distance := newWorst(t, "Moon's lit limb", "°"), newWorst(t, "Moon's distance", "km")
	for _, r := range table(t, "moon-positions.csv") {
		p, x := r.place(), r.instant("utc")
		meetHorizontal(horizontal, r, almanac.MoonFrom(p, x), 0.003)
		meetEquatorial(geocentric, r, almanac.MoonAt(x), 10)
		// 60 km change the Moon's parallax by 0.5″; the libraries differ by 40 km.
		distance.meet(r.text("library"), almanac.MoonAt(x).Distance.Kilometres()-r.number("distance_km"), 60, r.text("utc"))
		got := almanac.Moon.LimbFrom(p, x)
		if got.Side == almanac.NoSide || got.Side == almanac.AllSides {
			continue
		}
		off := (got.Lean - quantity.Degrees(r.number("lit_limb_deg"))).Signed().Degrees()
		limb.meet(r.text("library"), off, 0.3, r.text("utc"), r.text("place"))
	}
	horizontal.log()
	geocentric.log()
	distance.log()
	limb.log()
}

// Limit of the issue: lit fraction 0.002. Elongation and phase angle to 0.05°,
// the rounding of a pupil's protractor many times over, in which pyephem's older
// light time and astronomy-engine's 1′ find room. The Swiss Ephemeris draws the
// flattened planets with their mean radius, up to 3.6 % smaller than the equator's.
func TestAspectsOfTheLibraries(t *testing.T) {
	lit, elongation := newWorst(t, "lit fraction", ""), newWorst(t, "elongation", "°")
	phase, diameter := newWorst(t, "phase angle", "°"), newWorst(t, "diameter", "%")
	for _, r := range table(t, "aspects.csv") {
		b := bodyOf(t, r.text("body"))
		a := b.AspectAt(r.instant("utc"))
		library := r.text("library")
		lit.meet(library, a.Lit-r.number("lit"), 0.002, r.fields)
		elongation.meet(library, a.Elongation.Degrees()-r.number("elongation_deg"), 0.05, r.fields)
		if r.text("phase_angle_deg") != "" {
			phase.meet(library, a.PhaseAngle.Degrees()-r.number("phase_angle_deg"), 0.05, r.fields)
		}
		if d := r.text("diameter_arcsec"); d != "" && r.number("diameter_arcsec") > 1 {
			diameter.meet(library, 100*(a.Diameter.ArcSeconds()/r.number("diameter_arcsec")-1), 3.6, r.fields)
		}
		if a.East != (r.text("side") == "east") {
			t.Errorf("%s %s: east %v, %s has %s", b, r.text("utc"), a.East, library, r.text("side"))
		}
	}
	for _, w := range []*worst{lit, elongation, phase, diameter} {
		w.log()
	}
}

// Limits of the issue: magnitude 0.2, Saturn 0.3, thin crescents (here less than
// 5 % lit) aside. The Swiss Ephemeris follows Mallama & Hilton 2018 as this
// package does; astronomy-engine has formulae of its own; pyephem's older ones
// for the Moon, Mercury and Venus lie up to 3 magnitudes away and are no witness.
func TestMagnitudesOfTheLibraries(t *testing.T) {
	all := map[almanac.Body]*worst{}
	for _, r := range table(t, "aspects.csv") {
		b := bodyOf(t, r.text("body"))
		a := b.AspectAt(r.instant("utc"))
		if a.Lit < 0.05 || r.text("library") == "ephem" && b <= almanac.Venus {
			continue
		}
		if all[b] == nil {
			all[b] = newWorst(t, b.String(), "mag")
		}
		limit := 0.2
		if b == almanac.Saturn {
			limit = 0.3
		}
		all[b].meet(r.text("library"), a.Magnitude-r.number("magnitude"), limit, r.fields)
	}
	for b := almanac.Moon; b <= almanac.Pluto; b++ {
		all[b].log()
	}
}

// Planets rise and set by the centre 34′ below the horizon. No limit is set for
// them: 10 s, in which the sky turns 1′ at the slowest rise of the table.
func TestPlanetDaysOfTheLibraries(t *testing.T) {
	rise, transit := newWorst(t, "rises and sets of planets", "s"), newWorst(t, "transits of planets", "s")
	for _, r := range table(t, "planet-days.csv") {
		day := bodyOf(t, r.text("body")).Day(r.place(), date(t, r.text("date")))
		rise.meetEvents(r, "rise", day.Rises, 10)
		rise.meetEvents(r, "set", day.Sets, 10)
		transit.meetEvents(r, "transit", day.Transits, 10)
	}
	rise.log()
	transit.log()
}

// Limit of the issue: principal phases 20 s.
func TestPhasesOfTheLibraries(t *testing.T) {
	w := newWorst(t, "phases", "s")
	names := map[string]almanac.Phase{
		"new": almanac.NewMoon, "first-quarter": almanac.FirstQuarter,
		"full": almanac.FullMoon, "last-quarter": almanac.LastQuarter,
	}
	for _, r := range table(t, "phases.csv") {
		want := r.instantTT("tt")
		list, err := almanac.Phases(want.Add(-48*time.Hour), want.Add(48*time.Hour))
		if err != nil || len(list) != 1 || list[0].Phase != names[r.text("phase")] {
			t.Errorf("%s %s: %v %v", r.text("phase"), r.text("tt"), list, err)
			continue
		}
		w.meet(r.text("library"), list[0].At.Sub(want).Seconds(), 20, r.text("tt"))
	}
	w.log()
}

// Limit of the issue: seasons 20 s. astronomy-engine takes them from a short
// series of its own, up to a minute off.
func TestSeasonsOfTheLibraries(t *testing.T) {
	w := newWorst(t, "seasons", "s")
	names := map[string]almanac.Season{
		"march-equinox": almanac.MarchEquinox, "june-solstice": almanac.JuneSolstice,
		"september-equinox": almanac.SeptemberEquinox, "december-solstice": almanac.DecemberSolstice,
	}
	for _, r := range table(t, "seasons.csv") {
		want := r.instantTT("tt")
		all, err := almanac.Seasons(want.UTC().Year())
		if err != nil {
			t.Fatal(err)
		}
		season, ok := names[r.text("season")]
		if !ok {
			t.Fatal(r.text("season"))
		}
		limit := 20.0
		if r.text("library") == "astronomy-engine" {
			limit = 60
		}
		w.meet(r.text("library"), all[season].Sub(want).Seconds(), limit, r.text("tt"), r.text("season"))
	}
	w.log()
}

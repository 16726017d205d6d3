package almanac_test

import (
	"testing"
	"time"

	"noonbook/compute/almanac"
)

const earthRadius = 6378.137 // km, WGS 84

// solarNear and lunarNear return the eclipse within a day of t.
func solarNear(t *testing.T, x time.Time) (almanac.SolarEclipse, bool) {
	t.Helper()
	list, err := almanac.SolarEclipses(x.UTC().Year())
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range list {
		if e.Greatest.Sub(x).Abs() < 24*time.Hour {
			return e, true
		}
	}
	return almanac.SolarEclipse{}, false
}

func lunarNear(t *testing.T, x time.Time) (almanac.LunarEclipse, bool) {
	t.Helper()
	list, err := almanac.LunarEclipses(x.UTC().Year())
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range list {
		if e.Greatest.Sub(x).Abs() < 24*time.Hour {
			return e, true
		}
	}
	return almanac.LunarEclipse{}, false
}

// Kinds must agree, and the number of eclipses too.
func TestSolarEclipsesOfTheLibraries(t *testing.T) {
	greatest, axis := newWorst(t, "greatest solar eclipse", "s"), newWorst(t, "axis of the shadow", "km")
	rows, last := map[string]int{}, 0
	for _, r := range table(t, "solar-eclipses.csv") {
		want := r.instant("greatest")
		rows[r.text("library")]++
		last = max(last, want.Year())
		e, ok := solarNear(t, want)
		if !ok {
			t.Errorf("no eclipse at %s", want)
			continue
		}
		greatest.meet(r.text("library"), e.Greatest.Sub(want).Seconds(), greatestLimit, r.fields)
		apart := aside{"ephem": 3.3, "astronomy-engine": 3.1}.promise(gammaLimit*earthRadius, r.text("library"))
		axis.meet(r.text("library"), e.Gamma*earthRadius-r.number("axis_km"), apart, r.fields)
		if kind := r.text("kind"); kind != "" && !sameKind(e.Kind, kind, r.text("library")) {
			t.Errorf("%s: %s, %s has %s", want, e.Kind, r.text("library"), kind)
		}
	}
	for library, n := range rows {
		count := 0
		for year := 2026; year <= last; year++ {
			list, err := almanac.SolarEclipses(year)
			if err != nil {
				t.Fatal(err)
			}
			count += len(list)
		}
		if n != count {
			t.Errorf("%d eclipses, %s has %d", count, library, n)
		}
	}
	greatest.log()
	axis.log()
}

// astronomy-engine knows no hybrid eclipses: it names the kind at the greatest.
func sameKind(k almanac.EclipseKind, name, library string) bool {
	return k.String() == name || k == almanac.Hybrid && name == "total" && library == "astronomy-engine"
}

// astronomy-engine enlarges the Earth's shadow by a rule of its own, which moves
// contacts by 10 to 50 s; where the Moon only grazes it (a fifth of its diameter, a
// tenth in the penumbra), by minutes, and it is no witness.
func TestLunarEclipsesOfTheLibraries(t *testing.T) {
	greatest, contacts := newWorst(t, "greatest lunar eclipse", "s"), newWorst(t, "umbral contacts", "s")
	penumbral, magnitude := newWorst(t, "penumbral contacts", "s"), newWorst(t, "magnitude", "")
	for _, r := range table(t, "lunar-eclipses.csv") {
		want := r.instant("greatest")
		e, ok := lunarNear(t, want)
		if !ok {
			t.Errorf("no eclipse at %s", want)
			continue
		}
		library := r.text("library")
		other := library == "astronomy-engine"
		greatest.meet(library, e.Greatest.Sub(want).Seconds(), aside{"astronomy-engine": 6}.promise(greatestLimit, library), r.fields)
		if e.Kind.String() != r.text("kind") {
			t.Errorf("%s: %s, %s has %s", want, e.Kind, library, r.text("kind"))
		}
		for column, got := range map[string]time.Time{
			"u1": e.PartialBegins, "u2": e.TotalBegins, "u3": e.TotalEnds, "u4": e.PartialEnds,
		} {
			if !other || e.Magnitude > 0.2 {
				meetMoment(contacts, r, column, got, aside{"astronomy-engine": 20}.promise(umbralContactLimit, library))
			}
		}
		if !other || e.PenumbralMagnitude > 0.1 {
			meetMoment(penumbral, r, "p1", e.PenumbraBegins, penumbraContactLimit)
			meetMoment(penumbral, r, "p4", e.PenumbraEnds, penumbraContactLimit)
		}
		if r.text("umbral_magnitude") != "" && r.number("umbral_magnitude") > 0 {
			magnitude.meet(library, e.Magnitude-r.number("umbral_magnitude"), eclipseDepthLimit, r.fields)
		}
		if r.text("penumbral_magnitude") != "" {
			magnitude.meet(library, e.PenumbralMagnitude-r.number("penumbral_magnitude"), eclipseDepthLimit, r.fields)
		}
	}
	for _, w := range []*worst{greatest, contacts, penumbral, magnitude} {
		w.log()
	}
}

func meetMoment(w *worst, r row, column string, got time.Time, limit float64) {
	w.t.Helper()
	if got.IsZero() != (r.text(column) == "") {
		w.t.Errorf("%v: %s %s, %s has %q", r.fields, column, got, r.text("library"), r.text(column))
		return
	}
	if !got.IsZero() {
		w.meet(r.text("library"), got.Sub(r.instant(column)).Seconds(), limit, column, r.fields)
	}
}

// The Swiss Ephemeris has our radii of Sun and Moon; those of pyephem's geometry and
// of astronomy-engine are other ones, by which contacts move some seconds more. The
// Sun's altitude may be off by what it moves in the time, 15″ a second. Left out are
// contacts of grazes (0.002 of the diameter, where the Swiss Ephemeris has the last contact
// before the deepest) and the kind where ring or totality is shorter than 20 s,
// which 0.7 km of the Moon's radius decides.
func TestLocalEclipsesOfTheLibraries(t *testing.T) {
	contacts, deepest := newWorst(t, "local contacts", "s"), newWorst(t, "deepest", "s")
	magnitude, obscuration := newWorst(t, "local magnitude", ""), newWorst(t, "obscuration", "")
	altitude := newWorst(t, "Sun's altitude", "°")
	for _, r := range table(t, "local-eclipses.csv") {
		first, library := r.instant("first"), r.text("library")
		e, ok := solarNear(t, first)
		if !ok {
			t.Errorf("no eclipse at %s", first)
			continue
		}
		v := e.From(r.place())
		limit := aside{"ephem": 10, "astronomy-engine": 10}.promise(localContactLimit, library)
		short := v.DeepBegins.Happens() && v.DeepEnds.At.Sub(v.DeepBegins.At) < 20*time.Second
		for column, c := range map[string]almanac.Contact{
			"first": v.Begins, "second": v.DeepBegins, "third": v.DeepEnds, "fourth": v.Ends,
		} {
			if deep := column == "second" || column == "third"; deep && short || v.Magnitude < 0.002 {
				continue
			}
			meetMoment(contacts, r, column, c.At, limit)
		}
		if r.text("greatest") == "" { // the Swiss Ephemeris leaves it out below the horizon
			continue
		}
		if v.Kind.String() != r.text("kind") && !short {
			t.Errorf("%s %s: %s, %s has %s", r.text("place"), first, v.Kind, library, r.text("kind"))
		}
		deepest.meet(library, v.Deepest.At.Sub(r.instant("greatest")).Seconds(), limit, r.fields)
		if r.text("magnitude") != "" {
			magnitude.meet(library, v.Magnitude-r.number("magnitude"), eclipseDepthLimit, r.fields)
		}
		obscuration.meet(library, v.Obscuration-r.number("obscuration"), eclipseDepthLimit, r.fields)
		altitude.meet(library, v.Deepest.Where.Altitude.Degrees()-r.number("sun_altitude_deg"), limit*15/3600, r.fields)
	}
	for _, w := range []*worst{contacts, deepest, magnitude, obscuration, altitude} {
		w.log()
	}
}

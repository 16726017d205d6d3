package almanac_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
)

// Meeus, Astronomical Algorithms, 2nd ed. 1998, example 33.a, Venus on 1992
// December 20 at 0h TD, printed to 0.04″ and made with the book's own cut of
// VSOP87.
func TestVenusOfMeeus(t *testing.T) {
	venus := almanac.Venus.At(dynamical(t, "1992-12-20T00:00:00Z"))
	if d := (venus.RightAscension.Degrees() - 316.17291) * 3600; math.Abs(d) > planetPlaceLimit {
		t.Errorf("right ascension %.2f″ off", d)
	}
	if d := (venus.Declination.Degrees() + 18.88801) * 3600; math.Abs(d) > planetPlaceLimit {
		t.Errorf("declination %.2f″ off", d)
	}
}

// Meeus, example 41.a: Venus at the same instant, phase angle cos i = 0.29312,
// lit 0.647; example 37.a: Pluto on 1992 October 13 at 0h TD, astrometric
// J2000 right ascension 232.93231°, declination −4.45802° (both from memory).
// Precession to 1992 and aberration move Pluto by 6.3′; the test allows 10′, to
// find gross errors beside the tables.
func TestLitVenusAndPluto(t *testing.T) {
	venus := almanac.Venus.AspectAt(dynamical(t, "1992-12-20T00:00:00Z"))
	if math.Abs(venus.Lit-0.647) > 0.0005 || math.Abs(venus.PhaseAngle.Cos()-0.29312) > 0.0005 {
		t.Errorf("lit %.4f, cos i %.5f", venus.Lit, venus.PhaseAngle.Cos())
	}
	pluto := almanac.Pluto.At(dynamical(t, "1992-10-13T00:00:00Z"))
	if math.Abs(pluto.RightAscension.Degrees()-232.93231) > 1./6 || math.Abs(pluto.Declination.Degrees()+4.45802) > 1./6 {
		t.Errorf("Pluto %.5f° %.5f°", pluto.RightAscension.Degrees(), pluto.Declination.Degrees())
	}
}

// What the sky does with the planets, common practice, no source: Mercury keeps
// within 28.5° of the Sun and Venus within 48°; the outer ones reach 180°; the
// two inner ones alone show thin crescents; the faintest of Pluto is 14 to 15.
func TestAspectsStayInTheirBounds(t *testing.T) {
	start := utc(t, "2026-01-01T00:00:00Z")
	for b := almanac.Mercury; b <= almanac.Pluto; b++ {
		var elongation, lit, faint, bright = 0.0, 1.0, -30.0, 30.0
		for day := range 365 * 8 / 5 {
			a := b.AspectAt(start.AddDate(0, 0, 5*day))
			elongation = max(elongation, a.Elongation.Degrees())
			lit = min(lit, a.Lit)
			faint, bright = max(faint, a.Magnitude), min(bright, a.Magnitude)
			if a.Lit < 0 || a.Lit > 1 {
				t.Fatalf("%s lit %g", b, a.Lit)
			}
		}
		t.Logf("%s: elongation to %.1f°, lit from %.3f, magnitude %.1f to %.1f", b, elongation, lit, bright, faint)
		limit := map[almanac.Body][2]float64{almanac.Mercury: {26, 28.5}, almanac.Venus: {46, 48}}[b]
		if limit == [2]float64{} {
			limit = [2]float64{160, 180}
		}
		if elongation < limit[0] || elongation > limit[1] {
			t.Errorf("%s reaches %.2f°", b, elongation)
		}
	}
}

// Venus is the evening star east of the Sun and sets after it.
func TestEastIsTheEvening(t *testing.T) {
	p := at(t, 46.09, -64.77, "America/Moncton")
	for d := date(t, "2026-01-01"); d.Year < 2028; d = d.Add(9) {
		noon := p.Clock(d, 12, 0)
		aspect := almanac.Venus.AspectAt(noon)
		if aspect.Elongation.Degrees() < 15 {
			continue // far enough that latitude does not turn it round
		}
		sun, venus := almanac.SunDay(p, d), almanac.Venus.Day(p, d)
		if len(venus.Sets) != 1 || len(venus.Rises) != 1 {
			continue
		}
		if evening := aspect.East; evening != venus.Transits[0].After(sun.Transits[0]) {
			t.Errorf("%s: east %v, Venus's transit %s, the Sun's %s", d, evening, venus.Transits[0], sun.Transits[0])
		}
	}
}

// The interpolated day against the whole theory: at every event the body stands
// on the horizon of the convention, to what its speed does in 0.3 s (5″).
func TestPlanetsStandOnTheHorizon(t *testing.T) {
	const horizon = -34. / 60
	p := at(t, 51.5, 0, "Europe/London")
	for b := almanac.Mercury; b <= almanac.Pluto; b++ {
		for d := date(t, "2027-01-03"); d.Year == 2027; d = d.Add(13) {
			day := b.Day(p, d)
			if len(day.Transits) == 0 {
				t.Logf("%s has no transit on %s", b, d)
			}
			for _, x := range append(day.Rises, day.Sets...) {
				if off := b.From(p, x).Altitude.Degrees() - horizon; math.Abs(off) > 5./3600 {
					t.Errorf("%s %s: %.5f° off the horizon", b, d, off)
				}
			}
			for _, x := range day.Transits {
				if az := b.From(p, x).Azimuth.Degrees(); math.Abs(az-180) > 0.01 {
					t.Errorf("%s %s: transit at azimuth %.4f°", b, d, az)
				}
			}
		}
	}
}

func TestPlacesAllocateNothing(t *testing.T) {
	when := utc(t, "2027-04-20T12:00:00Z")
	p := at(t, 46.09, -64.77, "America/Moncton")
	for b := almanac.Sun; b <= almanac.Pluto; b++ {
		if n := testing.AllocsPerRun(10, func() { b.At(when); b.From(p, when); b.AspectAt(when); b.LimbFrom(p, when) }); n != 0 {
			t.Errorf("%s: %g allocations", b, n)
		}
	}
}

// Meeus, example 41.a: Venus is lit by 0.647 on 1992 December 20 at 0h TD.
func ExampleBody_AspectAt() {
	venus := almanac.Venus.AspectAt(time.Date(1992, 12, 19, 23, 59, 1, 0, time.UTC))
	fmt.Printf("%.3f lit, east of the Sun: %v\n", venus.Lit, venus.East)
	// Output: 0.647 lit, east of the Sun: true
}

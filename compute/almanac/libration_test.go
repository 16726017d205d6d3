package almanac_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
)

// Meeus, Astronomical Algorithms, 2nd ed. 1998, examples 53.a and 53.b, 1992 April 12 at 0h
// TD: libration l = −1.23°, b = +4.20°, position angle P = 15.08°; the Sun overhead at
// l₀ = 67.89°, b₀ = +1.46°, colongitude 22.11°. From memory.
func ExampleMoonFace() {
	f := almanac.MoonFace(time.Date(1992, 4, 11, 23, 59, 1, 0, time.UTC)) // ΔT 59 s
	fmt.Printf("l %.2f b %.2f P %.2f\n", f.Longitude.Degrees(), f.Latitude.Degrees(), f.Axis.Degrees())
	fmt.Printf("sun %.2f %.2f colongitude %.2f\n", f.SunLongitude.Degrees(), f.SunLatitude.Degrees(), f.Colongitude().Degrees())
	// Output:
	// l -1.23 b 4.20 P 15.08
	// sun 67.89 1.46 colongitude 22.11
}

// The limits are those that MoonFace promises, and what the libraries have themselves:
// astronomy-engine turns the Moon by the short series of the IAU, and ephem's Sun over the
// Moon is a rough one (see the table's README).
func TestMoonFaceOfTheLibraries(t *testing.T) {
	face, sun, axis := newWorst(t, "libration", "°"), newWorst(t, "the Sun over the Moon", "°"), newWorst(t, "the Moon's axis", "°")
	sunLimit := map[string]float64{"ephem": 0.3, "astronomy-engine": 0.05}
	here := 0
	for _, r := range table(t, "moon-face.csv") {
		at, library := r.instant("utc"), r.text("library")
		got := almanac.MoonFace(at)
		if r.text("place") != "" {
			got = almanac.MoonFaceFrom(r.place(), at)
			here++
		}
		off := func(got quantity.Angle, column string) float64 {
			return (got - quantity.Degrees(r.number(column))).Signed().Degrees()
		}
		face.meet(library, off(got.Longitude, "face_longitude_deg"), 0.05, at, r.text("place"))
		face.meet(library, off(got.Latitude, "face_latitude_deg"), 0.05, at, r.text("place"))
		sun.meet(library, off(got.SunLongitude, "sun_longitude_deg"), sunLimit[library], at)
		sun.meet(library, off(got.SunLatitude, "sun_latitude_deg"), sunLimit[library], at)
		if r.text("axis_deg") != "" {
			axis.meet(library, off(got.Axis, "axis_deg"), 0.05, at, r.text("place"))
		}
		if lit := almanac.Moon.AspectAt(at).Lit; r.text("place") == "" && math.Abs(got.Lit()-lit) > 0.0005 {
			t.Errorf("%v: %.4f of the disc is lit, its aspect says %.4f", at, got.Lit(), lit)
		}
	}
	face.log()
	sun.log()
	axis.log()
	if here < 100 {
		t.Errorf("only %d rows are of places", here)
	}
}

// At the moments when the Sun's centre rises or sets at a crater by astronomy-engine, the
// terminator runs through it.
func TestTerminatorRunsThroughCraters(t *testing.T) {
	height := newWorst(t, "the Sun over a crater as it rises or sets", "°")
	for _, r := range table(t, "moon-terminator.csv") {
		at := r.instant("utc")
		lon, lat := quantity.Degrees(r.number("longitude_deg")), quantity.Degrees(r.number("latitude_deg"))
		height.meet("astronomy-engine", almanac.MoonFace(at).SunAltitude(lon, lat).Degrees(), 0.05, r.text("crater"), at)
		later := almanac.MoonFace(at.Add(time.Hour)).SunAltitude(lon, lat)
		if (later > 0) != (r.text("sun") == "rise") {
			t.Errorf("%s at %v: an hour later the Sun is %.2f° high, it should %s", r.text("crater"), at, later.Degrees(), r.text("sun"))
		}
	}
	height.log()
}

// At first quarter the Sun rises near the mean middle of the disc, at last quarter it sets
// there (common practice); the Sun then stands a quarter of a turn away, less what libration
// takes or adds, 8° at most.
func TestTerminatorAtTheQuarters(t *testing.T) {
	list, err := almanac.Phases(time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC), time.Date(2028, 1, 1, 0, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range list {
		want := map[almanac.Phase]float64{almanac.NewMoon: -90, almanac.FirstQuarter: 0, almanac.FullMoon: 90, almanac.LastQuarter: 180}[p.Phase]
		got := almanac.MoonFace(p.At).Colongitude() - quantity.Degrees(want)
		if off := got.Signed().Degrees(); math.Abs(off) > 8.2 {
			t.Errorf("%v at %v: colongitude is %.1f° off", p.Phase, p.At, off)
		}
	}
}

// What somebody sees leans as the Moon's lit side does: where the axis of the Moon and the
// middle of its lit limb have position angles, their difference is that of their leans.
func TestFaceLeansAsTheLimb(t *testing.T) {
	for _, r := range table(t, "moon-face.csv") {
		if r.text("place") == "" {
			continue
		}
		p, at := r.place(), r.instant("utc")
		face, limb := almanac.MoonFaceFrom(p, at), almanac.Moon.LimbFrom(p, at)
		byLean, byAngle := (limb.Lean - face.Lean).Signed(), (face.Axis - limb.PositionAngle).Signed()
		if off := (byLean - byAngle).Signed().Degrees(); math.Abs(off) > 0.1 {
			t.Errorf("%s, %v: axis and limb lean %.2f° apart, their position angles are %.2f° apart", r.text("place"), at, byLean.Degrees(), byAngle.Degrees())
		}
	}
}

package dial_test

import (
	"fmt"
	"math"
	"testing"

	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// Azimuth and altitude of points given by hour angle and declination, from
// ERFA 2.0.0 (routine hd2ae, through pyerfa 2.0.0.1), printed to ten decimals.
func TestSunDirection(t *testing.T) {
	for _, c := range []struct{ latitude, declination, hourAngle, azimuth, altitude float64 }{
		{46.09, 11.50, -52.5, 110.5536873963, 33.8725816077},
		{46.09, -23.44, 30.0, 208.4033368062, 15.3354288445},
		{-45.87, 23.44, -40.0, 37.0414329982, 11.7624205795},
		{-45.87, -15.00, 97.5, 254.2157266784, 5.6230522344},
		{0.20, -10.00, 0.0, 180.0000000000, 79.8000000000},
		{-0.20, 10.00, 75.0, 280.3970613432, 14.7308847422},
		{69.60, 23.44, 180.0, 360.0000000000, 3.0400000000},
		{89.90, 20.00, -120.0, 59.9685270443, 19.9499762048},
		{54.80, 5.00, 15.0, 199.3048645468, 38.7476125335},
		{-23.00, -23.00, 10.0, 268.0421322972, 80.7967396920},
	} {
		azimuth, altitude := dial.SunDirection(deg(c.latitude), deg(c.declination), deg(c.hourAngle))
		name := fmt.Sprintf("%g°, declination %g°, hour angle %g°", c.latitude, c.declination, c.hourAngle)
		near(t, name+": azimuth", (azimuth - deg(c.azimuth)).Signed().Degrees(), 0, 1e-10)
		near(t, name+": altitude", altitude.Degrees(), c.altitude, 1e-10)
	}
}

// The Sun of Reda & Andreas, NREL/TP-560-34302, table A5.1 (second-hand):
// azimuth 194.34024°, zenith distance 50.11162°. A shadow points away from the
// Sun and is tan(zenith distance) as long as the point is high.
func TestShadowAtNREL(t *testing.T) {
	bearing, length, ok := dial.Shadow(quantity.Metres(2), deg(194.34024), deg(90-50.11162))
	if !ok {
		t.Fatal("no shadow")
	}
	near(t, "bearing", bearing.Degrees(), 14.34024, 1e-9)
	near(t, "length", length.Metres(), 2*math.Tan(50.11162*math.Pi/180), 1e-12)
}

func TestShadowEdges(t *testing.T) {
	for _, c := range []struct {
		name              string
		height            quantity.Length
		azimuth, altitude float64
		ok                bool
		bearing, length   float64
	}{
		{"Sun east, half as high as far", 1, 90, math.Atan(0.5) * 180 / math.Pi, true, 270, 2},
		{"Sun overhead", 1, 0, 90, true, 180, 0},
		{"nothing high", 0, 200, 30, true, 0, 0},
		{"Sun on the horizon", 1, 90, 0, false, 0, 0},
		{"Sun below", 1, 90, -5, false, 0, 0},
		{"no Sun", 1, 90, math.NaN(), false, 0, 0},
		{"a hole", -1, 90, 30, false, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			bearing, length, ok := dial.Shadow(c.height, deg(c.azimuth), deg(c.altitude))
			if ok != c.ok {
				t.Fatalf("ok is %v", ok)
			}
			near(t, "length", length.Metres(), c.length, 1e-12)
			if c.length > 0 {
				near(t, "bearing", bearing.Degrees(), c.bearing, 1e-9)
			}
		})
	}
}

// The tangent formula and the vectors know nothing of each other: the shadow of
// a style that points to the pole must lie on the hour line, at any declination.
// Limit 1e-9°.
func TestStyleShadowFallsOnHourLine(t *testing.T) {
	worst, shadows := 0.0, 0
	for _, latitude := range []float64{90, 89.9, 69.6, 54.8, 46.09, 23.44, 10, 1.4, 0.2, -0.2, -1.4, -23.44, -45.87, -69.6, -90} {
		style := dial.PolarStyle(deg(latitude))
		for declination := -23.44; declination <= 23.44; declination += 23.44 / 8 {
			for hourAngle := -180.0; hourAngle <= 180; hourAngle += 2.5 {
				azimuth, altitude := dial.SunDirection(deg(latitude), deg(declination), deg(hourAngle))
				if altitude < deg(1e-6) {
					continue // the Sun is down
				}
				shadow, ok := style.Shadow(azimuth, altitude)
				if !ok {
					t.Fatalf("%g°, %g°, %g°: no shadow", latitude, declination, hourAngle)
				}
				line := dial.LineAt(deg(latitude), deg(hourAngle))
				worst = max(worst, math.Abs((shadow - line.Bearing).Signed().Degrees()))
				shadows++
			}
		}
	}
	t.Logf("worst of %d shadows: %.2g°", shadows, worst)
	if worst > 1e-12*180/math.Pi || shadows < 10000 {
		t.Errorf("worst of %d shadows is %.2g° off its hour line", shadows, worst)
	}
}

// The tip of a gnomon lies on the style's shadow too: centre to foot of the tip
// along the noon line, then the tip's own shadow. 1e-9°: rounding.
func TestTipLiesOnStyleShadow(t *testing.T) {
	for _, latitude := range []float64{46.09, -45.87} {
		g, err := dial.GnomonOfStyle(deg(latitude), quantity.Metres(1))
		if err != nil {
			t.Fatal(err)
		}
		azimuth, altitude := dial.SunDirection(deg(latitude), deg(10), deg(40))
		bearing, length, _ := dial.Shadow(g.Height, azimuth, altitude)
		north := math.Copysign(g.Base.Metres(), latitude) + length.Metres()*bearing.Cos()
		east := length.Metres() * bearing.Sin()
		style, _ := dial.PolarStyle(deg(latitude)).Shadow(azimuth, altitude)
		near(t, "tip", (quantity.Atan2(east, north) - style).Signed().Degrees(), 0, 1e-9)
	}
}

func TestStyleThatPointsAtTheSun(t *testing.T) {
	style := dial.Style{Azimuth: deg(200), Elevation: deg(40)}
	if _, ok := style.Shadow(deg(200), deg(40)); ok {
		t.Error("a dot has a bearing")
	}
	if _, ok := style.Shadow(deg(200), deg(-1)); ok {
		t.Error("a shadow at night")
	}
	bearing, ok := style.Shadow(deg(200), deg(30)) // a lower Sun: the shadow runs away from it
	if !ok {
		t.Fatal("no shadow")
	}
	near(t, "away", bearing.Degrees(), 20, 1e-9)
}

package dial_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

var faces = []dial.Face{dial.Level, dial.Wall, dial.PoleSide, dial.EquatorSide, dial.Polar}

// A wall that faces the equator has tan X = cos φ · tan h, the standard formula
// of vertical dials (Waugh, Sundials, 1973, from memory); three hours from noon
// at 40° that is 37.45°.
func ExampleFace_Latitude() {
	wall := dial.Wall.Latitude(quantity.Degrees(40))
	line := dial.LineAt(wall, quantity.Hours(3))
	gnomon, _ := dial.GnomonOfStyle(wall, quantity.Millimetres(100))
	fmt.Printf("%.2f°, style %.0f° from the wall\n", line.Angle.Degrees(), gnomon.Angle.Degrees())
	// Output:
	// 37.45°, style 50° from the wall
}

// A plate sees the Sun where its own latitude does, whatever the hour, with
// bearings counted from up on a wall. Two ways to the same direction; 1e-9° is
// rounding. Overhead, bearings are left out.
func TestPlateIsLevelElsewhere(t *testing.T) {
	for _, latitude := range []float64{90, 69.6, 46.09, 10, 0, -0.2, -45.87, -90} {
		for _, face := range faces {
			for _, declination := range []float64{-23.44, -3, 0, 11.5, 23.44} {
				for hour := -180.0; hour < 180; hour += 17 {
					azimuth, altitude := face.Tilt(deg(latitude)).Sees(dial.SunDirection(deg(latitude), deg(declination), deg(hour)))
					wantAzimuth, wantAltitude := dial.SunDirection(face.Latitude(deg(latitude)), deg(declination), deg(hour))
					name := fmt.Sprintf("face %d at %g°, declination %g°, hour angle %g°", face, latitude, declination, hour)
					near(t, name+": height", altitude.Degrees(), wantAltitude.Degrees(), 1e-9)
					near(t, name+": bearing", (azimuth-wantAzimuth).Signed().Degrees()*altitude.Cos(), 0, 1e-9)
				}
			}
		}
	}
}

// The lines and gnomons of every face, drawn with the formula, catch the shadow
// of the style that stands on it; 1e-8° leaves room for walls near the pole.
func TestShadowsFallOnTheLinesOfEveryFace(t *testing.T) {
	shadows := 0
	for _, latitude := range []float64{69.6, 46.09, 23.44, 1.4, -0.2, -45.87} {
		for _, face := range faces {
			there := face.Latitude(deg(latitude))
			d := dial.True(there)
			d.Tilt = face.Tilt(deg(latitude))
			for declination := -23.44; declination <= 23.44; declination += 11.72 {
				for hour := -172.5; hour < 180; hour += 7.5 {
					line, ok := d.Line(dial.SunDirection(deg(latitude), deg(declination), deg(hour)))
					if !ok || face == dial.Polar || !face.Readable(deg(latitude)) { // PolarDistance has tests of its own
						continue
					}
					near(t, fmt.Sprintf("face %d at %g°", face, latitude), (line - dial.LineAt(there, deg(hour)).Angle).Signed().Degrees(), 0, 1e-8)
					shadows++
				}
			}
		}
	}
	if shadows < 1000 {
		t.Errorf("only %d shadows fell", shadows)
	}
}

// Hours bounds exactly the hours of the year at which some Sun lies above the
// horizon and the plate: searched minute by minute over the declinations. Two
// minutes are the step and its like in declination.
func TestFaceHours(t *testing.T) {
	for _, latitude := range []float64{90, 75, 46.09, 10, 0, -1.4, -45.87, -90} {
		for _, face := range faces {
			first := 12 * time.Hour
			for declination := -23.43; declination <= 23.44; declination += 0.02 { // never on the equator, where a pole's Sun is on every horizon
				both := min(dial.SunUp(deg(latitude), deg(declination)), dial.SunUp(face.Latitude(deg(latitude)), deg(declination)))
				if both > 0 {
					first = min(first, 12*time.Hour-time.Duration(both.Hours()*float64(time.Hour)))
				}
			}
			from, to := face.Hours(deg(latitude))
			name := fmt.Sprintf("face %d at %g°", face, latitude)
			near(t, name, from.Minutes(), first.Minutes(), 2)
			near(t, name+": halves", (from + to).Hours(), 24, 0)
		}
	}
}

func TestReadableFaces(t *testing.T) {
	for _, c := range []struct {
		face     dial.Face
		latitude float64
		want     bool
	}{
		{dial.Level, 14, false}, {dial.Level, -16, true}, {dial.Wall, 76, false}, {dial.Wall, 0, true}, {dial.Polar, 0, true}, {dial.Polar, 60, true},
		{dial.PoleSide, 0, true}, {dial.EquatorSide, -90, true},
	} {
		if c.face.Readable(deg(c.latitude)) != c.want {
			t.Errorf("face %d at %g°: want %v", c.face, c.latitude, c.want)
		}
	}
}

// A gnomon as thick as a board is a solid; a point of the plate lies in its
// shadow if the ray from it to the Sun runs through the solid. Just outside the
// line from the centre of its edge the Sun shines, just inside it does not.
func TestThickGnomonHasTwoCentres(t *testing.T) {
	const thickness = 0.02 // m, on a gnomon that is long enough for every shadow
	tested := map[dial.Edge]int{}
	for _, latitude := range []float64{69.6, 46.09, 20, -45.87} {
		for _, declination := range []float64{-10, 5, 23.44} {
			for hour := -165.0; hour <= 165; hour += 15 {
				azimuth, altitude := dial.SunDirection(deg(latitude), deg(declination), deg(hour))
				if altitude < deg(3) || math.Mod(math.Abs(hour), 90) == 0 {
					continue
				}
				line := dial.LineAt(deg(latitude), deg(hour))
				offset := line.Edge().Offset(thickness).Metres()
				// On the plate: along the noon line, and toward the afternoon.
				at := func(aside quantity.Angle) bool {
					x := line.Angle + aside
					return shaded(latitude, azimuth, altitude, 0.3*x.Cos(), offset+0.3*x.Sin(), thickness)
				}
				outward := deg(math.Copysign(0.01, hour)) // away from the gnomon
				if at(outward) || !at(-outward) {
					t.Errorf("%g°, declination %g°, hour angle %g°: lit and shaded are %v and %v", latitude, declination, hour, !at(outward), at(-outward))
				}
				tested[line.Edge()]++
			}
		}
	}
	if tested[dial.MorningEdge] < 20 || tested[dial.AfternoonEdge] < 20 {
		t.Errorf("edges tested: %v", tested)
	}
	for hour, want := range map[float64]dial.Edge{0: dial.BothEdges, 180: dial.BothEdges, -100: dial.AfternoonEdge, 100: dial.MorningEdge} {
		if got := dial.LineAt(deg(46), deg(hour)).Edge(); got != want {
			t.Errorf("hour angle %g°: edge %d, want %d", hour, got, want)
		}
	}
}

// shaded walks along the ray from a point of the plate to the Sun and looks
// whether it enters the gnomon: between its two faces, over the noon line, and
// under the style.
func shaded(latitude float64, azimuth, altitude quantity.Angle, along, aside, thickness float64) bool {
	noon, after := 1.0, 1.0 // north, and the afternoon in the east
	if latitude < 0 {
		noon = -1
	}
	forward := altitude.Cos() * azimuth.Cos() * noon
	sideways := altitude.Cos() * azimuth.Sin() * after
	up, slope := altitude.Sin(), math.Tan(math.Abs(latitude)*math.Pi/180)
	for s := 0.0; s < 8; s += 0.00005 {
		if x, y, z := along+s*forward, aside+s*sideways, s*up; math.Abs(y) <= thickness/2 && x > 0 && z <= x*slope {
			return true
		}
	}
	return false
}

package dial_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/dial"
	"noonbook/compute/place"
)

// Marks made on 15 April, when the equation of time is nothing, are off by all
// of it later: about −14 min on 11 February, +16 min on 3 November, nothing on
// 13 June and 1 September (National Physical Laboratory FAQ; to its half minute,
// and for the zeros to the 12 s that the equation changes in a day). On 11
// February the clock stands an hour back, and the marks an hour fast.
func TestDrift(t *testing.T) {
	p := school(t, 46.09, -64.77, "America/Moncton")
	for _, c := range []struct {
		on                      string
		equation, clock, margin float64 // minutes
	}{
		{"2027-04-15", 0, 0, 0},
		{"2027-06-13", 0, 0, 0.4},
		{"2027-09-01", 0, 0, 0.4},
		{"2027-11-03", 16.4, 0, 0.5},
		{"2028-02-11", -14.2, 60, 0.5},
	} {
		d := dial.DriftOn(p, date(t, "2027-04-15"), date(t, c.on))
		near(t, c.on+": equation", d.Equation.Minutes(), c.equation, c.margin)
		near(t, c.on+": clock", d.Clock.Minutes(), c.clock, 0)
		near(t, c.on+": together", d.Fast().Minutes(), d.Equation.Minutes()+d.Clock.Minutes(), 1e-9)
	}
}

// The mark of a quarter of an hour's drift is that of the hour angle 3.75°
// further on. 1e-9°: rounding.
func TestDriftMoves(t *testing.T) {
	d := dial.Drift{Equation: 15 * time.Minute}
	for _, latitude := range []float64{46.09, -45.87} {
		sin := math.Abs(math.Sin(latitude * math.Pi / 180))
		want := math.Atan(sin*math.Tan(48.75*math.Pi/180)) - math.Atan(sin*math.Tan(45*math.Pi/180))
		near(t, "three hours past noon", d.Moved(deg(latitude), deg(45)).Degrees(), want*180/math.Pi, 1e-9)
	}
	near(t, "at a pole", d.Moved(deg(90), deg(-100)).Degrees(), 3.75, 1e-9)
}

// MarksHold against a look at every day.
func TestMarksHold(t *testing.T) {
	for _, c := range []struct{ zone, marked string }{
		{"America/Moncton", "2027-04-20"}, {"America/Moncton", "2027-11-06"}, {"Asia/Kathmandu", "2027-12-21"}, {"Africa/Casablanca", "2027-01-20"},
	} {
		for _, limit := range []time.Duration{time.Minute, 5 * time.Minute, 15 * time.Minute, 2 * time.Hour} {
			for _, clock := range []bool{true, false} {
				p := school(t, 40, -30, c.zone)
				marked := date(t, c.marked)
				want, found := place.Date{}, false
				for days := 1; days <= 364 && !found; days++ {
					d := dial.DriftOn(p, marked, marked.Add(days))
					off := d.Equation
					if clock {
						off += d.Clock
					}
					if off.Abs() > limit {
						want, found = d.On, true
					}
				}
				got, ok := dial.MarksHold(p, marked, limit, clock)
				if ok != found || ok && got.On != want {
					t.Errorf("%s from %s, %v, clock %v: %v %v, want %v %v", c.zone, c.marked, limit, clock, got.On, ok, want, found)
				}
			}
		}
	}
}

// A style that points to the pole needs no marking day: its marks are right at
// every declination. 1e-6 minute: the halving.
func TestMarksOfATrueStyleHold(t *testing.T) {
	for _, latitude := range []float64{69.6, 46.09, 15, -45.87} {
		m := dial.Marked{Style: dial.PolarStyle(deg(latitude)), Declination: deg(-5)}
		for _, declination := range []float64{-20, 3, 20} {
			for hour := -60.0; hour <= 60; hour += 10 {
				if fast, ok := m.Off(deg(latitude), deg(declination), deg(hour)); ok {
					near(t, fmt.Sprintf("%g°, %g°, %g°", latitude, declination, hour), fast.Minutes(), 0, 1e-6)
				}
			}
		}
	}
}

// An upright stick's shadow lies on the mark of the hour at which the marking
// day's Sun had its azimuth. The hour is found here from azimuth and declination
// by spherical trigonometry: with z the angle at the zenith,
// sin q = cos φ · sin z / cos δ, and the side from zenith to pole closes the
// triangle by Napier's analogy tan(H/2) = cos((x−y)/2)/cos((x+y)/2)/tan((z+q)/2),
// x and y the polar distances of zenith and Sun. (Smart, Spherical Astronomy,
// from memory.) 1e-4 minute: the halving.
func TestUprightStickAgainstTriangle(t *testing.T) {
	const latitude, marked = 46.09, 5.0
	rad := math.Pi / 180
	m := dial.Marked{Style: dial.Style{Elevation: deg(90)}, Declination: deg(marked)}
	for _, declination := range []float64{-15, 0, 11.5, 23} {
		for _, hour := range []float64{-60, -45, -15, 15, 30, 60} {
			fast, ok := m.Off(deg(latitude), deg(declination), deg(hour))
			if !ok {
				if declination > -15 {
					t.Errorf("%g°, %g°: no mark", declination, hour)
				}
				continue
			}
			azimuth, _ := dial.SunDirection(deg(latitude), deg(declination), deg(hour))
			z := math.Abs(azimuth.Signed().Radians()) // at the zenith, from the pole to the Sun
			zenith, sun := (90-latitude)*rad, (90-marked)*rad
			q := math.Asin(math.Sin(zenith) * math.Sin(z) / math.Sin(sun))
			// Sides opposite to z and q are the Sun's and the zenith's polar distances.
			h := 2 * math.Atan2(math.Cos((sun-zenith)/2), math.Cos((sun+zenith)/2)*math.Tan((z+q)/2))
			want := (math.Copysign(h/rad, hour) - hour) * 4
			near(t, fmt.Sprintf("declination %g°, hour angle %g°", declination, hour), fast.Minutes(), want, 1e-4)
		}
	}
}

func TestNoMarkToRead(t *testing.T) {
	stick := dial.Marked{Style: dial.Style{Elevation: deg(90)}, Declination: deg(23)}
	if _, ok := stick.Off(deg(46), 0, deg(120)); ok {
		t.Error("a mark was read at night")
	}
	// At 10° north the June Sun stays in the north: the stick's noon shadow points
	// south, where in December none of June's marks is.
	if fast, ok := stick.Off(deg(10), deg(-23), 0); ok {
		t.Errorf("the December noon at 10° north reads %v off", fast)
	}
}

func ExampleMarksHold() {
	zone, _ := time.LoadLocation("America/Moncton")
	p := place.Place{Latitude: deg(46.09), Longitude: deg(-64.77), Zone: zone}
	end, ok := dial.MarksHold(p, place.Date{Year: 2027, Month: time.April, Day: 20}, 5*time.Minute, true)
	fmt.Println(end.On, end.Fast().Round(time.Second), ok)
	// Output:
	// 2027-07-02 -5m8s true
}

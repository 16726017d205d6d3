package journey_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/journey"
	"noonbook/compute/world"
)

func find(t *testing.T, name string) world.World {
	t.Helper()
	w, ok := world.Find(name)
	if !ok {
		t.Fatalf("no world %s", name)
	}
	return w
}

func days(d time.Duration) float64 { return d.Hours() / 24 }

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.6g, want %.6g ± %.2g", what, got, want, tolerance)
	}
}

func date(t *testing.T, s string) time.Time {
	t.Helper()
	d, err := time.Parse(time.DateOnly, s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Curtis, Orbital Mechanics, 3rd ed., examples 8.1 and 8.2, from memory: Earth to
// Mars, synodic period 777.9 d (years of 365.26 and 686.98 d give 779.9), way
// 258.8 d, Mars 44.57° ahead at departure. His
// orbits are 149.6 and 227.9 million km.
func Example() {
	mars, _ := world.Find("mars")
	way, _ := journey.To(mars)
	fmt.Printf("%.0f days, Mars %.0f° ahead, %.1f km/s, again after %.0f days\n",
		way.Time.Hours()/24, way.Ahead.Degrees(), way.Leave/1000, journey.Synodic(mars).Hours()/24)
	// Output: 259 days, Mars 44° ahead, 2.9 km/s, again after 780 days
}

// Time in days, speed after leaving as seen from the Sun in km/s: Bate, Mueller &
// White, table 8.3-2, from memory; half of the last digit, and 0.01 km/s for the
// orbits that the book takes. Mercury's speed is 22.28 in memory, which vis-viva does
// not give; 22.25 is by hand from 0.3871 au. Synodic periods in days: NASA fact sheets, from memory.
func TestTransfersOfTextbooks(t *testing.T) {
	const earth = 29.785 // km/s, √(μ/1 au)
	for name, want := range map[string]struct{ days, tolerance, speed, synodic float64 }{
		"mercury": {105.5, 0.05, 22.25, 115.88}, "venus": {146.1, 0.05, 27.28, 583.92}, "mars": {258.9, 0.06, 32.73, 779.94},
		"jupiter": {2.73 * 365.25, 4, 38.57, 398.88}, "saturn": {6.05 * 365.25, 6, 40.07, 378.09},
	} {
		w := find(t, name)
		way, ok := journey.To(w)
		if !ok {
			t.Fatalf("no way to %s", name)
		}
		near(t, name+": days", days(way.Time), want.days, want.tolerance)
		sign := 1.0
		if w.Orbit < find(t, "earth").Orbit {
			sign = -1
		}
		near(t, name+": speed", earth+sign*way.Leave/1000, want.speed, 0.011)
		near(t, name+": synodic", days(journey.Synodic(w)), want.synodic, 0.02)
	}
	mars, _ := journey.To(find(t, "mars"))
	near(t, "Mars ahead", mars.Ahead.Degrees(), 44.4, 0.2)
	near(t, "speed on arrival at Mars", mars.Arrive/1000, 2.65, 0.006) // by hand from 1.524 au
	near(t, "the Moon", days(journey.ToTheMoon()), 4.98, 0.02)         // BMW 7.2: about 120 h from a low orbit
}

// Launches to Mars and Venus, the agencies' dates, from memory. Real arcs are
// somewhat shorter or longer than half a turn, so a launch lies some weeks from the
// ideal day: 50 days, of a circle of 780 or 584. Akatsuki (2010-05-20) took an arc far
// longer than half a turn, 201 days, and left 72 days before the ideal day.
func TestWindowsAgainstLaunches(t *testing.T) {
	for _, c := range []struct{ goal, launch, craft string }{
		{"mars", "1996-11-07", "Mars Global Surveyor"}, {"mars", "2001-04-07", "Mars Odyssey"}, {"mars", "2003-06-10", "Spirit"},
		{"mars", "2005-08-12", "Mars Reconnaissance Orbiter"}, {"mars", "2007-08-04", "Phoenix"}, {"mars", "2011-11-26", "Curiosity"},
		{"mars", "2013-11-18", "MAVEN"}, {"mars", "2018-05-05", "InSight"}, {"mars", "2020-07-30", "Perseverance"},
		{"venus", "1962-08-27", "Mariner 2"}, {"venus", "1970-08-17", "Venera 7"}, {"venus", "2005-11-09", "Venus Express"},
	} {
		launch := date(t, c.launch)
		w, ok := journey.NextWindow(find(t, c.goal), launch.AddDate(0, 0, -120))
		if !ok {
			t.Errorf("no window for %s", c.craft)
			continue
		}
		off := days(launch.Sub(w.Leave))
		t.Logf("%s left %.0f days after the ideal day, %s", c.craft, off, w.Leave.Format(time.DateOnly))
		if math.Abs(off) > 50 {
			t.Errorf("%s left on %s, the window is %s", c.craft, c.launch, w.Leave.Format(time.DateOnly))
		}
	}
}

// The months that the agencies name for Mars: July 2020, September 2022, October and
// November 2024, November and December 2026; 30 days from their middle.
func TestMarsWindowsInTheirMonths(t *testing.T) {
	got := journey.Windows(find(t, "mars"), date(t, "2020-01-01"), 4)
	want := []string{"2020-07-20", "2022-09-10", "2024-10-15", "2026-11-15"}
	if len(got) != len(want) {
		t.Fatalf("%d windows", len(got))
	}
	for i, w := range got {
		if off := days(w.Leave.Sub(date(t, want[i]))); math.Abs(off) > 30 {
			t.Errorf("window %s, want about %s", w.Leave.Format(time.DateOnly), want[i])
		}
	}
}

// At a window the goal is where the way ends: half a turn from where it began.
func TestWindowsEndAtTheGoal(t *testing.T) {
	earth := find(t, "earth")
	for _, w := range world.All() {
		next, ok := journey.NextWindow(w, date(t, "2027-04-20"))
		if _, has := journey.To(w); !has {
			if ok {
				t.Errorf("a window to %s", w.Name)
			}
			continue
		}
		if !ok {
			t.Errorf("no window to %s", w.Name)
			continue
		}
		from, _ := earth.Heliocentric(next.Leave)
		to, _ := w.Heliocentric(next.Arrive)
		drift := 50.29 / 3600 * days(next.Arrive.Sub(next.Leave)) / 365.25
		off := math.Mod(to.Longitude.Degrees()-drift-from.Longitude.Degrees()+720, 360)
		near(t, w.Name+": the end of the way", off, 180, 0.2) // an hour of Mercury's 4° a day
		if next.Leave.Sub(date(t, "2027-04-20")) > 2*journey.Synodic(w) {
			t.Errorf("%s: the next window is %s", w.Name, next.Leave)
		}
	}
	if _, ok := journey.NextWindow(find(t, "pluto"), date(t, "2090-01-01")); ok {
		t.Error("a way to Pluto ends beyond the almanac")
	}
}

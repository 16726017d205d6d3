package strip_test

import (
	"math"
	"testing"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// Proxima Centauri is 4.2465 light years off and 268 550 au, a light year is
// 63 241 au and 9.4607e12 km, light takes 1.28 s to the Moon: from memory, to
// half of the last digit, the au to 5.
func TestFarPlaces(t *testing.T) {
	near(t, "star, ly", float64(strip.NearestStar/strip.LightYear), 4.2465, 0.00005)
	near(t, "star, au", float64(strip.NearestStar/quantity.AstronomicalUnit), 268550, 5)
	near(t, "light year, au", float64(strip.LightYear/quantity.AstronomicalUnit), 63241, 0.5)
	near(t, "light year, km", strip.LightYear.Kilometres(), 9.4607e12, 0.00005e12)
	near(t, "Moon, s", strip.LightTime(strip.ToTheMoon).Seconds(), 1.28, 0.005)
	far := strip.Outskirts()
	for i := 1; i < len(far); i++ {
		if far[i].Distance <= far[i-1].Distance {
			t.Errorf("%s comes after %s", far[i].Name, far[i-1].Name)
		}
	}
}

// Where an inch is 100 000 miles the Moon is 2.4 inches from the Earth and the
// nearest star 4000 miles away: G. Ottewell, The thousand-yard model, from
// memory. Half of his last digits; his star at 4.22 light years is nearer by 1 %.
func TestMoonAndStarOfThePeppercorn(t *testing.T) {
	const inch = quantity.Length(0.0254)
	s := strip.Strip{Squares: 36000, Square: inch, Scale: 100000 * mile}
	near(t, "Moon, in", float64(s.OnPaper(strip.ToTheMoon)/inch), 2.4, 0.05)
	near(t, "star, miles", float64(s.OnPaper(strip.NearestStar)/mile), 4000, 100)
}

// Voyager 1 makes 3.57 au a year (NASA, from memory; 16.9 km/s is rounded to
// 0.3 %), so 8.4 years to Neptune's distance and 75 000 years to the star.
func TestYears(t *testing.T) {
	voyager := strip.Crafts()[0]
	near(t, "an au", strip.Years(quantity.AstronomicalUnit, voyager.Speed), 1/3.57, 0.003/3.57)
	near(t, "star", strip.Years(strip.NearestStar, voyager.Speed), 75000, 500)
	near(t, "a light year by light", strip.Years(strip.LightYear, 299792458), 1, 1e-12)
}

// One degree of a great circle is 60 nautical miles, 111.1 km, to 0.1 % on this
// sphere; a quarter of the Earth north of the equator is the pole, half of it is
// the antipode, from the pole every way is south.
func TestLanding(t *testing.T) {
	deg := quantity.Degrees
	for _, c := range []struct {
		name             string
		lat, lon, toward float64
		way              quantity.Length
		wantLat, wantLon float64
	}{
		{"a degree north", 46, -64, 0, 111.195e3, 47, -64},
		{"a degree east on the equator", 0, 179.5, 90, 111.195e3, 0, -179.5},
		{"to the pole", 0, 10, 0, strip.EarthRound / 4, 90, math.NaN()},
		{"antipode", 30, 20, 77, strip.EarthRound / 2, -30, -160},
		{"once round", 30, 20, 77, strip.EarthRound, 30, 20},
		{"from the pole", 90, 0, 180, strip.EarthRound / 8, 45, 0},
		{"nowhere", -12, 34, 200, 0, -12, 34},
	} {
		lat, lon := strip.Landing(deg(c.lat), deg(c.lon), deg(c.toward), c.way)
		near(t, c.name+", latitude", lat.Degrees(), c.wantLat, 1e-4)
		if !math.IsNaN(c.wantLon) {
			near(t, c.name+", longitude", (lon - deg(c.wantLon)).Signed().Degrees(), 0, 1e-4)
		}
	}
}

func TestRoundUp(t *testing.T) {
	for x, want := range map[float64]float64{14.99: 15, 15: 15, 15.01: 20, 1: 1, 9: 10, 0.0012: 0.0015, 6.1e7: 8e7, 0: 0, -3: 0} {
		near(t, "round", strip.RoundUp(x), want, want*1e-12)
	}
	near(t, "endless", strip.RoundUp(math.Inf(1)), 0, 0)
}

// The long story told as one year, as classrooms do with 365 squares: the
// Cambrian about 18 November, the dinosaurs' end on 26 December, people in the
// last 40 minutes. Common practice, no source.
func TestStoryAsOneYear(t *testing.T) {
	s := newStrip(t, 365, "neptune")
	newYear := time.Date(2023, 1, 1, 0, 0, 0, 0, time.UTC)
	for _, m := range s.Moments(place.Date{Year: 2027, Month: time.April, Day: 12}) {
		at := newYear.Add(time.Duration(m.Squares * 24 * float64(time.Hour)))
		switch m.Name {
		case "first_solids":
			near(t, "beginning", m.Squares, 0, 1e-9)
		case "many_animals":
			near(t, "Cambrian", float64(at.YearDay()), float64(time.Date(2023, 11, 18, 0, 0, 0, 0, time.UTC).YearDay()), 1)
		case "dinosaurs_end":
			if at.Format("2 January") != "26 December" {
				t.Errorf("the dinosaurs end on %v", at)
			}
		case "people":
			minutes := (365 - m.Squares) * 24 * 60
			near(t, "people, minutes", minutes, 36, 4) // 315 ± 34 thousand years
		}
		near(t, m.Name, m.Before.Millimetres(), (365-m.Squares)*110, 1e-6)
	}
}

// People begin some 2 mm before the end of 33 m: 33 m · 315 000/4567.3 million.
func TestPeopleOnTheStrip(t *testing.T) {
	s := newStrip(t, 300, "neptune")
	near(t, "people, mm", s.Ago(315e3).Millimetres(), 2.28, 0.005)
	near(t, "years a square", s.Years(), 15.224e6, 0.001e6)
	story := strip.Story(place.Date{Year: 2027, Month: time.April, Day: 12})
	for i, e := range story {
		if e.Source == "" || i > 0 && e.Years >= story[i-1].Years {
			t.Errorf("%s is out of order or without a source", e.Name)
		}
	}
}

func TestSpaceAge(t *testing.T) {
	for _, c := range []struct {
		squares, last int
		scale         float64
	}{
		{300, 2027, 1}, {71, 2027, 1}, {70, 2027, 2}, {35, 2027, 5}, {3, 2027, 50}, {1, 2027, 100}, {300, 1957, 1},
	} {
		e, ok := newStrip(t, c.squares, "neptune").SpaceAge(c.last)
		if !ok || e.YearsASquare != c.scale || e.SquaresNeeded > float64(c.squares) {
			t.Errorf("%d squares to %d: %+v", c.squares, c.last, e)
		}
	}
	if _, ok := newStrip(t, 300, "neptune").SpaceAge(1956); ok {
		t.Error("the space age ends before it begins")
	}
	e, _ := newStrip(t, 300, "neptune").SpaceAge(2027)
	for _, c := range []struct {
		date place.Date
		want float64
	}{
		{place.Date{Year: 1957, Month: 1, Day: 1}, 0},
		{place.Date{Year: 1958, Month: 1, Day: 1}, 1},
		{place.Date{Year: 1957, Month: 10, Day: 4}, 276.0 / 365},
		{place.Date{Year: 2024, Month: 12, Day: 31}, 67 + 365.0/366},
	} {
		near(t, c.date.String(), e.Squares(c.date), c.want, 1e-9)
	}
	missions := strip.Missions()
	for i, m := range missions {
		if m.Date.After(strip.MissionsAsOf()) || m.Date.Year < 1957 || i > 0 && m.Date.Before(missions[i-1].Date) {
			t.Errorf("%s on %s is out of order", m.Name, m.Date)
		}
	}
}

// The telescope is counted from 30 November 1609: 416 birthdays on 29 November 2026, one
// more the day after, and as many in April 2027.
func TestTelescopesAge(t *testing.T) {
	for _, c := range []struct {
		now  place.Date
		want float64
	}{
		{place.Date{Year: 2026, Month: time.November, Day: 29}, 416},
		{place.Date{Year: 2026, Month: time.November, Day: 30}, 417},
		{place.Date{Year: 2027, Month: time.April, Day: 12}, 417},
		{place.Date{Year: 1609, Month: time.January, Day: 1}, 0},
	} {
		story := strip.Story(c.now)
		if last := story[len(story)-1]; last.Name != "telescope" || last.Years != c.want {
			t.Errorf("on %v: %s is %v years old, want %v", c.now, last.Name, last.Years, c.want)
		}
	}
}

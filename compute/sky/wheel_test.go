package sky

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

var wheelPlaces = []struct {
	latitude, longitude float64
	zone                string
}{
	{46.09, -64.77, "America/Moncton"},
	{-45.87, 170.5, "Pacific/Auckland"},
	{27.7, 85.3, "Asia/Kathmandu"},
	{69.6, 18.95, "Europe/Oslo"},
	{-33.9, 151.2, "Australia/Sydney"},
	{1.4, 103.8, "Asia/Singapore"},
	{0, 6.7, "Africa/Lagos"},
	{-15, -70, "America/La_Paz"},
	{1.87, -157.4, "Pacific/Kiritimati"},
	{90, 0, "UTC"},
	{-90, 180, "Antarctica/McMurdo"},
}

// laid is where a spot of the disc comes to stand under the mask when the date is
// laid at the hour, as a pupil turns it.
func laid(w Wheel, s Spot, d place.Date, clock time.Duration) Spot {
	return Spot{(s.Turn + w.Hour(clock) - w.Date(d)).Bearing(), s.Radius}
}

// shows reports whether a spot of the mask lies within the window.
func shows(w Wheel, s Spot) bool {
	from, to := w.Open(s.Turn)
	return from < to && s.Radius >= from && s.Radius <= to
}

// At ten random dates and hours a wheel shows a star in its window exactly where
// DomeAt, which is held against ERFA, has it above the horizon. Nearer to the horizon
// than 0.1° nothing is asked: a star's change with the year's precession, 0.01°, and
// the 0.04° by which a day of the disc differs from the mean of a sidereal day.
func TestWheelShowsWhatHasRisen(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 2027))
	for _, where := range wheelPlaces {
		zone, err := time.LoadLocation(where.zone)
		if err != nil {
			t.Fatal(err)
		}
		p := placeAt(where.latitude, where.longitude, zone)
		var wheels []Wheel
		for _, f := range Faces(p.Latitude) {
			wheels = append(wheels, WheelOf(p, 2027, f))
		}
		shown := 0
		for range 10 {
			date := place.Date{Year: 2027, Month: time.January, Day: 1}.Add(random.IntN(365))
			hour := time.Duration(15*60+random.IntN(18*60)) * time.Minute
			at := date.UTC().Add(hour - wheels[0].Clocks().Standard)
			dome := DomeAt(p, at)
			for _, s := range Stars() {
				height := dome.Star(s).Altitude - wheels[0].rim
				if math.Abs(height.Degrees()) < 0.1 {
					continue
				}
				seen := false
				for _, w := range wheels {
					if spot, ok := w.Disc(s.At(at)); ok && shows(w, laid(w, spot, date, hour)) {
						seen = true
					}
				}
				if seen {
					shown++
				}
				if seen != (height > 0) {
					t.Errorf("%v° %s %v: %s, %.2f° above the horizon, is shown: %v", where.latitude, date, hour, s.Designation, height.Degrees(), seen)
				}
			}
		}
		if shown < 1000 {
			t.Errorf("%v°: only %d stars are shown", where.latitude, shown)
		}
	}
}

// The hour scale is the Sun's: on the wheel the Sun itself stands within the equation
// of time (16.5 minutes, 4.1°) of the ray to the date, and noon by the Sun on the ray
// that points down.
func TestDatesStandWhereTheSunIs(t *testing.T) {
	zone, err := time.LoadLocation("America/Moncton")
	if err != nil {
		t.Fatal(err)
	}
	p := placeAt(46.09, -64.77, zone)
	w := WheelOf(p, 2027, North)
	for _, d := range w.Year() {
		sun := almanac.SunAt(d.UTC().Add(21*time.Hour - w.Clocks().Standard))
		spot, _ := w.Disc(Direction{sun.RightAscension, sun.Declination})
		equation := almanac.EquationOfTime(d.UTC().Add(21*time.Hour-w.Clocks().Standard)).Minutes() / 4
		// Apparent less mean time, so that the true Sun is ahead by it to the west.
		if off := (spot.Turn - w.Date(d) + quantity.Degrees(equation)).Signed().Degrees(); math.Abs(off) > 0.01 { // nutation
			t.Errorf("%s is %.3f° from the Sun", d, off)
		}
	}
	// 64.77° W on the meridian of 60° W: the Sun is over the meridian 19 min 5 s late.
	if got := w.Hour(12*time.Hour + 19*time.Minute + 5*time.Second).Signed().Degrees(); math.Abs(got) > 0.4 {
		t.Errorf("noon stands at %.2f°", got) // nine hours of 0.041° from the exact hour
	}
	if got := w.Hour(21*time.Hour + 19*time.Minute + 5*time.Second).Degrees(); math.Abs(got-225) > 0.02 { // 19 min of 0.041° an hour
		t.Errorf("nine in the evening stands at %.2f°", got)
	}
}

// A wheel of 2027 in the twenty years on either side: its dates by the mean Sun of the
// year, and a star by precession, stray as far as doc.go says and no farther.
func TestWheelInOtherYears(t *testing.T) {
	p := placeAt(46.09, -64.77, time.UTC)
	wheel := WheelOf(p, 2027, North)
	near, far := 0.0, 0.0
	for year := 2007; year <= 2047; year++ {
		other := WheelOf(p, year, North)
		for _, d := range wheel.Year() {
			off := (wheel.Date(d) - other.Date(place.Date{Year: year, Month: d.Month, Day: d.Day})).Signed().Degrees()
			far = max(far, math.Abs(off))
			if year >= 2024 && year <= 2030 {
				near = max(near, math.Abs(off))
			}
		}
	}
	t.Logf("dates: worst %.3f° within three years, %.3f° within twenty", near, far)
	if near > 0.75 || far > 0.9 {
		t.Errorf("dates stray by %.3f° within three years, %.3f° within twenty", near, far)
	}
	worst := 0.0
	at := time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)
	for _, s := range Stars() {
		worst = max(worst, apart(s.At(at).vector(), s.At(at.AddDate(20, 0, 0)).vector())/3600)
	}
	t.Logf("stars: worst %.3f°", worst)
	if worst > 0.3 {
		t.Errorf("stars stray by %.3f° in 20 years", worst)
	}
}

// The points of the horizon lie at the edge of the window, in the order in which they
// are read overhead, and the pole is the middle.
func TestHorizonOfTheWheel(t *testing.T) {
	for _, where := range wheelPlaces {
		p := placeAt(where.latitude, where.longitude, time.UTC)
		for _, face := range Faces(p.Latitude) {
			w := WheelOf(p, 2027, face)
			for azimuth := 0.5; azimuth < 360; azimuth += 7 {
				s, ok := w.Horizon(quantity.Degrees(azimuth))
				if !ok {
					continue
				}
				shown := 0 // of the four neighbours: some, not all
				const step = 1e-5
				for _, n := range []Spot{{s.Turn, s.Radius - step}, {s.Turn, s.Radius + step}, {s.Turn - step, s.Radius}, {s.Turn + step, s.Radius}} {
					if shows(w, n) {
						shown++
					}
				}
				if shown == 0 || shown == 4 {
					t.Errorf("%v°, face %d: azimuth %v° at %+v is not at the window's edge", where.latitude, face, azimuth, s)
				}
			}
			east, ok := w.Horizon(quantity.Degrees(90))
			left := east.Turn.Degrees() < 180 // clockwise from down
			if ok && math.Abs(where.latitude) < 89 && left != (face == North) {
				t.Errorf("%v°, face %d: east stands at %.1f°", where.latitude, face, east.Turn.Degrees())
			}
		}
	}
}

func TestClocksOfTheYear(t *testing.T) {
	for _, c := range []struct {
		zone     string
		standard time.Duration
		forward  time.Duration
		spans    []Dates
	}{
		// Canada: second Sunday of March to first Sunday of November, tz database.
		{"America/Moncton", -4 * time.Hour, time.Hour, []Dates{{date(3, 14), date(11, 6)}}},
		// New Zealand: first Sunday of April to last Sunday of September.
		{"Pacific/Auckland", 12 * time.Hour, time.Hour, []Dates{{date(1, 1), date(4, 3)}, {date(9, 26), date(12, 31)}}},
		{"Australia/Lord_Howe", 10*time.Hour + 30*time.Minute, 30 * time.Minute, []Dates{{date(1, 1), date(4, 3)}, {date(10, 3), date(12, 31)}}},
		{"Europe/Dublin", 0, time.Hour, []Dates{{date(3, 28), date(10, 30)}}},
		{"Asia/Kathmandu", 5*time.Hour + 45*time.Minute, 0, nil},
	} {
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		got := ClocksOf(placeAt(0, 0, zone), 2027)
		same := len(got.Spans) == len(c.spans)
		for i := range got.Spans {
			same = same && got.Spans[i] == c.spans[i]
		}
		if got.Standard != c.standard || got.Forward != c.forward || !same {
			t.Errorf("%s: %+v", c.zone, got)
		}
	}
}

func date(month time.Month, day int) place.Date {
	return place.Date{Year: 2027, Month: month, Day: day}
}

package stars_test

import (
	"math"
	rand "math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/sky"
)

// A cutOut is a wheel as a class has it in hand: the shapes of its two sheets, and
// nothing of how they were computed.
type cutOut struct {
	centre drawing.Point
	stars  []drawing.Point
	dates  []float64 // angle of each day of the year, clockwise from down, degrees
	hours  map[int]float64
	window []drawing.Point
	rimmed float64 // radius of the disc
}

// wheelsOf reads the sheets: first the disc of a face, then its mask.
func wheelsOf(t *testing.T, r result.Result) []cutOut {
	t.Helper()
	var wheels []cutOut
	for i := 0; i+1 < len(r.Sheets); i += 2 {
		w := cutOut{hours: map[int]float64{}}
		for _, s := range r.Sheets[i].Drawing.Shapes {
			switch {
			case s.Role == "cut disc":
				w.centre, w.rimmed = s.Points[0], s.Radius
			case s.Role == "star":
				w.stars = append(w.stars, s.Points[0])
			case s.Role == "month" || strings.HasPrefix(s.Role, "tick"):
				w.dates = append(w.dates, w.angle(s.Points[0]))
			}
		}
		hour := 12
		for _, s := range r.Sheets[i+1].Drawing.Shapes {
			switch s.Role {
			case "cut mask":
				if s.Points[0] != w.centre {
					t.Errorf("disc and mask have centres at %v and %v", w.centre, s.Points[0])
				}
			case "hour":
				w.hours[hour] = w.angle(s.Points[1])
				hour++
			case "cut window":
				w.window = s.Points
			}
		}
		if len(w.dates) != 365 || len(w.hours) != 24 || len(w.window) < 100 || len(w.stars) < 100 {
			t.Fatalf("%d dates, %d hours, %d corners, %d stars", len(w.dates), len(w.hours), len(w.window), len(w.stars))
		}
		wheels = append(wheels, w)
	}
	return wheels
}

func (w cutOut) angle(p drawing.Point) float64 {
	return math.Atan2(w.centre.X-p.X, p.Y-w.centre.Y) * 180 / math.Pi
}

// turned returns a point of the disc when the day's tick is laid at the hour.
func (w cutOut) turned(p drawing.Point, day int, hour float64) drawing.Point {
	whole := int(math.Floor(hour))
	by := w.hours[whole] - w.dates[day]
	if whole < 35 {
		step := math.Mod(w.hours[whole+1]-w.hours[whole]+540, 360) - 180
		by += step * (hour - float64(whole))
	}
	sin, cos := math.Sincos(by * math.Pi / 180)
	x, y := p.X-w.centre.X, p.Y-w.centre.Y
	return drawing.Point{X: w.centre.X + x*cos - y*sin, Y: w.centre.Y + x*sin + y*cos}
}

// shows reports whether a point is within the window that is cut out.
func (w cutOut) shows(p drawing.Point) bool {
	in := false
	for i, a := range w.window {
		b := w.window[(i+1)%len(w.window)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// underArm reports whether a point is beneath the pad round the pin or the arm.
func (w cutOut) underArm(p drawing.Point) bool {
	x, y := p.X-w.centre.X, p.Y-w.centre.Y
	return math.Hypot(x, y) < 4.6 || math.Abs(x) < 2.6 && y < 0
}

// At ten random dates and hours at every latitude, each star that is printed on a disc
// shows in the window that is cut out exactly when it has risen. The heights of the
// stars are those of sky.DomeAt, held against ERFA in its package; that of the moment
// itself is from the almanac. Within 0.4° of the horizon nothing is asked: the wheel is
// for stars of the middle of the year at a risen height of −34′ (refraction), a day's
// tick is read to 0.01 mm, and within 0.6° of the equator the window's edge is the
// plain horizon. Stars beneath the arm are left out, and must be few.
func TestWheelInTheHand(t *testing.T) {
	random := rand.New(rand.NewPCG(27, 4))
	places := 0
	for where := range entrytest.Schools {
		v := entrytest.Settings(t, where)
		p := school.Place(v)
		clocks := sky.ClocksOf(p, 2027)
		margin := 0.4
		if math.Abs(p.Latitude.Degrees()) < 0.6 {
			margin += 34.0 / 60
		}
		wheels := wheelsOf(t, reckon(t, where, "sky-wheel", "2027-04-20"))
		if got, want := len(wheels), len(sky.Faces(p.Latitude)); got != want {
			t.Errorf("%s has %d wheels", where, got)
		}
		asked, hidden, up := 0, 0, 0
		for range 10 {
			day, hour := random.IntN(365), 15+18*random.Float64()
			date := place.Date{Year: 2027, Month: time.January, Day: 1}.Add(day)
			at := date.UTC().Add(time.Duration(hour*float64(time.Hour)) - clocks.Standard)
			dome := sky.DomeAt(p, at)
			for face, w := range wheels {
				wheel := sky.WheelOf(p, 2027, sky.Faces(p.Latitude)[face])
				for _, s := range sky.Stars() {
					spot, ok := wheel.Disc(s.At(time.Date(2027, 7, 1, 0, 0, 0, 0, time.UTC)))
					printed, on := w.nearest(spot, ok)
					if !on {
						continue
					}
					height := dome.Star(s).Altitude.Degrees() + 34.0/60
					if math.Abs(height) < margin {
						continue
					}
					lies := w.turned(printed, day, hour)
					if w.underArm(lies) {
						hidden++
						continue
					}
					asked++
					if height > 0 {
						up++
					}
					if w.shows(lies) != (height > 0) {
						t.Errorf("%s, %s at %.2f h: %s, %.2f° above the horizon, is shown: %v", where, date, hour, s.Designation, height, w.shows(lies))
					}
				}
			}
		}
		if asked < 2000 || up < 1000 || hidden*10 > asked {
			t.Errorf("%s: %d asked, %d up, %d hidden", where, asked, up, hidden)
		}
		places++
	}
	if places < 10 {
		t.Errorf("%d places", places)
	}
}

// nearest returns the star that is printed where the spot says: on is false where the
// wheel has none there.
func (w cutOut) nearest(s sky.Spot, ok bool) (p drawing.Point, on bool) {
	if !ok {
		return p, false
	}
	want := drawing.Point{X: w.centre.X - 66*s.Radius*s.Turn.Sin(), Y: w.centre.Y + 66*s.Radius*s.Turn.Cos()}
	for _, star := range w.stars {
		if math.Hypot(star.X-want.X, star.Y-want.Y) < 0.02 {
			return star, true
		}
	}
	return p, false
}

// Hours and dates by what they mean: laid at an hour, the date of the evening is on the
// ray of the mean Sun, whose hour angle is that of the true Sun less the equation of
// time (good to 16.4 minutes, which is read from the almanac here). 0.05°: nutation and
// the difference of a mean day from a sidereal one.
func TestWheelScalesFollowTheSun(t *testing.T) {
	for _, where := range []string{"alder reach", "south", "half hour", "arctic"} {
		p := school.Place(entrytest.Settings(t, where))
		clocks := sky.ClocksOf(p, 2027)
		w := wheelsOf(t, reckon(t, where, "sky-wheel", "2027-04-20"))[0]
		sign := 1.0
		if p.Latitude < 0 {
			sign = -1
		}
		for day := 0; day < 365; day += 30 {
			at := place.Date{Year: 2027, Month: time.January, Day: 1}.Add(day).UTC().Add(21*time.Hour - clocks.Standard)
			sun := almanac.SunAt(at)
			hourAngle := (almanac.SiderealTime(at) + p.Longitude - sun.RightAscension - quantity.Hours(almanac.EquationOfTime(at).Hours())).Degrees()
			// On the mask the Sun is at −H clockwise from down, on a northern face.
			off := math.Mod(w.hours[21]+sign*hourAngle+900, 360) - 180
			entrytest.Near(t, where+": ray of nine o'clock", off, 0, 0.05)
		}
	}
}

// The bands of daylight time begin and end at the ticks of the change.
func TestWheelMarksDaylightTime(t *testing.T) {
	bands := func(where string) (list [][]drawing.Point, w cutOut) {
		r := reckon(t, where, "sky-wheel", "2027-04-20")
		for _, s := range r.Sheets[0].Drawing.Shapes {
			if s.Role == "daylight-season" {
				list = append(list, s.Points)
			}
		}
		return list, wheelsOf(t, r)[0]
	}
	list, w := bands("alder reach")
	if len(list) != 1 {
		t.Fatalf("%d bands", len(list))
	}
	// 14 March to 6 November 2027: days 72 and 309 of the year, counted from 0; tz database.
	entrytest.Near(t, "start", w.angle(list[0][0]), w.dates[72], 0.02)
	entrytest.Near(t, "end", w.angle(list[0][len(list[0])-1]), w.dates[309], 0.02)
	if list, _ := bands("south"); len(list) != 2 {
		t.Errorf("%d bands in the south", len(list))
	}
	if list, _ := bands("half hour"); len(list) != 0 {
		t.Errorf("%d bands where no clock changes", len(list))
	}
}

// Every wheel fits its sheet whole on both papers, so that nothing of it is tiled.
func TestWheelFitsBothPapers(t *testing.T) {
	for _, paper := range []string{"A4", "Letter"} {
		for where := range entrytest.Schools {
			r := reckon(t, where, "sky-wheel", "2027-04-20", "school.paper="+paper)
			for _, s := range r.Sheets {
				if s.Rows*s.Columns != 1 {
					t.Errorf("%s on %s is tiled", where, paper)
				}
				for _, shape := range s.Drawing.Shapes {
					for _, p := range shape.Points {
						if p.X-shape.Radius < 0 || p.X+shape.Radius > s.Drawing.Width || p.Y-shape.Radius < 0 || p.Y > s.Drawing.Height {
							t.Errorf("%s on %s: %s at %v is off the sheet", where, paper, shape.Role, p)
						}
					}
				}
			}
		}
	}
}

// Equal values give equal sheets, shape by shape in the same order: a pressing is the
// same bytes every time.
func TestWheelIsTheSameEveryTime(t *testing.T) {
	first := reckon(t, "alder reach", "sky-wheel", "2027-04-20")
	for range 8 {
		if !reflect.DeepEqual(reckon(t, "alder reach", "sky-wheel", "2027-04-20"), first) {
			t.Fatal("two evaluations differ")
		}
	}
}

// The star to try a wheel with is printed on every disc: where there are two faces,
// each reaches 30° beyond the equator, and the step to try stands on both masks. On 1
// July at the equator it was α Centauri, 61° south, which the northern disc has not.
func TestWheelIsTriedWithAStarOfBothDiscs(t *testing.T) {
	for _, latitude := range []string{"-19", "0", "19"} {
		for month := 1; month <= 12; month++ {
			day := place.Date{Year: 2027, Month: time.Month(month), Day: 1}
			r := reckon(t, "line north", "sky-wheel", day.String(), "school.latitude="+latitude)
			name := entrytest.English(t).Text(entrytest.Fact(t, r, "check_star"))
			i := slices.IndexFunc(sky.Stars(), func(s sky.Star) bool { return s.Name == name })
			if i < 0 {
				t.Errorf("%s°, %s: no star %q", latitude, day, name)
				continue
			}
			star := sky.Stars()[i]
			for face, w := range wheelsOf(t, r) {
				wheel := sky.WheelOf(school.Place(entrytest.Settings(t, "line north")), 2027, sky.Face(face))
				spot, ok := wheel.Disc(star.At(time.Date(2027, 7, 1, 0, 0, 0, 0, time.UTC)))
				if _, printed := w.nearest(spot, ok); !printed {
					t.Errorf("%s°, %s: %s is not on the disc of face %d", latitude, day, name, face)
				}
			}
		}
	}
}

// Where the date line lies between a school and the meridian of its clock, the two
// numbers of the working lie a whole day apart besides: at Apia −11:27 − 13:00 is
// −24:27, at 173° east in Adak's zone 11:32 + 10:00 is 21:32.
func TestWorkingOfWheelNamesTheDay(t *testing.T) {
	for _, c := range []struct {
		longitude, zone string
		day             bool
		ahead           string
	}{
		{"-171.77", "Pacific/Apia", true, "-27 min 5 s"},
		{"173", "America/Adak", true, "-2 h 28 min"},
		{"178.4", "Pacific/Fiji", false, "-6 min 24 s"},
	} {
		r := reckon(t, "alder reach", "sky-wheel", "2027-04-20",
			"school.latitude=-13.83", "school.longitude="+c.longitude, "school.time_zone="+c.zone)
		if entrytest.Says(r.Working, "sky-wheel.working_noon_day") != c.day {
			t.Errorf("%s: %s", c.zone, entrytest.Lines(t, r.Working))
		}
		if got := entrytest.Shown(t, r, "sun_ahead"); got != c.ahead {
			t.Errorf("%s: the Sun is ahead by %s, want %s", c.zone, got, c.ahead)
		}
	}
}

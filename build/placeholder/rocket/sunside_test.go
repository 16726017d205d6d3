package rocket_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

// places are schools of entrytest by their names in shadow-bearings.csv: north, south,
// both sides of the line, the arctic.
var places = map[string]string{
	"alder-reach": "alder reach", "south-island": "south", "equator-south": "line south", "equator-north": "line north", "arctic": "arctic",
}

// A vector is north, east, up.
type vector [3]float64

func toward(azimuth, altitude float64) vector {
	sin, cos := math.Sincos(azimuth * math.Pi / 180)
	up, level := math.Sincos(altitude * math.Pi / 180)
	return vector{level * cos, level * sin, up}
}

func between(a, b vector) float64 {
	return math.Acos(max(-1, min(1, a[0]*b[0]+a[1]*b[1]+a[2]*b[2]))) * 180 / math.Pi
}

// turned is the angle between two bearings, 0° to 180°.
func turned(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 360)) }

// At every place, season and hour of the table, by ERFA's Sun: whoever faces the
// launcher from a station has the Sun behind, 135° away along the horizon, and the own
// shadow ahead, 45° to one side. A rocket anywhere within the farthest landing is at
// least 135° − asin(landing/station) from the Sun along the horizon, which is more than
// 90°. So the Sun is never nearer than 90° less the angle of the sight; the page's own
// bound is no larger than what the Sun of the table leaves.
func TestStationsHaveTheSunBehind(t *testing.T) {
	least, far, seen := 180.0, 180.0, map[string]int{}
	for i, row := range entrytest.Reference(t, "shadow-bearings.csv", "") {
		where, ok := places[row["place"]]
		if !ok || i%5 > 0 { // some 160 of them
			continue
		}
		at := entrytest.Instant(t, row["utc"])
		local := at.In(school.Place(entrytest.Settings(t, where)).Zone)
		shadow, altitude := entrytest.Number(t, row["erfa"]), entrytest.Number(t, row["altitude_deg"])
		r := scipyAt(t, where, "field.margin_percent=60", "day="+local.Format("2006-01-02"), "time="+local.Format("15:04"),
			"school.latitude="+row["latitude_deg"], "school.longitude="+row["longitude_deg"])
		fact := func(name string) float64 { return entrytest.Fact(t, r, name).Number }
		if off := turned(fact("sun_bearing"), shadow+180) * math.Cos(altitude*math.Pi/180); off > 0.001 {
			t.Errorf("%s, %s: the Sun is at %.4f°, ERFA's at %.4f°", where, local, fact("sun_bearing"), math.Mod(shadow+180, 360))
		}
		top := fact("station_angle")
		for _, name := range []string{"station_one", "station_two"} {
			facing := fact(name) + 180
			entrytest.Near(t, "from the Sun to the launcher", turned(facing, shadow+180), 135, 0.02/math.Cos(altitude*math.Pi/180))
			entrytest.Near(t, "from the shadow to the launcher", turned(facing, shadow), 45, 0.02/math.Cos(altitude*math.Pi/180))
			sun := toward(shadow+180, altitude)
			for e := 0.0; e <= top; e += top / 8 {
				away := between(toward(facing, e), sun)
				least = min(least, away)
				if away < 90-e || away < fact("sun_apart")-0.01 {
					t.Errorf("%s, %s: %s sights %.1f° from the Sun, at %.1f°", where, local, name, away, e)
				}
			}
			for side := -1.0; side <= 1; side += 0.25 {
				x := math.Asin(side*fact("reach")/fact("station")) * 180 / math.Pi
				far = min(far, turned(facing+x, shadow+180))
			}
		}
		if one := math.Mod(fact("station_one")-fact("waiting")+720, 360); math.Abs(one-45) > 1e-6 {
			t.Errorf("%s: station 1 is %.3f° from the Sun; with the Sun behind it must be on the left", where, one)
		}
		limit := entrytest.Fact(t, r, "sight_limit")
		if high := fact("sun_high") == 1; high != (limit.Kind != say.Nothing) || altitude >= 70 && !high || altitude < 60 && high {
			t.Errorf("%s, %s: the Sun is %.1f° high, almost overhead: %v", where, local, altitude, high)
		}
		if says := entrytest.Says(r.Notes, "rocket-zone.note_overhead"); says != (limit.Kind != say.Nothing) || altitude >= 70 && !says || altitude < 60 && says {
			t.Errorf("%s, %s: the Sun is %.1f° high, sights end at %s", where, local, altitude, entrytest.Written(t, limit))
		} else if says {
			seen["overhead"]++
			// Even who faces the Sun then keeps 20° from it.
			if limit.Number > altitude-20 || limit.Number < top {
				t.Errorf("%s, %s: below a Sun at %.1f° sights end at %v°", where, local, altitude, limit.Number)
			}
		}
		if !entrytest.Says(r.Notes, "rocket-zone.note_shadow") || !entrytest.Says(r.Notes, "rocket-zone.note_drift") {
			t.Errorf("%s: nothing is said of shadows or of drift", where)
		}
		seen[where]++
	}
	if far < 90 {
		t.Errorf("a rocket within the farthest landing is %.1f° from the Sun along the horizon", far)
	}
	if len(seen) != 6 {
		t.Errorf("seen: %v", seen)
	}
	t.Logf("%v: sights to the top keep %.1f° from the Sun at least, sights to any rocket %.1f° along the horizon", seen, least, far)
}

// What the page says of drift, by plain geometry: a rocket 14 m up, seen from stations
// 46 m from the launcher at 45° to either side of the line to the Sun. Drift across that
// line changes the height from both stations by less than its square over the square
// of the distance; drift along it counts by its cosine in full.
func TestDriftOfTwoStations(t *testing.T) {
	const up, away = 14.0, 46.0
	seen := func(side, along, across float64) float64 { // elevation from a station
		x, y := away/math.Sqrt2, side*away/math.Sqrt2
		return math.Atan2(up, math.Hypot(x-along, y-across)) * 180 / math.Pi
	}
	height := func(along, across float64) float64 {
		r := reckon(t, "alder reach", "rocket-height", "2027-04-28", "baseline_m=46",
			"angle="+format(seen(1, along, across)), "second_angle="+format(seen(-1, along, across)), "class.eye_height_m=1.2")
		return entrytest.Fact(t, r, "two_stations").Number - 1.2
	}
	entrytest.Near(t, "without drift", height(0, 0), up, 1e-9)
	for _, drift := range []float64{-6, -2, 3, 6} {
		entrytest.Near(t, "drift to the side", height(0, drift)/up, 1, drift*drift/(away*away))
		entrytest.Near(t, "drift along the line to the Sun", height(drift, 0)/up, 1+drift/math.Sqrt2/away, 2*drift*drift/(away*away))
	}
}

// scipyAt is scipy's rocket at another school.
func scipyAt(t *testing.T, where string, more ...string) result.Result {
	t.Helper()
	return reckon(t, where, "rocket-zone", "2027-04-28", append(append([]string{}, scipys...), more...)...)
}

// The side of the Sun is that of three quarters through the lesson, on its day; of a
// time and a day that are told; of the Sun's noon on a page without a lesson, when it
// is in the south at Alder Reach and in the north at the southern school.
func TestHourOfTheLaunches(t *testing.T) {
	e, _ := entry.Find(entries(), "rocket-zone")
	settings := e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-28"))
	held := school.Calendar(settings, entrytest.Lessons).Held[1]
	if !held.Placed || held.To-held.From != 90*time.Minute {
		t.Fatalf("the lesson is held %v", held)
	}
	r := reckon(t, "alder reach", "rocket-zone", "2027-04-28")
	at := entrytest.Fact(t, r, "sun_time").Time
	want := held.From + 67*time.Minute + 30*time.Second
	if got := time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute + time.Duration(at.Second())*time.Second; got != want || at.Day() != held.Date.Day {
		t.Errorf("launches at %v, want %v on %v", at, want, held.Date)
	}
	at = entrytest.Fact(t, reckon(t, "alder reach", "rocket-zone", "2027-04-28", "time=14:05", "day=2027-05-03"), "sun_time").Time
	if got := at.Format("2006-01-02 15:04"); got != "2027-05-03 14:05" {
		t.Errorf("told 14:05 on 3 May, launches at %s", got)
	}
	for where, bearing := range map[string]float64{"alder reach": 180, "south": 0} {
		r := reckon(t, where, "rocket-zone", "2027-04-28", "lesson=0")
		if off := turned(entrytest.Fact(t, r, "sun_bearing").Number, bearing); off > 0.01 {
			t.Errorf("%s: at noon the Sun is %.3f° off", where, off)
		}
	}
	for _, day := range []string{"1949-12-31", "2101-01-01"} {
		if entrytest.Complaint(t, entries(), "rocket-zone", "2027-04-28", "day="+day) == "" {
			t.Errorf("the Sun of %s has a side", day)
		}
	}
}

// The side words of the note are those of somebody at the launcher with the Sun behind:
// a station whose bearing is less than half a turn clockwise from where they face is to
// their right. So it is at a school north and one south of the equator, in the morning and
// in the afternoon, in each language.
func TestSidesOfTheStations(t *testing.T) {
	sides := map[string]*regexp.Regexp{
		"en": regexp.MustCompile(`true bearing of (\d+)°.*station 1 half (left|right) at (\d+)°, station 2 half (left|right) at (\d+)°`),
		"fr": regexp.MustCompile(`azimut vrai de (\d+)°.*station 1 en biais à (gauche|droite), à (\d+)°, la station 2 en biais à (gauche|droite), à (\d+)°`),
	}
	right := map[string]bool{"right": true, "droite": true}
	for code, pattern := range sides {
		words, err := typeset.Language(code, false)
		if err != nil {
			t.Fatal(err)
		}
		for _, where := range []string{"alder reach", "south"} {
			for _, hour := range []string{"9:30", "15:30"} {
				r := reckon(t, where, "rocket-zone", "2027-04-28", "day=2027-04-28", "time="+hour)
				i := slices.IndexFunc(r.Notes, func(p say.Phrase) bool { return p.Key == "rocket-zone.note_sun" })
				if i < 0 {
					t.Fatalf("%s at %s: nothing is said of the Sun's side", where, hour)
				}
				text := strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(words.Line(r.Notes[i]))
				m := pattern.FindStringSubmatch(text)
				if m == nil {
					t.Fatalf("%s: %q has not the form of %s", code, text, pattern)
				}
				facing := entrytest.Number(t, m[1]) + 180
				for n, said := range [][2]string{{m[2], m[3]}, {m[4], m[5]}} {
					clockwise := math.Mod(entrytest.Number(t, said[1])-facing+720, 360)
					if (clockwise < 180) != right[said[0]] {
						t.Errorf("%s, %s at %s: station %d is called %s and is %.0f° clockwise from where one faces", code, where, hour, n+1, said[0], clockwise)
					}
				}
			}
		}
	}
}

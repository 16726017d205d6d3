package stars_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
)

const degree = math.Pi / 180

var fourSchools = []struct {
	school              string
	latitude, longitude float64
	meridian            float64 // of the standard clock
	saves               bool
}{
	{"alder reach", 46.09, -64.77, -60, true}, {"south", -45.87, 170.5, 180, true}, {"line north", 1.4, 103.8, 120, false}, {"arctic", 69.6, 18.95, 15, true},
}

// sunHeight is the Sun's altitude in degrees to some hundredths, without air: Meeus,
// Astronomical Algorithms, 2nd ed. 1998, ch. 25, the low accuracy, and ch. 13.
func sunHeight(at time.Time, latitude, longitude float64) float64 {
	days := at.Sub(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)).Hours() / 24
	m := (357.52911 + 0.98560028*days) * degree
	l := (280.46646 + 0.98564736*days + 1.9146*math.Sin(m) + 0.02*math.Sin(2*m)) * degree
	eps := 23.437 * degree
	declination := math.Asin(math.Sin(eps) * math.Sin(l))
	ra := math.Atan2(math.Cos(eps)*math.Sin(l), math.Cos(l))
	hour := (280.46062+360.98564737*days+longitude)*degree - ra
	return math.Asin(math.Sin(latitude*degree)*math.Sin(declination)+math.Cos(latitude*degree)*math.Cos(declination)*math.Cos(hour)) / degree
}

// The chart is held overhead: with north at the top east is on the left. Each star of
// ERFA's table (stars-horizontal.csv) that is up has a disc where it stands, in even
// steps of height from the middle; in a mirror image it has none.
func TestChartIsNotMirrored(t *testing.T) {
	found, mirrored := 0, 0
	sheets := map[string]drawing.Drawing{}
	for _, row := range entrytest.Reference(t, "stars-horizontal.csv", "") {
		altitude, azimuth := entrytest.Number(t, row["altitude_deg"]), entrytest.Number(t, row["azimuth_deg"])
		faint := row["star"] == "τ² Hya" || row["star"] == "ε Nor" // below magnitude 4.5
		if altitude < 5 || altitude > 85 || !strings.HasPrefix(row["utc"], "2027-04") || faint {
			continue
		}
		at := entrytest.Instant(t, row["utc"])
		key := row["place"] + row["utc"]
		d, ok := sheets[key]
		if !ok {
			// The clock shows minutes: longitudes are turned by the seconds that are left.
			shift := float64(at.Second()) / 240
			longitude := math.Remainder(entrytest.Number(t, row["longitude_deg"])+shift, 360)
			r := reckon(t, "alder reach", "sky-map", at.Format(time.DateOnly), "school.time_zone=UTC", "time="+at.Format("15:04"),
				"school.latitude="+row["latitude_deg"], fmt.Sprintf("school.longitude=%.6f", longitude), "limit=4.5")
			d = r.Drawings[0]
			sheets[key] = d
			labels := entrytest.Labels(t, d)
			if !(labels["north"].Y < labels["south"].Y && labels["east"].X < labels["west"].X && labels["north-east"].X < labels["north-west"].X && labels["north-east"].Y < labels["south-east"].Y) {
				t.Fatalf("%s: directions stand at %v", key, labels)
			}
		}
		dome := entrytest.Roled(d, "dome")[0]
		away := dome.Radius * (90 - altitude) / 90
		near := func(side float64) bool {
			x, y := dome.Points[0].X-side*away*math.Sin(azimuth*degree), dome.Points[0].Y-away*math.Cos(azimuth*degree)
			for _, s := range entrytest.Roled(d, "star") {
				if math.Hypot(s.Points[0].X-x, s.Points[0].Y-y) < 0.35 {
					return true
				}
			}
			return false
		}
		if near(1) {
			found++
		} else {
			t.Errorf("%s has no star at %.1f°, %.1f° high, for %s", key, azimuth, altitude, row["star"])
		}
		if math.Abs(math.Sin(azimuth*degree)) > 0.1 && near(-1) {
			mirrored++
		}
	}
	if found < 40 || mirrored > found/10 {
		t.Errorf("%d stars stand right, %d mirrored", found, mirrored)
	}
}

// How dark it is follows from the Sun's height: 0°, −6° and −12° are the bounds. The
// height told is as seen where the Sun is up, like the table's: lifted by Sæmundsson
// 1986, Meeus, Astronomical Algorithms, 2nd ed. 1998, equation 16.4.
func TestDarknessOnBothSides(t *testing.T) {
	said := map[string]int{}
	for _, w := range fourSchools {
		for _, clock := range []string{"6:00", "7:00", "12:00", "17:00", "18:00", "18:40", "19:00", "19:20", "19:40", "20:00", "20:20", "20:40", "21:00", "21:30", "22:00", "23:30"} {
			r := reckon(t, w.school, "sky-map", "2027-04-20", "time="+clock)
			at := entrytest.Fact(t, r, "time").Time
			h := sunHeight(at, w.latitude, w.longitude)
			seen := h
			if lifted := h + 1.02/60/math.Tan((h+10.3/(h+5.11))*degree); h > -1 && lifted > 0 {
				seen = lifted
			}
			entrytest.Near(t, w.school+" "+clock+": Sun", entrytest.Fact(t, r, "sun_altitude").Number, seen, 0.1)
			want := "night"
			switch {
			case h > -0.55+0.1: // refraction lifts it by half a degree
				want = "day"
			case h > -6:
				want = "bright twilight"
			case h > -12:
				want = "twilight, with the brighter stars"
			}
			if math.Abs(h+0.5) < 0.3 || math.Abs(h+6) < 0.1 || math.Abs(h+12) < 0.1 {
				continue
			}
			said[want]++
			if got := entrytest.Shown(t, r, "dark"); got != want {
				t.Errorf("%s at %s: the Sun at %.2f° is %s", w.school, clock, h, got)
			}
			for key, now := range map[string]bool{"sky-map.sun_is_up": want == "day", "sky-map.bright_sky": want == "bright twilight"} {
				if got := entrytest.Says(r.Warnings, key); got != now {
					t.Errorf("%s at %s, the Sun at %.2f°: %s is said: %v", w.school, clock, h, key, got)
				}
			}
			if want == "day" {
				entrytest.Tells(t, r.Warnings, "sky-map.sun_is_up", "Never look for it near the Sun")
			}
			entrytest.Tells(t, r.Cautions, "caution.evening", "with grown-ups", "Nobody ever looks at the Sun")
		}
	}
	if len(said) != 4 {
		t.Errorf("words that were tried: %v", said)
	}
}

// The pole of the sky that is up is that of the hemisphere, as high as the latitude;
// on both sides of 5° and 85° the words say so.
func TestPoleBySide(t *testing.T) {
	for latitude, want := range map[string]struct{ direction, find string }{
		"46.09": {"north", ""}, "-45.87": {"south", ""}, "4.9": {"north", "so near the equator"}, "-4.9": {"south", "so near the equator"},
		"5.1": {"north", ""}, "-5.1": {"south", ""}, "84.9": {"north", ""}, "85.1": {"north", "the pole of the sky is overhead"}, "-85.1": {"south", "the pole of the sky is overhead"},
	} {
		r := reckon(t, "alder reach", "sky-map", "2027-04-20", "school.latitude="+latitude, "time=21:00")
		if got := entrytest.Shown(t, r, "pole_direction"); got != want.direction {
			t.Errorf("%s: the pole is in the %s", latitude, got)
		}
		entrytest.Near(t, latitude+": pole", entrytest.Fact(t, r, "pole_height").Number, math.Abs(entrytest.Number(t, latitude)), 1e-9)
		find := entrytest.Shown(t, r, "find_pole")
		if want.find != "" && !strings.HasPrefix(find, want.find) {
			t.Errorf("%s: %s", latitude, find)
		}
		if want.find == "" && (strings.Contains(find, "south") != (want.direction == "south") || strings.HasPrefix(find, "so near") || strings.HasSuffix(find, "overhead")) {
			t.Errorf("%s: %s", latitude, find)
		}
	}
}

// The mean Sun is ahead of the clock east of the clock's meridian: 4 minutes a degree.
func TestWheelsClockBySide(t *testing.T) {
	for _, w := range fourSchools {
		r := reckon(t, w.school, "sky-wheel", "2027-04-20")
		ahead := (w.longitude - w.meridian) * 240
		entrytest.Near(t, w.school+": mean Sun", entrytest.Fact(t, r, "sun_ahead").Number, ahead, 0.5)
		if got := entrytest.Shown(t, r, "sun_ahead"); !strings.HasPrefix(got, map[bool]string{true: "+", false: "-"}[ahead > 0]) {
			t.Errorf("%s: %v s is printed %s", w.school, ahead, got)
		}
		if got := entrytest.Fact(t, r, "saving").Number; (got == 3600) != w.saves || (got == 0) == w.saves {
			t.Errorf("%s: daylight time is %v s ahead", w.school, got)
		}
		entrytest.Near(t, w.school+": pin", entrytest.Fact(t, r, "pole_height").Number, math.Abs(w.latitude), 1e-9)
		entrytest.Near(t, "turn a day", entrytest.Fact(t, r, "turn_a_day").Number, 0.98565, 1e-5)
		faces := entrytest.Shown(t, r, "faces")
		if want := map[bool]string{true: "one face, about the north pole", false: "one face, about the south pole"}[w.latitude > 0]; math.Abs(w.latitude) > 20 && !strings.HasPrefix(faces, want) || math.Abs(w.latitude) < 20 && !strings.HasPrefix(faces, "two faces") {
			t.Errorf("%s: %s", w.school, faces)
		}
		entrytest.Tells(t, r.Cautions, "caution.evening", "nobody is left alone")
	}
}

// A wheel is read with the direction that one faces at the bottom. On the northern
// face, whose pin is the north pole, south is at the bottom and east on the left; the
// stars turn anticlockwise round the pin, and so run the hours. The southern face is
// the other way about. Dates run against the hours, so that the same stars come
// earlier each evening.
func TestWheelsAreNotMirrored(t *testing.T) {
	for _, w := range fourSchools {
		r := reckon(t, w.school, "sky-wheel", "2027-04-20")
		for i := 0; i+1 < len(r.Sheets); i += 2 {
			disc, mask := r.Sheets[i].Drawing, r.Sheets[i+1].Drawing
			northern := w.latitude > 0
			if len(r.Sheets) == 4 {
				northern = i == 0
			}
			pin := entrytest.Roled(mask, "hole")[0].Points[0]
			labels := entrytest.Labels(t, mask)
			bottom, top := "south", "north"
			if !northern {
				bottom, top = top, bottom
			}
			if p, ok := labels[bottom]; ok && p.Y < pin.Y {
				t.Errorf("%s: %s is above the pin", w.school, bottom)
			}
			if p, ok := labels[top]; ok && p.Y > pin.Y {
				t.Errorf("%s: %s is below the pin", w.school, top)
			}
			east, west := labels["east"], labels["west"]
			if (east.X < west.X) != northern || east == west {
				t.Errorf("%s, northern %v: east at %v, west at %v", w.school, northern, east, west)
			}
			// angles clockwise on the paper, about the pin
			turn := func(from, to drawing.Point) float64 {
				angle := func(p drawing.Point) float64 { return math.Atan2(p.X-pin.X, pin.Y-p.Y) / degree }
				return math.Remainder(angle(to)-angle(from), 360)
			}
			hours := turn(labels["21"], labels["23"])
			if (hours < 0) != northern {
				t.Errorf("%s, northern %v: from 21 to 23 the scale runs by %.0f° clockwise", w.school, northern, hours)
			}
			dates := entrytest.Labels(t, disc)
			if months := turn(dates["April"], dates["May"]); (months > 0) != northern {
				t.Errorf("%s, northern %v: from April to May the scale runs by %.0f° clockwise", w.school, northern, months)
			}
			arrows := entrytest.Roled(mask, "turn-arrow")
			if len(arrows) > 0 {
				arc, head := arrows[0].Points, arrows[1].Points
				if way := turn(arc[0], arc[len(arc)-1]); (way < 0) != northern {
					t.Errorf("%s, northern %v: the arrow runs by %.0f° clockwise", w.school, northern, way)
				}
				if tip := arc[len(arc)-1]; entrytest.Apart(head[1], tip) > 1e-6 {
					t.Errorf("%s: the arrow's head is at %v, its end at %v", w.school, head[1], tip)
				}
			} else {
				want := "clockwise"
				if northern {
					want = "anticlockwise"
				}
				said := false
				for text := range labels {
					said = said || strings.Contains(text, "the stars turn "+want)
				}
				if !said && math.Abs(w.latitude) > 72 {
					t.Errorf("%s: nothing says that the stars turn %s", w.school, want)
				}
			}
		}
	}
	for latitude, want := range map[string]string{"73": "anticlockwise", "-73": "clockwise"} {
		mask := reckon(t, "alder reach", "sky-wheel", "2027-04-20", "school.latitude="+latitude).Sheets[1].Drawing
		said := false
		for text := range entrytest.Labels(t, mask) {
			said = said || strings.Contains(text, "the stars turn "+want)
		}
		if !said {
			t.Errorf("at %s° nothing says that the stars turn %s", latitude, want)
		}
	}
}

// The star to try the wheel with stands near the meridian: due south or north, or
// within a wind of it.
func TestCheckStarIsNearTheMeridian(t *testing.T) {
	for _, w := range fourSchools {
		for _, date := range []string{"2027-01-15", "2027-04-20", "2027-07-10", "2027-10-05"} {
			r := reckon(t, w.school, "sky-wheel", date)
			direction := entrytest.Shown(t, r, "check_direction")
			if high := entrytest.Fact(t, r, "check_altitude").Number; high < 15 || !strings.HasPrefix(direction, "south") && !strings.HasPrefix(direction, "north") && high < 60 {
				t.Errorf("%s on %s: %s stands %v° high in the %s", w.school, date, entrytest.Shown(t, r, "check_star"), high, direction)
			}
		}
	}
}

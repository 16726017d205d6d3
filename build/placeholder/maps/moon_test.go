package maps

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

func reckon(t *testing.T, where, name, date string, given ...string) result.Result {
	t.Helper()
	return entrytest.Reckon(t, Entries(), where, name, date, given...)
}

func viewOf(t *testing.T, where, date string, given ...string) moonView {
	t.Helper()
	values, complaint := entrytest.Pairs(moonMap(), given)
	if complaint != "" {
		t.Fatal(complaint)
	}
	m, err := moonViewOf(moonMap().Complete(entrytest.Settings(t, where), values, entrytest.Day(t, date)))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func shapesOf(d drawing.Drawing, role string) (list []drawing.Shape) {
	for _, s := range d.Shapes {
		if s.Role == role {
			list = append(list, s)
		}
	}
	return list
}

// As the Moon is seen the shaded part is away from the lit side of compute/almanac, which is
// held to other libraries, and as large as what is not lit; before and after the quarters, in
// the north, in the south and at the equator.
func TestNightIsAwayFromTheSun(t *testing.T) {
	for where := range entrytest.Schools {
		for _, date := range []string{"2027-04-10", "2027-04-13", "2027-04-17", "2027-04-24", "2027-04-28"} {
			m := viewOf(t, where, date, "time=20:00", "turn=seen")
			d, on := m.picture()
			night := shapesOf(d, "night-side grid")
			if len(night) != 1 {
				t.Fatalf("%s, %s: %d shaded parts", where, date, len(night))
			}
			area, x, y := 0.0, 0.0, 0.0
			points := night[0].Points
			for i, a := range points {
				b := points[(i+1)%len(points)]
				cross := a.X*b.Y - b.X*a.Y
				area, x, y = area+cross/2, x+(a.X+b.X)*cross/6, y+(a.Y+b.Y)*cross/6
			}
			if share := math.Abs(area) / (math.Pi * on.radius * on.radius); math.Abs(share-(1-almanac.Moon.AspectAt(m.at).Lit)) > 0.02 { // parallax turns it by 1°
				t.Errorf("%s, %s: %.3f is shaded, %.3f is lit", where, date, share, almanac.Moon.AspectAt(m.at).Lit)
			}
			away := math.Atan2(x/area-on.centre.X, -(y/area - on.centre.Y))
			off := almanac.Moon.LimbFrom(m.place, m.at).Lean.Radians() + math.Pi - away
			if off = math.Remainder(off, 2*math.Pi) * 180 / math.Pi; math.Abs(off) > 0.5 {
				t.Errorf("%s, %s: the night leans %.1f° from the dark side", where, date, off)
			}
		}
	}
}

// With north up Mare Crisium is to the right and Tycho below; in the southern half of the
// Earth south is up and both are on the other side. Between the tropics the map is as seen.
// Nowhere is it mirrored.
func TestMoonMapIsTurned(t *testing.T) {
	for where, want := range map[string]string{"alder reach": "north", "arctic": "north", "south": "south", "south pole": "south", "equator": "seen", "far east": "seen"} {
		m := viewOf(t, where, "2027-04-13")
		if m.turn != want {
			t.Errorf("%s: turned as %s, want %s", where, m.turn, want)
		}
		crisium, _ := globe.Find(globe.Moon, "Mare Crisium")
		tycho, _ := globe.Find(globe.Moon, "Tycho")
		c, y := m.View.At(crisium.At), m.View.At(tycho.At)
		if (want == "north" && (c.X < 0.7 || y.Y < 0.5)) || (want == "south" && (c.X > -0.7 || y.Y > -0.5)) {
			t.Errorf("%s: Crisium at %.2f, Tycho at %.2f", where, c.X, y.Y)
		}
		if cross := c.X*y.Y - c.Y*y.X; cross <= 0 {
			t.Errorf("%s: the map is mirrored", where)
		}
	}
	r := reckon(t, "south", "moon-map", "2027-04-13")
	for name, want := range map[string]string{"up": "the Moon's south is up", "north": "bottom", "east": "left"} {
		if got := entrytest.Shown(t, r, name); strings.ReplaceAll(got, "’", "'") != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}

// At first quarter, 2027 April 13 at 22:57 UT (Meeus's series and the reference tables have
// it), the terminator runs down the middle: Hipparchus and Albategnius east of it have just
// got their Sun, and so have the Apennines; Copernicus and Tycho are in the night, Langrenus
// has a high Sun (common practice, no source).
func TestNearTheLineAtFirstQuarter(t *testing.T) {
	r := reckon(t, "alder reach", "moon-map", "2027-04-13", "time=20:30")
	var names []string
	last := 0.0
	for _, row := range r.Tables[0].Rows {
		names = append(names, row.Cells[0].Plain)
		sun := row.Cells[3].Number
		if sun < last || sun > lowSun {
			t.Errorf("%s: the Sun is %.1f° high after %.1f°", row.Cells[0].Plain, sun, last)
		}
		last = sun
	}
	for _, want := range []string{"Hipparchus", "Albategnius", "Montes Apenninus", "Aristillus"} {
		if !slices.Contains(names, want) {
			t.Errorf("no %s in %v", want, names)
		}
	}
	for _, not := range []string{"Copernicus", "Tycho", "Langrenus", "Mare Serenitatis"} {
		if slices.Contains(names, not) {
			t.Errorf("%s in %v", not, names)
		}
	}
	if got := entrytest.Fact(t, r, "near_line").Plain; got != "Hipparchus" {
		t.Errorf("begin with %s", got)
	}
}

// Two minutes of arc are 223 km at the Moon's mean distance: bare eyes show Clavius, 231 km
// wide, binoculars of 8 times what is 28 km wide; a cliff as thin as Rupes Recta takes more.
func TestToolsShowWhatIsWideEnough(t *testing.T) {
	list := tools(form.Values{school.StockFrontLensFocalMM.Name(): 600.0, school.StockEyeLensFocalMM.Name(): 30.0})
	for _, c := range []struct {
		arcmin float64
		want   string
	}{{2.07, "moon-map.by_eye"}, {1.5, "moon-map.by_binoculars"}, {0.26, "moon-map.by_binoculars"}, {0.2, "moon-map.by_telescope"}, {0.03, "moon-map.by_more"}} {
		if got := toolFor(list, c.arcmin).Phrase.Key; got != c.want {
			t.Errorf("%v′: %s, want %s", c.arcmin, got, c.want)
		}
	}
}

func TestMoonMapWarns(t *testing.T) {
	for _, c := range []struct{ date, time, want string }{
		{"2027-04-06", "20:00", "moon-map.new"}, // new Moon at 23:51 UT
		{"2027-04-13", "9:00", "moon-map.down"},
		{"2027-04-13", "17:00", "moon-map.by_day"},
		{"2027-04-13", "21:00", ""},
	} {
		r := reckon(t, "alder reach", "moon-map", c.date, "time="+c.time)
		got := ""
		if len(r.Warnings) > 0 {
			got = r.Warnings[0].Key
		}
		if got != c.want {
			t.Errorf("%s %s: %q, want %q", c.date, c.time, got, c.want)
		}
		if worth := entrytest.Fact(t, r, "worth").Number == 1; worth != (c.want == "") {
			t.Errorf("%s %s: worth looking %v", c.date, c.time, worth)
		}
	}
	if r := reckon(t, "north pole", "moon-map", "2027-04-24", "time=12:00"); !entrytest.Warned(r, "moon-map.stays_down") {
		t.Errorf("at the pole with the Moon in the south: %v", r.Warnings)
	}
}

// The moment of an evening without a time: no later than half past nine, by the almanac's
// twilight dark enough where it is by then, and no quarter of an hour between has the Moon
// higher by more than it moves in one.
func TestMoonMomentIsAnEvening(t *testing.T) {
	bright := 0
	for where := range entrytest.Schools {
		for _, date := range []string{"2027-01-20", "2027-04-13", "2027-06-12", "2027-10-08"} {
			m := viewOf(t, where, date)
			day := entrytest.Day(t, date)
			last := m.place.Clock(day, 21, 30)
			if m.at.After(last) || m.at.Before(m.place.Clock(day, 12, 0)) {
				t.Errorf("%s, %s: %v", where, date, m.at)
			}
			if almanac.SunFrom(m.place, last).Altitude > almanac.CivilTwilight {
				bright++
				if !m.at.Equal(last) {
					t.Errorf("%s, %s: %v, and it is bright at half past nine", where, date, m.at)
				}
				continue
			}
			if m.sun > almanac.CivilTwilight+1e-4 {
				t.Errorf("%s, %s: the Sun is %.1f° high at %v", where, date, m.sun.Degrees(), m.at)
			}
			for at := last; almanac.SunFrom(m.place, at).Altitude <= almanac.CivilTwilight && at.After(m.place.Clock(day, 17, 30)); at = at.Add(-15 * time.Minute) {
				if h := almanac.MoonFrom(m.place, at).Altitude; h > m.where.Altitude+quantity.Degrees(4) {
					t.Errorf("%s, %s: at %v the Moon is %.0f° high, at %v %.0f°", where, date, m.at, m.where.Altitude.Degrees(), at, h.Degrees())
				}
			}
		}
	}
	if bright < 2 || bright > 20 {
		t.Errorf("%d evenings are bright", bright)
	}
}

func TestNamesOfWays(t *testing.T) {
	// By the haversine formula: 0.67416° N 23.47314° E to 20.1911° N 30.7723° E.
	rad := math.Pi / 180
	h := math.Pow(math.Sin((20.1911-0.67416)/2*rad), 2) + math.Cos(0.67416*rad)*math.Cos(20.1911*rad)*math.Pow(math.Sin((30.7723-23.47314)/2*rad), 2)
	want := 2 * 1737.4 * math.Asin(math.Sqrt(h))
	r := reckon(t, "alder reach", "moon-map", "2027-04-13")
	if got := entrytest.Fact(t, r, "way").Number; math.Abs(got-want) > 0.01 {
		t.Errorf("%v km, want %v", got, want)
	}
	if got := entrytest.Fact(t, r, "way_walk").Number; math.Abs(got-want/4/6) > 0.01 {
		t.Errorf("%v days on foot", got)
	}
	if got := entrytest.Fact(t, r, "way_drive").Number; math.Abs(got-want/2) > 0.01 {
		t.Errorf("%v hours by rover", got)
	}
	if got := entrytest.Fact(t, r, "way_toward").Phrase.Key; got != "toward.north_northeast" {
		t.Errorf("toward %s", got)
	}
	values, _ := entrytest.Pairs(moonMap(), []string{"from=Tyco"})
	_, err := moonMap().Reckon(moonMap().Complete(entrytest.Settings(t, "alder reach"), values, entrytest.Day(t, "2027-04-13")))
	if err == nil || !strings.Contains(err.Error(), `"Tyco"`) || !strings.Contains(err.Error(), `did you mean "Tycho"?`) {
		t.Errorf("an unknown name: %v", err)
	}
}

// Number by number the sheet and its key agree: each number is beside or on the feature that
// the key has for it, by the orthographic projection of the mean face (J. P. Snyder, Map
// Projections, USGS Professional Paper 1395, 1987, equations 20-3 and 20-4).
func TestBlankAndKeyAgree(t *testing.T) {
	key := reckon(t, "alder reach", "moon-map-key", "2027-04-13").Tables[0].Rows
	for where, up := range map[string]float64{"alder reach": 1, "south": -1, "equator": 1} {
		for _, paper := range []string{"A4", "Letter"} {
			r := reckon(t, where, "moon-blank", "2027-04-13", "school.paper="+paper)
			if len(r.Sheets) != 1 {
				t.Fatalf("%s: %d sheets of %s", where, len(r.Sheets), paper)
			}
			d := r.Sheets[0].Drawing
			numbers, disc := shapesOf(d, "number"), shapesOf(d, "ground")[0]
			if len(numbers) != len(key) || len(key) != len(blankNames) || len(shapesOf(d, "writing-line")) != len(key) {
				t.Fatalf("%s: %d numbers, %d lines, %d in the key", where, len(numbers), len(shapesOf(d, "writing-line")), len(key))
			}
			for i, row := range key {
				s, ok := globe.Find(globe.Moon, row.Cells[1].Plain)
				if !ok || row.Cells[0].Number != float64(i+1) || numbers[i].Text.Number != row.Cells[0].Number {
					t.Errorf("row %d of the key: %v, the sheet has %v", i+1, row.Cells, numbers[i].Text)
				}
				lat, lon := s.At.Latitude.Radians(), s.At.Longitude.Radians()
				x, y := disc.Points[0].X+up*disc.Radius*math.Cos(lat)*math.Sin(lon), disc.Points[0].Y-up*disc.Radius*math.Sin(lat)
				for _, p := range numbers[i].Places {
					if off := math.Hypot(p.At.X-x, p.At.Y-y); off > 5 {
						t.Errorf("%s: %v stands %.1f mm from %s", where, numbers[i].Text.Number, off, s.Name)
					}
				}
			}
		}
	}
	seen := slices.Compact(slices.Sorted(slices.Values(blankNames)))
	if len(seen) != len(blankNames) {
		t.Errorf("a name has two numbers: %v", blankNames)
	}
}

func TestPosterTakesFourSheets(t *testing.T) {
	for _, paper := range []string{"A4", "Letter"} {
		sheets := reckon(t, "alder reach", "moon-poster", "2027-04-13", "school.paper="+paper).Sheets
		if len(sheets) != 4 || sheets[3].Rows != 2 || sheets[3].Columns != 2 {
			t.Errorf("%s: %d sheets", paper, len(sheets))
		}
	}
}

// Every stop of the walk is on the disc, at the place of the drawing, with a key of its own,
// and its card names what it is and words to search for.
func TestMoonWalk(t *testing.T) {
	key := regexp.MustCompile(`^[a-z0-9-]+$`)
	for where := range entrytest.Schools {
		r := reckon(t, where, "moon-map", "2027-04-13")
		if len(r.Walks) != 1 || r.Walks[0].Drawing != r.Drawings[0].Name {
			t.Fatalf("%s: %d walks", where, len(r.Walks))
		}
		disc := shapesOf(r.Drawings[0], "ground")[0]
		seen := map[string]bool{}
		for _, s := range r.Walks[0].Stops {
			if !key.MatchString(s.Key) || seen[s.Key] {
				t.Errorf("%s: key %q", where, s.Key)
			}
			seen[s.Key] = true
			if off := math.Hypot(s.At.X-disc.Points[0].X, s.At.Y-disc.Points[0].Y); off > disc.Radius {
				t.Errorf("%s: %s is %.1f mm off the middle", where, s.Key, off)
			}
			if len(s.Says) < 4 || s.Reach < 1 {
				t.Errorf("%s: the card of %s has %d lines", where, s.Key, len(s.Says))
			}
			if last := s.Says[len(s.Says)-1]; !strings.HasPrefix(last.Key, "map-spot.search_") || last.With[0].Kind != say.Name {
				t.Errorf("%s: the card of %s ends with %s", where, s.Key, last.Key)
			}
		}
		if len(seen) < 80 || seen["change-4"] || !seen["apollo-11"] || !seen["stofler"] {
			t.Errorf("%s: %d stops", where, len(seen))
		}
	}
}

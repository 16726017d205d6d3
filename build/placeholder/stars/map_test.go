package stars_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/typeset"
	"noonbook/compute/quantity"
	"noonbook/compute/sky"
)

// cell returns the number in a column of the row that is named by a words key.
func cell(t *testing.T, r result.Result, table, key, name string) float64 {
	t.Helper()
	for _, tab := range r.Tables {
		if tab.Name != table {
			continue
		}
		for _, row := range tab.Rows {
			for i, c := range tab.Columns {
				if row.Cells[0].Phrase.Key == key && c.Name == name {
					return row.Cells[i].Number
				}
			}
		}
	}
	t.Fatalf("no %s of %s in %s", name, key, table)
	return 0
}

// What is up at Alder Reach on 20 April 2027 at 21:30, by pyephem 4.1.4 (its own
// stars and planets, 1010 hPa, 10 °C): altitude and bearing to 0.1°, ten times what
// the two differ by.
func TestSkyMapAgainstPyephem(t *testing.T) {
	r := reckon(t, "alder reach", "sky-map", "2027-04-20", "time=21:30")
	for _, c := range []struct {
		table, key        string
		altitude, bearing float64
	}{
		{"bodies", "body.moon", 8.56, 126.13},
		{"bodies", "body.jupiter", 59.02, 202.23},
		{"bodies", "body.mars", 59.74, 190.28},
		{"stars", "star.sirius", 12.72, 228.75},
		{"stars", "star.arcturus", 32.46, 95.90},
		{"stars", "star.vega", 7.00, 38.29},
		{"stars", "star.capella", 41.92, 297.52},
		{"stars", "star.rigel", 6.02, 251.76},
		{"stars", "star.procyon", 38.38, 228.93},
		{"stars", "star.betelgeuse", 24.31, 254.66},
		{"stars", "star.aldebaran", 17.23, 276.27},
		{"stars", "star.spica", 17.22, 128.09},
		{"stars", "star.pollux", 57.20, 248.67},
		{"stars", "star.deneb", 3.53, 14.61},
		{"stars", "star.regulus", 55.74, 178.50},
	} {
		entrytest.Near(t, c.key+" altitude", cell(t, r, c.table, c.key, "altitude"), c.altitude, 0.1)
		entrytest.Near(t, c.key+" bearing", cell(t, r, c.table, c.key, "bearing"), c.bearing, 0.1)
	}
	if got := entrytest.Fact(t, r, "planets_up").Number; got != 2 {
		t.Errorf("%v planets are up", got)
	}
}

// The time that is taken where none is given: 21:30 in the dark, later where that is
// twilight; where it never gets dark the darkest moment, and a warning.
func TestSkyMapChoosesATime(t *testing.T) {
	for _, c := range []struct {
		school, date, clock, warning string
	}{
		{"alder reach", "2027-01-10", "21:30", ""},
		{"alder reach", "2027-06-21", "22:20", ""}, // the Sun 9° down at 22:17, pyephem
		{"arctic", "2027-12-21", "21:30", ""},
		{"arctic", "2027-06-21", "", "sky-map.never_dark"},
		{"north pole", "2027-06-21", "", "sky-map.never_dark"},
		{"south pole", "2027-06-21", "21:30", ""},
	} {
		r := reckon(t, c.school, "sky-map", c.date)
		if got := entrytest.Fact(t, r, "time").Time.Format("15:04"); c.clock != "" && got != c.clock {
			t.Errorf("%s on %s: %s", c.school, c.date, got)
		}
		said := ""
		if len(r.Warnings) > 0 {
			said = r.Warnings[0].Key
		}
		if said != c.warning {
			t.Errorf("%s on %s warns %q", c.school, c.date, said)
		}
	}
	if r := reckon(t, "alder reach", "sky-map", "2027-04-20", "time=12:00"); len(r.Warnings) != 1 || r.Warnings[0].Key != "sky-map.sun_is_up" {
		t.Errorf("at noon it warns %v", r.Warnings)
	}
}

// Years outside the almanac's have a message, not numbers.
func TestSkyMapOutOfRange(t *testing.T) {
	for _, name := range []string{"sky-map", "sky-wheel"} {
		e, _ := entry.Find(entries(), name)
		for _, date := range []string{"1949-12-31", "2101-01-01"} {
			_, err := e.Reckon(e.Complete(entrytest.Settings(t, "south"), nil, entrytest.Day(t, date)))
			if err == nil || !strings.Contains(err.Error(), "1950 to 2100") {
				t.Errorf("%s in %s: %v", name, date, err)
			}
		}
	}
}

// The ways to the pole that the words give: five times from Merak to Dubhe and on,
// four and a half times the Cross beyond its foot, halfway from Achernar to Hadar,
// each within 5°, half a fist, of the pole (of the pole star in the north).
func TestWaysToThePole(t *testing.T) {
	at := time.Date(2027, 4, 20, 0, 0, 0, 0, time.UTC)
	vector := func(designation string) [3]float64 {
		s, ok := sky.Find(designation)
		if !ok {
			t.Fatal(designation)
		}
		d := s.At(at)
		return [3]float64{d.Declination.Cos() * d.RightAscension.Cos(), d.Declination.Cos() * d.RightAscension.Sin(), d.Declination.Sin()}
	}
	angle := func(a, b [3]float64) float64 {
		return quantity.Acos(a[0]*b[0] + a[1]*b[1] + a[2]*b[2]).Degrees()
	}
	// along goes on from b, away from a, by times the distance between them.
	along := func(a, b [3]float64, times float64) [3]float64 {
		d := angle(a, b) * math.Pi / 180
		x := (1 + times) * d // from a
		var p [3]float64
		for i := range p {
			p[i] = (math.Sin(d-x)*a[i] + math.Sin(x)*b[i]) / math.Sin(d)
		}
		return p
	}
	south := [3]float64{0, 0, -1}
	for what, off := range map[string]float64{
		"the bear's bowl":    angle(along(vector("β UMa"), vector("α UMa"), 5), vector("α UMi")),
		"the Southern Cross": angle(along(vector("γ Cru"), vector("α Cru"), 4.5), south),
		"Achernar and Hadar": angle(along(vector("α Eri"), vector("β Cen"), -0.5), south),
	} {
		if off > 5 {
			t.Errorf("%s leads %.1f° past", what, off)
		}
		t.Logf("%s: %.1f°", what, off)
	}
}

// Every chart has room for ten names and more, in each language, on a page, on paper and
// with the larger letters of a phone; TestLabelsKeepApart holds them apart.
func TestChartsHaveNames(t *testing.T) {
	for school := range entrytest.Schools {
		for _, date := range []string{"2027-01-15", "2027-07-15"} {
			r := reckon(t, school, "sky-map", date)
			for on, d := range map[typeset.Reading]drawing.Drawing{typeset.OnPage: r.Drawings[0], typeset.OnPhone: r.Drawings[0], typeset.OnPaper: r.Sheets[0].Drawing} {
				for _, code := range typeset.Languages() {
					words, err := typeset.Language(code, false)
					if err != nil {
						t.Fatal(err)
					}
					names := 0
					for _, l := range words.Place(&d, on) {
						if strings.HasSuffix(d.Shapes[l.Shape].Role, "-name") {
							names++
						}
					}
					if names < 10 {
						t.Errorf("%s on %s, %s: %d names", school, date, code, names)
					}
				}
			}
		}
	}
}

// Where the Southern Cross goes round the pole of a wheel, among many names, its own is there
// in each language, and at most three names are led away.
func TestTheSouthernCrossIsNamed(t *testing.T) {
	for _, school := range []string{"south", "line south", "equator", "line north"} {
		sheets := reckon(t, school, "sky-wheel", "2027-04-20").Sheets
		d := sheets[len(sheets)-2].Drawing // the disc about the southern pole
		for _, code := range typeset.Languages() {
			words, err := typeset.Language(code, false)
			if err != nil {
				t.Fatal(err)
			}
			named, led := false, 0
			for _, l := range words.Place(&d, typeset.OnPaper) {
				named = named || strings.Join(l.Lines, " ") == words.Say("figure.southern_cross")
				if len(l.Leader) > 0 {
					led++
				}
			}
			if !named || led > 3 {
				t.Errorf("%s, %s: named %v, %d names led away", school, code, named, led)
			}
		}
	}
}

// A height among the facts is the one of the table beside it.
func TestFactsAndTableOfTheMapAgree(t *testing.T) {
	compared := 0
	for where := range entrytest.Schools {
		for _, at := range []string{"9:00", "17:30", "18:15", "21:30"} {
			r := reckon(t, where, "sky-map", "2027-04-20", "time="+at)
			if len(r.Tables) < 2 {
				continue // nothing but stars
			}
			heights := entrytest.Texts(t, r, "bodies", "altitude")
			for i, body := range entrytest.Texts(t, r, "bodies", "body") {
				fact := map[string]string{"Sun": "sun_altitude", "Moon": "moon_altitude"}[body]
				if fact == "" {
					continue
				}
				compared++
				if got := strings.TrimSuffix(entrytest.Shown(t, r, fact), "°"); got != strings.TrimSuffix(heights[i], "°") {
					t.Errorf("%s at %s: %s is %s, the table has %s", where, at, fact, got, heights[i])
				}
			}
		}
	}
	if compared < 15 {
		t.Errorf("only %d heights were compared", compared)
	}
}

// Stars are out at half past nine on an April evening at Alder Reach, not at six, and not at all
// through a night of June in the arctic, when the Sun stays up.
func TestStarsOut(t *testing.T) {
	for _, at := range []struct{ school, date, time, want string }{
		{"alder reach", "2027-04-20", "21:30", "yes"}, {"alder reach", "2027-04-20", "18:00", "no"}, {"arctic", "2027-06-21", "23:59", "no"},
	} {
		if got := entrytest.Shown(t, reckon(t, at.school, "sky-map", at.date, "time="+at.time), "stars_out"); got != at.want {
			t.Errorf("%v: stars out: %s", at, got)
		}
	}
}

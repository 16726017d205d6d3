package almanac_test

import (
	"encoding/csv"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// The tables of testdata/reference, made with ERFA, the Swiss Ephemeris,
// pyephem and astronomy-engine; their README states versions and conventions.

type row struct {
	t      *testing.T
	fields map[string]string
}

func table(t *testing.T, name string) []row {
	t.Helper()
	f, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) < 2 {
		t.Fatalf("%s has no rows", name)
	}
	rows := make([]row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		r := row{t, map[string]string{}}
		for i, column := range lines[0] {
			r.fields[column] = line[i]
		}
		rows = append(rows, r)
	}
	return rows
}

func (r row) text(column string) string {
	r.t.Helper()
	s, ok := r.fields[column]
	if !ok {
		r.t.Fatalf("no column %q", column)
	}
	return s
}

func (r row) number(column string) float64 {
	r.t.Helper()
	x, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil {
		r.t.Fatal(err)
	}
	return x
}

func (r row) instant(column string) time.Time {
	r.t.Helper()
	return utc(r.t, r.text(column))
}

// instants reads the moments of a day that a column holds, ";" between them.
func (r row) instants(column string) []time.Time {
	r.t.Helper()
	var list []time.Time
	for s := range strings.SplitSeq(r.text(column), ";") {
		if s = strings.TrimSpace(s); s != "" {
			list = append(list, utc(r.t, s))
		}
	}
	return list
}

func (r row) place() place.Place {
	r.t.Helper()
	p := place.Place{
		Latitude:  quantity.Degrees(r.number("latitude_deg")),
		Longitude: quantity.Degrees(r.number("longitude_deg")),
		Elevation: quantity.Metres(r.number("elevation_m")),
		Zone:      time.UTC,
	}
	if offset, ok := r.fields["utc_offset_h"]; ok {
		hours, err := strconv.Atoi(offset)
		if err != nil {
			r.t.Fatal(err)
		}
		p.Zone = time.FixedZone("local", hours*3600)
	}
	return p
}

// A worst keeps the greatest deviation that a test has met and fails the test
// for each beyond the limit.
type worst struct {
	t     *testing.T
	name  string
	unit  string
	value map[string]float64
	count int
}

func newWorst(t *testing.T, name, unit string) *worst {
	return &worst{t: t, name: name, unit: unit, value: map[string]float64{}}
}

func (w *worst) meet(library string, deviation, limit float64, what ...any) {
	w.t.Helper()
	w.count++
	deviation = math.Abs(deviation)
	if !(deviation <= w.value[library]) {
		w.value[library] = deviation
	}
	if !(deviation <= limit) {
		w.t.Errorf("%s: %.4g %s from %s, limit %.4g: %v", w.name, deviation, w.unit, library, limit, what)
	}
}

func (w *worst) log() {
	w.t.Helper()
	if w.count == 0 {
		w.t.Errorf("%s: nothing was compared", w.name)
	}
	for _, library := range slices.Sorted(maps.Keys(w.value)) {
		w.t.Logf("%s, %d compared: worst %.4g %s from %s", w.name, w.count, w.value[library], w.unit, library)
	}
}

// meetEvents compares the events of one kind in a day.
func (w *worst) meetEvents(r row, column string, got []time.Time, limit float64) {
	w.t.Helper()
	want := r.instants(column)
	if len(got) != len(want) {
		w.t.Errorf("%s: %s %s %s: %d events, %s has %d", w.name, r.text("place"), r.text("date"), column,
			len(got), r.text("library"), len(want))
		return
	}
	for i := range want {
		w.meet(r.text("library"), got[i].Sub(want[i]).Seconds(), limit, r.text("place"), r.text("date"), column)
	}
}

// events sorts rises and sets by how sharply they are defined: ordinary, beyond
// 60° of latitude, and grazing the horizon, where an error of so many ″ makes so
// many seconds that only the angle can be held (1° an hour is 1″ a second).
type events struct{ ordinary, polar, grazing *worst }

func newEvents(t *testing.T, name string) events {
	return events{newWorst(t, name, "s"), newWorst(t, name+" beyond 60°", "s"), newWorst(t, name+" grazing", "s")}
}

// meet takes the limit in seconds and, for those that graze, in ″.
func (e events) meet(r row, day almanac.Day, limit, place float64) {
	w := e.ordinary
	if math.Abs(r.number("latitude_deg")) > 60 {
		w = e.polar
	}
	if s := r.text("slowest_deg_per_h"); s != "" && r.number("slowest_deg_per_h") < grazing {
		w, limit = e.grazing, place/r.number("slowest_deg_per_h")
	}
	w.t.Helper()
	w.meetEvents(r, "rise", day.Rises, limit)
	w.meetEvents(r, "set", day.Sets, limit)
}

func (e events) log() {
	e.ordinary.t.Helper()
	e.ordinary.log()
	e.polar.log()
	e.grazing.log()
}

// The Sun of each library, in ″ and seconds.
var (
	sunPlaceAside   = aside{"ephem": 0.6, "astronomy-engine": 1.9}
	sunRiseAside    = aside{"astronomy-engine": 0.25}
	sunTransitAside = aside{"astronomy-engine": 0.13}
)

func TestSunDaysOfTheLibraries(t *testing.T) {
	rise, transit := newEvents(t, "sunrise and sunset"), newWorst(t, "Sun's transit", "s")
	for _, r := range table(t, "sun-days.csv") {
		day := almanac.SunDay(r.place(), date(t, r.text("date")))
		library := r.text("library")
		rise.meet(r, day, sunRiseAside.promise(sunRiseLimit, library), sunPlaceAside.promise(sunPlaceLimit, library))
		transit.meetEvents(r, "transit", day.Transits, sunTransitAside.promise(sunTransitLimit, library))
	}
	rise.log()
	transit.log()
}

// Twilights: the geocentric altitude of the table less the parallax there is the
// topocentric one that Past asks for. They are held as sunrises.
func TestTwilightsOfTheLibraries(t *testing.T) {
	w := newWorst(t, "twilights", "s")
	for _, r := range table(t, "sun-twilights.csv") {
		altitude := quantity.Degrees(r.number("altitude_deg"))
		altitude -= quantity.ArcSeconds(8.794 * altitude.Cos())
		day := almanac.Sun.Past(r.place(), date(t, r.text("date")), altitude)
		limit := sunRiseAside.promise(sunRiseLimit, r.text("library"))
		w.meetEvents(r, "rising", day.Rises, limit)
		w.meetEvents(r, "falling", day.Sets, limit)
	}
	w.log()
}

// Azimuth as an angle on the sky.
func TestSunPositionsOfTheLibraries(t *testing.T) {
	horizontal, geocentric := newWorst(t, "Sun's altitude and azimuth", "°"), newWorst(t, "Sun's place", "″")
	for _, r := range table(t, "sun-positions.csv") {
		at := r.instant("utc")
		h := almanac.SunFrom(r.place(), at)
		library := r.text("library")
		meetHorizontal(horizontal, r, h, aside{"astronomy-engine": 0.0004}.promise(sunHorizontalLimit, library))
		meetEquatorial(geocentric, r, almanac.SunAt(at), sunPlaceAside.promise(sunPlaceLimit, library))
	}
	horizontal.log()
	geocentric.log()
}

func meetHorizontal(w *worst, r row, h almanac.Horizontal, limit float64) {
	w.t.Helper()
	across := (h.Azimuth - quantity.Degrees(r.number("azimuth_deg"))).Signed().Degrees() * h.Altitude.Cos()
	up := h.Altitude.Degrees() - r.number("altitude_deg")
	w.meet(r.text("library"), math.Hypot(across, up), limit, r.text("utc"), r.text("place"))
}

func meetEquatorial(w *worst, r row, a almanac.Apparent, limit float64) {
	w.t.Helper()
	across := (a.RightAscension - quantity.Degrees(r.number("ra_deg"))).Signed().ArcSeconds() * a.Declination.Cos()
	up := (a.Declination - quantity.Degrees(r.number("dec_deg"))).ArcSeconds()
	w.meet(r.text("library"), math.Hypot(across, up), limit, r.fields)
}

func TestEquationOfTimeOfTheLibraries(t *testing.T) {
	w := newWorst(t, "equation of time", "s")
	for _, r := range table(t, "equation-of-time.csv") {
		got := almanac.EquationOfTime(r.instant("utc")).Seconds()
		limit := aside{"astronomy-engine": 0.16}.promise(equationOfTimeLimit, r.text("library"))
		w.meet(r.text("library"), got-r.number("apparent_minus_mean_s"), limit, r.text("utc"))
	}
	w.log()
}

func TestMoonDaysOfTheLibraries(t *testing.T) {
	rise, transit := newEvents(t, "moonrise and moonset"), newWorst(t, "Moon's transit", "s")
	for _, r := range table(t, "moon-days.csv") {
		day := almanac.MoonDay(r.place(), date(t, r.text("date")))
		rise.meet(r, day, bodyRiseLimit, moonPlaceLimit)
		transit.meetEvents(r, "transit", day.Transits, moonTransitLimit)
	}
	rise.log()
	transit.log()
}

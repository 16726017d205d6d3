package placeholder_test

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

func theWords(t *testing.T) *typeset.Words {
	t.Helper()
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	return words
}

// reference reads a table of testdata/reference, whose README names the
// libraries, as rows by column name.
func reference(t *testing.T, name, library string) []map[string]string {
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
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, name := range lines[0] {
			row[name] = line[i]
		}
		if library == "" || row["library"] == library {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows of %s", name, library)
	}
	return rows
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func instant(t *testing.T, s string) time.Time {
	t.Helper()
	at, err := time.Parse(time.RFC3339, s)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

// fromTT reads an instant in TT of 2026 to 2035, where TT − UTC is 69.184 s.
func fromTT(t *testing.T, s string) time.Time {
	return instant(t, s+"Z").Add(-69184 * time.Millisecond)
}

// cells returns the cells of a column of the named table.
func cells(t *testing.T, r result.Result, table, name string) []say.Value {
	t.Helper()
	for _, one := range r.Tables {
		if one.Name != table {
			continue
		}
		i := slices.IndexFunc(one.Columns, func(c result.Column) bool { return c.Name == name })
		if i < 0 {
			break
		}
		var list []say.Value
		for _, row := range one.Rows {
			list = append(list, row.Cells[i])
		}
		return list
	}
	t.Fatalf("no column %s in a table %s", name, table)
	return nil
}

// The seasons of 2026 to 2035 within 20 s of ERFA, in both hemispheres.
func TestSeasonsAgainstReference(t *testing.T) {
	local := map[string][2]string{ // season that begins at the turn, north and south
		"march-equinox": {"spring_begins", "autumn_begins"}, "june-solstice": {"summer_begins", "winter_begins"},
		"september-equinox": {"autumn_begins", "spring_begins"}, "december-solstice": {"winter_begins", "summer_begins"},
	}
	worst := 0.0
	for _, row := range reference(t, "seasons.csv", "erfa") {
		if year := row["tt"][:4]; year >= "2026" && year <= "2035" {
			want := fromTT(t, row["tt"])
			for i, school := range []string{"alder reach", "south"} {
				r := reckon(t, school, "season-dates", "2027-04-20", "year="+year)
				for _, name := range []string{strings.ReplaceAll(row["season"], "-", "_"), local[row["season"]][i]} {
					off := fact(t, r, name).Time.Sub(want).Seconds()
					worst = max(worst, math.Abs(off))
					near(t, school+" "+year+" "+name, off, 0, 20)
				}
			}
		}
	}
	t.Logf("seasons of 2026 to 2035: within %.1f s of ERFA", worst)
	if got := fact(t, reckon(t, "south", "season-dates", "2027-04-20"), "season").Phrase.Key; got != "season.autumn" {
		t.Errorf("April in the south is %s", got)
	}
}

// The planets at 21:00 on 20 April 2027 at Alder Reach: pyephem 4.1.4, observer
// at sea level, 1010 hPa and 10 °C. Places agree to 0.01°; pyephem's phase
// formulae differ by up to 0.17 in magnitude; its elongation is topocentric.
func TestPlanetsAtAlderReach(t *testing.T) {
	r := reckon(t, "alder reach", "planets-week", "2027-04-20", "time=21:00")
	want := []struct{ azimuth, altitude, magnitude, apart float64 }{
		{299.902, math.NaN(), -1.20, 8.79}, // below the horizon
		{312.614, math.NaN(), -3.82, 29.704},
		{175.878, 60.025, 0.09, 112.332},
		{188.185, 60.392, -2.06, 106.403},
		{300.685, math.NaN(), 0.64, 11.559},
	}
	azimuth, altitude := cells(t, r, "planets", "bearing"), cells(t, r, "planets", "altitude")
	magnitude, apart, direction := cells(t, r, "planets", "magnitude"), cells(t, r, "planets", "sun_distance"), cells(t, r, "planets", "direction")
	for i, w := range want {
		near(t, "azimuth", azimuth[i].Number, w.azimuth, 0.01)
		near(t, "magnitude", magnitude[i].Number, w.magnitude, 0.2)
		near(t, "distance from the Sun", apart[i].Number, w.apart, 0.3)
		if math.IsNaN(w.altitude) {
			if altitude[i].Number > 0 || direction[i].Kind != say.Nothing {
				t.Errorf("planet %d is not below the horizon", i)
			}
			continue
		}
		near(t, "altitude", altitude[i].Number, w.altitude, 0.01)
	}
	// The Sun's centre 9° below the horizon, pyephem 4.1.4: 0:03:47 and 8:31:24 UTC.
	near(t, "dusk", fact(t, r, "dusk").Time.Sub(instant(t, "2027-04-21T00:03:47Z")).Seconds(), 0, 3)
	near(t, "dawn", fact(t, r, "dawn").Time.Sub(instant(t, "2027-04-21T08:31:24Z")).Seconds(), 0, 3)
}

// When planets can be seen follows from their place beside the Sun: Mars was at
// opposition on 19 February 2027 and Jupiter on 11 February; Venus was at its
// greatest elongation in the west on 3 January 2027, and passed 8° north of the
// Sun on 23 March 2025 (these dates from memory); Saturn is near the Sun in April.
func TestWhenPlanetsAreSeen(t *testing.T) {
	for _, c := range []struct{ school, date, planet, want string }{
		{"alder reach", "2027-02-15", "mars", "planets-week.through_night"},
		{"alder reach", "2027-02-15", "jupiter", "planets-week.through_night"},
		{"south", "2027-02-15", "mars", "planets-week.through_night"},
		{"alder reach", "2027-01-03", "venus", "planets-week.in_morning"},
		{"south", "2027-01-03", "venus", "planets-week.in_morning"},
		{"alder reach", "2027-04-20", "jupiter", "planets-week.in_evening"},
		{"alder reach", "2027-04-10", "saturn", "planets-week.in_glare"},
		{"arctic", "2025-03-18", "venus", "planets-week.both_ends"},
		{"arctic", "2027-06-21", "jupiter", "planets-week.no_dark"},
		{"south pole", "2027-06-21", "mars", "planets-week.too_low"}, // north of the equator
	} {
		if got := fact(t, reckon(t, c.school, "planets-week", c.date), c.planet+"_when").Phrase.Key; got != c.want {
			t.Errorf("%s at %s on %s: %s, want %s", c.planet, c.school, c.date, got, c.want)
		}
	}
}

// The Sun's bearing at each hour against the shadow bearings of ERFA, within
// 0.01°, and its height as seen, lifted by at most 0.5°.
func TestSunPathAgainstReference(t *testing.T) {
	paths := map[string]result.Result{}
	compared := 0
	for _, row := range reference(t, "shadow-bearings.csv", "") {
		at := instant(t, row["utc"])
		date := at.Format(time.DateOnly)
		given := []string{"school.time_zone=UTC", "school.latitude=" + row["latitude_deg"], "school.longitude=" + row["longitude_deg"]}
		r, ok := paths[row["place"]+date]
		if !ok {
			r = reckon(t, "alder reach", "sun-path", date, given...)
			paths[row["place"]+date] = r
		}
		i := slices.IndexFunc(cells(t, r, "hours", "clock"), func(v say.Value) bool { return v.Time.Equal(at) })
		if i < 0 {
			t.Errorf("%s lacks %s", row["place"], row["utc"])
			continue
		}
		compared++
		altitude := number(t, row["altitude_deg"])
		off := math.Remainder(cells(t, r, "hours", "bearing")[i].Number-number(t, row["erfa"])-180, 360)
		near(t, row["place"]+" "+row["utc"], off*math.Cos(altitude*math.Pi/180), 0, 0.01)
		if lift := cells(t, r, "hours", "altitude")[i].Number - altitude; lift < -0.005 || lift > 0.5 {
			t.Errorf("%s %s: the Sun is lifted by %v°", row["place"], row["utc"], lift)
		}
	}
	if compared < 100 {
		t.Errorf("only %d hours were compared", compared)
	}
}

// Through the year: noon heights at the solstices are 90° less latitude plus and
// less the obliquity, 23.44°, where the air hardly lifts; at the polar circle's
// far side days of 24 h; on the equator days of 12 h and 400 s to 436 s,
// for twice the 50′ of the rising convention at 15° an hour times the cosine of
// the declination, give and take the 20 s by which noon moves in a day.
func TestSunYear(t *testing.T) {
	r := reckon(t, "alder reach", "sun-year", "2027-04-20")
	near(t, "highest", fact(t, r, "highest_noon").Number, 90-46.09+23.44, 0.02)
	near(t, "lowest", fact(t, r, "lowest_noon").Number, 90-46.09-23.44, 0.06)
	if len(r.Drawings) != 2 || len(r.Tables[0].Rows) != 36 {
		t.Errorf("%d charts, %d rows", len(r.Drawings), len(r.Tables[0].Rows))
	}
	r = reckon(t, "equator", "sun-year", "2027-04-20", "rows=monthly")
	for _, s := range column(t, r, "day_length") {
		near(t, "day on the equator", s, 12*3600+(400+436)/2, 18+20)
	}
	if len(r.Tables[0].Rows) != 12 {
		t.Errorf("%d rows", len(r.Tables[0].Rows))
	}
	near(t, "longest in the arctic", fact(t, reckon(t, "arctic", "sun-year", "2027-04-20"), "longest").Number, 24*3600, 0)
}

// Years that are not computed, days that did not exist and ranges the wrong way
// round come back as errors or as answers, never as a panic.
func TestOddDatesOfTheSky(t *testing.T) {
	sky := []string{"eclipse-list", "moon-month", "moon-school", "planets-week", "season-dates", "sun-path", "sun-year"}
	try := func(where, name, date string, given ...string) error {
		entry, _ := placeholder.Find(placeholder.Catalogue(), name)
		values := form.Values{}
		for _, pair := range given {
			key, value, _ := strings.Cut(pair, "=")
			v, complaint := entry.Form(school.Settings()).ParsePair(key, value)
			if complaint != "" {
				t.Fatal(complaint)
			}
			values[key] = v
		}
		if name == "moon-school" {
			for _, key := range []string{"from", "to"} {
				if !values.Has(key) {
					values[key] = day(t, date)
				}
			}
		}
		_, err := entry.Reckon(entry.Complete(settings(t, where), values, day(t, date)))
		return err
	}
	for _, name := range sky {
		for _, date := range []string{"1949-12-31", "2101-01-01", "0001-01-01", "9999-12-31"} {
			if try("alder reach", name, date) == nil {
				t.Errorf("%s answers for %s", name, date)
			}
		}
		for _, date := range []string{"1950-01-01", "2094-12-31"} {
			for school := range schools {
				if err := try(school, name, date); err != nil {
					t.Errorf("%s at %s: %v", name, school, err)
				}
			}
		}
		if err := try("alder reach", name, "2011-12-30", "school.time_zone=Pacific/Apia"); err != nil {
			t.Errorf("%s on a date that was skipped: %v", name, err)
		}
	}
	for _, name := range sky[1:] {
		if err := try("alder reach", name, "2100-12-31"); err != nil {
			t.Errorf("%s on the last day: %v", name, err)
		}
	}
	for _, given := range [][]string{{"from=2027-04-20", "to=2027-04-19"}, {"from=2027-01-01", "to=2029-01-01"}} {
		if try("alder reach", "moon-school", "2027-04-20", given...) == nil {
			t.Errorf("moon-school answers for %v", given)
		}
	}
}

// No evaluation may take more than about 20 ms.
func BenchmarkSky(b *testing.B) {
	for _, e := range placeholder.Catalogue() {
		values := settings(b, "alder reach")
		b.Run(e.Name, func(b *testing.B) {
			for b.Loop() {
				if _, err := e.Reckon(e.Complete(values, form.Values{}, values.Date("term.first_day"))); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

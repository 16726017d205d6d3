package sky_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
)

// A place of the reference tables, as arguments.
func placed(row map[string]string) []string {
	return []string{"school.time_zone=UTC", "school.latitude=" + row["latitude_deg"], "school.longitude=" + row["longitude_deg"], "school.elevation_m=" + row["elevation_m"]}
}

// Eclipses of the Sun at fourteen places from pole to pole against the Swiss
// Ephemeris, ten years and twenty: contacts and greatest within 60 s, magnitude
// and obscuration within 0.005. Its Moon is 0.04 % larger, and eclipses of
// magnitude below 0.03, which last minutes, move most: they are left out.
func TestEclipsesOfTheSunAgainstReference(t *testing.T) {
	lists := map[string]result.Result{}
	compared, worst, deepest := 0, 0.0, 0.0
	for _, row := range entrytest.Reference(t, "local-eclipses.csv", "swisseph") {
		if strings.HasPrefix(row["place"], "central-") || row["greatest"] == "" || row["greatest"] > "2039-12-01" || entrytest.Number(t, row["magnitude"]) < 0.03 {
			continue
		}
		r, ok := lists[row["place"]]
		if !ok {
			r = reckon(t, "alder reach", "eclipse-list", "2026-01-01", append(placed(row), "years=14")...)
			lists[row["place"]] = r
		}
		i := slices.IndexFunc(entrytest.Cells(t, r, "sun", "greatest"), func(v say.Value) bool {
			return v.Time.Sub(entrytest.Instant(t, row["greatest"])).Abs() < time.Hour
		})
		if i < 0 {
			t.Errorf("%s lacks the eclipse of %s", row["place"], row["greatest"])
			continue
		}
		compared++
		cell := func(name string) say.Value { return entrytest.Cells(t, r, "sun", name)[i] }
		for _, x := range [][2]string{{"begins", "first"}, {"greatest", "greatest"}, {"ends", "fourth"}} {
			off := cell(x[0]).Time.Sub(entrytest.Instant(t, row[x[1]])).Seconds()
			worst = max(worst, math.Abs(off))
			entrytest.Near(t, row["place"]+" "+row["greatest"]+" "+x[0], off, 0, 60)
		}
		magnitude, obscuration := cell("magnitude").Number-entrytest.Number(t, row["magnitude"]), cell("obscuration").Number/100-entrytest.Number(t, row["obscuration"])
		if row["kind"] == "partial" { // of central eclipses the libraries mean different things by magnitude and obscuration
			deepest = max(deepest, math.Abs(magnitude), math.Abs(obscuration))
			entrytest.Near(t, row["place"]+" "+row["greatest"]+" magnitude", magnitude, 0, 0.005)
			entrytest.Near(t, row["place"]+" "+row["greatest"]+" obscuration", obscuration, 0, 0.005)
		}
		if got := cell("kind_here").Phrase.Key; got != "eclipse."+row["kind"] {
			t.Errorf("%s %s is %s, want %s", row["place"], row["greatest"], got, row["kind"])
		}
		if got := cell("seen").Phrase; !strings.HasPrefix(entrytest.English(t).Line(got), "yes") {
			t.Errorf("%s %s is not seen: %s", row["place"], row["greatest"], got.Key)
		}
	}
	t.Logf("%d eclipses of the Sun: times within %.1f s, magnitude and obscuration within %.4f of the Swiss Ephemeris", compared, worst, deepest)
	if compared < 40 {
		t.Errorf("only %d eclipses were compared", compared)
	}
}

// The list of ten years at Alder Reach from the beginning of the term holds as
// seen what the Swiss Ephemeris has above the horizon, and nothing else.
func TestEclipsesSeenAtAlderReach(t *testing.T) {
	r := reckon(t, "alder reach", "eclipse-list", "2027-04-12", "years=10")
	var want []string
	for _, row := range entrytest.Reference(t, "local-eclipses.csv", "swisseph") {
		if row["place"] == "alder-reach" && row["first"] > "2027-04-12" && row["first"] < "2037-04-12" {
			want = append(want, row["first"][:10])
		}
	}
	var got []string
	seen, begins := entrytest.Cells(t, r, "sun", "seen"), entrytest.Cells(t, r, "sun", "begins")
	for i := range seen {
		if strings.HasPrefix(entrytest.English(t).Line(seen[i].Phrase), "yes") {
			got = append(got, begins[i].Time.UTC().Format(time.DateOnly))
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("seen are %v, want %v", got, want)
	}
	entrytest.Near(t, "sun_count", entrytest.Fact(t, r, "sun_count").Number, float64(len(want)), 0)
	if len(r.Cautions) < 2 {
		t.Error("the cautions are missing")
	}
}

// Eclipses of the Moon, the same for everybody, within 30 s (greatest) and 60 s
// (contacts with the umbra) of the Swiss Ephemeris.
func TestEclipsesOfTheMoonAgainstReference(t *testing.T) {
	r := reckon(t, "alder reach", "eclipse-list", "2026-01-01", "years=14")
	compared, worst := 0, 0.0
	for _, row := range entrytest.Reference(t, "lunar-eclipses.csv", "swisseph") {
		if row["greatest"] > "2039-12-01" {
			continue
		}
		i := slices.IndexFunc(entrytest.Cells(t, r, "moon", "greatest"), func(v say.Value) bool {
			return v.Time.Sub(entrytest.Instant(t, row["greatest"])).Abs() < time.Hour
		})
		if i < 0 {
			t.Errorf("the eclipse of %s is missing", row["greatest"])
			continue
		}
		compared++
		if got := entrytest.Cells(t, r, "moon", "kind")[i].Phrase.Key; got != "eclipse."+row["kind"] {
			t.Errorf("%s is %s", row["greatest"], got)
		}
		entrytest.Near(t, "greatest "+row["greatest"], entrytest.Cells(t, r, "moon", "greatest")[i].Time.Sub(entrytest.Instant(t, row["greatest"])).Seconds(), 0, 30)
		for _, x := range [][2]string{{"begins", "u1"}, {"total_begins", "u2"}, {"total_ends", "u3"}, {"ends", "u4"}} {
			got := entrytest.Cells(t, r, "moon", x[0])[i]
			if row[x[1]] == "" || row["kind"] == "penumbral" {
				continue
			}
			off := got.Time.Sub(entrytest.Instant(t, row[x[1]])).Seconds()
			worst = max(worst, math.Abs(off))
			entrytest.Near(t, row["greatest"]+" "+x[0], off, 0, 60)
		}
	}
	t.Logf("%d eclipses of the Moon: contacts within %.1f s of the Swiss Ephemeris", compared, worst)
	if compared < 25 {
		t.Errorf("only %d eclipses were compared", compared)
	}
}

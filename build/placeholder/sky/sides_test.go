package sky_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

const degree = math.Pi / 180

var fourSchools = map[string]struct{ latitude, longitude float64 }{
	"alder reach": {46.09, -64.77}, "south": {-45.87, 170.5}, "line north": {1.4, 103.8}, "arctic": {69.6, 18.95},
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

// A planet east of the Sun follows it down and is one of the evening, seen in the
// west; one west of it is of the morning, seen in the east. Sides and elongations
// are the Swiss Ephemeris' (aspects.csv).
func TestEveningAndMorningBySide(t *testing.T) {
	evenings, mornings := 0, 0
	for _, row := range entrytest.Reference(t, "aspects.csv", "swisseph") {
		apart := 0.0
		if row["body"] == "venus" || row["body"] == "mercury" {
			apart = entrytest.Number(t, row["elongation_deg"])
		}
		if row["body"] == "venus" && apart < 30 || row["body"] == "mercury" && apart < 20 || apart == 0 || row["utc"] > "2033" {
			continue
		}
		for school := range fourSchools {
			r := reckon(t, school, "planets-week", row["utc"][:10])
			when, direction := entrytest.Shown(t, r, row["body"]+"_when"), entrytest.Fact(t, r, row["body"]+"_direction")
			toward := entrytest.Written(t, direction)
			where := fmt.Sprintf("%s at %s on %s, %s of the Sun", row["body"], school, row["utc"][:10], row["side"])
			switch {
			case strings.HasPrefix(when, "evening, until"):
				evenings++
				if row["side"] != "east" {
					t.Errorf("%s: %s", where, when)
				}
				if strings.Contains(toward, "east") {
					t.Errorf("%s stands in the %s at dusk", where, toward)
				}
			case strings.HasPrefix(when, "morning, from"):
				mornings++
				if row["side"] != "west" {
					t.Errorf("%s: %s", where, when)
				}
				if strings.Contains(toward, "west") {
					t.Errorf("%s stands in the %s at dawn", where, toward)
				}
			case school == "line north" && row["body"] == "venus":
				t.Errorf("%s: %s", where, when)
			}
			name := map[string]string{"venus": "Venus", "mercury": "Mercury"}[row["body"]]
			listed := map[string]bool{}
			for _, fact := range []string{"evening", "morning", "all_night", "lost"} {
				listed[fact] = strings.Contains(entrytest.Shown(t, r, fact), name)
			}
			if listed["evening"] != strings.HasPrefix(when, "evening") || listed["morning"] != (strings.HasPrefix(when, "morning") || strings.HasPrefix(when, "evening and morning")) || listed["lost"] != strings.HasPrefix(when, "lost") {
				t.Errorf("%s: %s, and it is listed %v", where, when, listed)
			}
			entrytest.Near(t, where+": magnitude", entrytest.Fact(t, r, row["body"]+"_magnitude").Number, entrytest.Number(t, row["magnitude"]), 0.35)
		}
	}
	if evenings < 12 || mornings < 12 {
		t.Errorf("%d evenings and %d mornings", evenings, mornings)
	}
}

// A planet of the evening is lost before it sets, one of the morning seen after it
// has risen: rises and sets are the Swiss Ephemeris' (planet-days.csv). It comes
// down from 5° in 20 minutes at the equator and in less than two hours at 69.6°.
func TestPlanetsSetAfterTheirLastLook(t *testing.T) {
	schools := map[string]string{"alder-reach": "alder reach", "south-island": "south", "equator-north": "line north", "arctic": "arctic"}
	checked := 0
	for _, row := range entrytest.Reference(t, "planet-days.csv", "swisseph") {
		school, ok := schools[row["place"]]
		if !ok || row["set"] == "" || row["rise"] == "" || row["body"] == "mercury" || row["date"] > "2031" {
			continue
		}
		r := reckon(t, school, "planets-week", row["date"])
		when := entrytest.Fact(t, r, row["body"]+"_when")
		if len(when.Phrase.With) != 1 {
			continue
		}
		shown, event := when.Phrase.With[0].Time, entrytest.Instant(t, row["set"])
		late := event.Sub(shown)
		if when.Phrase.Key == "planets-week.in_morning" {
			event = entrytest.Instant(t, row["rise"])
			late = shown.Sub(event)
		}
		// of the sidereal days about the reference's
		hours := math.Remainder(late.Hours(), 23.9345)
		if hours < 0.25 || hours > 2 {
			t.Errorf("%s at %s on %s: %s, but it rises at %s and sets at %s", row["body"], school, row["date"], entrytest.Written(t, when), row["rise"], row["set"])
		}
		checked++
	}
	if checked < 20 {
		t.Errorf("%d planets", checked)
	}
}

// How bright a planet is, in words, on both sides of each bound; brightest is the
// smallest magnitude. Examples: magnitudes of the Swiss Ephemeris (aspects.csv).
func TestBrightnessInWords(t *testing.T) {
	r := reckon(t, "alder reach", "planets-week", "2027-02-15")
	magnitudes, words := entrytest.Cells(t, r, "planets", "magnitude"), entrytest.Cells(t, r, "planets", "brightness")
	for i := range magnitudes {
		key := words[i].Phrase.Key
		m := magnitudes[i].Number
		want := "brightness.too_faint"
		for _, bound := range []struct {
			below float64
			key   string
		}{{-3.5, "brightness.far_brighter"}, {-1.5, "brightness.brighter"}, {0.5, "brightness.brightest_stars"}, {1.5, "brightness.bright_star"}, {2.5, "brightness.middling"}, {4.5, "brightness.faint"}} {
			if m < bound.below {
				want = bound.key
				break
			}
		}
		if key != want {
			t.Errorf("magnitude %v is %s", m, key)
		}
	}
	// Venus at −4.2 is the brightest, and 10^(0.4 (−1.46 + 4.2…)) times Sirius.
	if got := entrytest.Shown(t, r, "brightest"); got != "Venus" {
		t.Error("the brightest planet is", got)
	}
	venus := entrytest.Fact(t, r, "venus_magnitude").Number
	entrytest.Tells(t, r.Working, "planets-week.working", "Venus has magnitude "+fmt.Sprintf("%.2f", venus), fmt.Sprintf("-1.46 - (%.2f) = %.2f steps", venus, -1.46-venus), fmt.Sprintf("= %.1f times", math.Pow(10, 0.4*(-1.46-venus))))
	entrytest.Tells(t, r.Cautions, "caution.planets", "Never point a telescope, binoculars or a camera")
}

// What of an eclipse of the Sun is seen, in words, by the Sun's height at the Swiss
// Ephemeris' contacts (local-eclipses.csv).
func TestEclipseWordsBySunHeight(t *testing.T) {
	said := map[string]int{}
	lists := map[string]struct{ greatest, seen []say.Value }{}
	for _, row := range entrytest.Reference(t, "local-eclipses.csv", "swisseph") {
		if strings.HasPrefix(row["place"], "central-") || row["first"] > "2039-06-01" {
			continue
		}
		latitude, longitude := entrytest.Number(t, row["latitude_deg"]), entrytest.Number(t, row["longitude_deg"])
		list, ok := lists[row["place"]]
		if !ok {
			r := reckon(t, "alder reach", "eclipse-list", "2026-01-01", append(placed(row), "years=14")...)
			list.greatest, list.seen = entrytest.Cells(t, r, "sun", "greatest"), entrytest.Cells(t, r, "sun", "seen")
			lists[row["place"]] = list
		}
		first, fourth := entrytest.Instant(t, row["first"]), entrytest.Instant(t, row["fourth"])
		for i, v := range list.greatest {
			if v.Time.Before(first) || v.Time.After(fourth) {
				continue
			}
			begin, middle, end := sunHeight(first, latitude, longitude), sunHeight(v.Time, latitude, longitude), sunHeight(fourth, latitude, longitude)
			clear := true
			for _, h := range []float64{begin, middle, end} {
				clear = clear && math.Abs(h+50.0/60) > 0.4
			}
			if !clear {
				continue
			}
			got := entrytest.Written(t, list.seen[i])
			up := func(h float64) bool { return h > -50.0/60 }
			want := ""
			switch {
			case up(begin) && up(middle) && up(end):
				want = "yes, all of it"
			case up(middle) && up(begin):
				want = "yes, until sunset"
			case up(middle) && up(end):
				want = "yes, from sunrise on"
			case up(middle):
				want = "yes, from sunrise to sunset"
			case up(begin):
				want = "yes, until sunset: "
			case up(end):
				want = "yes, from sunrise on: "
			}
			if want == "" {
				continue // seen for a moment between, by the reference
			}
			head, _, _ := strings.Cut(got, ";")
			if strings.HasSuffix(want, ": ") && !strings.HasPrefix(head, want) || !strings.HasSuffix(want, ": ") && head != want {
				t.Errorf("%s on %s: Sun at %.1f°, %.1f° and %.1f°, and the list says %q", row["place"], row["first"], begin, middle, end, got)
			}
			said[want]++
		}
	}
	if len(said) < 5 {
		t.Errorf("words that were tried: %v", said)
	}
}

// An eclipse of the Moon is seen from moonrise on in the evening, until moonset in
// the morning. The full Moon stands opposite the Sun, within 2° in an eclipse.
func TestMoonEclipseWordsBySunHeight(t *testing.T) {
	said := map[string]int{}
	for school, at := range fourSchools {
		r := reckon(t, school, "eclipse-list", "2026-01-01", "years=14")
		kinds, seen, middle := entrytest.Cells(t, r, "moon", "kind"), entrytest.Texts(t, r, "moon", "seen"), entrytest.Cells(t, r, "moon", "greatest")
		begins, ends := entrytest.Cells(t, r, "moon", "begins"), entrytest.Cells(t, r, "moon", "ends")
		for i := range seen {
			if kinds[i].Phrase.Key == "eclipse.penumbral" {
				continue
			}
			height := func(v say.Value) float64 { return -sunHeight(v.Time, at.latitude, at.longitude) }
			from, greatest, to := height(begins[i]), height(middle[i]), height(ends[i])
			if math.Abs(from) < 3 || math.Abs(greatest) < 3 || math.Abs(to) < 3 {
				continue
			}
			want := ""
			switch {
			case from > 0 && greatest > 0 && to > 0:
				want = "yes, all of it"
			case from > 0 && to < 0:
				want = "yes, until moonset"
			case from < 0 && to > 0:
				want = "yes, from moonrise on"
			case from < 0 && greatest < 0 && to < 0:
				want = "no, "
			}
			if !strings.HasPrefix(seen[i], want) {
				t.Errorf("%s on %s: the Moon at %.0f°, %.0f° and %.0f°, and the list says %q", school, middle[i].Time, from, greatest, to, seen[i])
			}
			if marked := r.Tables[len(r.Tables)-1].Rows[i].Marked; marked != strings.HasPrefix(seen[i], "yes") {
				t.Errorf("%s: %q is marked: %v", school, seen[i], marked)
			}
			said[want]++
		}
	}
	if len(said) != 4 {
		t.Errorf("words that were tried: %v", said)
	}
}

// Clocks go forward in spring and back in autumn, by the zone database; the dial is
// most ahead about 3 November and most behind about 11 February (NPL FAQ).
func TestAlertsOfTheClock(t *testing.T) {
	for _, c := range []struct{ school, from, to, want, short string }{
		{"alder reach", "2027-03-10", "2027-03-18", "clocks go forward by 1 h", "2027-03-14"},
		{"alder reach", "2027-11-05", "2027-11-10", "clocks go back by 1 h", "2027-11-07"},
		{"south", "2027-04-01", "2027-04-06", "clocks go back by 1 h", "2027-04-04"},
		{"south", "2027-09-22", "2027-09-30", "clocks go forward by 1 h", "2027-09-26"},
		{"arctic", "2027-03-25", "2027-03-30", "clocks go forward by 1 h", "2027-03-28"},
		{"line north", "2027-10-28", "2027-11-10", "the dial most ahead of an even clock", "2027-11-03"},
		{"line north", "2027-02-05", "2027-02-16", "the dial most behind an even clock", "2027-02-11"},
	} {
		r := reckon(t, c.school, "sky-alerts", "2027-04-20", "from="+c.from, "to="+c.to)
		what, dates := entrytest.Texts(t, r, "days", "what"), entrytest.Cells(t, r, "days", "date")
		found := false
		for i, text := range what {
			if strings.HasPrefix(text, c.want) {
				found = true
				if got := dates[i].Time.Format(time.DateOnly); math.Abs(float64(entrytest.Day(t, got).DaysUntil(entrytest.Day(t, c.short)))) > 1 || strings.HasPrefix(text, "clocks") && got != c.short {
					t.Errorf("%s: %q on %s", c.school, text, got)
				}
			}
		}
		if !found {
			t.Errorf("%s from %s: %q", c.school, c.from, what)
		}
	}
}

// Greatest elongations of Venus (from memory): 15 August 2026 in the east, 3 January 2027 in
// the west; the Swiss Ephemeris has Venus east of the Sun in May and September 2026
// and west of it in January 2027. Opposite ones stand high at midnight.
func TestPlanetsAtTheirBest(t *testing.T) {
	for _, c := range []struct{ school, from, to, want, look string }{
		{"line north", "2026-08-10", "2026-08-20", "Venus at its farthest from the Sun, 46°, in the evening sky", "west"},
		{"south", "2026-08-10", "2026-08-20", "Venus at its farthest from the Sun, 46°, in the evening sky", "west"},
		{"line north", "2026-12-29", "2027-01-08", "Venus at its farthest from the Sun, 47°, in the morning sky", "east"},
		{"alder reach", "2026-12-29", "2027-01-08", "Venus at its farthest from the Sun, 47°, in the morning sky", "east"},
		{"alder reach", "2027-02-15", "2027-02-24", "Mars opposite the Sun", "south"},
		{"south", "2027-02-15", "2027-02-24", "Mars opposite the Sun", "north"},
	} {
		r := reckon(t, c.school, "sky-alerts", "2027-04-20", "from="+c.from, "to="+c.to)
		found := false
		for i, text := range entrytest.Texts(t, r, "days", "what") {
			if !strings.HasPrefix(text, c.want) {
				continue
			}
			found = true
			if look := entrytest.Texts(t, r, "days", "look")[i]; !strings.Contains(look, c.look) {
				t.Errorf("%s: %s. %s", c.school, text, look)
			}
		}
		if !found {
			t.Errorf("%s from %s: %q", c.school, c.from, entrytest.Texts(t, r, "days", "what"))
		}
	}
}

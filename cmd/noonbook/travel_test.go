package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/compute/place"
)

// A site is a school somewhere. Coordinates are those of the towns, to a hundredth of
// a degree or so, from memory; zones are the IANA names that are used there.
type site struct {
	name                string
	latitude, longitude float64
	zone, paper         string
}

// sites hold every kind of zone (whole, half and quarter hours, clock changes of an hour
// and of half an hour, none), both hemispheres, the equator itself, the tropics, both
// circles, and both sides of the date line.
var sites = []site{
	{"Utqiagvik", 71.29, -156.79, "America/Anchorage", "Letter"},
	{"Longyearbyen", 78.22, 15.65, "Arctic/Longyearbyen", "A4"},
	{"Tromso", 69.65, 18.96, "Europe/Oslo", "A4"},
	{"Inuvik", 68.36, -133.72, "America/Inuvik", "Letter"},
	{"Reykjavik", 64.15, -21.94, "Atlantic/Reykjavik", "A4"},
	{"Bergen", 60.39, 5.32, "Europe/Oslo", "A4"},
	{"London", 51.51, -0.13, "Europe/London", "A4"},
	{"St. John's", 47.56, -52.71, "America/St_Johns", "Letter"},
	{"Moncton", 46.09, -64.77, "America/Moncton", "Letter"},
	{"Kashgar", 39.47, 75.99, "Asia/Shanghai", "A4"},
	{"Tokyo", 35.68, 139.69, "Asia/Tokyo", "A4"},
	{"Kathmandu", 27.72, 85.32, "Asia/Kathmandu", "A4"},
	{"Honolulu", 21.31, -157.86, "Pacific/Honolulu", "Letter"},
	{"Mexico City", 19.43, -99.13, "America/Mexico_City", "Letter"},
	{"Chennai", 13.08, 80.27, "Asia/Kolkata", "A4"},
	{"Kiritimati", 1.87, -157.43, "Pacific/Kiritimati", "A4"},
	{"Singapore", 1.35, 103.82, "Asia/Singapore", "A4"},
	{"Pontianak", 0, 109.33, "Asia/Pontianak", "A4"},
	{"Quito", -0.18, -78.47, "America/Guayaquil", "Letter"},
	{"Nairobi", -1.29, 36.82, "Africa/Nairobi", "A4"},
	{"Darwin", -12.46, 130.84, "Australia/Darwin", "A4"},
	{"Apia", -13.83, -171.77, "Pacific/Apia", "A4"},
	{"Suva", -18.14, 178.44, "Pacific/Fiji", "A4"},
	{"Lord Howe", -31.55, 159.08, "Australia/Lord_Howe", "A4"},
	{"Adelaide", -34.93, 138.6, "Australia/Adelaide", "A4"},
	{"Chatham", -43.95, -176.56, "Pacific/Chatham", "A4"},
	{"Dunedin", -45.87, 170.5, "Pacific/Auckland", "A4"},
	{"Punta Arenas", -53.16, -70.91, "America/Punta_Arenas", "Letter"},
	{"McMurdo", -77.85, 166.67, "Antarctica/McMurdo", "Letter"},
}

// terms are six weeks each, one for each quarter of the year.
var terms = [][2]string{
	{"2028-02-07", "2028-03-17"},
	{"2027-05-03", "2027-06-11"},
	{"2027-08-23", "2027-10-01"},
	{"2027-11-01", "2027-12-10"},
}

// sampled are the schools of the ordinary test run, with the number of their term. CI sets
// NOONBOOK_TRAVEL to "terms": all schools in all terms, by either clock in turn; "clocks"
// takes both clocks in each.
var sampled = map[string]int{"Utqiagvik": 2, "Bergen": 3, "Kathmandu": 1, "Nairobi": 1, "Pontianak": 3, "Dunedin": 0, "McMurdo": 0}

// The unit that starter lays out is true at any school in any term.
func TestUnitTravels(t *testing.T) {
	unraced(t)
	all := os.Getenv("NOONBOOK_TRAVEL")
	first := travelTo(t, sites[0], terms[1], "24-hour")
	for _, s := range sites {
		for i, term := range terms {
			for _, clock := range []string{"12-hour", "24-hour"} {
				turn := (clock == "12-hour") == (i%2 == 0) // of this clock, in this term
				if at, ok := sampled[s.name]; all == "" && (!ok || at != i) || all != "clocks" && !turn {
					continue
				}
				t.Run(fmt.Sprintf("%s/%s/%s", s.name, term[0], clock), func(t *testing.T) {
					t.Parallel()
					unit := travelTo(t, s, term, clock)
					unit.warnsOf(t)
					unit.contradicts(t)
					unit.hasPagesOf(t, first)
				})
			}
		}
	}
}

// mayTell are the lines of the unit that may name a month or a year: they tell of history, of
// plans as of a day, or of what is so every year.
var mayTell = map[string]*regexp.Regexp{
	"1-more-about-dials.md": regexp.MustCompile(`faster in January than in July|solstice|long in June and`),
	"2-read-the-dial.md":    regexp.MustCompile(`solstice`),
	"4-long-story.md":       regexp.MustCompile(`as of 2024|the first of January|Before July 1969`),
	"5-our-sky.md":          regexp.MustCompile(`equinoxes, in March and September`),
	"7-back-to-the-dial.md": regexp.MustCompile(`equinox`),
	"8-safety.md":           regexp.MustCompile(`NASA withdrew`),
	"9-rocket-day.md":       regexp.MustCompile(`NASA withdrew`),
	"11-sky-notebook.md":    regexp.MustCompile(`full Moon of June as high`),
	"12-explorers.md":       regexp.MustCompile(`From 1968 to 1972|since 1972|the one of 1995|hoped for in 2007`),
	"13-worlds.md":          regexp.MustCompile(`In 2006 astronomers|until 2006|Since 1992|as of 2024`),
	"15-seasons.md":         regexp.MustCompile(`season-model|June|March|early July|\| (September|December) \|`), // where the Earth stands in a month

	"3-more-about-the-strip.md":    regexp.MustCompile(`from 1979 to 1999 Pluto`),
	"4-more-about-the-story.md":    regexp.MustCompile(`2015; the planet: Keppler|as of 2024|last week of December`),
	"15-more-about-the-seasons.md": regexp.MustCompile(`season-model|June`),
}

// No lesson types a month or a year but in what it may tell.
func TestUnitTypesNoDates(t *testing.T) {
	unraced(t)
	date := regexp.MustCompile(`\b(January|February|March|April|June|July|August|September|October|November|December|(19|20)\d\d)\b`)
	dir := filepath.Join(t.TempDir(), "our-unit")
	must(t, "starter", dir, "school.name=S", "school.latitude=-45.87", "school.longitude=170.5", "school.time_zone=Pacific/Auckland", "term.first_day=2028-02-07", "term.last_day=2028-03-17")
	names, err := filepath.Glob(filepath.Join(dir, "*.md"))
	if err != nil || len(names) < 20 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(text)) {
			if may := mayTell[filepath.Base(name)]; date.MatchString(line) && (may == nil || !may.MatchString(line)) {
				t.Errorf("%s: %s", filepath.Base(name), strings.TrimSpace(line))
			}
		}
	}
}

// A laid unit has been laid out, proofed and pressed.
type laid struct {
	site
	first    place.Date
	warnings []string
	pages    map[string]string // of the staff edition, as text without markup
}

func travelTo(t *testing.T, s site, term [2]string, clock string) *laid {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "our-unit")
	must(t, "starter", dir,
		"school.name=Harbour Street School",
		fmt.Sprintf("school.latitude=%g", s.latitude), fmt.Sprintf("school.longitude=%g", s.longitude),
		"school.time_zone="+s.zone, "school.paper="+s.paper, "school.clock="+clock,
		"term.first_day="+term[0], "term.last_day="+term[1])
	out := filepath.Join(dir, "..", "handbook")
	_, errs := mustAll(t, "press", "--content", dir, "--out", out, "--staff")
	unit := &laid{site: s, pages: map[string]string{}}
	first, err := place.ParseDate(term[0])
	if err != nil {
		t.Fatal(err)
	}
	unit.first = first
	for line := range strings.Lines(errs) {
		if _, warning, ok := strings.Cut(line, ": warning: "); ok {
			file, _, _ := strings.Cut(filepath.Base(line[:strings.Index(line, ":")]), ":")
			unit.warnings = append(unit.warnings, file+": "+strings.TrimSpace(warning))
		}
	}
	names, err := filepath.Glob(out + "-staff/*.html")
	if err != nil || len(names) == 0 {
		t.Fatalf("no pages: %v", err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		unit.pages[filepath.Base(name)] = plain(string(text)) + strings.Join(alt.FindAllString(string(text), -1), " ")
	}
	return unit
}

// alt is what pictures show, in words.
var alt = regexp.MustCompile(` alt="[^"]*"`)

// expected are the warnings that a sound unit may give, each with the reason.
var expected = []struct{ says, because string }{
	{`^12-explorers.md: mission-plans: These plans are as of`, "plans grow old, and nobody but the school can look up what became of them"},
	{`^9-(rocket-day|more-about-rockets).md: rocket-zone: (A steeper pipe|A weaker stamp|The field is too small)`, "the school has not said how large its field is, and the usual one is smaller than the zone"},
	{`^(11-sky-notebook|10-moon-phases).md: lesson: it needs the Moon at 10° or higher`, "some weeks of the month have no Moon in lesson time; the lesson says what to do then"},
	{`^(11-evening-sky|20-our-weeks).md: evening-plan: No evening of this term will do`, "far from the equator summer nights begin too late for a class; the pages say what to do instead, and when"},
	{`^(11-evening-at-school|11-evening-sky|17-for-families|20-our-weeks).md: evening-plan: (On .* (the Moon does not show|no bright planet is high enough)|No later evening of the term will do)`, "some terms have less in their evenings; the lesson says what to do then"},
	{`^1-more-about-dials.md: dial-north: On this date the Sun stands almost overhead`, "between the tropics, on some days; the page tells of equal shadows"},
	{`^7-back-to-the-dial.md: lesson: it should come at least 12 days after`, "near the circles, where the Sun goes down for the winter or comes back late"},
	{`^(1-shadow-clock|2-read-the-dial|7-back-to-the-dial).md: lesson: it(s hourly marks)? needs? the Sun at 10° or higher`, "far from the equator the winter Sun is low or down; the lesson can be left out"},
}

// warnsOf wants no warning but the expected ones.
func (u *laid) warnsOf(t *testing.T) {
	t.Helper()
	for _, w := range u.warnings {
		if !slices.ContainsFunc(expected, func(e struct{ says, because string }) bool {
			return regexp.MustCompile(e.says).MatchString(w)
		}) {
			t.Errorf("warning: %s", w)
		}
	}
}

// contradicts finds sentences that the place makes false.
func (u *laid) contradicts(t *testing.T) {
	t.Helper()
	const tropic = 23.44 // obliquity of the ecliptic, degrees
	all := ""
	for _, name := range sortedKeys(u.pages) {
		all += u.pages[name] + "\n"
	}
	wants := map[string]bool{ // a sentence, and whether it is true here
		"numbered counterclockwise from stop 1":                  u.latitude >= 0,
		"numbered clockwise from stop 1":                         u.latitude < 0,
		"the numbers go round counterclockwise to 8":             u.latitude >= 0,
		"the numbers go round clockwise to 8":                    u.latitude < 0,
		"Why is it warmer in summer than in winter? Write one":   math.Abs(u.latitude) > tropic,
		"Halfway from here to a pole, the year has a warm":       math.Abs(u.latitude) <= tropic,
		"So warm months and cool ones differ less here":          math.Abs(u.latitude) <= tropic,
		"Here the Sun at noon is never low":                      math.Abs(u.latitude) <= tropic, // 90° − 2 × 23.44° = 43° at least
		"The full Moon rises at about the time":                  math.Abs(u.latitude) <= 90-tropic,
		"Near midsummer the full Moon hardly comes up here":      math.Abs(u.latitude) > 90-tropic,
		"right: north-east, east, south-east, south, south-west": u.latitude > tropic,
		"right: south-west, west, north-west, north, north-east": u.latitude < -tropic,
		"right: north, north-east, east, south-east":             math.Abs(u.latitude) < tropic,
		"3 at your right shoulder":                               u.latitude >= 0, // the lamp, of those who turn with the Moon
		"3 at your left shoulder":                                u.latitude < 0,
		"on the right at 2, 3 and 4; on the left at 6, 7 and 8":  u.latitude >= 0,
		"on the left at 2, 3 and 4; on the right at 6, 7 and 8":  u.latitude < 0,
		// What is so everywhere: the Sun goes from east to west, and the morning hours lie west
		// of the noon line; the Earth turns, and goes round the Sun, anticlockwise as seen from
		// above its north end; the first-quarter Moon is a quarter of a day behind the Sun.
		"until the shadow lies on a late one":                                  true,
		"turn the ball once round its stick. Go anticlockwise, as seen from N": true,
		"Walk on to the next month, anticlockwise as seen from above":          true,
		"counted clockwise from north: east is 90°, south 180°, west 270°":     u.pages["read-the-dial.html"] != "",
		"first-quarter Moon is highest about six hours after the Sun's noon":   true,
		"A place further west comes under the Sun later":                       true,
		"A minus means that the Sun is behind":                                 true,
		"Morning hours are on the west side":                                   math.Abs(u.latitude) <= 15, // of the polar dial; a level one has its hours by the noon line
		"Figures have moved on toward the west; below the pole":                true,
		"It moves on to the east, a fist and a bit":                            true,
		"a fist and a bit further east each day":                               true,
		"March left, June behind, September right, December in front":          true,
		// What the words mean.
		"A clock is fast when it shows a later time than it should. It is slow when it shows an earlier one": u.pages["read-the-dial.html"] != "",
		"Fast: the mark shows later than the clock. Slow: earlier":                                           u.pages["back-to-the-dial.html"] != "",
	}
	for sentence, want := range wants {
		if strings.Contains(all, sentence) != want {
			t.Errorf("%q on its pages: %v, at latitude %g", sentence, !want, u.latitude)
		}
	}
	if m := regexp.MustCompile(`it is (spring|summer|autumn|winter) here`).FindStringSubmatch(all); (m != nil) != (math.Abs(u.latitude) > tropic) {
		t.Errorf("season of the place: %q at latitude %g", m, u.latitude)
	} else if m != nil && m[1] != seasonOf(u.first, u.latitude < 0) {
		t.Errorf("it is %s here on %v, at latitude %g", m[1], u.first, u.latitude)
	}
}

// seasonOf is the season that begins at an equinox or solstice, by its usual day.
func seasonOf(d place.Date, south bool) string {
	names := []string{"winter", "spring", "summer", "autumn"}
	at, day := 0, int(d.Month)*100+d.Day
	for i, begins := range []int{320, 621, 922, 1221} {
		if day >= begins {
			at = (i + 1) % 4
		}
	}
	if south {
		at = (at + 2) % 4
	}
	return names[at]
}

// conditional are the pages that stand at some schools only.
// where the Sun does not come up when the term begins the class marks no hours; where no
// evening is dark in time the class does not meet.
var conditional = regexp.MustCompile(`^print-|^((day|pupil|card|room)-)?(read-the-dial|back-to-the-dial|evening-at-school).html$`)

// hasPagesOf wants the pages of another school, except those that conditions take out.
func (u *laid) hasPagesOf(t *testing.T, other *laid) {
	t.Helper()
	for _, pair := range [][2]*laid{{u, other}, {other, u}} {
		for _, name := range sortedKeys(pair[0].pages) {
			if _, ok := pair[1].pages[name]; !ok && !conditional.MatchString(name) {
				t.Errorf("%s has the page %s, %s has not", pair[0].name, name, pair[1].name)
			}
		}
	}
}

func sortedKeys(m map[string]string) []string {
	names := make([]string, 0, len(m))
	for name := range m {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

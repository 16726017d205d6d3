package plan

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/typeset"
	"noonbook/compute/place"
)

// A home is a school whose Sun and Moon the reference tables know on two days.
type home struct {
	name                string // in the tables
	latitude, longitude float64
	zone                string
	pupils, size        int
	squares             int // of the strip, of 110 mm each
	style               int // millimetres
}

var homes = []home{
	{"alder-reach", 46.09, -64.77, "America/Moncton", 28, 3, 300, 150},
	{"south-island", -45.87, 170.5, "Pacific/Auckland", 25, 4, 240, 120},
}

func (h home) settings(t *testing.T) form.Values {
	return form.Values{
		"school.name": "School of " + h.name, "school.latitude": h.latitude, "school.longitude": h.longitude, "school.time_zone": zone(t, h.zone),
		"class.pupils": h.pupils, "class.group_size": h.size, "stock.strip_squares": h.squares, "stock.style_mm": float64(h.style),
	}
}

// tabled returns an instant of a row of testdata/reference, whose README says what
// libraries made it.
func (h home) tabled(t *testing.T, file, library, date, column string) time.Time {
	t.Helper()
	f, err := os.Open("../../testdata/reference/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := func(row []string, name string) string { return row[slices.Index(rows[0], name)] }
	for _, row := range rows[1:] {
		if at(row, "library") == library && at(row, "place") == h.name && at(row, "date") == date {
			when, err := time.Parse(time.RFC3339, at(row, column))
			if err != nil {
				t.Fatal(err)
			}
			return when.In(zone(t, h.zone))
		}
	}
	t.Fatalf("%s has no row of %s on %s", file, h.name, date)
	return time.Time{}
}

// A tongue is how a school wants its numbers written.
type tongue struct {
	language  string
	customary bool
}

// A value is what a page must say: in words, and in the attribute for machines.
type value struct {
	words  string
	number float64
	near   float64 // how far the attribute may be off
	at     time.Time
}

func (l tongue) digits(x float64, decimals int) string {
	s := strings.Replace(strconv.FormatFloat(x, 'f', decimals, 64), "-", "−", 1)
	if l.language == "fr" {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

// clock writes an instant of the tables to the minute. It must not be so near to
// the half of one that a second decides.
func (l tongue) clock(t *testing.T, at time.Time) value {
	t.Helper()
	if s := at.Sub(at.Truncate(time.Minute)).Seconds(); math.Abs(s-30) < 1.5 {
		t.Fatalf("%v is no good example", at)
	}
	words := at.Round(time.Minute).Format("15:04")
	words = strings.TrimPrefix(words, "0")
	if l.language == "fr" {
		words = strings.Replace(words, ":", " h ", 1)
	}
	return value{words: words, at: at}
}

// lasting writes a stretch of hours and minutes.
func (l tongue) lasting(d time.Duration) value {
	words := fmt.Sprintf("%d h %d min", int(d.Round(time.Minute).Hours()), int(d.Round(time.Minute).Minutes())%60)
	return value{words: strings.TrimPrefix(words, "0 h "), number: d.Seconds(), near: 1.5}
}

// plain writes a number with a unit that is the same in every language and measure.
func (l tongue) plain(x float64, decimals int, unit string) value {
	return value{words: l.digits(x, decimals) + unit, number: x, near: math.Pow10(-decimals-2)/2 + 1e-9}
}

// ruler writes whole millimetres, or inches to a sixteenth: 25.4 mm are one.
func (l tongue) ruler(mm float64) value {
	v := l.plain(mm, 0, " mm")
	if l.customary {
		n := int(math.Round(mm / 25.4 * 16))
		v.words = fmt.Sprint(n / 16)
		if part, of := n%16, 16; part > 0 {
			for part%2 == 0 {
				part, of = part/2, of/2
			}
			v.words += fmt.Sprintf(" %d/%d", part, of)
		}
		v.words += " in"
	}
	return v
}

// metres writes metres with a decimal, or whole feet: 0.3048 m are one.
func (l tongue) metres(m float64) value {
	v := l.plain(m, 1, " m")
	if l.customary {
		v.words = l.digits(m/0.3048, 0) + " ft"
	}
	return v
}

func (l tongue) kilograms(kg float64, decimals int) value {
	v := l.plain(kg, decimals, " kg")
	if l.customary {
		v.words = l.digits(kg/0.45359237, decimals) + " lb"
	}
	return v
}

func (l tongue) say(en, fr string) value {
	if l.language == "fr" {
		en = fr
	}
	return value{words: en}
}

func rad(deg float64) float64 { return deg * math.Pi / 180 }

// facts are placeholders with what each must say at a school, from the settings,
// a closed formula or a table of other libraries.
func facts(t *testing.T, h home, l tongue) map[string]value {
	sun := func(date, column string) value {
		return l.clock(t, h.tabled(t, "sun-days.csv", "erfa", date, column))
	}
	moon := func(column string) value {
		return l.clock(t, h.tabled(t, "moon-days.csv", "swisseph", "2027-02-07", column))
	}
	noon := h.tabled(t, "sun-days.csv", "erfa", "2027-02-07", "transit")
	day := h.tabled(t, "sun-days.csv", "erfa", "2027-02-07", "set").Sub(h.tabled(t, "sun-days.csv", "erfa", "2027-02-07", "rise"))
	phi := math.Abs(h.latitude)
	northern := h.latitude > 0
	side := func(north, south string) string {
		if northern {
			return north
		}
		return south
	}
	style := float64(h.style)
	groups := math.Round(float64(h.pupils) / float64(h.size))
	earth := float64(h.squares) / 30.06992276 // Neptune's semi-major axis in au, E. M. Standish, Keplerian elements for approximate positions, table 1 (from memory)
	list := map[string]value{
		// Day of the lesson, 7 February 2027: testdata/reference/sun-days.csv and moon-days.csv.
		"sun-day.rise":       sun("2027-02-07", "rise"),
		"sun-day.noon":       sun("2027-02-07", "transit"),
		"sun-day.set":        sun("2027-02-07", "set"),
		"sun-day.day_length": l.lasting(day),
		"moon-month.rise":    moon("rise"),
		"moon-month.set":     moon("set"),
		// How long after twelve the Sun's noon is.
		"place-facts.noon_after_twelve": l.lasting(noon.Sub(time.Date(2027, 2, 7, 12, 0, 0, 0, noon.Location()))),
		"place-facts.local_noon":        sun("2027-02-07", "transit"),
		// Another day.
		"sun-day.rise date=2027-08-23": sun("2027-08-23", "rise"),
		"sun-day.set date=2027-08-23":  sun("2027-08-23", "set"),
		// A horizontal dial: its gnomon is a right triangle with the latitude at its
		// foot, and its lines lie at atan(sin φ tan H): A. Waugh, Sundials (1973),
		// chapter 10 (from memory).
		"dial-table.gnomon_angle":  l.plain(phi, 1, "°"),
		"dial-table.gnomon_base":   l.ruler(style * math.Cos(rad(phi))),
		"dial-table.gnomon_height": l.ruler(style * math.Sin(rad(phi))),
		"dial-table.gnomon_style":  l.ruler(style),
		"dial-table.first_hour":    l.plain(math.Atan(math.Sin(rad(phi))*math.Tan(rad(15)))/rad(1), 1, "°"),
		"dial-table.turns":         l.say(side("clockwise", "anticlockwise"), side("dans le sens horaire", "dans le sens antihoraire")),
		"dial-day.tip_height":      l.ruler(style * math.Sin(rad(phi))),
		// The settings themselves.
		"class-facts.school":     l.say("School of "+h.name, "School of "+h.name),
		"class-facts.pupils":     l.plain(float64(h.pupils), 0, ""),
		"class-facts.groups":     l.plain(groups, 0, ""),
		"class-facts.group_size": l.plain(math.Ceil(float64(h.pupils)/groups), 0, ""),
		// The strip: its squares in a row, Neptune on the last seam.
		"strip-table.strip_squares":                         l.plain(float64(h.squares), 0, ""),
		"strip-table.strip_length":                          l.metres(float64(h.squares) * 0.110),
		"strip-table.square_length":                         l.ruler(110),
		"strip-table.earth_squares":                         l.plain(earth, 1, ""),
		"strip-table.earth_squares stock.strip_squares=100": l.plain(100/30.06992276, 1, ""),
		// A lens of 2.5 dioptres has 1000/2.5 mm; lenses stay metric.
		"lens-power.focal power_dioptres=2.5": l.plain(400, 1, " mm"),
		// A triangle: 20 m from the launcher, 40° above the eye.
		"rocket-height.above_eye baseline_m=20 angle=40": l.metres(20 * math.Tan(rad(40))),
		"weight-table.mass mass_kg=40":                   l.kilograms(40, 0),
	}
	latitude, longitude := l.plain(phi, 2, "°"), l.plain(math.Abs(h.longitude), 2, "°")
	latitude.words += " " + side(l.say("north", "nord").words, l.say("south", "sud").words)
	longitude.words += " " + map[bool]string{true: l.say("east", "est").words, false: l.say("west", "ouest").words}[h.longitude > 0]
	latitude.number, longitude.number = h.latitude, h.longitude
	list["place-facts.latitude"], list["place-facts.longitude"] = latitude, longitude
	// 1.62 m/s² on the Moon and 9.78 to 9.83 here: NASA, Moon Fact Sheet (from memory).
	moonScale := l.kilograms(40*1.62/9.80, 1)
	moonScale.near = 0.03
	list["weight-table.scale world=moon mass_kg=40"] = moonScale
	return list
}

// wrong reports what is wrong with how an element shows a value, or
// nothing.
func (v value) wrong(e *element) string {
	if got := line(e.words()); got != v.words {
		return fmt.Sprintf("it says %q, want %q", got, v.words)
	}
	var shown *element
	for _, name := range []string{"data", "time", "span"} {
		if shown == nil {
			shown = e.find(name)
		}
	}
	switch {
	case shown == nil:
		return "it is no fact"
	case !v.at.IsZero():
		at, err := time.Parse(time.RFC3339, shown.at["datetime"])
		if err != nil || math.Abs(at.Sub(v.at).Seconds()) > 1.5 {
			return fmt.Sprintf("its datetime is %q, want %s", shown.at["datetime"], v.at.Format(time.RFC3339))
		}
		if _, ahead := at.Zone(); ahead != offset(v.at) {
			return fmt.Sprintf("its datetime %q is not by the school's clock", shown.at["datetime"])
		}
	case v.near > 0:
		x, err := strconv.ParseFloat(shown.at["value"], 64)
		if err != nil || math.Abs(x-v.number) > v.near {
			return fmt.Sprintf("its value is %q, want %v", shown.at["value"], v.number)
		}
	case shown.name != "span":
		return "words are a " + shown.name
	}
	return ""
}

func offset(at time.Time) int {
	_, ahead := at.Zone()
	return ahead
}

// all collects the elements of a name.
func (e *element) all(name string) []*element {
	var list []*element
	if e.name == name {
		list = append(list, e)
	}
	for _, c := range e.children {
		list = append(list, c.all(name)...)
	}
	return list
}

// One plan, pressed for one school and then another and the first again: every
// fact on its pages has the value of its own school, in words of its language and
// measure and in the attribute for machines, in the margin, in sentences, lists,
// headings and tables, and on the day sheet.
func TestFactsOnPagesHaveTheirValues(t *testing.T) {
	for _, l := range []tongue{{"en", false}, {"en", true}, {"fr", false}} {
		t.Run(fmt.Sprint(l), func(t *testing.T) {
			names := []string{}
			for name := range facts(t, homes[0], l) {
				names = append(names, name)
			}
			slices.Sort(names)
			var b strings.Builder
			b.WriteString("```lesson\ntitle = \"Values\"\ndate = 2027-02-07\nglance = [")
			for _, name := range names {
				fmt.Fprintf(&b, "%q, ", name)
			}
			b.WriteString("]\n```\n\n")
			for _, name := range names {
				fmt.Fprintf(&b, "- {%s}\n", name)
			}
			b.WriteString("\n| Name | Value |\n|---|---|\n")
			for _, name := range names {
				fmt.Fprintf(&b, "| n | {%s} |\n", name)
			}
			for _, name := range names {
				fmt.Fprintf(&b, "\n### *{%s}*\n\n**{%s}**\n", name, name)
			}
			unit, problems := readWith(t, fstest.MapFS{
				"unit.toml":   {Data: []byte(strings.Replace(oracleSettings, "[school]\n", "[school]\nlanguage = \""+l.language+"\"\n", 1))},
				"1-values.md": {Data: []byte(b.String())},
			}, "unit", placeholder.Catalogue())
			if problems.Faults() > 0 {
				t.Fatal(problems)
			}
			words, err := typeset.Language(l.language, l.customary)
			if err != nil {
				t.Fatal(err)
			}
			p, err := Make(unit, words, Staff, placeholder.Catalogue())
			if err != nil {
				t.Fatal(err)
			}
			term := form.Values{"term.first_day": place.Date{Year: 2027, Month: 2, Day: 1}, "term.last_day": place.Date{Year: 2027, Month: 2, Day: 26}, "term.school_days": []string{"sunday", "monday"}}
			var pressed []map[string]string
			for _, h := range []home{homes[0], homes[1], homes[0]} {
				files, problems := p.Press(unit.Settings.With(term).With(h.settings(t)))
				if problems.Faults() > 0 {
					t.Fatal(problems)
				}
				texts := map[string]string{}
				for _, f := range files {
					texts[f.Name] = string(f.Bytes)
				}
				pressed = append(pressed, texts)
				want := facts(t, h, l)
				page := parsed(t, []byte(texts["values.html"])).find("article")
				sheet := parsed(t, []byte(texts["day-values.html"]))
				margin := page.with("class", "numbers-today")[0].all("dd")
				var cells []*element
				for _, e := range page.all("tr")[1:] {
					cells = append(cells, e.all("td")[1])
				}
				for i, name := range names {
					for where, list := range map[string][]*element{"margin": margin, "list": page.all("li"), "table": cells, "heading": page.all("h3"), "sentence": page.all("strong")} {
						if i >= len(list) {
							t.Fatalf("%s, %s: %d of %d are there", h.name, where, len(list), len(names))
						}
						if wrong := want[name].wrong(list[i]); wrong != "" {
							t.Errorf("%s, %s, %s: %s", h.name, where, name, wrong)
						}
					}
				}
				numbers := sheet.all("dd")
				for label, name := range map[string][2]string{ // the words of the theme, repeated
					"sun-day.rise": {"Sunrise", "Lever du Soleil"}, "sun-day.set": {"Sunset", "Coucher du Soleil"}, "sun-day.noon": {"The Sun’s noon", "Midi solaire"},
					"moon-month.rise": {"Moonrise", "Lever de la Lune"}, "moon-month.set": {"Moonset", "Coucher de la Lune"},
				} {
					title := l.say(name[0], name[1]).words
					at := -1 // the last of that name: the lesson's own margin comes before
					for i, dt := range sheet.all("dt") {
						if line(dt.words()) == title {
							at = i
						}
					}
					if at < 0 {
						t.Errorf("%s: the day sheet has no %q", h.name, title)
					} else if wrong := want[label].wrong(numbers[at]); wrong != "" {
						t.Errorf("%s, day sheet, %s: %s", h.name, title, wrong)
					}
				}
			}
			for name, text := range pressed[0] {
				if pressed[2][name] != text {
					t.Errorf("%s differs when it is pressed again after another school", name)
				}
			}
			for name, text := range pressed[1] {
				for _, other := range []string{"alder-reach", "46.09", "46,09", "64.77", "64,77"} {
					if strings.Contains(text, other) {
						t.Errorf("%s of the second school holds %s of the first", name, other)
					}
				}
			}
		})
	}
}

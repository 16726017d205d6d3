package form_test

import (
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode"

	"github.com/BurntSushi/toml"

	"noonbook/build/form"
	"noonbook/compute/place"
)

var school = form.Form{
	{Key: form.Key[string]("name"), Required: true},
	{Key: form.Key[string]("paper"), Choices: []string{"A4", "Letter"}, Default: "A4"},
	{Key: form.Key[bool]("open")},
	{Key: form.Key[[]string]("words")},
	{Key: form.Key[[]place.Date]("off")},
	{Key: form.Key[place.Date]("first")},
	{Key: form.Key[time.Duration]("bell")},
	{Key: form.Key[form.YearMonth]("month")},
	{Key: form.Key[[]form.TimeSpan]("slots")},
	{Key: form.Key[float64]("at.latitude"), Unit: "deg", Min: -90, Max: 90, Required: true},
	{Key: form.Key[*time.Location]("at.zone")},
	{Key: form.Key[int]("stock.squares"), Min: 1, Max: 1000, Default: 300},
	{Key: form.Key[[]form.Values]("kit"), Fields: form.Form{
		{Key: form.Key[string]("item"), Required: true},
		{Key: form.Key[float64]("count"), Default: 1.0},
	}},
}

func TestReadTakesEveryKind(t *testing.T) {
	values, faults, _ := school.Read([]byte(`
name = "Golden"
open = true
words = ["a", 'b']
off = [2027-04-16, "2027-04-19"]
first = 2027-04-12
bell = 09:05:00
month = "2028-02"
slots = ["9:10-10:00", "13:15–14:05"]
at.latitude = -45
at.zone = "Pacific/Auckland"
kit = [{ item = "card" }, { item = "glue", count = 0.5 }]
`))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	zone := form.Key[*time.Location]("at.zone").Of(values)
	if zone == nil || zone.String() != "Pacific/Auckland" {
		t.Errorf("zone is %v", zone)
	}
	delete(values, "at.zone")
	hm := func(h, m int) time.Duration { return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute }
	want := form.Values{
		"name": "Golden", "open": true, "words": []string{"a", "b"},
		"off":         []place.Date{{Year: 2027, Month: 4, Day: 16}, {Year: 2027, Month: 4, Day: 19}},
		"first":       place.Date{Year: 2027, Month: 4, Day: 12},
		"bell":        hm(9, 5),
		"month":       form.YearMonth{First: place.Date{Year: 2028, Month: 2, Day: 1}},
		"slots":       []form.TimeSpan{{From: hm(9, 10), To: hm(10, 0)}, {From: hm(13, 15), To: hm(14, 5)}},
		"at.latitude": -45.0,
		"kit":         []form.Values{{"item": "card", "count": 1.0}, {"item": "glue", "count": 0.5}},
	}
	if !reflect.DeepEqual(values, want) {
		t.Errorf("got  %v\nwant %v", values, want)
	}
	if full := school.Complete(values); form.Key[int]("stock.squares").Of(full) != 300 || form.Key[string]("paper").Of(full) != "A4" {
		t.Errorf("defaults are missing in %v", full)
	}
}

// Each text holds § where the fault stands.
func TestReadPlacesFaults(t *testing.T) {
	const head = "name = \"G\"\nat.latitude = 1\n"
	for _, c := range []struct{ name, text, want string }{
		{"out of range", "name = \"G\"\n[at]\nlatitude = §95", "at.latitude 95° is outside −90° to 90°"},
		{"wrong type", head + "open = §\"yes\"", `open is "yes", want true or false`},
		{"fraction", head + "[stock]\nsquares=§1.5", "stock.squares is 1.5, want a whole number from 1 to 1000"},
		{"infinite", "name = \"G\"\nat = { latitude = §inf }", "at.latitude is not a finite number"},
		{"unknown", head + "§nmae = 1", `nmae is not a key; did you mean "name"?`},
		{"wrong table", head + "§latitude = 1", "latitude is not a key; it belongs in the table [at]"},
		{"unknown table", head + "§[att]\nx = 1", `att is not a key; did you mean "at"?`},
		{"not a table", "name = \"G\"\nat = §5", "at is 5, want a table with the keys latitude, zone"},
		{"choice", head + "paper = §\"Leter\"", `paper "Leter" is unknown, want "A4" or "Letter"; did you mean "Letter"?`},
		{"item of a list", head + "words = [ \"# no comment ]\", # a comment ]\n §7]", "words is 7, want a text in quotes"},
		{"item of dates", head + "off = [2027-04-16, §\"Friday\"]", `off is "Friday", want a date such as 2027-04-20`},
		{"moment for a date", head + "first = §2027-04-12T10:00:00Z", "first is the moment 2027-04-12T10:00:00Z, want a date such as 2027-04-20"},
		{"in the second table", head + "[[kit]]\nitem = \"a\"\n[[kit]]\nitem = \"\"\"\nb\"\"\"\ncount = §\"x\"", `count is "x", want a number`},
		{"in an inline table", head + "kit = [{item = 'a'}, {item = 'b', count = §true}]", "count is true, want a number"},
		{"missing in a table", head + "kit = [{item = 'a'}, §{count = 2}]", "item is missing: a text in quotes"},
		{"missing table", "§name = \"G\"", "[at] is missing: at.latitude, a number from −90° to 90°"},
		{"missing key", "name = \"G\"\n§[at]\nzone = \"UTC\"", "at.latitude is missing: a number from −90° to 90°"},
		{"zone", "name = \"G\"\nat.latitude = 1\nat.zone = §\"Mars/Base\"", `at.zone "Mars/Base" is not in the IANA time zone database; want a name such as "America/Moncton"`},
		{"clock", head + "bell = §\"25:00\"", `bell is "25:00", want a time of day such as "9:10"`},
		{"month", head + "month = §\"2027-13\"", `month is "2027-13", want a month such as "2027-04"`},
		{"day for a month", head + "month = §2027-04-01", `month is the date or time 2027-04-01, want a month such as "2027-04"`},
		{"span", head + "slots = [§\"10:00-9:00\"]", `slots is "10:00-9:00", want a stretch of the day such as "9:10-10:00"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			before, after, _ := strings.Cut(c.text, "§")
			line := strings.Count(before, "\n") + 1
			column := len(before) - strings.LastIndex(before, "\n")
			_, faults, _ := school.Read([]byte(before + after))
			if len(faults) != 1 {
				t.Fatalf("%d faults: %v", len(faults), faults)
			}
			if got, want := faults[0], (form.Fault{Line: line, Column: column, Text: c.want}); got != want {
				t.Errorf("got  %v\nwant %v", got, want)
			}
		})
	}
}

func TestNearest(t *testing.T) {
	words := []string{"compute", "lesson", "caution", "answer", "staff", "to"}
	for word, want := range map[string]string{
		"comptue":  "compute", // letters swapped
		"Compute":  "compute",
		"lessons":  "lesson",
		"awnser":   "answer",
		"cation":   "caution",
		"go":       "to",
		"toml":     "",
		"text":     "",
		"mermaids": "",
		"":         "",
	} {
		if got := form.Nearest(word, words); got != want {
			t.Errorf("%q: got %q, want %q", word, got, want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("name = \"G\"\n[at]\nlatitude = 1\n[[kit]]\nitem = '''a'''\n")
	f.Add("kit = [{item = \"a\\\"\"}, {count = 2}]\n\"quoted\".\"key\" = 1")
	f.Add("off = [2027-04-16, [1, {a = [}]]")
	f.Add("a = \"\"\"\\\"\"\"\"\"\n[a.b]\n[[a.b.c]]")
	f.Add("name = “G”\nat.latitude = 46°05'N\nfirst = 2027-4-1\nname = \"x")
	f.Add("[at\nlatitude: -1,3\noff = [27/04/2027, \"\"\"\nkit = [{item = a, count = 1,5}\n[at]\n[at]\n\"\\u0000\" = 'x' y")
	f.Add("words = [a \"b\" {c = [}]\n= 1\nx\nstock.squares = 1 000 mm\nat]\n\"\"\"")
	f.Fuzz(func(t *testing.T, text string) {
		values, faults, _ := school.Read([]byte(text))
		var any map[string]any
		if _, err := toml.Decode(text, &any); err != nil && len(faults) == 0 {
			t.Errorf("what is no TOML has no fault: %v", err)
		}
		lines := strings.Split(text, "\n")
		for _, fault := range faults {
			if fault.Line < 1 || fault.Line > len(lines)+1 || fault.Column < 1 {
				t.Errorf("fault outside the text: %v", fault)
			}
			if fault.Text == "" || strings.ContainsFunc(fault.Text, unicode.IsControl) || len(fault.Text) > 2000 {
				t.Errorf("fault without a plain text: %q", fault.Text)
			}
		}
		if latitude := form.Key[float64]("at.latitude").Of(values); latitude < -90 || latitude > 90 {
			t.Errorf("latitude %v was taken", latitude)
		}
	})
}

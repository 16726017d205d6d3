package form

import (
	"fmt"
	"strings"
	"testing"

	"noonbook/compute/place"
)

// structure writes a day by name with brackets round what it counts from.
func structure(d Day) string {
	from := ""
	if d.From != nil {
		from = " (" + structure(*d.From) + ")"
	}
	switch d.Sort {
	case DayOfFile:
		return "file " + d.File
	case DayOfThis:
		return "this"
	case DayTermFirst:
		return "first"
	case DayTermLast:
		return "last"
	case DayCounted:
		return fmt.Sprintf("%+d %s%s", d.Count, [...]string{"d", "w", "m"}[d.Unit], from)
	case DayNext:
		return "next " + d.Event.String() + from
	}
	return "last " + d.Event.String() + from
}

// The grammar is the one in the documentation of Day.
func TestDayByName(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"this lesson", "this"},
		{"First Day of Term", "first"},
		{"last day of term", "last"},
		{"  13   weeks after\tthis  lesson ", "+13 w (this)"},
		{"1 day before first day of term", "-1 d (first)"},
		{"2 MONTHS After Last Day Of Term", "+2 m (last)"},
		{"28 days after 11-sky-notebook", "+28 d (file 11-sky-notebook)"},
		{"11-sky-notebook", "file 11-sky-notebook"},
		{"next-steps", "file next-steps"},
		{"our sky", "file our sky"},
		{"11 sky", "file 11 sky"},
		{"next full moon", "next full Moon"},
		{"LAST NEW MOON", "last new Moon"},
		{"next first-quarter Moon after last day of term", "next first-quarter Moon (last)"},
		{"last last-quarter Moon before this lesson", "last last-quarter Moon (this)"},
		{"1 week after next March equinox", "+1 w (next March equinox)"},
		{"next full Moon after 1 week after last solstice before 2-b", "next full Moon (+1 w (last solstice (file 2-b)))"},
		{"3 days before 1 week after next clock change", "-3 d (+1 w (next clock change))"},
		{"0 days after this lesson", "+0 d (this)"},
	} {
		day, meant, ok := ParseDay(c.text)
		if got := structure(day); !ok || got != c.want {
			t.Errorf("%q is %s (%v, meant %q), want %s", c.text, got, ok, meant, c.want)
		}
	}
	for _, e := range DayEvents() {
		for _, word := range []string{"next ", "last "} {
			if day, _, ok := ParseDay(word + e); !ok || structure(day) != word+e {
				t.Errorf("%s%s is %s (%v)", word, e, structure(day), ok)
			}
		}
	}
}

// What is no name of a day is told with what was meant, where that is near.
func TestNoDayByName(t *testing.T) {
	want := `, want a date such as 2027-04-20, or a day by name such as "next full Moon"`
	for _, c := range []struct{ text, complaint string }{
		{"next ful Moon", `is "next ful Moon"; did you mean "next full Moon"?`},
		{"next first quarter Moon", `is "next first quarter Moon"; did you mean "next first-quarter Moon"?`},
		{"full Moon", `is "full Moon"; did you mean "next full Moon"?`},
		{"2 weks after this lesson", `is "2 weks after this lesson"; did you mean "2 weeks after this lesson"?`},
		{"2 weeks afer this lesson", `is "2 weeks afer this lesson"; did you mean "2 weeks after this lesson"?`},
		{"two weeks after this lesson", `is "two weeks after this lesson"; did you mean "2 weeks after this lesson"?`},
		{"a week before next equinoxe", `is "a week before next equinoxe"; did you mean "1 week before next equinox"?`},
		{"next full Moon before last day of term", `is "next full Moon before last day of term"; did you mean "last full Moon before last day of term"?`},
		{"last solstice after this lesson", `is "last solstice after this lesson"; did you mean "next solstice after this lesson"?`},
		{"next eclipse", `is "next eclipse"` + want},
		{"2 years after this lesson", ``}, // a file may be named so; the unit tells
		{"3 weeks this lesson", `is "3 weeks this lesson"` + want},
		{"10000 days after this lesson", `is "10000 days after this lesson"` + want},
		{"", `is ""` + want},
		{"1 day after " + strings.Repeat("1 day after ", 20) + "this lesson", `is "1 day after 1 day after 1 day after 1 day after 1 day after …"` + want},
		{"20/04/2027", `is "20/04/2027"; write 2027-04-20`},
		{"2027-02-30", `is "2027-02-30"` + want},
	} {
		if _, got := ADay().ParseText(c.text); got != c.complaint {
			t.Errorf("%q %s\nwant %s", c.text, got, c.complaint)
		}
	}
	if _, complaint := (Field{Key: Key[place.Date]("date")}).ParseText("next full Moon"); complaint != `is "next full Moon", want a date such as 2027-04-20` {
		t.Errorf("a setting takes a day by name: %s", complaint)
	}
}

// A file that the unit lacks may be meant for another, or for an anchor.
func TestMeantFile(t *testing.T) {
	files := []string{"11-sky-notebook", "2-read-the-dial"}
	for text, want := range map[string]string{
		"28 days after 11-sky-notbook":     "28 days after 11-sky-notebook",
		"11-sky-notebook.md":               "11-sky-notebook",
		"this leson":                       "this lesson",
		"next  full Moon after thislesson": "next full Moon after this lesson",
		"nxt full Moon":                    "next full Moon",
		"tomorrow":                         "",
	} {
		day, _, ok := ParseDay(text)
		if got := day.Among(files); !ok || got != want {
			t.Errorf("%q is meant for %q, want %q", text, got, want)
		}
	}
}

// A month later is the same day of the month or its last: ordinary usage of contracts and
// calendars, no source. 2028 is a leap year.
func TestCountDays(t *testing.T) {
	for _, c := range []struct {
		from string
		n    int
		unit DayUnit
		want string
	}{
		{"2027-01-31", 1, InMonths, "2027-02-28"},
		{"2028-01-31", 1, InMonths, "2028-02-29"},
		{"2027-03-31", -1, InMonths, "2027-02-28"},
		{"2027-05-31", 1, InMonths, "2027-06-30"},
		{"2027-12-31", 2, InMonths, "2028-02-29"},
		{"2027-01-15", -1, InMonths, "2026-12-15"},
		{"2027-01-15", -13, InMonths, "2025-12-15"},
		{"2027-11-30", 1, InMonths, "2027-12-30"},
		{"2027-04-20", 13, InWeeks, "2027-07-20"},
		{"2027-03-01", -1, InDays, "2027-02-28"},
		{"2027-04-20", 9999, InMonths, "2860-07-20"},
	} {
		from, err := place.ParseDate(c.from)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := c.unit.Count(from, c.n); err != nil || got.String() != c.want {
			t.Errorf("%s and %d of unit %d is %s (%v), want %s", c.from, c.n, c.unit, got, err, c.want)
		}
	}
	if _, err := InMonths.Count(place.Date{Year: 9000, Month: 1, Day: 1}, 9999*2); err != ErrYears {
		t.Errorf("a year of five digits: %v", err)
	}
}

// Wherever a date can stand a day can be named: a month is that of the day, and a list
// may hold both.
func TestValuesOnDays(t *testing.T) {
	f := Form{
		{Key: Key[place.Date]("date")},
		{Key: Key[YearMonth]("month")},
		{Key: Key[[]place.Date]("days")},
	}.Named()
	v, faults, _ := f.Read([]byte("date = \"next full Moon\"\nmonth = \"this lesson\"\ndays = [2027-05-01, \"4-long-story\"]\n"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if days := v.Days(); len(days) != 3 || days[0].Key != "date" || days[1].Key != "days[1]" || days[2].Key != "month" {
		t.Errorf("it names %v", days)
	}
	asked := 0
	full, err := v.OnDays(func(d Day) (place.Date, error) {
		asked++
		return place.Date{Year: 2027, Month: 4, Day: 10 + len(d.Text)}, nil
	})
	if err != nil || asked != 3 {
		t.Fatalf("%v after %d questions", err, asked)
	}
	if got := fmt.Sprint(Key[place.Date]("date").Of(full), Key[YearMonth]("month").Of(full), Key[[]place.Date]("days").Of(full)); got != "2027-04-24 {2027-04-01} [2027-05-01 2027-04-22]" {
		t.Errorf("it holds %s", got)
	}
	_, faults, _ = f.Read([]byte("days = [\n  2027-05-01,\n  \"nxt ful Moon after\",\n  \"next ful Moon\",\n]\n"))
	if len(faults) != 1 || faults[0].Line != 4 || faults[0].Text != `days is "next ful Moon"; did you mean "next full Moon"?` {
		t.Errorf("faults of a list: %v", faults)
	}
	for key, want := range map[string]string{
		"date":  `a date such as 2027-04-20, or a day by name such as "next full Moon"`,
		"month": `a month such as "2027-04", or a day by name such as "next full Moon" for its month`,
		"days":  `a list of dates such as 2027-04-20 or of days by name such as "next full Moon"`,
	} {
		if field, _ := f.Field(key); field.Allowed() != want {
			t.Errorf("%s takes %s", key, field.Allowed())
		}
	}
}

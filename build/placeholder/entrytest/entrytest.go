// Package entrytest helps a topic's tests evaluate its placeholders at schools that
// are far apart, and read what comes back.
package entrytest

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// Warned reports whether a result has a warning of that key.
func Warned(r result.Result, key string) bool {
	return slices.ContainsFunc(r.Warnings, func(p say.Phrase) bool { return p.Key == key })
}

// English returns the English words.
func English(t *testing.T) *typeset.Words {
	t.Helper()
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	return words
}

// Schools are far apart: both hemispheres, the line, the polar day and night,
// the pole, zones with half hours and on the other side of the date line.
var Schools = map[string]string{
	"alder reach": `school.latitude = 46.09
school.longitude = -64.77
school.time_zone = "America/Moncton"`,
	"south": `school.latitude = -45.87
school.longitude = 170.5
school.time_zone = "Pacific/Auckland"`,
	"line south": `school.latitude = -0.2
school.longitude = -78.5
school.time_zone = "America/Guayaquil"`,
	"equator": `school.latitude = 0
school.longitude = 6.7
school.time_zone = "Africa/Lagos"`,
	"line north": `school.latitude = 1.4
school.longitude = 103.8
school.time_zone = "Asia/Singapore"`,
	"arctic": `school.latitude = 69.6
school.longitude = 18.95
school.time_zone = "Europe/Oslo"`,
	"north pole": `school.latitude = 90
school.longitude = 0
school.time_zone = "UTC"`,
	"south pole": `school.latitude = -90
school.longitude = 180
school.time_zone = "Antarctica/McMurdo"`,
	"half hour": `school.latitude = 27.7
school.longitude = 85.3
school.time_zone = "Asia/Kathmandu"`,
	"far east": `school.latitude = 1.87
school.longitude = -157.4
school.time_zone = "Pacific/Kiritimati"`,
}

// Settings returns the settings of one of Schools, complete.
func Settings(t testing.TB, where string) form.Values {
	t.Helper()
	text := "unit.title = \"T\"\nschool.name = \"S\"\nterm.first_day = 2027-04-12\nterm.last_day = 2027-04-30\n" + Schools[where]
	values, faults, _ := school.Settings().Read([]byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return school.Settings().Complete(values)
}

// Lessons are those of a small unit, for entries that read them.
var Lessons = []classroom.Lesson{
	{Title: "Build", Page: "build.html", Start: classroom.AnyTime, Needs: []classroom.Need{{Kind: classroom.SunUp, Height: classroom.SunLeast}, {Kind: classroom.Dry}}, Kit: []classroom.Thing{
		{Item: "card", Count: 1, Share: classroom.PerGroup, Spare: 2, Print: "dial-gnomon"},
		{Item: "scissors", Count: 1, Share: classroom.PerPupil},
		{Item: "box", Count: 1, Share: classroom.PerGroup, Source: classroom.FromHome},
	}, Prints: []string{"dial-gnomon", "dial-face"}, Question: "Why does it lean?", Goals: []string{"draw an angle", "say why it leans"}, Evidence: []string{"the finished face", "a sentence with because"}, Codes: []string{"S 6.2", "M 6.1"}, Absent: "Draw a face at home.",
		Care: []classroom.Care{{Names: []string{"sun"}}, {Names: []string{"scissors"}}, {Words: "Mind the step."}}},
	{Title: "Read", Page: "read.html", Start: classroom.AnyTime, Needs: []classroom.Need{{Kind: classroom.SunUp, Height: classroom.SunLeast, Window: 30 * time.Minute}}, Length: 90 * time.Minute, Question: "What time is it?", Goals: []string{"read a dial"}, Codes: []string{"S 6.2"}},
	{Title: "Strip", Page: "strip.html", Start: classroom.AnyTime, Kit: []classroom.Thing{{Item: "card", Count: 3}}},
	{Title: "Stars", Page: "stars.html", Start: 20 * time.Hour, Length: time.Hour, Needs: []classroom.Need{{Kind: classroom.Dark}}},
}

// Day reads a date.
func Day(t *testing.T, date string) place.Date {
	t.Helper()
	d, err := place.ParseDate(date)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Pairs reads key=value pairs as a use of the entry may write them. The complaint is
// about the first that is wrong.
func Pairs(e entry.Entry, given []string) (values form.Values, complaint string) {
	values = form.Values{}
	for _, pair := range given {
		key, value, _ := strings.Cut(pair, "=")
		v, complaint := e.Form(school.Settings()).ParsePair(key, value)
		if complaint != "" {
			return nil, complaint
		}
		values[key] = v
	}
	return values, ""
}

// Reckon evaluates a placeholder at a school; given are key=value pairs.
func Reckon(t *testing.T, entries []entry.Entry, where, name, date string, given ...string) result.Result {
	t.Helper()
	e, ok := entry.Find(entries, name)
	if !ok {
		t.Fatalf("no placeholder %s", name)
	}
	values, complaint := Pairs(e, given)
	if complaint != "" {
		t.Fatal(complaint)
	}
	complete := e.Complete(Settings(t, where), values, Day(t, date))
	r, err := e.Careful().Reckon(e.WithLessons(complete, Lessons, school.Calendar(complete, Lessons), 2))
	if err != nil {
		t.Fatalf("%s at %s: %v", name, where, err)
	}
	return r
}

// Fact returns a fact that must be there.
func Fact(t *testing.T, r result.Result, name string) say.Value {
	t.Helper()
	v, ok := r.Fact(name)
	if !ok {
		t.Fatalf("no fact %s", name)
	}
	return v
}

// Column returns the numbers of a column of the first table.
func Column(t *testing.T, r result.Result, name string) []float64 {
	t.Helper()
	i := slices.IndexFunc(r.Tables[0].Columns, func(c result.Column) bool { return c.Name == name })
	if i < 0 {
		t.Fatalf("no column %s", name)
	}
	var numbers []float64
	for _, row := range r.Tables[0].Rows {
		numbers = append(numbers, row.Cells[i].Number)
	}
	return numbers
}

// Near wants a number within a tolerance.
func Near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %v, want %v ± %v", what, got, want, tolerance)
	}
}

// Says reports whether a line of that key is among the lines.
func Says(lines []say.Phrase, key string) bool {
	for _, p := range lines {
		if p.Key == key {
			return true
		}
	}
	return false
}

// Cells returns the cells of a column of the named table.
func Cells(t *testing.T, r result.Result, table, name string) []say.Value {
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

// Refused evaluates a placeholder that must answer an error, and returns it.
func Refused(t *testing.T, entries []entry.Entry, name, date string, given form.Values) string {
	t.Helper()
	e, _ := entry.Find(entries, name)
	_, err := e.Reckon(e.Complete(Settings(t, "alder reach"), given, Day(t, date)))
	if err == nil {
		t.Errorf("%s takes %v on %s", name, given, date)
		return ""
	}
	return err.Error()
}

// TextsOf returns what a column of a table says.
func TextsOf(t *testing.T, r result.Result, table, column string) []string {
	t.Helper()
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	var texts []string
	for _, one := range r.Tables {
		i := slices.IndexFunc(one.Columns, func(c result.Column) bool { return c.Name == column })
		if one.Name != table || i < 0 {
			continue
		}
		for _, row := range one.Rows {
			texts = append(texts, words.Text(row.Cells[i]))
		}
	}
	return texts
}

// Complaint evaluates a placeholder and returns the one message that bad input
// gets, from the form or from the evaluation.
func Complaint(t *testing.T, entries []entry.Entry, name, date string, given ...string) string {
	t.Helper()
	e, ok := entry.Find(entries, name)
	if !ok {
		t.Fatalf("no placeholder %s", name)
	}
	values, complaint := Pairs(e, given)
	if complaint != "" {
		return complaint
	}
	_, err := e.Reckon(e.Complete(Settings(t, "alder reach"), values, Day(t, date)))
	if err == nil {
		return ""
	}
	return err.Error()
}

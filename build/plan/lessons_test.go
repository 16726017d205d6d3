package plan

import (
	"regexp"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"testing/fstest"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/place"
)

// An entry that reads lessons is given them with the days that follow from the
// settings of each pressing and of each use, and the lesson it stands in.
func TestEntryReadsLessons(t *testing.T) {
	var evaluations atomic.Int64
	diary := entry.Entry{
		Name: "class-facts", Lessons: true, Settings: school.CalendarSettings(),
		Arguments: form.Form{{Key: form.Key[int]("lesson")}},
		Facts:     []entry.Fact{{Name: "groups", Doc: "a"}}, Sources: []string{"test"},
		Reckon: func(v form.Values) (result.Result, error) {
			evaluations.Add(1)
			line := []string{"lesson", string(rune('0' + entry.Lesson.Of(v)))}
			for i, h := range entry.HeldOn(v).Held {
				line = append(line, entry.Lessons(v)[i].Title, h.Date.String()[5:])
			}
			return result.Result{Facts: []result.Fact{{Name: "groups", Value: say.Text(strings.Join(line, " "))}}}, nil
		},
	}
	unit, words := readCatalogue(t, fstest.MapFS{
		"unit.toml": {Data: []byte("unit.title = \"T\"\nschool.name = \"S\"\nschool.latitude = 1\nschool.longitude = 1\nschool.time_zone = \"UTC\"\nterm.first_day = 2027-04-15\nterm.last_day = 2027-04-30\n")},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n\n{class-facts.groups} {class-facts.groups}\n")},
		"2-b.md":    {Data: []byte("```lesson\ntitle = \"B\"\n```\n\n{class-facts.groups} {class-facts.groups term.first_day=2027-04-16}\n")},
		"3-c.md":    {Data: []byte("```lesson\ntitle = \"C\"\npart = \"page\"\n```\n\n{class-facts.groups} {class-facts.groups lesson=2}\n")},
	}, []entry.Entry{diary})
	p, err := Make(unit, words, Class, []entry.Entry{diary})
	if err != nil {
		t.Fatal(err)
	}
	facts := regexp.MustCompile(`<span class="fact(?: first)?">(.*?)</span>`)
	for _, c := range []struct {
		first place.Date
		want  []string
		times int
	}{
		{place.Date{Year: 2027, Month: 4, Day: 15}, []string{
			"lesson 1 A 04-15 B 04-16 lesson 1 A 04-15 B 04-16",
			"lesson 2 A 04-15 B 04-16 lesson 2 A 04-16 B 04-19",
			"lesson 0 A 04-15 B 04-16 lesson 2 A 04-15 B 04-16",
		}, 4},
		{place.Date{Year: 2027, Month: 4, Day: 23}, []string{
			"lesson 1 A 04-23 B 04-26 lesson 1 A 04-23 B 04-26",
			"lesson 2 A 04-23 B 04-26 lesson 2 A 04-16 B 04-19",
			"lesson 0 A 04-23 B 04-26 lesson 2 A 04-23 B 04-26",
		}, 4},
	} {
		evaluations.Store(0)
		pages, problems := p.Press(unit.Settings.With(form.Values{"term.first_day": c.first}))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		pages = slices.DeleteFunc(pages, func(f file.File) bool { return strings.HasPrefix(f.Name, "room-") }) // which repeat the lessons
		for i, want := range c.want {
			var got []string
			for _, m := range facts.FindAllSubmatch(pages[1+i].Bytes, -1) {
				got = append(got, string(m[1]))
			}
			if spaced := strings.ReplaceAll(strings.Join(got, " "), "\u00a0", " "); spaced != want {
				t.Errorf("%s says %q, want %q", pages[1+i].Name, got, want)
			}
		}
		if n := int(evaluations.Load()); n != c.times {
			t.Errorf("%d evaluations, want %d: equal values are evaluated once", n, c.times)
		}
	}
}

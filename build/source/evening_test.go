package source_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/source"
)

// An evening is a lesson whose night follows from the sky: what gives a lesson its time among
// the lesson times does not go with it, and no other lesson counts days from it or changes
// places with it.
func TestEveningLesson(t *testing.T) {
	evening := "```lesson\ntitle = \"Evening\"\nevening = true\n"
	for _, c := range []struct {
		name  string
		files map[string]string
		want  []string
	}{
		{"alone", map[string]string{"a.md": evening + "core = true\nkit = [{ item = \"red lights\" }]\n```\n"}, nil},
		{"not an evening", map[string]string{"a.md": "```lesson\ntitle = \"A\"\nevening = false\nminutes = 50\n```\n"}, nil},
		{"with a date and needs", map[string]string{"a.md": evening + "date = 2027-04-20\nneeds = [\"dark\"]\n```\n"}, []string{
			"u/a.md:4:8: lesson: date does not go with evening, whose night follows from the sky and the keys of [evening] in unit.toml",
			"u/a.md:5:9: lesson: needs does not go with evening, whose night follows from the sky and the keys of [evening] in unit.toml"}},
		{"with a day by name", map[string]string{"a.md": evening + "date = \"next full Moon\"\n```\n"}, []string{
			"u/a.md:4:8: lesson: date does not go with evening, whose night follows from the sky and the keys of [evening] in unit.toml"}},
		{"with minutes", map[string]string{"a.md": evening + "minutes = 75\n```\n"}, []string{
			"u/a.md:4:11: lesson: minutes does not go with evening, whose night follows from the sky and the keys of [evening] in unit.toml"}},
		{"a page", map[string]string{"a.md": evening + "part = \"page\"\n```\n"}, []string{
			`u/a.md:3:11: lesson: evening is for a lesson, and part is "page"; want part = "lesson"`}},
		{"followed", map[string]string{"a.md": evening + "```\n", "b.md": "```lesson\ntitle = \"B\"\nfollows = \"a.md\"\ndays_after = 2\n```\n"}, []string{
			`u/b.md:3:11: lesson: follows wants a lesson that is held in school, and "Evening" is an evening`}},
		{"changed with", map[string]string{"a.md": "```lesson\ntitle = \"A\"\nneeds = [\"dry\"]\nif_wet = \"change\"\nchange_with = \"b.md\"\n```\n", "b.md": evening + "```\n"}, []string{
			`u/a.md:5:15: lesson: change_with wants a lesson that is held in school, and "Evening" is an evening`}},
	} {
		unit, problems := unitOf(t, c.files)
		var got []string
		for _, p := range problems {
			got = append(got, p.Error())
		}
		if strings.Join(got, "\n") != strings.Join(c.want, "\n") {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
		if c.name == "alone" && !unit.Taught()[0].Evening {
			t.Error("the lesson is no evening")
		}
	}
}

// Hours with which no evening can be are told at their keys.
func TestEveningSettings(t *testing.T) {
	for text, want := range map[string]string{
		"ends_by = \"21:30\"":                           "",
		"ends_by = \"23:30\"":                           "",
		"ends_by = \"23:45\"":                           "evening.ends_by 23:45 is too late for a class; want 23:30 or earlier",
		"ends_by = \"19:15\"":                           "",
		"ends_by = \"19:10\"":                           "evening.ends_by 19:10 leaves no time for an evening of 75 minutes, which begins at 18:00 at the earliest",
		"ends_by = \"19:15\"\nminutes = 76":             "evening.ends_by 19:15 leaves no time for an evening of 76 minutes, which begins at 18:00 at the earliest",
		"minutes = 44":                                  "evening.minutes 44 min is outside 45 min to 150 min",
		"first_day = 2027-04-20":                        "",
		"first_day = 2027-04-20\nlast_day = 2027-04-20": "",
		"first_day = 2027-04-20\nlast_day = 2027-04-19": "evening.last_day 2027-04-19 is before evening.first_day 2027-04-20",
	} {
		folder := fstest.MapFS{"unit.toml": {Data: []byte(settings + "\n[evening]\n" + text + "\n")}, "a.md": {Data: []byte(head)}}
		_, problems, err := source.Read(folder, "u", own(t), placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case want == "" && len(problems) > 0:
			t.Errorf("%s: %v", text, problems)
		case want != "" && (len(problems) != 1 || !strings.Contains(problems[0].Error(), want)):
			t.Errorf("%s: got %v, want %q", text, problems, want)
		}
	}
}

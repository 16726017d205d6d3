package source_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/source"
)

// French has one clock and one order of dates. Who asks for others is told once a key,
// with its place, and the handbook is pressed all the same.
func TestMannerThatFrenchHasNot(t *testing.T) {
	const school = "[unit]\ntitle = \"U\"\n[school]\nname = \"S\"\nlatitude = 46\nlongitude = -64\ntime_zone = \"America/Moncton\"\nlanguage = \"LANGUAGE\"\nclock = \"12-hour\"\ndates = \"month first\"\n[term]\nfirst_day = 2027-04-12\nlast_day = 2027-05-14\n"
	for language, want := range map[string]string{
		"en": "",
		"fr": "unit.toml:9:9: warning: school.clock \"12-hour\" changes nothing: French is written with 24 hours, as in 13 h 20\n" +
			"unit.toml:10:9: warning: school.dates \"month first\" changes nothing: French is written with the day first, as in mardi 13 avril",
	} {
		_, problems, err := source.ReadSettings(fstest.MapFS{"unit.toml": {Data: []byte(strings.Replace(school, "LANGUAGE", language, 1))}}, "")
		if err != nil || problems.Faults() > 0 {
			t.Fatalf("%s: %v, %v", language, err, problems)
		}
		var got []string
		for _, p := range problems {
			got = append(got, p.Error())
		}
		if list := strings.Join(got, "\n"); list != want {
			t.Errorf("%s:\n%s\nwant\n%s", language, list, want)
		}
	}
}

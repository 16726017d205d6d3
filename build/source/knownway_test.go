package source_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/source"
)

// A way that the class knows has a name and a length, or neither.
func TestKnownWay(t *testing.T) {
	for _, c := range []struct{ lines, want string }{
		{"", ""},
		{"way_to = \"Halifax\"\nway_km = 185\n", ""},
		{"way_to = \"Halifax\"\n", "u/unit.toml:3:10: school.way_to goes with school.way_km, which is missing"},
		{"way_km = 185\n", "u/unit.toml:3:10: school.way_km goes with school.way_to, which is missing"},
		{"way_to = \"\"\nway_km = 185\n", "u/unit.toml:4:10: school.way_km goes with school.way_to, which is missing"},
		{"way_to = \"Halifax\"\nway_km = 0.5\n", "u/unit.toml:4:10: school.way_km 0.5 km is outside 1 km to 20000 km"},
	} {
		text := strings.Replace(settings, "[school]\n", "[school]\n"+c.lines, 1)
		_, problems, err := source.ReadSettings(fstest.MapFS{"unit.toml": {Data: []byte(text)}}, "u")
		if err != nil {
			t.Fatal(err)
		}
		if len(problems) > 1 || (len(problems) == 0) != (c.want == "") || c.want != "" && problems[0].Error() != c.want {
			t.Errorf("%q: got %v, want %q", c.lines, problems, c.want)
		}
	}
}

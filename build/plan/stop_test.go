package plan

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/file"
	"noonbook/build/placeholder"
)

// A sentence that ends with 6:37 a.m. has one stop, also where the fact is emphasized;
// one that goes on keeps it, and a number is left alone.
func TestOneStopAtTheEnd(t *testing.T) {
	const lesson = "```lesson\ntitle = \"Stops\"\n```\n\n" +
		"Up at {sun-day.rise}. Really *up at {sun-day.rise}*. Down at {sun-day.set}, or so. Noon at {sun-day.noon_altitude}.\n"
	const settings = "[unit]\ntitle = \"U\"\n[school]\nname = \"S\"\nlatitude = 46.09\nlongitude = -64.77\ntime_zone = \"America/Moncton\"\nclock = \"CLOCK\"\n[term]\nfirst_day = 2027-04-13\nlast_day = 2027-05-14\nlesson_times = [\"9:10-10:00\"]\n"
	for clock, want := range map[string]string{
		"12-hour": "Up at 6:37\u00a0a.m. Really up at 6:37\u00a0a.m. Down at 8:03\u00a0p.m., or so. Noon at 53.1°.",
		"24-hour": "Up at 6:37. Really up at 6:37. Down at 20:03, or so. Noon at 53.1°.",
	} {
		unit, words := read(t, fstest.MapFS{
			"unit.toml":  {Data: []byte(strings.Replace(settings, "CLOCK", clock, 1))},
			"1-stops.md": {Data: []byte(lesson)},
		}, "unit")
		plan, err := Make(unit, words, Class, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		files, _ := plan.Press(unit.Settings)
		at := slices.IndexFunc(files, func(f file.File) bool { return f.Name == "stops.html" })
		page := files[at].Bytes
		text := parsed(t, page).find("main").words()
		if !strings.Contains(text, want) {
			t.Errorf("%s: %s has no %q", clock, text, want)
		}
		if !bytes.Contains(page, []byte(`<time datetime="2027-04-13T06:3`)) {
			t.Errorf("%s: the machine's time is gone", clock)
		}
	}
}

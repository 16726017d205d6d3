package plan

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
)

// Whoever lays the dial with a compass turns until the ring shows what the day sheet says
// under "True north on the compass": a bearing from 0° to 360°, 360° less the variation.
// It is no turn from the needle with a side, which is as large where the needle points
// west and which nobody finds on a ring. Variations: magvar (WMM2025) at 2027.5.
func TestTrueNorthOnTheCompassIsABearing(t *testing.T) {
	for _, c := range []struct {
		unit      fstest.MapFS
		sheet     string
		variation float64 // east positive
	}{
		{smallUnit(), "day-alpha.html", -16.17},
		{fstest.MapFS{"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")}, "1-a.md": {Data: []byte(sheetLesson)}}, "day-a.html", 26.47},
	} {
		unit, words := read(t, c.unit, "north")
		_, staff := pressings(t, unit, words, unit.Settings)
		m := regexp.MustCompile(`<dt>` + regexp.QuoteMeta(words.Say("day-sheet.true_north")) + `</dt>\s*<dd>(.*?)</dd>`).FindStringSubmatch(staff[c.sheet])
		if m == nil {
			t.Fatalf("%s does not tell where true north is", c.sheet)
		}
		text := plainText(m[1])
		number, err := strconv.ParseFloat(strings.TrimSuffix(text, "°"), 64)
		if want := math.Mod(360-c.variation, 360); err != nil || math.Abs(number-want) > 0.2 {
			t.Errorf("%s: true north is at %q on the compass, want %.1f°", c.sheet, text, want)
		}
	}
}

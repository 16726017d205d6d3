package source_test

import (
	"fmt"
	"testing"

	"noonbook/compute/classroom"
	"noonbook/compute/quantity"
)

// The height that a lesson writes for its Sun is the one it gets, below the usual 10° as
// well as above: a school in the far north may be content with 3°, and one with a wide
// horizon with 0°.
func TestSunHeightAsTheLessonWritesIt(t *testing.T) {
	for written, want := range map[string]float64{"sun_height_deg = 0\n": 0, "sun_height_deg = 3\n": 3, "sun_height_deg = 9.5\n": 9.5, "": 10, "sun_height_deg = 10\n": 10, "sun_height_deg = 40\n": 40} {
		unit, problems := unitOf(t, map[string]string{
			"1-a.md": "```lesson\ntitle = \"A\"\nneeds = [\"sun\"]\nhourly_marks = \"9:00-14:00\"\n" + written + "```\n",
		})
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		for _, kind := range []classroom.NeedKind{classroom.SunUp, classroom.HourMarks} {
			found := false
			for _, need := range unit.Taught()[0].Needs {
				if need.Kind != kind {
					continue
				}
				found = true
				if got, want := fmt.Sprintf("%.6f", need.Height.Degrees()), fmt.Sprintf("%.6f", quantity.Degrees(want).Degrees()); got != want {
					t.Errorf("%q asks for a Sun %s° high, want %s°", written, got, want)
				}
			}
			if !found {
				t.Errorf("%q asks for no Sun", written)
			}
		}
	}
}

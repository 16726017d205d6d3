package entry_test

import (
	"math"
	"strings"
	"sync"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/typeset"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

var english = sync.OnceValues(func() (*typeset.Words, error) { return typeset.Language("en", false) })

func written(t *testing.T, v say.Value) string {
	t.Helper()
	words, err := english()
	if err != nil {
		t.Fatal(err)
	}
	return strings.NewReplacer("\u00a0", " ", "−", "-").Replace(words.Text(v))
}

// The sixteen points of the compass, each to 11.25° on either side.
func TestTowardNamesTheCompass(t *testing.T) {
	points := strings.Split("north,north-north-east,north-east,east-north-east,east,east-south-east,south-east,south-south-east,"+
		"south,south-south-west,south-west,west-south-west,west,west-north-west,north-west,north-north-west", ",")
	for i, want := range points {
		for _, off := range []float64{-11, 0, 11, 360 - 11, -360 + 11} {
			azimuth := 22.5*float64(i) + off
			if got := written(t, entry.Toward(quantity.Degrees(azimuth))); got != want {
				t.Errorf("%v° is %s, want %s", azimuth, got, want)
			}
		}
	}
}

func TestSidedHasNoSign(t *testing.T) {
	for degrees, want := range map[float64]string{-16.2: "16.2° west", 16.2: "16.2° east", 0: "0.0° east", -0.26: "0.3° west"} {
		if got := written(t, entry.Sided(degrees, 1, "compass.east_of", "compass.west_of")); got != want {
			t.Errorf("%v is %s, want %s", degrees, got, want)
		}
	}
}

// A stretch of time to add carries a plus unless it rounds to nothing.
func TestSignedOnBothSides(t *testing.T) {
	for seconds, want := range map[float64]string{3600: "+1 h", 29: "0 min", 31: "+1 min", -31: "-1 min", -3600: "-1 h"} {
		if got := written(t, entry.Signed(say.Minutes(time.Duration(seconds)*time.Second))); !strings.HasPrefix(got, want) {
			t.Errorf("%v s is %s, want %s", seconds, got, want)
		}
	}
	for seconds, plus := range map[float64]bool{0.4: false, 0.6: true, 1: true, -1: false, 0: false} {
		got := written(t, entry.Signed(say.Seconds(time.Duration(seconds*1e9))))
		if strings.HasPrefix(got, "+") != plus {
			t.Errorf("%v s is %s", seconds, got)
		}
	}
}

func TestNamesOfTheCalendar(t *testing.T) {
	months := strings.Split("January,February,March,April,May,June,July,August,September,October,November,December", ",")
	for i, name := range months {
		m := time.Month(i + 1)
		if got := written(t, say.Words(entry.MonthKey(m))); got != name {
			t.Errorf("month %d is %s", i+1, got)
		}
		if got := written(t, entry.ShortMonth(m)); !strings.HasPrefix(name, got[:3]) {
			t.Errorf("%s is short for %s", got, name)
		}
	}
	// 19 April 2027 is a Monday (Zeller's congruence).
	d, _ := place.ParseDate("2027-04-19")
	for i, name := range strings.Split("Monday,Tuesday,Wednesday,Thursday,Friday,Saturday,Sunday", ",") {
		if got := written(t, say.Words(entry.WeekdayKey(d.Add(i)))); got != name {
			t.Errorf("%s is a %s", d.Add(i), got)
		}
	}
	if got := written(t, entry.Weekday(d)); !strings.Contains(got, "19") || !strings.Contains(got, "April") || !strings.Contains(got, "Monday") {
		t.Error(got)
	}
}

// The March equinox begins spring in the north and autumn in the south.
func TestSeasonsOfBothHemispheres(t *testing.T) {
	turns := []string{"March equinox", "June solstice", "September equinox", "December solstice"}
	for latitude, want := range map[float64]string{46.09: "spring summer autumn winter", 23.5: "spring summer autumn winter", -45.87: "autumn winter spring summer", -23.5: "autumn winter spring summer"} {
		var got []string
		for s := almanac.Season(0); s < 4; s++ {
			got = append(got, written(t, entry.SeasonName(place.Place{Latitude: quantity.Degrees(latitude)}, s)))
			if name := written(t, entry.TurnName(s)); !strings.EqualFold(name, turns[s]) {
				t.Errorf("turn %d is %s", s, name)
			}
		}
		if list := strings.Join(got, " "); list != want {
			t.Errorf("at %v°: %s", latitude, list)
		}
	}
	for _, latitude := range []float64{-23.4, -0.2, 0, 1.4, 23.4} { // between the tropics
		if v := entry.SeasonName(place.Place{Latitude: quantity.Degrees(latitude)}, 0); v.Kind != say.Nothing {
			t.Errorf("at %v° it is %s", latitude, written(t, v))
		}
	}
}

// Sides of the disc as they lie for one who faces it, clockwise from the top.
func TestLitSides(t *testing.T) {
	for side, want := range map[almanac.Side]string{
		almanac.NoSide: "nothing is lit", almanac.Top: "top", almanac.UpperRight: "upper right", almanac.Right: "right", almanac.LowerRight: "lower right",
		almanac.Bottom: "bottom", almanac.LowerLeft: "lower left", almanac.Left: "left", almanac.UpperLeft: "upper left", almanac.AllSides: "the whole disc",
	} {
		if got := written(t, entry.LitSide(side)); got != want {
			t.Errorf("side %d is %q, want %q", side, got, want)
		}
	}
	for i, want := range []string{"Sun", "Moon", "Mercury", "Venus", "Mars", "Jupiter", "Saturn"} {
		if got := written(t, entry.BodyWord(almanac.Body(i))); got != want {
			t.Errorf("body %d is %s", i, got)
		}
	}
}

// The drawn Moon: the lit part's share of the disc is the lit fraction, and its
// middle lies toward the lit limb, which is given clockwise from the top.
func TestDrawnMoonIsNotMirrored(t *testing.T) {
	for _, lit := range []float64{0.05, 0.3, 0.5, 0.7, 0.95} {
		for lean := 0.0; lean < 360; lean += 30 {
			var d drawing.Drawing
			entry.DrawMoon(&d, drawing.Point{X: 20, Y: 30}, 10, almanac.Limb{Lit: lit, Lean: quantity.Degrees(lean)})
			var x, y, twice float64
			corners := d.Shapes[1].Points
			for i, a := range corners {
				b := corners[(i+1)%len(corners)]
				cross := a.X*b.Y - b.X*a.Y
				twice += cross
				x, y = x+(a.X+b.X)*cross, y+(a.Y+b.Y)*cross
			}
			x, y = x/(3*twice)-20, y/(3*twice)-30
			if share := math.Abs(twice) / 2 / (math.Pi * 100); math.Abs(share-lit) > 0.012 {
				t.Errorf("%v lit at %v° covers %v of the disc", lit, lean, share)
			}
			at := math.Atan2(x, -y) * 180 / math.Pi
			if math.Abs(math.Remainder(at-lean, 360)) > 1 {
				t.Errorf("%v lit at %v° is drawn at %v°", lit, lean, at)
			}
		}
	}
}

func TestListsAndYears(t *testing.T) {
	names := []say.Value{say.Text("a"), say.Text("b"), say.Text("c")}
	for n, want := range []string{"", "a", "a and b", "a, b and c"} {
		if got := written(t, entry.Listed(names[:n])); n > 0 && got != want {
			t.Errorf("%d names are %q", n, got)
		}
	}
	if entry.Listed(nil).Kind != say.Nothing {
		t.Error("no names are something")
	}
	for x, decimals := range map[float64]int{0.5: 2, 0.99: 2, 1: 1, 9.9: 1, 10: 0, 250: 0} {
		if got := entry.Years(x).Decimals; got != decimals {
			t.Errorf("%v years have %d decimals", x, got)
		}
	}
	for x, decimals := range map[float64]int{3: 0, 3.04: 0, 2.96: 0, 3.06: 1, 2.5: 1} {
		if got := entry.WholeOrTenth(x); got != decimals {
			t.Errorf("%v has %d decimals", x, got)
		}
	}
	if got := entry.Percent(0.307).Number; math.Abs(got-30.7) > 1e-9 {
		t.Errorf("0.307 is %v %%", got)
	}
}

// Ranges on both sides: 400 days, and the years of the almanac.
func TestSchoolRangeOnBothSides(t *testing.T) {
	for _, c := range []struct {
		from, to string
		parts    string // of the complaint, "" for none
	}{
		{"2027-04-12", "2027-04-12", ""}, {"2027-04-12", "2027-04-11", "the last day, 2027-04-11, is before the first, 2027-04-12"},
		{"2027-01-01", "2028-02-05", ""}, {"2027-01-01", "2028-02-06", "401 days, more than 400"},
		{"1949-12-31", "1950-01-02", "year 1949 is outside 1950 to 2100"}, {"1950-01-01", "1950-01-02", ""},
		{"2100-12-30", "2100-12-31", ""}, {"2100-12-30", "2101-01-01", "year 2101 is outside"},
	} {
		from, _ := place.ParseDate(c.from)
		to, _ := place.ParseDate(c.to)
		switch err := entry.SchoolRange(from, to); {
		case c.parts == "" && err != nil:
			t.Errorf("%s to %s: %v", c.from, c.to, err)
		case c.parts != "" && (err == nil || !strings.Contains(err.Error(), c.parts)):
			t.Errorf("%s to %s: %v, want %q", c.from, c.to, err, c.parts)
		}
	}
}

// Sæmundsson's refraction lifts what stands on the horizon by about 29′, and
// nothing at the zenith; AsStands undoes it.
func TestAirLifts(t *testing.T) {
	for _, h := range []float64{-0.5, 0, 5, 30, 80} {
		up := entry.AsSeen(quantity.Degrees(h)).Degrees()
		if up < h-1e-3 || up > h+0.65 {
			t.Errorf("%v° is seen at %v°", h, up)
		}
		if back := entry.AsStands(quantity.Degrees(up)).Degrees(); math.Abs(back-h) > 0.003 {
			t.Errorf("%v° is seen at %v°, and that stands at %v°", h, up, back)
		}
	}
	if lift := entry.AsSeen(0).Degrees() * 60; math.Abs(lift-29) > 1 {
		t.Errorf("the horizon is lifted by %v′", lift)
	}
	if got := entry.SunRise().Degrees() * 60; math.Abs(got+50) > 1e-9 {
		t.Errorf("the Sun rises at %v′", got)
	}
}

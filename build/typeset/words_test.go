package typeset_test

import (
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/typeset"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func words(t *testing.T, customary bool) *typeset.Words { return language(t, "en", customary) }

func language(t *testing.T, code string, customary bool) *typeset.Words {
	t.Helper()
	w, err := typeset.Language(code, customary)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestText(t *testing.T) {
	zone := time.FixedZone("", -3*3600)
	for _, c := range []struct {
		name  string
		value say.Value
		want  string
	}{
		{"degrees have no space", say.Number(-16.24, "deg", 1), "−16.2°"},
		{"minus of nothing", say.Number(-0.04, "deg", 1), "0.0°"},
		{"units have a no-break space", say.Number(110, "mm", 0), "110\u00a0mm"},
		{"thousands from ten thousand on", say.Number(9999.6, "", 0), "10\u202f000"},
		{"four digits together", say.Number(9999.4, "", 0), "9999"},
		{"bearing turns over", say.Bearing(quantity.Degrees(359.96), 1), "0.0°"},
		{"angle does not", say.Number(359.96, "deg", 1), "360.0°"},
		{"to the minute", say.Minutes(88*time.Minute + 31*time.Second), "1\u00a0h\u00a029\u00a0min"},
		{"under a minute", say.Minutes(20 * time.Second), "0\u00a0min"},
		{"to the second", say.Seconds(-312 * time.Second), "−5\u00a0min\u00a012\u00a0s"},
		{"no seconds", say.Seconds(0), "0\u00a0s"},
		{"a whole hour", say.Minutes(2 * time.Hour), "2\u00a0h"},
		{"clock rounds", say.Clock(time.Date(2027, 4, 13, 9, 59, 45, 0, zone)), "10:00"},
		{"clock keeps its day", say.Clock(time.Date(2027, 4, 13, 23, 59, 45, 0, zone)), "23:59"},
		{"clock without a leading zero", say.Clock(time.Date(2027, 4, 13, 6, 4, 0, 0, zone)), "6:04"},
		{"date", say.Date(place.Date{Year: 2027, Month: 4, Day: 3}), "3 April 2027"},
		{"sides in words", say.Number(-16.24, "deg", 1).As("compass.west_of", say.Number(16.24, "deg", 1)), "16.2°\u00a0west"},
		{"missing words show", say.Words("no.such"), "⟦no.such⟧"},
	} {
		if got := words(t, false).Text(c.value); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestAppendText(t *testing.T) {
	for text, want := range map[string]string{
		"a & b":  "a & b",
		"a&b":    "a&amp;b",
		"&#65;":  "&amp;#65;",
		"1 < 2":  "1 &lt; 2",
		`"q" é`:  `"q" é`,
		"ends &": "ends &",
	} {
		if got := string(typeset.AppendText(nil, text)); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

func TestDrawingBecomesSVG(t *testing.T) {
	d := drawing.Drawing{Name: "d", Width: 20, Height: 10, Title: say.Line("body.sun")}
	d.Line("rule", drawing.Point{X: 0, Y: 1.234}, drawing.Point{X: 5, Y: 0.004})
	d.Area("leaf", drawing.Point{}, drawing.Point{X: 1}, drawing.Point{X: 1, Y: 1})
	mark := len(d.Shapes)
	d.Disc("sun", drawing.Point{X: 3, Y: 4}, 2)
	d.Label("name", drawing.Point{X: 3, Y: 4}, drawing.End, say.Text(`<&>`))
	d.Link(mark, "a.html")
	got := string(words(t, false).AppendDrawing(nil, d))
	for _, want := range []string{
		`<svg class="drawing d" viewBox="0 0 20 10" role="img"><title>Sun</title>`,
		`<path class="rule" d="M0 1.23L5 0"/>`,
		`<path class="leaf" d="M0 0l1 0 0 1Z"/>`,
		`<a href="a.html" tabindex="-1"><circle class="sun" cx="3" cy="4" r="2"/><text`,
		`text-anchor="end">&lt;&></text></a></svg>`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in %s", want, got)
		}
	}
}

package typeset_test

import (
	"testing"

	"noonbook/build/say"
)

// 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 mi = 1.609344 km: international yard and
// pound agreement, 1959; the wanted numbers were divided by hand.
func TestCustomaryMeasure(t *testing.T) {
	w := words(t, true)
	for _, c := range []struct {
		name  string
		value say.Value
		want  string
	}{
		{"a ruler's fraction", say.Number(108, "mm", 0), "4\u00a01/4\u00a0in"},
		{"in lowest terms", say.Number(136.5, "mm", 0), "5\u00a03/8\u00a0in"},
		{"less than an inch", say.Number(19, "mm", 0), "3/4\u00a0in"},
		{"rounded up to a whole", say.Number(101.2, "mm", 0), "4\u00a0in"},
		{"centimetres to the millimetre", say.Number(4.3, "cm", 1), "1\u00a011/16\u00a0in"},
		{"too small for a ruler", say.Number(4, "mm", 0), "0.2\u00a0in"},
		{"calipers", say.Number(21.3, "mm", 1), "0.84\u00a0in"},
		{"negative", say.Number(-38.1, "mm", 0), "−1\u00a01/2\u00a0in"},
		{"nothing", say.Number(0, "mm", 0), "0\u00a0in"},
		{"metres", say.Number(33, "m", 1), "108\u00a0ft"},
		{"eye height", say.Number(1.35, "m", 2), "4.4\u00a0ft"},
		{"few metres", say.Number(2, "m", 0), "6.6\u00a0ft"},
		{"kilometres", say.Number(4, "km", 0), "2.5\u00a0mi"},
		{"space", say.Number(149.6, "million_km", 1), "93.0\u00a0million mi"},
		{"wind", say.Number(4, "m_s", 0), "9\u00a0mph"},
		{"launch", say.Number(20, "m_s", 1), "45\u00a0mph"},
		{"a distance to keep is rounded up", say.Number(36, "m", 0).AtLeast(), "119\u00a0ft"},
		{"and one that is not", say.Number(36, "m", 0), "118\u00a0ft"},
		{"one that comes out whole stays", say.Number(60*0.3048, "m", 0).AtLeast(), "60\u00a0ft"},
		{"to a tenth", say.Number(36, "m", 2).AtLeast(), "118.2\u00a0ft"},
		{"a few feet", say.Number(2, "m", 0).AtLeast(), "6.6\u00a0ft"},
		{"to a sixteenth", say.Number(101.7, "mm", 0).AtLeast(), "4\u00a01/16\u00a0in"},
		{"angles stay", say.Number(46.09, "deg", 1), "46.1°"},
		{"lenses stay", say.Number(250, "mm", 0).InMetric(), "250\u00a0mm"},
	} {
		if got := w.Text(c.value); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	if got := w.Unit("mm"); got != "in" {
		t.Errorf("the head of a column of millimetres says %q", got)
	}
	for x, want := range map[float64]string{254: "10", 1260: "49\u00a05/8"} {
		if got := w.Cell(say.Number(x, "mm", 0), "mm"); got != want {
			t.Errorf("a cell says %q, want %q", got, want)
		}
	}
}

// A distance to keep is rounded up in metres too, in a sentence and in a cell.
func TestDistanceToKeep(t *testing.T) {
	v := say.Number(41.02, "m", 0).AtLeast()
	for customary, want := range map[bool][2]string{false: {"42\u00a0m", "42"}, true: {"135\u00a0ft", "135"}} { // 134.58 ft
		w := words(t, customary)
		if text, cell := w.Text(v), w.Cell(v, "m"); text != want[0] || cell != want[1] {
			t.Errorf("customary %v: %q and %q, want %q", customary, text, cell, want)
		}
	}
}

// A working is metric in every school, so that its steps can be repeated, and
// says so where the school measures otherwise.
func TestWorkingStaysMetric(t *testing.T) {
	steps := []say.Phrase{say.Line("tube-plan.working_magnification", say.Number(250, "mm", 0), say.Number(50, "mm", 0), say.Number(5, "", 0))}
	for _, customary := range []bool{false, true} {
		w := words(t, customary)
		lines := w.Working(steps)
		if lines[0] != "Magnification = 250\u00a0mm ÷ 50\u00a0mm = 5." {
			t.Errorf("it says %q", lines[0])
		}
		if last := lines[len(lines)-1]; (len(lines) == 2 && last == w.Say("page.factors")) != customary {
			t.Errorf("customary %v: %q", customary, lines)
		}
	}
}

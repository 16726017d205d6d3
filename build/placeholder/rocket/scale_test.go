package rocket_test

import (
	"math"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// A drawing to scale gives the height of NASA's rule, distance × tangent of the angle
// with the eye's height on top: the line from the drawn station at the angle meets the
// upright at that many millimetres. It goes on the long side of Letter paper (279.4 mm,
// the shorter of the two) with 12 mm to spare at each end, however fast the launcher is.
func TestDrawingToScale(t *testing.T) {
	for _, speed := range []string{"10", "20", "25", "30", "45"} {
		r := reckon(t, "alder reach", "rocket-zone", "2027-04-28", "stock.launch_speed_m_s="+speed, "field.width_m=500", "field.length_m=500")
		scale, drawn := entrytest.Fact(t, r, "paper_scale").Number, entrytest.Fact(t, r, "station_drawn").Number
		entrytest.Near(t, "station", drawn/scale, entrytest.Fact(t, r, "station").Number, 1e-9)
		if drawn > 279.4-24 {
			t.Errorf("at %s m/s the stations are %v mm away on paper", speed, drawn)
		}
		if drawn < 70 && scale < 4 {
			t.Errorf("at %s m/s the drawing is only %v mm wide", speed, drawn)
		}
		const eye = 1.35
		entrytest.Near(t, "eye", entrytest.Fact(t, r, "eye_drawn").Number, scale*entrytest.Fact(t, reckon(t, "alder reach", "rocket-height", "2027-04-28"), "eye_height").Number, 1e-9)
		upright := drawn * math.Tan(12*math.Pi/180)
		h := reckon(t, "alder reach", "rocket-height", "2027-04-28", "angle=12", "baseline_m="+format(drawn/scale), "class.eye_height_m=1.35")
		entrytest.Near(t, "height", upright/scale+eye, entrytest.Fact(t, h, "height").Number, 1e-9)
	}
}

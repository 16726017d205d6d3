package strip_test

import (
	"math"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
)

// The largest error of a ball is that of the table, whether the ball is too large or too
// small for its planet: 100 (ball / model − 1), with model = diameter / scale by the
// planets' mean diameters (Astronomy Notes, table of planets).
func TestWorstBallLargeOrSmall(t *testing.T) {
	diameters := map[string]float64{
		"body.mercury": 4879, "body.venus": 12104, "body.earth": 12742, "body.mars": 6779,
		"body.jupiter": 139822, "body.saturn": 116464, "body.uranus": 50724, "body.neptune": 49244, "body.sun": 2 * 695700,
	}
	e, _ := entry.Find(entries(), "strip-balls")
	small, large := 0, 0
	for _, balls := range [][]float64{
		nil, {4.9, 12.1, 10.8}, {4.9, 12.1, 14.5}, {50, 49, 120, 140, 11}, {50, 49, 120, 140, 15.5},
	} {
		given := form.Values{}
		var stock []form.Values
		for _, mm := range balls {
			stock = append(stock, form.Values{"name": "ball", "diameter_mm": mm, "count": 1})
		}
		if stock != nil {
			given["stock.balls"] = stock
		}
		r, err := e.Reckon(e.Complete(entrytest.Settings(t, "alder reach"), given, entrytest.Day(t, "2027-04-20")))
		if err != nil {
			t.Fatal(err)
		}
		shrunk := entrytest.Fact(t, r, "ball_shrunk").Number
		bodies, mm, errors := entrytest.Cells(t, r, "cast", "body"), entrytest.Column(t, r, "ball_mm"), entrytest.Cells(t, r, "cast", "error")
		worst := 0.0
		for i, body := range bodies {
			if mm[i] == 0 { // no ball
				continue
			}
			off := 100 * (mm[i]*shrunk/(diameters[body.Phrase.Key]*1e6) - 1)
			entrytest.Near(t, body.Phrase.Key, errors[i].Number, off, 0.02)
			if math.Abs(off) > math.Abs(worst) {
				worst = off
			}
		}
		entrytest.Near(t, "worst", entrytest.Fact(t, r, "worst_error").Number, math.Abs(worst), 0.02)
		if worst < 0 {
			small++
		} else {
			large++
		}
	}
	if small == 0 || large == 0 {
		t.Errorf("the worst ball is too small %d times and too large %d times", small, large)
	}
}

// Walking to the star's place eight hours a day: 268 550 au at the strip's scale, 300
// squares of 110 mm to Neptune at 30.06992 au, are 294.7 km, and 4 km/h make 32 km a day.
func TestDaysOnFootToTheStar(t *testing.T) {
	for speed, perDay := range map[string]float64{"4": 32, "3": 24, "6": 48} {
		r := reckon(t, "alder reach", "strip-moon", "2027-04-20", "class.walk_km_h="+speed)
		entrytest.Near(t, "days at "+speed+" km/h", entrytest.Fact(t, r, "star_walk").Number, 268550*33/30.06992/1000/perDay, 0.001)
	}
}

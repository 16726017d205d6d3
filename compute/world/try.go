package world

import (
	"math"
	"time"

	"noonbook/compute/quantity"
)

// EarthGravity is the pull that the worlds are compared with: the Earth's own, by
// the same rule, 9.80 m/s².
func EarthGravity() float64 {
	earth, _ := Find("earth")
	return earth.Gravity()
}

// Weight returns what a bathroom scale made for the Earth shows of a mass in
// kilograms: the mass times the ratio of the pulls.
func (w World) Weight(kilograms float64) float64 { return kilograms * w.Gravity() / EarthGravity() }

// A Reach is how far something goes; Leaves where it never comes back.
type Reach struct {
	quantity.Length
	Leaves bool
}

// Jump returns how high a jump goes that raises a body by height on the Earth:
// same take-off speed, no air. The energy at take-off is v²/2 = GM/r − GM/(r+h),
// so h = r·x/(1−x) with x = v²r/(2GM), which is the familiar v²/2g while h is
// small beside r.
func (w World) Jump(height quantity.Length) Reach {
	speed := math.Sqrt(2 * EarthGravity() * height.Metres())
	x := speed / w.Escape()
	if x *= x; x < 1 {
		return Reach{Length: w.Equatorial * quantity.Length(x/(1-x))}
	}
	return Reach{Leaves: true}
}

// Throw returns how far a throw goes that flies a distance on the Earth: same
// speed and angle, no air, level ground; the distance grows as the pull shrinks.
// Leaves is set where even the slowest throw of that distance, at 45°, is as fast
// as Escape. Where the world's curve counts, on Ceres above some kilometres, it is
// too short.
func (w World) Throw(distance quantity.Length) Reach {
	if math.Sqrt(EarthGravity()*distance.Metres()) >= w.Escape() {
		return Reach{Leaves: true}
	}
	return Reach{Length: distance * quantity.Length(EarthGravity()/w.Gravity())}
}

// Age returns how often the world has gone round the Sun in a number of days.
func (w World) Age(days float64) float64 { return days * 24 * float64(time.Hour) / float64(w.Year) }

// Birthday returns which birthday comes next after a life of that many days, and
// how many days after birth it is. A birthday that falls on the day itself is the
// next one.
func (w World) Birthday(days int) (number int, after float64) {
	year := w.Year.Hours() / 24
	number = max(1, int(math.Ceil((float64(days)-0.5)/year)))
	return number, float64(number) * year
}

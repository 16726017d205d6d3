package journey

import (
	"math"
	"time"

	"noonbook/compute/quantity"
	"noonbook/compute/world"
)

// sunGM is the Sun's gravitational parameter in m³/s².
const sunGM = 1.32712440018e20

// A Transfer is a least-energy way from the Earth between circular orbits.
type Transfer struct {
	Time   time.Duration
	Leave  float64        // m/s by which it must differ from the Earth's own speed
	Arrive float64        // m/s by which it then differs from the goal's speed
	Ahead  quantity.Angle // of the goal before the Earth on the day of departure; −half a turn to half a turn
}

// To returns the transfer to a world that goes round the Sun. ok is false for the
// Earth, the Moon, which stays with it, and the comet, whose way is no circle.
func To(w world.World) (t Transfer, ok bool) {
	if w.Name == "earth" || w.Kind == world.Moon || w.Kind == world.Comet {
		return t, false
	}
	r1, r2 := quantity.AstronomicalUnit.Metres(), w.Orbit.Metres()
	a := (r1 + r2) / 2
	speed := func(r, a float64) float64 { return math.Sqrt(sunGM * (2/r - 1/a)) }
	t.Time = halfEllipse(a)
	t.Leave = math.Abs(speed(r1, a) - speed(r1, r1))
	t.Arrive = math.Abs(speed(r2, r2) - speed(r2, a))
	t.Ahead = (quantity.Turn/2 - quantity.Turn*quantity.Angle(t.Time.Seconds()/w.Year.Seconds())).Signed()
	return t, true
}

// halfEllipse returns half the period of an ellipse with axis a in metres round
// the Sun: Kepler's third law.
func halfEllipse(a float64) time.Duration {
	return time.Duration(math.Pi * math.Sqrt(a*a*a/sunGM) * float64(time.Second))
}

// Synodic returns how long it is on the mean from one window to the next: the time
// in which the Earth and the world come to stand alike to the Sun again, after which
// one is a whole turn ahead. It is zero for the Earth and the Moon.
func Synodic(w world.World) time.Duration {
	earth, _ := world.Find("earth")
	apart := math.Abs(1/earth.Year.Seconds() - 1/w.Year.Seconds())
	if apart == 0 {
		return 0
	}
	return time.Duration(float64(time.Second) / apart)
}

// lowOrbit is how high above the ground a way to the Moon begins.
const lowOrbit quantity.Length = 300e3

// ToTheMoon returns the least-energy way from 300 km above the Earth's equator to
// the Moon's mean distance: half an ellipse round the Earth, the Moon's own pull
// left out. Apollo flew with more energy, in three days.
func ToTheMoon() time.Duration {
	earth, _ := world.Find("earth")
	a := (earth.Equatorial + lowOrbit + world.ToTheMoon).Metres() / 2
	return time.Duration(math.Pi * math.Sqrt(a*a*a/(earth.GM*1e9)) * float64(time.Second))
}

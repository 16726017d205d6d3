package rocket

import (
	"errors"
	"fmt"
	"math"
	"time"

	"noonbook/compute/quantity"
)

// A Rocket is what flies.
type Rocket struct {
	Mass     Mass
	Diameter quantity.Length // outside, of the tube
	Drag     float64         // drag coefficient on the tube's cross-section
}

// A Launch is how it leaves the pipe.
type Launch struct {
	Speed     Speed
	Elevation quantity.Angle  // 0° level, 90° straight up
	Height    quantity.Length // of the pipe's end above the ground
}

// A Point is a place of the flight.
type Point struct {
	Along, Across, Up quantity.Length
	Time              time.Duration // since the launch
}

// A Flight is from the pipe to the ground.
type Flight struct {
	Apogee  Point   // the highest place
	Landing Point   // Up is 0
	Impact  Speed   // over the ground, at the landing
	Path    []Point // from launch to landing, close enough for a drawing
}

// Reach returns how far from the launcher the flight ends.
func (f Flight) Reach() quantity.Length {
	return quantity.Length(math.Hypot(f.Landing.Along.Metres(), f.Landing.Across.Metres()))
}

// check fails for what is no rocket, launch or air of the package's range.
func check(r Rocket, l Launch, air Air) error {
	switch {
	case !(r.Mass > 0) || math.IsInf(float64(r.Mass), 1):
		return fmt.Errorf("rocket of %g g: its mass must be positive", r.Mass.Grams())
	case !(r.Diameter > 0) || math.IsInf(float64(r.Diameter), 1):
		return fmt.Errorf("rocket %g mm across: its diameter must be positive", r.Diameter.Millimetres())
	case !(r.Drag >= 0 && r.Drag <= 10):
		return fmt.Errorf("drag coefficient %g is outside 0 to 10", r.Drag)
	case !(l.Speed >= 0 && l.Speed <= MaxSpeed):
		return fmt.Errorf("launch at %g m/s is outside 0 m/s to %g m/s", float64(l.Speed), float64(MaxSpeed))
	case !(l.Elevation >= 0 && l.Elevation <= quantity.Degrees(90)):
		return fmt.Errorf("launch at %g° is outside 0° to 90°", l.Elevation.Degrees())
	case !(l.Height >= 0 && l.Height <= 100):
		return fmt.Errorf("launch from %g m is outside 0 m to 100 m above the ground", l.Height.Metres())
	case !(air.Density >= 0 && air.Density <= 10):
		return fmt.Errorf("air of %g kg/m³ is outside 0 to 10", float64(air.Density))
	case !(math.Hypot(float64(air.Along), float64(air.Across)) <= 50):
		return errors.New("the wind is no wind up to 50 m/s")
	}
	if k := motionOf(r, air).drag; !(k <= mostDrag) {
		return fmt.Errorf("rocket of %g g, %g mm across: the air would stop it at once", r.Mass.Grams(), r.Diameter.Millimetres())
	}
	return nil
}

// mostDrag bounds k, in 1/m: a rocket that a centimetre of air slows by a third.
const mostDrag = 40

func motionOf(r Rocket, air Air) motion {
	d := r.Diameter.Metres()
	return motion{
		drag:  float64(air.Density) * r.Drag * (math.Pi * d * d / 4) / (2 * float64(r.Mass)),
		along: float64(air.Along), across: float64(air.Across),
	}
}

// Fly follows the rocket to the ground. It fails for values out of range.
func Fly(r Rocket, l Launch, air Air) (Flight, error) {
	if err := check(r, l, air); err != nil {
		return Flight{}, err
	}
	return motionOf(r, air).fly(l, allOfIt), nil
}

// A wanted is what somebody needs of a flight; what is not is left out.
type wanted int

const (
	allOfIt wanted = iota
	itsTop         // where it rises
	itsLanding
)

// fly follows the flight. Its path is kept only where it is wanted, and then no
// step is longer than a twenty-fourth of the flight without air.
func (m motion) fly(l Launch, want wanted) Flight {
	path := want == allOfIt
	v := float64(l.Speed)
	y := state{2: l.Height.Metres(), 3: v * l.Elevation.Cos(), 5: v * l.Elevation.Sin()}
	slope := m.slope(y)
	longest := math.Max(1e-6, NoAir(l).Landing.Time.Seconds()/24)
	t, h, rising := 0.0, longest/4, y[5] > 0
	if !path {
		longest *= 4
	}
	f := Flight{Apogee: place(y, 0)}
	if path {
		f.Path = append(f.Path, f.Apogee)
	}
	for {
		next, last, off := m.step(y, slope, h)
		if off > 1 {
			h = nextStep(h, off)
			continue
		}
		if rising && next[5] <= 0 {
			rising = false
			if want != itsLanding {
				dt, top := m.to(5, y, slope, h)
				f.Apogee = place(top, t+dt)
			}
			if path {
				f.Path = append(f.Path, f.Apogee)
			}
			if want == itsTop {
				return f
			}
		}
		if !rising && next[2] <= 0 {
			dt, end := m.to(2, y, slope, h)
			end[2] = 0
			f.Landing = place(end, t+dt)
			f.Impact = Speed(math.Sqrt(end[3]*end[3] + end[4]*end[4] + end[5]*end[5]))
			if path {
				f.Path = append(f.Path, f.Landing)
			}
			return f
		}
		y, slope, t = next, last, t+h
		if path {
			f.Path = append(f.Path, place(y, t))
		}
		h = math.Min(longest, nextStep(h, off))
	}
}

func place(y state, t float64) Point {
	return Point{quantity.Length(y[0]), quantity.Length(y[1]), quantity.Length(y[2]), duration(t)}
}

func duration(s float64) time.Duration { return time.Duration(math.Round(s * float64(time.Second))) }

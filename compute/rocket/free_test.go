package rocket_test

import (
	"math"
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// thrown follows a throw in empty space by the plainest sum of small steps: the
// velocity falls by g dt, the place moves by the mean velocity, and the last step is
// cut where it meets the ground.
func thrown(v, degrees, h float64) float64 {
	const dt = 1e-3
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	x, y, w := 0.0, h, v*sin
	for {
		next := w - 9.80665*dt
		fall := y + (w+next)/2*dt
		if fall < 0 {
			return x + v*cos*dt*y/(y-fall)
		}
		x, y, w = x+v*cos*dt, fall, next
	}
}

// farThrown is the farthest throw from an angle up, by trying them all.
func farThrown(v, low, h float64) float64 {
	best := 0.0
	for e := low; e < 90; e += 0.05 {
		best = math.Max(best, thrown(v, e, h))
	}
	return best
}

// The closed forms against throws that are summed step by step, at speeds, heights
// and rooms of no round number: the farthest landing, and the angle and the speed at
// which it is just the room. Steps and angles leave 0.05 %.
func TestEmptySpaceAgainstSteps(t *testing.T) {
	for _, c := range []struct{ v, h, low, part float64 }{
		{19.3, 0.3, 0, 0.83}, {27.7, 0, 0, 0.41}, {11.9, 1.45, 0, 0.97}, {36.1, 4.6, 0, 0.12},
		{23.4, 0.62, 44, 0.71}, {14.2, 5, 38, 0.9}, {31.8, 0.3, 61.5, 0.55}, {8.6, 2.3, 79, 0.31},
	} {
		l := rocket.Launch{Speed: rocket.Speed(c.v), Height: m(c.h)}
		far := farThrown(c.v, c.low, c.h)
		reach, at := rocket.NoAirReach(l, deg(c.low))
		near(t, "farthest throw", reach.Metres(), far, 5e-4*far)
		near(t, "throw at its angle", thrown(c.v, at.Degrees(), c.h), far, 5e-4*far)

		room := c.part * far
		steep, err := rocket.NoAirSteepEnough(l, m(room))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "farthest throw from the least angle up", farThrown(c.v, steep.Degrees(), c.h), room, 1e-3*far)
		if over := farThrown(c.v, steep.Degrees()-0.5, c.h); over <= room {
			t.Errorf("half a degree flatter than %.2f° still lands within %.2f m: %.2f m", steep.Degrees(), room, over)
		}
		slow, err := rocket.NoAirSlowEnough(m(c.h), deg(c.low), m(room))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "farthest throw at the highest speed", farThrown(float64(slow), c.low, c.h), room, 1e-3*room)
		if over := farThrown(1.01*float64(slow), c.low, c.h); over <= room {
			t.Errorf("1 %% faster than %.3f m/s still lands within %.2f m: %.2f m", float64(slow), room, over)
		}
	}
}

// The two flights without drag of rocket-flights.csv, by scipy: 70 m/s at 75° land
// 249.83047218 m away, 20 m/s at 45° 40.7886485191 m.
func TestEmptySpaceAgainstScipy(t *testing.T) {
	reach, at := rocket.NoAirReach(rocket.Launch{Speed: 70}, deg(75))
	near(t, "reach at 75° and more", reach.Metres(), 249.83047218, 1e-6)
	near(t, "its angle", at.Degrees(), 75, 1e-9)
	steep, err := rocket.NoAirSteepEnough(rocket.Launch{Speed: 70}, m(249.83047218))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "least angle", steep.Degrees(), 75, 1e-6)
	for _, c := range []struct{ low, room, want float64 }{{75, 249.83047218, 70}, {0, 40.7886485191, 20}, {45, 40.7886485191, 20}} {
		v, err := rocket.NoAirSlowEnough(0, deg(c.low), m(c.room))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "highest speed", float64(v), c.want, 1e-6)
	}
}

// Both sides of the edges: a room that no throw leaves asks for no angle, a pipe that
// stands straight up for no speed, and a room of nothing has no answer.
func TestEmptySpaceAtTheEdges(t *testing.T) {
	l := rocket.Launch{Speed: 18, Height: m(0.4)}
	far, best := rocket.NoAirReach(l, 0)
	if best >= deg(45) {
		t.Errorf("from 0.4 m up the best angle is %v°", best.Degrees())
	}
	if e, err := rocket.NoAirSteepEnough(l, far); err != nil || e != 0 {
		t.Errorf("the whole reach is room: %v, %v", e, err)
	}
	e, err := rocket.NoAirSteepEnough(l, far-1e-6)
	if err != nil || e < best || e > best+deg(0.05) {
		t.Errorf("a hair less room: %v° after %v°, %v", e.Degrees(), best.Degrees(), err)
	}
	if v, err := rocket.NoAirSlowEnough(m(0.4), deg(90), m(3)); err != nil || !math.IsInf(float64(v), 1) {
		t.Errorf("straight up: %v, %v", v, err)
	}
	if up, _ := rocket.NoAirReach(l, deg(90)); math.Abs(up.Metres()) > 1e-9 {
		t.Errorf("straight up it lands %v m away", up.Metres())
	}
	for _, room := range []quantity.Length{0, -1, m(math.Inf(1)), m(math.NaN())} {
		if _, err := rocket.NoAirSteepEnough(l, room); err == nil {
			t.Errorf("an angle for a room of %v", room)
		}
		if _, err := rocket.NoAirSlowEnough(0, 0, room); err == nil {
			t.Errorf("a speed for a room of %v", room)
		}
	}
}

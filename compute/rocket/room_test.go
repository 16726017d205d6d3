package rocket_test

import (
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// The three ways to bring a rocket inside the field: at the answer the flight
// just fits, a little beyond it it does not.
func TestWaysToFitTheRoom(t *testing.T) {
	air := rocket.Air{Density: 1.2, Along: 4}
	l := rocket.Launch{Speed: 22, Height: m(0.3)}
	far := func(r rocket.Rocket, l rocket.Launch) quantity.Length {
		reach, _, err := rocket.Farthest(r, l, air, 0, deg(90))
		if err != nil {
			t.Fatal(err)
		}
		return reach
	}
	for _, room := range []quantity.Length{m(25), m(20), m(16)} {
		least, ok, err := rocket.SteepEnough(paper, l, air, room)
		if err != nil || !ok {
			t.Fatal(err, ok)
		}
		reach, _, err := rocket.Farthest(paper, l, air, least, deg(90))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "reach from the least angle on", reach.Metres(), room.Metres(), 0.005)
		v, ok, err := rocket.SlowEnough(paper, l, air, 0, room)
		if err != nil || !ok {
			t.Fatal(err, ok)
		}
		slow := l
		slow.Speed = v
		near(t, "reach at the highest speed", far(paper, slow).Metres(), room.Metres(), 0.005)
		c, ok, err := rocket.DraggyEnough(paper, l, air, 0, room, 10)
		if err != nil {
			t.Fatal(err)
		}
		if ok {
			r := paper
			r.Drag = c
			near(t, "reach at the least drag", far(r, l).Metres(), room.Metres(), 0.05)
		}
	}
	if _, ok, _ := rocket.SteepEnough(paper, l, air, m(5)); ok {
		t.Error("wind drifts it farther than 5 m, even straight up")
	}
	if _, ok, _ := rocket.SlowEnough(paper, rocket.Launch{Speed: 22, Height: m(50)}, air, 0, m(5)); ok {
		t.Error("wind alone carries it out of 5 m from a tower")
	}
	if least, ok, _ := rocket.SteepEnough(paper, l, air, m(500)); !ok || least != 0 {
		t.Errorf("in a field of 500 m the least angle is %v, %v", least, ok)
	}
	if v, ok, _ := rocket.SlowEnough(paper, l, air, 0, m(500)); !ok || v != l.Speed {
		t.Errorf("in a field of 500 m the speed is %v, %v", v, ok)
	}
	if c, ok, _ := rocket.DraggyEnough(paper, l, air, 0, m(500), 10); !ok || c != paper.Drag {
		t.Errorf("in a field of 500 m the drag is %v, %v", c, ok)
	}
}

// Without air the farthest reach is at 45° from the ground, v²/g, and a bit
// farther and flatter from a pipe: (v/g)√(v² + 2gh). 1e-7: flat at the top.
func TestFarthestWithoutAir(t *testing.T) {
	for _, h := range []float64{0, 0.5, 2} {
		l := rocket.Launch{Speed: 18, Height: m(h)}
		reach, angle, err := rocket.Farthest(paper, l, rocket.Air{}, 0, deg(90))
		if err != nil {
			t.Fatal(err)
		}
		free, best := rocket.NoAirReach(l, 0)
		want := free.Metres()
		near(t, "reach", reach.Metres(), want, 1e-7*want)
		near(t, "best angle", angle.Degrees(), best.Degrees(), 0.02)
		if h == 0 {
			near(t, "angle", angle.Degrees(), 45, 0.02)
		}
	}
}

// A pipe that cannot lie flat throws less far, and so may be stamped harder, and
// needs less drag, than one that can.
func TestWaysOfASteepPipe(t *testing.T) {
	air, l := rocket.Air{Density: 1.2, Along: 4}, rocket.Launch{Speed: 22, Height: m(0.3)}
	for _, low := range []float64{60, 75} {
		flat, _, _ := rocket.SlowEnough(paper, l, air, 0, m(12))
		v, ok, err := rocket.SlowEnough(paper, l, air, deg(low), m(12))
		if err != nil || !ok || v <= flat {
			t.Fatalf("from %v° up %v m/s (%v, %v), at any angle %v", low, v, ok, err, flat)
		}
		slow := l
		slow.Speed = v
		reach, _, err := rocket.Farthest(paper, slow, air, deg(low), deg(90))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "reach at that speed", reach.Metres(), 12, 0.01)
		c, ok, err := rocket.DraggyEnough(paper, l, air, deg(low), m(12), 10)
		if err != nil || !ok {
			t.Fatal(ok, err)
		}
		more := paper
		more.Drag = c
		reach, _, err = rocket.Farthest(more, l, air, deg(low), deg(90))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "reach with that drag", reach.Metres(), 12, 0.05)
	}
}

func BenchmarkFly(b *testing.B) {
	l := rocket.Launch{Speed: 20, Elevation: deg(75), Height: m(0.3)}
	for b.Loop() {
		if _, err := rocket.Fly(paper, l, rocket.Air{Density: 1.2, Along: 3}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFarthest(b *testing.B) {
	l := rocket.Launch{Speed: 20, Height: m(0.3)}
	for b.Loop() {
		if _, _, err := rocket.Farthest(paper, l, rocket.Air{Density: 1.2, Along: 3}, 0, deg(90)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSlowEnough(b *testing.B) {
	l := rocket.Launch{Speed: 25, Height: m(0.3)}
	for b.Loop() {
		if _, _, err := rocket.SlowEnough(paper, l, rocket.Air{Density: 1.2, Along: 3}, 0, m(15)); err != nil {
			b.Fatal(err)
		}
	}
}

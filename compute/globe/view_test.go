package globe

import (
	"math"
	"testing"

	"noonbook/compute/quantity"
)

// Where Tycho, at 43.3° S, 11.2° W, is on the disc by the equations of the orthographic
// projection (J. P. Snyder, Map Projections, USGS Professional Paper 1395, 1987, equations
// 20-3 and 20-4), with north up, south up, and a quarter turned.
func TestViewOfTycho(t *testing.T) {
	tycho, _ := Find(Moon, "Tycho")
	centre := Point{Latitude: quantity.Degrees(5), Longitude: quantity.Degrees(-6)}
	phi, lambda := tycho.At.Latitude, tycho.At.Longitude-centre.Longitude
	x := phi.Cos() * lambda.Sin()
	y := centre.Latitude.Cos()*phi.Sin() - centre.Latitude.Sin()*phi.Cos()*lambda.Cos()
	for turn, want := range map[float64][2]float64{0: {x, -y}, 180: {-x, y}, 90: {y, x}} {
		s := View{centre, quantity.Degrees(turn)}.At(tycho.At)
		if math.Abs(s.X-want[0]) > 1e-12 || math.Abs(s.Y-want[1]) > 1e-12 || !s.Shows() {
			t.Errorf("turned by %v°: %+v, want %v", turn, s, want)
		}
	}
}

// With north up the Moon's east, where Mare Crisium is, is to the right: no map of it is
// mirrored, however it is turned.
func TestViewIsNotMirrored(t *testing.T) {
	crisium, _ := Find(Moon, "Mare Crisium")
	imbrium, _ := Find(Moon, "Mare Imbrium")
	tycho, _ := Find(Moon, "Tycho")
	for turn := 0.0; turn < 360; turn += 15 {
		v := View{Turn: quantity.Degrees(turn)}
		a, b, c := v.At(crisium.At), v.At(imbrium.At), v.At(tycho.At)
		// Crisium (right), Tycho (bottom), Imbrium (upper left): clockwise as seen.
		if cross := (c.X-a.X)*(b.Y-a.Y) - (c.Y-a.Y)*(b.X-a.X); cross <= 0 {
			t.Errorf("turned by %v° the face is mirrored", turn)
		}
	}
}

func TestGoingArrives(t *testing.T) {
	a, _ := Find(Moon, "Apollo 11")
	b, _ := Find(Moon, "Apollo 17")
	got := a.At.Going(a.At.Toward(b.At), a.At.Angle(b.At))
	if off := got.Angle(b.At).Degrees(); off > 1e-6 {
		t.Errorf("%v° off", off)
	}
	for _, p := range Ring(b.At, Moon.Arc(quantity.Kilometres(100)), 12) {
		if d := Moon.Apart(p, b.At).Kilometres(); math.Abs(d-100) > 1e-6 {
			t.Errorf("a point of the ring is %v km away", d)
		}
	}
}

// What the far side has is on the rim's other side.
func TestFarSideDoesNotShow(t *testing.T) {
	for _, s := range Spots(Moon) {
		if (View{}).At(s.At).Shows() == s.Far() {
			t.Errorf("%s: far %v", s.Name, s.Far())
		}
	}
}

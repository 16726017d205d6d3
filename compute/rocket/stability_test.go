package rocket_test

import (
	"fmt"
	"math"
	"testing"

	"noonbook/compute/rocket"
)

var design = rocket.Design{
	Pipe: mm(21.3), Play: mm(0.8), Paper: mm(0.1), Weight: 80, Tape: grams(0.5),
	Body: mm(220), Nose: mm(45), Fins: 3, Fin: rocket.Fin{Root: mm(55), Tip: mm(30), Span: mm(35), Sweep: mm(30)},
}

// Half-inch pipe is 0.840 ± 0.004 in outside, ASTM D1785 table 1: 21.34 ± 0.10
// mm. The demo's 21.3 mm lies within it, and the tube takes the widest pipe.
func TestTubeFitsTheStandardPipe(t *testing.T) {
	near(t, "pipe", design.Pipe.Millimetres(), 0.840*25.4, 0.004*25.4)
	if inside := design.Pipe + design.Play; inside.Millimetres() <= (0.840+0.004)*25.4 {
		t.Errorf("a tube %v mm wide inside jams on the widest pipe", inside.Millimetres())
	}
	near(t, "outside", design.Diameter().Millimetres(), 22.3, 1e-9)
	near(t, "wrap", design.Wrap().Millimetres(), math.Pi*22.2, 1e-9)
}

// The sector's arc must be as long as the base is round, and its radius the side
// of the cone: the rolled cone then has the wanted base and height.
func TestConeCloses(t *testing.T) {
	for _, c := range []rocket.Cone{{mm(22.3), mm(45)}, {mm(60), mm(10)}, {mm(10), mm(300)}} {
		base := c.Slant().Metres() * c.Sector().Radians() / math.Pi
		near(t, "base", base, c.Diameter.Metres(), 1e-15)
		height := math.Sqrt(c.Slant().Metres()*c.Slant().Metres() - base*base/4)
		near(t, "height", height, c.Height.Metres(), 1e-12)
		if c.Sector() <= 0 || c.Sector() >= deg(360) {
			t.Errorf("a sector of %v°", c.Sector().Degrees())
		}
	}
}

// Barrowman's method has no worked example at hand; its parts are held against
// what they come from (all from memory). A slender body's normal force takes hold
// at length − volume/base area (Munk), two thirds of a cone's height. A fin's
// slope at low speed is 2πA/(2 + √(4 + (A/cos Γ)²)) on its own area (Diederich,
// NACA TN 2335), with the aspect ratio A of a pair and the sweep Γ of the mid-chord
// line, at the quarter point of the mean aerodynamic chord; three fins or more
// share n/2 of a pair.
func TestCentreOfPressureFromItsParts(t *testing.T) {
	for _, change := range []func(*rocket.Design){
		func(*rocket.Design) {},
		func(d *rocket.Design) { d.Fins = 4 },
		func(d *rocket.Design) { d.Fin = rocket.Fin{Root: mm(70), Tip: 0, Span: mm(30), Sweep: mm(60)} },
		func(d *rocket.Design) { d.Fin = rocket.Fin{Root: mm(40), Tip: mm(40), Span: mm(60), Sweep: 0} },
		func(d *rocket.Design) { d.Pipe, d.Nose = mm(50), mm(100) },
	} {
		d := design
		change(&d)
		if err := d.Check(); err != nil {
			t.Fatal(err)
		}
		root, tip, span, sweep := d.Fin.Root.Metres(), d.Fin.Tip.Metres(), d.Fin.Span.Metres(), d.Fin.Sweep.Metres()
		radius := d.Diameter().Metres() / 2

		// The mean aerodynamic chord and where it begins, by sums over the span.
		const strips = 200000
		var chord2, front, area float64
		for i := range strips {
			y := (float64(i) + 0.5) / strips
			c := root + (tip-root)*y
			area += c * span / strips
			chord2 += c * c * span / strips
			front += c * sweep * y * span / strips
		}
		quarterPoint := front/area + chord2/area/4

		aspect := 2 * span * span / area
		gamma := math.Atan2(sweep+tip/2-root/2, span)
		slope := 2 * math.Pi * aspect / (2 + math.Sqrt(4+math.Pow(aspect/math.Cos(gamma), 2)))
		reference := math.Pi * radius * radius
		fins := float64(d.Fins) / 2 * slope * area / reference * (1 + radius/(span+radius))

		nose := d.Nose.Metres() - math.Pi*radius*radius*d.Nose.Metres()/3/reference
		at := d.Length().Metres() - root + quarterPoint
		want := (2*nose + fins*at) / (2 + fins)
		near(t, fmt.Sprint(d.Fin), d.CentreOfPressure().Millimetres(), want*1000, 0.01)
	}
}

// The balance point against one found by cutting the rocket into rings.
func TestCentreOfMassByRings(t *testing.T) {
	d := design
	const rings = 100000
	overlap := mm(10)
	var mass, moment float64
	add := func(grams, at float64) { mass += grams; moment += grams * at }
	length := d.Length().Metres()
	for i := range rings {
		x := (float64(i) + 0.5) / rings * length
		dx := length / rings
		nose := d.Nose.Metres()
		if x < nose { // a ring of the cone: 2πr along the slant
			r := d.Diameter().Metres() / 2 * x / nose
			add(2*math.Pi*r*dx*d.Cone().Slant().Metres()/nose*d.Weight, x)
			continue
		}
		add((d.Wrap()+overlap).Metres()*dx*d.Weight+d.Tape.Grams()*dx/d.Body.Metres(), x)
	}
	// Fins: rings of the span instead, each with the middle of its chord.
	for i := range rings {
		y := (float64(i) + 0.5) / rings
		c := d.Fin.Root.Metres() + (d.Fin.Tip-d.Fin.Root).Metres()*y
		front := length - d.Fin.Root.Metres() + d.Fin.Sweep.Metres()*y
		add(2*float64(d.Fins)*c*d.Fin.Span.Metres()/rings*d.Weight, front+c/2)
	}
	near(t, "mass", d.Mass(overlap).Grams(), mass, 1e-5) // a ring at the seam of cone and tube
	near(t, "balance", d.CentreOfMass(overlap).Millimetres(), moment/mass*1000, 1e-3)
}

func TestMarginOfDesigns(t *testing.T) {
	good := design.Margin(mm(10))
	if good < 1 || good > 5 {
		t.Errorf("the usual rocket has a margin of %.2f", good)
	}
	small := design
	small.Fin = rocket.Fin{Root: mm(15), Tip: mm(10), Span: mm(6), Sweep: mm(3)}
	if margin := small.Margin(mm(10)); margin >= 1 {
		t.Errorf("with tiny fins the margin is still %.2f", margin)
	}
}

func TestDesignsThatCanNotBe(t *testing.T) {
	for name, change := range map[string]func(*rocket.Design){
		"no pipe":  func(d *rocket.Design) { d.Pipe = 0 },
		"no play":  func(d *rocket.Design) { d.Play = 0 },
		"no body":  func(d *rocket.Design) { d.Body = mm(math.NaN()) },
		"no nose":  func(d *rocket.Design) { d.Nose = 0 },
		"flat":     func(d *rocket.Design) { d.Pipe, d.Nose = mm(60), mm(20) },
		"two fins": func(d *rocket.Design) { d.Fins = 2 },
		"no span":  func(d *rocket.Design) { d.Fin.Span = 0 },
		"long fin": func(d *rocket.Design) { d.Fin.Root = mm(500) },
	} {
		d := design
		change(&d)
		if d.Check() == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if err := design.Check(); err != nil {
		t.Error(err)
	}
}

package almanac

import (
	"math"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/search"
	"noonbook/compute/space"
)

// A Contact is a moment of an eclipse and where the eclipsed body then stands.
// A moment that does not occur is a zero Contact.
type Contact struct {
	At    time.Time // UTC
	Where Horizontal
}

// Happens reports whether the moment occurs.
func (c Contact) Happens() bool { return !c.At.IsZero() }

// A SolarView is an eclipse of the Sun as one place has it. Contacts are told
// whether the Sun is up or not: look at their altitudes, and at Seen.
type SolarView struct {
	Kind        EclipseKind // NoEclipse, Partial, Annular or Total
	Begins      Contact     // first contact
	DeepBegins  Contact     // second: totality or the ring begins
	Deepest     Contact
	DeepEnds    Contact // third
	Ends        Contact // fourth
	Magnitude   float64 // fraction of the Sun's diameter covered at Deepest
	Obscuration float64 // fraction of its disc

	// Seen reports whether any of it happens with the Sun up. Best is then the
	// deepest moment with the Sun up, Deepest itself or a sunrise or sunset.
	Seen            bool
	Best            Contact
	BestMagnitude   float64
	BestObscuration float64
}

// From returns the eclipse as it is at p, contacts good to 20 s where UTC keeps
// to the Earth's rotation; mean limbs, sea-level horizon. The Sun counts as up
// while its centre is less than 50′ below the horizon.
func (e SolarEclipse) From(p place.Place) SolarView {
	w := watch{e.shadow(), observerAt(p)}
	gap := func(day float64) float64 { return w.bite(day).gap() }

	middle := w.middle()
	deepest := w.bite(middle)
	v := SolarView{Kind: deepest.kind()}
	if v.Kind == NoEclipse {
		return v
	}
	v.Deepest = w.sunAt(middle)
	v.Magnitude, v.Obscuration = deepest.magnitude(), deepest.obscuration()
	first, last := w.around(gap, middle)
	v.Begins, v.Ends = w.sunAt(first), w.sunAt(last)
	if v.Kind != Partial {
		second, third := w.around(func(day float64) float64 { return w.bite(day).deep() }, middle)
		v.DeepBegins, v.DeepEnds = w.sunAt(second), w.sunAt(third)
	}
	if best, up := w.bestUp(first, middle, last); up {
		b := w.bite(best)
		v.Seen, v.Best = true, w.sunAt(best)
		v.BestMagnitude, v.BestObscuration = b.magnitude(), b.obscuration()
	}
	return v
}

// A watch is an eclipse's shadow with an observer.
type watch struct {
	*shadow
	o observer
}

func (w *watch) sunAt(day float64) Contact {
	return Contact{w.at(day), w.sun.seen(&w.o, day).horizontal()}
}

// middle returns when the Moon's centre comes nearest to the Sun's. The Earth's
// turning can give the distance a second valley far from the first, so the
// valley is looked for every ten minutes.
func (w *watch) middle() float64 {
	const steps = 48
	off := func(day float64) float64 { return w.sun.seen(&w.o, day).angle(w.moon.seen(&w.o, day)) }
	best, step := 0, w.span()/steps
	least := off(0)
	for i := 1; i <= steps; i++ {
		if at := off(float64(i) * step); at < least {
			best, least = i, at
		}
	}
	return search.Lowest(off, max(0, float64(best-1)*step), min(w.span(), float64(best+1)*step), tenthSecond)
}

// around returns where f, negative in the middle, becomes positive before and
// after it.
func (w *watch) around(f func(float64) float64, middle float64) (before, after float64) {
	const step = 10.0 / 1440
	edge := func(by float64) float64 {
		near, fNear := middle, f(middle)
		for far := middle + by; far > -0.1 && far < w.span()+0.1; far += by {
			fFar := f(far)
			if fFar >= 0 {
				return search.Between(f, near, fNear, far, fFar, microsecond)
			}
			near, fNear = far, fFar
		}
		return near
	}
	return edge(-step), edge(step)
}

// bestUp returns the moment nearest to the middle at which the Sun is up
// between first and last.
func (w *watch) bestUp(first, middle, last float64) (best float64, up bool) {
	height := func(day float64) float64 {
		return w.sun.seen(&w.o, day).altitude() - float64(horizon-sunRadius-sunParallax)
	}
	if height(middle) >= 0 {
		return middle, true
	}
	const steps = 48
	for _, end := range [...]float64{first, last} {
		step := (end - middle) / steps
		for i := range steps {
			a, b := middle+float64(i)*step, middle+float64(i+1)*step
			if fb := height(b); fb >= 0 {
				x := search.Between(height, a, height(a), b, fb, microsecond)
				if !up || w.bite(x).off < w.bite(best).off {
					best, up = x, true
				}
				break
			}
		}
	}
	return best, up
}

// A bite is the Moon before the Sun, angles in radians.
type bite struct{ off, sun, moon, umbra float64 }

func (w *watch) bite(day float64) bite {
	sun, moon := w.sun.seen(&w.o, day), w.moon.seen(&w.o, day)
	d := math.Sqrt(moon.dot(moon))
	return bite{
		off:   sun.angle(moon),
		sun:   math.Asin(sunLimb / math.Sqrt(sun.dot(sun))),
		moon:  math.Asin(moonPenumbra / d),
		umbra: math.Asin(moonUmbra / d),
	}
}

// gap is what is missing to a first touch of the limbs, deep to the inner one.
func (b bite) gap() float64  { return b.off - b.sun - b.moon }
func (b bite) deep() float64 { return b.off - math.Abs(b.sun-b.umbra) }

func (b bite) kind() EclipseKind {
	switch {
	case b.gap() >= 0 || math.IsNaN(b.off):
		return NoEclipse
	case b.deep() >= 0:
		return Partial
	case b.umbra > b.sun:
		return Total
	}
	return Annular
}

func (b bite) magnitude() float64 { return max(0, -b.gap()/(2*b.sun)) }

// obscuration is the part of the Sun's disc that two overlapping circles share.
func (b bite) obscuration() float64 {
	switch {
	case b.gap() >= 0:
		return 0
	case b.off <= math.Abs(b.sun-b.moon):
		return min(1, b.moon*b.moon/(b.sun*b.sun))
	}
	wedge := func(r, other float64) float64 {
		half := math.Acos((b.off*b.off + r*r - other*other) / (2 * b.off * r))
		return r * r * (half - math.Sin(2*half)/2)
	}
	return (wedge(b.sun, b.moon) + wedge(b.moon, b.sun)) / (math.Pi * b.sun * b.sun)
}

// angle returns the angle between two directions.
func (v topocentric) angle(w topocentric) float64 {
	return float64(space.Vector{X: v.north, Y: v.east, Z: v.up}.Angle(space.Vector{X: w.north, Y: w.east, Z: w.up}))
}

// A LunarView is an eclipse of the Moon as one place has it.
type LunarView struct {
	PenumbraBegins, PartialBegins, TotalBegins Contact
	Greatest                                   Contact
	TotalEnds, PartialEnds, PenumbraEnds       Contact

	// Deepest is the deepest stage that happens with the Moon up, NoEclipse if
	// none does: its upper limb above the horizon, with 34′ of refraction.
	Deepest EclipseKind
}

// From returns the eclipse as it is at p.
func (e LunarEclipse) From(p place.Place) LunarView {
	contact := func(t time.Time) Contact {
		if t.IsZero() {
			return Contact{}
		}
		return Contact{t, Moon.From(p, t)}
	}
	v := LunarView{
		PenumbraBegins: contact(e.PenumbraBegins),
		PartialBegins:  contact(e.PartialBegins),
		TotalBegins:    contact(e.TotalBegins),
		Greatest:       contact(e.Greatest),
		TotalEnds:      contact(e.TotalEnds),
		PartialEnds:    contact(e.PartialEnds),
		PenumbraEnds:   contact(e.PenumbraEnds),
	}
	for _, stage := range [...]struct {
		kind       EclipseKind
		begin, end time.Time
	}{
		{Penumbral, e.PenumbraBegins, e.PenumbraEnds},
		{Partial, e.PartialBegins, e.PartialEnds},
		{Total, e.TotalBegins, e.TotalEnds},
	} {
		if !stage.begin.IsZero() && moonUp(p, stage.begin, stage.end) {
			v.Deepest = stage.kind
		}
	}
	return v
}

// moonUp reports whether the Moon is up at some moment of an interval, looking
// at every five minutes and both ends.
func moonUp(p place.Place, from, to time.Time) bool {
	limb := horizon - Moon.Semidiameter(MoonMeanDistance)
	for t := from; t.Before(to); t = t.Add(5 * time.Minute) {
		if Moon.From(p, t).Altitude > limb {
			return true
		}
	}
	return Moon.From(p, to).Altitude > limb
}

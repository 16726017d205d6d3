package lens

import "noonbook/compute/quantity"

// A Ray is where light meets a plane square to the axis, and how steeply it
// climbs.
type Ray struct {
	Height quantity.Length
	Slope  float64 // tangent
}

// Onward returns the ray a distance further on.
func (r Ray) Onward(distance quantity.Length) Ray {
	return Ray{r.Height + quantity.Length(r.Slope)*distance, r.Slope}
}

// Through returns the ray behind the lens.
func (l Lens) Through(r Ray) Ray {
	return Ray{r.Height, r.Slope - float64(r.Height/l.Focal)}
}

// From returns the ray that leaves a point at a finite distance before the lens, so
// high above the axis, and meets the lens at the given height. Light from Infinity
// is a Ray with the slope of its direction at every height.
func From(distance, above, at quantity.Length) Ray {
	return Ray{at, float64((at - above) / distance)}
}

// A Path is one ray at the planes of a telescope.
type Path struct {
	Front  Ray // as it meets the front lens
	Within Ray // as it leaves the front lens
	Eye    Ray // as it leaves the eye lens
}

// Trace follows a ray that meets the front lens through the telescope. It does not
// stop rays at the lenses' edges.
func (t Telescope) Trace(separation quantity.Length, r Ray) Path {
	within := t.Front.Through(r)
	return Path{r, within, t.Eye.Through(within.Onward(separation))}
}

// Passes reports whether the ray meets both lenses within their diameters.
func (t Telescope) Passes(p Path) bool {
	within := func(r Ray, l Lens) bool { return r.Height <= l.Diameter/2 && r.Height >= -l.Diameter/2 }
	return within(p.Front, t.Front) && within(p.Eye, t.Eye)
}

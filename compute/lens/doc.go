// Package lens places images behind thin lenses, makes a telescope of two of
// them, traces rays through it and says where to cut its tubes.
//
//	front, eye := lens.Lens{Focal: mm(250), Diameter: mm(50)}, lens.Lens{Focal: mm(50), Diameter: mm(30)}
//	t, err := lens.NewTelescope(front, eye)
//	t.Magnification()                                    // 5
//	length, err := t.Separation(quantity.Metres(5), 0)   // 313.2 mm for a relaxed eye
//	path := t.Trace(length, lens.From(quantity.Metres(5), 0, mm(20)))
//
// # Mathematics
//
// A thin lens of focal length f makes an image of a thing at distance o at
//
//	1/f = 1/o + 1/i
//
// and a ray that meets it at height y with slope u leaves it with the slope
// u − y/f. Between lenses heights grow by slope times distance. Both are exact for
// the ideal thin lens of geometrical optics; nothing is expanded or cut off. The
// formulas of the telescope and the trace are two ways to the same numbers, and
// the tests hold them against each other.
//
// The telescope has a converging lens in front, of focal length F, and a stronger
// converging lens at the eye, e, and shows things upside down. From a thing at
// distance d the light meets at F·d/(d − F) behind the front lens. An eye that
// accommodates by A dioptres wants light that comes from 1/A in front of the eye
// lens, so that the image must lie e/(1 + A·e) before it. The sum of the two is the
// distance between the lenses; with a far thing and a relaxed eye it is F + e.
//
// # Signs and units
//
// Distances of real things and images are positive; an image distance below zero
// is a virtual image, on the side of the thing. Heights are positive upwards,
// slopes are tangents, positive for a ray that climbs in the direction of the
// light. Magnification is given without sign: the image of this telescope is always
// turned by half a turn. Accommodation counts in dioptres at the eye lens: zero for
// a relaxed eye of normal sight, positive for an eye that looks near or is short
// of sight without its glasses, negative for one that is long of sight.
//
// # Accuracy and range
//
// Within its model the package is exact to rounding. The model leaves out the
// thickness of the lens (some 2 mm in where a distance ends), the errors of lenses
// with spherical faces away from their middle, and colour, which has an estimate of
// its own (View.Fringe). Numbers about what can be seen, Detail, Fringe and
// MaskDiameter, are estimates of a trade and good to half of themselves.
//
// It does not do diverging lenses, achromats, mirrors, prisms or eyepieces of
// several lenses.
//
// # Sources
//
// Thin lenses: OpenStax, College Physics, ch. 25.6, and University Physics 3, ch. 2.
// Colour, the diameter of a mask and the limits of the eye have theirs beside the
// constants.
package lens

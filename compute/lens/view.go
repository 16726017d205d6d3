package lens

import (
	"math"

	"noonbook/compute/quantity"
	"noonbook/compute/world"
)

// A View is what an eye behind a telescope gets of a far thing, with the eye at
// the eye relief.
type View struct {
	Telescope
	Mask  quantity.Length // hole before the front lens; zero for none
	Pupil quantity.Length // of the eye
}

// Pupils of the eye in daylight and in the dark: from memory; children's are
// wider, old people's narrower.
const (
	DayPupil   = quantity.Length(0.003)
	NightPupil = quantity.Length(0.006)
)

const (
	// passes is what two uncoated lenses let through: each of the four faces
	// throws ((n−1)/(n+1))² of the light back, 4 % for glass or acrylic of n = 1.5
	// (Fresnel; OpenStax, University Physics 3).
	passes = 0.96 * 0.96 * 0.96 * 0.96
	// eyeSees is the smallest angle of a good eye, one minute of arc: the line
	// width of an optician's chart for full sight.
	eyeSees = math.Pi / 180 / 60
	// sensibleCircle is the aperture over the width of the coloured disc that an
	// eye notices in a point of light: about 250, I. Newton, Opticks, 1704, book 1
	// part 1 prop. 7, which gives it as a bound.
	sensibleCircle = 250
	// maskRatio is the square of the aperture over the focal length that makers of
	// single front lenses settled on: C. Huygens, Dioptrica, in Opuscula postuma
	// (1703), 3 inches on 30 feet of 12 inches; the aperture and the inch, 26.2 mm,
	// are from memory. It is 0.655 mm.
	maskRatio = quantity.Length(3.0 * 3 / (30 * 12) * 0.0262)
	// green light, for the disc that an edge makes of a point: 1.22 λ/D (OpenStax,
	// University Physics 3, ch. 4.5).
	green = quantity.Length(555e-9)
	// MoonWidth is the Moon's diameter in the sky, 31.1′ at its mean distance.
	MoonWidth = quantity.Angle(world.MoonDiameter / world.ToTheMoon)
)

// aperture is the part of the front lens that light may pass.
func (v View) aperture() quantity.Length {
	if v.Mask > 0 {
		return min(v.Mask, v.Front.Diameter)
	}
	return v.Front.Diameter
}

// ExitPupil returns the width of the beam that leaves the telescope, the image of
// the aperture in the eye lens.
func (v View) ExitPupil() quantity.Length {
	return v.aperture() / quantity.Length(v.Magnification())
}

// used is the part of the aperture whose light gets into the eye.
func (v View) used() quantity.Length {
	return min(v.aperture(), v.Pupil*quantity.Length(v.Magnification()))
}

// Brightness returns how bright the face of the Moon, or a wall, looks beside how it
// looks without a telescope. It is never above one: a wider beam than the pupil
// does not get in.
func (v View) Brightness() float64 {
	r := float64(min(v.ExitPupil(), v.Pupil) / v.Pupil)
	return passes * r * r
}

// StarGain returns how many times more light of a star gets into the eye.
func (v View) StarGain() float64 {
	r := float64(v.used() / v.Pupil)
	return passes * r * r
}

// Field returns the angle across the sky that is seen at once, to where half of a
// beam still meets the eye lens.
func (v View) Field() quantity.Angle {
	separation := v.Front.Focal + v.Eye.Focal
	return 2 * quantity.Atan2(float64(v.Eye.Diameter/2/separation), 1)
}

// Fringe returns how wide the coloured rim of a bright point looks through the
// telescope.
func (v View) Fringe() quantity.Angle {
	return quantity.Angle(v.Magnification() * v.blur())
}

// blur is the noticed disc of colour, in the sky.
func (v View) blur() float64 { return float64(v.used()/v.Front.Focal) / sensibleCircle }

// Detail returns the smallest angle in the sky that can be told apart: what the
// eye sees of the magnified picture, the colours of the front lens and the edge of
// its aperture, as squares together. An estimate, good to half of itself.
func (v View) Detail() quantity.Angle {
	eye := eyeSees / v.Magnification()
	edge := 1.22 * float64(green/v.used())
	return quantity.Angle(math.Sqrt(eye*eye + v.blur()*v.blur() + edge*edge))
}

// EyeDetail returns the smallest angle that an eye tells apart without help.
func EyeDetail() quantity.Angle { return eyeSees }

// MaskDiameter returns the hole in a card before the front lens that keeps colours
// bearable, and false where the lens is already no wider.
func (t Telescope) MaskDiameter() (quantity.Length, bool) {
	hole := quantity.Length(math.Sqrt(float64(maskRatio * t.Front.Focal)))
	if hole >= t.Front.Diameter {
		return t.Front.Diameter, false
	}
	return hole, true
}

// Masked returns what is seen with the mask on, where one is of use.
func (t Telescope) Masked(pupil quantity.Length) View {
	v := View{Telescope: t, Pupil: pupil}
	if hole, ok := t.MaskDiameter(); ok {
		v.Mask = hole
	}
	return v
}

// Shake returns through which angle the telescope turns when one of its ends moves
// sideways and the other stays.
func (t Telescope) Shake(aside quantity.Length) quantity.Angle {
	return quantity.Atan2(aside.Metres(), (t.Front.Focal + t.Eye.Focal).Metres())
}

package rocket

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// A Cone is a nose cone that is rolled from a flat sector of a disc.
type Cone struct{ Diameter, Height quantity.Length }

// Slant returns the length of its side, the radius of the sector.
func (c Cone) Slant() quantity.Length {
	return quantity.Length(math.Hypot(c.Diameter.Metres()/2, c.Height.Metres()))
}

// Sector returns the angle of the sector: its arc must go once round the base,
// slant × angle = π × diameter.
func (c Cone) Sector() quantity.Angle {
	return quantity.Angle(math.Pi * c.Diameter.Metres() / c.Slant().Metres())
}

// A Fin is a flat fin with its root along the tube. Sweep is how far the front of
// its tip lies behind the front of its root.
type Fin struct{ Root, Tip, Span, Sweep quantity.Length }

// A Design is a paper rocket: a tube that slides over the pipe, a cone and fins
// whose roots end at the tube's end.
type Design struct {
	Pipe   quantity.Length // outside diameter of the launcher's pipe
	Play   quantity.Length // by how much the tube is wider, on the diameter
	Paper  quantity.Length // thickness
	Weight float64         // of the paper, g/m²
	Tape   Mass            // along the tube
	Body   quantity.Length // length of the tube
	Nose   quantity.Length // height of the cone
	Fins   int
	Fin    Fin
}

// PaperThickness returns the thickness of uncoated paper: 0.1 mm at 80 g/m², in
// proportion (bulk 1.25 cm³/g, common practice, no source).
func PaperThickness(gramsASquareMetre float64) quantity.Length {
	return quantity.Millimetres(gramsASquareMetre * 1.25e-3)
}

// Check fails for a design that cannot be made.
func (d Design) Check() error {
	switch {
	case !(d.Pipe > 0) || !(d.Play > 0):
		return fmt.Errorf("a tube %g mm wider than a pipe of %g mm: both must be positive", d.Play.Millimetres(), d.Pipe.Millimetres())
	case !(d.Body > 0) || !(d.Nose > 0):
		return fmt.Errorf("a tube of %g mm and a nose of %g mm: both must be positive", d.Body.Millimetres(), d.Nose.Millimetres())
	case d.Cone().Sector() > quarter*3:
		return fmt.Errorf("a nose of %g mm is too flat for a tube %.1f mm across: there is no room for the flap", d.Nose.Millimetres(), d.Diameter().Millimetres())
	case d.Fins < 3:
		return fmt.Errorf("%d fins: at least three are needed to hold it straight on all sides", d.Fins)
	case !(d.Fin.Root > 0) || !(d.Fin.Span > 0) || !(d.Fin.Tip >= 0) || !(d.Fin.Sweep >= 0):
		return fmt.Errorf("a fin of root %g mm and span %g mm: both must be positive", d.Fin.Root.Millimetres(), d.Fin.Span.Millimetres())
	case d.Fin.Root > d.Body:
		return fmt.Errorf("a fin of root %g mm is longer than the tube of %g mm", d.Fin.Root.Millimetres(), d.Body.Millimetres())
	}
	return nil
}

// Diameter returns the tube's outside diameter: the pipe, the play and the paper
// on both sides.
func (d Design) Diameter() quantity.Length { return d.Pipe + d.Play + 2*d.Paper }

// Wrap returns the length of paper that goes once round the tube, along the
// middle of its thickness, without the overlap that is glued.
func (d Design) Wrap() quantity.Length {
	return math.Pi * (d.Pipe + d.Play + d.Paper)
}

// Cone returns the nose cone, as wide as the tube outside.
func (d Design) Cone() Cone { return Cone{d.Diameter(), d.Nose} }

// Length returns the length from the tip to the tube's end.
func (d Design) Length() quantity.Length { return d.Nose + d.Body }

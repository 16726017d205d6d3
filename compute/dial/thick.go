package dial

import "noonbook/compute/quantity"

// An Edge is one of the two upper edges of a gnomon cut from thick stuff. Each
// is a style with a dial centre of its own; the centres lie as far apart as the
// gnomon is thick, and so do the two noon lines that start from them.
type Edge int

const (
	BothEdges     Edge = iota // at noon and midnight, where the shadow is as broad as the gnomon
	MorningEdge               // on the side of the morning hours, the west on a level plate
	AfternoonEdge             // on the side of the afternoon hours
)

// Edge returns the edge whose shadow bounds the gnomon's at the line's hour,
// and from whose centre the line is drawn. Between six and six that is the edge
// on the side to which the shadow falls; before six in the morning and after six
// in the evening, where the shadow runs backward past the centres, the other. At
// six both edges give the same line.
func (l HourLine) Edge() Edge {
	switch side := l.HourAngle.Sin() * l.HourAngle.Cos(); {
	case l.HourAngle == 0 || l.HourAngle.Signed() == quantity.Turn/2:
		return BothEdges
	case side < 0:
		return MorningEdge
	}
	return AfternoonEdge
}

// Offset returns how far the centre of the edge lies from the middle of the
// gap between the noon lines, toward the afternoon side.
func (e Edge) Offset(thickness quantity.Length) quantity.Length {
	switch e {
	case MorningEdge:
		return -thickness / 2
	case AfternoonEdge:
		return thickness / 2
	}
	return 0
}

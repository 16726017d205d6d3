package rocket

import "noonbook/build/say"

// drawnMost is how long a line goes along the long side of A4 and Letter paper alike,
// in mm, with room for the margin and for an angle that is drawn at its end.
const drawnMost = 250

// paperScale is how many millimetres of a pupil's drawing are a metre outside: the
// largest of a few round ones at which the stations' distance goes on the paper.
// Heights are then found with ruler and protractor, without a tangent.
func (z zone) paperScale() float64 {
	for _, scale := range []float64{4, 2} {
		if scale*z.station.Metres() <= drawnMost {
			return scale
		}
	}
	return 1
}

// drawnValue is a length on that drawing, in whole millimetres in every school: the scale
// is of millimetres to a metre.
func drawnValue(mm float64) say.Value { return say.Number(mm, "mm", 0).InMetric() }

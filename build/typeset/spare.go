package typeset

import (
	"slices"

	"noonbook/build/drawing"
)

// A closing is a drawing without the room that its labels leave spare.
type closing []cut

// A cut takes so much out of a drawing at a height.
type cut struct{ at, by float64 }

// closed finds what the labels leave of each span, on a wide and on a narrow page alike.
func closed(d *drawing.Drawing, readings ...[]Label) closing {
	var c closing
	for _, span := range d.Spare {
		highest := span.Bottom
		for _, labels := range readings {
			for _, l := range labels {
				if l.patch.hull.Bottom > span.Top && l.patch.hull.Top < span.Bottom {
					highest = min(highest, l.patch.hull.Top)
				}
			}
		}
		if highest > span.Top {
			c = append(c, cut{span.Top, highest - span.Top})
		}
	}
	return c
}

// up is how far a height moves.
func (c closing) up(y float64) float64 {
	up := 0.0
	for _, k := range c {
		up += min(k.by, max(0, y-k.at))
	}
	return up
}

func (c closing) points(points []drawing.Point) []drawing.Point {
	moved := slices.Clone(points)
	for i := range moved {
		moved[i].Y -= c.up(moved[i].Y)
	}
	return moved
}

func (c closing) shapes(shapes []drawing.Shape) []drawing.Shape {
	if len(c) == 0 {
		return shapes
	}
	moved := slices.Clone(shapes)
	for i := range moved {
		moved[i].Points = c.points(moved[i].Points)
	}
	return moved
}

func (c closing) labels(labels []Label) []Label {
	if len(c) == 0 {
		return labels
	}
	moved := slices.Clone(labels)
	for i := range moved {
		moved[i].At.Y -= c.up(moved[i].At.Y)
		moved[i].Leader = c.points(moved[i].Leader)
	}
	return moved
}

// beyond is how far letters may stick out of a drawing, in mm; pages have that much
// room between drawings and words.
const beyond = 0.6

// extent is from where to where a drawing goes, with the labels that stand above or
// below it.
func (c closing) extent(d *drawing.Drawing, readings ...[]Label) (top, bottom float64) {
	bottom = d.Height
	for _, labels := range readings {
		for _, l := range labels {
			if h := l.patch.hull; h.Top < -beyond || h.Bottom > d.Height+beyond {
				top, bottom = min(top, h.Top), max(bottom, h.Bottom)
			}
		}
	}
	return top, bottom - c.up(bottom)
}

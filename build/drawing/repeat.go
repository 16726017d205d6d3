package drawing

import "math"

// Repeated returns the drawing again and again, one below the other with a gap between,
// as often as the paper has room for, and how often that is: a small thing that a class needs
// many of. One that does not fit once is returned as it is.
func (p Paper) Repeated(d Drawing, gap float64) (Drawing, int) {
	width, height := p.Area()
	n := int(math.Floor((height+gap)/(d.Height+gap) + 1e-9))
	if d.Width > width+1e-9 || n < 2 {
		return d, 1
	}
	once, step := d.Shapes, d.Height+gap
	d.Shapes = nil
	for i := range n {
		for _, s := range once {
			moved := make([]Point, len(s.Points))
			for j, q := range s.Points {
				moved[j] = Point{X: q.X, Y: q.Y + step*float64(i)}
			}
			s.Points = moved
			d.Shapes = append(d.Shapes, s)
		}
	}
	d.Height += step * float64(n-1)
	return d, n
}

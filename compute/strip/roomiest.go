package strip

import "noonbook/compute/quantity"

// Roomiest returns the spot of the field that is farthest from every edge, and how
// far that is, to a centimetre or 1e-4 of the field: the middle of the largest
// circle that lies within it. Of several such spots, as in a long rectangle, it is
// the centre of area if that is one of them.
func (o Outline) Roomiest() (Spot, quantity.Length) {
	best := o.Heart()
	room := o.edge(best)
	low, high := o.Bounds()
	const steps, rounds = 40, 4
	for range rounds {
		step := Spot{(high.East - low.East) / steps, (high.North - low.North) / steps}
		for i := range steps + 1 {
			for j := range steps + 1 {
				s := Spot{low.East + step.East*quantity.Length(i), low.North + step.North*quantity.Length(j)}
				if d := o.edge(s); d > room+1e-9 && o.Holds(s) {
					best, room = s, d
				}
			}
		}
		// Look again, closer, round the best: it is less than two steps away.
		low = Spot{best.East - 2*step.East, best.North - 2*step.North}
		high = Spot{best.East + 2*step.East, best.North + 2*step.North}
	}
	return best, room
}

package drawing

import "math"

// Thin leaves out points of a path that lies within so many millimetres of the path
// through the others. The first and the last stay; what stays keeps its order.
// Source: Douglas and Peucker, The Canadian Cartographer 10 (1973), 112-122.
func Thin(path []Point, within float64) []Point {
	if len(path) < 3 {
		return path
	}
	first, last := path[0], path[len(path)-1]
	far := farthestOff(path, within)
	if far == 0 {
		return []Point{first, last}
	}
	before := Thin(path[:far+1], within)
	return append(before[:len(before)-1:len(before)-1], Thin(path[far:], within)...)
}

// farthestOff returns which point of a path is farthest from the stretch between its ends,
// and 0 where none is farther than so many millimetres.
func farthestOff(path []Point, within float64) int {
	from, to := path[0], path[len(path)-1]
	x, y := to.X-from.X, to.Y-from.Y
	long := x*x + y*y
	const sure = 1 - 1e-12 // of a square, which is no more exact than that
	far, most, square := 0, within, within*within*sure
	for i, p := range path[1 : len(path)-1] {
		along := 0.0
		if long > 0 {
			along = min(1, max(0, ((p.X-from.X)*x+(p.Y-from.Y)*y)/long))
		}
		dx, dy := p.X-from.X-along*x, p.Y-from.Y-along*y
		if dx*dx+dy*dy <= square { // as are nearly all; a hypotenuse costs more
			continue
		}
		if off := math.Hypot(dx, dy); off > most {
			far, most, square = i+1, off, off*off*sure
		}
	}
	return far
}

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
	far, most := 0, within
	for i, p := range path[1 : len(path)-1] {
		if off := offChord(p, first, last); off > most {
			far, most = i+1, off
		}
	}
	if far == 0 {
		return []Point{first, last}
	}
	before := Thin(path[:far+1], within)
	return append(before[:len(before)-1:len(before)-1], Thin(path[far:], within)...)
}

// offChord is the distance of a point from the stretch between two others, in millimetres.
func offChord(p, from, to Point) float64 {
	x, y := to.X-from.X, to.Y-from.Y
	along := 0.0
	if long := x*x + y*y; long > 0 {
		along = min(1, max(0, ((p.X-from.X)*x+(p.Y-from.Y)*y)/long))
	}
	return math.Hypot(p.X-from.X-along*x, p.Y-from.Y-along*y)
}

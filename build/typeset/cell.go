package typeset

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/result"
)

// corners of what can be hit round a stop that has room.
const corners = 12

// cellsOf returns for each stop what a pointer may hit to choose it: all that is within its
// reach, or within least mm where that is more, and nearer to it than to any other stop. So
// no two overlap, and the nearest wins. A cell goes round its stop and is convex; that of a
// stop at the very place of an earlier one is empty.
func cellsOf(stops []result.Stop, least float64) [][]drawing.Point {
	cells := make([][]drawing.Point, len(stops))
	for i, stop := range stops {
		// The middles of its sides are as far as the reach.
		r := max(stop.Reach, least) / math.Cos(math.Pi/corners)
		cell := make([]drawing.Point, corners)
		for k := range cell {
			sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / corners)
			cell[k] = drawing.Point{X: stop.At.X + r*cos, Y: stop.At.Y + r*sin}
		}
		for k, other := range stops {
			if k == i {
				continue
			}
			if other.At == stop.At {
				if k < i {
					cell = nil
				}
				continue
			}
			cell = nearer(cell, stop.At, other.At)
		}
		cells[i] = cell
	}
	return cells
}

// nearer leaves of a convex cell what is nearer to one point than to another.
func nearer(cell []drawing.Point, to, than drawing.Point) []drawing.Point {
	dx, dy := than.X-to.X, than.Y-to.Y
	beyond := func(p drawing.Point) float64 { // the line half way between them
		return (p.X-(to.X+than.X)/2)*dx + (p.Y-(to.Y+than.Y)/2)*dy
	}
	var left []drawing.Point
	for k, p := range cell {
		next := cell[(k+1)%len(cell)]
		here, there := beyond(p), beyond(next)
		if here <= 0 {
			left = append(left, p)
		}
		if here*there < 0 { // the side crosses it
			s := here / (here - there)
			left = append(left, drawing.Point{X: p.X + s*(next.X-p.X), Y: p.Y + s*(next.Y-p.Y)})
		}
	}
	return left
}

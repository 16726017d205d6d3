package maps

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/quantity"
)

// barLength is how long the bar in kilometres is.
const barLength = quantity.Length(2e6)

// scales draws the scale bars: one in kilometres, and one in ways that the class knows, if
// there is one, so far to the right and below. They hold along the equator.
func (m *marsPicture) scales(known entry.KnownWay, at drawing.Point, right, below float64) {
	m.bar(at, barLength, say.Words("mars-map.scale_bar", say.Number(barLength.Kilometres(), "km", 0)))
	if !known.Is() {
		return
	}
	n := barWays(known)
	m.bar(drawing.Point{X: at.X + right, Y: at.Y + below}, quantity.Length(n)*known.Length, barText(n, known))
}

func barText(n float64, known entry.KnownWay) say.Value {
	if n == 1 {
		return known.Name()
	}
	return say.Words("known-way.times", say.Number(n, "", 0), say.Text(known.To))
}

// barWays is how many ways a bar has: one, two or five and so many noughts, so that it is
// 1000 to 2500 km long, or one where the way is longer.
func barWays(known entry.KnownWay) float64 {
	ways := 1000 / known.Length.Kilometres()
	if ways <= 1 {
		return 1
	}
	unit := math.Pow(10, math.Floor(math.Log10(ways)))
	for _, n := range []float64{1, 2, 5} {
		if n*unit >= ways-1e-9 {
			return n * unit
		}
	}
	return 10 * unit
}

// bar draws a scale bar in four parts, with what it says at its right end.
func (m *marsPicture) bar(at drawing.Point, length quantity.Length, says say.Value) {
	const high = 1.6
	long := m.millimetres(length)
	for i := range 4 {
		x, next := at.X+long*float64(i)/4, at.X+long*float64(i+1)/4
		role := "bar-light grid"
		if i%2 == 0 {
			role = "bar-dark grid"
		}
		m.d.Area(role, drawing.Point{X: x, Y: at.Y}, drawing.Point{X: next, Y: at.Y}, drawing.Point{X: next, Y: at.Y + high}, drawing.Point{X: x, Y: at.Y + high})
	}
	m.d.Offer("figure", drawing.Keep, says, drawing.Place{At: drawing.Point{X: at.X + long + 1.5, Y: at.Y + high/2}, Anchor: drawing.Start, Sits: drawing.Centred})
}

// key explains the marks of landings and the areas, so many in a row from the point, each so
// far from the one before, and the rows so far apart.
func (m *marsPicture) key(at drawing.Point, columns int, step, row, size float64) {
	centre := func(i int) drawing.Point {
		return drawing.Point{X: at.X + step*float64(i%columns) + size, Y: at.Y + row*float64(i/columns)}
	}
	put := func(i int, text say.Value) {
		beside := centre(i)
		beside.X += size + 1.2
		m.d.Offer("figure", drawing.Keep, text, drawing.Place{At: beside, Anchor: drawing.Start, Sits: drawing.Centred, Wide: step - 2*size - 2})
	}
	siteMark(m.d, siteRover, centre(0), size)
	put(0, siteMeaning(siteRover))
	siteMark(m.d, siteLander, centre(1), size)
	put(1, siteMeaning(siteLander))
	for i, role := range []string{"low", "high", "volcano", "crater"} {
		m.d.Disc(role+" grid", centre(i+2), 1.2*size)
		put(i+2, say.Words("mars-map."+"key_"+role))
	}
}

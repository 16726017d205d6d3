package entrytest

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/drawing"
)

// LinesOf returns the paths of a role on the first sheet's drawing.
func LinesOf(sheets []drawing.Sheet, role string) []drawing.Shape {
	var found []drawing.Shape
	for _, s := range sheets[0].Drawing.Shapes {
		if s.Role == role {
			found = append(found, s)
		}
	}
	return found
}

// Angle is that of a path from straight up on the paper, clockwise.
func Angle(s drawing.Shape) float64 {
	a, b := s.Points[0], s.Points[len(s.Points)-1]
	return math.Atan2(b.X-a.X, a.Y-b.Y) * 180 / math.Pi
}

// Centroid returns the middle and the area of a polygon by the shoelace formula.
func Centroid(corners []drawing.Point) (drawing.Point, float64) {
	var x, y, twice float64
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		cross := a.X*b.Y - b.X*a.Y
		twice += cross
		x, y = x+(a.X+b.X)*cross, y+(a.Y+b.Y)*cross
	}
	return drawing.Point{X: x / (3 * twice), Y: y / (3 * twice)}, math.Abs(twice / 2)
}

// Path returns the points of the only shape of that role.
func Path(t *testing.T, d drawing.Drawing, role string) []drawing.Point {
	t.Helper()
	var found [][]drawing.Point
	for _, s := range d.Shapes {
		if strings.HasSuffix(s.Role, role) && s.Anchor == "" {
			found = append(found, s.Points)
		}
	}
	if len(found) == 0 {
		t.Fatalf("no %s in %s", role, d.Name)
	}
	return found[0]
}

// Apart is the distance of two points.
func Apart(a, b drawing.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// A rectangle of a drawing that something covers.
type Covered struct{ Left, Top, Right, Bottom float64 }

func (a Covered) Meets(b Covered) bool {
	return a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom
}

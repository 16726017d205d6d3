package way

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/typeset"
	"noonbook/compute/quantity"
)

// The fan: however many lessons, at whatever latitude, each line stands where the dial
// has it, its leading line ends at the middle of its row, crosses no other and does not
// cut the dial. South of the equator all of it is mirrored, and morning still above.
func TestFan(t *testing.T) {
	for _, latitude := range []float64{90, 68, 46.09, 21, 0, -5, -45.87, -90} {
		for n := 1; n <= 40; n++ {
			lessons := make([]typeset.Link, n)
			for i := range lessons {
				lessons[i] = typeset.Link{Title: "A lesson", Number: strconv.Itoa(i + 1), File: fmt.Sprintf("%d.html", i+1)}
			}
			rows := RowsFor(lessons)
			d := rows.Fan(quantity.Degrees(latitude), lessons)
			centre := drawing.Point{X: 32, Y: d.Height / 2} // as the style sheet's 29.5 rem have room for
			side := 1.0
			if latitude < 0 {
				centre.X, side = 118-32, -1
			}
			var leaders [][]drawing.Point
			edge := 0.0
			for _, s := range d.Shapes {
				if s.Role == "rim" && s.Closed {
					edge = centre.Y - s.Points[0].Y
				}
			}
			for _, s := range d.Shapes {
				switch s.Role {
				case "leader":
					leaders = append(leaders, s.Points)
				case "lesson":
					// atan(sin φ tan H), A. Waugh, Sundials (1973), chapter 10 (from memory); the
					// lessons are evenly far apart in hours, and the first has the least.
					hours := -6 + 12*(float64(len(leaders))-0.5)/float64(n)
					phi := max(20, math.Abs(latitude)) * math.Pi / 180
					want := math.Atan(math.Sin(phi) * math.Tan(hours*math.Pi/12))
					end := s.Points[1]
					if got := math.Atan2(end.Y-centre.Y, side*(end.X-centre.X)); math.Abs(got-want) > 1e-6 {
						t.Errorf("%v, lesson %d of %d: the line is turned %.2f, want %.2f", latitude, len(leaders), n, got, want)
					}
				}
			}
			if len(leaders) != n {
				t.Fatalf("%d leading lines for %d lessons", len(leaders), n)
			}
			for i, l := range leaders {
				end := l[len(l)-1]
				if row := d.Height/2 + rows.height*(float64(i)-float64(n-1)/2); math.Abs(end.Y-row) > 1e-9 || math.Abs(end.X-(118/2+side*118/2)) > 1e-9 {
					t.Errorf("%v, lesson %d of %d: the line ends at %v, and its row is at %.1f", latitude, i+1, n, end, row)
				}
				for k := 1; k < len(l); k++ {
					if near := nearest(l[k-1], l[k], centre); near < edge {
						t.Errorf("%v, lesson %d of %d: its leading line comes to %.2f of the centre, into the dial of %.2f", latitude, i+1, n, near, edge)
					}
				}
				if i > 0 && meet(leaders[i-1], l) {
					t.Errorf("%v, %d lessons: the leading lines of %d and %d cross", latitude, n, i, i+1)
				}
			}
			for _, s := range d.Shapes {
				for _, p := range s.Points {
					if p.X-s.Radius < -1e-9 || p.X+s.Radius > d.Width+1e-9 || p.Y-s.Radius < -1 || p.Y+s.Radius > d.Height+1 {
						t.Errorf("%v, %d lessons: %s reaches out of the drawing, %v", latitude, n, s.Role, p)
					}
				}
			}
		}
	}
}

// nearest is how near a stretch comes to a point.
func nearest(a, b, p drawing.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	along := 0.0
	if length := dx*dx + dy*dy; length > 0 {
		along = max(0, min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/length))
	}
	return math.Hypot(a.X+along*dx-p.X, a.Y+along*dy-p.Y)
}

// meet reports whether two lines cross.
func meet(a, b []drawing.Point) bool {
	turn := func(p, q, r drawing.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	for i := 1; i < len(a); i++ {
		for j := 1; j < len(b); j++ {
			p, q, r, s := a[i-1], a[i], b[j-1], b[j]
			if turn(p, q, r)*turn(p, q, s) < 0 && turn(r, s, p)*turn(r, s, q) < 0 {
				return true
			}
		}
	}
	return false
}

// Every row is as high as the longest title needs, and the style sheet has rows of the
// same heights.
func TestRowsOfTheCover(t *testing.T) {
	titles := func(n int, title string) []typeset.Link { return slices.Repeat([]typeset.Link{{Title: title}}, n) }
	for _, c := range []struct {
		lessons []typeset.Link
		want    string
	}{
		{titles(3, "Rocket day"), "rows-middle"},
		{titles(14, "Moon phases with a lamp and a ball"), "rows-middle"},
		{titles(30, "Rocket day"), "rows-low"},
		{titles(30, "Moon phases with a lamp and a ball"), "rows-middle"},
		{titles(5, "Mesurer la hauteur du Soleil avec un bâton, une ficelle et un rapporteur"), "rows-high"},
	} {
		if got := RowsFor(c.lessons).Class; got != c.want {
			t.Errorf("%d lessons called %q: %s, want %s", len(c.lessons), c.lessons[0].Title, got, c.want)
		}
	}
	css := string(typeset.Style())
	for _, r := range rowSizes() {
		if rule := fmt.Sprintf(".%s { --row: %grem; }", r.Class, r.height/4); !strings.Contains(css, rule) {
			t.Errorf("the style sheet lacks %s", rule)
		}
	}
	if rule := fmt.Sprintf("--fan: %grem;", fanWidth/4); !strings.Contains(css, rule) {
		t.Errorf("the style sheet lacks %s", rule)
	}
}

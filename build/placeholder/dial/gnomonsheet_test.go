package dial_test

import (
	"math"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
)

// Single gnomons lie head to foot, each a right triangle with the angle and the style that the
// facts give; as many are on the sheet as the entry says, for the copies follow from that;
// and nothing of one lies on another or off the paper.
func TestSingleGnomonsFillASheet(t *testing.T) {
	e, _ := entry.Find(entries(), "dial-gnomon")
	// At Tromsø's latitude the three pictures stand in a row that is as wide as A4 leaves.
	for _, given := range [][]string{{}, {"school.paper=A4"}, {"stock.style_mm=80"}, {"school.latitude=70"}, {"school.latitude=-33"}, {"school.latitude=25", "stock.style_mm=200"}, {"school.latitude=69.6", "school.paper=A4"}, {"stock.style_mm=400"}} {
		given = append(given, "kind=level", "pieces=single")
		large := given[0] == "stock.style_mm=400" // one piece over several sheets
		r := reckon(t, "alder reach", "dial-gnomon", "2027-04-20", given...)
		d := r.Sheets[0].Drawing
		if (len(r.Sheets) == 1) == large {
			t.Errorf("%v: %d sheets", given, len(r.Sheets))
		}
		styles, folds := entrytest.Roled(d, "style-edge"), entrytest.Roled(d, "fold")
		values, _ := entrytest.Pairs(e, given)
		if want := e.OnSheet(e.Complete(entrytest.Settings(t, "alder reach"), values, entrytest.Day(t, "2027-04-20"))); len(styles) != want || len(folds) != want {
			t.Errorf("%v: %d styles and %d folds on a sheet for %d", given, len(styles), len(folds), want)
		}
		if large != (len(styles) == 1) || !large && len(styles)%2 != 0 {
			t.Errorf("%v: %d pieces", given, len(styles))
		}
		angle, long, base := entrytest.Fact(t, r, "angle").Number, entrytest.Fact(t, r, "style").Number, entrytest.Fact(t, r, "base").Number
		for i, s := range styles {
			toe, tip, end := s.Points[0], s.Points[1], folds[i].Points[1]
			entrytest.Near(t, "style", entrytest.Apart(toe, tip), long, 1e-9)
			entrytest.Near(t, "base", entrytest.Apart(toe, end), base, 1e-9)
			entrytest.Near(t, "angle", math.Atan2(math.Abs(tip.Y-toe.Y), math.Abs(tip.X-toe.X))/degree, angle, 1e-9)
			if folds[i].Points[0] != toe || math.Abs(end.X-tip.X) > 1e-9 {
				t.Errorf("%v: piece %d does not close", given, i+1)
			}
			for j, other := range styles[:i] { // no corner of one is inside another, tabs and all
				for _, p := range piece(other, folds[j], 14) {
					if inside(p, piece(s, folds[i], 14)) {
						t.Errorf("%v: pieces %d and %d overlap at %v", given, j+1, i+1, p)
					}
				}
			}
		}
		for _, s := range d.Shapes {
			for _, p := range s.Points {
				if p.X < 0 || p.Y < 0 || p.X > d.Width || p.Y > d.Height {
					t.Errorf("%v: %s at %v leaves the sheet", given, s.Role, p)
				}
			}
		}
	}
}

// piece returns the corners of a triangle with the rectangle of its tabs.
func piece(style, fold drawing.Shape, tabs float64) []drawing.Point {
	toe, tip, end := style.Points[0], style.Points[1], fold.Points[1]
	if tip.Y > toe.Y {
		tabs = -tabs
	}
	return []drawing.Point{toe, tip, {X: end.X, Y: end.Y + tabs}, {X: toe.X, Y: toe.Y + tabs}}
}

// inside reports whether a point is within a convex polygon, by the side of each edge.
func inside(p drawing.Point, corners []drawing.Point) bool {
	side := 0.0
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		cross := (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
		if cross*side < 0 || cross == 0 {
			return false
		}
		side = cross
	}
	return true
}

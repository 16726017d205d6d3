package worlds_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
)

// The discs of the row are to one scale, whichever worlds are chosen: their widths are as the
// diameters of the table beside them (whose source is the IAU's report of 2015), and the edge
// of the Sun is an arc of 1 391 400 km (IAU 2015 Resolution B3). None lies on another, and
// they fill the width of the drawing.
func TestTheRowIsToScale(t *testing.T) {
	for _, given := range [][]string{nil, {"worlds=mars, moon"}, {"worlds=comet"}, {"worlds=jupiter"}} {
		r := reckon(t, "alder reach", "world-cards", "2027-04-20", given...)
		d := r.Drawings[0]
		kilometres := entrytest.Cells(t, r, "bulk", "diameter")
		var discs []drawing.Shape
		scale := 0.0
		for _, s := range d.Shapes {
			if strings.HasPrefix(s.Role, "is-") {
				discs = append(discs, s)
				scale = max(scale, 2*s.Radius/kilometres[len(discs)-1].Number)
			}
		}
		if len(discs) != len(kilometres) || len(discs) != len(r.Walks[0].Stops) {
			t.Fatalf("%v: %d discs of %d worlds, %d stops", given, len(discs), len(kilometres), len(r.Walks[0].Stops))
		}
		// A dot that is drawn larger than it is sets no scale.
		for i, s := range discs {
			if s.Radius > 0.2 {
				scale = 2 * s.Radius / kilometres[i].Number
			}
		}
		end := 12.0
		for i, s := range discs {
			if want := kilometres[i].Number * scale / 2; s.Radius > 0.2 && math.Abs(s.Radius-want) > 1e-6 || s.Radius <= 0.2 && want > 0.2 {
				t.Errorf("%v: disc %d is %.3f mm, want %.3f", given, i, s.Radius, want)
			}
			if left := s.Points[0].X - s.Radius; left < end {
				t.Errorf("%v: disc %d begins at %.2f mm, the one before ends at %.2f", given, i, left, end)
			}
			end = s.Points[0].X + s.Radius
			if at := r.Walks[0].Stops[i].At; at != s.Points[0] {
				t.Errorf("%v: the stop of disc %d is at %v", given, i, at)
			}
		}
		if end > d.Width || crowded(d) && end < d.Width-12 {
			t.Errorf("%v: the row ends at %.1f of %.1f mm", given, end, d.Width)
		}
		edge := d.Shapes[0].Points
		middle, low := edge[len(edge)/2], edge[1]
		radius := 1391400 * scale / 2
		sagitta := radius - math.Sqrt(radius*radius-(middle.Y-low.Y)*(middle.Y-low.Y))
		entrytest.Near(t, "the edge of the Sun falls back, mm", middle.X-low.X, sagitta, 0.05)
	}
}

// crowded reports whether the drawing has many discs.
func crowded(d drawing.Drawing) bool {
	n := 0
	for _, s := range d.Shapes {
		if strings.HasPrefix(s.Role, "is-") {
			n++
		}
	}
	return n > 4
}

// The walk goes from the Sun outward and ends with the comet, and each card has the lines of
// the printed card: fourteen facts, three things to look for and a question.
func TestTheWalkGoesOutward(t *testing.T) {
	r := reckon(t, "alder reach", "world-cards", "2027-04-20")
	var keys []string
	for _, stop := range r.Walks[0].Stops {
		keys = append(keys, stop.Key)
		if len(stop.Says) != 1+14+3+1 {
			t.Errorf("%s says %d lines", stop.Key, len(stop.Says))
		}
	}
	if got := strings.Join(keys, " "); got != "mercury venus earth moon mars ceres jupiter saturn uranus neptune pluto comet" {
		t.Errorf("the walk is %s", got)
	}
	card := entrytest.Lines(t, r.Walks[0].Stops[4].Says)
	for _, want := range []string{"Kind: rocky planet.", "Noon to noon: 24 h 40 min.", "Look for Olympus Mons.", "Nobody knows yet: "} {
		if !strings.Contains(strings.ReplaceAll(card, "\u00a0", " "), want) {
			t.Errorf("the card of Mars lacks %q:\n%s", want, card)
		}
	}
}

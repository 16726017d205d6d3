package placeholder_test

import (
	"math"
	"regexp"
	"slices"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entrytest"
)

// Every walk of the catalogue, at all schools, leads through a drawing of its result, from
// stops on it. Keys are fit for addresses, each once. No stop is below room for labels, which
// is taken out where they need none, so the layer of links is where the drawing is. Each card
// says something, and its place in the drawing is its own, 0.3 mm off all others: a finger could
// not choose between two that stand on one point.
func TestWalksAreWhole(t *testing.T) {
	key := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	walked := map[string]int{}
	for where := range entrytest.Schools {
		for _, e := range placeholder.Catalogue() {
			r := reckon(t, where, e.Name, "2027-04-20")
			through := map[string]bool{}
			for _, walk := range r.Walks {
				walked[e.Name] += len(walk.Stops)
				d, ok := drawingOf(r.Drawings, walk.Drawing)
				if !ok || through[walk.Drawing] {
					t.Errorf("%s: %s: a walk through %q", where, e.Name, walk.Drawing)
					continue
				}
				through[walk.Drawing] = true
				keys, places := map[string]bool{}, []drawing.Point{}
				for _, stop := range walk.Stops {
					inside := stop.At.X >= 0 && stop.At.X <= d.Width && stop.At.Y >= 0 && stop.At.Y <= beforeSpare(d)
					if !key.MatchString(stop.Key) || keys[stop.Key] || slices.ContainsFunc(places, func(p drawing.Point) bool { return math.Hypot(p.X-stop.At.X, p.Y-stop.At.Y) < 0.3 }) || !inside || !(stop.Reach > 0 && stop.Reach < d.Width/2) || len(stop.Says) == 0 || entrytest.Written(t, stop.Name) == "" {
						t.Errorf("%s: %s: %q at %v, reach %v, says %d lines", where, e.Name, stop.Key, stop.At, stop.Reach, len(stop.Says))
					}
					keys[stop.Key], places = true, append(places, stop.At)
				}
			}
		}
	}
	for _, name := range []string{"sky-map", "world-cards"} {
		if walked[name] < 8*len(entrytest.Schools) {
			t.Errorf("%s: %d stops", name, walked[name])
		}
	}
}

func drawingOf(drawings []drawing.Drawing, name string) (drawing.Drawing, bool) {
	for _, d := range drawings {
		if d.Name == name {
			return d, true
		}
	}
	return drawing.Drawing{}, false
}

// beforeSpare is down to where nothing of a drawing moves.
func beforeSpare(d drawing.Drawing) float64 {
	y := math.Inf(1)
	for _, s := range d.Spare {
		y = min(y, s.Top)
	}
	return min(y, d.Height)
}

package typeset

import (
	"math"
	"math/rand/v2"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/result"
)

// inside reports whether a convex polygon has a point, and how far its sides are from it at
// least.
func inside(cell []drawing.Point, p drawing.Point) (bool, float64) {
	least := math.Inf(1)
	for k, a := range cell {
		b := cell[(k+1)%len(cell)]
		least = min(least, ((b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X))/math.Hypot(b.X-a.X, b.Y-a.Y))
	}
	return least >= 0, least
}

// What is hit is what is nearest: at ten thousand places among forty stops the cell that has
// the place, if one has it, is that of the nearest stop, and every place within the least
// reach of a stop is in some cell.
func TestTheNearestIsHit(t *testing.T) {
	const least = 6
	random := rand.New(rand.NewPCG(1, 2))
	stops := make([]result.Stop, 40)
	for i := range stops {
		stops[i] = result.Stop{At: drawing.Point{X: 100 * random.Float64(), Y: 100 * random.Float64()}, Reach: 10 * random.Float64()}
	}
	cells := cellsOf(stops, least)
	hits := 0
	for range 10000 {
		p := drawing.Point{X: 100 * random.Float64(), Y: 100 * random.Float64()}
		away := func(i int) float64 { return math.Hypot(stops[i].At.X-p.X, stops[i].At.Y-p.Y) }
		nearest := 0
		for i := range stops {
			if away(i) < away(nearest) {
				nearest = i
			}
		}
		for i, cell := range cells {
			if ok, margin := inside(cell, p); ok && margin > 1e-9 {
				hits++
				if i != nearest {
					t.Fatalf("at %v stop %d is hit, %.2f mm away; stop %d is %.2f mm away", p, i, away(i), nearest, away(nearest))
				}
			}
		}
		if ok, _ := inside(cells[nearest], p); !ok && away(nearest) < max(least, stops[nearest].Reach) {
			t.Fatalf("at %v nothing is hit, stop %d is %.2f mm away", p, nearest, away(nearest))
		}
	}
	if hits < 4000 {
		t.Errorf("%d hits", hits)
	}
}

// A stop by itself can be hit as far as the least reach all round. Of two at one place the
// first is hit, and nothing is wrong with the other.
func TestAStopByItself(t *testing.T) {
	at := drawing.Point{X: 50, Y: 50}
	cells := cellsOf([]result.Stop{{At: at, Reach: 1}, {At: at, Reach: 1}}, 6)
	if ok, margin := inside(cells[0], at); !ok || margin < 6-1e-9 {
		t.Errorf("it can be hit %v mm away", margin)
	}
	if len(cells[1]) != 0 {
		t.Errorf("the second of two is %v", cells[1])
	}
}

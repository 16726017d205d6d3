package drawing

import (
	"math"

	"noonbook/build/say"
)

// A Place is where a label may stand. How wide the label is depends on the language and
// on the letters, which are larger on a narrow screen; so a drawing offers places, and
// typeset, which knows both, takes the first where the label lies on no other and leaves
// the drawing nowhere, and if it can one where no line runs below it.
type Place struct {
	At     Point
	Anchor Anchor
	Sits   Sits
	Lift   float64    // upward from At, in sizes of the letters, so that rows of labels grow with them
	Wide   float64    // mm; where it is set the label is broken into lines no wider
	Fits   float64    // mm; where it is set the label stands here only if it is no wider
	Leader []Point    // a line from the thing to the label, drawn with it where the label stands here; its end is lifted with the label
	Text   *say.Value // a shorter one for this place, or nil
}

// Sits says what of a label is at the height of its point.
type Sits int

const (
	OnFoot  Sits = iota // the foot of its last line
	Centred             // the middle of its lines
	Hanging             // the head of its first line
)

// Keep is the rank of labels that are never left out. The others are placed after them,
// rank by rank from 1, and left out where no place is free.
const Keep = 0

// A Round is a circle and what is in it.
type Round struct {
	Centre Point
	Radius float64 // mm
}

// Saying is the place with a shorter text.
func (p Place) Saying(text say.Value) Place {
	p.Text = &text
	return p
}

// Offer writes a label at the best of several places. Labels of lower rank come first,
// and of one rank in the order in which they are offered.
func (d *Drawing) Offer(role string, rank int, text say.Value, places ...Place) {
	if len(places) == 0 {
		return
	}
	d.Shapes = append(d.Shapes, Shape{
		Role: role, Points: []Point{places[0].At}, Anchor: places[0].Anchor,
		Writing: &Writing{Text: text, Places: places, Rank: rank},
	})
}

// Within keeps the label that was drawn last inside a circle.
func (d *Drawing) Within(r Round) { d.Shapes[len(d.Shapes)-1].Within = r }

// Block keeps labels that have a choice out of a part of the drawing.
func (d *Drawing) Block(b Box) { d.Blocked = append(d.Blocked, b) }

// Beside returns the places round a mark: right, left, above, below, and on the slant,
// where letters clear it by the gap.
func Beside(at Point, gap float64) []Place {
	slant := gap * math.Sqrt2 / 2
	return []Place{
		{At: Point{at.X + gap, at.Y}, Anchor: Start, Sits: Centred},
		{At: Point{at.X - gap, at.Y}, Anchor: End, Sits: Centred},
		{At: Point{at.X, at.Y - gap}, Anchor: Middle},
		{At: Point{at.X, at.Y + gap}, Anchor: Middle, Sits: Hanging},
		{At: Point{at.X + slant, at.Y - slant}, Anchor: Start},
		{At: Point{at.X - slant, at.Y + slant}, Anchor: End, Sits: Hanging},
		{At: Point{at.X + slant, at.Y + slant}, Anchor: Start, Sits: Hanging},
		{At: Point{at.X - slant, at.Y - slant}, Anchor: End},
	}
}

// Over returns places at and round a point that a label may cover, such as the middle of
// a figure.
func Over(at Point) []Place {
	places := make([]Place, 1, 1+len(overRadii)*len(overWays))
	places[0] = Place{At: at, Anchor: Middle, Sits: Centred}
	for _, r := range overRadii {
		for _, way := range overWays {
			places = append(places, Place{At: Point{at.X + r*way.X, at.Y + r*way.Y}, Anchor: Middle, Sits: Centred})
		}
	}
	return places
}

var (
	overRadii = [...]float64{3, 5, 7, 9}
	overWays  = [...]Point{{0, 1}, {0, -1}, {1, 0}, {-1, 0}, {0.8, 0.7}, {-0.8, 0.7}, {0.8, -0.7}, {-0.8, -0.7}}
)

// Led returns places on circles round a mark, from near to far, each with a leader.
func Led(at Point, gap float64, radii ...float64) []Place {
	const ways = 24
	var rays [ways]Point // from the mark outward
	for i := range rays {
		rays[i].Y, rays[i].X = math.Sincos(2 * math.Pi * float64(i) / ways)
	}
	places := make([]Place, 0, ways*len(radii))
	leaders := make([]Point, 0, 2*ways*len(radii))
	for _, r := range radii {
		for _, ray := range rays {
			end := Point{at.X + r*ray.X, at.Y + r*ray.Y}
			leaders = append(leaders, Point{at.X + gap*ray.X, at.Y + gap*ray.Y}, end)
			n := len(leaders)
			p := Place{At: Point{end.X + 0.5, end.Y}, Anchor: Start, Sits: Centred, Leader: leaders[n-2 : n : n]}
			if ray.X < -1e-9 {
				p.At.X, p.Anchor = end.X-0.5, End
			}
			places = append(places, p)
		}
	}
	return places
}

// Package drawing describes line drawings in millimetres, before they become
// SVG. The origin is the top left corner, x runs right and y runs down.
//
//	d := drawing.Drawing{Name: "strip", Width: 170, Height: 40}
//	d.Line("rule", drawing.Point{5, 20}, drawing.Point{165, 20})
//	d.Label("label", drawing.Point{5, 15}, drawing.Start, say.Text("Sun"))
//
// A role ("rule", "sun", "shadow", "label") says what a shape is; the theme's
// style sheet says how that looks on a screen, in the dark and on paper.
package drawing

import "noonbook/build/say"

// A Drawing is a picture of a fixed size.
type Drawing struct {
	Name               string
	Title, Description say.Phrase
	Width, Height      float64 // mm
	Shapes             []Shape
	Finding            say.Phrase // of a chart: what it shows, in one sentence below it; none where its key is empty
	Ornament           bool       // repeats what stands beside it in words; hidden from screen readers
	Blocked            []Box      // where labels that have a choice do not go
	Rim                float64    // mm of paper round each label that hide what is below, a label too
	Spare              []Span     // room for rows of labels; what they leave of it is taken out
}

// A Point is a place on the drawing in millimetres.
type Point struct{ X, Y float64 }

// An Anchor says which part of a label stands at its point.
type Anchor string

const (
	Start  Anchor = "start"
	Middle Anchor = "middle"
	End    Anchor = "end"
)

// A Shape is one mark of a drawing: a path through two or more points, a disc
// round one point, or a label at one point. Most are lines and discs, of which a map of
// the stars has hundreds; so what labels alone have stands apart.
type Shape struct {
	Role     string
	Points   []Point
	Closed   bool    // the path returns to its first point and encloses an area
	Radius   float64 // mm; of a disc
	Anchor   Anchor  // of a label
	Href     string  // the page that the shape leads to
	*Writing         // of a label; nil for all else
}

// A Writing is what a label says, and how and where.
type Writing struct {
	Text    say.Value
	Turn    float64 // degrees clockwise, about its point
	Wide    float64 // mm; a label with Wide set is broken into lines no wider, Leading apart
	Leading float64 // mm; from line to line
	Most    int     // lines, if not 0; a text that is cut off ends in …
	After   bool    // a label with Wide set begins below the lines of the one before it
	Floor   float64 // mm, if not 0; lines of a label with Wide set end above it

	Places []Place // of a label that has a choice; see Offer
	Rank   int     // Keep, or how soon the label is left out where there is no room
	Within Round   // where a label that has a choice stays, if the radius is not 0
}

// Line draws a path through the points.
func (d *Drawing) Line(role string, through ...Point) {
	d.Shapes = append(d.Shapes, Shape{Role: role, Points: through})
}

// Area draws a closed path through the corners.
func (d *Drawing) Area(role string, corners ...Point) {
	d.Shapes = append(d.Shapes, Shape{Role: role, Points: corners, Closed: true})
}

// Disc draws a circle and its inside.
func (d *Drawing) Disc(role string, centre Point, radius float64) {
	d.Shapes = append(d.Shapes, Shape{Role: role, Points: []Point{centre}, Radius: radius})
}

// Link makes the shapes added since the mark lead to a page; take the mark as
// len(d.Shapes) before adding them.
func (d *Drawing) Link(mark int, href string) {
	for i := range d.Shapes[mark:] {
		d.Shapes[mark+i].Href = href
	}
}

// Label writes a value with its anchor at the point.
func (d *Drawing) Label(role string, at Point, anchor Anchor, text say.Value) {
	d.Shapes = append(d.Shapes, Shape{Role: role, Points: []Point{at}, Anchor: anchor, Writing: &Writing{Text: text}})
}

// Turned writes a label that is turned about its middle, in degrees clockwise.
func (d *Drawing) Turned(role string, at Point, clockwise float64, text say.Value) {
	d.Label(role, at, Middle, text)
	d.Shapes[len(d.Shapes)-1].Turn = clockwise
}

// Paragraph writes a value in as many lines as it needs, no wider than wide; the
// point is the left end of the first line. How many lines that makes depends on
// the language: leave room, or set Most, After or Floor of the shape that it returns.
func (d *Drawing) Paragraph(role string, at Point, wide, leading float64, text say.Value) *Shape {
	d.Shapes = append(d.Shapes, Shape{Role: role, Points: []Point{at}, Anchor: Start, Writing: &Writing{Text: text, Wide: wide, Leading: leading}})
	return &d.Shapes[len(d.Shapes)-1]
}

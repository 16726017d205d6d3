package way

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/typeset"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// shallow is the flattest style that the cover draws: nearer the equator
// the lines would fall together, and the cover is a table of contents first.
var shallow = quantity.Degrees(20)

// The measures of the dial with noon up, in millimetres.
const (
	dialWidth  = 180.0
	dialHeight = 94.0
	dialEdge   = 89.0 // radius of the plate
	dialBand   = 77.0 // where the band of the numbers begins
	dialTrack  = 74.5 // middle of the scale of half hours
	dialSun    = 12.0
)

// A face is the half of the cover's dial from six to eighteen hours. Noon is up;
// above the equator the hours run clockwise, below it the other way.
type face struct {
	latitude quantity.Angle // no flatter than shallow
	mirror   float64
}

func faceAt(latitude quantity.Angle) face {
	if latitude < 0 {
		return face{max(shallow, -latitude), -1}
	}
	return face{max(shallow, latitude), 1}
}

// turned returns the point at a distance from the centre, turned from noon.
func turned(angle quantity.Angle, r float64) drawing.Point {
	return drawing.Point{X: dialWidth/2 + r*angle.Sin(), Y: dialHeight - 2 - r*angle.Cos()}
}

// line returns how far the line of an hour is turned from noon.
func (f face) line(hours float64) quantity.Angle {
	return quantity.Angle(f.mirror) * dial.LineAt(f.latitude, quantity.Hours(hours)).Angle
}

// lesson returns how far a lesson's line is turned from noon. The lessons divide the
// hours from six to eighteen among them; half past a whole number is the middle of one.
func (f face) lesson(at float64, of int) quantity.Angle {
	return f.line(-6 + 12*at/float64(of))
}

// wedge returns the corners of a lesson's part of the dial, which leads to it.
func wedge(f face, i, of int, rim func(quantity.Angle) drawing.Point, centre drawing.Point) []drawing.Point {
	from, to := f.lesson(float64(i), of), f.lesson(float64(i+1), of)
	if i == 0 {
		from = quantity.Angle(f.mirror) * quantity.Degrees(-90)
	}
	if i == of-1 {
		to = quantity.Angle(f.mirror) * quantity.Degrees(90)
	}
	corners := []drawing.Point{centre}
	for step := range 5 {
		corners = append(corners, rim(from+(to-from)*quantity.Angle(float64(step)/4)))
	}
	return corners
}

// bow returns the arc of a circle round the centre, a point for every 3° or
// less: its chords then miss the circle by less than a printer's dot.
func bow(from, to quantity.Angle, r float64) []drawing.Point {
	return bowOf(from, to, func(a quantity.Angle) drawing.Point { return turned(a, r) })
}

func bowOf(from, to quantity.Angle, at func(quantity.Angle) drawing.Point) []drawing.Point {
	steps := math.Ceil(math.Abs((to - from).Degrees()) / 3)
	points := []drawing.Point{at(from)}
	for i := 1.0; i <= steps; i++ {
		points = append(points, at(from+(to-from)*quantity.Angle(i/steps)))
	}
	return points
}

// Dial draws the school's dial for a narrow page and for paper: noon up, and a
// numbered line for each lesson.
func Dial(latitude quantity.Angle, lessons []typeset.Link) drawing.Drawing {
	f := faceAt(latitude)
	morning, evening := quantity.Degrees(-90), quantity.Degrees(90)
	d := drawing.Drawing{Name: "dial upright-dial", Width: dialWidth, Height: dialHeight, Ornament: true}
	d.Area("rim", bow(morning, evening, dialEdge)...)
	d.Line("rim", bow(morning, evening, dialBand)...)
	for hour := 0.5; hour < 6; hour++ { // every other half hour, alike before and after noon
		d.Line("half-hours", bow(f.line(-hour-0.5), f.line(-hour), dialTrack)...)
		d.Line("half-hours", bow(f.line(hour), f.line(hour+0.5), dialTrack)...)
	}
	d.Line("rim", bow(morning, evening, 2*dialTrack-dialBand)...)
	for i, lesson := range lessons {
		turn := f.lesson(float64(i)+0.5, len(lessons))
		mark := len(d.Shapes)
		d.Area("touch-area", wedge(f, i, len(lessons), func(a quantity.Angle) drawing.Point { return turned(a, dialEdge) }, turned(0, 0))...)
		d.Area("cast", turned(0, 0), turned(0, 46), turned(turn, dialTrack-4))
		d.Line("lesson", turned(turn, dialSun+8), turned(turn, dialTrack-4))
		number := turned(turn, (dialEdge+dialBand)/2)
		number.Y += 2.1
		d.Label("number", number, drawing.Middle, say.Text(lesson.Number))
		d.Link(mark, lesson.File)
	}
	d.Area("here", bow(morning, evening, dialSun)...)
	d.Area("gnomon", turned(morning, 1.1), turned(0, 46), turned(evening, 1.1))
	return d
}

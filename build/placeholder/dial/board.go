package dial

import (
	"math"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// A board is the dial that marks are made on: how it shows the Sun, and how a place on
// it is measured. A level one measures angles from the noon line; a polar one distances,
// each of which stands for the hour angle under which the style sees it.
type board struct {
	latitude quantity.Angle
	face     dial.Face
	height   quantity.Length // of a polar dial's style
}

func boardOf(v form.Values) board {
	return board{school.Place(v).Latitude, builds(v), polarHeight(v)}
}

func (b board) isPolar() bool { return b.face == dial.Polar }

// A sight is where the shadow falls with the Sun in a direction.
type sight func(azimuth, altitude quantity.Angle) (line quantity.Angle, ok bool)

// right is where it falls on a dial that is right.
func (b board) right(azimuth, altitude quantity.Angle) (quantity.Angle, bool) {
	return b.laid(dial.Fit{})(azimuth, altitude)
}

// laid is where it falls on a dial that is out of place as a fit says.
func (b board) laid(fit dial.Fit) sight {
	if b.isPolar() {
		d := dial.PolarAt(b.latitude).Steeper(fit.Gnomon)
		d.Turn = fit.Turn
		return d.Shown
	}
	d := dial.True(b.latitude)
	d.Style.Elevation += fit.Gnomon
	return d.Turned(fit.Turn).Line
}

// measured is an angle as the board measures it, in degrees or in millimetres. ok is
// false where it is off the plate.
func (b board) measured(line quantity.Angle) (size float64, ok bool) {
	if !b.isPolar() {
		return line.Degrees(), true
	}
	far := polarDistance(b.height, line)
	return far.Number, far.Kind != say.Nothing
}

// shown is the same in print.
func (b board) shown(line quantity.Angle) say.Value {
	if b.isPolar() {
		return polarDistance(b.height, line)
	}
	return say.Number(line.Degrees(), "deg", 1)
}

// apart is how far two places are from each other, in print.
func (b board) apart(line, other quantity.Angle) say.Value {
	if !b.isPolar() {
		return say.Number((line - other).Signed().Degrees(), "deg", 1)
	}
	one, ok := b.measured(line)
	two, both := b.measured(other)
	if !ok || !both {
		return say.None("dial-table.off_plate")
	}
	return say.Number(one-two, "mm", 1)
}

// column is the name and unit of a column of places.
func (b board) column(name string) (string, string) {
	if b.isPolar() {
		return name + "_mm", "mm"
	}
	return name, "deg"
}

// step is from one figure of a chart's axis of places to the next.
func (b board) step() float64 {
	if b.isPolar() {
		return 20 * math.Ceil(b.height.Millimetres()/20)
	}
	return 30
}

func (b board) inPrint(x float64) say.Value {
	if b.isPolar() {
		return say.Number(x, "mm", 0)
	}
	return say.Number(x, "deg", 0)
}

func (b board) fit(marks []dial.Mark, ask dial.Unknown) (dial.Fit, error) {
	if b.isPolar() {
		return dial.FitPolarMarks(b.latitude, marks, ask)
	}
	return dial.FitMarks(b.latitude, marks, ask)
}

package rocket

import (
	"math"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// Settings that the rocket's placeholders read.
var (
	tubeSettings   = []string{"stock.pipe_outside_mm", "stock.pipe_play_mm", "stock.rocket_paper_g_m2"}
	flightSettings = append([]string{"school.elevation_m", "stock.rocket_mass_g", "stock.launch_speed_m_s"}, tubeSettings...)
)

// Arguments of everything that flies.
var flightArguments = form.Form{
	{Name: "drag_coefficient", Kind: form.Number, Min: 0, Max: 3, Default: 0.6, Doc: "Drag coefficient of the rocket on its tube's cross-section: 0.4 for a straight, smooth one to 1 for a rough one."},
	{Name: "celsius", Kind: form.Number, Unit: "°C", Min: -40, Max: 50, Default: 15.0, Doc: "Temperature of the air."},
	{Name: "pipe_end_m", Kind: form.Number, Unit: "m", Min: 0, Max: 5, Default: 0.3, Doc: "Height of the pipe's upper end above the ground."},
}

const (
	sourceFlight   = "Flight: drag as the square of the speed, standard gravity (3rd CGPM, 1901), density of the standard atmosphere (ISO 2533:1975), integrated as compute/rocket documents"
	sourceDrag     = "Drag coefficient of a paper rocket: common practice, no source; it is the largest doubt in every height and reach"
	sourceBarrow   = "Centre of pressure: J. S. Barrowman's method (1967)"
	sourceASTM     = "Half-inch pipe: 0.840 ± 0.004 in outside, ASTM D1785 table 1; take the measured diameter of your own"
	sourceTemplate = "Cone: the arc of the sector is as long as the base is round. Paper 0.1 mm thick at 80 g/m²: common practice, no source"
	sourceHeights  = "Heights: baseline × tan angle + eye height; two stations: NASA Glenn Research Center, height from two observers"
	sourceNoZone   = "No authority was found that gives a clear distance for a stamped launcher: the margin is the school's own"
)

// tubeOf returns the outside diameter of the rocket's tube.
func tubeOf(v form.Values) quantity.Length {
	return rocket.Design{
		Pipe: quantity.Millimetres(v.Number("stock.pipe_outside_mm")), Play: quantity.Millimetres(v.Number("stock.pipe_play_mm")),
		Paper: rocket.PaperThickness(v.Number("stock.rocket_paper_g_m2")),
	}.Diameter()
}

// flightOf returns the rocket, its launch straight up and the still air that
// the values describe.
func flightOf(v form.Values) (rocket.Rocket, rocket.Launch, rocket.Air, error) {
	air, err := rocket.Still(quantity.Metres(v.Number("school.elevation_m")), v.Number("celsius"))
	r := rocket.Rocket{
		Mass:     rocket.Grams(v.Number("stock.rocket_mass_g")),
		Diameter: tubeOf(v),
		Drag:     v.Number("drag_coefficient"),
	}
	l := rocket.Launch{
		Speed:     rocket.Speed(v.Number("stock.launch_speed_m_s")),
		Elevation: quantity.Degrees(90),
		Height:    quantity.Metres(v.Number("pipe_end_m")),
	}
	return r, l, air, err
}

func metres(l quantity.Length, decimals int) say.Value { return say.Number(l.Metres(), "m", decimals) }

func millimetres(l quantity.Length, decimals int) say.Value {
	return say.Number(l.Millimetres(), "mm", decimals)
}

func degrees(a quantity.Angle, decimals int) say.Value {
	return say.Number(a.Degrees(), "deg", decimals)
}

func speedOf(v rocket.Speed) say.Value { return say.Number(v.MetresASecond(), "m_s", 1) }

// doubt prints how far a height may be off, in words where that has no bound.
func doubt(l quantity.Length) say.Value {
	if math.IsInf(l.Metres(), 1) {
		return say.None("rocket-height.unbounded")
	}
	return metres(l, 1)
}

// Roundings to the safe side; a hair is taken off first for what is round.
func ceil(x float64) float64 { return math.Ceil(x - 1e-6) }

func ceilTenth(x float64) float64 { return math.Ceil(10*x-1e-6) / 10 }

func floorTenth(x float64) float64 { return math.Floor(10*x+1e-6) / 10 }

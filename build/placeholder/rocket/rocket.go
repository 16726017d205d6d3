package rocket

import (
	"math"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// What the entry takes.
const (
	argDragCoefficient form.Key[float64] = "drag_coefficient"
	argCelsius         form.Key[float64] = "celsius"
	argPipeEndM        form.Key[float64] = "pipe_end_m"
)

// Settings that the rocket's placeholders read.
var (
	tubeSettings   = form.Keys{school.StockPipeOutsideMM, school.StockPipePlayMM, school.StockRocketPaperGM2}
	flightSettings = append(form.Keys{school.ElevationM, school.StockRocketMassG, school.StockLaunchSpeedMS}, tubeSettings...)
)

// Arguments of everything that flies.
var flightArguments = form.Form{
	{Key: argDragCoefficient, Min: 0, Max: 3, Default: 0.6, Doc: "Drag coefficient of the rocket on its tube's cross-section: 0.4 for a straight, smooth one to 1 for a rough one."},
	{Key: argCelsius, Unit: "°C", Min: -40, Max: 50, Default: 15.0, Doc: "Temperature of the air."},
	{Key: argPipeEndM, Unit: "m", Min: 0, Max: 5, Default: 0.3, Doc: "Height of the pipe's upper end above the ground."},
}

const (
	sourceFlight   = "Flight: drag as the square of the speed, standard gravity (3rd CGPM, 1901), density of the standard atmosphere (ISO 2533:1975), integrated as compute/rocket documents"
	sourceDrag     = "Drag coefficient of a paper rocket: common practice, no source; it is the largest doubt in every height and reach"
	sourceBarrow   = "Centre of pressure: J. S. Barrowman's method (1967)"
	sourceASTM     = "Half-inch pipe: 0.840 ± 0.004 in outside, ASTM D1785 table 1; take the measured diameter of your own"
	sourceTemplate = "Cone: the arc of the sector is as long as the base is round. Paper 0.1 mm thick at 80 g/m²: common practice, no source"
	sourceHeights  = "Heights: baseline × tan angle + eye height; two stations: NASA Glenn Research Center, height from two observers"
	sourceSunSide  = "Stations at 45° from the line to the Sun, the Sun almost overhead from 70° on, 20° kept from it: common practice, no source"
	sourceNoZone   = "No authority was found that gives a clear distance for a stamped launcher: the margin is the school's own"
)

// tubeOf returns the outside diameter of the rocket's tube.
func tubeOf(v form.Values) quantity.Length {
	return rocket.Design{
		Pipe: quantity.Millimetres(school.StockPipeOutsideMM.Of(v)), Play: quantity.Millimetres(school.StockPipePlayMM.Of(v)),
		Paper: rocket.PaperThickness(school.StockRocketPaperGM2.Of(v)),
	}.Diameter()
}

// flightOf returns the rocket, its launch straight up at the highest speed that is
// known of the launcher, and the still air that the values describe.
func flightOf(v form.Values) (rocket.Rocket, rocket.Launch, rocket.Air, error) {
	r, l, air, err := setFlightOf(v)
	if err != nil {
		return r, l, air, err
	}
	speed, err := launchSpeedOf(v)
	l.Speed = speed.used()
	return r, l, air, err
}

// setFlightOf is flightOf at the speed of unit.toml.
func setFlightOf(v form.Values) (rocket.Rocket, rocket.Launch, rocket.Air, error) {
	air, err := rocket.Still(quantity.Metres(school.ElevationM.Of(v)), argCelsius.Of(v))
	r := rocket.Rocket{
		Mass:     rocket.Grams(school.StockRocketMassG.Of(v)),
		Diameter: tubeOf(v),
		Drag:     argDragCoefficient.Of(v),
	}
	l := rocket.Launch{
		Speed:     rocket.Speed(school.StockLaunchSpeedMS.Of(v)),
		Elevation: quantity.Degrees(90),
		Height:    quantity.Metres(argPipeEndM.Of(v)),
	}
	return r, l, air, err
}

func speedOf(v rocket.Speed) say.Value { return say.Number(v.MetresASecond(), "m_s", 1) }

// doubt prints how far a height may be off, in words where that has no bound.
func doubt(l quantity.Length) say.Value {
	if math.IsInf(l.Metres(), 1) {
		return say.None("rocket-height.unbounded")
	}
	return say.Metres(l, 1)
}

// Roundings to the safe side; a hair is taken off first for what is round.
func ceil(x float64) float64 { return math.Ceil(x - 1e-6) }

func ceilTenth(x float64) float64 { return math.Ceil(10*x-1e-6) / 10 }

func floorTenth(x float64) float64 { return math.Floor(10*x+1e-6) / 10 }

package flow

import (
	"fmt"
	"math"
	"time"

	"noonbook/compute/quantity"
)

// Gravity is the standard acceleration of free fall in m/s²: 3rd CGPM, 1901.
const Gravity = 9.80665

// Discharge coefficients. ISO 5167-2 has 0.60 to 0.62 for sharp-edged orifices that are
// small beside their pipe, and hydraulics handbooks 0.61 to 0.62; a short tube, two or
// three times as long as wide, has 0.82 (V. L. Streeter, Fluid Mechanics; both from memory).
const (
	SharpEdged = 0.61
	ShortTube  = 0.82
)

// Water at 20 °C: density 998.2 kg/m³; surface tension 72.75 mN/m (IAPWS R1-76);
// kinematic viscosity 1.0034 mm²/s (ISO/TR 3666). All from memory.
const (
	waterDensity   = 998.2     // kg/m³
	waterTension   = 0.07275   // N/m
	waterViscosity = 1.0034e-6 // m²/s
)

// WidestHole is the largest hole, as a part of the vessel's width.
const WidestHole = 0.25

// A VolumeRate is a flow in m³/s.
type VolumeRate float64

// MillilitresAMinute returns the flow in mL/min.
func (r VolumeRate) MillilitresAMinute() float64 { return float64(r) * 1e6 * 60 }

// A Volume is a volume in m³.
type Volume float64

// Millilitres returns the volume of that many mL.
func Millilitres(ml float64) Volume { return Volume(ml / 1e6) }

// Millilitres returns the volume in mL.
func (v Volume) Millilitres() float64 { return float64(v) * 1e6 }

// Upright is the volume of a cylinder of that width and height.
func Upright(width, height quantity.Length) Volume {
	return Volume(area(width) * height.Metres())
}

// A Vessel is a bottle with upright walls and a round hole near its foot.
type Vessel struct {
	Width, Hole quantity.Length // inside
	Coefficient float64         // of discharge; see SharpEdged
}

// check says what is wrong with a vessel for which nothing here holds.
func (v Vessel) check() error {
	switch {
	case !(v.Width > 0 && v.Hole > 0) || !(v.Coefficient > 0):
		return fmt.Errorf("width, hole and coefficient must be more than 0")
	case v.Hole > WidestHole*v.Width:
		return fmt.Errorf("a hole of %g mm is too wide for a bottle of %g mm; at most a quarter of its width", v.Hole.Millimetres(), v.Width.Millimetres())
	}
	return nil
}

// Speed returns the speed of the jet in m/s under water of that height.
func (v Vessel) Speed(height quantity.Length) float64 {
	return math.Sqrt(2 * Gravity * height.Metres())
}

// Rate returns the flow under water of that height.
func (v Vessel) Rate(height quantity.Length) VolumeRate {
	return VolumeRate(v.Coefficient * area(v.Hole) * v.Speed(height))
}

// Reynolds returns the Reynolds number of the hole in water of 20 °C.
func (v Vessel) Reynolds(height quantity.Length) float64 {
	return v.Speed(height) * v.Hole.Metres() / waterViscosity
}

// Held returns the height of water that surface tension alone can hold back behind the
// hole, 4 σ/(ρ g d).
func (v Vessel) Held() quantity.Length {
	return quantity.Metres(4 * waterTension / (waterDensity * Gravity * v.Hole.Metres()))
}

// Lowest returns the level at which a run should end: twice what surface tension holds.
func (v Vessel) Lowest() quantity.Length { return 2 * v.Held() }

// Run returns the run from one level down to another; to may be 0, where the formula ends
// and no bottle follows it. The error names the quantity that is out of its range.
func (v Vessel) Run(from, to quantity.Length) (Run, error) {
	if err := v.check(); err != nil {
		return Run{}, err
	}
	if err := levels(from, to); err != nil {
		return Run{}, err
	}
	seconds := (root(from) - root(to)) / v.pace()
	return Run{From: from, To: to, Lasts: inSeconds(seconds)}, nil
}

// pace is k of doc.go, in √m/s.
func (v Vessel) pace() float64 {
	return v.Coefficient * area(v.Hole) / area(v.Width) * math.Sqrt(Gravity/2)
}

// CoefficientOf returns the discharge coefficient with which the vessel takes as long for
// a run as was measured. The vessel's own coefficient does not matter.
func (v Vessel) CoefficientOf(r Run) (float64, error) {
	v.Coefficient = 1
	ideal, err := v.Run(r.From, r.To)
	if err != nil {
		return 0, err
	}
	if r.Lasts <= 0 {
		return 0, fmt.Errorf("the run must take longer than 0 s")
	}
	return ideal.Lasts.Seconds() / r.Lasts.Seconds(), nil
}

func area(width quantity.Length) float64 { return math.Pi / 4 * width.Metres() * width.Metres() }

func root(l quantity.Length) float64 { return math.Sqrt(l.Metres()) }

// inSeconds is a stretch of time, at most a year: longer ones are no clock.
func inSeconds(s float64) time.Duration {
	const year = 365 * 24 * 3600
	return time.Duration(min(s, year) * float64(time.Second))
}

package flow

import (
	"fmt"
	"math"
	"time"

	"noonbook/compute/quantity"
)

// Beverloo is the coefficient C of the law of doc.go, and EmptyEdge its k, the rim of the
// hole in grains that no grain's middle falls through: Chemical Engineering Science 15
// (1961), 260, from memory.
const (
	Beverloo  = 0.58
	EmptyEdge = 1.4
)

// FewestGrains is how many grains wide a hole must be, or it clogs: common practice, no
// single source.
const FewestGrains = 6

// A Density is a density in kg/m³.
type Density float64

// DrySand is poured dry sand with its air, 1.5 kg a litre: handbooks have 1.4 to 1.6, from
// memory.
const DrySand Density = 1500

// A MassRate is a flow in kg/s.
type MassRate float64

// GramsAMinute returns the flow in g/min.
func (r MassRate) GramsAMinute() float64 { return float64(r) * 1000 * 60 }

// A Glass is a sand glass: two bottles, neck to neck, with a round hole between.
type Glass struct {
	Hole, Grain quantity.Length
	Bulk        Density // of the poured sand
	Coefficient float64 // C of Beverloo's law
}

// Check returns an error that says how wide the hole must be where it clogs.
func (g Glass) Check() error {
	if !(g.Grain > 0) || !(g.Bulk > 0) || !(g.Coefficient > 0) {
		return fmt.Errorf("grain, density and coefficient must be more than 0")
	}
	if g.Hole < g.Narrowest()-1e-9 {
		return fmt.Errorf("a hole of %g mm clogs with grains of %g mm; it must be six grains wide, %.2g mm or more", g.Hole.Millimetres(), g.Grain.Millimetres(), g.Narrowest().Millimetres())
	}
	return nil
}

// Narrowest returns the narrowest hole that does not clog.
func (g Glass) Narrowest() quantity.Length { return FewestGrains * g.Grain }

// Rate returns the flow, however much sand is above the hole; 0 where no grain goes through.
func (g Glass) Rate() MassRate {
	open := max(0, (g.Hole - EmptyEdge*g.Grain).Metres())
	return MassRate(g.Coefficient * float64(g.Bulk) * math.Sqrt(Gravity) * math.Pow(open, 2.5))
}

// VolumeRate returns the flow as poured sand, with its air.
func (g Glass) VolumeRate() VolumeRate { return VolumeRate(float64(g.Rate()) / float64(g.Bulk)) }

// Lasts returns how long so much poured sand runs.
func (g Glass) Lasts(sand Volume) time.Duration {
	return inSeconds(float64(sand) / float64(g.VolumeRate()))
}

// Needs returns the poured sand that runs so long.
func (g Glass) Needs(lasts time.Duration) Volume {
	return Volume(float64(g.VolumeRate()) * lasts.Seconds())
}

// CoefficientOf returns C with which so much poured sand runs so long.
func (g Glass) CoefficientOf(sand Volume, lasts time.Duration) (float64, error) {
	g.Coefficient = 1
	if err := g.Check(); err != nil {
		return 0, err
	}
	if !(sand > 0) || lasts <= 0 {
		return 0, fmt.Errorf("the sand and its time must be more than 0")
	}
	return float64(sand) / float64(g.VolumeRate()) / lasts.Seconds(), nil
}

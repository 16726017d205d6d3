package rocket

import (
	"math"

	"noonbook/compute/quantity"
)

// Places along the rocket are counted from the tip of the nose backward.

// Mass returns what the rocket weighs: paper and tape. overlap is the width of
// the glued strip along the tube. Each fin is folded of two layers.
func (d Design) Mass(overlap quantity.Length) Mass {
	total := Mass(0)
	for _, p := range d.parts(overlap) {
		total += p.mass
	}
	return total
}

// CentreOfMass returns where the rocket balances.
func (d Design) CentreOfMass(overlap quantity.Length) quantity.Length {
	total, moment := 0.0, 0.0
	for _, p := range d.parts(overlap) {
		total += float64(p.mass)
		moment += float64(p.mass) * p.at.Metres()
	}
	return quantity.Length(moment / total)
}

type part struct {
	mass Mass
	at   quantity.Length
}

// parts are the cone (a shell: its centre of mass is two thirds of the way from
// tip to base), the tube with its tape, and the fins.
func (d Design) parts(overlap quantity.Length) []part {
	sheet := func(area float64) Mass { return Grams(area * d.Weight) }
	cone := d.Cone()
	r, s := cone.Diameter.Metres()/2, cone.Slant().Metres()
	root, tip, span := d.Fin.Root.Metres(), d.Fin.Tip.Metres(), d.Fin.Span.Metres()
	return []part{
		{sheet(math.Pi * r * s), d.Nose * 2 / 3},
		{sheet((d.Wrap()+overlap).Metres()*d.Body.Metres()) + d.Tape, d.Nose + d.Body/2},
		{Mass(2*d.Fins) * sheet((root+tip)/2*span), d.finRoot() + d.Fin.centre()},
	}
}

// finRoot is where the fins' roots begin.
func (d Design) finRoot() quantity.Length { return d.Length() - d.Fin.Root }

// centre returns how far behind the front of the root the fin's area balances.
func (f Fin) centre() quantity.Length {
	root, tip, sweep := f.Root.Metres(), f.Tip.Metres(), f.Sweep.Metres()
	// The strip at the part y of the span is root + (tip − root)·y long and its
	// middle lies at sweep·y + half of that; integrated over y from 0 to 1.
	chord := (root + tip) / 2
	moment := sweep*(root+2*tip)/6 + (root*root+root*tip+tip*tip)/6
	return quantity.Length(moment / chord)
}

// CentreOfPressure returns where the air's push on a rocket that is a little
// askew takes hold, by Barrowman's method: normal force slopes of 2 for the cone,
// at two thirds of its height, none for the tube, and for the fins, as
// interference with the tube has it, (1 + r/(s + r)) times
//
//	4 n (s/d)² / (1 + √(1 + (2 l/(root + tip))²))
//
// at the quarter point of their mean chord; l is the length of the fin's mid-chord
// line and d = 2r the tube's diameter.
func (d Design) CentreOfPressure() quantity.Length {
	const cone = 2.0
	fins := d.finForce()
	root, tip, sweep := d.Fin.Root.Metres(), d.Fin.Tip.Metres(), d.Fin.Sweep.Metres()
	at := d.finRoot().Metres() +
		sweep/3*(root+2*tip)/(root+tip) +
		(root+tip-root*tip/(root+tip))/6
	return quantity.Length((cone*d.Nose.Metres()*2/3 + fins*at) / (cone + fins))
}

// finForce is the slope of the fins' normal force with the angle, on the area of
// the tube's cross-section.
func (d Design) finForce() float64 {
	width, span := d.Diameter().Metres(), d.Fin.Span.Metres()
	root, tip := d.Fin.Root.Metres(), d.Fin.Tip.Metres()
	middle := math.Hypot(span, d.Fin.Sweep.Metres()+tip/2-root/2)
	ratio := 2 * middle / (root + tip)
	alone := 4 * float64(d.Fins) * (span / width) * (span / width) / (1 + math.Sqrt(1+ratio*ratio))
	return alone * (1 + width/2/(span+width/2))
}

// Margin returns by how many diameters of the tube the centre of pressure lies
// behind the centre of mass. Below 1 a rocket tumbles easily, above about 5 it
// turns into the wind: common practice, no source.
func (d Design) Margin(overlap quantity.Length) (calibres float64) {
	return float64((d.CentreOfPressure() - d.CentreOfMass(overlap)) / d.Diameter())
}

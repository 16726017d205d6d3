package rocket

import (
	"math"

	"noonbook/compute/quantity"
)

// A Series is the heights of repeated flights of one rocket.
type Series []quantity.Length

// Mean returns the sum of the heights divided by how many there are, 0 of none.
func (s Series) Mean() quantity.Length {
	if len(s) == 0 {
		return 0
	}
	sum := quantity.Length(0)
	for _, h := range s {
		sum += h
	}
	return sum / quantity.Length(len(s))
}

// Spread returns the largest height less the smallest, 0 of none.
func (s Series) Spread() quantity.Length {
	if len(s) == 0 {
		return 0
	}
	low, high := s[0], s[0]
	for _, h := range s {
		low, high = min(low, h), max(high, h)
	}
	return high - low
}

// squares is the sum of the squared distances from the mean, in m².
func (s Series) squares() float64 {
	mean, sum := s.Mean(), 0.0
	for _, h := range s {
		d := (h - mean).Metres()
		sum += d * d
	}
	return sum
}

// Scatter returns the standard deviation of one flight that all series share,
// each about its own mean, and its degrees of freedom: flights less series. It is
// 0 and 0 where no rocket flew twice.
func Scatter(all ...Series) (deviation quantity.Length, freedom int) {
	sum := 0.0
	for _, s := range all {
		if len(s) > 0 {
			sum += s.squares()
			freedom += len(s) - 1
		}
	}
	if freedom == 0 {
		return 0, 0
	}
	return quantity.Length(math.Sqrt(sum / float64(freedom))), freedom
}

// Doubt returns how far the difference of two means may be wrong: in 95 of 100
// such tests the true difference lies within it. scatter and freedom are those of
// Scatter, n and m the numbers of flights. It is +Inf where nothing was repeated.
func Doubt(scatter quantity.Length, freedom, n, m int) quantity.Length {
	if freedom < 1 || n < 1 || m < 1 {
		return quantity.Length(math.Inf(1))
	}
	return quantity.Length(student(freedom) * scatter.Metres() * math.Sqrt(1/float64(n)+1/float64(m)))
}

// student returns the two-sided 95 % point of Student's distribution: tables
// (from memory, held against scipy in the tests) up to 10, beyond that the first
// terms of the expansion about the normal one (Abramowitz and Stegun 26.7.5), good
// to 0.001.
func student(freedom int) float64 {
	table := [...]float64{12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228}
	if freedom <= len(table) {
		return table[freedom-1]
	}
	const z = 1.959964 // of the normal distribution
	f := float64(freedom)
	return z + (z*z*z+z)/(4*f) + (5*math.Pow(z, 5)+16*z*z*z+3*z)/(96*f*f) +
		(3*math.Pow(z, 7)+19*math.Pow(z, 5)+17*z*z*z-15*z)/(384*f*f*f)
}

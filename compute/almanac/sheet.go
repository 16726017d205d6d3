package almanac

import (
	"math"
	"sync/atomic"

	"noonbook/compute/space"
)

// A sheet holds what a theory says, as polynomials over stretches of days: adding up
// a theory's hundreds of waves takes 0.4 to 4 µs, a polynomial 0.02 to 0.05. A piece is
// fitted when a moment in it is first asked for, and kept as long as the program
// runs. Which piece that is and what it holds follow from the moment alone, so an
// answer does not depend on what was asked before, or by how many at once. Outside
// the sheet's years the theory itself answers.
//
// Time is TT. In UT a leap second would tear a piece.
type sheet struct {
	length float64 // of a piece in days, a power of two: a moment then falls into the same piece on every machine
	degree int
	series func(centuries float64) space.Vector
	pieces []atomic.Pointer[piece] // nil where none is fitted yet
}

// A piece has the coefficients of Chebyshev polynomials, the constant first.
type piece []space.Vector

// The years of a sheet, in days of TT from J2000: 1949-07-16 to 2101-08-18, half a
// year more than the package covers on either side, for light time, local calendars
// and tables that begin before a year. Both are multiples of the longest piece.
const (
	skyBegins = -72 * 256
	skyEnds   = 145 * 256
)

func newSheet(length float64, degree int, series func(centuries float64) space.Vector) *sheet {
	return &sheet{length, degree, series, make([]atomic.Pointer[piece], int((skyEnds-skyBegins)/length))}
}

// at returns what the theory says at a moment, in Julian centuries of TT.
func (s *sheet) at(centuries float64) space.Vector {
	days := centuries*36525 - skyBegins
	if !(days >= 0 && days < skyEnds-skyBegins) {
		return s.series(centuries)
	}
	lengths := days / s.length
	n := int(lengths)
	return s.piece(n).at(2*(lengths-float64(n)) - 1)
}

// piece returns the n-th piece, and fits it when it is the first to ask. Two who do
// so at once make the same numbers.
func (s *sheet) piece(n int) piece {
	if p := s.pieces[n].Load(); p != nil {
		return *p
	}
	p := s.fit(n)
	s.pieces[n].CompareAndSwap(nil, &p)
	return p
}

// fit lays the polynomial through the theory at the zeros of the next Chebyshev
// polynomial, which is within a small factor of the best there is: Press et al.,
// Numerical Recipes, 3rd ed. 2007, equations 5.8.7 and 5.8.8.
func (s *sheet) fit(n int) piece {
	count := s.degree + 1
	p := make(piece, count)
	for k := range count {
		angle := math.Pi * (float64(k) + 0.5) / float64(count)
		days := skyBegins + s.length*(float64(n)+(1+math.Cos(angle))/2)
		v := s.series(days / 36525)
		for j := range p {
			p[j] = p[j].Along(2/float64(count)*math.Cos(float64(j)*angle), v)
		}
	}
	p[0] = p[0].Times(0.5)
	return p
}

// at adds the polynomials up for x from −1 to 1 by Clenshaw's recurrence, the same
// book's equation 5.8.11.
func (p piece) at(x float64) space.Vector {
	var a, b space.Vector
	for j := len(p) - 1; j > 0; j-- {
		c := &p[j]
		a, b = space.Vector{
			X: 2*x*a.X - b.X + c.X,
			Y: 2*x*a.Y - b.Y + c.Y,
			Z: 2*x*a.Z - b.Z + c.Z,
		}, a
	}
	return space.Vector{X: x*a.X - b.X + p[0].X, Y: x*a.Y - b.Y + p[0].Y, Z: x*a.Z - b.Z + p[0].Z}
}

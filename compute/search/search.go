package search

import "math"

// Root returns where f passes zero between a and b, to within. The values at a and
// b must be finite and have opposite signs, or one of them be zero. At the point
// returned f has the sign that it has at b, or is zero: a caller who must not be on
// the wrong side of the root says by the order of a and b which side is right. If f
// is NaN anywhere that Root looks, so is the answer.
//
// False position with the Illinois weighting: M. Dowell and P. Jarratt, BIT 11
// (1971), 168. A point that it puts close to one end is moved away from there,
// past the root if the guess was good, so that the bracket closes from both sides.
// Where three steps do not narrow the bracket as halving would, one halves it.
func Root(f func(float64) float64, a, b, within float64) float64 {
	return Between(f, a, f(a), b, f(b), within)
}

// Between is Root for a caller who knows the values at a and b already.
func Between(f func(float64) float64, a, fa, b, fb, within float64) float64 {
	if math.IsNaN(fa) || math.IsNaN(fb) {
		return math.NaN()
	}
	if fa == 0 {
		return a
	}
	last := 0             // which end was moved last: below zero a, above it b
	wa, wb := fa, fb      // weights: the values, halved at an end that stays
	before := math.Inf(1) // the bracket's width some steps ago
	for i := range 200 {
		width, middle := math.Abs(b-a), a+(b-a)/2
		if fb == 0 || width <= within || middle == a || middle == b {
			break
		}
		x := b - wb*(b-a)/(wb-wa)
		if step := math.Copysign(min(within, width)/2, b-a); math.Abs(b-x) < math.Abs(step) {
			x = b - step
		} else if math.Abs(x-a) < math.Abs(step) {
			x = a + step
		}
		if i%3 == 2 {
			if width > before/8 {
				x = middle
			}
			before = width
		}
		fx := f(x)
		if math.IsNaN(fx) {
			return fx
		}
		if (fx < 0) == (fb < 0) || fx == 0 {
			b, fb, wb = x, fx, fx
			if last > 0 {
				wa /= 2
			}
			last = 1
		} else {
			a, wa = x, fx
			if last < 0 {
				wb /= 2
			}
			last = -1
		}
	}
	return b
}

// Halve returns the two sides of where a statement turns from false at a to true at
// b: before it does not hold, from there it holds, and they are no farther apart
// than within. It wants nothing of a curve, and works on moments too (as
// time.Duration); where more than a few digits are needed, Root is the quicker.
func Halve[T ~int64 | ~float64](a, b, within T, holds func(T) bool) (before, from T) {
	for max(b-a, a-b) > within {
		middle := a + (b-a)/2
		if middle == a || middle == b {
			break
		}
		if holds(middle) {
			b = middle
		} else {
			a = middle
		}
	}
	return a, b
}

// Lowest returns where between a and b, a being the lesser, the function f is
// least, to within. It must have one valley there, or lie lowest at an end. Near the
// bottom of a valley a function hardly changes, so that rounding lets nobody find
// the place to better than 1e-8 of the valley's width. For a greatest value hand
// over the function with its sign turned.
//
// Golden section: J. Kiefer, Proceedings of the American Mathematical Society 4
// (1953), 502.
func Lowest(f func(float64) float64, a, b, within float64) float64 {
	const golden = math.Phi - 1
	x1, x2 := b-golden*(b-a), a+golden*(b-a)
	f1, f2 := f(x1), f(x2)
	for i := 0; b-a > within && i < 100; i++ {
		if f1 < f2 {
			b, x2, f2 = x2, x1, f1
			x1 = b - golden*(b-a)
			f1 = f(x1)
		} else {
			a, x1, f1 = x1, x2, f2
			x2 = a + golden*(b-a)
			f2 = f(x2)
		}
	}
	return (a + b) / 2
}

package almanac

import "math"

// zero returns where f, whose values fa and fb at a and b have opposite signs,
// is zero: false position with the Illinois weighting, to a tenth of a
// millisecond if x is in days.
func zero(f func(float64) float64, a, fa, b, fb float64) float64 {
	const near = 1e-9
	x := b
	for range 60 {
		last := x
		x = (a*fb - b*fa) / (fb - fa)
		fx := f(x)
		if fx == 0 || math.Abs(x-last) < near/10 || math.Abs(b-a) < near {
			break
		}
		if (fx < 0) != (fb < 0) {
			a, fa = b, fb
		} else {
			fa /= 2
		}
		b, fb = x, fx
	}
	return x
}

// lowest returns where between a and b the function f, which has one valley
// there, is least: golden section, to a tenth of a second if x is in days.
func lowest(f func(float64) float64, a, b float64) float64 {
	const golden = 0.6180339887498949
	x1, x2 := b-golden*(b-a), a+golden*(b-a)
	f1, f2 := f(x1), f(x2)
	for range 60 {
		if f1 < f2 {
			b, x2, f2 = x2, x1, f1
			x1 = b - golden*(b-a)
			f1 = f(x1)
		} else {
			a, x1, f1 = x1, x2, f2
			x2 = a + golden*(b-a)
			f2 = f(x2)
		}
		if b-a < 1e-6 {
			break
		}
	}
	return (a + b) / 2
}

package dial

import (
	"math"

	"noonbook/compute/search"
)

// refine improves the values by the damped Gauss–Newton method (D. W.
// Marquardt, Journal of the SIAM 11, 1963, 431) with slopes by differences, and
// returns the inverse of the normal matrix, in the order of m.ask. ok is false
// where the marks do not decide.
func (m model) refine(x causeValues) (causeValues, [][]float64, bool) {
	damping := 1e-3
	at := m.squares(x)
	for range 60 {
		normal, right, ok := m.normal(x)
		if !ok {
			return x, nil, false
		}
		damped := clone(normal)
		for i := range damped {
			damped[i][i] *= 1 + damping
		}
		inverse, ok := inverted(damped)
		if !ok {
			return x, nil, false
		}
		next, step := x, 0.0
		for i, cause := range m.ask {
			change := 0.0
			for j := range right {
				change += inverse[i][j] * right[j]
			}
			next[cause] += change
			step = max(step, math.Abs(change))
		}
		if s := m.squares(next); s <= at {
			x, at, damping = next, s, damping/10
		} else {
			damping *= 10
		}
		const settled = 1e-10 // rad
		if step < settled {
			break
		}
	}
	normal, _, ok := m.normal(x)
	if !ok {
		return x, nil, false
	}
	inverse, ok := inverted(normal)
	return x, inverse, ok
}

// normal returns JᵀJ and Jᵀr, J being the slopes of the predicted marks, with
// what is known of the watch as one mark more.
func (m model) normal(x causeValues) (normal [][]float64, right []float64, ok bool) {
	const h = 1e-5 // rad; differences are then good to 1e-10
	r, ok := m.residuals(x)
	if !ok {
		return nil, nil, false
	}
	slopes := make([][]float64, len(m.ask))
	for i, cause := range m.ask {
		more, less := x, x
		more[cause] += h
		less[cause] -= h
		a, okA := m.residuals(less)
		b, okB := m.residuals(more)
		if !okA || !okB {
			return nil, nil, false
		}
		for k := range r {
			slopes[i] = append(slopes[i], math.Remainder(a[k]-b[k], 2*math.Pi)/(2*h))
		}
	}
	for i := range slopes {
		row := make([]float64, len(slopes))
		sum := 0.0
		for k := range r {
			sum += slopes[i][k] * r[k]
			for j := range slopes {
				row[j] += slopes[i][k] * slopes[j][k]
			}
		}
		if m.ask[i] == watch {
			row[i] += m.watchWeight
			sum -= m.watchWeight * x[watch]
		}
		normal, right = append(normal, row), append(right, sum)
	}
	return normal, right, true
}

// inverted inverts a small positive definite matrix by elimination. ok is
// false where a pivot is lost to rounding: the columns then depend on each
// other.
func inverted(a [][]float64) (inverse [][]float64, ok bool) {
	n := len(a)
	left := clone(a)
	for i := range n {
		row := make([]float64, n)
		row[i] = 1
		inverse = append(inverse, row)
	}
	for i := range n {
		const lost = 1e-9
		if !(left[i][i] > lost*a[i][i]) {
			return nil, false
		}
		pivot := left[i][i]
		for j := range n {
			left[i][j] /= pivot
			inverse[i][j] /= pivot
		}
		for k := range n {
			if k == i {
				continue
			}
			times := left[k][i]
			for j := range n {
				left[k][j] -= times * left[i][j]
				inverse[k][j] -= times * inverse[i][j]
			}
		}
	}
	return inverse, true
}

func clone(a [][]float64) [][]float64 {
	b := make([][]float64, len(a))
	for i := range a {
		b[i] = append([]float64(nil), a[i]...)
	}
	return b
}

// studentT returns the value that Student's t with the degrees of freedom stays
// below with the probability p, 0.5 to 1.
func studentT(p float64, freedom int) float64 {
	high := 1.0
	for studentBelow(high, freedom) < p {
		high *= 2
	}
	return search.Root(func(t float64) float64 { return studentBelow(t, freedom) - p }, 0, high, 1e-12*high)
}

// studentBelow is the probability that Student's t is below a positive value:
// Abramowitz & Stegun, Handbook of Mathematical Functions, equations 26.7.3
// (odd degrees of freedom) and 26.7.4 (even).
func studentBelow(t float64, freedom int) float64 {
	theta := math.Atan(t / math.Sqrt(float64(freedom)))
	sin, cos := math.Sincos(theta)
	sum, term := 0.0, 1.0
	if freedom%2 == 1 {
		term = cos
		for k := 1; k <= freedom-2; k += 2 {
			sum += term
			term *= cos * cos * float64(k+1) / float64(k+2)
		}
		return 0.5 + (theta+sin*sum)/math.Pi
	}
	for k := 0; k <= freedom-2; k += 2 {
		sum += term
		term *= cos * cos * float64(k+1) / float64(k+2)
	}
	return 0.5 + sin*sum/2
}

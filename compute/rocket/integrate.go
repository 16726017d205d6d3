package rocket

import (
	"math"

	"noonbook/compute/search"
)

// A state is position and velocity: along, across, up in m, then in m/s.
type state [6]float64

// A motion is the right-hand side of the equation of motion.
type motion struct {
	drag          float64 // k = ρ C A / 2m, 1/m
	along, across float64 // wind, m/s
}

func (m motion) slope(y state) state {
	u, w := y[3]-m.along, y[4]-m.across
	k := m.drag * math.Sqrt(u*u+w*w+y[5]*y[5])
	return state{y[3], y[4], y[5], -k * u, -k * w, -Gravity - k*y[5]}
}

// tolerance is the estimated error allowed to a step, relative to each variable
// or to 1 m and 1 m/s, whichever is more.
const tolerance = 1e-9

// step takes one step of Dormand and Prince (1980), table 2, and estimates its
// error in units of the tolerance. first is the slope at y, last that at the end.
// The motion does not depend on time, so the nodes do not appear.
func (m motion) step(y, first state, h float64) (next, last state, off float64) {
	k1 := &first
	for n := range next {
		next[n] = y[n] + h*(1.0/5*k1[n])
	}
	k2 := m.slope(next)
	for n := range next {
		next[n] = y[n] + h*(3.0/40*k1[n]+9.0/40*k2[n])
	}
	k3 := m.slope(next)
	for n := range next {
		next[n] = y[n] + h*(44.0/45*k1[n]-56.0/15*k2[n]+32.0/9*k3[n])
	}
	k4 := m.slope(next)
	for n := range next {
		next[n] = y[n] + h*(19372.0/6561*k1[n]-25360.0/2187*k2[n]+64448.0/6561*k3[n]-212.0/729*k4[n])
	}
	k5 := m.slope(next)
	for n := range next {
		next[n] = y[n] + h*(9017.0/3168*k1[n]-355.0/33*k2[n]+46732.0/5247*k3[n]+49.0/176*k4[n]-5103.0/18656*k5[n])
	}
	k6 := m.slope(next)
	for n := range next {
		next[n] = y[n] + h*(35.0/384*k1[n]+500.0/1113*k3[n]+125.0/192*k4[n]-2187.0/6784*k5[n]+11.0/84*k6[n])
	}
	last = m.slope(next)
	for n := range next { // the fifth-order weights less the fourth-order ones
		err := h * (71.0/57600*k1[n] - 71.0/16695*k3[n] + 71.0/1920*k4[n] - 17253.0/339200*k5[n] + 22.0/525*k6[n] - 1.0/40*last[n])
		off = max(off, math.Abs(err)/(tolerance*max(1, math.Abs(y[n]), math.Abs(next[n]))))
	}
	return next, last, off
}

// to shortens a step of h, in which component n falls through zero, until it
// ends there, and returns the length of the shortened step and its end.
func (m motion) to(n int, y, first state, h float64) (float64, state) {
	if !(y[n] > 0) {
		return 0, y
	}
	const near, within = 1e-13, 1e-15 // m or m/s; s
	end, _, _ := m.step(y, first, h)
	at := search.Between(func(h float64) float64 {
		end, _, _ := m.step(y, first, h)
		if math.Abs(end[n]) < near {
			return 0
		}
		return end[n]
	}, 0, y[n], h, end[n], within)
	end, _, _ = m.step(y, first, at)
	return at, end
}

// nextStep returns the step to try after one whose error was off tolerances: the
// usual controller of order 5 with a safety factor, common practice.
func nextStep(h, off float64) float64 {
	if off == 0 {
		return 5 * h
	}
	return h * min(5, max(0.2, 0.9*math.Pow(off, -0.2)))
}

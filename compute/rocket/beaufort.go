package rocket

// A Force is a number of the Beaufort scale of wind, 0 for calm. It is judged from
// what the wind moves, so it needs no instrument.
type Force int

// forceFrom is the slowest wind of each force in m/s, the mean of ten minutes 10 m
// above open ground: WMO, Manual on Codes (WMO-No. 306), Beaufort scale of wind.
// Each force ends a tenth below the next one.
var forceFrom = [...]Speed{0, 0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7}

// MostForce is the last force of the scale.
const MostForce = Force(len(forceFrom) - 1)

// From returns the slowest wind of a force, 0 to MostForce, in m/s.
func (f Force) From() Speed { return forceFrom[f] }

// TooStrong returns the weakest force that may be more than a limit in m/s: with one
// force less the wind is certainly within it. It is never calm, because nobody sees
// less wind than none.
func TooStrong(limit Speed) Force {
	f := Force(1)
	for f < MostForce && forceFrom[f+1]-0.1 <= limit+1e-9 {
		f++
	}
	return f
}

package almanac

import (
	"math"
	"sync/atomic"
	"time"
)

// Moments that are the same for everybody are found once, from the theories, and
// remembered as long as the program runs: fitting the sky round every new Moon of a
// century would cost more than the few places that the search for it asks. What is
// remembered has a bound, which is the range of years, and callers get copies.

// A years remembers something for each year of the range.
type years[T any] [LastYear - FirstYear + 1]atomic.Pointer[T]

// of returns what there is of a year in the range, made now if nobody has asked yet.
func (y *years[T]) of(year int, made func(year int) T) *T {
	slot := &y[year-FirstYear]
	if slot.Load() == nil {
		one := made(year)
		slot.CompareAndSwap(nil, &one)
	}
	return slot.Load()
}

var (
	seasonYears years[[4]time.Time]
	solarYears  years[solarYear]
	lunarYears  years[[]LunarEclipse]
)

// A solarYear has a year's eclipses of the Sun, and the tracks round each, which the
// first place that asks how it sees the eclipse makes.
type solarYear struct {
	list    []SolarEclipse
	shadows []atomic.Pointer[shadow]
}

func solarYearOf(year int) solarYear {
	list := solarEclipses(year)
	return solarYear{list, make([]atomic.Pointer[shadow], len(list))}
}

// shadow returns the tracks round the eclipse's greatest moment. They are remembered
// if it is one that SolarEclipses returns.
func (e *SolarEclipse) shadow() *shadow {
	year := e.Greatest.Year()
	if coversYear(year) == nil {
		known := solarYears.of(year, solarYearOf)
		for i := range known.list {
			if !known.list[i].Greatest.Equal(e.Greatest) {
				continue
			}
			if known.shadows[i].Load() == nil {
				s := shadowOf(e.Greatest)
				known.shadows[i].CompareAndSwap(nil, &s)
			}
			return known.shadows[i].Load()
		}
	}
	s := shadowOf(e.Greatest)
	return &s
}

// Quarters of the Moon are counted from the new Moon of 2000 January 6 (number 4, D
// being 298° at J2000). Those from 1949 to 2101 have numbers of −2480 to 5050.
const (
	firstQuarter = -2500
	lastQuarter  = 5100
)

var quarters [lastQuarter - firstQuarter + 1]atomic.Uint64 // bits of the moment, 0 for none yet

// phase returns the moment of a quarter in Julian centuries of TT (see phaseAt).
func phase(quarter int) float64 {
	if quarter < firstQuarter || quarter > lastQuarter {
		return phaseAt(quarter)
	}
	slot := &quarters[quarter-firstQuarter]
	if bits := slot.Load(); bits != 0 {
		return math.Float64frombits(bits)
	}
	t := phaseAt(quarter)
	slot.Store(math.Float64bits(t))
	return t
}

package entry

import (
	"math"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
)

// A KnownWay is a way that the class knows, by which it measures larger ones.
type KnownWay struct {
	To     string          // where it leads, as the school says it
	Length quantity.Length // 0 where the school names no way
}

// KnownWaySettings are the settings that KnownWayOf reads.
func KnownWaySettings() form.Keys { return form.Keys{school.WayTo, school.WayKm} }

// KnownWayOf returns the way that the class knows; none where one of the two settings is
// missing.
func KnownWayOf(v form.Values) KnownWay {
	if school.WayTo.Of(v) == "" || !school.WayKm.In(v) {
		return KnownWay{}
	}
	return KnownWay{school.WayTo.Of(v), quantity.Kilometres(school.WayKm.Of(v))}
}

// Is reports whether the school names a way.
func (w KnownWay) Is() bool { return w.Length > 0 }

// Name is what the way is called: the way to Halifax.
func (w KnownWay) Name() say.Value {
	if !w.Is() {
		return say.None("known-way.none")
	}
	return say.Words("known-way.name", say.Text(w.To))
}

// Times is how many such ways a distance is, for a column of numbers.
func (w KnownWay) Times(d quantity.Length) say.Value {
	if !w.Is() {
		return say.None("known-way.none")
	}
	n := float64(d / w.Length)
	return say.Number(n, "", timesDecimals(n))
}

// timesDecimals leaves two digits that count, since the class knows its way no better.
func timesDecimals(n float64) int {
	switch {
	case n >= 9.95:
		return 0
	case n >= 0.095:
		return 1
	}
	return 2
}

// once is how far a distance may be from the way to be told as the way itself.
const once = 1.05

// Measure says a distance in such ways, as what can stand behind "that is": 21 times the
// way to Halifax, about a third of the way to Halifax. Where the school names no way it
// is none.
func (w KnownWay) Measure(d quantity.Length) say.Value {
	if !w.Is() {
		return say.None("known-way.none")
	}
	n, to := float64(d/w.Length), say.Text(w.To)
	v := say.Number(n, "", 2)
	switch {
	case n > once:
		return v.As("known-way.times", say.Number(n, "", timesDecimals(n)), to)
	case n > 1/once:
		return v.As("known-way.once", to)
	case n >= leastPart:
		return v.As(partOf(n), to)
	}
	return v.As("known-way.percent", say.Number(100*n, "percent", percentDecimals(n)), to)
}

func percentDecimals(n float64) int {
	if n < 0.0095 {
		return 1
	}
	return 0
}

// leastPart is the least part of a way that has a name; below it per cent say more.
const leastPart = 0.09

// partOf is the line of the words files for the part of a way that is nearest by
// proportion: none is farther off than a sixth of itself.
func partOf(n float64) string {
	best, off := "", math.Inf(1)
	for _, part := range []struct {
		size float64
		key  string
	}{
		{1. / 10, "known-way.tenth"}, {1. / 8, "known-way.eighth"}, {1. / 6, "known-way.sixth"}, {1. / 5, "known-way.fifth"},
		{1. / 4, "known-way.quarter"}, {1. / 3, "known-way.third"}, {2. / 5, "known-way.two_fifths"}, {1. / 2, "known-way.half"},
		{3. / 5, "known-way.three_fifths"}, {2. / 3, "known-way.two_thirds"}, {3. / 4, "known-way.three_quarters"}, {9. / 10, "known-way.nine_tenths"},
	} {
		if by := math.Abs(math.Log(n / part.size)); by < off {
			best, off = part.key, by
		}
	}
	return best
}

package entry

import (
	"math"
	"slices"

	"noonbook/build/say"
)

// Limits of the measurement that departs from the rest: common practice, no source. The
// usual distance is the median of all, times 1.4826 the scatter of a normal distribution;
// more than three scatters is clear. Of fewer than LeastMeasures nothing can be told.
const (
	normalScatter = 1.4826
	clearScatters = 3
	LeastMeasures = 5
)

// SourceOutlier says by what rule a measurement stands out.
const SourceOutlier = "What departs from the rest: more than three scatters, the scatter taken from the median distance, of five measurements or more: common practice, no source"

// Outlier finds the measurement that departs most clearly from the rest: off has how far
// each is from where it belongs, least is a distance of the same unit that careful
// measuring may bring. ok is false where there are few, or all are about as good. Of two
// that are as far off it takes the first.
func Outlier(off []float64, least float64) (at int, ok bool) {
	if len(off) < LeastMeasures {
		return 0, false
	}
	for i := range off {
		if math.Abs(off[i]) > math.Abs(off[at]) {
			at = i
		}
	}
	return at, math.Abs(off[at]) > max(least, clearScatters*normalScatter*UsualOff(off))
}

// UsualOff is the median of distances without regard to the side, 0 of none.
func UsualOff(off []float64) float64 {
	if len(off) == 0 {
		return 0
	}
	sizes := make([]float64, len(off))
	for i, x := range off {
		sizes[i] = math.Abs(x)
	}
	slices.Sort(sizes)
	return (sizes[(len(sizes)-1)/2] + sizes[len(sizes)/2]) / 2
}

// MostOff is the largest of distances without regard to the side, 0 of none.
func MostOff(off []float64) float64 {
	most := 0.0
	for _, x := range off {
		most = max(most, math.Abs(x))
	}
	return most
}

// OfGroup names a measurement with the group that made it, if the records name one.
func OfGroup(measured say.Value, group string) say.Value {
	if group == "" {
		return measured
	}
	return say.Words("measured.of_group", measured, say.Text(group))
}

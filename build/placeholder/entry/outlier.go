package entry

import (
	"math"
	"slices"

	"noonbook/build/say"
	"noonbook/compute/quantity"
)

// LeastMeasures is how many measurements it takes to tell that one of them departs from the
// rest: common practice, no source.
const LeastMeasures = 5

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
	return at, math.Abs(off[at]) > max(least, quantity.ClearlyOff(sizes(off)))
}

// UsualOff is the median of distances without regard to the side, 0 of none.
func UsualOff(off []float64) float64 { return quantity.Median(sizes(off)) }

func sizes(off []float64) []float64 {
	all := make([]float64, len(off))
	for i, x := range off {
		all[i] = math.Abs(x)
	}
	return all
}

// MostOff is the largest of distances without regard to the side, 0 of none.
func MostOff(off []float64) float64 {
	return slices.Max(append(sizes(off), 0))
}

// FindingOff says how good measurements are and which one departs: in the words of the
// placeholder, finding_none, _one, _few, _even or _odd. Its distances are written by amount,
// and which names a measurement.
func FindingOff(placeholder string, off []float64, least float64, amount func(float64) say.Value, which func(at int) say.Value) say.Phrase {
	usual, most := amount(UsualOff(off)), amount(MostOff(off))
	if at, ok := Outlier(off, least); ok {
		return say.Line(placeholder+".finding_odd", usual, which(at), most)
	}
	switch n := len(off); {
	case n == 0:
		return say.Line(placeholder + ".finding_none")
	case n == 1:
		return say.Line(placeholder+".finding_one", most)
	case n < LeastMeasures:
		return say.Line(placeholder+".finding_few", say.Count(n), most)
	}
	return say.Line(placeholder+".finding_even", usual, most)
}

// OfGroup names a measurement with the group that made it, if the records name one.
func OfGroup(measured say.Value, group string) say.Value {
	if group == "" {
		return measured
	}
	return say.Words("measured.of_group", measured, say.Text(group))
}

package quantity

import "slices"

// Limits of a measurement that the others do not bear out: common practice, no source. The
// scatter of honest ones is read off their median distance from where they belong, times
// 1.4826 for a normal distribution; three scatters away one stands out.
const (
	normalScatter = 1.4826
	clearScatters = 3
)

// Median is the middle one of several values, the mean of the middle two of an even number,
// and 0 of none.
func Median[T ~float64](values []T) T {
	n := len(values)
	if n == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(values))
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}

// ClearlyOff is the distance beyond which one of several measurements stands out, from the
// distances of all, none of them negative.
func ClearlyOff[T ~float64](distances []T) T {
	return clearScatters * normalScatter * Median(distances)
}

package quantity

import (
	"math"
	"testing"
)

// By hand; of an even number the mean of the middle two, as ISO 3534-1 has it (from memory).
func TestMedian(t *testing.T) {
	for _, c := range []struct {
		values []float64
		want   float64
	}{{nil, 0}, {[]float64{3}, 3}, {[]float64{9, 1, 2}, 2}, {[]float64{4, 1, 2, 9}, 3}} {
		if got := Median(c.values); got != c.want {
			t.Errorf("of %v: %v", c.values, got)
		}
	}
}

// 1.4826 is the scatter of a normal distribution in median distances, 1 ÷ Φ⁻¹(3/4), where
// Φ is half of one and the error function of x ÷ √2.
func TestClearlyOff(t *testing.T) {
	scatter := 1 / (math.Sqrt2 * math.Erfinv(0.5))
	if got := ClearlyOff([]Length{1, 1, 7}); math.Abs(float64(got)-3*scatter) > 1e-3 {
		t.Errorf("it is %v, three scatters are %v", got, 3*scatter)
	}
}

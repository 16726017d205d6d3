package dial

import (
	"fmt"
	"math"
	"testing"
)

// Two-sided 95 % and 98.33 % points of Student's t, as scipy 1.10.1 gives them
// (scipy.stats.t.ppf), printed to six decimals.
func TestStudentT(t *testing.T) {
	for _, c := range []struct {
		p       float64
		freedom int
		want    float64
	}{
		{0.975, 1, 12.706205},
		{0.975, 2, 4.302653},
		{0.975, 3, 3.182446},
		{0.975, 4, 2.776445},
		{0.975, 7, 2.364624},
		{0.975, 30, 2.042272},
		{0.975, 101, 1.983731},
		{1 - 0.05/6, 1, 38.188459},
		{1 - 0.05/6, 2, 7.648804},
		{1 - 0.05/6, 3, 4.856657},
		{1 - 0.05/6, 4, 3.960786},
		{1 - 0.05/6, 7, 3.127552},
		{1 - 0.05/6, 30, 2.535742},
		{1 - 0.05/6, 101, 2.434507},
	} {
		if got := studentT(c.p, c.freedom); math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("t(%g, %d) is %.6f, want %.6f", c.p, c.freedom, got, c.want)
		}
	}
}

func ExampleFit() {
	inverse, ok := inverted([][]float64{{4, 2}, {2, 3}})
	fmt.Println(inverse, ok)
	_, ok = inverted([][]float64{{1, 1}, {1, 1}})
	fmt.Println(ok)
	// Output:
	// [[0.375 -0.25] [-0.25 0.5]] true
	// false
}

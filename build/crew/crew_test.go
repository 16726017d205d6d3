package crew

import (
	"slices"
	"sync/atomic"
	"testing"
)

// Whatever there is to do is done once each, and told of in order.
func TestEach(t *testing.T) {
	for _, n := range []int{0, 1, 2, 1000} {
		done := make([]atomic.Int64, n)
		var told []int
		Each(n, func(begun, of int) {
			if of != n {
				t.Errorf("%d of %d, there are %d", begun, of, n)
			}
			told = append(told, begun)
		}, func(i int) { done[i].Add(1) })
		for i := range done {
			if got := done[i].Load(); got != 1 {
				t.Errorf("%d of %d was done %d times", i, n, got)
			}
		}
		if len(told) != n || !slices.IsSorted(told) {
			t.Errorf("of %d it tells %v", n, told)
		}
	}
}

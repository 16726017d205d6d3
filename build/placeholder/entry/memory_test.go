package entry

import (
	"errors"
	"sync"
	"testing"
)

// A memory reckons a key once, keeps no error, and forgets when it is full.
func TestMemory(t *testing.T) {
	m := Memory[int, int]{Most: 100}
	times := 0
	square := func(n int) int {
		got, err := m.Of(n, func() (int, error) { times++; return n * n, nil })
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	for _, n := range []int{3, 3, 4} {
		if got := square(n); got != n*n {
			t.Errorf("the square of %d is %d", n, got)
		}
	}
	if times != 2 {
		t.Errorf("two squares are reckoned %d times", times)
	}
	fault := errors.New("no such number")
	if _, err := m.Of(5, func() (int, error) { return 0, fault }); err != fault {
		t.Errorf("the error is %v", err)
	}
	if square(5) != 25 {
		t.Error("an error is kept as an answer")
	}
	for n := range 1000 {
		square(n)
		if len(m.all) > 100 {
			t.Fatalf("%d answers are kept", len(m.all))
		}
	}
}

// Many who ask at once get the same (run with -race).
func TestMemoryOfMany(t *testing.T) {
	m := Memory[int, int]{Most: 150}
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for n := range 600 {
				if got, _ := m.Of(n%200, func() (int, error) { return -n % 200, nil }); got != -n%200 {
					t.Errorf("%d gives %d", n, got)
				}
			}
		})
	}
	group.Wait()
}

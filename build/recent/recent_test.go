package recent

import (
	"errors"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
)

// The things that were used last are there, those before them are made again.
func TestTheLastUsedStay(t *testing.T) {
	kept, made := Of[string]{Most: 2}, 0
	get := func(key string, fresh bool) {
		t.Helper()
		before := made
		got, err := kept.Get(key, func() (string, error) { made++; return "thing " + key, nil })
		if err != nil || got != "thing "+key || made > before != fresh {
			t.Errorf("%s: %q, %v, made anew: %v, want %v", key, got, err, made > before, fresh)
		}
	}
	get("a", true)
	get("b", true)
	get("a", false)
	get("c", true) // b goes
	get("a", false)
	get("b", true) // c goes
	get("a", false)
	get("c", true)
	if kept.Len() != 2 {
		t.Errorf("%d are kept", kept.Len())
	}
}

// What several want at once is made once, what cannot be made too.
func TestMadeOnce(t *testing.T) {
	kept := Of[int]{Most: 3}
	var made atomic.Int64
	var all sync.WaitGroup
	for i := range 60 {
		all.Go(func() {
			got, err := kept.Get(strconv.Itoa(i%3), func() (int, error) {
				made.Add(1)
				if i%3 == 2 {
					return 0, errors.New("no")
				}
				return i % 3, nil
			})
			if (err != nil) != (i%3 == 2) || err == nil && got != i%3 {
				t.Errorf("%d: %d, %v", i, got, err)
			}
		})
	}
	all.Wait()
	if made.Load() != 3 {
		t.Errorf("%d were made, want 3", made.Load())
	}
}

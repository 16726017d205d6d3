// Package crew does much work of one kind on all processors at once.
//
//	crew.Each(len(pages), nil, func(i int) { files[i] = fill(pages[i]) })
package crew

import (
	"runtime"
	"sync"
)

// Each does work for the numbers below n, each once and in no order, and returns when all
// is done. Unless tell is nil it is called before each, never twice at a time, with how
// much was begun before, of how much.
func Each(n int, tell func(begun, of int), work func(i int)) {
	var lock sync.Mutex
	begun := 0
	next := func() int {
		lock.Lock()
		defer lock.Unlock()
		if tell != nil && begun < n {
			tell(begun, n)
		}
		begun++
		return begun - 1
	}
	var workers sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		workers.Go(func() {
			for i := next(); i < n; i = next() {
				work(i)
			}
		})
	}
	workers.Wait()
}

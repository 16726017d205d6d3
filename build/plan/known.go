package plan

import (
	"runtime"
	"sync"
	"sync/atomic"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
)

// A Known is what was evaluated, by the placeholder's name and values, so that nothing is
// evaluated twice: plans of the class's and the staff's edition share it. It is safe for
// use by several goroutines. It grows with every school; a new one forgets.
type Known struct {
	lock sync.Mutex
	all  map[string]*evaluated
}

// An evaluated is what came of one evaluation.
type evaluated struct {
	once   sync.Once
	result result.Result
	err    error
}

// evaluated returns what comes of an entry with values, for which key stands.
func (k *Known) evaluated(key string, e entry.Entry, values form.Values) (*evaluated, error) {
	k.lock.Lock()
	if k.all == nil {
		k.all = map[string]*evaluated{}
	}
	found := k.all[key]
	if found == nil {
		found = &evaluated{}
		k.all[key] = found
	}
	k.lock.Unlock()
	found.once.Do(func() { found.result, found.err = e.Reckon(values) })
	if found.err != nil {
		return nil, found.err
	}
	return found, nil
}

// sideBySide does work for the numbers below n, on all processors at once.
func sideBySide(n int, work func(i int)) {
	var next atomic.Int64
	var workers sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		workers.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	workers.Wait()
}

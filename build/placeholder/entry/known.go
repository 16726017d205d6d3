package entry

import (
	"sync"

	"noonbook/build/form"
	"noonbook/build/result"
)

// A Known is what was evaluated, by the placeholder's name and values, so that nothing is
// evaluated twice: the class's and the staff's edition of a handbook share it. It is safe for
// use by several goroutines. It grows with every school; a new one knows nothing.
type Known struct {
	lock sync.Mutex
	all  map[string]*Evaluated
}

// An Evaluated is what came of one evaluation.
type Evaluated struct {
	Result result.Result
	once   sync.Once
	err    error
}

// Evaluated returns what comes of an entry with values, for which key stands. The error is
// that of Reckon.
func (k *Known) Evaluated(key string, e Entry, values form.Values) (*Evaluated, error) {
	k.lock.Lock()
	if k.all == nil {
		k.all = map[string]*Evaluated{}
	}
	found := k.all[key]
	if found == nil {
		found = &Evaluated{}
		k.all[key] = found
	}
	k.lock.Unlock()
	found.once.Do(func() { found.Result, found.err = e.Reckon(values) })
	if found.err != nil {
		return nil, found.err
	}
	return found, nil
}

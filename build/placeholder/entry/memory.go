package entry

import "sync"

// A Memory keeps what a topic reckons from a few numbers, for evaluations that reckon from
// the same ones, at one school or another: the flights of a rocket in the same air. What it
// keeps must follow from the key alone, so that whoever asks gets the same as the first,
// and nobody may change it. It is safe for use by several goroutines.
type Memory[K comparable, V any] struct {
	lock sync.Mutex
	all  map[K]V
}

// mostRemembered bounds a Memory, which lasts as long as the process. When it is full it
// forgets everything: a school wants few of one kind.
const mostRemembered = 128

// Of returns what reckon makes of the key. An error is not kept.
func (m *Memory[K, V]) Of(key K, reckon func() (V, error)) (V, error) {
	m.lock.Lock()
	known, ok := m.all[key]
	m.lock.Unlock()
	if ok {
		return known, nil
	}
	made, err := reckon() // by two at once, maybe: they make the same
	if err != nil {
		return made, err
	}
	m.lock.Lock()
	defer m.lock.Unlock()
	if m.all == nil || len(m.all) >= mostRemembered {
		m.all = map[K]V{}
	}
	m.all[key] = made
	return made, nil
}

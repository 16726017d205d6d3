package entry

import "sync"

// A Memory keeps what is reckoned from a few numbers, for evaluations that reckon from
// the same ones: the flights of a rocket in the same air, the Sun's day at a place. What it
// keeps must follow from the key alone, so that whoever asks gets the same as the first,
// and nobody may change it. It is safe for use by several goroutines. It lasts as long as
// the process, and forgets everything when it is full, so that it does not grow with the
// number of schools.
type Memory[K comparable, V any] struct {
	Most int // how many it keeps; more than one school wants of the kind
	lock sync.Mutex
	all  map[K]V
}

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
	if m.all == nil {
		m.all = map[K]V{}
	} else if len(m.all) >= m.Most {
		clear(m.all)
	}
	m.all[key] = made
	return made, nil
}

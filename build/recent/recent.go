// Package recent keeps the things that were used last, each made once by whoever asks first.
//
//	plans := recent.Of[*plan.Plan]{Most: 16}
//	p, err := plans.Get(key, func() (*plan.Plan, error) { return planned(key) })
package recent

import (
	"slices"
	"sync"
)

// Of keeps up to Most things. It is safe for use by several goroutines, and one that is
// being made keeps nobody waiting who asks for another.
type Of[T any] struct {
	Most int

	lock sync.Mutex
	all  []*one[T] // the one used last at the end
}

type one[T any] struct {
	key   string
	once  sync.Once
	thing T
	err   error
}

// Get returns the thing of that key, made anew where it is not among those kept. An error
// is kept too. A thing that had to go stays whole for those who have it.
func (o *Of[T]) Get(key string, made func() (T, error)) (T, error) {
	found := o.find(key)
	found.once.Do(func() { found.thing, found.err = made() })
	return found.thing, found.err
}

func (o *Of[T]) find(key string) *one[T] {
	o.lock.Lock()
	defer o.lock.Unlock()
	i := slices.IndexFunc(o.all, func(x *one[T]) bool { return x.key == key })
	if i < 0 {
		i, o.all = len(o.all), append(o.all, &one[T]{key: key})
	}
	found := o.all[i]
	o.all = append(slices.Delete(o.all, i, i+1), found)
	if len(o.all) > o.Most {
		o.all = slices.Delete(o.all, 0, 1)
	}
	return found
}

// Len returns how many are kept.
func (o *Of[T]) Len() int {
	o.lock.Lock()
	defer o.lock.Unlock()
	return len(o.all)
}

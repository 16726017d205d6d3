package entry

import (
	"slices"
	"sync"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/school"
)

// A Known is what was evaluated for one school, by the placeholder's name and values, so
// that nothing is evaluated twice: the class's and the staff's edition of a handbook share
// it. It is safe for use by several goroutines. It grows with every school; a new one knows
// nothing, and one of a Shared what is the same at every school.
type Known struct {
	shared *Shared // nil where there is one school
	lock   sync.Mutex
	all    map[string]*Evaluated // asked for since before was set aside
	before map[string]*Evaluated
}

// ForgetUnasked forgets what nobody asked for since it was last called, so that one who
// presses again and again knows what the last pressing asked, and no more.
func (k *Known) ForgetUnasked() {
	k.lock.Lock()
	defer k.lock.Unlock()
	k.before, k.all = k.all, nil
}

// A Shared is what several schools have in common: evaluations that ask for neither place
// nor calendar, such as a tube's plan or the strip with the worlds on it.
//
//	var shared entry.Shared
//	for _, settings := range schools {
//		plan.PressKnowing(settings, shared.Known())
//	}
//
// It is safe for use by several goroutines, and does not grow with the number of schools.
type Shared struct {
	lock sync.Mutex
	all  map[string]*Evaluated
}

// mostShared bounds a Shared. The demo has some thirty evaluations of that kind, of 1 kB to
// a few hundred; schools with a term, a class or a cupboard of their own bring more. When
// it is full it forgets everything: what is wanted again comes back at once.
const mostShared = 256

// An Evaluated is what came of one evaluation.
type Evaluated struct {
	Result result.Result
	once   sync.Once
	err    error
}

// Known returns what is known of a school that is new, over what it shares with others.
func (s *Shared) Known() *Known { return &Known{shared: s} }

// Evaluated returns what comes of an entry with values, for which key stands. The error is
// that of Reckon.
func (k *Known) Evaluated(key string, e Entry, values form.Values) (*Evaluated, error) {
	found := k.find(key, e)
	found.once.Do(func() { found.Result, found.err = e.Reckon(values) })
	if found.err != nil {
		return nil, found.err
	}
	return found, nil
}

// find returns the evaluation of that key, which may have to be made yet. A school keeps
// those that it shares, so that a Shared which forgets does not give it another.
func (k *Known) find(key string, e Entry) *Evaluated {
	k.lock.Lock()
	defer k.lock.Unlock()
	found := k.all[key]
	if found != nil {
		return found
	}
	if k.all == nil {
		k.all = map[string]*Evaluated{}
	}
	switch {
	case k.before[key] != nil:
		found = k.before[key]
	case k.shared != nil && e.anywhere():
		found = k.shared.find(key)
	default:
		found = &Evaluated{}
	}
	k.all[key] = found
	return found
}

func (s *Shared) find(key string) *Evaluated {
	s.lock.Lock()
	defer s.lock.Unlock()
	found := s.all[key]
	if found == nil {
		if s.all == nil || len(s.all) >= mostShared {
			s.all = map[string]*Evaluated{}
		}
		found = &Evaluated{}
		s.all[key] = found
	}
	return found
}

// anywhere reports whether an evaluation can be the same at another school. The height
// above the sea alone makes the air, which two schools may have alike.
func (e Entry) anywhere() bool {
	return !e.Lessons && !slices.ContainsFunc(e.Settings, func(key form.AnyKey) bool {
		return slices.Contains(ofOneSchool, key)
	})
}

// ofOneSchool are settings that no two schools have alike.
var ofOneSchool = form.Keys{school.Name, school.Latitude, school.Longitude, school.TimeZone}

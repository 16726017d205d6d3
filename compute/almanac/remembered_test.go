package almanac

import (
	"math"
	"reflect"
	"sync"
	"testing"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What is remembered is what is found anew, for the first who asks, the second, and
// eight at once.
func TestRememberedMomentsAreThoseFound(t *testing.T) {
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for year := 2020; year < 2032; year++ {
				for range 2 {
					if got, err := SolarEclipses(year); err != nil || !reflect.DeepEqual(got, solarEclipses(year)) {
						t.Errorf("%d: eclipses of the Sun are %v, %v", year, got, err)
					}
					if got, err := LunarEclipses(year); err != nil || !reflect.DeepEqual(got, lunarEclipses(year)) {
						t.Errorf("%d: eclipses of the Moon are %v, %v", year, got, err)
					}
					if got, err := Seasons(year); err != nil || got != seasonsOf(year) {
						t.Errorf("%d: seasons are %v, %v", year, got, err)
					}
				}
			}
		})
	}
	group.Wait()
	for q := firstQuarter - 3; q <= lastQuarter+3; q += 7 {
		if first, second, found := phase(q), phase(q), phaseAt(q); first != found || second != found {
			t.Errorf("quarter %d: %v and %v, not %v", q, first, second, found)
		}
	}
}

// The quarters with a slot are those that Phases can be asked for, a day beyond the
// years and the phase before included.
func TestQuartersCoverTheYears(t *testing.T) {
	for _, c := range []struct {
		year  int
		known bool
	}{{FirstYear - 1, true}, {LastYear + 1, true}, {FirstYear - 3, false}, {LastYear + 3, false}} {
		at := momentOf(time.Date(c.year, 7, 1, 0, 0, 0, 0, time.UTC)).centuries
		quarter := int(math.Floor(meanElongation(at) / (math.Pi / 2)))
		if known := firstQuarter <= quarter-4 && quarter+4 <= lastQuarter; known != c.known {
			t.Errorf("quarter %d of %d: %v", quarter, c.year, known)
		}
	}
}

// Whoever changes a list that he was given changes nobody else's.
func TestListsAreCopies(t *testing.T) {
	sun, _ := SolarEclipses(2027)
	moon, _ := LunarEclipses(2027)
	sun[0], moon[0] = SolarEclipse{}, LunarEclipse{}
	_, _ = append(sun[:0], sun[1:]...), append(moon[:0], moon[1:]...)
	again, _ := SolarEclipses(2027)
	other, _ := LunarEclipses(2027)
	if !reflect.DeepEqual(again, solarEclipses(2027)) || !reflect.DeepEqual(other, lunarEclipses(2027)) {
		t.Errorf("after a change they are %v and %v", again, other)
	}
}

// An eclipse's remembered tracks are those of its moment, for one that nobody
// returned too.
func TestTracksOfAnEclipse(t *testing.T) {
	p := place.Place{Latitude: quantity.Degrees(46.09), Longitude: quantity.Degrees(-64.77), Zone: time.UTC}
	for year := 2024; year < 2030; year++ {
		list, err := SolarEclipses(year)
		if err != nil || len(list) < 2 {
			t.Fatal(list, err)
		}
		for _, e := range list {
			want := shadowOf(e.Greatest)
			if first, second := e.shadow(), e.shadow(); *first != want || second != first {
				t.Errorf("%v: not its tracks, or not remembered", e.Greatest)
			}
			aside := e
			aside.Greatest = e.Greatest.Add(time.Second)
			if *aside.shadow() != shadowOf(aside.Greatest) {
				t.Errorf("%v: the tracks of another", aside.Greatest)
			}
			if e.From(p) != e.From(p) {
				t.Errorf("%v: seen in two ways", e.Greatest)
			}
		}
	}
	far := SolarEclipse{Greatest: time.Date(1800, 1, 1, 0, 0, 0, 0, time.UTC)}
	if *far.shadow() != shadowOf(far.Greatest) {
		t.Error("outside the years")
	}
}

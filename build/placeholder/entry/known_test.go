package entry

import (
	"fmt"
	"sync"
	"sync/atomic"
	"testing"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
)

// counted is an entry that reads the settings, and says how often it was evaluated.
func counted(settings ...form.AnyKey) (Entry, *atomic.Int64) {
	times := &atomic.Int64{}
	return Entry{Settings: settings, Reckon: func(form.Values) (result.Result, error) {
		return result.Result{Facts: []result.Fact{{Name: "n", Value: say.Count(int(times.Add(1)))}}}, nil
	}}, times
}

// What asks for no place is evaluated once for all schools, what asks for one at each, and
// whoever asks first: many schools at once get the same.
func TestSharedBySchools(t *testing.T) {
	anywhere, times := counted(school.ElevationM, school.StockStyleMM)
	somewhere, timesThere := counted(school.ElevationM, school.Latitude)
	lessons, timesOfLessons := counted(school.StockStyleMM)
	lessons.Lessons = true
	const schools, asks = 20, 5
	var shared Shared
	var group sync.WaitGroup
	for range schools {
		known := shared.Known()
		for range asks {
			group.Go(func() {
				for key, e := range map[string]Entry{"anywhere": anywhere, "somewhere": somewhere, "lessons": lessons} {
					got, err := known.Evaluated(key, e, nil)
					if err != nil {
						t.Error(err)
					} else if again, _ := known.Evaluated(key, e, nil); again != got {
						t.Errorf("%s: a school has two evaluations for one key", key)
					}
				}
			})
		}
	}
	group.Wait()
	if n := times.Load(); n != 1 {
		t.Errorf("what asks for no place was evaluated %d times", n)
	}
	if n, m := timesThere.Load(), timesOfLessons.Load(); n != schools || m != schools {
		t.Errorf("what asks for a place was evaluated %d times, what asks for lessons %d times, at %d schools", n, m, schools)
	}
}

// However many schools there are, what they share stays bounded, and a school goes on to
// know what the others have forgotten.
func TestSharedIsBounded(t *testing.T) {
	e, times := counted(school.ElevationM)
	var shared Shared
	first := shared.Known()
	was, _ := first.Evaluated("0", e, nil)
	for i := range 10 * mostShared {
		if _, err := shared.Known().Evaluated(fmt.Sprint(i), e, nil); err != nil {
			t.Fatal(err)
		}
		if len(shared.all) > mostShared {
			t.Fatalf("%d evaluations are kept", len(shared.all))
		}
	}
	if n := times.Load(); n != 10*mostShared {
		t.Errorf("%d evaluations for %d keys", n, 10*mostShared)
	}
	if is, _ := first.Evaluated("0", e, nil); is != was {
		t.Error("a school forgets what it knew")
	}
}

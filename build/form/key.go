package form

import (
	"fmt"
	"time"

	"noonbook/compute/place"
)

// A Key names a field and says by its type what the field holds. Keys are
// constants, so that one that is mistyped, or read as something else, does not
// compile:
//
//	const Latitude form.Key[float64] = "school.latitude" // dotted: in the table [school]
//
//	degrees := Latitude.Of(values)
type Key[T held] string

// held are the Go types that a field's value can have.
type held interface {
	string | float64 | int | bool | place.Date | YearMonth | time.Duration | TimeSpan | *time.Location |
		[]string | []place.Date | []TimeSpan | []Values | Records
}

// A YearMonth is a month of a year, as its first day.
type YearMonth struct{ First place.Date }

// A TimeSpan is a stretch of the day, as durations since midnight.
type TimeSpan struct{ From, To time.Duration }

// AnyKey is a key whatever its field holds.
type AnyKey interface {
	Name() string
	In(Values) bool
	kind() Kind
	holds(any) bool
}

// Keys are keys of any kind.
type Keys []AnyKey

// Names returns the names of the keys.
func (k Keys) Names() []string {
	names := make([]string, len(k))
	for i, key := range k {
		names[i] = key.Name()
	}
	return names
}

// Name returns the name as an author writes it.
func (k Key[T]) Name() string { return string(k) }

// Of returns what the values hold under the key, and the zero value where the
// field was not filled in.
func (k Key[T]) Of(v Values) T {
	var zero T
	switch x := v[string(k)].(type) {
	case nil:
		return zero
	case T:
		return x
	default:
		panic(fmt.Sprintf("form: %s holds %T, not %T", k, x, zero))
	}
}

// In reports whether the field was filled in, by the author or by its default.
func (k Key[T]) In(v Values) bool { return v.has(string(k)) }

// Is returns values that hold x under the key, and nothing else.
func (k Key[T]) Is(x T) Values { return Values{string(k): x} }

func (k Key[T]) holds(x any) bool { _, ok := x.(T); return ok }

func (k Key[T]) kind() Kind {
	var zero T
	switch any(zero).(type) {
	case float64:
		return Number
	case int:
		return Whole
	case bool:
		return Flag
	case place.Date:
		return Date
	case YearMonth:
		return Month
	case time.Duration:
		return Clock
	case TimeSpan:
		return Span
	case *time.Location:
		return Zone
	case []string:
		return Texts
	case []place.Date:
		return Dates
	case []TimeSpan:
		return Spans
	case []Values:
		return Tables
	case Records:
		return CSV
	}
	return Text
}

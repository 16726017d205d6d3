package almanac

import (
	"fmt"
	"time"
)

// The years for which this package stands by its limits, both included.
const (
	FirstYear = 1950
	LastYear  = 2100
)

// A RangeError says that a search was asked for outside the range.
type RangeError struct {
	Year int // of the common era, UTC
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("the year %d is outside %d to %d", e.Year, FirstYear, LastYear)
}

// Covers returns nil where the limits hold at t, and a *RangeError elsewhere.
// Places, days and aspects are computed there too, with growing error.
func Covers(t time.Time) error { return coversYear(t.UTC().Year()) }

func coversYear(year int) error {
	if year < FirstYear || year > LastYear {
		return &RangeError{year}
	}
	return nil
}

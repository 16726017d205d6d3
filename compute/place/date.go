package place

import (
	"fmt"
	"time"
)

// A Date is a day of the civil (Gregorian) calendar, without a clock.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// ParseDate reads an ISO 8601 calendar date such as "2027-04-20".
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return Date{}, fmt.Errorf("%q is not a date such as 2027-04-20", s)
	}
	return Date{t.Year(), t.Month(), t.Day()}, nil
}

// String writes the date as ISO 8601, "2027-04-20".
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day) }

// UTC returns the date's midnight in Universal Time.
func (d Date) UTC() time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }

// Add returns the date n days later.
func (d Date) Add(n int) Date {
	const inEveryMonth = 28 // a year is walked day by day often enough
	if day := d.Day + n; 1 <= min(d.Day, day) && max(d.Day, day) <= inEveryMonth && d.Month >= time.January && d.Month <= time.December {
		return Date{d.Year, d.Month, day}
	}
	t := d.UTC().AddDate(0, 0, n)
	return Date{t.Year(), t.Month(), t.Day()}
}

// Before reports whether d is earlier than e, by their numbers as they are written: a
// calendar asks this more than anything else.
func (d Date) Before(e Date) bool {
	if d.Year != e.Year {
		return d.Year < e.Year
	}
	if d.Month != e.Month {
		return d.Month < e.Month
	}
	return d.Day < e.Day
}

// After reports whether d is later than e.
func (d Date) After(e Date) bool { return e.Before(d) }

// DaysUntil returns the number of days from d to e, negative when e is earlier.
func (d Date) DaysUntil(e Date) int { return int(e.UTC().Sub(d.UTC()).Hours() / 24) }

// Weekday returns the day of the week.
func (d Date) Weekday() time.Weekday { return d.UTC().Weekday() }

// IsZero reports whether d is the zero Date, which is no day.
func (d Date) IsZero() bool { return d == Date{} }

package encode

import "noonbook/build/result"

// An Answer is a result with the name of its placeholder, the day and the place
// that it was computed for, and the sources of what it computes.
type Answer struct {
	Placeholder string
	Date        string // ISO 8601; "" where no day counts
	Place       *Place // nil where no place counts
	Sources     []string
	result.Result
}

// A Place is where an answer holds. JSON has it as it is, with null for what the
// answer does not depend on.
type Place struct {
	Name       string   `json:"name"`
	Latitude   *float64 `json:"latitude"`  // degrees, north positive
	Longitude  *float64 `json:"longitude"` // degrees, east positive
	ElevationM *float64 `json:"elevation_m"`
	TimeZone   *string  `json:"time_zone"` // of the IANA data base
}

package say

import "math"

// Latitude says a latitude in degrees with its side, "46.1° N".
func Latitude(degrees float64) Value { return sided(degrees, "compass.north_of", "compass.south_of") }

// Longitude says a longitude in degrees with its side, "64.8° W".
func Longitude(degrees float64) Value { return sided(degrees, "compass.east_of", "compass.west_of") }

func sided(degrees float64, positive, negative string) Value {
	if degrees < 0 {
		positive = negative
	}
	return Number(degrees, "deg", 1).As(positive, Number(math.Abs(degrees), "deg", 1))
}

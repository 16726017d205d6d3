package school

import (
	"noonbook/build/form"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Where are the settings that Place reads.
func Where() []string {
	return []string{"school.latitude", "school.longitude", "school.elevation_m", "school.time_zone"}
}

// Place returns the place that the settings describe.
func Place(v form.Values) place.Place {
	return place.Place{
		Latitude:  quantity.Degrees(v.Number("school.latitude")),
		Longitude: quantity.Degrees(v.Number("school.longitude")),
		Elevation: quantity.Metres(v.Number("school.elevation_m")),
		Zone:      v.Zone("school.time_zone"),
	}
}

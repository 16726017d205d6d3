package school

import (
	"noonbook/build/form"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Where are the settings that Place reads.
func Where() form.Keys {
	return form.Keys{Latitude, Longitude, ElevationM, TimeZone}
}

// Place returns the place that the settings describe.
func Place(v form.Values) place.Place {
	return place.Place{
		Latitude:  quantity.Degrees(Latitude.Of(v)),
		Longitude: quantity.Degrees(Longitude.Of(v)),
		Elevation: quantity.Metres(ElevationM.Of(v)),
		Zone:      TimeZone.Of(v),
	}
}

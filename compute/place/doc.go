// Package place says where a school is and how its clock runs.
//
//	zone, _ := time.LoadLocation("America/Moncton")
//	school := place.Place{
//		Latitude:  quantity.Degrees(46.09),  // north positive
//		Longitude: quantity.Degrees(-64.77), // east positive
//		Elevation: quantity.Metres(20),      // above mean sea level
//		Zone:      zone,
//	}
//	from, to := school.Day(place.Date{Year: 2027, Month: time.April, Day: 20})
//
// Latitude is geodetic on WGS 84, −90° to 90°; longitude is −180° to 180°.
// Clock times come from the IANA time zone of the place. A local day runs from
// its first instant to the first instant of the next date, so it lasts 23, 24
// or 25 hours where clocks change, and none at all where a zone skipped a date
// (Pacific/Apia had no 30 December 2011).
package place

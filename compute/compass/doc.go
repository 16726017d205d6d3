// Package compass says how far a compass needle points from true north.
//
//	lat, lon := quantity.Degrees(46.09), quantity.Degrees(-64.77)
//	field, err := compass.At(lat, lon, quantity.Metres(20), lessonDay)
//	if err != nil {
//		return err
//	}
//	field.Declination.Degrees() // −16.2: the needle points 16.2° west of true north
//
// The field is that of the World Magnetic Model 2025 (WMM2025): minus the
// gradient of a potential that solves Laplace's equation outside the Earth,
//
//	V = a Σ (a/r)ⁿ⁺¹ [g cos mλ + h sin mλ] P(n, m; cos θ)
//
// with degree n from 1 to 12, order m from 0 to n, Schmidt semi-normalised
// associated Legendre functions P, a = 6371.2 km, and coefficients g and h that
// change linearly with time from epoch 2025.0.
//
// Frames and signs. Latitude is geodetic on WGS 84, north positive; longitude
// is east positive, in any turn. The sum is taken in geocentric coordinates and
// turned into the local geodetic frame (north, east, down). Declination, also
// called magnetic variation, is positive where the needle points east of true
// north, −180° to 180°: true bearing = compass bearing + declination.
// Inclination is positive where the needle dips below the horizon. Intensities
// are in nanotesla. Dates are read in UTC; a year is divided evenly between its
// first of January and the next.
//
// At a geographic pole every horizontal direction is south or north. There
// "north" is the direction that north has along the meridian of the given
// longitude as the pole is approached, so that the declination runs on smoothly
// into the pole and depends on the longitude named.
//
// Accuracy. The sum agrees with the official test values to their rounding
// (0.005°, 0.05 nT). What a compass shows differs more: the model leaves out
// rocks, buildings and the Sun's storms, and its authors put the standard error
// of the declination at √(0.26² + (5417/H)²) degrees with H in nT, 0.4° in
// mid-latitudes (from memory, WMM2025 report). Where H is weak the needle is
// not to be trusted: see Trust. Dates outside 2025.0 to 2030.0 are computed by
// carrying the change on, flagged by OutsideModel; the error then grows by a
// few tenths of a degree a year. Elevation counts from mean sea level here and
// from the ellipsoid in the model; the difference, up to 105 m, turns the
// needle by less than 0.01° where the compass is reliable.
//
// It does not give the field inside the Earth, above 850 km, or local
// disturbance, and it does not know the deviation of the compass itself.
//
// Sources: Chulliat and others, The US/UK World Magnetic Model for 2025–2030,
// NOAA National Centers for Environmental Information, for the coefficients,
// the zones and the test values; equations 4 to 19 of the same series of
// reports (numbers from memory) for the synthesis. wmm2025.txt states where the
// numbers come from.
package compass

// Package space holds the vector with which directions and places in space are
// reckoned.
//
//	earth := space.At(longitude, latitude, 0.9833)  // rectangular, in the unit of the distance
//	sight := planet.Minus(earth)
//	lon, lat, r := sight.Spherical()
//	elongation := sight.Angle(earth.Times(-1))
//
// Axes are right-handed: x towards longitude 0, y towards longitude 90°, z towards
// the pole. Which longitude (or right ascension, or hour angle) is meant, of which
// plane and equinox, and the unit of length belong to whoever uses the vector and are
// stated there. Everything is exact to rounding; nothing panics, and the zero
// vector has longitude, latitude and angles of zero.
//
// Vectors above a dial's plate and an observer's horizon are no such vectors: their
// axes are called by name, and the horizon's are left-handed.
package space

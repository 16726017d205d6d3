// Package quantity holds the two typed quantities that cross the borders of
// the compute packages: Angle and Length.
//
//	tilt := quantity.Degrees(46.09)
//	tilt.Sin()                       // 0.7204…
//	quantity.Millimetres(110).Metres() // 0.11
//
// An Angle is held in radians and a Length in metres; the constructors and
// methods name the unit, so that no bare number needs a comment. Signs belong
// to the quantity that uses them and are stated there. Times are time.Time and
// time.Duration of the standard library; days of the civil calendar are
// place.Date.
package quantity

// Package strip puts the planets, and the long story of the solar system, along
// a strip of paper squares to scale, and the planets on a school field.
//
//	roll, err := strip.New(300, quantity.Millimetres(110), strip.DefaultOutermost)
//	for _, m := range roll.Marks() {
//		fmt.Println(m.Name, m.Squares, m.Paper.Metres(), m.Fits) // …, earth 9.98 1.097 true, …
//	}
//	roll.OnPaper(quantity.Kilometres(12742)) // how thick Earth is there
//
// The Sun's centre is at the start of the first square, and a distance of n
// squares ends at the seam after the n-th. Every distance is counted from the
// Sun. New sets the scale so that the outermost body lands on the last seam;
// a Strip written out by hand takes any other scale, such as ten million miles
// a square. On paper and in space lengths are quantity.Length, squares are plain
// numbers and need not be whole.
//
// Distances are semi-major axes, the mean of a planet's nearest and farthest
// distance from the Sun. On a given day a planet is nearer or farther by its
// eccentricity: 25 % for Pluto, 21 % for Mercury, 9 % for Mars, a few per cent
// for the rest. Five decimals are given, but what "the" orbit of an outer planet
// is depends on the time span that it is fitted to, by up to 0.3 %. Diameters
// are mean ones, of the sphere with the body's volume; for the flattened giants
// the diameter across the equator, which other tables print, is up to 3.4 %
// larger.
//
// The Titius–Bode rule, 0.4 au for Mercury and 0.4 + 0.3·2^(n−2) for the n-th
// body from Venus on with Ceres as the fifth, is carried beside the orbits. It
// is a pattern without a known cause, stated before Uranus and Ceres were found
// and broken by Neptune. Terms go to the bodies in their order and none is
// skipped: giving Pluto Neptune's term would hide the failure.
//
// Beside the strip stand a second scale and a third: CastBalls picks the balls at
// hand that come nearest to the sizes of the bodies, and Layout.Lay puts the
// bodies round a peg for the Sun as they stand on a date (StandingsAt, from
// compute/almanac). Bearings are true, east positive; on a field they run against
// the planets' longitudes, so that the planets go round anticlockwise as seen from
// above, and with them in the south.
//
// As a clock the strip begins with the first solids, 4567.3 million years ago,
// and ends now (Moments); a second one holds the space age by calendar years
// (SpaceAge). Ages are before now, with the errors that their sources give.
//
// The package does not follow moons, asteroids or comets, and Ceres only by its
// mean distance.
//
// Sources. Orbits and diameters are those of compute/world, which names theirs.
package strip

// Package dial lays out sundials, says where shadows fall on right and wrong
// ones, and finds from a class's marks what is wrong with theirs.
//
//	from, to := dial.SunHours(quantity.Degrees(46.09)) // the longest day
//	lines, err := dial.HourLines(quantity.Degrees(46.09), from, to, time.Hour)
//	sides, err := dial.GnomonOfStyle(quantity.Degrees(46.09), quantity.Millimetres(150))
//	bearing, length, ok := dial.Shadow(sides.Height, sunAzimuth, sunAltitude)
//	fast, ok := dial.True(latitude).Turned(turn).Off(latitude, declination, hourAngle)
//	fit, err := dial.FitMarks(latitude, marks, dial.Unknown{Turn: true, Gnomon: true})
//
// # Two ways to the same line
//
// The face is drawn with the tangent formula of the horizontal dial,
//
//	tan X = sin |φ| · tan h
//
// taken in the quadrant of h. Shadows are found without it, by carrying a point
// of the style along the Sun's ray down to the plate. The tests hold the two
// against each other: a style that points to the pole casts its shadow on the
// hour line at every declination.
//
// # Frames, signs, units
//
// Vectors are east, north, up on a level plate whose origin is the dial centre,
// the point where style and hour lines meet. Azimuths and bearings run from
// true north through east, 0° to 360°. Latitude and declination are north
// positive. Hour and line angles are zero at noon and positive after it. Sun
// time is local apparent time: it counts from the Sun's midnight, 15° an hour,
// and noon is when the Sun crosses the meridian. A clock differs from it by the
// equation of time, the longitude and daylight saving (Correction).
//
// From the equator northward the noon line points true north and the hours run
// clockwise; below the equator it points true south and they run anticlockwise.
// At a pole bearings count from the meridian that hour angles count from.
//
// # A dial that is turned: two different numbers
//
// Laying the noon line along a compass needle turns it by the magnetic
// variation, and what that costs depends on what turns.
//
// When plate and gnomon turn together (Dial.Turned), the style leaves the pole.
// Turning the dial by τ is turning the Sun's azimuth by −τ against it: at noon
// the Sun, at altitude a, moves sideways by τ·cos a and that is τ·cos a/cos δ
// of hour angle. Since cos a = sin(φ − δ), a small turn clockwise makes a
// northern dial slow by
//
//	τ · sin(φ − δ)/cos δ  =  τ · (sin φ − cos φ · tan δ)
//
// which depends on the season: at 45°, 1.6 minutes of time a degree at the June
// solstice, 2.8 at an equinox, 4.1 in December.
//
// When the face alone is turned under a style that still points to the pole
// (Dial.FaceTurned), the shadow stays where it was and only its bearing is read
// off wrongly. At noon the error is atan(tan τ / sin φ), for a small turn
//
//	τ / sin φ
//
// whatever the season: at 45°, 5.66 minutes a degree, the dialist's "nearly
// six". The whole dial's error reaches this only with the noon Sun on the
// horizon (δ = φ − 90°), where the shadow's bearing is that of the Sun turned
// round, and the style's slope no longer counts. So the second number is the
// most that the first can come to at noon, and it is not what a class sees that
// turns its finished dial.
//
// # Other faces, other plates
//
// Every plane dial is the level dial of the place where its plate would lie
// level (Face.Latitude), so walls and equatorial plates need no formulae of
// their own. A plate that is out of level (Tilt) sees the Sun elsewhere, and
// what it then shows follows from the same vectors. Only the polar dial, which
// would be the level dial of the equator, has a rule of its own (PolarDistance):
// there the style is lifted off the plate, and the lines are parallel.
//
// # The polar dial
//
// Its plate and its style are both parallel to the Earth's axis: the plate slopes
// by the latitude, its upper edge toward the pole that is up, and the style runs
// along the noon line at an even height above it. Seen from the style the Sun goes
// round evenly, 15° an hour, so at the hour angle h the shadow falls on a line that
// is parallel to the style and
//
//	height × tan h
//
// from it: west before noon, east after it, in both hemispheres. The Sun's
// declination moves each point's shadow along its line only, so the dial holds all
// year. At six the Sun is in the plane of the plate, and no plate is wide enough.
//
// The geometry is derived here: with the axes east, along the axis, and square to
// the plate, the Sun is at (−cos δ sin h, sin δ, cos δ cos h), and the ray through a
// point at the height 1 meets the plate at (tan h, −tan δ / cos h). Waugh (Sundials,
// 1973) and others give the same rule for the polar dial (from memory).
//
// # Marks made by the watch
//
// Marks round a true style drift with the equation of time and the clock, all
// alike (Drift). Marks round any other style, an upright stick's above all,
// depend on the season besides (Marked). FitMarks goes the other way, from marks
// to the turn of the plate, the gnomon's angle and the error of the watch, with
// margins, or says why it cannot.
//
// # Accuracy and range
//
// The geometry is exact to rounding (some 1e-12 rad; the lines themselves
// become ill-defined as the latitude nears 0°), and agrees to 0.01° with shadows
// that another geometry casts from another library's Sun. The Sun is a point and
// the style a straight edge; a thick gnomon has two (Edge). SunHours and
// Face.Hours take the centre of the Sun on the true horizon, which refraction
// and the Sun's disc stretch by a few minutes at middle latitudes. Clock times
// take the equation of time at midday. Nearer the equator than ShallowLatitude
// the lines of a level dial crowd along the noon line, and on it they collapse;
// FaceFor takes a polar dial there.
//
// Refraction is left out of shadows on dials: it lifts the Sun by 0.1° at 10°
// of height, the time by seconds. Walls that do not face the equator squarely
// are not done.
//
// # Sources
//
// The tangent formula is the standard one of horizontal dials (A. E. Waugh,
// Sundials: their theory and construction, 1973). Coordinates follow J. Meeus,
// Astronomical Algorithms, 2nd ed. 1998, chapter 13, with azimuth from north.
// Damped least squares: D. W. Marquardt, Journal of the SIAM 11 (1963), 431.
// Student's t: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.
package dial

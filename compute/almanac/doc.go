// Package almanac says where the Sun, the Moon and the planets stand, when they
// rise and set, what the Moon's phases, the seasons and the eclipses are, for
// any place and date from 1950 to 2100.
//
//	day := almanac.SunDay(school, place.Date{Year: 2027, Month: time.April, Day: 20})
//	day.Rises[0]                                    // 06:24:15 at Alder Reach
//	almanac.Moon.LimbFrom(school, t).Side           // which side is lit, as seen there
//	almanac.Venus.AspectAt(t).Magnitude             // brightness
//	phases, err := almanac.Phases(from, to)         // err: outside 1950 to 2100
//
// # Time scales
//
// A time.Time is UTC, taken as UT1; TT follows by DeltaT (leap seconds from
// 1972, 69.184 s held from 2017 on, polynomials before). The error of taking
// UTC for UT1, 0.9 s at most while leap seconds are kept, is part of every
// clock time and shares in every hour angle; the limits below leave it out.
//
// # Frames and signs
//
// Apparent places are geocentric, of the true equator, ecliptic and equinox of
// date, with light time, aberration and nutation. Horizontal places are
// topocentric (with parallax) and geometric (without air, see Refraction);
// azimuth runs from true north through east, altitude is counted from the plane
// at right angles to the vertical of the WGS 84 ellipsoid. Latitude and
// declination are positive north, longitude east. Equation of time: apparent
// minus mean. Position angles run from celestial north through east, Lean from
// straight up clockwise as seen.
//
// # Conventions
//
// The Sun rises and sets when its centre, without parallax, is 50′ below the
// horizon: 34′ of refraction and 16′ of radius, whatever the season and the
// weather. The Moon does so by its upper limb, with parallax, and the planets by
// their centres, 34′ below. A body is up or down all day by the same altitude.
// Civil twilight ends with the Sun 6° below. Height above the sea makes no dip of
// the horizon. The local day is that of place.Place.Day; no, one or two events
// of a kind may fall in it, each found by iteration on the moving body.
//
// Phases and seasons are by apparent geocentric longitude. Greatest eclipse is
// when the shadow's axis is nearest to the centre of the Earth or Moon. Shadows
// of the Earth are enlarged by Danjon's rule; limbs are smooth.
//
// # Accuracy, 1950 to 2100
//
// Places: Sun 0.5″, Moon 3″ and 15 km, planets and Pluto 10″ from the Earth and
// from the Sun, and 0.01 % of the distance from the Sun. Altitude and azimuth:
// Sun 0.0002°, Moon 0.001°. Sidereal time 0.002 s, equation of time 0.05 s.
//
// Rises and sets: Sun 0.2 s, Moon and planets 2 s. Where the Sun or the Moon
// grazes the horizon, slower than 3° an hour, it is as long as its altitude takes
// to change by the error of its place. Transits: Sun 0.1 s, Moon 0.2 s, planets
// 0.5 s. Phases 5 s, seasons 10 s. Eclipses: greatest 10 s, gamma 0.0003, the
// Moon's contacts with the umbra 25 s, with the penumbra 70 s, the Sun's contacts
// at a place 20 s; magnitude and obscuration 0.002.
//
// Libration, the axis of the Moon and the Sun over the Moon 0.05°.
//
// Lit fraction 0.0005, elongation 0.01°, phase angle 0.02°, middle of the lit limb
// 0.1°. Magnitudes of planets 0.02 from the formulae of the Astronomical Almanac,
// which Mars's turning leaves by 0.1; Saturn and Uranus 0.05, the Moon 0.2 but for
// thin crescents.
//
// Tests hold these against ERFA and the Swiss Ephemeris, and less narrowly against
// two more libraries, with the errors that these have themselves. Real sunrises
// differ from any almanac by a minute or more with the air.
//
// Places are polynomials through the theories named below, fitted over some days when
// first asked for and kept while the program runs, 43 kB a year; they are within
// 0.0005″ of the theories. What is answered does not depend on what was asked before.
//
// Outside the range searches answer a *RangeError; places, days and aspects run
// on with growing error, and beyond a thousand years from 2000 they are held at
// the bound. No input makes this package panic; coordinates that are not
// numbers give times and angles without meaning.
//
// # What it does not do
//
// Dip, hills, other weather than the standard air, the mountains of the Moon's
// limb, the turning of Mars, moons, stars, comets.
//
// # Sources
//
// Planets: Bretagnon & Francou 1988, Astron. Astrophys. 202, 309 (VSOP87D).
// Moon: Chapront & Francou 2003, Astron. Astrophys. 404, 735 (ELP/MPP02). Both
// as data of the npm package astronomia 4.2.0; the scripts that cut them are in
// testdata/almanac-series. Meeus, Astronomical Algorithms, 2nd ed. 1998, for
// Pluto, nutation (IAU 1980) and much else. D. H. Eckhardt 1981,
// Moon and Planets 25, 3, for the physical libration. IAU 2006 obliquity and sidereal
// time. Mallama & Hilton 2018 for magnitudes. Espenak & Meeus 2006 for ΔT before
// 1972 and the radii of eclipses. Each constant names its own beside it.
package almanac

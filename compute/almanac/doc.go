// Package almanac says where the Sun stands and when it rises and sets, for
// any place and date from 1950 to 2100.
//
//	day := almanac.SunDay(school, place.Date{Year: 2027, Month: time.April, Day: 20})
//	day.Rises[0]                              // 06:24:14 at Alder Reach
//	almanac.SunFrom(school, t).Azimuth        // from true north through east
//	almanac.EquationOfTime(t)                 // sundial less clock of mean time
//	almanac.SunPast(school, date, almanac.CivilTwilight).Sets // end of twilight
//
// # Time scales
//
// A time.Time is UTC, taken as UT1; TT follows by DeltaT (leap seconds from
// 1972, 69.184 s held from 2017 on, polynomials before). The error of taking
// UTC for UT1, 0.9 s at most, is part of every clock time and shares in every
// hour angle; the limits below leave it out.
//
// # Frames and signs
//
// Apparent places are geocentric, of the true equator, ecliptic and equinox of
// date, with light time, aberration and nutation. Horizontal places are
// topocentric (with parallax) and geometric (without air); azimuth runs from
// true north through east, altitude is counted from the plane at right angles
// to the vertical of the WGS 84 ellipsoid. Latitude and declination are
// positive north, longitude east. Equation of time: apparent minus mean.
//
// # Conventions of rising and setting
//
// The Sun rises and sets when its centre is 50′ below the horizon: 34′ of
// refraction and 16′ of radius, whatever the season and the weather. It is up
// all day or down all day by the same altitude. Twilights end at 6°, 12° and
// 18° below. Height above the sea makes no dip of the horizon. The local day
// is that of place.Place.Day; no, one or two events of a kind may fall in it,
// and each is found by iteration on the moving body.
//
// # Accuracy, 1950 to 2100
//
// The Sun's place is good to 1″ (VSOP87D, cut), nutation to 0.03″, sidereal
// time to 0.002 s, the equation of time to 0.1 s, altitude and azimuth to
// 0.0005°, rising and setting to 0.3 s below 60° of latitude, when ΔT and the
// convention are shared. Real sunrises differ from any almanac by a minute or
// more with the air. Outside the range the same equations run on without that
// promise; beyond a thousand years from 2000 they are held at the bound. No
// input makes this package panic; coordinates that are not numbers give times
// and angles without meaning.
//
// # Sources
//
// Bretagnon & Francou 1988, Astron. Astrophys. 202, 309 (VSOP87D, as data of
// the npm package astronomia 4.2.0; the script that cut it is in
// testdata/almanac-series); Meeus, Astronomical Algorithms, 2nd ed. 1998; IAU
// 1980 nutation; IAU 2006 obliquity and sidereal time; Espenak & Meeus 2006
// for ΔT before 1972. Each constant names its own beside it.
package almanac
